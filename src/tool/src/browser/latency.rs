//! How long a person waits: the first answer, an answer and a frame of a drag, on a tablet four times slower than this machine.

use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use crate::host::progress::say;
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result};
use serde_json::{Value, json};
use std::time::Duration;

/// Cold starts that are timed.
const STARTS: usize = 10;
/// How long the first answer is looked at before another order is opened.
const LOOKED: Duration = Duration::from_secs(10);
/// How much slower the tablet is than the machine.
const SLOWER: u32 = 4;

/// Waits for the first verdict and hands back the milliseconds since navigation began.
const FIRST_ANSWER: &str = "
    const done = arguments[0];
    let shown;
    const look = () => {
        const root = document.querySelector('whitehold-desk')?.shadowRoot;
        const fact = root?.querySelector('[data-fact=air]');
        if (root?.querySelector('.answer')) shown ??= performance.now();
        if (!fact) return setTimeout(look, 2);
        const marks = performance.getEntriesByType('mark').map((mark) => [mark.name, mark.startTime]);
        done([...marks, ['shown', shown], ['answered', performance.now()]]);
    };
    look();";

/// Answers every order of the week through the page's own buttons; hands back the milliseconds from tap to answer.
const EVERY_ORDER: &str = "
    const done = arguments[arguments.length - 1];
    const root = document.querySelector('whitehold-desk').shadowRoot;
    const times = [];
    const calm = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then)));
    (async () => {
        root.querySelector('details.week').open = true;
        const count = root.querySelectorAll('details.week ol button').length;
        for (let turn = 0; turn < TURNS; turn += 1) {
            for (let n = 0; n < count; n += 1) {
                const row = root.querySelectorAll('details.week ol button')[n];
                const answer = root.querySelector('.answer');
                const start = performance.now();
                row.click();
                await calm();
                while (answer.getAttribute('aria-busy') === 'true') await calm();
                times.push(performance.now() - start);
            }
        }
        done(times);
    })();";

/// Changes something in the form of every order of the week, the way a person weighs one thing against another; hands back
/// the milliseconds from each tap to its answer.
const EVERY_CHANGE: &str = "
    const done = arguments[0];
    const root = document.querySelector('whitehold-desk').shadowRoot;
    const times = [];
    const calm = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then)));
    const answer = root.querySelector('.answer');
    const answered = async () => {
        await calm();
        while (answer.getAttribute('aria-busy') === 'true') await calm();
    };
    (async () => {
        for (const fold of root.querySelectorAll('details')) fold.open = true;
        const count = root.querySelectorAll('details.week ol button').length;
        for (let n = 0; n < count; n += 1) {
            root.querySelectorAll('details.week ol button')[n].click();
            await answered();
            for (const question of ['q-most', 'q-cover', 'q-kind', 'q-role']) {
                const chips = root.querySelectorAll(`[aria-labelledby=${question}] button[aria-pressed=false]`);
                for (const chip of [...chips].slice(0, 2)) {
                    const start = performance.now();
                    chip.click();
                    await answered();
                    times.push(performance.now() - start);
                }
            }
        }
        done(times);
    })().catch((error) => done([`${error}`]));";

/// Has the browser write down how long each tap waits for the next thing that is painted (Event Timing, W3C).
const WATCHES_TAPS: &str = "
    const taps = (window.taps = new Map());
    new PerformanceObserver((seen) => {
        for (const { interactionId, duration } of seen.getEntries()) {
            if (interactionId) taps.set(interactionId, Math.max(duration, taps.get(interactionId) ?? 0));
        }
    }).observe({ type: 'event', durationThreshold: 16 });
    document.querySelector('whitehold-desk').shadowRoot.querySelector('details.week').open = true;";
/// How often it is changed, in each order, what matters most.
const CHANGES: usize = 4;

