//! A store that fails: full, wiped, missing, of another version, late. The page says so, and the work is not lost.

use super::files::download;
use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::workspace::read;
use anyhow::{Result, ensure};
use serde_json::Value;
use std::path::PathBuf;

/// Chromium does not hold an overridden quota against a database, so a script refuses in its place while `window.full` is
/// set.
const FULL: &str = "const add = IDBObjectStore.prototype.add;
    IDBObjectStore.prototype.add = function (...given) {
        if (window.full) throw new DOMException('no room', 'QuotaExceededError');
        return add.apply(this, given);
    };";

pub async fn a_full_disk_is_said_and_the_work_goes_out_as_a_file(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().changed_by(FULL).open_site().await?;
    let (job, notice) = (desk.job(), desk.notice());
    job.save_order_named("before").await?;
    desk.session().run("window.full = true", vec![]).await?;
    job.name_order("too much").await?;
    notice.all().says("The disk is full").await?;
    ensure!(!desk.is_saved_now().await?, "it is called saved");
    let file = take_away(fixture, &desk, "full").await?;
    ensure!(read(&file)?.contains("\"too much\""), "the file is another's");

    desk.session().run("window.full = false", vec![]).await?;
    job.save_order_named("after").await?;
    ensure!(!notice.all().is_seen().await?, "the trouble is over and still told");
    desk.reload().await?;
    desk.title().says("after").await?;
    desk.close().await
}

/// Taps the link that hands the work out; hands back the file.
async fn take_away(fixture: &Fixture, desk: &DeskPage, name: &str) -> Result<PathBuf> {
    let folder = fixture.empty_folder(&format!("downloads-{name}"))?;
    download(desk, desk.notice().save_as_file(), &folder).await
}

/// The browser deletes the database, under the open page and between two visits; a file brings the work back.
pub async fn a_wiped_store_is_noticed_and_a_file_brings_the_work_back(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_site().await?;
    let (job, notice) = (desk.job(), desk.notice());
    job.save_order_named("order of the big run").await?;
    desk.run("await done(indexedDB.deleteDatabase('whitehold'));", vec![]).await?;
    notice.all().says("was closed under this page").await?;
    let file = take_away(fixture, &desk, "wiped").await?;

    desk.reload().await?;
    notice.all().says("The browser has deleted what was kept here").await?;
    ensure!(job.order_name().await? != "order of the big run", "nothing was deleted");
    notice.open_file(&file).await?;
    desk.title().says("order of the big run").await?;
    desk.is_saved().await?;
    desk.reload().await?;
    desk.title().says("order of the big run").await?;
    ensure!(!notice.all().is_seen().await?, "the loss is told again");
    desk.close().await
}

/// A browser without a database.
const NO_DATABASE: &str = "Object.defineProperty(window, 'indexedDB', { value: undefined });";

/// The note of an earlier visit that things were kept here, in a browser that has lost them.
const KEPT_BEFORE: &str = "localStorage.setItem('whitehold.kept', '1');";

pub async fn a_browser_that_keeps_nothing_says_so_and_hands_out_a_file(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().changed_by(NO_DATABASE).open_file().await?;
    desk.notice().all().says("This browser keeps nothing for this page").await?;
    desk.job().name_order("only here").await?;
    desk.title().says("only here").await?;
    ensure!(!desk.is_saved_now().await?, "it is called saved");
    // Records are written as ever, and go out with the order in the form.
    desk.go_to(DeskScreen::Library).await?;
    desk.library().write_white("Heron", "9.5").await?;
    let file = take_away(fixture, &desk, "nothing").await?;
    let text = read(&file)?;
    for part in ["\"only here\"", "\"Heron\"", "\"sha256\""] {
        ensure!(text.contains(part), "the file lacks {part}");
    }
    desk.has_no_complaints().await?;
    desk.close().await?;

    // Brought to a browser that keeps things, and was wiped: all of it comes back.
    let desk = fixture.tablet().changed_by(KEPT_BEFORE).open_file().await?;
    desk.notice().all().says("The browser has deleted what was kept here").await?;
    desk.notice().open_file(&file).await?;
    desk.library().incoming().says("whitehold.jsonl").await?;
    desk.library().bring_in().tap().await?;
    desk.library().look_in("Whites").await?;
    desk.library().hits().says("Heron").await?;
    desk.go_to(DeskScreen::Job).await?;
    desk.title().says("only here").await?;
    desk.close().await
}

