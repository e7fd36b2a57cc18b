//! Estimates the cure kinetics of an ink from prints that were washed, stretched and rubbed.
//!
//! Makers publish no kinetics of their whites; two prints, cured differently and then tested, say more than
//! any table. Two numbers are estimated: the temperature of half fusion and the time constant of fusion. The
//! prior is a normal distribution round the values of the ink's class (for the time, of its logarithm). Each
//! print multiplies the weight of every pair by the likelihood of its outcome,
//!
//! ```text
//! P(holds) = 1 / (1 + exp(-(logit phi - logit phi_needed) / w)),   P(edge) = 4 P(holds) [1 - P(holds)]
//! ```
//!
//! and the posterior is summed over a grid.

use super::fuse;
use crate::dryer::{History, HistorySample};
use crate::ink::CureKinetics;
use crate::numerics::normal::NINTH_DECILE;
use crate::quantity::{Band, Share};
use serde::{Deserialize, Serialize};

/// Outcome of washing, stretching and rubbing a print.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PrintTestOutcome {
    /// It cracked, washed off or rubbed off.
    Fails,
    /// A hairline crack or slight rub-off: just at the edge.
    Edge,
    /// It held.
    Holds,
}

/// Estimated kinetics of an ink.
#[derive(Clone, Debug, PartialEq)]
pub struct KineticsEstimate {
    /// The kinetics of the class with the two estimates put in.
    pub kinetics: CureKinetics,
    /// Temperature of half fusion, K.
    pub half_fused: Band,
    /// Time constant of fusion at its reference, s.
    pub fusion_time: Band,
    /// Prior probability of these outcomes. Far below 0.01 for two prints, something is wrong with the
    /// dryer's record, the prints or the ink.
    pub expected: Share,
}

/// Standard deviation of the half-fusion temperature within a class, K. Assumed: low-cure and ordinary lie 26
/// K apart.
const SPREAD_HALF: f64 = 5.0;
/// Standard deviation of the logarithm of the fusion time within a class. Assumed: 2 to 15 s.
const SPREAD_TIME: f64 = 0.7;
/// Width `w` of the likelihood, in units of the logit of the fused share. Assumed: testers differ.
const WIDTH: f64 = 0.5;
/// Points of the grid on each axis, over ±3 standard deviations.
const POINTS: usize = 41;

/// Estimates the kinetics of an ink from prints, each with the history of its run. `needed` is the fused
/// share at which a print holds.
#[must_use]
pub fn estimate_kinetics(
    class: &CureKinetics,
    needed: Share,
    prints: &[(History<1>, PrintTestOutcome)],
) -> KineticsEstimate {
    let logit = |share: f64| {
        let share = share.clamp(1e-12, 1.0 - 1e-12);
        (share / (1.0 - share)).ln()
    };
    let place = |i: usize| 6.0 * i as f64 / (POINTS - 1) as f64 - 3.0;
    // The posterior on each axis, summed over the other.
    let mut left = [[0.0; POINTS], [0.0; POINTS]];
    let (mut before, mut after) = (0.0, 0.0);
    for i in 0..POINTS {
        for j in 0..POINTS {
            let moved = [place(i), place(j)];
            let mut kinetics = *class;
            kinetics.half_fused += SPREAD_HALF * moved[0];
            kinetics.fusion_time *= (SPREAD_TIME * moved[1]).exp();
            let prior = (-0.5 * (moved[0] * moved[0] + moved[1] * moved[1])).exp();
            let mut weight = prior;
            for (history, seen) in prints {
                let fused = fuse(history, |sample: &HistorySample<1>| sample.film_bottom, &kinetics).fused[0];
                let holds = 1.0 / (1.0 + (-(logit(fused) - logit(needed.0)) / WIDTH).exp());
                weight *= match seen {
                    PrintTestOutcome::Fails => 1.0 - holds,
                    PrintTestOutcome::Edge => 4.0 * holds * (1.0 - holds),
                    PrintTestOutcome::Holds => holds,
                };
            }
            before += prior;
            after += weight;
            left[0][i] += weight;
            left[1][j] += weight;
        }
    }
    // No pair explains the prints: return the class unchanged, with `expected` 0.
    if after.is_nan() || after <= 1e-12 * before {
        return KineticsEstimate {
            kinetics: *class,
            half_fused: spread(class.half_fused, SPREAD_HALF),
            fusion_time: spread(class.fusion_time.ln(), SPREAD_TIME).map(f64::exp),
            expected: Share(0.0),
        };
    }
    let band = |left: &[f64; POINTS], middle: f64, by: f64| {
        let at = |i: usize| middle + by * place(i);
        let mean = left.iter().enumerate().map(|(i, weight)| at(i) * weight).sum::<f64>() / after;
        let quantile = |share: f64| {
            let mut passed = 0.0;
            let reached = left.iter().position(|weight| {
                passed += weight / after;
                passed >= share
            });
            reached.map_or(mean, at)
        };
        Band { low: quantile(0.1).min(mean), likely: mean, high: quantile(0.9).max(mean) }
    };
    let [by_half, by_time] = &left;
    let half_fused = band(by_half, class.half_fused, SPREAD_HALF);
    let fusion_time = band(by_time, class.fusion_time.ln(), SPREAD_TIME).map(f64::exp);
    let kinetics = CureKinetics { half_fused: half_fused.likely, fusion_time: fusion_time.likely, ..*class };
    KineticsEstimate { kinetics, half_fused, fusion_time, expected: Share(after / before) }
}

/// The band of a normal distribution.
fn spread(middle: f64, by: f64) -> Band {
    Band { low: middle - NINTH_DECILE * by, likely: middle, high: middle + NINTH_DECILE * by }
}
