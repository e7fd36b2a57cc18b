//! How a setting stands to the limits of film and cloth: the one judge of a setting, wherever it comes from.
//!
//! The pick's own set point, one that is dragged, one that a fixed dryer leaves and one that is read from a
//! sheet are all judged here, from the same histories.

use super::histories::RunHistories;
use crate::cure::fuse;
use crate::dryer::HistorySample;
use crate::ink::CureKinetics;
use crate::plan::recipe::{COLD, DRIFT_CASES, HOT, PLANNED, STOPPED};
use crate::plan::window::Demands;

/// Fused share at the cold end under which a print is raw there, 0 to 1. Chosen: no print that any test would
/// call cured lies near it.
const RAW: f64 = 0.01;

/// How a setting stands to the limits of film and cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeatStanding {
    /// Every limit holds over the whole drift of the dryer and in a belt stop.
    Robust,
    /// The run as planned holds every limit, but drift or a belt stop breaks one.
    AsPlanned,
    /// The run as planned breaks a limit, or the print is raw at the cold end of the drift.
    Broken,
}

impl HeatStanding {
    /// How a set point stands, from its histories.
    pub fn of(demands: &Demands, kinetics: &CureKinetics, runs: &RunHistories) -> Self {
        let bottom = |sample: &HistorySample<DRIFT_CASES>| sample.film_bottom;
        let fused = fuse(&runs.print, bottom, kinetics).fused;
        let cool_enough = |case: usize| {
            runs.film_peak[case] <= demands.film
                && runs.cloth.peak[case] <= demands.cloth
                && runs.cloth.scorch[case] <= demands.scorch
        };
        if fused[PLANNED] < demands.fused || fused[COLD] < RAW || !cool_enough(PLANNED) {
            Self::Broken
        } else if fused[COLD] >= demands.fused && cool_enough(HOT) && cool_enough(STOPPED) {
            Self::Robust
        } else {
            Self::AsPlanned
        }
    }
}
