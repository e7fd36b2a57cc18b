//! The sheet at the press: printed on one page, read back from a picture, and a damaged picture said to be one.

use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::workspace::write;
use anyhow::{Result, ensure};
use std::path::Path;

/// Paper by its name, inches.
const PAPERS: [(&str, (f64, f64)); 2] = [("A4", (8.27, 11.69)), ("Letter", (8.5, 11.0))];

/// Every order of the week is printed on one page, A4 and Letter, in both languages: one half of the week from a stick,
/// the other from the server.
pub async fn the_owner_prints_the_sheets_on_one_page_each(fixture: &Fixture) -> Result<()> {
    let (mut printed, mut wrong) = (0, Vec::new());
    for ((tablet, address), orders) in fixture.both_ways()?.into_iter().zip([0..6, 6..12]) {
        let desk = tablet.open_desk(&address).await?;
        for order in orders {
            printed += print(&desk, order, &mut wrong).await?;
        }
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    ensure!(printed >= 32, "only {printed} sheets were printed");
    Ok(())
}

/// Prints the sheet of an order of the week on both papers in both languages; hands back how many were printed.
async fn print(desk: &DeskPage, order: i64, wrong: &mut Vec<String>) -> Result<usize> {
    desk.go_to(DeskScreen::Job).await?;
    desk.job().open_week().await?;
    desk.job().week_orders().nth(order).tap().await?;
    desk.settle().await?;
    desk.go_to(DeskScreen::JobSheet).await?;
    let sheet = desk.job_sheet();
    if !sheet.paper().is_seen().await? {
        // A refused order has nothing to run.
        sheet.no_paper().says("refused").await?;
        return Ok(0);
    }
    let mut printed = 0;
    for language in ["English", "Spanish"] {
        for (name, size) in PAPERS {
            let pages = sheet.pages(size).await?;
            if pages != 1 {
                let (title, size) = (sheet.title().read().await?, sheet.size().await?);
                wrong.push(format!("{title} takes {pages} pages of {name} in {language}: {size}"));
            }
            printed += 1;
        }
        desk.change_language().await?;
        desk.settle().await?;
    }
    Ok(printed)
}

/// A sheet photographed on one tablet stands in the form of another; a ruined one says so, and changes nothing.
pub async fn a_sheet_is_read_back_from_a_picture(fixture: &Fixture) -> Result<()> {
    let picture = fixture.empty_folder("sheet")?.join("sheet.png");
    let desk = fixture.tablet().open_file().await?;
    desk.go_to(DeskScreen::JobSheet).await?;
    let sheet = desk.job_sheet();
    let (title, setting) = (sheet.title().read().await?, sheet.setting().read().await?);
    photograph(&desk, &picture, true).await?;
    sheet.read_back().says("too much of it cannot be read").await?;
    sheet.read_back_seen().tap().await?;
    photograph(&desk, &picture, false).await?;
    sheet.read_back().says("Read from the sheet").await?;
    sheet.title().says(&title).await?;
    desk.settle().await?;
    let now = sheet.setting().read().await?;
    ensure!(now == setting, "the setting read back is another: {setting} | {now}");
    desk.has_no_complaints().await?;
    desk.close().await
}

/// Takes a picture of the sheet's code and opens it.
async fn photograph(desk: &DeskPage, picture: &Path, ruined: bool) -> Result<()> {
    write(picture, desk.job_sheet().photograph(ruined).await?)?;
    desk.job_sheet().open_picture(picture).await
}
