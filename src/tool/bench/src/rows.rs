//! The rows of `dist/bench.json`.

use crate::films;
use crate::journeys::{Failure, Trip, timed};
use crate::ours::{FINE, FINE_GRID, Result as Found, march, results};
use serde_json::{Value, json};
use std::hint::black_box;
use std::time::Instant;
use whitehold::cure::fuse;
use whitehold::dryer::{Case, DriftCase, Dryer, Stack, StackGrid, TOLERANCE, Zone, history};
use whitehold::numerics::rosenbrock::Effort;
use whitehold::plan::{Detail, DriftRun, Question, Window};

/// One line of the table.
#[derive(Clone, Debug)]
pub struct Row {
    /// What is measured.
    pub name: String,
    /// What ours takes.
    pub ours: f64,
    /// What the peer takes, and who it is.
    pub peer: Option<(f64, String)>,
    /// Unit of both.
    pub unit: &'static str,
    /// How exact both are, in words.
    pub accuracy: String,
}

impl Row {
    /// As it stands in the file, but for commit and machine.
    #[must_use]
    pub fn json(&self) -> Value {
        let peer = self.peer.as_ref();
        json!({
            "name": self.name, "ours": self.ours, "unit": self.unit, "accuracy": self.accuracy,
            "peer": peer.map(|(value, _)| value), "peer_name": peer.map(|(_, name)| name),
            "ratio": peer.map(|(value, _)| value / self.ours),
        })
    }
}

/// Every row, one part after another, each said as it is done.
///
/// # Errors
/// Where a march or a peer gives up.
pub fn all() -> Result<Vec<Row>, Failure> {
    let trips = timed()?;
    let mut rows = histories(&trips)?;
    let Some(tee) = trips.first() else { return Ok(rows) };
    rows.extend(costs(tee)?);
    let zones = |count: usize| Dryer { zones: parted(&tee.dryer, count), ..tee.dryer.clone() };
    rows.extend(windows("one zone", tee, &zones(1))?);
    rows.extend(windows("three zones", tee, &zones(3))?);
    rows.extend(forecasts()?);
    Ok(rows)
}

/// How far off the worst of some results is: K, fused share.
fn worst(apart: impl IntoIterator<Item = [f64; 2]>) -> [f64; 2] {
    apart.into_iter().fold([0.0_f64; 2], |a, b| [a[0].max(b[0]), a[1].max(b[1])])
}

fn in_words([peak, fused]: [f64; 2]) -> String {
    format!("{peak:.3} K, {fused:.4}")
}

/// One history, alone and in eight lanes, beside diffsol's BDF on the same equations and grid.
fn histories(trips: &[Trip]) -> Result<Vec<Row>, Failure> {
    let (mut alone, mut lanes) = (Vec::new(), Vec::new());
    let (mut off_alone, mut off_lanes) = (Vec::new(), Vec::new());
    for trip in trips {
        let grid = StackGrid::of(&trip.stack);
        let case = [trip.case];
        let eight = trip.at_eight_speeds();
        let off = |found: &[Found], exact: &[Found]| {
            worst(found.iter().zip(exact).map(|(found, exact)| found.apart(*exact)))
        };
        let exact = results(trip, &march(trip, &case, FINE_GRID, FINE)?);
        off_alone.push(off(&results(trip, &march(trip, &case, grid, TOLERANCE)?), &exact));
        let exact = results(trip, &march(trip, &eight, FINE_GRID, FINE)?);
        off_lanes.push(off(&results(trip, &march(trip, &eight, grid, TOLERANCE)?), &exact));
        alone.push(time(|| march(trip, &case, grid, TOLERANCE).map(drop))?);
        lanes.push(time(|| march(trip, &eight, grid, TOLERANCE).map(drop))? / 8.0);
    }
    let peer = peer(trips)?;
    let beside = peer.as_ref().map(|peer| (peer.time, peer.name.clone()));
    let accuracy = |off: Vec<[f64; 2]>| {
        let peers = peer.as_ref().map_or(String::new(), |peer| format!("; peer {}", in_words(peer.off)));
        format!(
            "worst of {} stacks against the converged equations: ours {}{peers}",
            trips.len(),
            in_words(worst(off))
        )
    };
    let row = |name: &str, ours: &[f64], off| Row {
        name: name.into(),
        ours: mean(ours),
        peer: beside.clone(),
        unit: "us a history",
        accuracy: accuracy(off),
    };
    Ok(vec![
        row("one history, alone", &alone, off_alone),
        row("one history, of eight in lanes", &lanes, off_lanes),
    ])
}

/// What a peer took.
struct Peer {
    name: String,
    /// Mean time of a history, us.
    time: f64,
    /// Worst error.
    off: [f64; 2],
}

#[cfg(not(feature = "peers"))]
#[allow(clippy::unnecessary_wraps)] // with the feature it may fail
fn peer(_: &[Trip]) -> Result<Option<Peer>, Failure> {
    Ok(None)
}

