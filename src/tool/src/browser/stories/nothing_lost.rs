//! Saved means saved: what the page called kept is there after a crash and beside another tab.

use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::progress::say;
use anyhow::{Context, Result, ensure};
use serde_json::json;
use std::collections::BTreeSet;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

/// How often the browser is killed, unless `--kills` says otherwise.
pub const KILLS: u32 = 12;

/// Saves of each of two tabs.
const SAVES: u64 = 500;

/// Lines that are added to the journal between two kills, so that it is sealed again and again.
const ADDED: u64 = 700;

/// Random moments for the kills (xorshift, Marsaglia 2003).
struct Random(u64);

impl Random {
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
    /// Lines that were added to the journal.
    lines: u64,
    /// By kill, how many records were seen acknowledged before it.
    records: Vec<(u32, u64)>,
}

/// Kills the browser at random moments: while the page opens and seals, and while it saves.
pub async fn a_killed_browser_loses_nothing_that_was_acknowledged(fixture: &Fixture) -> Result<()> {
    let kills = kills()?;
    let profile = fixture.empty_folder("killed")?;
    let seed = SystemTime::now().duration_since(UNIX_EPOCH)?.as_nanos() as u64 | 1;
    let mut random = Random(seed);
    let mut known = Known::default();
    let (mut sealed, start) = (0, Instant::now());
    for kill in 0..kills {
        let told = format!("kill {kill} of {kills}, seed {seed}, after save {}", known.save);
        let tablet = fixture.tablet().with_profile(&profile);
        if kill % 3 == 2 {
            let desk = tablet.start().await?;
            let address = fixture.page.file()?;
            let moment = Duration::from_millis(random.below(600));
            // It is killed while it opens, so that the opening itself seldom comes to its end.
            let _ = tokio::time::timeout(moment, desk.session().open(&address)).await;
            desk.kill().await?;
            continue;
        }
        let desk = tablet.open_file().await.with_context(|| told.clone())?;
        sealed = check(&desk, &known).await.with_context(|| told.clone())?;
        if random.below(2) == 0 {
            add_lines(&desk, &mut known).await?;
        }
        let moment = Duration::from_millis(random.below(500));
        if random.below(2) == 0 {
            save_until_killed(desk, &mut known, moment).await.with_context(|| told.clone())?;
        } else {
            write_until_killed(desk, &mut known, kill, 2 * moment).await.with_context(|| told.clone())?;
        }
    }
    let desk = fixture.tablet().with_profile(&profile).open_file().await?;
    check(&desk, &known).await?;
    desk.has_no_complaints().await?;
    desk.close().await?;
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

/// Saves one name after another, for ever; reports the last that was acknowledged.
const SAVE: &str = "for (let number = arguments[0] + 1; ; number += 1) {
        nameOrder('save ' + number);
        await saved();
        report(number);
    }";

async fn save_until_killed(desk: DeskPage, known: &mut Known, moment: Duration) -> Result<()> {
    desk.start_script(SAVE, vec![json!(known.save)]).await?;
    known.save = last_report(&desk, moment).await?.unwrap_or(known.save);
    desk.kill().await
}

/// What a started script has counted when its time is over; nothing if it has not counted yet.
async fn last_report(desk: &DeskPage, moment: Duration) -> Result<Option<u64>> {
    let end = Instant::now() + moment;
    loop {
        let reported = desk.reported().await?;
        ensure!(!reported.is_string(), "in the page: {reported}");
        if Instant::now() >= end {
            return Ok(reported.as_u64());
        }
    }
}

/// Writes one record after another through the Library's own form, for ever; reports how many were acknowledged.
const WRITE: &str = "await tap(PARTS.whites);
    for (let number = 1; ; number += 1) {
        await writeWhite(`heron ${arguments[0]}-${number}`, 'soft');
        await saved();
        report(number);
    }";

async fn write_until_killed(desk: DeskPage, known: &mut Known, kill: u32, moment: Duration) -> Result<()> {
    desk.turn_to(DeskScreen::Library).await?;
    desk.start_script(WRITE, vec![json!(kill)]).await?;
    known.records.push((kill, last_report(&desk, moment).await?.unwrap_or(0)));
    desk.kill().await
}

/// Adds lines to the journal, as a tab that saves entries does.
async fn add_lines(desk: &DeskPage, known: &mut Known) -> Result<()> {
    let add = "await database(async (open) => {
            const work = open.transaction('journal', 'readwrite', { durability: 'strict' });
            for (let number = arguments[0]; number < arguments[1]; number += 1) {
                work.objectStore('journal').add(['line-' + number, JSON.stringify({ id: 'line-' + number })]);
            }
            await new Promise((yes, no) => { work.oncomplete = yes; work.onabort = no; });
        });";
    desk.run(add, vec![json!(known.lines), json!(known.lines + ADDED)]).await?;
    known.lines += ADDED;
    Ok(())
}

