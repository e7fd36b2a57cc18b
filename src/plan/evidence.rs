//! What was seen before of this lot, article or white, and how it moves the chance.

use super::bleed::{after_clean_lots, after_lot_pieces, after_lot_test};
use super::candidate::Candidate;
use super::{Cloth, Evidence, Job, Rules};

/// Earlier tests that bear on a way.
pub(super) fn evidence<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    way: &'a Candidate<'_>,
) -> impl Iterator<Item = &'a Evidence> {
    job.order.evidence.iter().filter(move |seen| {
        seen.white == way.white.id && (seen.about != "lot" || seen.name == cloth.garment.lot)
    })
}

/// The longest test of this very lot.
pub(super) fn lot_test<'a>(job: &'a Job, cloth: &'a Cloth, way: &'a Candidate<'_>) -> Option<&'a Evidence> {
    evidence(job, cloth, way).filter(|seen| seen.about == "lot").max_by(|a, b| a.days.total_cmp(&b.days))
}

/// Moves the chance of bleeding by what was seen of this lot, article or white.
pub(super) fn with_evidence(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    rules: &Rules,
    before: f64,
) -> f64 {
    let power = |days: f64| {
        if days >= 7.0 {
            rules.power_weeks
        } else if days >= 1.0 {
            rules.power_hot_hold
        } else {
            rules.power_exit[usize::from(way.white.low_cure)]
        }
    };
    if let Some(seen) = lot_test(job, cloth, way) {
        return after_lot_pieces(before, [seen.turned, seen.pieces], power(seen.days), rules);
    }
    let clean = evidence(job, cloth, way).filter(|seen| seen.turned == 0).count() as u32;
    let turned = evidence(job, cloth, way).any(|seen| seen.turned > 0);
    if turned {
        after_lot_test(before, true, rules.power_weeks, rules.false_alarm)
    } else if clean > 0 {
        after_clean_lots(before, clean, rules.power_weeks, rules)
    } else {
        before
    }
}
