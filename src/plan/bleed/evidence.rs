//! What earlier prints teach of a lot's dye, whichever white they were printed with.
//!
//! A print that was looked at is a cut through the plane of lots ([`super::lots`]): beyond it that film turns. What was seen
//! weighs both sides by Bayes' theorem, with the power of such a look and its false alarms. A print of this very lot weighs its
//! lots as it is. One of another lot of the article, or of the white on any cloth, says less: lots of one article share half
//! of their variance, prints of one shop a fifth (assumed). For those, mean and variance of both sources after the look are
//! taken as a reading of what the lots share (`rho` of the variance), and readings add by their precision:
//!
//! ```text
//! t = variance + (1 - rho) (1 - variance)
//! shared: precision 1 + sum rho (1 - variance) / t, mean sum sqrt(rho) mean / t / precision
//! this lot: mean sqrt(rho) times the shared mean, variance rho / precision + 1 - rho
//! ```
//!
//! So the order of what was seen does not matter.
//!
//! **Decision:** means and variances for other lots, the weighed lots themselves for this one.
//! **Because:** a clean test of this lot cuts its bad tail off, which no normal law does.
//! **Measured:** against both integrals over article and lot, `tests/dye/evidence.rs` (2026-12-01).
//! **Reconsider when:** shops keep many lots of one article.

use super::lots::LotDye;
use crate::migration::{Belief, SeenPrint, SourceBelief};
use crate::plan::order::{Cloth, Evidence, EvidenceSubject, Job, Rules};
use crate::plan::recipe::Candidate;

/// Share of the variance between lots that lots of one article have in common, 0.3 to 0.7; assumed.
const ARTICLE: f64 = 0.5;
/// The same of prints of one white in one shop, 0 to 0.4; assumed.
const SHOP: f64 = 0.2;
/// Least precision of what lots share after looks that contradict each other, against 1 before. Chosen.
const LEAST: f64 = 0.3;
/// Pieces, and days, from which a look at a print counts as having followed it: one piece next morning shows nothing.
/// Common practice, no source.
const FOLLOWED: (u32, f64) = (2, 1.0);

/// Earlier tests that bear on a candidate: of its white, and on its own lot where they are about a lot.
pub fn evidence<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    candidate: &'a Candidate<'_>,
) -> impl Iterator<Item = &'a Evidence> {
    job.order.evidence.iter().filter(move |seen| seen.white == candidate.white.id && is_about(seen, cloth))
}

/// Whether a test is about a cloth: of its lot, or of no lot in particular.
pub fn is_about(seen: &Evidence, cloth: &Cloth) -> bool {
    seen.about != EvidenceSubject::Lot || seen.name == cloth.garment.lot
}

/// Prints of a candidate's white that were followed and stayed white.
pub fn followed<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    candidate: &'a Candidate<'_>,
) -> impl Iterator<Item = &'a Evidence> {
    let (pieces, days) = FOLLOWED;
    evidence(job, cloth, candidate)
        .filter(move |seen| seen.turned == 0 && seen.pieces >= pieces && seen.days >= days)
}

/// How likely what was seen is of a lot that turns the print, and of one that does not.
#[must_use]
pub fn likelihoods(seen: &Evidence, low_cure: bool, rules: &Rules) -> [f64; 2] {
    let power = if seen.days >= 7.0 {
        rules.power_weeks
    } else if seen.days >= 1.0 {
        rules.power_hot_hold
    } else {
        rules.power_exit[usize::from(low_cure)]
    };
    let (pieces, days) = FOLLOWED;
    if seen.turned == 0 && seen.pieces < pieces && seen.days < days {
        return [1.0, 1.0];
    }
    // One piece of several may have been soiled; if a second turns too, the lot is bad.
    let [second_bad, second_good] = rules.second_piece;
    match seen.turned {
        0 => [1.0 - power, 1.0 - rules.false_alarm],
        1 if seen.pieces >= 3 => [power * (1.0 - second_bad), rules.false_alarm * (1.0 - second_good)],
        2.. if seen.pieces >= 3 => [power * second_bad, rules.false_alarm * second_good],
        _ => [power, rules.false_alarm],
    }
}

