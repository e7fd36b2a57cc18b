//! Saved means saved: what the page called kept is there after a crash, beside another tab, on a full disk.
//!
//! Each save is a name typed into the order. The page says `data-saved` when the browser has acknowledged it; what is
//! really there is read by plain calls of the browser's database, not by the page's own store.

use crate::browser::bench::Bench;
use crate::browser::desk::Desk;
use crate::steps::say;
use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::PathBuf;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

/// How often the browser is killed where nobody asks for more.
pub const KILLS: u32 = 12;

/// Saves of each of two tabs.
const SAVES: u64 = 500;

/// Lines that are laid into the journal between two kills, so that it is sealed again and again.
const LAID: u64 = 700;

/// The form's field for the order's name, and whether it is kept.
const PAGE: &str = "
    const shadow = document.querySelector('whitehold-desk')?.shadowRoot;
    const desk = shadow?.querySelector('.desk');
    const name = shadow?.querySelector('#title');
    const type = (text) => {
        name.value = text;
        name.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    };
    // The attribute follows the state when the event is over: looked at sooner, it would still speak of the last save.
    const afterwards = () => new Promise((yes) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = yes;
        port2.postMessage(null);
    });
    // What is drawn after a tap is drawn when the event is over.
    const seen = async (selector) => { while (!shadow.querySelector(selector)) await afterwards(); };
    const tap = (selector) => shadow.querySelector(selector).click();
    const fill = (selector, text) => {
        const field = shadow.querySelector(selector);
        field.value = text;
        field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    };
    const saved = () => afterwards().then(() => new Promise((yes) => {
        if (desk.dataset.saved === 'true') return yes();
        const watch = new MutationObserver(() => {
            if (desk.dataset.saved === 'true') { watch.disconnect(); yes(); }
        });
        watch.observe(desk, { attributes: true });
    }));";

/// The browser's database, by its own calls.
const DATABASE: &str = "
    const done = (request) => new Promise((yes, no) => {
        request.onsuccess = () => yes(request.result);
        request.onerror = () => no(request.error);
    });
    const database = async (work) => {
        const open = await done(indexedDB.open('whitehold'));
        try { return await work(open); } finally { open.close(); }
    };";

/// Runs a script that may await, and hands back its value.
async fn run(desk: &Desk, body: &str, arguments: Vec<Value>) -> Result<Value> {
    let script = format!(
        "const end = arguments[arguments.length - 1]; const given = arguments;
         (async () => {{ {DATABASE} {PAGE} {body} }})().then((value) => end([value ?? null]), (error) => end(String(error)));"
    );
    match desk.awaits(&script, arguments).await? {
        Value::Array(mut value) => value.pop().context("no value"),
        error => bail!("in the page: {error}"),
    }
}

/// The name that stands in the form.
async fn name(desk: &Desk) -> Result<String> {
    Ok(run(desk, "return name.value", vec![]).await?.as_str().unwrap_or_default().to_owned())
}

/// Types a name and waits until it is kept.
async fn saves(desk: &Desk, text: &str) -> Result<()> {
    run(desk, "type(given[0]); await saved();", vec![json!(text)]).await?;
    Ok(())
}

/// A folder of this name for a browser to remember in, empty.
fn profile(bench: &Bench, name: &str) -> Result<PathBuf> {
    let folder = bench.workshop.target().join("stories").join(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// Chance for the moments of the kills: any will do, and none must come twice (xorshift, Marsaglia 2003).
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % most
    }
}

/// What the story knows to be on the disk.
#[derive(Default)]
struct Known {
    /// The last save that was seen acknowledged.
    save: u64,
    /// Lines that were laid into the journal.
    lines: u64,
    /// By kill, how many records were seen acknowledged before it.
    records: Vec<(u32, u64)>,
}

