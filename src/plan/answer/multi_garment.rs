//! One design on several garments: one plan for all of them, or a plan for each.
//!
//! One plan means one white through one set of screens. The dryer may be set anew between two garments,
//! because that costs minutes and no screen, and the cloth of each garment may be dried before or not. Each
//! recipe that is best for some garment is assessed on every other. One plan costs more ink and press time on
//! the pieces that would do with less; the split costs more screens and ink changes:
//!
//! ```text
//! cost = sum over garments of pieces x cost per print  +  screens beyond the first x screen change  +  ink changes
//! ```
//!
//! The better verdict wins; between equals the cheaper does.

use crate::dryer::HistoryError;
use crate::plan::order::{Job, Rules};
use crate::plan::recipe::Candidate;
use crate::plan::report::{Code, GarmentPart, OrderPlan, Pick, Reason, Recipe, Report, Verdict, WholeOrder};
use crate::plan::search::Evaluator;
use crate::plan::verdict::{Assessment, HOUR, burden, cost_per_print};
use crate::plan::window::{clearance_around, setting};
use std::collections::BTreeSet;

/// Compares one plan for all garments with a plan for each. `None` where the order has one garment only.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn whole(
    job: &Job,
    reports: &[Report],
    evaluators: &mut [Option<Evaluator<'_>>],
) -> Result<Option<WholeOrder>, HistoryError> {
    if reports.len() < 2 {
        return Ok(None);
    }
    let mut together: Option<(OrderPlan, f64)> = None;
    let mut assessed: Vec<&Recipe> = Vec::new();
    for pick in reports.iter().flat_map(|report| &report.picks) {
        if assessed.iter().any(|recipe| same_screens(recipe, &pick.recipe)) {
            continue;
        }
        assessed.push(&pick.recipe);
        if let Some((plan, burden)) = for_all(job, pick, evaluators)? {
            let better = together.as_ref().is_none_or(|(best, least)| {
                plan.verdict.cmp(&best.verdict).then(burden.total_cmp(least)).is_lt()
            });
            if better {
                together = Some((plan, burden));
            }
        }
    }
    let together = together.map(|(plan, _)| plan);
    let split = split(job, reports);
    let say = recommendation(&split, together.as_ref());
    Ok(Some(WholeOrder { together, split, say }))
}

/// One plan with a pick's recipe on every garment, and its burden; `None` if some garment refuses it.
fn for_all(
    job: &Job,
    pick: &Pick,
    evaluators: &mut [Option<Evaluator<'_>>],
) -> Result<Option<(OrderPlan, f64)>, HistoryError> {
    let mut parts = Vec::with_capacity(job.cloths.len());
    let (mut cost, mut total_burden) = (0.0, 0.0);
    for (garment, (cloth, evaluator)) in job.cloths.iter().zip(evaluators).enumerate() {
        let Some(evaluator) = evaluator else { return Ok(None) };
        let Some(candidate) = Candidate::of_recipe(job, cloth, &pick.recipe) else { return Ok(None) };
        let Some(assessment) = dried_or_not(evaluator, candidate)? else { return Ok(None) };
        cost += f64::from(cloth.garment.pieces) * cost_per_print(job, &assessment);
        total_burden += burden(job, cloth, &assessment);
        parts.push(part(job, garment, evaluator, &assessment, pick)?);
    }
    let verdict = parts.iter().map(|part| part.verdict).max().unwrap_or(Verdict::Refuse);
    let cost = cost + changes(&job.rules, [pick].into_iter());
    Ok(Some((OrderPlan { verdict, cost, parts }, total_burden)))
}

/// A candidate on a garment as it lies, or dried before where that is looked for and better; `None` if it is
/// refused.
fn dried_or_not<'w>(
    evaluator: &mut Evaluator<'_>,
    candidate: Candidate<'w>,
) -> Result<Option<Assessment<'w>>, HistoryError> {
    let mut best = evaluator.assess(candidate.with_cloth(false))?.ok();
    if evaluator.dries && best.as_ref().is_none_or(|best| best.verdict >= Verdict::Trial) {
        let verdict = best.as_ref().map_or(Verdict::Refuse, |best| best.verdict);
        best = evaluator
            .assess(candidate.with_cloth(true))?
            .ok()
            .filter(|dried| dried.verdict < verdict)
            .or(best);
    }
    Ok(best.filter(|best| best.verdict < Verdict::Refuse))
}

