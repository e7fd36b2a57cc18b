//! What washed, stretched and rubbed prints tell of an ink.
//!
//! Nobody publishes how a white fuses; two prints of it, cured differently and then washed, stretched and rubbed, say
//! more of it than any table. Two numbers of its kinetics move: the temperature of half fusion and the time that fusion
//! takes. What is known before is a normal spread round the class's values (of the time: round its logarithm); each print
//! weighs every pair by how likely it would then have come out as it did,
//!
//! ```text
//! P(holds) = 1 / (1 + exp(-(logit phi - logit phi_needed) / w)),   P(edge) = 4 P(holds) [1 - P(holds)]
//! ```
//!
//! and what is left is summed over a grid. More prints, narrower: nothing is ever certain after two.

use super::fuse;
use crate::dryer::{History, HistorySample};
use crate::ink::CureKinetics;
use crate::quantity::{Band, Share};
use serde::{Deserialize, Serialize};

/// How a print came through the wash, the stretch and the rub.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PrintTestOutcome {
    /// It cracked, washed off or rubbed off.
    Fails,
    /// A hair's crack or a little rub: just at the edge.
    Edge,
    /// It held.
    Holds,
}

/// What was learnt of an ink.
#[derive(Clone, Debug, PartialEq)]
pub struct KineticsEstimate {
    /// The kinetics to compute with from now on.
    pub kinetics: CureKinetics,
    /// Temperature of half fusion, K.
    pub half_fused: Band,
    /// Time constant of fusion at its reference, s.
    pub fusion_time: Band,
    /// Chance, before the prints were seen, of their coming out as they did, 0 to 1: far under 0.01 for two, something is
    /// wrong with the dryer's numbers, the prints or the bucket.
    pub expected: Share,
}

/// Spread of half fusion between inks of a class, K. Assumed: low-cure and ordinary lie 26 K apart.
const SPREAD_HALF: f64 = 5.0;
/// Spread of the logarithm of the fusion time. Assumed: 2 to 15 s.
const SPREAD_TIME: f64 = 0.7;
/// Width of the judgement, in units of the logit of the fused share. Assumed: hands differ.
const WIDTH: f64 = 0.5;
/// Points of the grid on each axis, over plus and minus three spreads.
const POINTS: usize = 41;

/// Learns an ink's kinetics from prints of it, each with its history; `needed` is the fused share that holds.
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
    // What is left on each axis, summed over the other.
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
    // Prints that no pair explains: the class is left as it was, and `expected` says so.
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

/// Eight in ten of a normal spread.
fn spread(middle: f64, by: f64) -> Band {
    Band { low: middle - 1.281_551_6 * by, likely: middle, high: middle + 1.281_551_6 * by }
}
