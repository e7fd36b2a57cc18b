//! What stories do with files: hand one to the page, and read one that the page hands out.

use crate::browser::drive::patience::until;
use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen, Element};
use crate::host::workspace::{read, write};
use anyhow::Result;
use serde_json::json;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Opens the Library of a browser that was never used before.
pub(super) async fn open_library(fixture: &Fixture) -> Result<DeskPage> {
    let desk = fixture.tablet().open_file().await?;
    desk.go_to(DeskScreen::Library).await?;
    desk.library().hits().read().await?;
    // The store opens after the page: what it holds may move what is on the screen.
    desk.settle().await?;
    Ok(desk)
}

/// Opens a file of this name and content in the Library.
pub(super) async fn bring(desk: &DeskPage, folder: &Path, name: &str, text: &str) -> Result<()> {
    let file = folder.join(name);
    write(&file, text)?;
    desk.library().open_file(&file).await
}

/// Taps a link and hands back the file that comes into the folder.
pub(super) async fn download(desk: &DeskPage, link: Element<'_>, folder: &Path) -> Result<PathBuf> {
    let wish = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    desk.session().devtools("Browser.setDownloadBehavior", wish).await?;
    link.tap().await?;
    let comes = until(format!("a file comes from {link}"), Duration::from_secs(10), async || {
        let mut files = std::fs::read_dir(folder)?.filter_map(Result::ok).map(|entry| entry.path());
        Ok(files.find(|path| path.extension().is_some_and(|it| it != "crdownload")))
    });
    comes.await
}

/// Taps a link and reads the file that comes into an empty folder of this name.
pub(super) async fn download_text(
    fixture: &Fixture,
    desk: &DeskPage,
    link: Element<'_>,
    name: &str,
) -> Result<String> {
    read(&download(desk, link, &fixture.empty_folder(name)?).await?)
}