/// The part of one plan that is for one garment.
fn part(
    job: &Job,
    garment: usize,
    evaluator: &mut Evaluator<'_>,
    assessment: &Assessment<'_>,
    pick: &Pick,
) -> Result<GarmentPart, HistoryError> {
    let clearance = clearance_around(evaluator.window(&assessment.candidate)?, &assessment.run);
    Ok(GarmentPart {
        garment,
        white: Some(pick.white.clone()),
        name: pick.name.clone(),
        dried: assessment.candidate.dried,
        verdict: assessment.verdict,
        setting: Some(setting(job, &assessment.run.point, &clearance)),
        cost_per_print: cost_per_print(job, assessment),
    })
}

/// The best pick of every garment, side by side.
fn split(job: &Job, reports: &[Report]) -> OrderPlan {
    let bests = || reports.iter().filter_map(|report| report.picks.first());
    let parts: Vec<GarmentPart> = reports
        .iter()
        .enumerate()
        .map(|(garment, report)| match report.picks.first() {
            Some(pick) => GarmentPart {
                garment,
                white: Some(pick.white.clone()),
                name: pick.name.clone(),
                dried: pick.is_dried(),
                verdict: pick.verdict,
                setting: pick.setting,
                cost_per_print: pick.cost_per_print.likely,
            },
            None => GarmentPart {
                garment,
                white: None,
                name: String::new(),
                dried: false,
                verdict: Verdict::Refuse,
                setting: None,
                cost_per_print: 0.0,
            },
        })
        .collect();
    let prints = job
        .cloths
        .iter()
        .zip(&parts)
        .map(|(cloth, part)| f64::from(cloth.garment.pieces) * part.cost_per_print)
        .sum::<f64>();
    let verdict = parts.iter().map(|part| part.verdict).max().unwrap_or(Verdict::Refuse);
    OrderPlan { verdict, cost: prints + changes(&job.rules, bests()), parts }
}

/// Whether two recipes run through the same screens in the same strokes: they differ at most in additive and
/// drying.
fn same_screens(one: &Recipe, other: &Recipe) -> bool {
    one.strokes == other.strokes && one.screens().eq(other.screens())
}

/// Cost of setting screens and changing inks over these picks, in the shop's money. The first white and its
/// first screen are there in any case.
fn changes<'a>(rules: &Rules, picks: impl Iterator<Item = &'a Pick>) -> f64 {
    let (mut screens, mut inks) = (BTreeSet::new(), BTreeSet::new());
    for pick in picks {
        screens.extend(pick.recipe.screens());
        inks.insert(pick.recipe.ink_id());
    }
    let beyond_first = |count: usize| count.saturating_sub(1) as f64;
    let minutes =
        rules.screen_change * beyond_first(screens.len()) + rules.white_change * beyond_first(inks.len());
    HOUR / 60.0 * minutes
}

/// Which of the two to run, and what the other would cost.
fn recommendation(split: &OrderPlan, together: Option<&OrderPlan>) -> Reason {
    let of = |code: Code| Reason::new(code).number("garments", split.parts.len() as f64);
    let white = |plan: &OrderPlan| plan.parts.first().map(|part| part.name.clone()).unwrap_or_default();
    match together {
        None if split.verdict == Verdict::Refuse => of(Code::SomeRefused)
            .number("refused", split.parts.iter().filter(|part| part.white.is_none()).count() as f64),
        None => of(Code::SplitOnly),
        Some(one) if one.verdict > split.verdict => of(Code::SplitSafer).word("white", white(one)),
        Some(one) if one.verdict < split.verdict || one.cost <= split.cost => {
            of(Code::OnePlan).word("white", white(one)).number("value", (split.cost - one.cost).max(0.0))
        }
        Some(one) => of(Code::SplitCheaper).word("white", white(one)).number("value", one.cost - split.cost),
    }
}
