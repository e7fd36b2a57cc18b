//! A job's earlier tests, computed as the prints that they were, and what they teach of each cloth's dye.
//!
//! A test names its white and, if one was used, its blocker; film and setting are taken to be those of a careful shop: the
//! film nearest to [`ANCHOR_FILM`](crate::plan::ANCHOR_FILM) at its own set point.

use super::cache::SimulationCache;
use super::evaluator::Evaluator;
use crate::dryer::HistoryError;
use crate::migration::Belief;
use crate::plan::bleed::{LookedAt, is_about, learned, likelihoods};
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::anchor_candidate;

/// Takes the tests of an order into what is believed of the dye of its cloths.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn learn(job: &mut Job, cache: &mut SimulationCache) -> Result<(), HistoryError> {
    if job.order.evidence.is_empty() {
        return Ok(());
    }
    let beliefs =
        job.cloths.iter().map(|cloth| of_cloth(job, cloth, cache)).collect::<Result<Vec<_>, _>>()?;
    for (cloth, belief) in job.cloths.iter_mut().zip(beliefs) {
        cloth.belief = belief;
    }
    Ok(())
}

fn of_cloth(job: &Job, cloth: &Cloth, cache: &mut SimulationCache) -> Result<Belief, HistoryError> {
    if cloth.dyed.is_none() {
        return Ok(cloth.belief);
    }
    let Some(mut evaluator) = Evaluator::new(job, cloth, cache) else { return Ok(cloth.belief) };
    let mut looks = Vec::new();
    for seen in job.order.evidence.iter().filter(|seen| seen.pieces > 0 && is_about(seen, cloth)) {
        let white = job.whites.iter().chain(&job.market).find(|white| white.id == seen.white);
        let blocker = seen
            .blocker
            .as_ref()
            .and_then(|id| job.blockers.iter().chain(&job.market_blockers).find(|blocker| blocker.id == *id));
        let Some(candidate) = white.and_then(|white| anchor_candidate(job, cloth, white, blocker)) else {
            continue;
        };
        let Ok(assessment) = evaluator.assess(candidate)? else { continue };
        if let Some(bled) = assessment.bled {
            let likely = likelihoods(seen, candidate.white.low_cure, &job.rules);
            looks.push(LookedAt { about: seen.about, dye: bled.dye[1], critical: bled.critical, likely });
        }
    }
    evaluator.keep(cache);
    Ok(learned(cloth.belief, &looks))
}
