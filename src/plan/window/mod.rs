//! The cure window: what every setting of a dryer does to one stack.
//!
//! A grid of set temperatures and belt speeds, each cell a history of the print and one of the bare cloth beside it.
//! The window is computed for the run as planned and for the two corners of the dryer's drift, so that a set point can
//! be asked to hold in all of them. Between cells: local cubics, on the logit of the fused share and the logarithm
//! of dye and scorch, because those are what bends least. Local, because a drying-out kink crosses every window of
//! damp cloth: a polynomial through the whole row would ring.

mod cell;
mod demands;
mod family;
mod fields;
mod set_point;

pub use demands::Demands;
pub use family::Family;
pub use set_point::{SetPoint, robust, room};

use crate::dryer::{DriftCase, Dryer, HistoryError, Stack, StackGrid, TOLERANCE};
use crate::ink::CureKinetics;
use crate::migration::DyedCloth;
use crate::numerics::interpolation;
use crate::numerics::rosenbrock::{Effort, Tolerance};
use cell::Cell;
use fields::{Beside, Print};
use set_point::Dial;
use std::sync::Arc;

/// Dwell that the window covers, s. Shorter is no cure, longer no business: common practice, no source.
const DWELL: [f64; 2] = [10.0, 150.0];

/// Runs that a window holds: as planned, and the two corners of the drift.
const RUNS: usize = 3;

/// How many cells a window has. How far each is off between them: `tests/answers/window_agrees.rs`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Enough to find a set point, which is then judged by marches of its own.
    Coarse,
    /// Enough to be looked at, and for a set point to be dragged through.
    Fine,
}

impl Detail {
    /// Cells through the stack.
    fn grid(self, stack: &Stack) -> StackGrid {
        match self {
            Self::Coarse => StackGrid::rough(stack),
            Self::Fine => StackGrid::of(stack),
        }
    }

    /// How closely each setting is marched: for a first look, ten times as loosely.
    fn tolerance(self) -> Tolerance {
        match self {
            Self::Coarse => {
                Tolerance { temperature: 10.0 * TOLERANCE.temperature, border: 10.0 * TOLERANCE.border }
            }
            Self::Fine => TOLERANCE,
        }
    }

    /// How many columns lie between two whose cooling is followed; what it adds in between is read off a cubic. What a
    /// piece does behind the dryer's mouth changes little from one belt speed to the next, and takes longer to march
    /// than the heat does.
    fn coolings(self) -> usize {
        match self {
            Self::Coarse => 2,
            Self::Fine => 1,
        }
    }

    /// Rows over a range of set temperatures (K), and columns of belt speed.
    #[must_use]
    pub fn cells(self, range: f64) -> [usize; 2] {
        let (kelvin, columns) = match self {
            Self::Coarse => (13.0, 13),
            Self::Fine => (7.8, 29),
        };
        // Fewer than six rows would leave a local cubic no room; more than forty, no dryer has.
        [(range / kelvin).ceil().clamp(5.0, 39.0) as usize + 1, columns]
    }
}

/// What one setting does to the stack.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// Fused share at the film's bottom, for each of the window's kinetics.
    pub fused: [f64; 2],
    /// Film peak, K.
    pub film_peak: f64,
    /// Peak of the film's bottom, K.
    pub bottom_peak: f64,
    /// Cloth peak, K: under the print or beside it, whichever is hotter.
    pub cloth_peak: f64,
    /// Scorch index of the hotter of the two.
    pub scorch: f64,
    /// Dye that arrives at the film, kg/m²; 0 where the cloth has none.
    pub dye: f64,
}

/// The window of one stack in one dryer.
#[derive(Clone, Debug)]
pub struct Window {
    /// Set temperatures of the rows, K, rising.
    pub set: Vec<f64>,
    /// Belt speeds of the columns, m/s, rising.
    pub belt: Vec<f64>,
    /// What it took to compute: steps of the march, times the cases that each step served.
    pub effort: Effort,
    log_belt: Vec<f64>,
    dials: Arc<[Dial]>,
    worlds: [Cells; RUNS],
}

/// Values over the grid, row after row from the coolest, as they are interpolated.
type Cells = Vec<Cell>;

/// Which run a value is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Run {
    /// As planned.
    Nominal,
    /// The cold corner of the drift.
    Cold,
    /// The hot corner of the drift.
    Hot,
}

/// What the window is computed for.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// The stack.
    pub stack: &'a Stack,
    /// The dryer.
    pub dryer: &'a Dryer,
    /// Times through it.
    pub passes: u32,
    /// The two kinetics that are followed: ordinary and low-cure.
    pub kinetics: [CureKinetics; 2],
    /// Dye of the cloth.
    pub dyed: Option<&'a DyedCloth>,
    /// Set temperature that cannot be changed, K.
    pub fixed: Option<f64>,
    /// How many cells.
    pub detail: Detail,
}

