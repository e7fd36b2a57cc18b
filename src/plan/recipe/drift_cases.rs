//! The runs that a set point must survive: as planned, and what drifts in a shop.

use crate::dryer::{DriftCase, DriftRange};

/// Runs that are looked at for every margin.
pub const DRIFT_CASES: usize = 8;

/// The runs at a set point, the planned one first, then the corners that the set point must survive.
pub fn drift_cases(drift: &DriftRange) -> [DriftCase; DRIFT_CASES] {
    let nominal = DriftCase::NOMINAL;
    [
        nominal,
        DriftCase::cold(drift),
        DriftCase::hot(drift),
        DriftCase::stopped(drift),
        DriftCase { film: 1.0 + drift.film, ..nominal },
        DriftCase { film: 1.0 - drift.film, ..nominal },
        // Regain of a room that is 15 points damper or drier than the gauge says.
        DriftCase { water: 1.3, ..nominal },
        DriftCase { water: 0.75, ..nominal },
    ]
}
