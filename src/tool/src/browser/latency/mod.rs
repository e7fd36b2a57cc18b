//! How long a person waits: for the first answer, for the answer after a tap, for a frame of a drag, on a tablet four times
//! slower than this machine.
//!
//! In: the built page. Out: a table on the screen and in `dist/latency.json`. It must not know selectors.

mod scripts;

use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::progress::say;
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result};
use scripts::{DRAG, EVERY_CHANGE, EVERY_ORDER, FIRST_ANSWER, WATCH_TAPS, WATCHED_TAPS, WHOLE_SHELF};
use serde_json::{Value, json};
use std::time::Duration;

/// Cold starts that are timed.
const STARTS: usize = 10;
/// How long the first answer is looked at before another order is opened.
const LOOKED: Duration = Duration::from_secs(10);
/// How much slower the tablet is than the machine.
const SLOWER: u32 = 4;
/// How often what matters most is changed in each order.
const CHANGES: i64 = 4;

/// Measures the built page and writes `dist/latency.json`.
///
/// # Errors
/// [`anyhow::Error`] if the page is not built or does not answer.
pub async fn measure(workspace: &Workspace) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    let mut starts = Vec::new();
    for _ in 0..STARTS {
        let desk = fixture.tablet().open(&fixture.page.file()?).await?;
        let marks: Vec<(String, f64)> = serde_json::from_value(desk.run(FIRST_ANSWER, vec![]).await?)?;
        starts.push(marks);
        desk.close().await?;
    }
    // A person who opens the page and turns to the week's orders at once.
    let desk = fixture.tablet().open_file().await?;
    desk.job().set_temperature().read().await?;
    slow_down(&desk, SLOWER).await?;
    let answers = times(&desk, EVERY_ORDER).await?;
    let changes = times(&desk, EVERY_CHANGE).await?;
    desk.close().await?;

    // A person who has looked at the first answer for a while.
    let desk = fixture.tablet().open_file().await?;
    desk.job().set_temperature().read().await?;
    slow_down(&desk, SLOWER).await?;
    tokio::time::sleep(LOOKED).await;
    let ahead = times(&desk, EVERY_ORDER).await?;
    let taps = taps(&desk).await?;
    slow_down(&desk, 1).await?;
    desk.go_to(DeskScreen::Window).await?;
    desk.window().says().read().await?;
    desk.settle().await?;
    slow_down(&desk, SLOWER).await?;
    let frames = times(&desk, DRAG).await?;
    desk.close().await?;

    let room: Value = serde_json::from_slice(&std::fs::read(workspace.root.join("data/harbour_lane.json"))?)?;
    // A page that holds the desk: the desk's own page forbids a second script.
    let desk = fixture.tablet().open(&fixture.page.site("embed.html")).await?;
    slow_down(&desk, SLOWER).await?;
    let shelves = desk.run(WHOLE_SHELF, vec![room["orders"].clone()]).await?;
    let [afresh, again]: [Vec<f64>; 2] = serde_json::from_value(shelves)?;
    desk.close().await?;

    let answered: Vec<f64> = starts.iter().filter_map(|marks| marks.last()).map(|(_, at)| *at).collect();
    say(&format!("first answer, by the middle start: {}", parts(&starts)));
    let rows = [
        row("first answer from file://, cold", &answered, 1),
        row("from the tap on an order to its answer", &answers, SLOWER),
        row("the same when the page was left alone before", &ahead, SLOWER),
        row("from a change in the form to its answer", &changes, SLOWER),
        row("from a tap to what is painted next", &taps, SLOWER),
        row("an answer over a shelf of every white", &afresh, SLOWER),
        row("the same with a piece more", &again, SLOWER),
        row("frame while the set point is dragged", &frames, SLOWER),
    ];
    for row in &rows {
        say(&format!(
            "{:44} median {:7.1} ms, 95 of 100 within {:7.1} ms, worst {:7.1} ms, {} times, {}x slower",
            row["name"].as_str().unwrap_or_default(),
            row["median_ms"].as_f64().unwrap_or(f64::NAN),
            row["p95_ms"].as_f64().unwrap_or(f64::NAN),
            row["worst_ms"].as_f64().unwrap_or(f64::NAN),
            row["times"],
            row["slower"],
        ));
    }
    write(&workspace.dist().join("latency.json"), format!("{}\n", serde_json::to_string_pretty(&rows)?))
}

/// Makes the browser's processor this many times slower.
async fn slow_down(desk: &DeskPage, rate: u32) -> Result<()> {
    desk.session().devtools("Emulation.setCPUThrottlingRate", json!({ "rate": rate })).await.map(drop)
}

/// Runs a script that hands back times, ms.
async fn times(desk: &DeskPage, script: &str) -> Result<Vec<f64>> {
    let times = desk.run(script, vec![]).await?;
    serde_json::from_value(times.clone()).with_context(|| format!("no times, but {times}"))
}

/// Taps every order of the week with a finger, and what matters most in it; the milliseconds from each tap to the next
/// paint.
async fn taps(desk: &DeskPage) -> Result<Vec<f64>> {
    let job = desk.job();
    desk.run(WATCH_TAPS, vec![]).await?;
    job.open_week().await?;
    for order in 0..i64::try_from(job.week_orders().count().await?)? {
        job.week_orders().nth(order).tap().await?;
        desk.settle().await?;
        for change in 1..=CHANGES {
            job.priorities().nth(change).tap().await?;
            desk.settle().await?;
        }
    }
    // The browser hands its notes over when it has time.
    tokio::time::sleep(Duration::from_secs(1)).await;
    times(desk, WATCHED_TAPS).await
}

/// When each part of the start was over, ms since navigation began: the median of each.
fn parts(starts: &[Vec<(String, f64)>]) -> String {
    let Some(first) = starts.first() else { return String::new() };
    let part = |(place, (name, _)): (usize, &(String, f64))| {
        let times: Vec<f64> = starts.iter().filter_map(|marks| marks.get(place)).map(|(_, at)| *at).collect();
        format!("{name} {:.0}", row(name, &times, 1)["median_ms"].as_f64().unwrap_or(f64::NAN))
    };
    first.iter().enumerate().map(part).collect::<Vec<_>>().join(", ") + " ms"
}

fn row(name: &str, times: &[f64], slower: u32) -> Value {
    let mut times = times.to_vec();
    times.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let place = (share * times.len() as f64).ceil() as usize;
        times.get(place.saturating_sub(1)).copied()
    };
    json!({ "name": name, "median_ms": at(0.5), "p95_ms": at(0.95), "worst_ms": at(1.0), "times": times.len(), "slower": slower })
}
