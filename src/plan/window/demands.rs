use super::{Outcome, logit};
use crate::plan::{Cloth, Rules};

/// What a set point must keep, for one white on one cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demands {
    /// Which of the window's kinetics must fuse: ordinary, low-cure.
    pub must_fuse: [bool; 2],
    /// Fused share needed.
    pub fused: f64,
    /// Most scorch that passes; infinite for cloth that does not yellow.
    pub scorch: f64,
    /// Most film heat, K.
    pub film: f64,
    /// Most cloth heat, K; infinite where the cloth stands any cure.
    pub cloth: f64,
    /// Whether dye rides on the setting.
    pub bleeds: bool,
    /// How much pace counts, 0 to 1.
    pub pace: f64,
}

impl Demands {
    /// The demands of a white on a cloth.
    #[must_use]
    pub fn of(rules: &Rules, cloth: &Cloth, must_fuse: [bool; 2], pace: f64) -> Self {
        let shrink = cloth.shrinks_above.map(|limit| limit + rules.shrink_allowed / rules.shrink_slope);
        let soften = cloth.yields().map(|(_, limit)| limit);
        Self {
            must_fuse,
            fused: rules.fused,
            scorch: if cloth.scorches { rules.scorch } else { f64::INFINITY },
            film: rules.film_heat,
            cloth: shrink.into_iter().chain(soften).fold(f64::INFINITY, f64::min),
            bleeds: cloth.dyed.is_some(),
            pace,
        }
    }

    /// Fused share that counts: the least of the inks that must fuse.
    #[must_use]
    pub fn fused_of(&self, outcome: &Outcome) -> f64 {
        let needed = outcome.fused.iter().zip(self.must_fuse).filter(|(_, must)| *must);
        needed.map(|(fused, _)| *fused).fold(1.0, f64::min)
    }

    pub(super) fn holds_cold(&self, outcome: &Outcome) -> bool {
        self.fused_of(outcome) >= self.fused
    }

    pub(super) fn holds_hot(&self, outcome: &Outcome) -> bool {
        outcome.scorch <= self.scorch && outcome.film_peak <= self.film && outcome.cloth_peak <= self.cloth
    }

    /// How near the corners of the drift, and a belt stop, come to their limits.
    pub(super) fn crowding(&self, cold: &Outcome, hot: &[Outcome; 2]) -> f64 {
        let most = |of: fn(&Outcome) -> f64| hot.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
        let fusion = (logit(self.fused) - logit(self.fused_of(cold))).exp();
        let film = ((most(|at| at.film_peak) - self.film) / 15.0).exp();
        let cloth = ((most(|at| at.cloth_peak) - self.cloth) / 15.0).exp();
        let scorch = most(|at| at.scorch);
        let scorch = if self.scorch.is_finite() { (3.0 * (scorch / self.scorch - 1.0)).exp() } else { 0.0 };
        fusion + film + cloth + scorch
    }

    /// True if the run as planned keeps every demand.
    #[must_use]
    pub fn holds(&self, outcome: &Outcome) -> bool {
        self.holds_cold(outcome) && self.holds_hot(outcome)
    }
}
