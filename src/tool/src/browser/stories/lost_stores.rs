//! A store that fails: full, wiped, missing, of another version, late. The page says so, and the work is not lost.

use super::kept::{name, profile, run, saves};
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Context, Result, ensure};
use serde_json::json;
use std::time::{Duration, Instant};

/// Chromium does not hold an overridden quota against a database, so the refusal is put in its mouth.
pub async fn a_full_disk_is_said_and_the_work_goes_out_as_a_file(fixture: &Fixture) -> Result<()> {
    let full = "const add = IDBObjectStore.prototype.add;
        IDBObjectStore.prototype.add = function (...given) {
            if (window.full) throw new DOMException('no room', 'QuotaExceededError');
            return add.apply(this, given);
        };";
    let desk = fixture.tablet().without(full).opens(&fixture.page.site("")).await?;
    desk.shows("#verdict").await?;
    saves(&desk, "before").await?;
    run(&desk, "window.full = true; type('too much');", vec![]).await?;
    desk.says("#trouble", "The disk is full").await?;
    ensure!(run(&desk, "return desk.dataset.saved", vec![]).await? == "false", "it is called saved");
    ensure!(takes_away(&desk, fixture, "full").await?.contains("\"too much\""), "the file is another's");

    run(&desk, "window.full = false;", vec![]).await?;
    saves(&desk, "after").await?;
    ensure!(desk.text("#trouble").await?.is_none(), "the trouble is over and still told");
    desk.reloads().await?;
    desk.says("h1", "after").await?;
    desk.is_closed().await
}

/// Taps the link that hands the work out, and reads the file.
async fn takes_away(desk: &Desk, fixture: &Fixture, name: &str) -> Result<String> {
    let folder = profile(fixture, &format!("downloads-{name}"))?;
    let wish = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    desk.devtools("Browser.setDownloadBehavior", wish).await?;
    desk.taps("#take-away").await?;
    let file = folder.join("whitehold.jsonl");
    let start = Instant::now();
    while !file.is_file() {
        ensure!(start.elapsed() < Duration::from_secs(10), "no file came");
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    crate::host::workspace::read(&file)
}

/// The browser deletes the database, under the open page and between two visits; a file brings the work back.
pub async fn a_wiped_store_is_noticed_and_a_file_brings_the_work_back(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens(&fixture.page.site("")).await?;
    desk.shows("#verdict").await?;
    saves(&desk, "order of the big run").await?;
    run(&desk, "await done(indexedDB.deleteDatabase('whitehold'));", vec![]).await?;
    desk.says("#trouble", "was closed under this page").await?;
    takes_away(&desk, fixture, "wiped").await?;

    desk.reloads().await?;
    desk.says("#trouble", "The browser has deleted what was kept here").await?;
    ensure!(name(&desk).await? != "order of the big run", "nothing was deleted");
    brings(&desk, fixture, "downloads-wiped/whitehold.jsonl").await?;
    desk.says("h1", "order of the big run").await?;
    run(&desk, "await saved();", vec![]).await?;
    desk.reloads().await?;
    desk.says("h1", "order of the big run").await?;
    ensure!(desk.text("#trouble").await?.is_none(), "the loss is told again");
    desk.is_closed().await
}

pub async fn a_browser_that_keeps_nothing_says_so_and_hands_out_a_file(fixture: &Fixture) -> Result<()> {
    let nothing = "Object.defineProperty(window, 'indexedDB', { value: undefined });";
    let desk = fixture.tablet().without(nothing).opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.says("#trouble", "This browser keeps nothing for this page").await?;
    run(&desk, "type('only here');", vec![]).await?;
    desk.says("h1", "only here").await?;
    ensure!(run(&desk, "return desk.dataset.saved", vec![]).await? == "false", "it is called saved");
    // Records are written as ever, and go out with the order in the form.
    desk.goes_to(&format!("{}#library", fixture.page.file()?)).await?;
    let write = "await seen('[data-do=\"look:1\"]');
        tap('[data-do=\"look:1\"]');
        await afterwards();
        tap('[data-do=\"new:2\"]');
        await seen('#c-2');
        fill('#c-1', 'Heron');
        fill('#c-2', 'soft');
        tap('[data-do=\"put\"]');";
    run(&desk, write, vec![]).await?;
    desk.says("#rech", "Heron").await?;
    let text = takes_away(&desk, fixture, "nothing").await?;
    for part in ["\"only here\"", "\"Heron\"", "\"sha256\""] {
        ensure!(text.contains(part), "the file lacks {part}");
    }
    desk.has_no_complaints().await?;
    desk.is_closed().await?;

    // Brought to a browser that keeps things, and wiped there: all of it comes back.
    let desk =
        fixture.tablet().without("localStorage.setItem('whitehold.kept', '1');").opens_the_file().await?;
    desk.says("#trouble", "The browser has deleted what was kept here").await?;
    brings(&desk, fixture, "downloads-nothing/whitehold.jsonl").await?;
    desk.says("#incoming", "whitehold.jsonl").await?;
    run(&desk, "tap('[data-do=\"apply\"]'); await afterwards(); tap('[data-do=\"look:1\"]');", vec![])
        .await?;
    desk.says(".hits", "Heron").await?;
    desk.goes_to(&format!("{}#job", fixture.page.file()?)).await?;
    desk.says("h1", "only here").await?;
    desk.is_closed().await
}

/// Opens a file of the stories' folder at the notice.
async fn brings(desk: &Desk, fixture: &Fixture, file: &str) -> Result<()> {
    let file = fixture.workspace.target().join("stories").join(file);
    let input = "document.querySelector('whitehold-desk').shadowRoot.querySelector('#bring')";
    let found = desk.devtools("Runtime.evaluate", json!({ "expression": input })).await?;
    let wish = json!({ "files": [file.display().to_string()], "objectId": found["result"]["objectId"] });
    desk.devtools("DOM.setFileInputFiles", wish).await?;
    Ok(())
}

pub async fn what_a_later_version_kept_is_read_and_left_alone(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    saves(&desk, "kept by the later one").await?;
    let later = "const request = indexedDB.open('whitehold', 99); (await done(request)).close();";
    run(&desk, later, vec![]).await?;
    desk.says("#trouble", "was closed under this page").await?;
    desk.reloads().await?;
    desk.says("#trouble", "A newer version of this page was used here").await?;
    desk.says("h1", "kept by the later one").await?;
    let rows = "return database((open) => done(open.transaction('journal').objectStore('journal').count()));";
    let before = run(&desk, rows, vec![]).await?;
    run(&desk, "type('changed here');", vec![]).await?;
    desk.settles().await?;
    ensure!(run(&desk, rows, vec![]).await? == before, "something was written");
    ensure!(run(&desk, "return desk.dataset.saved", vec![]).await? == "false", "it is called saved");
    desk.is_closed().await
}

/// A draft that was kept before there was a database is taken over once, and does not come back later.
pub async fn a_draft_of_an_earlier_version_is_taken_over_once(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    saves(&desk, "from the earlier version").await?;
    let rows = "return database(async (open) =>
        (await done(open.transaction('journal').objectStore('journal').getAll())).pop()[1]);";
    let draft = run(&desk, rows, vec![]).await?;
    desk.is_closed().await?;

    let earlier = format!("localStorage.setItem('whitehold.draft.1', {draft});");
    let desk = fixture.tablet().without(&earlier).opens_the_file().await?;
    desk.says("h1", "from the earlier version").await?;
    saves(&desk, "from this one").await?;
    desk.reloads().await?;
    desk.says("h1", "from this one").await?;
    desk.is_closed().await
}

