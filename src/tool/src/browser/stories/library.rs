//! What the stories of the Library share: its form, its files, its folders.

use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Context, Result, ensure};
use serde_json::json;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// A folder of this name for downloads, empty.
pub(super) fn folder(fixture: &Fixture, name: &str) -> Result<PathBuf> {
    let folder = fixture.workspace.target().join("stories").join(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// Opens the Library screen of a browser that nobody used before.
pub(super) async fn opens(fixture: &Fixture) -> Result<Desk> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.goes_to(&format!("{}#library", fixture.page.file()?)).await?;
    desk.shows(".hits").await?;
    // The store opens after the page: what it holds may move what is on the screen.
    desk.settles().await?;
    Ok(desk)
}

/// What a button does, as a selector.
pub(super) fn does(act: &str) -> String {
    format!("[data-do=\"{act}\"]")
}

/// Fills the column of this label in the open form.
pub(super) async fn fills(desk: &Desk, label: &str, text: &str) -> Result<()> {
    let find = "const root = document.querySelector('whitehold-desk').shadowRoot;
        for (const label of root.querySelectorAll('#form label'))
            if (label.textContent.startsWith(arguments[0])) return label.htmlFor; return null;";
    let id = desk.run(find, vec![json!(label)]).await?;
    let id = id.as_str().with_context(|| format!("the form has no `{label}`"))?.to_owned();
    let set =
        "const field = document.querySelector('whitehold-desk').shadowRoot.getElementById(arguments[0]);
        field.value = arguments[1];
        field.dispatchEvent(new Event('input', { bubbles: true, composed: true }));
        return field.value;";
    let holds = desk.run(set, vec![json!(id), json!(text)]).await?;
    ensure!(holds == text, "`{label}` took {holds} for {text}");
    Ok(())
}

/// Opens a file as a person does who chooses it.
pub(super) async fn brings(desk: &Desk, name: &str, text: &str) -> Result<()> {
    let choose =
        "const input = document.querySelector('whitehold-desk').shadowRoot.getElementById('open-file');
        const files = new DataTransfer();
        files.items.add(new File([arguments[1]], arguments[0]));
        input.files = files.files;
        input.dispatchEvent(new Event('change', { bubbles: true, composed: true }));";
    desk.run(choose, vec![json!(name), json!(text)]).await?;
    desk.shows("#incoming").await?;
    Ok(())
}

/// Taps a link and reads the file that comes.
pub(super) async fn carries_away(desk: &Desk, link: &str, folder: &Path) -> Result<String> {
    let wish = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    desk.devtools("Browser.setDownloadBehavior", wish).await?;
    desk.taps(link).await?;
    let start = Instant::now();
    loop {
        let done = std::fs::read_dir(folder)?
            .filter_map(Result::ok)
            .map(|entry| entry.path())
            .find(|path| path.extension().is_some_and(|it| it != "crdownload"));
        if let Some(file) = done {
            return crate::host::workspace::read(&file);
        }
        ensure!(start.elapsed() < Duration::from_secs(10), "no file came from {link}");
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
}

pub(super) async fn writes_a_white(desk: &Desk, name: &str, price: &str) -> Result<()> {
    desk.taps(&does("look:1")).await?;
    desk.settles().await?;
    desk.taps(&does("new:2")).await?;
    desk.shows("#form").await?;
    fills(desk, "name", name).await?;
    fills(desk, "class", "soft").await?;
    fills(desk, "price a kilogram", price).await?;
    desk.taps(&does("put")).await?;
    desk.says("#rech", name).await
}