/// Drags the set point in a circle, one move a frame; hands back the milliseconds between frames.
const DRAG: &str = "
    const done = arguments[0];
    const root = document.querySelector('whitehold-desk').shadowRoot;
    const hit = root.querySelector('#set-point');
    const map = root.querySelector('#map').getBoundingClientRect();
    const send = (type, x, y) => hit.dispatchEvent(new PointerEvent(type,
        { bubbles: true, composed: true, pointerId: 1, clientX: x, clientY: y, buttons: 1 }));
    const at = (turn) => [map.x + map.width * (0.5 + 0.3 * Math.cos(turn / 20)), map.y + map.height * (0.45 + 0.3 * Math.sin(turn / 20))];
    const frames = [];
    send('pointerdown', ...at(0));
    let turn = 0;
    let last = performance.now();
    const step = (now) => {
        frames.push(now - last);
        last = now;
        send('pointermove', ...at(turn += 1));
        if (turn < 240) requestAnimationFrame(step);
        else { send('pointerup', ...at(turn)); done(frames.slice(2)); }
    };
    requestAnimationFrame(step);";

/// Answers every order of the week with every white and blocker of the library on the shelf, through the JS package; hands
/// back the milliseconds of each answer: on cloth as damp as it never was before, and asked again with a piece more.
const WHOLE_SHELF: &str = "
    const done = arguments[arguments.length - 1];
    (async () => {
        const whitehold = await import(new URL('pkg/browser.js', location.href));
        const { whites, blockers } = whitehold.starterLibrary();
        const shelf = [...whites, ...blockers].map(({ id }) => id);
        const times = [[], []];
        for (let turn = 0; turn < 4; turn += 1) {
            for (const { order } of ORDERS) {
                const shop = { ...order.shop, shelf, humidity_percent: 50 + turn };
                for (const [more, kind] of times.entries()) {
                    const garments = order.garments.map((it) => ({ ...it, pieces: it.pieces + more }));
                    const start = performance.now();
                    whitehold.plan({ ...order, garments, shop });
                    if (turn > 0) kind.push(performance.now() - start);
                    await new Promise((then) => setTimeout(then));
                }
            }
        }
        done(times);
    })().catch((error) => done([`${error}`]));";

/// Measures the built page and writes `dist/latency.json`.
///
/// # Errors
/// When the page is not built or does not answer.
pub async fn measure(workspace: &Workspace) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    let mut starts = Vec::new();
    for _ in 0..STARTS {
        let desk = fixture.tablet().opens_the_file().await?;
        let marks = desk.run_async(FIRST_ANSWER).await?;
        let marks: Vec<(String, f64)> =
            serde_json::from_value(marks).context("no times of a first answer")?;
        starts.push(marks);
        desk.is_closed().await?;
    }
    // Whoever opens the page and turns to the week's orders at once.
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("[data-fact=air]").await?;
    desk.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    let answers = numbers(&desk.run_async(&EVERY_ORDER.replace("TURNS", "1")).await?)?;
    let changes = numbers(&desk.run_async(EVERY_CHANGE).await?)?;
    desk.is_closed().await?;

    // Whoever has looked at the first answer for a while.
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("[data-fact=air]").await?;
    desk.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    tokio::time::sleep(LOOKED).await;
    let ahead = numbers(&desk.run_async(&EVERY_ORDER.replace("TURNS", "1")).await?)?;
    let taps = taps(&desk).await?;
    desk.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 1 })).await?;
    desk.goes_to(&format!("{}#window", fixture.page.file()?)).await?;
    desk.shows("#say").await?;
    desk.settles().await?;
    desk.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    let frames = numbers(&desk.run_async(DRAG).await?)?;
    desk.is_closed().await?;

    let room: Value = serde_json::from_slice(&std::fs::read(workspace.root.join("data/harbour_lane.json"))?)?;
    // A page of somebody's own: the desk's forbids a second script.
    let desk = fixture.tablet().opens(&fixture.page.site("embed.html")).await?;
    desk.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    let script = WHOLE_SHELF.replace("ORDERS", &room["orders"].to_string());
    let shelves = desk.run_async(&script).await?;
    let [afresh, again] = [0, 1].map(|kind| numbers(&shelves[kind]));
    desk.is_closed().await?;

    let answered: Vec<f64> = starts.iter().filter_map(|marks| marks.last()).map(|(_, at)| *at).collect();
    say(&format!("first answer, by the middle start: {}", parts(&starts)));
    let rows = [
        row("first answer from file://, cold", &answered, 1),
        row("from the tap on an order to its answer", &answers, SLOWER),
        row("the same when the page was left alone before", &ahead, SLOWER),
        row("from a change in the form to its answer", &changes, SLOWER),
        row("from a tap to what is painted next", &taps, SLOWER),
        row("an answer over a shelf of every white", &afresh?, SLOWER),
        row("the same with a piece more", &again?, SLOWER),
        row("frame while the set point is dragged", &frames, SLOWER),
    ];
    for row in &rows {
        say(&format!(
            "{:44} median {:7.1} ms, 95 of 100 within {:7.1} ms, worst {:7.1} ms, {} times, {}x slower",
            row["name"].as_str().unwrap_or_default(),
            row["median_ms"].as_f64().unwrap_or(f64::NAN),
            row["p95_ms"].as_f64().unwrap_or(f64::NAN),
            row["worst_ms"].as_f64().unwrap_or(f64::NAN),
            row["times"],
            row["slower"],
        ));
    }
    write(&workspace.dist().join("latency.json"), format!("{}\n", serde_json::to_string_pretty(&rows)?))
}

