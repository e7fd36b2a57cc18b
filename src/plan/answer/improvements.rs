//! What would make an answer better: an undyed cloth, a white or a blocker to buy, a dried cloth.

use crate::dryer::HistoryError;
use crate::plan::order::{Cloth, Job};
use crate::plan::report::{Code, Reason, Verdict, sorted_insert, word};
use crate::plan::search::{Evaluator, if_dried};
use crate::plan::verdict::{Assessment, burden};

/// What would make the answer better: undyed cloth, a white or a blocker to buy, dried cloth.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn improvements(
    job: &Job,
    cloth: &Cloth,
    evaluator: &mut Evaluator<'_>,
    verdict: Verdict,
    best: Option<&Assessment<'_>>,
) -> Result<Vec<Reason>, HistoryError> {
    type Found = (Verdict, f64, Reason);
    let mut found: Vec<Found> = Vec::new();
    let add = |found: &mut Vec<Found>, item: Found| {
        sorted_insert(found, item, |a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    };
    if verdict == Verdict::Go {
        return Ok(Vec::new());
    }
    for white in &job.market {
        if let Ok(assessment) = evaluator.best_of(white, &job.blockers, Some(verdict))?
            && assessment.verdict < verdict
        {
            let reason = Reason::new(Code::BuyClass)
                .word("class", word(white.class))
                .word("name", &white.name)
                .flag("low_cure", white.low_cure)
                .word("verdict", word(assessment.verdict));
            add(&mut found, (assessment.verdict, burden(job, cloth, &assessment), reason));
        }
    }
    if cloth.dyed.is_some() {
        // A blocker is bought for use under a white that itself blocks; under any other it would be the only
        // barrier.
        // Both are bought only where neither alone does.
        let neither = found.is_empty();
        let bought = job.market.iter().filter(|_| neither);
        for white in job.whites.iter().chain(bought).filter(|white| white.blocks()) {
            if let Ok(assessment) = evaluator.best_of(white, &job.market_blockers, Some(verdict))?
                && assessment.verdict < verdict
                && let Some(blocker) = assessment.candidate.blocker
            {
                let reason = Reason::new(Code::UseBlocker)
                    .word("name", &blocker.name)
                    .word("white", &white.name)
                    .word("verdict", word(assessment.verdict));
                add(&mut found, (assessment.verdict, burden(job, cloth, &assessment), reason));
            }
        }
    }
    let mut reasons: Vec<Reason> = found.into_iter().map(|(_, _, reason)| reason).take(3).collect();
    if let Some(best) = best {
        reasons.extend(if_dried(job, cloth, best)?);
    }
    if cloth.dyed.is_some() && !cloth.dye_known {
        let undyed = Cloth { dyed: None, dye_known: true, ..cloth.clone() };
        let best = evaluator.on_cloth(&undyed, |evaluator| {
            let mut best = Verdict::Refuse;
            for white in &job.whites {
                if let Ok(assessment) = evaluator.best_of(white, &[], Some(best.min(verdict)))? {
                    best = best.min(assessment.verdict);
                }
            }
            Ok::<_, HistoryError>(best)
        })?;
        if best < verdict {
            reasons.insert(0, Reason::new(Code::IfUndyed).word("verdict", word(best)));
        }
    }
    if reasons.is_empty() && verdict == Verdict::Refuse {
        reasons.push(Reason::new(Code::OtherProcess));
    }
    Ok(reasons)
}
