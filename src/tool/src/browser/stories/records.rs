//! The shop's records, by touch: written, changed, taken back, carried away and brought home.

use super::library::{brings, carries_away, does, fills, folder, opens, writes_a_white};
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Result, ensure};
use serde_json::json;
use std::time::{Duration, Instant};

/// A white is written from its data sheet, changed, taken back, brought back; a wrong number is named beside its field.
pub async fn a_white_is_written_changed_and_brought_back(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture).await?;
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
pub async fn the_cloth_of_an_order_is_kept_and_found(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture).await?;
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
pub async fn two_tablets_are_merged_and_nothing_is_lost(fixture: &Fixture) -> Result<()> {
    let first = opens(fixture).await?;
    writes_a_white(&first, "Heron", "9.5").await?;
    let file = carries_away(&first, "#save-library", &folder(fixture, "merge-one")?).await?;
    let second = opens(fixture).await?;
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
    let file = carries_away(&second, "#save-library", &folder(fixture, "merge-two")?).await?;
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
pub async fn a_table_with_a_bad_row_is_held_back(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture).await?;
    brings(&desk, "whites.csv", "name,class\nEgret,soft\nCrane,sofd\n").await?;
    desk.says("#incoming", "Row 3").await?;
    ensure!(desk.text(&does("apply")).await?.is_none(), "a wrong table can be brought in");
    desk.taps(&does("leave")).await?;
    brings(&desk, "whites.csv", "name,class\nEgret,soft\nCrane,stretch\n").await?;
    desk.taps(&does("apply")).await?;
    desk.taps(&does("look:1")).await?;
    desk.says(".hits", "Egret").await?;
    let table = carries_away(&desk, "#table-1", &folder(fixture, "table")?).await?;
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
/// News that comes between finger down and finger up draws the list anew; the tap counts all the same, and once.
pub async fn a_tap_outlives_a_redraw(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture).await?;
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
/// A file that the browser lets the page write is written anew after every change; one that is gone is said, and the
/// person chooses another. The dialogue is the browser's own, so a script answers in its place, with a real file of the
/// page's private folder.
pub async fn a_file_on_the_disk_is_kept_up_to_date(fixture: &Fixture) -> Result<()> {
    let picker = "window.showSaveFilePicker = async () => {
            if (window.wish === 'none') throw new DOMException('no', 'AbortError');
            if (window.wish === 'gone') return { createWritable: async () => { throw new DOMException('it is gone', 'NotFoundError'); } };
            const folder = await navigator.storage.getDirectory();
            return folder.getFileHandle('kept.jsonl', { create: true });
        };";
    let desk = fixture.tablet().without(picker).opens(&format!("{}#library", fixture.page.site(""))).await?;
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
pub async fn an_order_is_kept_and_printed_again(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
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
    desk.goes_to(&format!("{}#library", fixture.page.file()?)).await?;
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
