//! What is given up for what: the picture of the ways beside the sentence and the table that say the same.

use crate::browser::drive::fixture::Fixture;
use anyhow::{Context, Result, ensure};

/// As many rows as ways were worked through; a mark that is tapped says what it is, and a way of the answer can be used.
pub async fn a_tapped_way_says_what_it_is_and_can_be_used(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    let head = desk.shows("#trade-head").await?;
    let said = desk.shows("#trade-says").await?;
    desk.taps("#trade details summary").await?;
    desk.shows("#trade details table").await?;
    let script = "const root = document.querySelector('whitehold-desk').shadowRoot;
        const all = (what) => root.querySelectorAll('#trade ' + what).length;
        return [all('tbody tr'), all('circle.tap'), root.querySelector('#trade-figure').getAttribute('aria-label')];";
    let seen = desk.run(script, vec![]).await?;
    let (rows, marks) = (seen[0].as_u64().unwrap_or(0), seen[1].as_u64().unwrap_or(0));
    ensure!(rows > 1 && rows == marks, "{marks} marks and {rows} rows");
    ensure!(head.contains(&format!("{rows} worked through")), "`{head}` for {rows} rows");
    let heard = seen[2].as_str().unwrap_or_default();
    let first = said.split('.').next().unwrap_or_default();
    ensure!(heard.contains(first), "the picture is heard as `{heard}`, and not as `{said}`");

    let white = desk.shows("[data-fact=\"white\"]").await?;
    let mut other = None;
    for way in 0..rows {
        desk.taps(&format!("#trade [data-do=\"{way}\"]")).await?;
        let told = desk.shows("#trade-way p").await?;
        ensure!(told.contains(" a print, "), "way {way} is told as `{told}`");
        if let Some(button) = desk.text("#trade-way button").await? {
            other = Some(button);
            break;
        }
    }
    let other = other.context("no way but the chosen one can be used")?;
    desk.taps("#trade-way button").await?;
    let used = other.strip_prefix("Use ").unwrap_or(&other);
    ensure!(used != white, "{used} was chosen already");
    desk.says("[data-fact=\"white\"]", used).await?;
    desk.says("#trade-way", "chosen").await?;
    let now = desk.shows("#trade-says").await?;
    ensure!(now != said, "another way is chosen, and still `{said}`");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
