//! The week at Harbour Lane, order after order, as a person taps through it.

use crate::browser::fixture::Fixture;
use anyhow::{Result, ensure};

/// Order, the words that its verdict may be, the whites that may be first. What is accepted is common practice, no
/// source; `tests/answers/ten_orders.rs` says why, row by row.
const ACCEPTED: [(&str, &[&str], &[&str]); 10] = [
    ("1185", &["Go"], &["Chalk"]),
    ("1186", &["Go"], &["Tern", "Gannet", "Plover"]),
    ("1187", &["Trial first"], &["Gannet"]),
    ("1188", &["Trial first", "No"], &["Gannet", ""]),
    ("1189", &["Trial first", "Go, hold two"], &["Gannet"]),
    ("1190", &["Go, hold two", "Trial first"], &["Hawser"]),
    ("1191", &["Trial first", "No"], &["Hawser", ""]),
    ("1192", &["Go", "Go, hold two"], &["Tern", "Gannet", "Plover"]),
    ("1193", &["Go"], &["Chalk", "Plover"]),
    ("1194", &["Go", "Go, hold two"], &["Tern", "Gannet", "Plover"]),
];

pub async fn each_answer_is_one_a_press_lead_would_accept(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let job = desk.job();
    for (id, verdicts, whites) in ACCEPTED {
        job.open_week_order(id).await?;
        desk.title().says(id).await?;
        desk.settle().await?;
        let verdict = job.verdict().read().await?;
        ensure!(verdicts.contains(&verdict.as_str()), "{id}: the page says `{verdict}`");
        let white = job.white().text().await?.unwrap_or_default();
        ensure!(whites.contains(&white.as_str()), "{id}: the page says `{verdict}` with `{white}`");
    }
    desk.has_no_complaints().await?;
    desk.close().await
}

/// Labels that cannot be read, with a word of what is said of them; one that can be read all the same; and a good one.
const BAD_LABELS: [(&str, Option<&str>); 5] = [
    ("80% cotton 40% polyester", Some("120")),
    ("60% cotten 40% polyestre <img src=x onerror=document.title='ran'>", None),
    ("100% cashmilon", Some("cashmilon")),
    ("-5% cotton 105% polyester", Some("100")),
    ("", Some("Nothing here yet")),
];

pub async fn a_bad_label_keeps_the_last_answer_and_says_what_is_wrong(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let job = desk.job();
    job.verdict().says("Trial first").await?;
    let mut last = job.verdict().read().await?;
    for (label, wrong) in BAD_LABELS {
        if label.is_empty() {
            job.label().write(label).await?;
        } else {
            job.label().fill(label).await?;
        }
        desk.settle().await?;
        let now = job.verdict().read().await?;
        match wrong {
            None => last = now,
            Some(wrong) => {
                job.label_error().says(wrong).await?;
                ensure!(now == last, "`{label}` changed the last answer from `{last}` to `{now}`");
            }
        }
    }
    let title = desk.session().run("return document.title", vec![]).await?;
    ensure!(title != "ran", "markup in a label was run");
    job.label().fill("100% cotton jersey, 150 g/m2, black").await?;
    job.verdict().says("Go").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}
