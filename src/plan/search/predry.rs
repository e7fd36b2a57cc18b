//! Cloth that is dried before it is printed: sent through the dryer once more, bare.
//!
//! Water holds a print at its wet-bulb temperature while it leaves, so that damp cloth needs a longer dwell, and its dye has
//! that much longer to travel. Dried cloth takes water up again within minutes: what is computed holds for cloth that is
//! printed at once.
//!
//! Drying is a way of its own ([`Candidate::dried`]): flash, window and ride are those of cloth with as much water as is
//! left. A piece is dried at the setting it is printed at, because nobody dials a dryer between two pieces, and as often as
//! that takes: its passes are simulated. Their heat counts for what the cloth stands. What they do to the dye is left out:
//! nothing lies on the cloth that could take it up, and what leaves would only be in the print's favour.
//!
//! It costs every piece a pass and two hands, so it is looked for where an order cannot be run without: where the verdict
//! would be a trial or a refusal. Where two pieces have to be held, it is told and not planned ([`if_dried`]).

use super::evaluator::{Evaluator, first_closed};
use crate::dryer::HistoryError;
use crate::plan::margins::HistoryCache;
use crate::plan::order::{Cloth, Job, kinetics};
use crate::plan::recipe::{Candidate, damp, first_candidate, is_damp, stack_of, water};
use crate::plan::report::{Code, Reason, Verdict, word};
use crate::plan::verdict::{Assessment, assess};
use crate::plan::window::{Demands, Detail, Question, SetPoint, Window, robust};
use crate::quantity::units::kelvin;

/// The best dried way of every white that comes to a better verdict with it, beside what was `found` for each without; none
/// where the order can be run without. Where drying does not help the way that comes nearest, no other is looked for.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn dried_candidates<'a>(
    evaluator: &mut Evaluator<'a>,
    found: &[Result<Assessment<'a>, Reason>],
) -> Result<Vec<Option<Assessment<'a>>>, HistoryError> {
    let (job, cloth) = (evaluator.job, evaluator.cloth);
    if !may_dry(job, cloth, found) || !helps(evaluator, found)? {
        return Ok(found.iter().map(|_| None).collect());
    }
    evaluator.dries = true;
    let mut dried = Vec::with_capacity(found.len());
    for (white, found) in job.whites.iter().zip(found) {
        let undried = found.as_ref().map_or(Verdict::Refuse, |assessment| assessment.verdict);
        let best = evaluator.best_dried(white, &job.blockers, undried)?.ok();
        let better = best.filter(|assessment| assessment.verdict < undried);
        dried.push(better.map(|assessment| Assessment { undried: Some(undried), ..assessment }));
    }
    Ok(dried)
}

/// True where no white can be run on the cloth as it lies, and drying takes something off it.
pub fn may_dry(job: &Job, cloth: &Cloth, found: &[Result<Assessment<'_>, Reason>]) -> bool {
    let runs = |assessment: &Assessment<'_>| assessment.verdict < Verdict::Trial;
    !found.iter().flatten().any(runs) && is_damp(&damp(job, cloth), &cloth.fabric)
}

/// Whether drying brings the way that comes nearest to a better verdict, or opens the first window that is closed.
fn helps(evaluator: &Evaluator<'_>, found: &[Result<Assessment<'_>, Reason>]) -> Result<bool, HistoryError> {
    let (job, cloth) = (evaluator.job, evaluator.cloth);
    let chance = |assessment: &Assessment<'_>| assessment.fail_later.likely;
    let nearer = |a: &&Assessment<'_>, b: &&Assessment<'_>| {
        a.verdict.cmp(&b.verdict).then(chance(a).total_cmp(&chance(b)))
    };
    if let Some(best) = found.iter().flatten().min_by(nearer)
        && verdict_dried(job, cloth, best)?.is_some_and(|dried| dried < best.verdict)
    {
        return Ok(true);
    }
    let closed = first_closed(job, found).and_then(|white| first_candidate(job, cloth, white));
    let Some(candidate) = closed else { return Ok(false) };
    Ok(set_point_dried(job, cloth, &candidate, &evaluator.demands(candidate.white))?.is_some())
}

/// The set point of a way on dried cloth.
fn set_point_dried(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    demands: &Demands,
) -> Result<Option<SetPoint>, HistoryError> {
    let fixed = job.order.shop.dryer_fixed.map(kelvin);
    let question = Question {
        stack: &stack_of(job, cloth, &candidate.with_cloth(true)),
        dryer: &job.dryer,
        passes: job.order.shop.passes,
        kinetics: kinetics(job, candidate.white),
        dyed: cloth.dyed.as_ref(),
        fixed,
        detail: Detail::Coarse,
    };
    Ok(robust(&Window::compute(&question)?, &job.dryer, demands, fixed))
}

/// What a judged way would come to on dried cloth; `None` where its window is closed there, too.
fn verdict_dried(
    job: &Job,
    cloth: &Cloth,
    assessment: &Assessment<'_>,
) -> Result<Option<Verdict>, HistoryError> {
    let Some(point) = set_point_dried(job, cloth, &assessment.candidate, &assessment.run.demands)? else {
        return Ok(None);
    };
    // Its flash as on the damp cloth: a little longer than dried cloth needs, and never in its favour.
    let run = &assessment.run;
    let dried = assess(
        &mut HistoryCache::default(),
        job,
        cloth,
        assessment.candidate.with_cloth(true),
        point,
        run.demands,
        run.flash,
    )?;
    Ok(Some(dried.verdict))
}

/// That a way which can be run as it is would come to a better verdict on dried cloth.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn if_dried(
    job: &Job,
    cloth: &Cloth,
    assessment: &Assessment<'_>,
) -> Result<Option<Reason>, HistoryError> {
    let damp = damp(job, cloth);
    if assessment.candidate.dried
        || assessment.verdict != Verdict::GoWithCheck
        || !is_damp(&damp, &cloth.fabric)
    {
        return Ok(None);
    }
    let dried = verdict_dried(job, cloth, assessment)?.filter(|dried| *dried < assessment.verdict);
    Ok(dried.map(|dried| {
        Reason::new(Code::IfDried)
            .number("water_percent", water(&damp, &cloth.fabric) * 100.0)
            .word("verdict", word(dried))
    }))
}
