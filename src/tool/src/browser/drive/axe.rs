//! axe-core, which looks for what bars people from a page. It is for development only and never gets into the page:
//! it is fetched once through npm into `target/axe` and run in the driven browser.

use crate::browser::drive::session::Desk;
use crate::host::command::run;
use crate::host::workspace::{Workspace, read};
use anyhow::{Result, bail};
use std::process::Command;

/// The version that is fetched.
const VERSION: &str = "4.10.3";

/// Runs it over the document, shadow tree and all, by the rules of WCAG 2.2 A and AA, and says what it found, a line each.
/// What is left out until it is scrolled to is looked at too.
const LOOK: &str = "const done = arguments[0];
    const root = document.querySelector('whitehold-desk').shadowRoot;
    for (const part of root.querySelectorAll('.answer > *, .order > *')) part.style.contentVisibility = 'visible';
    axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        rules: { 'page-has-heading-one': { enabled: true } } })
        .then((found) => done(found.violations.map((it) => it.id + ': ' + it.help + ' | ' +
            it.nodes.slice(0, 3).map((node) => node.html.slice(0, 160) + ' (' + (node.any[0]?.message ?? node.failureSummary ?? '').slice(0, 160) + ')').join(' ; '))),
        (error) => done(['axe: ' + error]));";

/// Its script, fetched if it is not there yet.
///
/// # Errors
/// When it is not there and npm cannot fetch it.
pub fn script(workspace: &Workspace) -> Result<String> {
    let folder = workspace.target().join("axe");
    let file = folder.join("package/axe.min.js");
    if !file.is_file() {
        std::fs::create_dir_all(&folder)?;
        let advice = "`npm pack axe-core@4.10.3` where npm works, and unpack the archive into target/axe";
        let mut npm = Command::new("npm");
        run(npm.current_dir(&folder).args(["pack", "--silent", &format!("axe-core@{VERSION}")]), advice)?;
        let archive = format!("axe-core-{VERSION}.tgz");
        run(Command::new("tar").current_dir(&folder).args(["-xzf", &archive]), advice)?;
    }
    read(&file)
}

/// Fails with whatever bars somebody from what is on the page now.
///
/// # Errors
/// Names each finding and where it is.
pub async fn finds_nothing(desk: &Desk, script: &str, place: &str) -> Result<()> {
    desk.run(script, vec![]).await?;
    let found = desk.run_async(LOOK).await?;
    let lines: Vec<&str> = found.as_array().into_iter().flatten().filter_map(|it| it.as_str()).collect();
    if lines.is_empty() {
        return Ok(());
    }
    bail!("{place}: {} findings\n    {}", lines.len(), lines.join("\n    "))
}
