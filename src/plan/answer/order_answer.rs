//! The whole answer: every white on the shelf assessed, the best first.

use super::cautions::cautions;
use super::improvements::improvements;
use super::multi_garment::whole;
use super::pick::pick;
use super::reasons::reasons;
use super::unknowns::unknowns;
use crate::dryer::HistoryError;
use crate::ink::White;
use crate::plan::margins::LaterHeat;
use crate::plan::order::{Cloth, Finish, Job, UseKind};
use crate::plan::recipe::{anchor_candidate, first_candidate};
use crate::plan::report::{Code, Pick, Reason, Rejected, Report, Verdict, sorted_insert};
use crate::plan::search::{Evaluator, SimulationCache, dried_candidates, first_closed};
use crate::plan::verdict::{Assessment, Judgement, order, scores, trade_off};
use crate::plan::window::clearance_around;

/// Answers the job for each of its cloths and gives the most demanding answer, with what all of them can
/// share.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn answer(job: &Job) -> Result<Report, HistoryError> {
    answer_with(job, &mut SimulationCache::default())
}

/// The same with the simulations that `cache` keeps from earlier answers.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn answer_with(job: &Job, cache: &mut SimulationCache) -> Result<Report, HistoryError> {
    let mut evaluators: Vec<Option<Evaluator<'_>>> =
        job.cloths.iter().map(|cloth| Evaluator::new(job, cloth, cache)).collect();
    let mut reports = Vec::with_capacity(job.cloths.len());
    for (garment, (cloth, evaluator)) in job.cloths.iter().zip(&mut evaluators).enumerate() {
        let mut report = answer_cloth(job, cloth, evaluator.as_mut())?;
        report.garment = garment;
        for pick in report.picks.iter_mut().chain(report.closed.as_deref_mut()) {
            pick.garment = garment;
        }
        reports.push(report);
    }
    let whole = whole(job, &reports, &mut evaluators)?;
    for evaluator in evaluators.into_iter().flatten() {
        evaluator.keep(cache);
    }
    let mut hardest: Option<Report> = None;
    for report in reports {
        let chance = |report: &Report| report.picks.first().map_or(1.0, |pick| pick.fail_later.likely);
        let harder = hardest
            .as_ref()
            .is_none_or(|hardest| (report.verdict, chance(&report)) > (hardest.verdict, chance(hardest)));
        if harder {
            hardest = Some(report);
        }
    }
    let hardest = hardest.unwrap_or_else(|| refusal(Vec::new()));
    let understood_each = job.cloths.iter().map(|cloth| cloth.understood.clone()).collect();
    Ok(Report { whole, understood_each, ..hardest })
}

/// Assesses one white of the shelf on the first cloth, whatever its verdict, with the film nearest to
/// [`ANCHOR_FILM`](crate::plan::ANCHOR_FILM); over the first blocker if `over_blocker`. `None` if its window
/// is closed, or if the shelf has no such white or no blocker.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn assess_white(job: &Job, white: &str, over_blocker: bool) -> Result<Option<Pick>, HistoryError> {
    let Some(cloth) = job.cloths.first() else { return Ok(None) };
    let Some(white) = job.whites.iter().find(|known| known.id == white) else { return Ok(None) };
    let Some(mut evaluator) = Evaluator::new(job, cloth, &mut SimulationCache::default()) else {
        return Ok(None);
    };
    let blocker = job.blockers.first().filter(|_| over_blocker);
    if over_blocker && blocker.is_none() {
        return Ok(None);
    }
    let Some(candidate) = anchor_candidate(job, cloth, white, blocker) else { return Ok(None) };
    let Ok(assessment) = evaluator.assess(candidate)? else { return Ok(None) };
    let judgement = evaluator.judge(assessment)?;
    Ok(Some(pick(job, cloth, &mut evaluator, &judgement)?))
}

/// A report that refuses the order, with what would make it possible.
fn refusal(reasons: Vec<Reason>) -> Report {
    Report {
        verdict: Verdict::Refuse,
        garment: 0,
        picks: Vec::new(),
        rejected: Vec::new(),
        closed: None,
        whole: None,
        trade: None,
        to_make_it_possible: reasons,
        cautions: Vec::new(),
        unknowns: Vec::new(),
        understood: Vec::new(),
        understood_each: Vec::new(),
    }
}

