//! Drying before: cloth that goes through the dryer bare before it is printed.
//!
//! While water leaves, it holds a print at its wet-bulb temperature, so damp cloth needs a longer dwell, in
//! which its dye travels further. Dried cloth takes up water again within minutes: the results hold for cloth
//! that is printed at once.
//!
//! A candidate on dried cloth is a candidate of its own ([`Candidate::dried`]): its flash, window and
//! histories are those of cloth with the water that drying leaves. A piece is dried at the setting at which
//! it is printed, because a dryer is not set anew between two pieces, in as many passes as that takes; these
//! passes are simulated. Their heat counts against the limits of the cloth. Their effect on the dye is left
//! out: no film lies on the cloth to take it up, and dye that leaves would only favour the print.
//!
//! Drying costs every piece a pass and two handlings, so it is looked for only if the order cannot be run
//! without, if the verdict would be a trial or a refusal, or if the cloth holds more water than its fibres can
//! bind. For a go with check on cloth that is only damp it is reported and not planned ([`if_dried`]).
//!
//! **Decision:** drying never competes with holding two pieces back. One window of the candidate that comes
//! nearest, of either kind of ink and of the trials and the refused, and one of the first that is closed decide
//! whether dried candidates are searched.
//! **Because:** drying costs every piece a pass and two handlings.
//! **Measured:** `tests/answers/screening.rs` assesses all dried candidates of 492 searches and finds three
//! missed (2026-12-01).
//! **Reconsider when:** that test finds one missed, or a shop dries cloth in line at no cost.

use super::evaluator::{Evaluator, first_closed};
use crate::dryer::HistoryError;
use crate::plan::margins::HistoryCache;
use crate::plan::order::{Cloth, Job, kinetics};
use crate::plan::recipe::{Candidate, damp, first_candidate, is_damp, is_soaked, stack_of, water};
use crate::plan::report::{Code, Reason, Verdict, word};
use crate::plan::verdict::{Assessment, assess};
use crate::plan::window::{Demands, Detail, Question, SetPoint, Window, robust};
use crate::quantity::Share;
use crate::quantity::units::kelvin;

/// The best candidate on dried cloth of every white that reaches a better verdict there, beside what was
/// `found` for each without drying; none if the order can be run without. If the cloth is only damp and drying
/// does not help the candidates that come nearest, no other is looked for.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn dried_candidates<'a>(
    evaluator: &mut Evaluator<'a>,
    found: &[Result<Assessment<'a>, Reason>],
) -> Result<Vec<Option<Assessment<'a>>>, HistoryError> {
    let (job, cloth) = (evaluator.job, evaluator.cloth);
    let soaked = is_soaked(&damp(job, cloth), &cloth.fabric);
    if !may_dry(job, cloth, found) || !(soaked || helps(evaluator, found)?) {
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

/// True if drying removes enough water, and no white can be run on the cloth as it lies or the cloth holds more
/// water than its fibres can bind.
pub fn may_dry(job: &Job, cloth: &Cloth, found: &[Result<Assessment<'_>, Reason>]) -> bool {
    let runs = |assessment: &Assessment<'_>| assessment.verdict < Verdict::Trial;
    let lies = damp(job, cloth);
    let needed = !found.iter().flatten().any(runs) || is_soaked(&lies, &cloth.fabric);
    needed && is_damp(&lies, &cloth.fabric)
}

/// Whether drying brings the candidate that comes nearest to a better verdict, of either kind of ink and of
/// those that are trials and those that are refused, or opens the first window that is closed.
fn helps(evaluator: &Evaluator<'_>, found: &[Result<Assessment<'_>, Reason>]) -> Result<bool, HistoryError> {
    let (job, cloth) = (evaluator.job, evaluator.cloth);
    let chance = |assessment: &Assessment<'_>| assessment.fail_later.likely;
    for (low_cure, verdict) in
        [false, true].into_iter().flat_map(|low| [(low, Verdict::Trial), (low, Verdict::Refuse)])
    {
        let alike = |assessment: &&Assessment<'_>| {
            assessment.candidate.white.low_cure == low_cure && assessment.verdict == verdict
        };
        let nearest = found.iter().flatten().filter(alike).min_by(|a, b| chance(a).total_cmp(&chance(b)));
        if let Some(nearest) = nearest
            && verdict_dried(job, cloth, nearest)?.is_some_and(|dried| dried < verdict)
        {
            return Ok(true);
        }
    }
    let closed = first_closed(job, found).and_then(|white| first_candidate(job, cloth, white));
    let Some(candidate) = closed else { return Ok(false) };
    Ok(set_point_dried(job, cloth, &candidate, &evaluator.demands(candidate.white))?.is_some())
}

/// The set point of a candidate on dried cloth; `None` if its window is closed.
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

/// The verdict on an assessed candidate on dried cloth; `None` if its window is closed there too.
fn verdict_dried(
    job: &Job,
    cloth: &Cloth,
    assessment: &Assessment<'_>,
) -> Result<Option<Verdict>, HistoryError> {
    let Some(point) = set_point_dried(job, cloth, &assessment.candidate, &assessment.run.demands)? else {
        return Ok(None);
    };
    // The flash is that of the damp cloth: a little longer than dried cloth needs, and never in its favour.
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

/// The remark that a candidate which can be run as it is would reach a better verdict on dried cloth; `None`
/// if it would not.
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
            .percent("water_percent", Share(water(&damp, &cloth.fabric)).percent())
            .word("verdict", word(dried))
    }))
}
