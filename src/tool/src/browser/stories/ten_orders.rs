//! The week at Harbour Lane, order after order, as a person taps through it.

use crate::browser::fixture::Fixture;
use anyhow::{Context, Result, bail, ensure};
use serde_json::Value;

/// The orders and what is accepted of them: the table that the native tests and those of the JS package read too.
const TABLE: &str = include_str!("../../../../../tests/ten_orders.json");

/// What the page says for a verdict of the table.
fn words(verdict: &str) -> Result<&'static str> {
    Ok(match verdict {
        "go" => "Go",
        "go-with-check" => "Go, hold two",
        "trial" => "Trial first",
        "refuse" => "No",
        other => bail!("the table of the ten orders has a verdict `{other}`"),
    })
}

pub async fn each_answer_is_one_a_press_lead_would_accept(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let job = desk.job();
    let table: Value = serde_json::from_str(TABLE)?;
    for row in table["rows"].as_array().context("the table of the ten orders has rows")? {
        let id = row["id"].as_str().context("a row has the number of its order")?;
        let verdict = words(row["verdict"].as_str().context("a row has a verdict")?)?;
        // The whites that may come first; none where the order is refused.
        let first = row["first"].as_array().context("a row has whites")?;
        job.open_week_order(id).await?;
        desk.title().says(id).await?;
        desk.settle().await?;
        let said = job.verdict().read().await?;
        ensure!(said == verdict, "{id}: the page says `{said}`, not `{verdict}`");
        // A white of the demo is named by its id with a capital.
        let white = job.white().text().await?.map(|name| Value::from(name.to_lowercase()));
        let accepted = white.as_ref().map_or(first.is_empty(), |white| first.contains(white));
        ensure!(accepted, "{id}: the page says `{said}` with {white:?}, accepted: {first:?}");
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