/// What is in the database: lines that were added, as many of them as differ, entries that came twice, segments, and the
/// records by their names.
const READ: &str = "const kept = await stored();
    const all = entries(kept);
    const added = all.map((entry) => entry.id).filter((id) => id.startsWith('line-'));
    const twice = all.length - new Set(all.map((entry) => entry.id)).size;
    const herons = all.flatMap((entry) => entry.change?.edit?.edits ?? [])
        .map((edit) => edit.put?.fields.name).filter((name) => name?.startsWith('heron '));
    return [added.length, new Set(added).size, twice, kept.texts.length, herons];";

/// Fails unless everything that is known to be there is there, once. Hands back the number of segments.
async fn check(desk: &DeskPage, known: &Known) -> Result<u64> {
    let read = serde_json::from_value(desk.run(READ, vec![]).await?)?;
    let (added, distinct, twice, segments, herons): (u64, u64, u64, u64, BTreeSet<String>) = read;
    ensure!(twice == 0, "{twice} lines came twice");
    for (kill, count) in &known.records {
        for name in (1..=*count).map(|number| format!("heron {kill}-{number}")) {
            ensure!(herons.contains(&name), "record `{name}` was acknowledged and is not there");
        }
    }
    ensure!(distinct == known.lines, "{distinct} lines of {} are there", known.lines);
    ensure!(added == known.lines, "{} lines of {} came twice", added - distinct, known.lines);
    let shown = desk.job().order_name().await?;
    let number = shown.strip_prefix("save ").and_then(|number| number.parse().ok()).unwrap_or(0);
    ensure!(number >= known.save, "the page shows `{shown}`; save {} was acknowledged", known.save);
    Ok(segments)
}

/// Saves as many names as are asked for, as fast as they are acknowledged.
const SAVE_MANY: &str = "for (let number = 1; number <= arguments[1]; number += 1) {
        nameOrder(arguments[0] + ' ' + number);
        await saved();
        report(number);
    }";

/// Two tabs save by turns as fast as they can, 500 times each; every save is found in the database.
pub async fn two_tabs_lose_nothing_to_each_other(fixture: &Fixture) -> Result<()> {
    let address = fixture.page.site("");
    let desk = fixture.tablet().open_desk(&address).await?;
    desk.session().open_tab(&address).await?;
    desk.job().verdict().read().await?;
    for (tab, word) in [(0, "one"), (1, "other")] {
        desk.session().turn_to_tab(tab).await?;
        desk.start_script(SAVE_MANY, vec![json!(word), json!(SAVES)]).await?;
    }
    for tab in [0, 1] {
        desk.session().turn_to_tab(tab).await?;
        desk.reports(&json!(SAVES), Duration::from_secs(60)).await.with_context(|| format!("tab {tab}"))?;
    }
    let rows = desk.run("return (await stored()).rows.map((row) => row[1])", vec![]).await?;
    let rows: Vec<String> = serde_json::from_value(rows)?;
    let rows = rows.concat();
    for word in ["one", "other"] {
        let kept = (1..=SAVES).filter(|number| rows.contains(&format!("\"{word} {number}\""))).count();
        ensure!(kept as u64 == SAVES, "{kept} of {SAVES} saves of tab `{word}` are there");
    }
    // Each tab goes on with its own.
    for (tab, word) in [(0, "one"), (1, "other")] {
        goes_on_with(&desk, tab, &format!("{word} {SAVES}")).await?;
    }
    desk.close().await
}

/// A duplicated tab begins as a copy and then goes its own way.
pub async fn a_duplicated_tab_keeps_a_draft_of_its_own(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_site().await?;
    desk.job().save_order_named("the first").await?;
    // A page opened by a script inherits the session of its tab, as a duplicate does.
    desk.session().run("window.open(location.href)", vec![]).await?;
    desk.session().turn_to_tab(1).await?;
    desk.job().verdict().read().await?;
    let shown = desk.job().order_name().await?;
    ensure!(shown == "the first", "the copy shows `{shown}`");
    desk.job().save_order_named("the second").await?;
    for (tab, expected) in [(0, "the first"), (1, "the second")] {
        goes_on_with(&desk, tab, expected).await?;
    }
    desk.close().await
}

/// Reloads a tab and checks the order's name in it.
async fn goes_on_with(desk: &DeskPage, tab: usize, expected: &str) -> Result<()> {
    desk.session().turn_to_tab(tab).await?;
    desk.reload().await?;
    desk.job().verdict().read().await?;
    let shown = desk.job().order_name().await?;
    ensure!(shown == expected, "tab {tab} goes on with `{shown}`, and not with `{expected}`");
    Ok(())
}
