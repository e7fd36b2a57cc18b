//! Two tabs of one tablet write the same records, by turns and as fast as they can.

use super::library::{does, fills};
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Changes of each of two tabs.
const CHANGES: u64 = 20;

/// Two tabs of one tablet write by turns, and both show everything.
pub async fn two_tabs_write_by_turns(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens(&format!("{}#library", fixture.page.site(""))).await?;
    desk.shows(".hits").await?;
    desk.opens_tab(&format!("{}#library", fixture.page.site(""))).await?;
    desk.shows(".hits").await?;
    for number in 0..CHANGES {
        for tab in [0, 1] {
            desk.turns_to(tab).await?;
            // What the other tab wrote is drawn here first: a tap that begins before it and ends after it meets nothing.
            desk.settles().await?;
            let mesh = format!("mesh-{tab}-{number}");
            write_mesh(&desk, &mesh).await.with_context(|| mesh.clone())?;
        }
    }
    for tab in [0, 1] {
        desk.turns_to(tab).await?;
        desk.is_saved().await?;
        desk.reloads().await?;
        desk.shows(".hits").await?;
        let counts = desk.shows(&does("look:3")).await?;
        let found: u64 = counts.rsplit(' ').next().and_then(|it| it.parse().ok()).context("no count")?;
        ensure!(found >= 2 * CHANGES, "of {} meshes {found} are there", 2 * CHANGES);
    }
    desk.is_closed().await
}

async fn write_mesh(desk: &Desk, name: &str) -> Result<Value> {
    desk.taps(&does("look:3")).await?;
    desk.settles().await?;
    desk.taps(&does("new:8")).await?;
    desk.shows("#form").await?;
    for (label, text) in [
        ("name", name),
        ("threads a centimetre", "60"),
        ("thread,", "60"),
        ("thickness", "100"),
        ("stencil above", "20"),
    ] {
        fills(desk, label, text).await?;
    }
    desk.taps(&does("put")).await?;
    desk.says("#rech", name).await?;
    match desk.text("#form").await? {
        None => Ok(Value::Null),
        Some(form) => bail!("the form stays: {form}"),
    }
}
/// Edits of each of two tabs, by turns of a few milliseconds.
const EDITS: u64 = 500;

/// Records that both tabs edit.
const SHARED: usize = 10;

/// What both tabs do: write as fast as they can, each edit another weight and note of a tub that the other tab
/// writes about too.
const EDIT: &str = "
    const root = document.querySelector('whitehold-desk').shadowRoot;
    const desk = root.querySelector('.desk');
    const afterwards = () => new Promise((yes) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = yes;
        port2.postMessage(null);
    });
    const seen = async (selector) => { while (!root.querySelector(selector)) await afterwards(); };
    const tap = (act) => root.querySelector(`[data-do=\"${act}\"]`).click();
    const fill = (label, text) => {
        const found = [...root.querySelectorAll('#form label')].find((it) => it.textContent.startsWith(label));
        const field = root.getElementById(found.htmlFor);
        field.value = text;
        field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    };
    const [word, edits, shared] = arguments;
    window.finished = 0;
    (async () => {
        for (let number = 1; number <= edits; number += 1) {
            const record = `3 gannet/tub-${number % shared}`;
            if (!root.querySelector(`[data-do=\"see:${record}\"]`)) throw Error(record);
            tap(`see:${record}`);
            await seen('[data-do=\"edit\"]');
            tap('edit');
            await seen('#form');
            fill('left, kg', String(number));
            fill('note', `${word} ${number}`);
            tap('put');
            await afterwards();
            while (desk.dataset.saved !== 'true') await afterwards();
            window.finished = number;
        }
    })().catch((error) => { window.finished = String(error); });";

