//! The result of a search beside the assessment of every candidate: a check on what the search skips.

use super::cache::SimulationCache;
use super::evaluator::Evaluator;
use super::predry::{dried_candidates, may_dry};
use crate::dryer::HistoryError;
use crate::plan::order::Job;
use crate::plan::recipe::candidates;
use crate::plan::report::Verdict;
use crate::plan::verdict::{Assessment, burden};

/// A candidate with what decides between two of them.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenedRecipe {
    /// Id of the white or mixture.
    pub white: String,
    /// Film of white, m.
    pub film: f64,
    /// Whether a blocker lies under it.
    pub over_blocker: bool,
    /// The verdict.
    pub verdict: Verdict,
    /// What it costs the order in ink, time, risk and what the order cares for, in the shop's money.
    pub burden: f64,
}

/// What the search found for one white, beside every candidate of it.
#[derive(Clone, Debug)]
pub struct Screening {
    /// Id of the white.
    pub white: String,
    /// What the search found.
    pub found: Option<ScreenedRecipe>,
    /// How many candidates it assessed.
    pub judged: usize,
    /// All candidates that have a set point.
    pub every: Vec<ScreenedRecipe>,
    /// What was found on dried cloth, if that reaches a better verdict.
    pub dried: Option<ScreenedRecipe>,
    /// All candidates on dried cloth that have a set point; none if the order can be run without drying, or
    /// the cloth is dry.
    pub every_dried: Vec<ScreenedRecipe>,
}

/// Searches for the best candidate of each white of the shelf on the job's first cloth, as an answer does,
/// and then assesses every candidate, also those that the search skips.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn screening(job: &Job) -> Result<Vec<Screening>, HistoryError> {
    let Some(cloth) = job.cloths.first() else { return Ok(Vec::new()) };
    let Some(mut evaluator) = Evaluator::new(job, cloth, &mut SimulationCache::default()) else {
        return Ok(Vec::new());
    };
    let screened = |assessment: &Assessment<'_>| ScreenedRecipe {
        white: assessment.candidate.white.id.clone(),
        film: assessment.candidate.film,
        over_blocker: assessment.candidate.blocker.is_some(),
        verdict: assessment.verdict,
        burden: burden(job, cloth, assessment),
    };
    let mut screenings = Vec::with_capacity(job.whites.len());
    let mut found = Vec::with_capacity(job.whites.len());
    for white in &job.whites {
        let before = evaluator.assessed;
        found.push(evaluator.best_of(white, &job.blockers, None)?);
        screenings.push(Screening {
            white: white.id.clone(),
            found: found.last().and_then(|found| found.as_ref().ok()).map(screened),
            judged: evaluator.assessed - before,
            every: Vec::new(),
            dried: None,
            every_dried: Vec::new(),
        });
    }
    let dried = dried_candidates(&mut evaluator, &found)?;
    let may_dry = may_dry(job, cloth, &found);
    for ((white, dried), screening) in job.whites.iter().zip(dried).zip(&mut screenings) {
        screening.dried = dried.as_ref().map(screened);
        for candidate in candidates(job, cloth, white, &job.blockers) {
            if candidate.white.id != white.id && !candidate.covers(job, cloth) {
                continue;
            }
            screening.every.extend(evaluator.assess(candidate)?.ok().as_ref().map(screened));
            if may_dry {
                let assessment = evaluator.assess(candidate.with_cloth(true))?.ok();
                screening.every_dried.extend(assessment.as_ref().map(screened));
            }
        }
    }
    Ok(screenings)
}
