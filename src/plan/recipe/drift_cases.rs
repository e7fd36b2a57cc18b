//! The drift cases that a set point must survive: the run as planned, and what drifts in a shop.

use crate::dryer::{DriftCase, DriftRange};

/// Drift cases that every margin is computed over.
pub const DRIFT_CASES: usize = 8;

/// Place of the run as planned among the drift cases.
pub const PLANNED: usize = 0;
/// Place of the cold corner.
pub const COLD: usize = 1;
/// Place of the hot corner.
pub const HOT: usize = 2;
/// Place of the belt stop.
pub const STOPPED: usize = 3;
/// Place of the damper cloth.
pub const DAMPER: usize = 6;

/// The drift cases of a dryer, the run as planned first: the cold and the hot corner, a belt stop, thick and
/// thin film, damper and drier cloth.
pub fn drift_cases(drift: &DriftRange) -> [DriftCase; DRIFT_CASES] {
    let nominal = DriftCase::NOMINAL;
    [
        nominal,
        DriftCase::cold(drift),
        DriftCase::hot(drift),
        DriftCase::stopped(drift),
        DriftCase { film: 1.0 + drift.film, ..nominal },
        DriftCase { film: 1.0 - drift.film, ..nominal },
        // Regain in a room 15 points damper or drier than the gauge reads.
        DriftCase { water: 1.3, ..nominal },
        DriftCase { water: 0.75, ..nominal },
    ]
}