/// diffsol at the loosest tolerance that is as exact as ours in time: on our grid, against that grid solved tightly.
#[cfg(feature = "peers")]
fn peer(trips: &[Trip]) -> Result<Option<Peer>, Failure> {
    use crate::peers::{bdf, result};
    use whitehold::dryer::TransitEquations;
    let mut ours = [0.0_f64; 2];
    let mut prepared = Vec::new();
    for trip in trips {
        let grid = StackGrid::of(&trip.stack);
        let tight = results(trip, &march(trip, &[trip.case], grid, FINE)?)[0];
        let exact = results(trip, &march(trip, &[trip.case], FINE_GRID, FINE)?)[0];
        ours = worst([ours, results(trip, &march(trip, &[trip.case], grid, TOLERANCE)?)[0].apart(tight)]);
        prepared.push((
            trip,
            TransitEquations::new(grid, &trip.stack, &trip.dryer, &trip.case, 1),
            tight,
            exact,
        ));
    }
    const RELATIVE: [f64; 8] = [3e-4, 1e-4, 7e-5, 5e-5, 4e-5, 3e-5, 2e-5, 1e-5];
    for (place, relative) in RELATIVE.into_iter().enumerate() {
        let mut off = [[0.0_f64; 2]; 2];
        for (trip, equations, tight, exact) in &prepared {
            let found = result(&bdf(equations, relative)?, &trip.ink);
            off = [worst([off[0], found.apart(*tight)]), worst([off[1], found.apart(*exact)])];
        }
        let as_good = off[0][0] <= ours[0] && off[0][1] <= ours[1];
        eprintln!("diffsol at {relative:e}: in time off by {}; ours by {}", in_words(off[0]), in_words(ours));
        if as_good || place + 1 == RELATIVE.len() {
            let mut times = Vec::new();
            for (_, equations, _, _) in &prepared {
                times.push(time(|| bdf(equations, relative).map(drop))?);
            }
            let name =
                format!("diffsol 0.18 BDF, our right-hand side, Jacobian and grid, tolerance {relative:e}");
            return Ok(Some(Peer { name, time: mean(&times), off: off[1] }));
        }
    }
    Ok(None)
}

/// How the cost of a history grows.
fn costs(tee: &Trip) -> Result<Vec<Row>, Failure> {
    let row = |name: String, ours: f64| Row {
        name,
        ours,
        peer: None,
        unit: "us a history",
        accuracy: String::new(),
    };
    let mut rows = Vec::new();
    for cells in [2, 4, 8, 16, 32] {
        let grid = StackGrid { film: 2, blocker: 2, front: cells + 1, back: cells / 2 + 1 };
        let nodes = grid.film + grid.front + grid.back + 1;
        let took = time(|| march(tee, &[tee.case], grid, TOLERANCE).map(drop))?;
        rows.push(row(format!("the same on {nodes} nodes"), took));
    }
    for zones in [1, 2, 3, 6, 12] {
        let dryer = Dryer { zones: parted(&tee.dryer, zones), ..tee.dryer.clone() };
        let took = time(|| Ok(history(&tee.stack, &dryer, &[tee.case], 1, TOLERANCE).map(drop)?))?;
        rows.push(row(format!("the same through {zones} zones"), took));
    }
    fn worlds<const L: usize>(tee: &Trip) -> Result<f64, Failure> {
        let cases: [Case; L] = std::array::from_fn(|lane| {
            let warmer = DriftCase { air: lane as f64 - 0.5 * L as f64, ..DriftCase::NOMINAL };
            Case { drift: warmer, ..tee.case }
        });
        Ok(time(|| march(tee, &cases, StackGrid::of(&tee.stack), TOLERANCE).map(drop))? / L as f64)
    }
    rows.push(row("the same, of 2 worlds side by side".into(), worlds::<2>(tee)?));
    rows.push(row("the same, of 4 worlds side by side".into(), worlds::<4>(tee)?));
    rows.push(row("the same, of 8 worlds side by side".into(), worlds::<8>(tee)?));
    Ok(rows)
}

/// The dryer's heated length in so many equal zones, each three kelvin hotter than the one before.
fn parted(dryer: &Dryer, count: usize) -> Vec<Zone> {
    let Some(zone) = dryer.zones.first() else { return Vec::new() };
    let length = dryer.heated_length() / count as f64;
    (0..count).map(|z| Zone { length, air_offset: 3.0 * z as f64, ..zone.clone() }).collect()
}