/// Kills the browser at random moments: while the page opens and seals, and while it saves.
pub async fn a_killed_browser_loses_nothing_that_was_acknowledged(bench: &Bench) -> Result<()> {
    let kills = kills()?;
    let profile = profile(bench, "killed")?;
    let seed = SystemTime::now().duration_since(UNIX_EPOCH)?.as_nanos() as u64 | 1;
    let mut chance = Chance(seed);
    let mut known = Known::default();
    let (mut sealed, start) = (0, Instant::now());
    for kill in 0..kills {
        let told = format!("kill {kill} of {kills}, seed {seed}, after save {}", known.save);
        let tablet = bench.tablet().remembering(&profile);
        if kill % 3 == 2 {
            let desk = tablet.is_switched_on().await?;
            let address = bench.file()?;
            let moment = Duration::from_millis(chance.below(600));
            // It is killed while it opens, so that the opening itself seldom comes to its end.
            let _ = tokio::time::timeout(moment, desk.goes_to(&address)).await;
            desk.is_killed().await?;
            continue;
        }
        let desk = tablet.opens_the_file().await?;
        desk.shows("#verdict").await.with_context(|| told.clone())?;
        sealed = look(&desk, &known).await.with_context(|| told.clone())?;
        if chance.below(2) == 0 {
            lay(&desk, &mut known).await?;
        }
        let moment = Duration::from_millis(chance.below(500));
        if chance.below(2) == 0 {
            save_until_killed(desk, &mut known, moment).await.with_context(|| told.clone())?;
        } else {
            write_until_killed(desk, &mut known, kill, 2 * moment).await.with_context(|| told.clone())?;
        }
    }
    let desk = bench.tablet().remembering(&profile).opens_the_file().await?;
    desk.shows("#verdict").await?;
    look(&desk, &known).await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await?;
    say(&format!(
        "    {kills} kills: {} saves, {} records and {} lines acknowledged, none lost, {sealed} segments sealed, {:.0} s",
        known.save,
        known.records.iter().map(|(_, count)| count).sum::<u64>(),
        known.lines,
        start.elapsed().as_secs_f64()
    ));
    Ok(())
}

/// How many kills are asked for.
pub fn kills() -> Result<u32> {
    match std::env::var("XTASK_KILLS") {
        Ok(number) => number.parse().with_context(|| format!("--kills {number}: that is no number")),
        Err(_) => Ok(KILLS),
    }
}

/// Saves one name after another and ends the browser at a random moment of it.
async fn save_until_killed(desk: Desk, known: &mut Known, moment: Duration) -> Result<()> {
    let endless = "window.acknowledged = given[0];
        (async () => {
            for (let number = given[0] + 1; ; number += 1) {
                type('save ' + number);
                await saved();
                window.acknowledged = number;
            }
        })();";
    run(&desk, endless, vec![json!(known.save)]).await?;
    known.save = counts_until(&desk, moment).await?;
    desk.is_killed().await
}

/// What the page has counted when its time is over.
async fn counts_until(desk: &Desk, moment: Duration) -> Result<u64> {
    let end = Instant::now() + moment;
    loop {
        let seen = desk.run("return window.acknowledged", vec![]).await?;
        let seen = seen.as_u64().context("the page does not count")?;
        if Instant::now() >= end {
            return Ok(seen);
        }
    }
}

/// Writes one record after another through the Library's own form and ends the browser at a random moment of it.
async fn write_until_killed(desk: Desk, known: &mut Known, kill: u32, moment: Duration) -> Result<()> {
    let endless = "location.hash = '#library';
        window.acknowledged = 0;
        (async () => {
            await seen('[data-do=\"look:1\"]');
            tap('[data-do=\"look:1\"]');
            for (let number = 1; ; number += 1) {
                await seen('[data-do=\"new:2\"]');
                tap('[data-do=\"new:2\"]');
                await seen('#c-2');
                fill('#c-1', `heron ${given[0]}-${number}`);
                fill('#c-2', 'soft');
                tap('[data-do=\"put\"]');
                await saved();
                window.acknowledged = number;
            }
        })();";
    run(&desk, endless, vec![json!(kill)]).await?;
    known.records.push((kill, counts_until(&desk, moment).await?));
    desk.is_killed().await
}

