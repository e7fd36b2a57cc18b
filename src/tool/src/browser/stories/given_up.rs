//! What is given up for what: the picture of the recipes beside the sentence and the table that say the same.

use crate::browser::fixture::Fixture;
use anyhow::{Context, Result, ensure};

/// As many rows as recipes were worked through; a mark that is tapped says what it is, and a recipe of the answer can be used.
pub async fn a_tapped_way_says_what_it_is_and_can_be_used(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let (job, trade_off) = (desk.job(), desk.job().trade_off());
    let head = trade_off.head().read().await?;
    let said = trade_off.says().read().await?;
    trade_off.show_table().tap().await?;
    trade_off.table().read().await?;
    let (rows, marks) = (trade_off.rows().count().await?, trade_off.marks().count().await?);
    ensure!(rows > 1 && rows == marks, "{marks} marks and {rows} rows");
    ensure!(head.contains(&format!("{rows} worked through")), "`{head}` for {rows} rows");
    let heard = trade_off.figure().attribute("aria-label").await?.context("the picture has no name")?;
    let first = said.split('.').next().unwrap_or_default();
    ensure!(heard.contains(first), "the picture is heard as `{heard}`, and not as `{said}`");

    let white = job.white().read().await?;
    let mut other = None;
    for mark in 0..i64::try_from(rows)? {
        trade_off.marks().nth(mark).tap().await?;
        let told = trade_off.tapped_says().read().await?;
        ensure!(told.contains(" a print, "), "mark {mark} says `{told}`");
        if let Some(button) = trade_off.use_tapped().text().await? {
            other = Some(button);
            break;
        }
    }
    let other = other.context("no recipe but the chosen one can be used")?;
    trade_off.use_tapped().tap().await?;
    let used = other.strip_prefix("Use ").unwrap_or(&other);
    ensure!(used != white, "{used} was chosen already");
    job.white().says(used).await?;
    trade_off.tapped().says("chosen").await?;
    let now = trade_off.says().read().await?;
    ensure!(now != said, "another recipe is chosen, and still `{said}`");
    desk.has_no_complaints().await?;
    desk.close().await
}
