//! axe-core, which looks for what bars people from a page. It is for development only and never gets into the page:
//! it is fetched once through npm into `target/axe` and run in the driven browser.

use crate::browser::screens::DeskPage;
use crate::host::command::run;
use crate::host::workspace::{Workspace, read};
use anyhow::Result;
use std::process::Command;

/// The version that is fetched.
const VERSION: &str = "4.10.3";

/// Runs it over the document, shadow tree and all, by the rules of WCAG 2.2 A and AA; hands back a line for each finding.
const RUN: &str = "const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const found = await axe.run(document, { runOnly: rules, rules: { 'page-has-heading-one': { enabled: true } } });
    const where = (node) => node.html.slice(0, 160)
        + ' (' + (node.any[0]?.message ?? node.failureSummary ?? '').slice(0, 160) + ')';
    return found.violations.map((it) => `${it.id}: ${it.help} | ${it.nodes.slice(0, 3).map(where).join(' ; ')}`);";

/// Its script, fetched if it is not there yet.
///
/// # Errors
/// [`anyhow::Error`] if it is not there and npm cannot fetch it.
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

/// What bars people from what is on the page now, what is below the fold included.
///
/// # Errors
/// [`anyhow::Error`] if axe-core gives up.
pub async fn findings(desk: &DeskPage, script: &str) -> Result<Vec<String>> {
    desk.session().run(script, vec![]).await?;
    desk.lay_out_everything().await?;
    Ok(serde_json::from_value(desk.run(RUN, vec![]).await?)?)
}