/// Lays lines into the journal, as a tab that saves entries does.
async fn lay(desk: &Desk, known: &mut Known) -> Result<()> {
    let lay = "await database(async (open) => {
            const work = open.transaction('journal', 'readwrite', { durability: 'strict' });
            for (let number = given[0]; number < given[1]; number += 1) {
                work.objectStore('journal').add(['line-' + number, JSON.stringify({ id: 'line-' + number })]);
            }
            await new Promise((yes, no) => { work.oncomplete = yes; work.onabort = no; });
        });";
    run(desk, lay, vec![json!(known.lines), json!(known.lines + LAID)]).await?;
    known.lines += LAID;
    Ok(())
}

/// Fails unless everything that is known to be there is there, once. Hands back the number of segments.
async fn look(desk: &Desk, known: &Known) -> Result<u64> {
    let read = "return database(async (open) => {
            const work = open.transaction(['journal', 'segments']);
            const rows = await done(work.objectStore('journal').getAll());
            const texts = await done(work.objectStore('segments').getAll());
            const lines = texts.flatMap((text) => text.split('\\n').filter(Boolean))
                .concat(rows.filter((row) => row[2] === undefined).map((row) => row[1]))
                .map((text) => JSON.parse(text));
            const laid = lines.map((line) => line.id).filter((id) => id.startsWith('line-'));
            const herons = lines.flatMap((line) => line.change?.edit?.edits ?? [])
                .map((edit) => edit.put?.fields.name).filter((name) => name?.startsWith('heron '));
            return [laid.length, new Set(laid).size, texts.length, new Set(lines.map((line) => line.id)).size - lines.length, herons];
        });";
    let read = run(desk, read, vec![]).await?;
    let count = |place: usize| read[place].as_u64().context("no count");
    ensure!(count(3)? == 0, "a line came twice");
    let herons: BTreeSet<&str> = read[4].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    for (kill, count) in &known.records {
        for name in (1..=*count).map(|number| format!("heron {kill}-{number}")) {
            ensure!(herons.contains(name.as_str()), "record `{name}` was acknowledged and is not there");
        }
    }
    ensure!(count(1)? == known.lines, "{} lines of {} are there", count(1)?, known.lines);
    ensure!(count(0)? == known.lines, "{} lines of {} came twice", count(0)? - count(1)?, known.lines);
    let shown = name(desk).await?;
    let number = shown.strip_prefix("save ").and_then(|number| number.parse().ok()).unwrap_or(0);
    ensure!(number >= known.save, "the page shows `{shown}`; save {} was acknowledged", known.save);
    count(2)
}

/// Two tabs save by turns as fast as they can, 500 times each; every save is found in the database.
pub async fn two_tabs_lose_nothing_to_each_other(bench: &Bench) -> Result<()> {
    let address = bench.site("");
    let desk = bench.tablet().opens(&address).await?;
    desk.shows("#verdict").await?;
    desk.opens_tab(&address).await?;
    desk.shows("#verdict").await?;
    let begin = "window.finished = false;
        (async () => {
            for (let number = 1; number <= given[1]; number += 1) {
                type(given[0] + ' ' + number);
                await saved();
            }
            window.finished = true;
        })();";
    for (tab, word) in [(0, "one"), (1, "other")] {
        desk.turns_to(tab).await?;
        run(&desk, begin, vec![json!(word), json!(SAVES)]).await?;
    }
    for tab in [0, 1] {
        desk.turns_to(tab).await?;
        let start = Instant::now();
        while desk.run("return window.finished", vec![]).await? != true {
            ensure!(start.elapsed() < Duration::from_secs(60), "tab {tab} did not come to its end");
            tokio::time::sleep(Duration::from_millis(100)).await;
        }
    }
    let read = "return database(async (open) => {
            const rows = await done(open.transaction('journal').objectStore('journal').getAll());
            return rows.map((row) => row[1]).join('\\n');
        });";
    let read = run(&desk, read, vec![]).await?;
    let read = read.as_str().context("no rows")?;
    for word in ["one", "other"] {
        let kept = (1..=SAVES).filter(|number| read.contains(&format!("\"{word} {number}\""))).count();
        ensure!(kept as u64 == SAVES, "{kept} of {SAVES} saves of tab `{word}` are there");
    }
    // Each tab goes on with its own.
    for (tab, word) in [(0, "one"), (1, "other")] {
        desk.turns_to(tab).await?;
        desk.reloads().await?;
        desk.shows("#verdict").await?;
        let shown = name(&desk).await?;
        ensure!(shown == format!("{word} {SAVES}"), "tab `{word}` goes on with `{shown}`");
    }
    desk.is_closed().await
}

