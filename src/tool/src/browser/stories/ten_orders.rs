//! The week at Harbour Lane, order after order, as a person taps through it.

use crate::browser::drive::fixture::Fixture;
use anyhow::{Context, Result, ensure};
use serde_json::json;

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

/// Opens the week's list and taps the order whose title begins with this number.
const CHOOSE: &str = "
    const root = document.querySelector('whitehold-desk').shadowRoot;
    root.querySelector('details.week').open = true;
    const row = Array.from(root.querySelectorAll('details.week button')).find((row) => row.textContent.trim().startsWith(arguments[0]));
    row?.click();
    return row !== undefined;";

pub async fn each_answer_is_one_a_press_lead_would_accept(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    for (id, verdicts, whites) in ACCEPTED {
        ensure!(desk.run(CHOOSE, vec![json!(id)]).await? == true, "{id} is not in the week's list");
        desk.says("h1", id).await?;
        desk.settles().await?;
        let verdict = desk.shows("#verdict").await?;
        ensure!(verdicts.contains(&verdict.as_str()), "{id}: the page says `{verdict}`");
        let white = desk.text("[data-fact=white]").await?.unwrap_or_default();
        ensure!(whites.contains(&white.as_str()), "{id}: the page says `{verdict}` with `{white}`");
    }
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn a_bad_label_keeps_the_last_answer_and_says_what_is_wrong(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.says("#verdict", "Trial first").await?;
    let mut last = desk.shows("#verdict").await?;
    let rows = [
        ("80% cotton 40% polyester", "120"),
        ("60% cotten 40% polyestre <img src=x onerror=document.title='ran'>", ""),
        ("100% cashmilon", "cashmilon"),
        ("-5% cotton 105% polyester", "100"),
        ("", "Nothing here yet"),
    ];
    for (label, word) in rows {
        desk.types("#label", label).await?;
        if label.is_empty() {
            desk.run(
                "const field = document.querySelector('whitehold-desk').shadowRoot.querySelector('#label');
                field.value = ''; field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));",
                vec![],
            )
            .await?;
        }
        desk.settles().await?;
        let now = desk.shows("#verdict").await?;
        if word.is_empty() {
            last = now;
            continue;
        }
        desk.says("[data-error-for=label]", word).await?;
        ensure!(now == last, "`{label}` changed the last answer from `{last}` to `{now}`");
    }
    let title = desk.run("return document.title", vec![]).await?;
    ensure!(title.as_str().context("a title")? != "ran", "markup in a label was run");
    desk.types("#label", "100% cotton jersey, 150 g/m2, black").await?;
    desk.says("#verdict", "Go").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
