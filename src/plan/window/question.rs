//! What a window is computed for, and on which grid.
//!
//! **Decision:** the coarse window has a row each 13 K, is integrated loosely, and follows every other
//! cooling; the fine one, which is looked at, is integrated closely.
//! **Because:** a set point found in the coarse window is assessed by simulations of its own; behind the
//! dryer's mouth a simulation takes longer than in it and differs little from one belt speed to the next.
//! **Measured:** rows 18 K apart made the search miss a candidate (`tests/answers/screening.rs`, 2026-11-28);
//! 16 K took red polyester from a trial to a go with two held (`tests/answers/ten_orders.rs`, 2026-11-29).
//! **Reconsider when:** those two tests pass with wider rows on many more orders than they hold.

use super::belt_steps::{BeltStep, belt_steps};
use crate::dryer::{DriftCase, Dryer, Stack, StackGrid, TOLERANCE};
use crate::ink::CureKinetics;
use crate::migration::DyedCloth;
use crate::numerics::rosenbrock::Tolerance;
use std::sync::Arc;

/// Dwell times that a window covers, s. Below 10 s no plastisol cures; above 150 s no shop could work: common
/// practice, no source.
const DWELL: [f64; 2] = [10.0, 150.0];

/// Runs that a window holds: as planned, and the two corners of the drift.
pub const RUNS: usize = 3;

/// How fine a window is. The error of each between the cells: `tests/answers/window_agrees.rs`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Enough to find a set point, which is then assessed by simulations of its own.
    Coarse,
    /// Enough to be drawn, and for a set point to be dragged through.
    Fine,
}

impl Detail {
    /// The grid through the thickness of the stack.
    pub fn grid(self, stack: &Stack) -> StackGrid {
        match self {
            Self::Coarse => StackGrid::rough(stack),
            Self::Fine => StackGrid::of(stack),
        }
    }

    /// Tolerance of the integration: ten times as loose for a coarse window.
    pub fn tolerance(self) -> Tolerance {
        match self {
            Self::Coarse => Tolerance { temperature: 10.0 * TOLERANCE.temperature, water: TOLERANCE.water },
            Self::Fine => TOLERANCE,
        }
    }

    /// Columns from one whose cooling is simulated to the next; what cooling adds in between is interpolated
    /// by a cubic. Cooling after the exit changes little from one belt speed to the next, and takes longer to
    /// simulate than the heat does.
    pub fn coolings(self) -> usize {
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
        // Fewer than six rows are too few for a local cubic; no dryer needs more than forty.
        [(range / kelvin).ceil().clamp(5.0, 39.0) as usize + 1, columns]
    }
}

/// The run that a value is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DriftRun {
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
    /// Passes through it.
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

/// Rows and columns of a window.
#[derive(Clone, Debug)]
pub struct Axes {
    /// Set temperatures of the rows, K, rising.
    pub set: Vec<f64>,
    /// Belt speeds of the columns, m/s, rising.
    pub belt: Vec<f64>,
    /// Their logarithms.
    pub log_belt: Vec<f64>,
    /// Belt speeds that a shop can dial.
    pub belt_steps: Arc<[BeltStep]>,
}

impl Axes {
    /// The axes of a question's window.
    pub fn of(question: &Question<'_>) -> Self {
        let Question { dryer, fixed, .. } = *question;
        let [rows, columns] = question.detail.cells(dryer.set_high - dryer.set_low);
        let set = match fixed {
            // Off the dial: a little to each side, so that the effect of drift can be read.
            Some(set) if set < dryer.set_low || set > dryer.set_high => spread(set - 12.0, set + 12.0, 4),
            // The same rows whether it is fixed or free, so that one setting has one answer.
            _ => spread(dryer.set_low, dryer.set_high, rows),
        };
        let length = dryer.heated_length();
        let slowest = (length / DWELL[1]).max(dryer.belt.slowest);
        let fastest = (length / DWELL[0]).min(dryer.belt.fastest).max(slowest * 1.05);
        let log_belt = spread(slowest.ln(), fastest.ln(), columns);
        let belt = log_belt.iter().map(|speed| speed.exp()).collect();
        let belt_steps = belt_steps(dryer, &log_belt);
        Self { set, belt, log_belt, belt_steps }
    }
}

/// The runs that every window holds, in the order of [`DriftRun`].
pub fn runs(dryer: &Dryer) -> [DriftCase; RUNS] {
    [DriftCase::NOMINAL, DriftCase::cold(&dryer.drift), DriftCase::hot(&dryer.drift)]
}

/// Even steps from `low` to `high`.
fn spread(low: f64, high: f64, count: usize) -> Vec<f64> {
    (0..count).map(|i| low + (high - low) * i as f64 / (count - 1) as f64).collect()
}