impl Window {
    /// The middle of what was looked at: where a closed window is judged.
    #[must_use]
    pub(crate) fn middle(&self) -> SetPoint {
        let middle = |values: &[f64]| values.get(values.len() / 2).copied().unwrap_or(1.0);
        SetPoint { set: middle(&self.set), belt: middle(&self.belt), robust: false }
    }

    /// Computes the window.
    ///
    /// # Errors
    /// [`HistoryError`] where a stack or dryer lies outside the equations.
    pub fn compute(question: &Question<'_>) -> Result<Self, HistoryError> {
        let (axes, runs) = (Axes::of(question), runs(question.dryer));
        let beside = Beside::compute(question, &axes, &runs)?;
        Ok(Self::of(&axes, &Print::compute(question, &axes, &runs)?, &beside))
    }

    /// A window of a print and of the cloth beside it.
    fn of(axes: &Axes, print: &Print, beside: &Beside) -> Self {
        let mut worlds: [Cells; RUNS] = Default::default();
        for (cells, (print, beside)) in worlds.iter_mut().zip(print.cells.iter().zip(&beside.cells)) {
            cells.extend(print.iter().zip(beside).map(|(print, beside)| Cell::of(print, beside)));
        }
        let effort = Effort {
            accepted: print.effort.accepted + beside.effort.accepted,
            rejected: print.effort.rejected + beside.effort.rejected,
        };
        let Axes { set, belt, log_belt, dials } = axes.clone();
        Self { set, belt, effort, log_belt, dials, worlds }
    }

    fn cells(&self, run: Run) -> &Cells {
        let [nominal, cold, hot] = &self.worlds;
        match run {
            Run::Nominal => nominal,
            Run::Cold => cold,
            Run::Hot => hot,
        }
    }

    /// The cells along one set temperature, one a column: between the rows from `row` on, by their weights.
    fn row(&self, run: Run, (row, weights): (usize, [f64; 4])) -> Cells {
        let columns = self.belt.len();
        let mut along = vec![Cell::ZERO; columns];
        for (cells, weight) in self.cells(run).chunks(columns).skip(row).zip(weights) {
            for (sum, cell) in along.iter_mut().zip(cells) {
                sum.add(weight, cell);
            }
        }
        along
    }

    /// The outcome at a setting (K, m/s), held inside the grid.
    #[must_use]
    pub fn at(&self, run: Run, set: f64, belt: f64) -> Outcome {
        let (row, row_weights) = interpolation::cubic(&self.set, set);
        let (column, column_weights) = interpolation::cubic(&self.log_belt, belt.ln());
        let cells = self.cells(run);
        let mut sum = Cell::ZERO;
        for (r, row_weight) in row_weights.iter().enumerate() {
            let from = (row + r) * self.belt.len() + column;
            for (cell, weight) in cells.get(from..).unwrap_or_default().iter().zip(column_weights) {
                sum.add(row_weight * weight, cell);
            }
        }
        sum.outcome()
    }

    /// The outcomes of the whole grid, row after row.
    #[must_use]
    pub fn outcomes(&self, run: Run) -> Vec<Outcome> {
        self.cells(run).iter().map(Cell::outcome).collect()
    }
}

/// Rows and columns of a window.
#[derive(Clone, Debug)]
struct Axes {
    set: Vec<f64>,
    belt: Vec<f64>,
    log_belt: Vec<f64>,
    dials: Arc<[Dial]>,
}

impl Axes {
    fn of(question: &Question<'_>) -> Self {
        let Question { dryer, fixed, .. } = *question;
        let [rows, columns] = question.detail.cells(dryer.set_high - dryer.set_low);
        let set = match fixed {
            // A little to each side, so that drift can still be read off.
            Some(set) => spread(set - 12.0, set + 12.0, 4),
            None => spread(dryer.set_low, dryer.set_high, rows),
        };
        let length = dryer.heated_length();
        let slowest = (length / DWELL[1]).max(dryer.belt.slowest);
        let fastest = (length / DWELL[0]).min(dryer.belt.fastest).max(slowest * 1.05);
        let log_belt = spread(slowest.ln(), fastest.ln(), columns);
        let belt = log_belt.iter().map(|speed| speed.exp()).collect();
        let dials = set_point::dials(dryer, &log_belt);
        Self { set, belt, log_belt, dials }
    }
}

/// The runs that every window holds, in the order of [`Run`].
fn runs(dryer: &Dryer) -> [DriftCase; RUNS] {
    [DriftCase::NOMINAL, DriftCase::cold(&dryer.drift), DriftCase::hot(&dryer.drift)]
}

fn spread(low: f64, high: f64, count: usize) -> Vec<f64> {
    (0..count).map(|i| low + (high - low) * i as f64 / (count - 1) as f64).collect()
}
