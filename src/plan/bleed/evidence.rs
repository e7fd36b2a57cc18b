//! Earlier tests of this lot, article or white, and how they change the chance of bleeding.

use super::chance::{after_clean_lots, after_lot_pieces, after_lot_test};
use crate::plan::order::{Cloth, Evidence, EvidenceSubject, Job, Rules};
use crate::plan::recipe::Candidate;

/// Earlier tests that bear on a candidate: of its white, and on its own lot where they are about a lot.
pub fn evidence<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    candidate: &'a Candidate<'_>,
) -> impl Iterator<Item = &'a Evidence> {
    job.order.evidence.iter().filter(move |seen| {
        seen.white == candidate.white.id
            && (seen.about != EvidenceSubject::Lot || seen.name == cloth.garment.lot)
    })
}

/// The longest test of this very lot.
pub fn lot_test<'a>(job: &'a Job, cloth: &'a Cloth, candidate: &'a Candidate<'_>) -> Option<&'a Evidence> {
    evidence(job, cloth, candidate)
        .filter(|seen| seen.about == EvidenceSubject::Lot)
        .max_by(|a, b| a.days.total_cmp(&b.days))
}

/// The chance of bleeding after the earlier tests of this lot, article or white; `before` is the chance
/// without them.
pub fn with_evidence(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>, rules: &Rules, before: f64) -> f64 {
    let power = |days: f64| {
        if days >= 7.0 {
            rules.power_weeks
        } else if days >= 1.0 {
            rules.power_hot_hold
        } else {
            rules.power_exit[usize::from(candidate.white.low_cure)]
        }
    };
    if let Some(seen) = lot_test(job, cloth, candidate) {
        return after_lot_pieces(before, [seen.turned, seen.pieces], power(seen.days), rules);
    }
    let clean = evidence(job, cloth, candidate).filter(|seen| seen.turned == 0).count() as u32;
    let turned = evidence(job, cloth, candidate).any(|seen| seen.turned > 0);
    if turned {
        after_lot_test(before, true, rules.power_weeks, rules.false_alarm)
    } else if clean > 0 {
        after_clean_lots(before, clean, rules.power_weeks, rules)
    } else {
        before
    }
}
