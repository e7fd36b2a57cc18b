//! A fabric that nobody knows: first a trial, then what the trial showed is written down and asked again.

use super::library::{does, fills};
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Result, ensure};

/// All that this label says: neither knit nor weight nor dye is known, and nobody here has printed the lot.
const LABEL: &str = "100% polyester";

/// The verdicts that let an order run, and those that do not.
const RUNS: [&str; 2] = ["Go", "Go, hold two"];

/// The trial's result comes back into the answer: a white that held lets the order run, one that turned does not, and the
/// reason names what was seen.
pub async fn an_unknown_fabric_goes_to_trial_and_comes_back(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.opens(&address).await?;
        desk.shows("#verdict").await?;
        desk.types("#label", LABEL).await?;
        desk.says("#understood", "taken as").await?;
        desk.types("#lot", "NEW-77").await?;
        desk.says("#verdict", "Trial first").await?;
        // The test, the pieces, the hours and the mark.
        for part in ["Print ", " oven ", " h at ", " or less is a go"] {
            desk.says(".plate-say", part).await?;
        }
        let white = desk.shows("[data-fact='white']").await?;

        writes_the_trial(&desk, &white).await?;
        writes_what_was_seen(&desk, "0").await?;
        desk.taps("nav a[href='#job']").await?;
        desk.says(".why", "Tested here. 0 of 6 pieces turned within 30 days").await?;
        let verdict = desk.shows("#verdict").await?;
        ensure!(RUNS.contains(&verdict.as_str()), "six pieces held for thirty days, and it is `{verdict}`");
        ensure!(desk.shows("[data-fact='white']").await? == white, "the white that held is given up");

        // The other lot of the same cloth was not tried.
        desk.types("#lot", "NEW-78").await?;
        desk.says("#verdict", "Trial first").await?;
        desk.types("#lot", "NEW-77").await?;
        desk.says(".why", "Tested here").await?;

        // The opposite instead: taken back, it counts no more.
        desk.taps("nav a[href='#library']").await?;
        desk.says("#rech", "trial").await?;
        desk.taps(".head [aria-label=\"Undo\"]").await?;
        writes_what_was_seen(&desk, "6").await?;
        desk.taps("nav a[href='#job']").await?;
        // What turned is out, by name and with what was seen.
        desk.says("main", &format!("{white}. Tested here. 6 of 6 pieces turned within 30 days")).await?;
        let verdict = desk.shows("#verdict").await?;
        ensure!(!RUNS.contains(&verdict.as_str()), "six of six pieces turned, and it is `{verdict}`");
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}

/// Keeps the cloth of the order and begins a trial of its lot in this white.
async fn writes_the_trial(desk: &Desk, white: &str) -> Result<()> {
    desk.taps("nav a[href='#library']").await?;
    desk.shows(".hits").await?;
    desk.settles().await?;
    desk.taps(&does("keep-cloth")).await?;
    desk.says("#rech", "olyester").await?;
    desk.taps("[data-do^=\"new:10 \"]").await?;
    desk.shows("#form").await?;
    fills(desk, "lot", "NEW-77").await?;
    fills(desk, "white", &white.to_lowercase()).await?;
    desk.taps(&does("put")).await?;
    desk.shows("[data-do^=\"new:11 \"]").await?;
    Ok(())
}

/// Writes down how many of six pieces turned within thirty days.
async fn writes_what_was_seen(desk: &Desk, turned: &str) -> Result<()> {
    desk.taps("[data-do^=\"new:11 \"]").await?;
    desk.shows("#form").await?;
    for (label, text) in [("days", "30"), ("pieces", "6"), ("turned", turned)] {
        fills(desk, label, text).await?;
    }
    desk.taps(&does("put")).await?;
    desk.is_saved().await
}