pub async fn what_a_later_version_kept_is_read_and_left_alone(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let notice = desk.notice();
    desk.job().save_order_named("kept by the later one").await?;
    desk.run("(await done(indexedDB.open('whitehold', 99))).close();", vec![]).await?;
    notice.all().says("was closed under this page").await?;
    desk.reload().await?;
    notice.all().says("A newer version of this page was used here").await?;
    desk.title().says("kept by the later one").await?;
    let before = rows(&desk).await?.len();
    desk.job().name_order("changed here").await?;
    desk.settle().await?;
    let after = rows(&desk).await?.len();
    ensure!(before == after, "there were {before} rows and are {after}");
    ensure!(!desk.is_saved_now().await?, "it is called saved");
    desk.close().await
}

/// The rows of the journal, each a list: its id, its text, and for a draft its slot.
async fn rows(desk: &DeskPage) -> Result<Vec<Vec<Value>>> {
    Ok(serde_json::from_value(desk.run("return (await stored()).rows", vec![]).await?)?)
}

/// A draft that was kept before there was a database is taken over once, and does not come back later.
pub async fn a_draft_of_an_earlier_version_is_taken_over_once(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    desk.job().save_order_named("from the earlier version").await?;
    let draft = rows(&desk).await?.last().and_then(|row| row.get(1).cloned());
    let draft = draft.unwrap_or_default();
    desk.close().await?;

    let earlier = format!("localStorage.setItem('whitehold.draft.1', {draft});");
    let desk = fixture.tablet().changed_by(&earlier).open_file().await?;
    desk.title().says("from the earlier version").await?;
    desk.job().save_order_named("from this one").await?;
    desk.reload().await?;
    desk.title().says("from this one").await?;
    desk.close().await
}

/// Once `late` is noted, the database answers three seconds after it was asked.
const LATE: &str = "const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (...given) {
        const request = open.apply(this, given);
        if (sessionStorage.getItem('late') && given[0] === 'whitehold') {
            let waited = false;
            request.addEventListener('success', (event) => {
                if (waited) return;
                event.stopImmediatePropagation();
                setTimeout(() => { waited = true; request.dispatchEvent(new Event('success')); }, 3000);
            });
        }
        return request;
    };";

/// The database answers late: the desk is drawn without it. What is typed meanwhile and what was kept before are two
/// drafts, and neither takes the other's place; where nothing was typed, the kept one is shown.
pub async fn a_store_that_opens_late_supersedes_nothing(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().changed_by(LATE).open_site().await?;
    let job = desk.job();
    job.save_order_named("the first").await?;
    desk.session().run("sessionStorage.setItem('late', '1')", vec![]).await?;
    desk.reload().await?;
    job.verdict().read().await?;
    ensure!(job.order_name().await? != "the first", "the store opened at once");
    job.save_order_named("typed early").await?;
    desk.title().says("typed early").await?;
    // A later row of a slot takes the place of an earlier one.
    let newest =
        "const { rows } = await stored(); return [...new Map(rows.map((row) => [row[2], row[1]])).values()];";
    let newest: Vec<String> = serde_json::from_value(desk.run(newest, vec![]).await?)?;
    let newest = newest.concat();
    for draft in ["\"the first\"", "\"typed early\""] {
        ensure!(newest.contains(draft), "{draft} is the newest of no slot");
    }
    desk.undo().await?;
    desk.undo().await?;
    desk.title().says("the first").await?;
    job.save_order_named("the second").await?;

    desk.reload().await?;
    job.verdict().read().await?;
    desk.title().says("the second").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}
