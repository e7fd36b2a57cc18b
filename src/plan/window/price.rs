//! What a setting costs in heat, time and risk: the terms that choose among settings which all work.
//!
//! A press lead gives a film what its ink needs and nothing hotter, keeps the dial away from its ends, and
//! gives each cloth the dwell that its weight usually gets. The price of a dwell has a single low, because a
//! slow, cool setting and a quick, hot one hold equally well: where both cost the same, a little more weight
//! may change from the one to the other. All weights are chosen, no source; `tests/answers/set_points.rs`
//! holds the settings that they lead to against those that press leads find believable.

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
/// Price of a dwell an e-fold shorter or longer than the usual one; it grows with the square.
const UNUSUAL: f64 = 6.0;
/// Dwell that a T-shirt's jersey usually gets, s: under panels that also blow (40 to 80), in blown air alone,
/// which heats more evenly (40 to 75), and under bare panels, where the film goes on heating as long as it
/// stays (25 to 65). Common practice, no source.
const USUAL: [f64; 3] = [52.0, 48.0, 36.0];
/// Air so much cooler than the dial that the dial is that of bare panels, K.
const BARE: f64 = -100.0;
/// Dwell over the usual one from which a setting is no answer, however surely it holds. Chosen.
const STALLED: f64 = 1.8;
/// Bone-dry weight of a T-shirt's jersey, kg/m². The usual dwell of a heavier cloth grows with the root of its
/// weight: a fleece of twice the weight gets some 1.4 times as long and a few kelvins more; lighter cloth gets
/// as long. Common practice, no source.
const JERSEY: f64 = 0.17;
/// The dial's end is priced by 1 where it is reached and falls off e-fold over so many kelvins. Chosen.
const DIAL_END: f64 = 8.0;
/// Price of a print that leaves under-fused, for certain.
const RISK: f64 = 20.0;

/// Heat that evaporates the water of a cloth over that which warms its fibres and film to what the ink needs,
/// for as much water as fibre: 2.4 MJ/kg over 1.4 kJ/(kg K) and 140 K, a fifth more for the film. From memory.
const EVAPORATION: f64 = 10.0;
/// Water that a damper room adds, as a share of what the cloth holds: the run in damper cloth.
const DAMPER: f64 = 0.3;
/// Standard deviations to spare from which the middle of a run holds. Chosen.
const MIDDLE: f64 = 1.0;

/// How far a setting may be trusted, the least first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Trust {
    /// The run as planned holds.
    Planned,
    /// The run as planned holds with a standard deviation to spare, in a dwell that a shop would run.
    Middle,
    /// The whole drift box and a belt stop hold, in a setting that a shop would run.
    Robust,
}

/// Prices of heat and time for one ink in one dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Price {
    needs: f64,
    width: f64,
    /// Usual dwell, s.
    usual: f64,
    /// By how much shorter a dwell damper cloth leaves as cold, e-folds.
    pub damper: f64,
    set_high: f64,
}

impl Price {
    /// Of the ink that is hardest to fuse, in a dryer, on cloth of this bone-dry weight (kg/m²) that holds so
    /// much water from the room's air, as a share of it.
    pub fn of(dryer: &Dryer, kinetics: &CureKinetics, weight: f64, water: f64) -> Self {
        let [panels, blown, bare] = USUAL;
        let jersey = if dryer.zones.iter().all(|zone| zone.panel_offset.is_none()) {
            blown
        } else if dryer.zones.iter().all(|zone| zone.air_offset < BARE) {
            bare
        } else {
            panels
        };
        Self {
            needs: kinetics.half_fused + NEEDS,
            width: kinetics.width,
            usual: jersey * (weight / JERSEY).max(1.0).sqrt(),
            damper: -(-DAMPER * EVAPORATION * water / (1.0 + EVAPORATION * water)).ln_1p(),
            set_high: dryer.set_high,
        }
    }

    /// The same for another ink.
    pub fn for_ink(&self, kinetics: &CureKinetics) -> Self {
        Self { needs: kinetics.half_fused + NEEDS, width: kinetics.width, ..*self }
    }

    /// Price of a film peak (K), a dwell (s) and a set temperature (K).
    pub fn heat_and_time(&self, peak: f64, dwell: f64, set: f64) -> f64 {
        let heat = HEAT * (peak - self.needs).max(0.0);
        let unusual = (dwell / self.usual).ln();
        heat + UNUSUAL * unusual * unusual + ((set - self.set_high) / DIAL_END).exp()
    }

    /// How far a setting may be trusted, from its dwell (s), the film in the hot corner (K), the standard deviations
    /// that its fusion has to spare, and whether the whole drift box `holds`.
    pub fn trust(&self, dwell: f64, hottest: f64, spare: f64, holds: bool) -> Trust {
        if dwell > STALLED * self.usual {
            Trust::Planned
        } else if holds && hottest <= self.needs + EXCESS {
            Trust::Robust
        } else if spare >= MIDDLE {
            Trust::Middle
        } else {
            Trust::Planned
        }
    }

    /// Standard deviations that fusion has to spare, from the logits of the fused share over what is needed, as
    /// planned, at the cold end of the drift and on damper cloth, and the dwell (s): drift and water, whose ends
    /// are two standard deviations, and the model's own error together.
    pub fn spare(&self, [planned, cold, damper]: [f64; 3], dwell: f64) -> f64 {
        let takes = |end: f64| 0.5 * (planned - end).max(0.0);
        let error = takes(cold).hypot(takes(damper)).hypot(model_error(dwell) / self.width);
        (planned / error).max(0.0)
    }

    /// Logarithm of the price of the risk that the film does not fuse, with so many standard deviations to spare:
    /// the normal tail by `exp(-0.717 z - 0.416 z²) / 2`, within a tenth of itself up to `z` 4. What is no
    /// more than tried has no such price: the coolest setting that holds in its middle is tried first.
    pub fn ln_risk(trust: Trust, z: f64) -> f64 {
        let free = if trust == Trust::Middle { -30.0 } else { 0.0 };
        free + (0.5 * RISK).ln() - 0.717 * z - 0.416 * z * z
    }
}
