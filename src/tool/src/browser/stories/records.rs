//! The shop's records, by touch: written, changed, taken back, carried away and brought home.

use super::files::{bring, download_text, open_library};
use crate::browser::drive::patience::until;
use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use anyhow::{Result, ensure};
use std::time::Duration;

/// A white is written from its data sheet, changed, taken back, brought back; a wrong number is named beside its field.
pub async fn a_white_is_written_changed_and_brought_back(fixture: &Fixture) -> Result<()> {
    let desk = open_library(fixture).await?;
    let library = desk.library();
    library.look_in("Whites").await?;
    desk.settle().await?;
    let form = library.begin(library.new_white()).await?;
    form.fill("name", "Heron").await?;
    form.fill("class", "soft").await?;
    form.fill("price a kilogram", "cheap").await?;
    form.keep().tap().await?;
    form.all().says("cheap").await?;
    form.fill("price a kilogram", "9.5").await?;
    form.keep().tap().await?;
    library.name().says("Heron").await?;
    library.holds().says("9.5").await?;
    let form = library.begin(library.change()).await?;
    form.fill("price a kilogram", "11").await?;
    form.keep().tap().await?;
    library.past().says("9.5").await?;
    // Undo and redo are the records' own on this screen.
    desk.undo().await?;
    library.holds().says("9.5").await?;
    desk.redo().await?;
    library.holds().says("11").await?;
    library.bring_back().tap().await?;
    library.holds().says("9.5").await?;
    desk.is_saved().await?;
    desk.reload().await?;
    library.hits().read().await?;
    library.search().fill("heron").await?;
    library.found().says("0 of").await?;
    library.look_in("Whites").await?;
    library.hits().says("Heron").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}

/// The cloth of the order is kept, found by a misspelt word, and printed on again.
pub async fn the_cloth_of_an_order_is_kept_and_found(fixture: &Fixture) -> Result<()> {
    let desk = open_library(fixture).await?;
    let library = desk.library();
    library.keep_cloth().tap().await?;
    library.name().says("olyester").await?;
    library.belongs().says("HL-2031").await?;
    library.search().fill("polyster").await?;
    library.hits().says("yours").await?;
    library.print_on_this().tap().await?;
    desk.job().verdict().read().await?;
    desk.close().await
}

/// Two tablets write, one file goes over, and both versions of what they differ on are shown for choice.
pub async fn two_tablets_are_merged_and_nothing_is_lost(fixture: &Fixture) -> Result<()> {
    let folder = fixture.empty_folder("merge")?;
    let first = open_library(fixture).await?;
    first.library().write_white("Heron", "9.5").await?;
    let text = download_text(fixture, &first, first.library().save_library(), "merge-one").await?;
    let second = open_library(fixture).await?;
    bring(&second, &folder, "one.jsonl", &text).await?;
    second.library().incoming_counts().says("lost").await?;
    second.library().bring_in().tap().await?;
    second.library().look_in("Whites").await?;
    for (desk, price) in [(&first, "10"), (&second, "12")] {
        let library = desk.library();
        library.search().fill("heron").await?;
        library.hit().named("Heron").tap().await?;
        let form = library.begin(library.change()).await?;
        form.fill("price a kilogram", price).await?;
        form.keep().tap().await?;
        library.holds().says(price).await?;
    }
    let text = download_text(fixture, &second, second.library().save_library(), "merge-two").await?;
    let library = first.library();
    bring(&first, &folder, "two.jsonl", &text).await?;
    library.incoming_differs().says("10").await?;
    library.incoming_differs().says("12").await?;
    library.other_claim().tap().await?;
    library.bring_in().tap().await?;
    library.holds().says("12").await?;
    // The same file again brings nothing.
    bring(&first, &folder, "two.jsonl", &text).await?;
    library.incoming().says("All of it is here already").await?;
    library.leave_file().tap().await?;
    // One undo takes the merge back.
    first.undo().await?;
    library.holds().says("10").await?;
    second.close().await?;
    first.close().await
}

/// A table with a bad row is held back whole; mended it comes in, and goes out again as a table.
pub async fn a_table_with_a_bad_row_is_held_back(fixture: &Fixture) -> Result<()> {
    let folder = fixture.empty_folder("tables")?;
    let desk = open_library(fixture).await?;
    let library = desk.library();
    bring(&desk, &folder, "whites.csv", "name,class\nEgret,soft\nCrane,sofd\n").await?;
    library.incoming().says("Row 3").await?;
    ensure!(!library.bring_in().is_seen().await?, "a wrong table can be brought in");
    library.leave_file().tap().await?;
    bring(&desk, &folder, "whites.csv", "name,class\nEgret,soft\nCrane,stretch\n").await?;
    library.bring_in().tap().await?;
    library.look_in("Whites").await?;
    library.hits().says("Egret").await?;
    let table = download_text(fixture, &desk, library.save_whites(), "table").await?;
    ensure!(table.contains("\r\ncrane,Crane,stretch,no,"), "the table lacks a white:\n{table}");
    desk.undo().await?;
    library.search().fill("egret").await?;
    library.found().says("0 of").await?;
    for (name, text) in
        [("notes.txt", "hello"), ("cut.jsonl", "{\"format\":\"whitehold-library\",\"version\":2}")]
    {
        bring(&desk, &folder, name, text).await?;
        library.incoming().says("was not taken").await?;
        library.leave_file().tap().await?;
    }
    desk.close().await
}

