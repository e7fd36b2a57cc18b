//! A scenario solved by our own solver, and what a solver's exactness is measured by.

use crate::scenarios::{Failure, Scenario};
use whitehold::cure::fuse;
use whitehold::dryer::{Case, History, StackGrid, history_on};
use whitehold::numerics::rosenbrock::Tolerance;

/// A grid so fine that its own error does not count beside what is measured against it.
pub const FINE_GRID: StackGrid = StackGrid { film: 8, blocker: 6, front: 40, back: 24 };

/// So tight that only the grid's error is left.
pub const FINE: Tolerance = Tolerance { temperature: 1e-3, water: 1e-6 };

/// What the exactness of a solver is measured by: how hot the film's bottom gets, and how far it fuses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CureSummary {
    /// Hottest that the film's bottom gets, K.
    pub peak: f64,
    /// Fused share at the film's bottom.
    pub fused: f64,
}

impl CureSummary {
    /// How far two are apart: K, fused share.
    #[must_use]
    pub fn apart(self, other: Self) -> [f64; 2] {
        [(self.peak - other.peak).abs(), (self.fused - other.fused).abs()]
    }
}

/// The temperatures on a grid, one case in each lane.
///
/// # Errors
/// [`Failure`] if the step size underflows.
pub fn solve<const L: usize>(
    scenario: &Scenario,
    cases: &[Case; L],
    grid: StackGrid,
    tolerance: Tolerance,
) -> Result<History<L>, Failure> {
    Ok(history_on(grid, &scenario.stack, &scenario.dryer, cases, 1, tolerance)?)
}

/// What counts of a history, lane by lane.
#[must_use]
pub fn summaries<const L: usize>(scenario: &Scenario, history: &History<L>) -> [CureSummary; L] {
    let fused = fuse(history, |sample| sample.film_bottom, &scenario.ink).fused;
    let peak = history.film_bottom_peak();
    std::array::from_fn(|lane| CureSummary { peak: peak[lane], fused: fused[lane] })
}
