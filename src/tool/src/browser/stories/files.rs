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

/// Taps a link and hands back the file that comes into the folder. A browser reserves the name with an empty file while
/// the content is still on its way, so an empty file is none yet.
pub(super) async fn download(desk: &DeskPage, link: Element<'_>, folder: &Path) -> Result<PathBuf> {
    let wish = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    desk.session().devtools("Browser.setDownloadBehavior", wish).await?;
    link.tap().await?;
    let comes = until(format!("a file comes from {link}"), Duration::from_secs(10), async || {
        let mut files = std::fs::read_dir(folder)?.filter_map(Result::ok);
        let complete = files.find(|entry| {
            let on_its_way = entry.path().extension().is_none_or(|it| it == "crdownload");
            !on_its_way && entry.metadata().is_ok_and(|it| it.len() > 0)
        });
        Ok(complete.map(|entry| entry.path()))
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