/// Begins a tub of a white that ships.
async fn opens_a_tub(desk: &Desk, name: &str) -> Result<()> {
    desk.types("#q", "gannet").await?;
    desk.taps(&does("see:2 gannet")).await?;
    desk.taps(&does("new:3 gannet")).await?;
    desk.shows("#form").await?;
    fills(desk, "name", name).await?;
    desk.taps(&does("put")).await?;
    desk.says("#rec .hits", name).await
}

/// Two tabs edit the same ten records by turns, a thousand times: every edit is in the database once, and both tabs
/// show all of them.
pub async fn a_thousand_edits_of_two_tabs_are_all_there(fixture: &Fixture) -> Result<()> {
    let address = format!("{}#library", fixture.page.site(""));
    let desk = fixture.tablet().opens(&address).await?;
    desk.shows(".hits").await?;
    desk.settles().await?;
    desk.taps(&does("look:1")).await?;
    for number in 0..SHARED {
        opens_a_tub(&desk, &format!("tub-{number}")).await?;
    }
    desk.is_saved().await?;
    desk.opens_tab(&address).await?;
    for tab in [0, 1] {
        desk.turns_to(tab).await?;
        desk.shows(".hits").await?;
        desk.taps(&does("look:1")).await?;
        desk.types("#q", "tub").await?;
        desk.says(".find-n", &format!("{SHARED} of")).await?;
    }
    for (tab, word) in [(0, "one"), (1, "other")] {
        desk.turns_to(tab).await?;
        desk.run(EDIT, vec![json!(word), json!(EDITS), json!(SHARED)]).await?;
    }
    let start = Instant::now();
    for tab in [0, 1] {
        desk.turns_to(tab).await?;
        loop {
            let finished = desk.run("return window.finished", vec![]).await?;
            if finished == EDITS {
                break;
            }
            ensure!(finished.is_u64(), "tab {tab}: {finished}");
            ensure!(start.elapsed() < Duration::from_secs(280), "tab {tab} came to {finished} of {EDITS}");
            tokio::time::sleep(Duration::from_millis(200)).await;
        }
    }
    let read = "const end = arguments[arguments.length - 1];
        indexedDB.open('whitehold').onsuccess = (event) => {
            const parts = event.target.result.transaction(['journal', 'segments']);
            parts.objectStore('journal').getAll().onsuccess = (rows) => {
                parts.objectStore('segments').getAll().onsuccess = (texts) => {
                    const lines = texts.target.result.flatMap((text) => text.split('\\n').filter(Boolean))
                        .concat(rows.target.result.filter((row) => row[2] === undefined).map((row) => row[1]));
                    end(lines.map((line) => JSON.parse(line).change.edit.edits[0].put.fields.note)
                        .filter((note) => / [0-9]+$/.test(note ?? '')));
                };
            };
        };";
    let read = desk.awaits(read, vec![]).await?;
    let there: Vec<&str> = read.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    let kept: std::collections::BTreeSet<&str> = there.iter().copied().collect();
    ensure!(kept.len() as u64 == 2 * EDITS, "{} of {} edits are there", kept.len(), 2 * EDITS);
    ensure!(there.len() == kept.len(), "{} edits came twice", there.len() - kept.len());
    for tab in [0, 1] {
        desk.turns_to(tab).await?;
        desk.reloads().await?;
        desk.shows(".hits").await?;
        desk.taps(&does("look:1")).await?;
        desk.types("#q", "tub").await?;
        let mut shown = 0;
        for number in 0..SHARED {
            desk.taps(&does(&format!("see:3 gannet/tub-{number}"))).await?;
            desk.says("#rech", &format!("tub-{number}")).await?;
            let moments = "return document.querySelector('whitehold-desk').shadowRoot.querySelectorAll('.hist li').length";
            shown += desk.run(moments, vec![]).await?.as_u64().context("no count")?;
        }
        let all = 2 * EDITS + SHARED as u64;
        ensure!(shown == all, "tab {tab} shows {shown} of {all} moments");
    }
    desk.is_closed().await
}
