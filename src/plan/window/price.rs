//! What a setting costs in heat, haste and risk: the terms that choose among settings which all work.
//!
//! A press lead gives a film what its ink needs and nothing hotter, keeps the dial away from its ends, and
//! does not hurry: in a short dwell the surface is hot long before the underside, and how hot that gets is
//! known least ([`model_error`]). All weights are chosen, no source; `tests/answers/set_points.rs` holds the
//! settings that they lead to against those that press leads find believable.

use super::model_error::model_error;
use crate::dryer::Dryer;
use crate::ink::CureKinetics;

/// Price of each kelvin of the film's peak over what the ink needs.
const HEAT: f64 = 0.05;
/// Film that an ink needs, over its temperature of half fusion, K: there it fuses in some 45 s in the heat.
const NEEDS: f64 = 15.0;
/// Film over what its ink needs, in the hot corner, from which a setting is no answer, however surely it holds,
/// K. Chosen.
const EXCESS: f64 = 45.0;
/// Price of each e-fold of dwell under the shortest that is not hasty, or over the longest that a shop likes.
const HASTE: f64 = 3.0;
/// Shortest dwell that is not hasty, s: under panels, and in blown air alone, which heats more evenly. Common
/// practice, no source.
const UNHURRIED: [f64; 2] = [30.0, 25.0];
/// Longest dwell that a shop likes, over the shortest that is not hasty under panels: in hot air, and under
/// bare panels, where the film goes on heating as long as it stays. Common practice, no source.
const LONGEST: [f64; 2] = [2.5, 1.7];
/// Air so much cooler than the dial that the dial is that of bare panels, K.
const BARE: f64 = -100.0;
/// Dwell over that longest one from which a setting is no answer, however surely it holds. Chosen.
const STALLED: f64 = 1.3;
/// Bone-dry weight of a T-shirt's jersey, kg/m²: both dwells hold for it, and grow with the weight of a
/// heavier cloth.
const JERSEY: f64 = 0.17;
/// The dial's end is priced by 1 where it is reached and falls off e-fold over so many kelvins. Chosen.
const DIAL_END: f64 = 8.0;
/// Price of a print that leaves under-fused, for certain.
const RISK: f64 = 20.0;

/// Prices of heat and haste for one ink in one dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Price {
    needs: f64,
    width: f64,
    unhurried: f64,
    longest: f64,
    set_high: f64,
}

impl Price {
    /// Of the ink that is hardest to fuse, in a dryer, on cloth of this bone-dry weight (kg/m²).
    pub fn of(dryer: &Dryer, kinetics: &CureKinetics, weight: f64) -> Self {
        let [panels, air] = UNHURRIED;
        let blown = dryer.zones.iter().all(|zone| zone.panel_offset.is_none());
        let bare = dryer.zones.iter().all(|zone| zone.air_offset < BARE);
        let usual = panels * weight / JERSEY;
        Self {
            needs: kinetics.half_fused + NEEDS,
            width: kinetics.width,
            unhurried: usual.max(if blown { air } else { panels }),
            longest: LONGEST[usize::from(bare)] * usual.max(panels),
            set_high: dryer.set_high,
        }
    }

    /// The same for another ink.
    pub fn for_ink(&self, kinetics: &CureKinetics) -> Self {
        Self { needs: kinetics.half_fused + NEEDS, width: kinetics.width, ..*self }
    }

    /// Price of a film peak (K), a dwell (s) and a set temperature (K).
    pub fn heat_and_haste(&self, peak: f64, dwell: f64, set: f64) -> f64 {
        let heat = HEAT * (peak - self.needs).max(0.0);
        let haste = HASTE * (self.unhurried / dwell).max(dwell / self.longest).max(1.0).ln();
        heat + haste + ((set - self.set_high) / DIAL_END).exp()
    }

    /// True for a dwell (s) so long, or a film so hot in the hot corner (K), that no shop would run it.
    pub fn is_no_answer(&self, dwell: f64, hottest: f64) -> bool {
        dwell > STALLED * self.longest || hottest > self.needs + EXCESS
    }

    /// Logarithm of the price of the risk that the film does not fuse, from the logits of the fused share over
    /// what is needed, as planned and at the cold end of the drift, and the dwell (s).
    ///
    /// The drift, whose end is two standard deviations, and the model's own error together; the normal tail
    /// by `exp(-0.717 z - 0.416 z²) / 2`, within a tenth of itself up to `z` 4.
    pub fn ln_risk(&self, [planned, cold]: [f64; 2], dwell: f64) -> f64 {
        let drift = 0.5 * (planned - cold).max(0.0);
        let error = drift.hypot(model_error(dwell) / self.width);
        let z = (planned / error).max(0.0);
        (0.5 * RISK).ln() - 0.717 * z - 0.416 * z * z
    }
}
