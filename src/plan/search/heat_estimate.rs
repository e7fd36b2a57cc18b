//! What a window says beforehand of how a set point will be judged.
//!
//! A window is coarse: what it says of fusion is off by a kelvin or two, much the same for every film on one
//! cloth. So the chance of under-cure is estimated from the window and corrected by what the candidates
//! assessed so far turned out to be. An estimate only decides whether a candidate is worth assessing; it
//! errs in the candidate's favour (`tests/answers/screening.rs`).

use crate::ink::CureKinetics;
use crate::plan::margins::{HeatStanding, chance_at};
use crate::plan::window::{Demands, DriftRun, SetPoint, Window, logit, model_error};

/// How much the kelvins to spare, in standard deviations, may exceed the window's own before any candidate of
/// the cloth was assessed, and after. Chosen.
const DOUBT: [f64; 2] = [1.0, 0.15];
/// How far a window's temperatures and the logit of its fused share may be off: those of a coarse one
/// (`tests/answers/window_agrees.rs`).
const OFF: (f64, f64) = (3.0, 0.8);

/// What the window says of a set point.
#[derive(Clone, Copy, Debug)]
pub struct WindowHeat {
    /// Kelvins to spare before the film no longer fuses, over their standard deviation.
    pub deviations: f64,
    /// The best that the set point may turn out to stand.
    pub standing: HeatStanding,
}

impl WindowHeat {
    /// Of a set point in a window; `dwell` in s.
    pub fn of(
        window: &Window,
        demands: &Demands,
        kinetics: &CureKinetics,
        point: &SetPoint,
        dwell: f64,
    ) -> Self {
        let [planned, cold, hot] = [DriftRun::Nominal, DriftRun::Cold, DriftRun::Hot]
            .map(|run| window.at(run, point.set, point.belt));
        // In equilibrium a logit is as many kelvins as the ink's fusion is wide.
        let over = |fused: f64| logit(fused) - logit(demands.fused);
        // More water takes as much of the heat as a faster belt.
        let damper = window.at(DriftRun::Nominal, point.set, point.belt * demands.price.damper.exp());
        let [planned, cold_end, damper] =
            [planned, cold, damper].map(|outcome| over(demands.fused_of(&outcome)));
        let takes = |end: f64| 0.5 * kinetics.width * (planned - end).max(0.0);
        let error = takes(cold_end).hypot(takes(damper)).hypot(model_error(dwell));
        let (kelvin, logits) = OFF;
        let holds = cold_end > -logits
            && hot.film_peak < demands.film + kelvin
            && hot.cloth_peak < demands.cloth + kelvin;
        Self {
            deviations: kinetics.width * planned / error,
            standing: if holds { HeatStanding::Robust } else { HeatStanding::AsPlanned },
        }
    }
}

/// How far the candidates assessed on one cloth were off from what the window said.
#[derive(Clone, Copy, Debug, Default)]
pub struct HeatEstimate {
    /// Most standard deviations by which an assessed candidate exceeded the window's own: on cloth as it lies,
    /// and on cloth that is dried before, whose water the window hardly misjudges.
    most: [Option<f64>; 2],
}

impl HeatEstimate {
    /// Records an assessed candidate: whether its cloth is dried before, its standard deviations to spare, and
    /// those of the window.
    pub fn learn(&mut self, dried: bool, deviations: f64, window: f64) {
        let over = deviations - window;
        let most = &mut self.most[usize::from(dried)];
        *most = Some(most.map_or(over, |most| most.max(over)));
    }

    /// Least chance of under-cure that a candidate may have, 0 to 1.
    #[must_use]
    pub fn least_chance(&self, dried: bool, heat: &WindowHeat) -> f64 {
        let over = self.most[usize::from(dried)].map_or(DOUBT[0], |most| most + DOUBT[1]);
        chance_at(heat.deviations + over)
    }
}
