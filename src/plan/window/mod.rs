//! The cure window: what every setting of a dryer does to one stack.
//!
//! A grid of set temperatures and belt speeds, each cell a history of the print and one of the bare cloth beside it.
//! The window is computed for the run as planned and for the two corners of the dryer's drift, so that a set point can
//! be asked to hold in all of them. Between cells: local cubics, on the logit of the fused share and the logarithm
//! of dye and scorch, because those are what bends least. Local, because a drying-out kink crosses every window of
//! damp cloth: a polynomial through the whole row would ring.

mod demands;
mod fields;
mod set_point;

pub use demands::Demands;
pub use set_point::{SetPoint, robust, room};

use crate::dryer::{Dryer, HistoryError, Stack, World};
use crate::ink::CureKinetics;
use crate::migration::DyedCloth;
use crate::numerics::grid;
use crate::numerics::march::Effort;
use fields::{FIELDS, Fields, fields};

/// Dwell that the window covers, s. Shorter is no cure, longer no business: common practice, no source.
const DWELL: [f64; 2] = [10.0, 150.0];

/// How many cells a window has. How far each is off between them: `tests/window_agrees.rs`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Enough to find a set point, which is then judged by marches of its own.
    Coarse,
    /// Enough to be looked at, and for a set point to be dragged through.
    Fine,
}

impl Detail {
    /// Rows over a range of set temperatures (K), and columns of belt speed.
    #[must_use]
    pub fn cells(self, range: f64) -> [usize; 2] {
        let (kelvin, columns) = match self {
            Self::Coarse => (10.0, 16),
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
    worlds: [Fields; 3],
}

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
        let belt: Vec<f64> = log_belt.iter().map(|speed| speed.exp()).collect();
        let drift = &dryer.drift;
        let runs = [World::NOMINAL, World::cold(drift), World::hot(drift)];
        let (worlds, effort) = fields(question, &set, &belt, runs)?;
        Ok(Self { set, belt, effort, log_belt, worlds })
    }

    fn fields(&self, run: Run) -> &Fields {
        let [nominal, cold, hot] = &self.worlds;
        match run {
            Run::Nominal => nominal,
            Run::Cold => cold,
            Run::Hot => hot,
        }
    }

    /// The outcome at a setting (K, m/s), held inside the grid.
    #[must_use]
    pub fn at(&self, run: Run, set: f64, belt: f64) -> Outcome {
        let (row, row_weights) = grid::cubic(&self.set, set);
        let (column, column_weights) = grid::cubic(&self.log_belt, belt.ln());
        let fields = self.fields(run);
        let mut sum = [0.0; FIELDS];
        for (r, row_weight) in row_weights.iter().enumerate() {
            let from = (row + r) * self.belt.len() + column;
            for (cell, weight) in fields.cells.get(from..).unwrap_or_default().iter().zip(column_weights) {
                for (sum, value) in sum.iter_mut().zip(cell) {
                    *sum += row_weight * weight * value;
                }
            }
        }
        outcome(sum)
    }

    /// The outcomes of the whole grid, row after row.
    #[must_use]
    pub fn outcomes(&self, run: Run) -> Vec<Outcome> {
        self.fields(run).cells.iter().copied().map(outcome).collect()
    }
}

fn outcome(cell: [f64; FIELDS]) -> Outcome {
    let [fused, fused_low, film_peak, bottom_peak, cloth_peak, scorch, dye, bare_peak, bare_scorch] = cell;
    Outcome {
        fused: [unlogit(fused), unlogit(fused_low)],
        film_peak,
        bottom_peak,
        cloth_peak: cloth_peak.max(bare_peak),
        scorch: scorch.max(bare_scorch).exp(),
        dye: dye.exp() - NO_DYE,
    }
}

/// Added to the dye so that a cloth without any has a logarithm, kg/m²: a thousandth of what can be seen.
const NO_DYE: f64 = 1e-9;

/// Logit of a share, held far out where it can no longer matter: a kink nearer in would ring between the cells.
fn logit(share: f64) -> f64 {
    let share = share.clamp(1e-9, 1.0 - 1e-9);
    (share / (1.0 - share)).ln()
}

fn unlogit(value: f64) -> f64 {
    1.0 / (1.0 + (-value).exp())
}

fn spread(low: f64, high: f64, count: usize) -> Vec<f64> {
    (0..count).map(|i| low + (high - low) * i as f64 / (count - 1) as f64).collect()
}