/// The finger goes down on a button, the list is drawn anew by what is typed meanwhile, and the finger goes up. Hands back
/// whether the button was replaced.
const PRESS_WHILE_REDRAWN: &str = "
    const press = (kind) => find(PARTS.newWhite).dispatchEvent(new PointerEvent(kind, { bubbles: true, composed: true }));
    const pressed = find(PARTS.newWhite);
    press('pointerdown');
    write(find(PARTS.search), 'gannet');
    await nextFrame();
    press('pointerup');
    return !pressed.isConnected;";

/// News that comes between finger down and finger up draws the list anew; the tap counts all the same, and once.
pub async fn a_tap_outlives_a_redraw(fixture: &Fixture) -> Result<()> {
    let desk = open_library(fixture).await?;
    let library = desk.library();
    library.look_in("Whites").await?;
    library.new_white().read().await?;
    ensure!(desk.run(PRESS_WHILE_REDRAWN, vec![]).await? == true, "the list was not drawn anew");
    library.form().all().read().await?;
    desk.has_no_complaints().await?;
    desk.close().await
}

/// Answers the browser's dialogue for a file, with a real file of the page's private folder: `window.wish` is `none` where
/// the person chooses none, `gone` where the file cannot be written.
const FILE_DIALOGUE: &str = "window.showSaveFilePicker = async () => {
        if (window.wish === 'none') throw new DOMException('no', 'AbortError');
        if (window.wish === 'gone') return { createWritable: async () => { throw new DOMException('it is gone', 'NotFoundError'); } };
        const folder = await navigator.storage.getDirectory();
        return folder.getFileHandle('kept.jsonl', { create: true });
    };";

/// The text of that file; empty if there is none.
const KEPT_FILE: &str = "try {
        const folder = await navigator.storage.getDirectory();
        return await (await (await folder.getFileHandle('kept.jsonl')).getFile()).text();
    } catch { return ''; }";

/// A file that the browser lets the page write is written anew after every change; one that is gone is said, and the
/// person chooses another.
pub async fn a_file_on_the_disk_is_kept_up_to_date(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().changed_by(FILE_DIALOGUE).open_site().await?;
    desk.go_to(DeskScreen::Library).await?;
    let library = desk.library();
    library.hits().read().await?;
    desk.settle().await?;

    choose_file(&desk, "none").await?;
    desk.settle().await?;
    ensure!(!library.keep_one_file().is_pressed().await?, "no file was chosen, and one is said to be");
    choose_file(&desk, "one").await?;
    file_holds(&desk, "\"sha256\"").await?;
    library.write_white("Heron", "9.5").await?;
    file_holds(&desk, "Heron").await?;
    for number in 1..=5 {
        library.write_white(&format!("Egret {number}"), "8").await?;
    }
    file_holds(&desk, "Egret 5").await?;
    ensure!(library.keep_one_file().is_pressed().await?, "the file is kept, and not said to be");
    desk.is_saved().await?;

    choose_file(&desk, "gone").await?;
    desk.notice().all().says("it is gone").await?;
    desk.settle().await?;
    ensure!(!library.keep_one_file().is_pressed().await?, "the file is gone, and said to be kept");
    library.write_white("Crane", "7").await?;
    desk.is_saved().await?;
    desk.close().await
}

/// Asks for a file to be kept up to date, and answers the dialogue with this wish.
async fn choose_file(desk: &DeskPage, wish: &str) -> Result<()> {
    desk.session().run("window.wish = arguments[0]", vec![wish.into()]).await?;
    desk.library().keep_one_file().tap().await
}

/// Waits until a word is in the file. A file is whole, or it is the one before it: header and checksum are in it whenever it
/// is read.
async fn file_holds(desk: &DeskPage, word: &str) -> Result<()> {
    let holds = until(format!("`{word}` is in the file"), Duration::from_secs(10), async || {
        let read = desk.run(KEPT_FILE, vec![]).await?;
        let read = read.as_str().unwrap_or_default();
        let whole = read.starts_with("{\"format\"")
            && read.trim_end().ends_with("\"}")
            && read.contains("\"sha256\"");
        ensure!(read.is_empty() || whole, "half a file: {read}");
        Ok((whole && read.contains(word)).then_some(()))
    });
    holds.await
}

/// The order in the form is kept with one tap, found in the Library, and put into the form again.
pub async fn an_order_is_kept_and_printed_again(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let (job, library) = (desk.job(), desk.library());
    job.name_order("gulls for the rowing club").await?;
    desk.title().says("gulls for the rowing club").await?;
    job.keep().tap().await?;
    job.is_kept().says("Kept in the library").await?;
    desk.is_saved().await?;
    job.name_order("something else").await?;
    desk.title().says("something else").await?;
    ensure!(job.is_kept().text().await?.unwrap_or_default().is_empty(), "another order is called kept");
    desk.reload().await?;
    desk.go_to(DeskScreen::Library).await?;
    library.hits().read().await?;
    desk.settle().await?;
    library.look_in("Orders").await?;
    library.hits().says("gulls for the rowing club").await?;
    library.hit().named("gulls for the rowing club").tap().await?;
    library.name().says("gulls for the rowing club").await?;
    library.print_again().tap().await?;
    desk.title().says("gulls for the rowing club").await?;
    job.is_kept().says("Kept in the library").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}