/// Taps every order of the week with a finger, and what matters most in it; the milliseconds from each tap to the next
/// paint.
async fn taps(desk: &Desk) -> Result<Vec<f64>> {
    desk.run(WATCHES_TAPS, vec![]).await?;
    let orders = "return document.querySelector('whitehold-desk').shadowRoot.querySelectorAll('details.week li').length;";
    let orders = desk.run(orders, vec![]).await?.as_u64().context("no orders of the week")?;
    for order in 1..=orders {
        desk.taps(&format!("details.week li:nth-child({order}) button")).await?;
        desk.settles().await?;
        for change in 1..=CHANGES {
            desk.taps(&format!("[aria-labelledby=q-most] button:nth-child({})", change + 1)).await?;
            desk.settles().await?;
        }
    }
    // The browser hands its notes over when it has time.
    tokio::time::sleep(Duration::from_secs(1)).await;
    numbers(&desk.run("return [...window.taps.values()];", vec![]).await?)
}

/// When each part of the start was over, ms since navigation began: the median of each.
fn parts(starts: &[Vec<(String, f64)>]) -> String {
    let Some(first) = starts.first() else { return String::new() };
    let part = |(place, (name, _)): (usize, &(String, f64))| {
        let times: Vec<f64> = starts.iter().filter_map(|marks| marks.get(place)).map(|(_, at)| *at).collect();
        format!("{name} {:.0}", row(name, &times, 1)["median_ms"].as_f64().unwrap_or(f64::NAN))
    };
    first.iter().enumerate().map(part).collect::<Vec<_>>().join(", ") + " ms"
}

fn numbers(value: &Value) -> Result<Vec<f64>> {
    let list = value.as_array().with_context(|| format!("no list of times, but {value}"))?;
    list.iter().map(|time| time.as_f64().with_context(|| format!("no time, but {time}"))).collect()
}

fn row(name: &str, times: &[f64], slower: u32) -> Value {
    let mut times = times.to_vec();
    times.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let place = (share * times.len() as f64).ceil() as usize;
        times.get(place.saturating_sub(1)).copied()
    };
    json!({ "name": name, "median_ms": at(0.5), "p95_ms": at(0.95), "worst_ms": at(1.0), "times": times.len(), "slower": slower })
}
