//! Our march of a trip, and what counts of it.

use crate::journeys::{Failure, Trip};
use whitehold::cure::fuse;
use whitehold::dryer::{Case, History, StackGrid, history_on};
use whitehold::numerics::rosenbrock::Tolerance;

/// A grid so fine that its own error does not count beside what is measured against it.
pub const FINE_GRID: StackGrid = StackGrid { film: 8, blocker: 6, front: 40, back: 24 };

/// So tight that only the grid is left.
pub const FINE: Tolerance = Tolerance { temperature: 1e-3, border: 1e-6 };

/// What the exactness of a solver is measured by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Result {
    /// Hottest that the film's bottom gets, K.
    pub peak: f64,
    /// Fused share at the film's bottom.
    pub fused: f64,
}

impl Result {
    /// How far two results are apart: K, fused share.
    #[must_use]
    pub fn apart(self, other: Self) -> [f64; 2] {
        [(self.peak - other.peak).abs(), (self.fused - other.fused).abs()]
    }
}

/// The march on a grid.
///
/// # Errors
/// Where the march gives up.
pub fn march<const L: usize>(
    trip: &Trip,
    cases: &[Case; L],
    grid: StackGrid,
    tolerance: Tolerance,
) -> std::result::Result<History<L>, Failure> {
    Ok(history_on(grid, &trip.stack, &trip.dryer, cases, 1, tolerance)?)
}

/// What counts of a history.
#[must_use]
pub fn results<const L: usize>(trip: &Trip, history: &History<L>) -> [Result; L] {
    let fused = fuse(history, |sample| sample.film_bottom, &trip.ink).fused;
    let peak = history.film_bottom_peak();
    std::array::from_fn(|lane| Result { peak: peak[lane], fused: fused[lane] })
}
