//! The chance that a print leaves the dryer under-fused, which shows in the wash.
//!
//! A film that is fused in the run as planned may have some kelvins to spare; under-cure is what happens when
//! the real film is colder by more than that. Four things make it colder, each taken as a normal error of the
//! film's temperature: the dryer drifts, the belt runs unevenly, the cloth holds more water than the gauge
//! says, and the model itself is off. With `S` the kelvins to spare,
//!
//! ```text
//! P = Phi(-S / sigma)       sigma² = (D / 2)² + (W / 2)² + (r t b)² + (200 K s / t)²
//! ```
//!
//! `D` is what the cold corner of the drift takes from `S` and `W` what 30 % more water takes; both are ends
//! of a range, so two standard deviations. `r` is the film's rate of heating as it leaves the heat, `t` the
//! dwell and `b` the standard deviation of the belt.

use crate::cure::spare;
use crate::dryer::{History, HistorySample, Place};
use crate::ink::CureKinetics;
use crate::numerics::normal;
use crate::plan::order::Job;
use crate::plan::recipe::{COLD, DAMPER, DRIFT_CASES, PLANNED};
use crate::plan::window::{SetPoint, model_error};
use crate::quantity::Share;

/// Standard deviation of the belt's speed, as a share of it. 0.01 to 0.05: assumed.
const BELT: f64 = 0.025;

/// Kelvins to spare before a film no longer fuses, and how far its temperature may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnderCure {
    /// How much colder the film may be than computed and still fuse, in the run as planned, K; negative where
    /// it does not fuse.
    pub spare: f64,
    /// Standard deviation of the film's temperature, K.
    pub error: f64,
}

impl UnderCure {
    /// Of a print's history at its set point, in each drift case.
    pub fn of(job: &Job, history: &History<DRIFT_CASES>, kinetics: &CureKinetics, point: &SetPoint) -> Self {
        let bottom: Place<DRIFT_CASES> = |sample: &HistorySample<DRIFT_CASES>| sample.film_bottom;
        let each = spare(history, bottom, kinetics, Share(job.rules.fused));
        let takes = |case: usize| (each[PLANNED] - each[case]).max(0.0);
        let leaves = history.exit_time[PLANNED];
        let last = history.samples.iter().rev().find(|sample| sample.time[PLANNED] <= leaves);
        let heating = last.map_or(0.0, |sample| sample.film_bottom[1][PLANNED].max(0.0));
        let dwell = job.dryer.heated_length() / point.belt;
        let parts = [takes(COLD) / 2.0, takes(DAMPER) / 2.0, heating * dwell * BELT, model_error(dwell)];
        let error = parts.into_iter().map(|part| part * part).sum::<f64>().sqrt();
        Self { spare: each[PLANNED], error }
    }

    /// Kelvins to spare over their standard deviation.
    #[must_use]
    pub fn deviations(&self) -> f64 {
        self.spare / self.error.max(1e-9)
    }

    /// The chance that the film is under-fused, 0 to 1.
    #[must_use]
    pub fn chance(&self) -> f64 {
        chance_at(self.deviations())
    }
}

/// Chance of under-cure where the film has so many standard deviations to spare, 0 to 1.
#[must_use]
pub fn chance_at(deviations: f64) -> f64 {
    normal::cumulative(-deviations)
}
