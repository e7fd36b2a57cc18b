//! A fabric that was never printed here: first a trial, then what the trial showed is written down and asked again.

use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use anyhow::{Result, ensure};

/// All that this label says: neither knit nor weight nor dye is known, and the lot was never printed here.
const LABEL: &str = "100% polyester";

/// The verdicts that let an order run.
const RUNS: [&str; 2] = ["Go", "Go, hold two"];

/// The trial's result comes back into the answer: a white that held lets the order run, one that turned does not, and the
/// reason names what was seen.
pub async fn an_unknown_fabric_goes_to_trial_and_comes_back(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.open_desk(&address).await?;
        let job = desk.job();
        job.label().fill(LABEL).await?;
        job.understood().says("taken as").await?;
        job.lot().fill("NEW-77").await?;
        job.verdict().says("Trial first").await?;
        // The test, the pieces, the hours and the mark.
        for part in ["Print ", " oven ", " h at ", " or less is a go"] {
            job.verdict_says().says(part).await?;
        }
        let white = job.white().read().await?;

        note_trial(&desk, &white).await?;
        note_look(&desk, "0").await?;
        desk.turn_to(DeskScreen::Job).await?;
        job.why().says("Tested here. 0 of 6 pieces turned within 30 days").await?;
        let verdict = job.verdict().read().await?;
        ensure!(RUNS.contains(&verdict.as_str()), "six pieces held for thirty days, and it is `{verdict}`");
        ensure!(job.white().read().await? == white, "the white that held is given up");

        // The other lot of the same cloth was not tried.
        job.lot().fill("NEW-78").await?;
        job.verdict().says("Trial first").await?;
        job.lot().fill("NEW-77").await?;
        job.why().says("Tested here").await?;

        // The opposite instead: taken back, it counts no more.
        desk.turn_to(DeskScreen::Library).await?;
        desk.library().name().says("trial").await?;
        desk.undo().await?;
        note_look(&desk, "6").await?;
        desk.turn_to(DeskScreen::Job).await?;
        // What turned is out, by name and with what was seen.
        desk.screen().says(&format!("{white}. Tested here. 6 of 6 pieces turned within 30 days")).await?;
        let verdict = job.verdict().read().await?;
        ensure!(!RUNS.contains(&verdict.as_str()), "six of six pieces turned, and it is `{verdict}`");
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}

/// Keeps the cloth of the order and begins a trial of its lot in this white.
async fn note_trial(desk: &DeskPage, white: &str) -> Result<()> {
    let library = desk.library();
    desk.turn_to(DeskScreen::Library).await?;
    library.hits().read().await?;
    desk.settle().await?;
    library.keep_cloth().tap().await?;
    library.name().says("olyester").await?;
    let form = library.begin(library.note_trial()).await?;
    form.fill("lot", "NEW-77").await?;
    form.fill("white", &white.to_lowercase()).await?;
    form.keep().tap().await?;
    library.note_look().read().await.map(drop)
}

/// Writes down how many of six pieces turned within thirty days.
async fn note_look(desk: &DeskPage, turned: &str) -> Result<()> {
    let form = desk.library().begin(desk.library().note_look()).await?;
    for (label, text) in [("days", "30"), ("pieces", "6"), ("turned", turned)] {
        form.fill(label, text).await?;
    }
    form.keep().tap().await?;
    desk.is_saved().await
}
