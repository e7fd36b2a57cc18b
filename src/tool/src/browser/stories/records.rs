//! The shop's records, by touch: written, changed, taken back, carried away and brought home.

use crate::browser::bench::Bench;
use crate::browser::desk::Desk;
use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// A folder of this name for downloads, empty.
fn folder(bench: &Bench, name: &str) -> Result<PathBuf> {
    let folder = bench.workshop.target().join("stories").join(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// Opens the Library screen of a browser that nobody used before.
async fn opens(bench: &Bench) -> Result<Desk> {
    let desk = bench.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.goes_to(&format!("{}#library", bench.file()?)).await?;
    desk.shows(".hits").await?;
    // The store opens after the page: what it holds may move what is on the screen.
    desk.settles().await?;
    Ok(desk)
}

/// What a button does, as a selector.
fn does(act: &str) -> String {
    format!("[data-do=\"{act}\"]")
}

/// Fills the column of this label in the open form.
async fn fills(desk: &Desk, label: &str, text: &str) -> Result<()> {
    let find = "const root = document.querySelector('whitehold-desk').shadowRoot;
        for (const label of root.querySelectorAll('#form label'))
            if (label.textContent.startsWith(arguments[0])) return label.htmlFor; return null;";
    let id = desk.run(find, vec![json!(label)]).await?;
    let id = id.as_str().with_context(|| format!("the form has no `{label}`"))?.to_owned();
    let set =
        "const field = document.querySelector('whitehold-desk').shadowRoot.getElementById(arguments[0]);
        field.value = arguments[1];
        field.dispatchEvent(new Event('input', { bubbles: true, composed: true }));
        return field.value;";
    let holds = desk.run(set, vec![json!(id), json!(text)]).await?;
    ensure!(holds == text, "`{label}` took {holds} for {text}");
    Ok(())
}

/// Opens a file as a person does who chooses it.
async fn brings(desk: &Desk, name: &str, text: &str) -> Result<()> {
    let choose =
        "const input = document.querySelector('whitehold-desk').shadowRoot.getElementById('open-file');
        const files = new DataTransfer();
        files.items.add(new File([arguments[1]], arguments[0]));
        input.files = files.files;
        input.dispatchEvent(new Event('change', { bubbles: true, composed: true }));";
    desk.run(choose, vec![json!(name), json!(text)]).await?;
    desk.shows("#incoming").await?;
    Ok(())
}

/// Taps a link and reads the file that comes.
async fn carries_away(desk: &Desk, link: &str, folder: &Path) -> Result<String> {
    let wish = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    desk.devtools("Browser.setDownloadBehavior", wish).await?;
    desk.taps(link).await?;
    let start = Instant::now();
    loop {
        let done = std::fs::read_dir(folder)?
            .filter_map(Result::ok)
            .map(|entry| entry.path())
            .find(|path| path.extension().is_some_and(|it| it != "crdownload"));
        if let Some(file) = done {
            return crate::workshop::read(&file);
        }
        ensure!(start.elapsed() < Duration::from_secs(10), "no file came from {link}");
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
}

async fn writes_a_white(desk: &Desk, name: &str, price: &str) -> Result<()> {
    desk.taps(&does("look:1")).await?;
    desk.settles().await?;
    desk.taps(&does("new:2")).await?;
    desk.shows("#form").await?;
    fills(desk, "name", name).await?;
    fills(desk, "class", "soft").await?;
    fills(desk, "price a kilogram", price).await?;
    desk.taps(&does("put")).await?;
    desk.says("#rech", name).await
}

/// A white is written from its data sheet, changed, taken back, brought back; a wrong number is named beside its field.
pub async fn a_white_is_written_changed_and_brought_back(bench: &Bench) -> Result<()> {
    let desk = opens(bench).await?;
    desk.taps(&does("look:1")).await?;
    desk.settles().await?;
    desk.taps(&does("new:2")).await?;
    desk.shows("#form").await?;
    fills(&desk, "name", "Heron").await?;
    fills(&desk, "class", "soft").await?;
    fills(&desk, "price a kilogram", "cheap").await?;
    desk.taps(&does("put")).await?;
    desk.says("#form", "cheap").await?;
    fills(&desk, "price a kilogram", "9.5").await?;
    desk.taps(&does("put")).await?;
    desk.says("#rech", "Heron").await?;
    desk.says(".holds", "9.5").await?;
    desk.taps(&does("edit")).await?;
    fills(&desk, "price a kilogram", "11").await?;
    desk.taps(&does("put")).await?;
    desk.says(".hist", "9.5").await?;
    // Undo and redo are the records' own on this screen.
    desk.taps(".head [aria-label=\"Undo\"]").await?;
    desk.says(".holds", "9.5").await?;
    desk.taps(".head [aria-label=\"Redo\"]").await?;
    desk.says(".holds", "11").await?;
    desk.taps(".hist [data-do^=\"back:\"]").await?;
    desk.says(".holds", "9.5").await?;
    desk.is_saved().await?;
    desk.reloads().await?;
    desk.shows(".hits").await?;
    desk.types("#q", "heron").await?;
    desk.says(".find-n", "0 of").await?;
    desk.taps(&does("look:1")).await?;
    desk.says(".hits", "Heron").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

/// The cloth of the order is kept, found by a misspelt word, and printed on again.
pub async fn the_cloth_of_an_order_is_kept_and_found(bench: &Bench) -> Result<()> {
    let desk = opens(bench).await?;
    desk.taps(&does("keep-cloth")).await?;
    desk.says("#rech", "olyester").await?;
    desk.says("#rec .hits", "HL-2031").await?;
    desk.types("#q", "polyster").await?;
    desk.says(".hits", "yours").await?;
    desk.taps(&does("take")).await?;
    desk.shows("#verdict").await?;
    desk.is_closed().await
}

/// Two tablets write, one file goes over, and both versions of what they differ on are shown for choice.
pub async fn two_tablets_are_merged_and_nothing_is_lost(bench: &Bench) -> Result<()> {
    let first = opens(bench).await?;
    writes_a_white(&first, "Heron", "9.5").await?;
    let file = carries_away(&first, "#save-library", &folder(bench, "merge-one")?).await?;
    let second = opens(bench).await?;
    brings(&second, "one.jsonl", &file).await?;
    second.says("#incoming .counts", "lost").await?;
    second.taps(&does("apply")).await?;
    second.taps(&does("look:1")).await?;
    for (desk, price) in [(&first, "10"), (&second, "12")] {
        desk.types("#q", "heron").await?;
        desk.taps(".hits button").await?;
        desk.taps(&does("edit")).await?;
        fills(desk, "price a kilogram", price).await?;
        desk.taps(&does("put")).await?;
        desk.says(".holds", price).await?;
    }
    let file = carries_away(&second, "#save-library", &folder(bench, "merge-two")?).await?;
    brings(&first, "two.jsonl", &file).await?;
    first.says("#incoming .differ", "10").await?;
    first.says("#incoming .differ", "12").await?;
    first.taps("#incoming .differ [aria-pressed=\"false\"]").await?;
    first.taps(&does("apply")).await?;
    first.says(".holds", "12").await?;
    // The same file again brings nothing.
    brings(&first, "two.jsonl", &file).await?;
    first.says("#incoming", "All of it is here already").await?;
    first.taps(&does("leave")).await?;
    // One undo takes the merge back.
    first.taps(".head [aria-label=\"Undo\"]").await?;
    first.says(".holds", "10").await?;
    second.is_closed().await?;
    first.is_closed().await
}

/// A table with a bad row is held back whole; mended it comes in, and goes out again as a table.
pub async fn a_table_with_a_bad_row_is_held_back(bench: &Bench) -> Result<()> {
    let desk = opens(bench).await?;
    brings(&desk, "whites.csv", "name,class\nEgret,soft\nCrane,sofd\n").await?;
    desk.says("#incoming", "Row 3").await?;
    ensure!(desk.text(&does("apply")).await?.is_none(), "a wrong table can be brought in");
    desk.taps(&does("leave")).await?;
    brings(&desk, "whites.csv", "name,class\nEgret,soft\nCrane,stretch\n").await?;
    desk.taps(&does("apply")).await?;
    desk.taps(&does("look:1")).await?;
    desk.says(".hits", "Egret").await?;
    let table = carries_away(&desk, "#table-1", &folder(bench, "table")?).await?;
    ensure!(table.contains("\r\ncrane,Crane,stretch,no,"), "the table lacks a white:\n{table}");
    desk.taps(".head [aria-label=\"Undo\"]").await?;
    desk.types("#q", "egret").await?;
    desk.says(".find-n", "0 of").await?;
    for (name, text) in
        [("notes.txt", "hello"), ("cut.jsonl", "{\"format\":\"whitehold-library\",\"version\":2}")]
    {
        brings(&desk, name, text).await?;
        desk.says("#incoming", "was not taken").await?;
        desk.taps(&does("leave")).await?;
    }
    desk.is_closed().await
}

/// Changes of each of two tabs.
const CHANGES: u64 = 20;

/// Two tabs of one tablet write by turns, and both show everything.
pub async fn two_tabs_write_by_turns(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens(&format!("{}#library", bench.site(""))).await?;
    desk.shows(".hits").await?;
    desk.opens_tab(&format!("{}#library", bench.site(""))).await?;
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

/// News that comes between finger down and finger up draws the list anew; the tap counts all the same, and once.
pub async fn a_tap_outlives_a_redraw(bench: &Bench) -> Result<()> {
    let desk = opens(bench).await?;
    desk.taps(&does("look:1")).await?;
    desk.shows(&does("new:2")).await?;
    let gone = desk.run(
        "const root = document.querySelector('whitehold-desk').shadowRoot;
        const button = () => root.querySelector('[data-do=\"new:2\"]');
        const press = (kind) => button().dispatchEvent(new PointerEvent(kind, { bubbles: true, composed: true }));
        const pressed = button();
        press('pointerdown');
        const search = root.querySelector('#q');
        search.value = 'gannet';
        search.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
        return new Promise((then) => requestAnimationFrame(() => setTimeout(() => {
            press('pointerup');
            then(!pressed.isConnected);
        })));",
        vec![],
    );
    ensure!(gone.await? == true, "the list was not drawn anew");
    desk.shows("#form").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
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
pub async fn a_thousand_edits_of_two_tabs_are_all_there(bench: &Bench) -> Result<()> {
    let address = format!("{}#library", bench.site(""));
    let desk = bench.tablet().opens(&address).await?;
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

/// A file that the browser lets the page write is written anew after every change; one that is gone is said, and the
/// person chooses another. The dialogue is the browser's own, so a script answers in its place, with a real file of the
/// page's private folder.
pub async fn a_file_on_the_disk_is_kept_up_to_date(bench: &Bench) -> Result<()> {
    let picker = "window.showSaveFilePicker = async () => {
            if (window.wish === 'none') throw new DOMException('no', 'AbortError');
            if (window.wish === 'gone') return { createWritable: async () => { throw new DOMException('it is gone', 'NotFoundError'); } };
            const folder = await navigator.storage.getDirectory();
            return folder.getFileHandle('kept.jsonl', { create: true });
        };";
    let desk = bench.tablet().without(picker).opens(&format!("{}#library", bench.site(""))).await?;
    desk.shows(".hits").await?;
    desk.settles().await?;
    let text = "const end = arguments[arguments.length - 1];
        navigator.storage.getDirectory()
            .then((folder) => folder.getFileHandle('kept.jsonl'))
            .then((handle) => handle.getFile()).then((file) => file.text()).then(end, () => end(''));";
    let holds = async |word: &str| -> Result<()> {
        let start = Instant::now();
        loop {
            let read = desk.awaits(text, vec![]).await?;
            let read = read.as_str().unwrap_or_default();
            // A file is whole or the one before it: header and checksum stand in it whenever it is read.
            let whole = read.starts_with("{\"format\"")
                && read.trim_end().ends_with("\"}")
                && read.contains("\"sha256\"");
            ensure!(read.is_empty() || whole, "half a file: {read}");
            if whole && read.contains(word) {
                return Ok(());
            }
            ensure!(start.elapsed() < Duration::from_secs(10), "`{word}` is not in the file:\n{read}");
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    };
    desk.run("window.wish = 'none'", vec![]).await?;
    desk.taps(&does("handle")).await?;
    desk.settles().await?;
    let pressed = "return document.querySelector('whitehold-desk').shadowRoot.querySelector('[data-do=handle]').getAttribute('aria-pressed')";
    ensure!(desk.run(pressed, vec![]).await? == "false", "no file was chosen, and one is said to be");
    desk.run("window.wish = 'one'", vec![]).await?;
    desk.taps(&does("handle")).await?;
    holds("\"sha256\"").await?;
    writes_a_white(&desk, "Heron", "9.5").await?;
    holds("Heron").await?;
    for number in 1..=5 {
        writes_a_white(&desk, &format!("Egret {number}"), "8").await?;
    }
    holds("Egret 5").await?;
    ensure!(desk.run(pressed, vec![]).await? == "true", "the file is kept, and not said to be");
    desk.is_saved().await?;

    desk.run("window.wish = 'gone'", vec![]).await?;
    desk.taps(&does("handle")).await?;
    desk.says("#trouble", "it is gone").await?;
    desk.settles().await?;
    ensure!(desk.run(pressed, vec![]).await? == "false", "the file is gone, and said to be kept");
    writes_a_white(&desk, "Crane", "7").await?;
    desk.is_saved().await?;
    desk.is_closed().await
}

/// Names the order in the form; the field is one that is seldom looked at, further down.
async fn names_the_order(desk: &Desk, name: &str) -> Result<()> {
    let set = "const field = document.querySelector('whitehold-desk').shadowRoot.getElementById('title');
        field.value = arguments[0];
        field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));";
    desk.run(set, vec![json!(name)]).await?;
    desk.says("h1", name).await
}

/// The order in the form is kept with one tap, found in the Library, and put into the form again.
pub async fn an_order_is_kept_and_printed_again(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.settles().await?;
    names_the_order(&desk, "gulls for the rowing club").await?;
    desk.taps("#keep-order").await?;
    desk.says("#keep-order + span", "Kept in the library").await?;
    desk.is_saved().await?;
    names_the_order(&desk, "something else").await?;
    desk.says("h1", "something else").await?;
    ensure!(
        desk.text("#keep-order + span").await?.unwrap_or_default().is_empty(),
        "another order is called kept"
    );
    desk.reloads().await?;
    desk.goes_to(&format!("{}#library", bench.file()?)).await?;
    desk.shows(".hits").await?;
    desk.settles().await?;
    desk.taps(&does("look:4")).await?;
    desk.says(".hits", "gulls for the rowing club").await?;
    desk.taps(".hits button").await?;
    desk.says("#rech", "gulls for the rowing club").await?;
    desk.taps(&does("take")).await?;
    desk.says("h1", "gulls for the rowing club").await?;
    desk.says("#keep-order + span", "Kept in the library").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