/// The answer for one cloth of the job.
fn answer_cloth<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    evaluator: Option<&mut Evaluator<'a>>,
) -> Result<Report, HistoryError> {
    let mut report = refusal(Vec::new());
    report.understood.clone_from(&cloth.understood);
    if let Some(reason) = forbidden(job, cloth) {
        report.to_make_it_possible.push(reason);
        report.to_make_it_possible.push(Reason::new(Code::OtherProcess));
        report.cautions = cautions(job, cloth, None);
        return Ok(report);
    }
    // No white changes what comes after the cure.
    if let Some(later) = LaterHeat::of(job, cloth).filter(|later| !later.holds()) {
        report.to_make_it_possible.push(later.reason());
        report.cautions = cautions(job, cloth, None);
        return Ok(report);
    }
    if job.whites.is_empty() {
        report.to_make_it_possible.push(Reason::new(Code::ShelfEmpty));
    }
    let Some(evaluator) = evaluator else { return Ok(report) };
    let mut assessed: Vec<Assessment<'_>> = Vec::new();
    // Among refused candidates, the one with the least chance of a late fault.
    let mut nearest_refused: Option<Assessment<'_>> = None;
    let mut found = Vec::with_capacity(job.whites.len());
    for white in &job.whites {
        found.push(evaluator.best_of(white, &job.blockers, None)?);
    }
    let first_closed_white = first_closed(job, &found);
    let dried = dried_candidates(evaluator, &found)?;
    let mut add = |assessment| sorted_insert(&mut assessed, assessment, |a, b| order(job, cloth, a, b));
    for ((white, found), dried) in job.whites.iter().zip(found).zip(dried) {
        let only_dried = dried.is_some();
        dried.into_iter().for_each(&mut add);
        match found {
            Ok(assessment) if assessment.verdict < Verdict::Refuse => add(assessment),
            _ if only_dried => {}
            Ok(refused) => {
                let judgement = evaluator.judge(refused)?;
                let reasons = pick_reasons(job, cloth, evaluator, &judgement)?;
                report.rejected.push(Rejected { white: white.id.clone(), name: white.name.clone(), reasons });
                let refused = judgement.assessment;
                let chance = |refused: &Assessment<'_>| refused.fail_later.likely;
                if nearest_refused
                    .as_ref()
                    .is_none_or(|nearest_refused| chance(&refused) < chance(nearest_refused))
                {
                    nearest_refused = Some(refused);
                }
            }
            Err(reason) => report.rejected.push(Rejected {
                white: white.id.clone(),
                name: white.name.clone(),
                reasons: vec![reason],
            }),
        }
    }
    let picks = assessed.iter().map(|assessment| scores(job, cloth, assessment));
    let tried = std::mem::take(&mut evaluator.scores);
    report.trade = Some(trade_off(job.order.print.priority, evaluator.compared, tried, picks));
    let mut first = None;
    for assessment in &assessed {
        let judgement = evaluator.judge(assessment.clone())?;
        report.picks.push(pick(job, cloth, evaluator, &judgement)?);
        first.get_or_insert(judgement);
    }
    report.verdict = report.picks.first().map_or(Verdict::Refuse, |pick| pick.verdict);
    if assessed.iter().all(|assessment| assessment.candidate.dried)
        && let Some(white) = first_closed_white
    {
        let mut openings = evaluator.openings(white)?;
        if assessed.is_empty() {
            report.closed = closed(job, cloth, evaluator, white)?.map(Box::new);
        } else {
            // Openings other than drying: the drying is already planned.
            openings.retain(|reason| reason.code != Code::OpensPreDry);
        }
        report.to_make_it_possible.extend(openings);
    }
    let best = assessed.first().or(nearest_refused.as_ref());
    report.to_make_it_possible.extend(improvements(job, cloth, evaluator, report.verdict, best)?);
    report.cautions = cautions(job, cloth, first.as_ref());
    report.unknowns = unknowns(job, cloth, first.as_ref());
    Ok(report)
}

/// The first candidate of a white whose window is closed, as a pick without a setting.
fn closed(
    job: &Job,
    cloth: &Cloth,
    evaluator: &mut Evaluator<'_>,
    white: &White,
) -> Result<Option<Pick>, HistoryError> {
    let Some(candidate) = first_candidate(job, cloth, white) else { return Ok(None) };
    let assessment = evaluator.assess_closed(candidate)?;
    let judgement = evaluator.judge(assessment)?;
    let pick = pick(job, cloth, evaluator, &judgement)?;
    Ok(Some(Pick { verdict: Verdict::Refuse, setting: None, trial: None, ..pick }))
}

/// Age up to which sleepwear must pass a flame test with its print on it, years. Laws differ (sizes 0 to 14 in the United
/// States: 16 CFR 1615 and 1616, from memory); the maker knows what the garment was tested for.
const CHILDS_SLEEPWEAR: f64 = 14.0;

/// The reason why no white can print this order: what the customer bans, certified cloth, or a child's sleepwear.
fn forbidden(job: &Job, cloth: &Cloth) -> Option<Reason> {
    let banned =
        |ban: &String| matches!(ban.to_lowercase().as_str(), "pvc" | "vinyl" | "phthalates" | "plastisol");
    if let Some(ban) = job.order.use_.customer_bans.iter().find(|ban| banned(ban)) {
        return Some(Reason::new(Code::CustomerBans).word("ban", ban));
    }
    let certified = cloth
        .garment
        .finish
        .iter()
        .any(|finish| matches!(finish, Finish::FlameResistant | Finish::HighVisibility));
    let use_ = &job.order.use_;
    let childs = use_.wearer_age_years.is_some_and(|age| age <= CHILDS_SLEEPWEAR);
    let protects = use_.kind == UseKind::Protective || childs && use_.kind == UseKind::Sleepwear;
    (certified || protects).then(|| Reason::new(Code::MakerWordNeeded))
}

/// The reasons for or against a candidate that is not a pick.
fn pick_reasons(
    job: &Job,
    cloth: &Cloth,
    evaluator: &mut Evaluator<'_>,
    judgement: &Judgement<'_>,
) -> Result<Vec<Reason>, HistoryError> {
    let window = evaluator.window(&judgement.assessment.candidate)?;
    let clearance = clearance_around(window, &judgement.assessment.run);
    // It is not run, so the dwell that water costs does not matter.
    Ok(reasons(job, cloth, judgement, &clearance, None))
}
