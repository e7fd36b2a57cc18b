//! The cure window beside brute force: every setting of a fine raster simulated on its own.

use super::timing::time;
use super::{Row, as_text, worst};
use crate::scenarios::{Failure, Scenario};
use std::hint::black_box;
use std::time::Instant;
use whitehold::cure::fuse;
use whitehold::dryer::{Case, DriftCase, Dryer, TOLERANCE, history};
use whitehold::numerics::rosenbrock::Effort;
use whitehold::plan::{Detail, DriftRun, Question, Window};

/// Settings of the raster along each axis.
const SIDE: usize = 128;

/// Runs that a window simulates: three of the print, three of the bare cloth beside it. A row is the time of one.
const RUNS: f64 = 6.0;

/// The rows of one scenario's stack in a dryer.
///
/// # Errors
/// [`Failure`] if the solver gives up.
pub fn rows(name: &str, scenario: &Scenario, dryer: &Dryer) -> Result<Vec<Row>, Failure> {
    let (coarse, _) = window_row(name, scenario, dryer, Detail::Coarse)?;
    let (fine, window) = window_row(name, scenario, dryer, Detail::Fine)?;
    let raster = Raster::of(&window, dryer);
    let (brute, off) = brute_force(scenario, dryer, &window, &raster)?;
    let read_all = Row {
        name: format!("fine window read at {SIDE} x {SIDE}, {name}"),
        ours: fine.ours + read_everywhere(&window, &raster),
        peer: Some((brute, "brute force: 16,384 histories in lanes of eight".into())),
        unit: "ms a run",
        accuracy: format!("window against brute force: {}", as_text(off)),
    };
    Ok(vec![coarse, fine, read_all])
}

/// The row of computing a window, and the window.
fn window_row(
    name: &str,
    scenario: &Scenario,
    dryer: &Dryer,
    detail: Detail,
) -> Result<(Row, Window), Failure> {
    let kinetics = [scenario.ink; 2];
    let question =
        Question { stack: &scenario.stack, dryer, passes: 1, kinetics, dyed: None, fixed: None, detail };
    let took = time(|| Ok(Window::compute(&question).map(black_box).map(drop)?))? / 1e3 / RUNS;
    let window = Window::compute(&question)?;
    let cells = window.set.len() * window.belt.len();
    let row = Row {
        name: format!("{detail:?} window of {cells} cells, {name}").to_lowercase(),
        ours: took,
        peer: None,
        unit: "ms a run",
        accuracy: format!("{:.0} solves a run", solves(&question, &window)?),
    };
    Ok((row, window))
}

/// The settings that are simulated one by one: set temperatures evenly, belt speeds by equal ratios.
struct Raster {
    low: f64,
    high: f64,
    first: f64,
    last: f64,
}

impl Raster {
    /// All that a dryer can be set to and a window covers.
    fn of(window: &Window, dryer: &Dryer) -> Self {
        let [first, last] =
            [window.belt.first(), window.belt.last()].map(|belt| belt.copied().unwrap_or(1.0));
        Self { low: dryer.set_low, high: dryer.set_high, first, last }
    }

    fn set(&self, row: usize) -> f64 {
        self.low + (self.high - self.low) * share(row)
    }

    fn belt(&self, column: usize) -> f64 {
        self.first * (self.last / self.first).powf(share(column))
    }
}

fn share(at: usize) -> f64 {
    at as f64 / (SIDE - 1) as f64
}

/// Simulates every setting of the raster, eight in lanes; hands back the time of it, ms, and how far the window is off.
fn brute_force(
    scenario: &Scenario,
    dryer: &Dryer,
    window: &Window,
    raster: &Raster,
) -> Result<(f64, [f64; 2]), Failure> {
    let (mut took, mut off) = (0.0, [0.0_f64; 2]);
    for row in 0..SIDE {
        let set = raster.set(row);
        for first in (0..SIDE).step_by(8) {
            let cases: [Case; 8] = std::array::from_fn(|lane| Case {
                set,
                belt: raster.belt(first + lane),
                drift: DriftCase::NOMINAL,
            });
            let start = Instant::now();
            let history = history(&scenario.stack, dryer, &cases, 1, TOLERANCE)?;
            let fused = fuse(&history, |sample| sample.film_bottom, &scenario.ink).fused;
            let peak = history.film_bottom_peak();
            took += start.elapsed().as_secs_f64() * 1e3;
            for (lane, case) in cases.iter().enumerate() {
                let found = window.at(DriftRun::Nominal, set, case.belt);
                let apart = [(found.bottom_peak - peak[lane]).abs(), (found.fused[0] - fused[lane]).abs()];
                off = worst([off, apart]);
            }
        }
    }
    Ok((took, off))
}

/// Reads the window at every setting of the raster; ms.
fn read_everywhere(window: &Window, raster: &Raster) -> f64 {
    let start = Instant::now();
    for row in 0..SIDE {
        for column in 0..SIDE {
            black_box(window.at(DriftRun::Nominal, raster.set(row), raster.belt(column)));
        }
    }
    start.elapsed().as_secs_f64() * 1e3
}

/// Steps of a window's run over those of one history in its middle.
fn solves(question: &Question<'_>, window: &Window) -> Result<f64, Failure> {
    let middle = |values: &[f64]| values.get(values.len() / 2).copied().unwrap_or(0.0);
    let case = Case { set: middle(&window.set), belt: middle(&window.belt), drift: DriftCase::NOMINAL };
    let single = history(question.stack, question.dryer, &[case], 1, TOLERANCE)?.effort;
    let steps = |effort: Effort| (effort.accepted + effort.rejected) as f64;
    Ok(steps(window.effort) / RUNS / steps(single))
}
