//! What nobody should write, and somebody does: into every field of every screen, and into every form of the Library.

use super::library::{does, fills, opens};
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Result, ensure};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// Nothing, too much, too little, a wrong unit, what is pasted from elsewhere, pictures, other directions, markup.
const BAD: [&str; 10] = [
    "",
    "999999999999999999999",
    "-5",
    "330 °F oz",
    "\t12,5\u{a0}°C\r\nand\u{200b} a second line\r\n",
    "🙂🙂",
    "שלום \u{202e}abc",
    "<img src=x onerror=alert(1)><b>&lt;",
    "\" onfocus=alert(1) x='",
    "1e309 NaN Infinity",
];

/// Those of them that no field for a number may take in silence.
const NO_NUMBER: [&str; 4] =
    ["🙂🙂", "שלום \u{202e}abc", "<img src=x onerror=alert(1)><b>&lt;", "1e309 NaN Infinity"];

/// Writes a text into every field that is on the screen, opened parts and all. Hands back the fields by their names, those
/// for numbers that were not marked as wrong, and how much markup there is now.
const WRITES: &str = "const [text, place, done] = arguments;
    const root = document.querySelector('whitehold-desk').shadowRoot;
    for (const part of root.querySelectorAll('details')) part.open = true;
    const all = Array.from(root.querySelectorAll('input:not([type=file], [type=range], [type=date]), textarea'))
        .filter((it) => it.closest(place));
    for (const field of all) {
        field.value = text;
        field.dispatchEvent(new Event('input', { bubbles: true, composed: true }));
        field.dispatchEvent(new Event('blur'));
    }
    const silent = () => all.filter((it) => it.isConnected && ['decimal', 'numeric'].includes(it.inputMode)
        && it.value === text && it.getAttribute('aria-invalid') !== 'true').map((it) => it.id);
    setTimeout(() => done([all.map((it) => it.id), silent(), root.querySelectorAll('img, main b b, script').length]), 250);";

/// Writes everything bad into every field of a place; hands back the fields.
async fn writes(desk: &Desk, screen: &str, place: &str, marks: bool) -> Result<BTreeSet<String>> {
    let mut fields = BTreeSet::new();
    for bad in BAD.into_iter().chain(["a".repeat(20_000).as_str()]) {
        let seen = desk.awaits(WRITES, vec![json!(bad), json!(place)]).await?;
        let list = |at: usize| seen[at].as_array().into_iter().flatten().filter_map(Value::as_str);
        fields.extend(list(0).map(|id| format!("{screen}: {id}")));
        let silent: Vec<_> = list(1).filter(|_| marks && NO_NUMBER.contains(&bad)).collect();
        ensure!(silent.is_empty(), "{screen}: {silent:?} take `{bad}` for a number");
        ensure!(seen[2] == 0, "{screen}: `{bad}` became markup");
    }
    Ok(fields)
}

/// Every field of every screen takes whatever is written: the last answer stays, nothing runs, and the words are words.
pub async fn every_field_takes_whatever_is_written(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    let mut fields = BTreeSet::new();
    for screen in ["forecast", "window", "wrong", "settings", "shop", "library", "sheet", "job"] {
        desk.goes_to(&format!("{}#{screen}", fixture.page.file()?)).await?;
        desk.settles().await?;
        if screen == "wrong" {
            desk.taps(&does("0")).await?;
            desk.settles().await?;
        }
        fields.extend(writes(&desk, screen, "main", true).await?);
        if screen == "wrong" {
            desk.says("#causes", "cannot be read").await?;
        }
    }
    ensure!(fields.len() >= 27, "only into these was something written: {fields:?}");
    desk.shows("#verdict").await?;
    desk.shows(".stale").await?;
    desk.taps(".stale button").await?;
    desk.says("#verdict", "Trial first").await?;
    // A field that lies in a closed fold is told above the answer that stays.
    desk.settles().await?;
    ensure!(desk.text(".stale").await?.is_none(), "the form can be read again");
    let folded = "const root = document.querySelector('whitehold-desk').shadowRoot;
        const field = root.querySelector('details input[inputmode=decimal]');
        field.closest('details').open = false;
        field.value = '5000000';
        field.dispatchEvent(new Event('input', { bubbles: true, composed: true }));";
    desk.run(folded, vec![]).await?;
    desk.says(".stale", "5000000 is out of range").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

/// So does every form of the Library; a number that is none is named, and the record waits.
pub async fn every_form_of_the_library_takes_whatever_is_written(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture).await?;
    let mut forms = BTreeSet::new();
    // A trial of a lot, for the forms that belong to one.
    desk.taps(&does("keep-cloth")).await?;
    desk.shows("#rech").await?;
    desk.taps("[data-do^=\"new:10 \"]").await?;
    desk.shows("#form").await?;
    fills(&desk, "lot", "HL-2031").await?;
    fills(&desk, "white", "gannet").await?;
    desk.taps(&does("put")).await?;
    desk.shows("[data-do^=\"new:11 \"]").await?;
    every_form_here(&desk, "#rec", &mut forms).await?;
    for look in 0..=4 {
        desk.taps(&does(&format!("look:{look}"))).await?;
        desk.settles().await?;
        every_form_here(&desk, "main", &mut forms).await?;
        if desk.text(".hits button").await?.is_some() {
            desk.taps(".hits button").await?;
            desk.settles().await?;
            every_form_here(&desk, "#rec", &mut forms).await?;
        }
    }
    ensure!(forms.len() >= 10, "only these forms were written into: {forms:?}");
    desk.taps("nav a[href='#job']").await?;
    desk.shows("#verdict").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

/// Opens every form that is offered in this place, writes into it, tries to keep it, and leaves it.
async fn every_form_here(desk: &Desk, place: &str, forms: &mut BTreeSet<String>) -> Result<()> {
    let offered = "return Array.from(document.querySelector('whitehold-desk').shadowRoot.querySelectorAll(
        arguments[0] + ' [data-do^=\"new:\"]'), (it) => it.dataset.do);";
    let offered = desk.run(offered, vec![json!(place)]).await?;
    for act in offered.as_array().into_iter().flatten().filter_map(Value::as_str) {
        // An order is written on the Job screen, and a cloth by its label there.
        if act == "new:9" || !forms.insert(act.split(' ').next().unwrap_or(act).to_owned()) {
            continue;
        }
        desk.taps(&does(act)).await?;
        desk.shows("#form").await?;
        writes(desk, act, "#form", false).await?;
        desk.awaits(WRITES, vec![json!(NO_NUMBER[2]), json!("#form")]).await?;
        desk.taps(&does("put")).await?;
        desk.settles().await?;
        let markup = "return document.querySelector('whitehold-desk').shadowRoot.querySelectorAll('img, main b b, script').length";
        ensure!(desk.run(markup, vec![]).await? == 0, "{act}: what was written became markup");
        if desk.text("#form").await?.is_some() {
            desk.shows("#form .err").await?;
            desk.taps(&does("drop")).await?;
            desk.settles().await?;
        }
    }
    Ok(())
}