/// A print that was looked at: the dye of its lots before the look, and the dye that turns it, kg/m².
#[derive(Clone, Copy, Debug)]
pub struct LookedAt {
    /// What was tested.
    pub about: EvidenceSubject,
    /// Its lots' dye.
    pub dye: LotDye,
    /// Dye that turns it.
    pub critical: f64,
    /// How likely what was seen is of a lot that turns it, and of one that does not.
    pub likely: [f64; 2],
}

/// What is believed of a cloth's lots after looks at prints of it. `before` is the belief that the looks' own dye was computed
/// with.
#[must_use]
pub fn learned(before: Belief, looks: &[LookedAt]) -> Belief {
    let shared = [(EvidenceSubject::Article, ARTICLE), (EvidenceSubject::White, SHOP)].map(|(about, rho)| {
        let readings: Vec<[[f64; 2]; 2]> =
            looks.iter().filter(|look| look.about == about).map(moments).collect();
        [0, 1].map(|source| of_shared(readings.iter().map(|reading| reading[source]), rho))
    });
    let of = |belief: SourceBelief, source: usize| {
        // Both levels as readings of a standard normal variable.
        let (mut precision, mut sum) = (1.0, 0.0);
        for [mean, variance] in shared.map(|level| level[source]) {
            precision += 1.0 / variance - 1.0;
            sum += mean / variance;
        }
        let (mean, spread) = (sum / precision, (1.0 / precision).sqrt());
        SourceBelief { shift: belief.shift + belief.spread * mean, spread: belief.spread * spread }
    };
    let mut belief = Belief { heat: of(before.heat, 0), loose: of(before.loose, 1), ..before };
    let mut own: Vec<SeenPrint> = Vec::new();
    for look in looks.iter().filter(|look| look.about == EvidenceSubject::Lot) {
        let print = SeenPrint {
            heat: look.dye.heat * (belief.heat.shift - before.heat.shift).exp() / look.critical,
            loose: look.dye.loose * (belief.loose.shift - before.loose.shift).exp() / look.critical,
            likely: look.likely,
        };
        // Looks at the same print at several times are one cut.
        match own.iter_mut().find(|own| (own.heat, own.loose) == (print.heat, print.loose)) {
            Some(own) => (0..2).for_each(|i| own.likely[i] *= print.likely[i]),
            None => own.push(print),
        }
    }
    let tells = |print: &SeenPrint| (print.likely[0] / print.likely[1]).ln().abs();
    own.sort_by(|a, b| tells(b).total_cmp(&tells(a)));
    belief.seen.iter_mut().zip(own).for_each(|(place, print)| *place = Some(print));
    belief
}

/// Mean and variance of both sources' deviations after a look, each `[mean, variance]`: a sum over the plane of lots.
fn moments(look: &LookedAt) -> [[f64; 2]; 2] {
    const STEPS: i32 = 40;
    let at = |i: i32| 4.5 * f64::from(i) / f64::from(STEPS);
    let LotDye { heat, loose, heat_spread, loose_spread, .. } = look.dye;
    let (mut all, mut sums) = (0.0, [[0.0; 2]; 2]);
    for i in -STEPS..=STEPS {
        let freed = heat * (heat_spread * at(i)).exp();
        for j in -STEPS..=STEPS {
            let z = [at(i), at(j)];
            let turns = freed + loose * (loose_spread * z[1]).exp() > look.critical;
            let weight = (-0.5 * (z[0] * z[0] + z[1] * z[1])).exp() * look.likely[usize::from(!turns)];
            all += weight;
            for (sum, z) in sums.iter_mut().zip(z) {
                *sum = [sum[0] + weight * z, sum[1] + weight * z * z];
            }
        }
    }
    sums.map(|[first, second]| {
        let mean = first / all;
        [mean, second / all - mean * mean]
    })
}

/// Mean and variance of this lot's deviation after readings (`[mean, variance]` each) of others that have `rho` of their
/// variance in common with it.
fn of_shared(readings: impl Iterator<Item = [f64; 2]>, rho: f64) -> [f64; 2] {
    let (mut precision, mut sum) = (1.0, 0.0);
    for [mean, variance] in readings {
        // A look that leaves two minds of a lot widens it: its precision is then below 0.
        let told = variance + (1.0 - rho) * (1.0 - variance);
        precision += rho * (1.0 - variance) / told;
        sum += rho.sqrt() * mean / told;
    }
    let precision: f64 = precision.max(LEAST);
    [rho.sqrt() * sum / precision, rho / precision + 1.0 - rho]
}
