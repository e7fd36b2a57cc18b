use super::{Demands, NO_DYE, Outcome, Run, Window};
use crate::dryer::Dryer;

/// A setting, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPoint {
    /// Set temperature, K.
    pub set: f64,
    /// Belt speed, m/s.
    pub belt: f64,
    /// True if the whole drift box and a belt stop hold; false where only the run as planned does.
    pub robust: bool,
}

/// The setting whose whole drift box holds: the cold corner fused, the hot corner and a belt stop unharmed; and among
/// those the one that costs least in dye, heat and time. Where no box holds, the best setting that holds as planned;
/// `None` where the window is closed.
///
/// Never the just-cured point: there the least drift leaves the film under-fused. What a setting costs is
///
/// ```text
/// mean over drift of ln(dye) (where dye rides on it) + pace ln(dwell / 30 s) + crowding at both corners
/// ```
///
/// Crowding is 1 where a corner touches its limit and falls off e-fold over a shop's own uncertainty: one unit of the
/// logit of the fused share, 15 K of film or cloth, a third of the scorch index. Weights chosen, no source.
#[must_use]
pub fn robust(window: &Window, dryer: &Dryer, demands: &Demands, fixed: Option<f64>) -> Option<SetPoint> {
    let length = dryer.heated_length();
    let sets: Vec<f64> = match fixed {
        Some(set) => vec![set],
        None => {
            let steps = ((dryer.set_high - dryer.set_low) / dryer.step.max(0.5)).floor().min(240.0) as usize;
            let skip = (steps / 50).max(1);
            (0..=steps).step_by(skip).map(|i| dryer.set_low + i as f64 * dryer.step.max(0.5)).collect()
        }
    };
    // A shop sets its belt in steps that can be read off the dial: 2 % is about 0.05 m/min.
    let (Some(&slowest), Some(&fastest)) = (window.belt.first(), window.belt.last()) else { return None };
    let speeds = ((fastest / slowest).ln() / 0.025).ceil().max(1.0) as usize;
    let mut best: Option<(bool, f64, SetPoint)> = None;
    for &set in &sets {
        for i in 0..=speeds {
            let belt = (slowest.ln() + (fastest / slowest).ln() * i as f64 / speeds as f64).exp();
            let nominal = window.at(Run::Nominal, set, belt);
            if !demands.holds(&nominal) {
                continue;
            }
            let (cold, hot) = (window.at(Run::Cold, set, belt), window.at(Run::Hot, set, belt));
            let dwell = length / belt;
            let stopped = window.at(Run::Nominal, set, length / (dwell + dryer.drift.stop));
            let robust = demands.holds_cold(&cold) && demands.holds_hot(&hot) && demands.holds_hot(&stopped);
            let dye = |outcome: &Outcome| (outcome.dye.max(0.0) + NO_DYE).ln();
            let mut cost = demands.pace * (dwell / 30.0).ln() + demands.crowding(&cold, &[hot, stopped]);
            if demands.bleeds {
                cost += (dye(&nominal) + dye(&cold) + dye(&hot) + dye(&stopped)) / 4.0;
            }
            let point = SetPoint { set, belt, robust };
            let better = match &best {
                None => true,
                Some((had, least, _)) => (robust && !had) || (robust == *had && cost < *least),
            };
            if better {
                best = Some((robust, cost, point));
            }
        }
    }
    best.map(|(_, _, point)| point)
}

/// Room from a setting to the nearest wall on one axis: how far `step` can be taken before a demand breaks.
#[must_use]
pub fn room(holds: impl Fn(f64) -> bool, most: f64) -> Option<f64> {
    if holds(most) {
        return None;
    }
    let (mut inside, mut outside) = (0.0, most);
    for _ in 0..24 {
        let middle = 0.5 * (inside + outside);
        if holds(middle) { inside = middle } else { outside = middle }
    }
    Some(inside)
}
