//! Saved means saved: what the page called kept is there after a crash and beside another tab.

use super::kept::{name, profile, run, saves};
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use crate::host::progress::say;
use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

/// How often the browser is killed where nobody asks for more.
pub const KILLS: u32 = 12;

/// Saves of each of two tabs.
const SAVES: u64 = 500;

/// Lines that are laid into the journal between two kills, so that it is sealed again and again.
const LAID: u64 = 700;

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
pub async fn a_killed_browser_loses_nothing_that_was_acknowledged(fixture: &Fixture) -> Result<()> {
    let kills = kills()?;
    let profile = profile(fixture, "killed")?;
    let seed = SystemTime::now().duration_since(UNIX_EPOCH)?.as_nanos() as u64 | 1;
    let mut chance = Chance(seed);
    let mut known = Known::default();
    let (mut sealed, start) = (0, Instant::now());
    for kill in 0..kills {
        let told = format!("kill {kill} of {kills}, seed {seed}, after save {}", known.save);
        let tablet = fixture.tablet().remembering(&profile);
        if kill % 3 == 2 {
            let desk = tablet.is_switched_on().await?;
            let address = fixture.page.file()?;
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
    let desk = fixture.tablet().remembering(&profile).opens_the_file().await?;
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
pub async fn two_tabs_lose_nothing_to_each_other(fixture: &Fixture) -> Result<()> {
    let address = fixture.page.site("");
    let desk = fixture.tablet().opens(&address).await?;
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
pub async fn a_duplicated_tab_keeps_a_draft_of_its_own(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens(&fixture.page.site("")).await?;
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