/// A duplicated tab begins as a copy and then goes its own way.
pub async fn a_duplicated_tab_keeps_a_draft_of_its_own(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens(&bench.site("")).await?;
    desk.shows("#verdict").await?;
    saves(&desk, "the first").await?;
    // A page opened by a script inherits the session of its tab, as a duplicate does.
    desk.run("window.open(location.href)", vec![]).await?;
    desk.turns_to(1).await?;
    desk.shows("#verdict").await?;
    ensure!(name(&desk).await? == "the first", "the copy shows `{}`", name(&desk).await?);
    saves(&desk, "the second").await?;
    for (tab, expected) in [(0, "the first"), (1, "the second")] {
        desk.turns_to(tab).await?;
        desk.reloads().await?;
        desk.shows("#verdict").await?;
        let shown = name(&desk).await?;
        ensure!(shown == expected, "tab {tab} goes on with `{shown}`");
    }
    desk.is_closed().await
}

/// Chromium does not hold an overridden quota against a database, so the refusal is put in its mouth.
pub async fn a_full_disk_is_said_and_the_work_goes_out_as_a_file(bench: &Bench) -> Result<()> {
    let full = "const add = IDBObjectStore.prototype.add;
        IDBObjectStore.prototype.add = function (...given) {
            if (window.full) throw new DOMException('no room', 'QuotaExceededError');
            return add.apply(this, given);
        };";
    let desk = bench.tablet().without(full).opens(&bench.site("")).await?;
    desk.shows("#verdict").await?;
    saves(&desk, "before").await?;
    run(&desk, "window.full = true; type('too much');", vec![]).await?;
    desk.says("#trouble", "The disk is full").await?;
    ensure!(run(&desk, "return desk.dataset.saved", vec![]).await? == "false", "it is called saved");
    ensure!(takes_away(&desk, bench, "full").await?.contains("\"too much\""), "the file is another's");

    run(&desk, "window.full = false;", vec![]).await?;
    saves(&desk, "after").await?;
    ensure!(desk.text("#trouble").await?.is_none(), "the trouble is over and still told");
    desk.reloads().await?;
    desk.says("h1", "after").await?;
    desk.is_closed().await
}