/// The database answers late: the desk is drawn without it. What is typed meanwhile and what was kept before are two
/// drafts, and neither takes the other's place; where nobody typed, the kept one is shown.
pub async fn a_store_that_opens_late_supersedes_nothing(fixture: &Fixture) -> Result<()> {
    let late = "const open = IDBFactory.prototype.open;
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
    let desk = fixture.tablet().without(late).opens(&fixture.page.site("")).await?;
    desk.shows("#verdict").await?;
    saves(&desk, "the first").await?;
    desk.run("sessionStorage.setItem('late', '1')", vec![]).await?;
    desk.reloads().await?;
    desk.shows("#verdict").await?;
    ensure!(name(&desk).await? != "the first", "the store opened at once");
    saves(&desk, "typed early").await?;
    desk.says("h1", "typed early").await?;
    let rows = "return database(async (open) => {
            const rows = await done(open.transaction('journal').objectStore('journal').getAll());
            return [...new Map(rows.map((row) => [row[2], row[1]])).values()].join('\\n');
        });";
    let newest = run(&desk, rows, vec![]).await?;
    let newest = newest.as_str().context("no rows")?;
    for draft in ["\"the first\"", "\"typed early\""] {
        ensure!(newest.contains(draft), "{draft} is the newest of no slot");
    }
    desk.taps(".head [aria-label=\"Undo\"]").await?;
    desk.taps(".head [aria-label=\"Undo\"]").await?;
    desk.says("h1", "the first").await?;
    saves(&desk, "the second").await?;

    desk.reloads().await?;
    desk.shows("#verdict").await?;
    desk.says("h1", "the second").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