/// A window beside brute force: 128 x 128 settings, each marched. One run of the print; a window follows three, and the
/// bare cloth beside each.
fn windows(name: &str, trip: &Trip, dryer: &Dryer) -> Result<Vec<Row>, Failure> {
    const SIDE: usize = 128;
    let question = |detail| Question {
        stack: &trip.stack,
        dryer,
        passes: 1,
        kinetics: [trip.ink; 2],
        dyed: None,
        fixed: None,
        detail,
    };
    let mut rows = Vec::new();
    let mut window = Window::compute(&question(Detail::Coarse))?;
    for detail in [Detail::Coarse, Detail::Fine] {
        let asked = question(detail);
        let took = time(|| Ok(Window::compute(&asked).map(black_box).map(drop)?))? / 1e3 / RUNS;
        window = Window::compute(&asked)?;
        let cells = window.set.len() * window.belt.len();
        rows.push(Row {
            name: format!("{detail:?} window of {cells} cells, {name}").to_lowercase(),
            ours: took,
            peer: None,
            unit: "ms a run",
            accuracy: format!("{:.0} solves a run", solves(&asked, &window)?),
        });
    }
    let [first, last] = [window.belt.first(), window.belt.last()].map(|belt| belt.copied().unwrap_or(1.0));
    let [low, high] = [dryer.set_low, dryer.set_high];
    let share = |i: usize| i as f64 / (SIDE - 1) as f64;
    let speed = |column: usize| first * (last / first).powf(share(column));
    let mut off = [0.0_f64; 2];
    let mut brute = 0.0;
    for row in 0..SIDE {
        let set = low + (high - low) * share(row);
        for part in 0..SIDE / 8 {
            let cases: [Case; 8] = std::array::from_fn(|lane| Case {
                set,
                belt: speed(part * 8 + lane),
                drift: DriftCase::NOMINAL,
            });
            let start = Instant::now();
            let marched = history(&trip.stack, dryer, &cases, 1, TOLERANCE)?;
            let fused = fuse(&marched, |sample| sample.film_bottom, &trip.ink).fused;
            let peak = marched.film_bottom_peak();
            brute += start.elapsed().as_secs_f64() * 1e3;
            for (lane, case) in cases.iter().enumerate() {
                let found = window.at(DriftRun::Nominal, set, case.belt);
                let apart = [(found.bottom_peak - peak[lane]).abs(), (found.fused[0] - fused[lane]).abs()];
                off = worst([off, apart]);
            }
        }
    }
    let start = Instant::now();
    for row in 0..SIDE {
        for column in 0..SIDE {
            black_box(window.at(DriftRun::Nominal, low + (high - low) * share(row), speed(column)));
        }
    }
    let read = start.elapsed().as_secs_f64() * 1e3;
    let fine = rows.last().map_or(0.0, |row| row.ours);
    rows.push(Row {
        name: format!("fine window read at 128 x 128, {name}"),
        ours: fine + read,
        peer: Some((brute, "brute force: 16,384 histories in lanes of eight".into())),
        unit: "ms a run",
        accuracy: format!("window against brute force: {}", in_words(off)),
    });
    Ok(rows)
}

/// Films that take up dye and spread it, and a whole forecast. The peer of both is Python's, and stands beside them in
/// rows of their own.
fn forecasts() -> Result<Vec<Row>, Failure> {
    let row = |name: &str, ours: f64, unit, accuracy: &str| Row {
        name: name.into(),
        ours,
        peer: None,
        unit,
        accuracy: accuracy.into(),
    };
    let done = |work: fn()| {
        time(|| {
            work();
            Ok(())
        })
    };
    let alone = done(films::all::<1>)? / films::COUNT;
    let lanes = done(films::all::<8>)? / films::COUNT / 8.0;
    let (order, forecast) = films::forecast(&whitehold::library::starter()?)?;
    let whole = time(|| {
        black_box(
            whitehold::library::forecast_at(&order, &forecast, None)
                .map_err(|errors| format!("{errors:?}"))?,
        );
        Ok(())
    })?;
    Ok(vec![
        row("one film with dye, alone", alone, "us a film", "30 steps"),
        row("one film with dye, of eight in lanes", lanes, "us a film", "30 steps"),
        row(
            "a 90-day forecast over all worlds",
            whole,
            "us a forecast",
            "its two histories of eight worlds included",
        ),
    ])
}

/// Runs in a window: three of the print, three of the bare cloth beside it.
const RUNS: f64 = 6.0;

/// Steps of a window's run over those of one march in its middle.
fn solves(question: &Question<'_>, window: &Window) -> Result<f64, Failure> {
    let middle = |values: &[f64]| values.get(values.len() / 2).copied().unwrap_or(0.0);
    let case = Case { set: middle(&window.set), belt: middle(&window.belt), drift: DriftCase::NOMINAL };
    let stack: &Stack = question.stack;
    let single = history(stack, question.dryer, &[case], 1, TOLERANCE)?.effort;
    let steps = |effort: Effort| (effort.accepted + effort.rejected) as f64;
    Ok(steps(window.effort) / RUNS / steps(single))
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// Time of one call, us: the fastest of some rounds, as other programs only ever slow one down.
fn time(mut work: impl FnMut() -> Result<(), Failure>) -> Result<f64, Failure> {
    work()?;
    let start = Instant::now();
    work()?;
    let calls = (2e-3 / start.elapsed().as_secs_f64().max(1e-7)).ceil().clamp(1.0, 1e4);
    let mut fastest = f64::MAX;
    for _ in 0..15 {
        let start = Instant::now();
        for _ in 0..calls as u32 {
            work()?;
        }
        fastest = fastest.min(start.elapsed().as_secs_f64() / calls * 1e6);
    }
    Ok(fastest)
}