/// Taps the link that hands the work out, and reads the file.
async fn takes_away(desk: &Desk, bench: &Bench, name: &str) -> Result<String> {
    let folder = profile(bench, &format!("downloads-{name}"))?;
    let wish = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    desk.devtools("Browser.setDownloadBehavior", wish).await?;
    desk.taps("#take-away").await?;
    let file = folder.join("whitehold.jsonl");
    let start = Instant::now();
    while !file.is_file() {
        ensure!(start.elapsed() < Duration::from_secs(10), "no file came");
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    crate::workshop::read(&file)
}

/// The browser deletes the database, under the open page and between two visits; a file brings the work back.
pub async fn a_wiped_store_is_noticed_and_a_file_brings_the_work_back(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens(&bench.site("")).await?;
    desk.shows("#verdict").await?;
    saves(&desk, "order of the big run").await?;
    run(&desk, "await done(indexedDB.deleteDatabase('whitehold'));", vec![]).await?;
    desk.says("#trouble", "was closed under this page").await?;
    takes_away(&desk, bench, "wiped").await?;

    desk.reloads().await?;
    desk.says("#trouble", "The browser has deleted what was kept here").await?;
    ensure!(name(&desk).await? != "order of the big run", "nothing was deleted");
    brings(&desk, bench, "downloads-wiped/whitehold.jsonl").await?;
    desk.says("h1", "order of the big run").await?;
    run(&desk, "await saved();", vec![]).await?;
    desk.reloads().await?;
    desk.says("h1", "order of the big run").await?;
    ensure!(desk.text("#trouble").await?.is_none(), "the loss is told again");
    desk.is_closed().await
}

pub async fn a_browser_that_keeps_nothing_says_so_and_hands_out_a_file(bench: &Bench) -> Result<()> {
    let nothing = "Object.defineProperty(window, 'indexedDB', { value: undefined });";
    let desk = bench.tablet().without(nothing).opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.says("#trouble", "This browser keeps nothing for this page").await?;
    run(&desk, "type('only here');", vec![]).await?;
    desk.says("h1", "only here").await?;
    ensure!(run(&desk, "return desk.dataset.saved", vec![]).await? == "false", "it is called saved");
    // Records are written as ever, and go out with the order in the form.
    desk.goes_to(&format!("{}#library", bench.file()?)).await?;
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
    let text = takes_away(&desk, bench, "nothing").await?;
    for part in ["\"only here\"", "\"Heron\"", "\"sha256\""] {
        ensure!(text.contains(part), "the file lacks {part}");
    }
    desk.has_no_complaints().await?;
    desk.is_closed().await?;

    // Brought to a browser that keeps things, and wiped there: all of it comes back.
    let desk =
        bench.tablet().without("localStorage.setItem('whitehold.kept', '1');").opens_the_file().await?;
    desk.says("#trouble", "The browser has deleted what was kept here").await?;
    brings(&desk, bench, "downloads-nothing/whitehold.jsonl").await?;
    desk.says("#incoming", "whitehold.jsonl").await?;
    run(&desk, "tap('[data-do=\"apply\"]'); await afterwards(); tap('[data-do=\"look:1\"]');", vec![])
        .await?;
    desk.says(".hits", "Heron").await?;
    desk.goes_to(&format!("{}#job", bench.file()?)).await?;
    desk.says("h1", "only here").await?;
    desk.is_closed().await
}

/// Opens a file of the stories' folder at the notice.
async fn brings(desk: &Desk, bench: &Bench, file: &str) -> Result<()> {
    let file = bench.workshop.target().join("stories").join(file);
    let input = "document.querySelector('whitehold-desk').shadowRoot.querySelector('#bring')";
    let found = desk.devtools("Runtime.evaluate", json!({ "expression": input })).await?;
    let wish = json!({ "files": [file.display().to_string()], "objectId": found["result"]["objectId"] });
    desk.devtools("DOM.setFileInputFiles", wish).await?;
    Ok(())
}

pub async fn what_a_later_version_kept_is_read_and_left_alone(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens_the_file().await?;
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
pub async fn a_draft_of_an_earlier_version_is_taken_over_once(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    saves(&desk, "from the earlier version").await?;
    let rows = "return database(async (open) =>
        (await done(open.transaction('journal').objectStore('journal').getAll())).pop()[1]);";
    let draft = run(&desk, rows, vec![]).await?;
    desk.is_closed().await?;

    let earlier = format!("localStorage.setItem('whitehold.draft.1', {draft});");
    let desk = bench.tablet().without(&earlier).opens_the_file().await?;
    desk.says("h1", "from the earlier version").await?;
    saves(&desk, "from this one").await?;
    desk.reloads().await?;
    desk.says("h1", "from this one").await?;
    desk.is_closed().await
}

/// The database answers late: the desk is drawn without it. What is typed meanwhile and what was kept before are two
/// drafts, and neither takes the other's place; where nobody typed, the kept one is shown.
pub async fn a_store_that_opens_late_supersedes_nothing(bench: &Bench) -> Result<()> {
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
    let desk = bench.tablet().without(late).opens(&bench.site("")).await?;
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
