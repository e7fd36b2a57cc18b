//! Cloth that is dried before it is printed: sent through the dryer once more, bare.
//!
//! Water holds a print at its wet-bulb temperature while it leaves, so that damp cloth needs a longer dwell, and its dye has
//! that much longer to travel. Dried cloth takes water up again within minutes: what is computed holds for cloth that is
//! printed at once.
//!
//! Drying is a way of its own ([`Candidate::dried`]): flash, window and ride are those of cloth with as much water as is
//! left. A piece is dried at the setting it is printed at, because nobody dials a dryer between two pieces, and as often as
//! that takes: its passes are marched. Their heat counts for what the cloth stands. What they do to the dye is left out:
//! nothing lies on the cloth that could take it up, and what leaves would only be in the print's favour.
//!
//! It costs every piece a pass and two hands, so it is looked for where an order cannot be run without: where the verdict
//! would be a trial or a refusal. Where two pieces have to be held, it is told and not planned ([`if_dried`]).

use super::bench::{Bench, first_closed};
use super::candidate::Candidate;
use super::judge::stack_of;
use super::memory::cloth_in_room;
use super::outlook::Outlook;
use super::ride::Rides;
use super::ways::first_way;
use super::window::{Demands, Detail, Question, SetPoint, Window, robust};
use super::window_report::kinetics;
use super::{Cloth, Code, Job, Reason, Step, Verdict, explain::word};
use crate::dryer::{Case, DriftCase, Film, HistoryError, Stack, TOLERANCE, history};
use crate::numerics::Lanes;
use crate::quantity::units::kelvin;
use crate::textile::{Fabric, moisture};

/// Water left in cloth that has been through the dryer once, or hung over it. From memory: 1 to 3 %.
const LEFT: f64 = 0.02;
/// Water beyond that which is worth a pass through the dryer. Chosen.
const WORTH: f64 = 0.01;
/// Most passes in which a shop dries a piece: what is wetter is hung up first. Assumed, 2 to 6.
pub(super) const MOST_DRYINGS: u32 = 4;

/// Water in a stack's cloth as it lies in the room, as a share of its dry mass.
pub(super) fn water(stack: &Stack, fabric: &Fabric) -> f64 {
    moisture::regain(stack.humidity, fabric.regain_65) + stack.added_water
}

/// The cloth of a job as it lies in the room, nothing printed on it.
fn damp(job: &Job, cloth: &Cloth) -> Stack {
    cloth_in_room(job, cloth, Film { thickness: 0.0, density: Film::DENSITY })
}

/// True where drying takes something off that is worth a pass.
fn is_damp(stack: &Stack, fabric: &Fabric) -> bool {
    water(stack, fabric) > LEFT + WORTH
}

/// The same stack on cloth that was dried before: in balance with what water is left in it. As it is, where drying takes
/// nothing off.
pub(super) fn dry(stack: Stack, fabric: &Fabric) -> Stack {
    if !is_damp(&stack, fabric) {
        return stack;
    }
    let held = Lanes::<1>::splat(fabric.regain_65.max(1e-3));
    let humidity = moisture::balance_humidity(Lanes::splat(LEFT), held)[0].min(stack.humidity);
    Stack { humidity, added_water: 0.0, ..stack }
}

/// Passes through the dryer at a set point after which no more water is left in the bare cloth than drying is taken to
/// leave, as it comes out of the heat; `None` where it takes more than a shop would run.
///
/// # Errors
/// As the march.
pub(super) fn passes_to_dry(job: &Job, cloth: &Cloth, point: &SetPoint) -> Result<Option<u32>, HistoryError> {
    let bare = damp(job, cloth);
    let case = Case { set: point.set, belt: point.belt, drift: DriftCase::NOMINAL };
    for passes in 1..=MOST_DRYINGS {
        let history = history::<1>(&bare, &job.dryer, &[case], passes, TOLERANCE)?;
        let leaves = history.leaves[0];
        let at_exit = history.samples.iter().rev().find(|sample| sample.time[0] <= leaves);
        if at_exit.is_some_and(|sample| sample.water[0] <= LEFT) {
            return Ok(Some(passes));
        }
    }
    Ok(None)
}

/// The best dried way of every white that comes to a better verdict with it, beside what was `found` for each without; none
/// where the order can be run without. Where drying does not help the way that comes nearest, no other is looked for.
///
/// # Errors
/// As the march.
pub(super) fn dried_ways<'a>(
    bench: &mut Bench<'a>,
    found: &[Result<Outlook<'a>, Reason>],
) -> Result<Vec<Option<Outlook<'a>>>, HistoryError> {
    let (job, cloth) = (bench.job, bench.cloth);
    if !may_dry(job, cloth, found) || !helps(bench, found)? {
        return Ok(found.iter().map(|_| None).collect());
    }
    bench.dries = true;
    let mut dried = Vec::with_capacity(found.len());
    for (white, found) in job.whites.iter().zip(found) {
        let undried = found.as_ref().map_or(Verdict::Refuse, |outlook| outlook.verdict);
        let best = bench.best_dried(white, &job.blockers, undried)?.ok();
        let better = best.filter(|outlook| outlook.verdict < undried);
        dried.push(better.map(|outlook| Outlook { undried: Some(undried), ..outlook }));
    }
    Ok(dried)
}

/// True where no white can be run on the cloth as it lies, and drying takes something off it.
pub(super) fn may_dry(job: &Job, cloth: &Cloth, found: &[Result<Outlook<'_>, Reason>]) -> bool {
    let runs = |outlook: &Outlook<'_>| outlook.verdict < Verdict::Trial;
    !found.iter().flatten().any(runs) && is_damp(&damp(job, cloth), &cloth.fabric)
}

/// Whether drying brings the way that comes nearest to a better verdict, or opens the first window that is closed.
fn helps(bench: &Bench<'_>, found: &[Result<Outlook<'_>, Reason>]) -> Result<bool, HistoryError> {
    let (job, cloth) = (bench.job, bench.cloth);
    let chance = |outlook: &Outlook<'_>| outlook.fail_later.likely;
    let nearer =
        |a: &&Outlook<'_>, b: &&Outlook<'_>| a.verdict.cmp(&b.verdict).then(chance(a).total_cmp(&chance(b)));
    if let Some(best) = found.iter().flatten().min_by(nearer)
        && verdict_dried(job, cloth, best)?.is_some_and(|dried| dried < best.verdict)
    {
        return Ok(true);
    }
    let closed = first_closed(job, found).and_then(|white| first_way(job, cloth, white));
    let Some(way) = closed else { return Ok(false) };
    Ok(set_point_dried(job, cloth, &way, &bench.demands(way.white))?.is_some())
}

/// The set point of a way on dried cloth.
fn set_point_dried(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    demands: &Demands,
) -> Result<Option<SetPoint>, HistoryError> {
    let fixed = job.order.shop.dryer_fixed.map(kelvin);
    let question = Question {
        stack: &stack_of(job, cloth, &way.with_cloth(true)),
        dryer: &job.dryer,
        passes: job.order.shop.passes,
        kinetics: kinetics(job, way.white),
        dyed: cloth.dyed.as_ref(),
        fixed,
        detail: Detail::Coarse,
    };
    Ok(robust(&Window::compute(&question)?, &job.dryer, demands, fixed))
}

/// What a judged way would come to on dried cloth; `None` where its window is closed there, too.
fn verdict_dried(job: &Job, cloth: &Cloth, outlook: &Outlook<'_>) -> Result<Option<Verdict>, HistoryError> {
    let Some(point) = set_point_dried(job, cloth, &outlook.way, &outlook.run.demands)? else {
        return Ok(None);
    };
    // Its flash as on the damp cloth: a little longer than dried cloth needs, and never in its favour.
    let run = &outlook.run;
    let dried =
        Rides::default().weigh(job, cloth, outlook.way.with_cloth(true), point, run.demands, run.flash)?;
    Ok(Some(dried.verdict))
}

/// That a way which can be run as it is would come to a better verdict on dried cloth.
///
/// # Errors
/// As the march.
pub(super) fn if_dried(
    job: &Job,
    cloth: &Cloth,
    outlook: &Outlook<'_>,
) -> Result<Option<Reason>, HistoryError> {
    let damp = damp(job, cloth);
    if outlook.way.dried || outlook.verdict != Verdict::GoWithCheck || !is_damp(&damp, &cloth.fabric) {
        return Ok(None);
    }
    let dried = verdict_dried(job, cloth, outlook)?.filter(|dried| *dried < outlook.verdict);
    Ok(dried.map(|dried| {
        Reason::new(Code::IfDried)
            .number("water_percent", water(&damp, &cloth.fabric) * 100.0)
            .word("verdict", word(dried))
    }))
}

/// The first step of a way on dried cloth.
pub(super) fn step(job: &Job, cloth: &Cloth, outlook: &Outlook<'_>) -> Option<Step> {
    let damp = damp(job, cloth);
    (outlook.run.dryings > 0).then(|| Step::PreDry {
        passes: outlook.run.dryings,
        water_percent: water(&damp, &cloth.fabric) * 100.0,
        left_percent: water(&dry(damp, &cloth.fabric), &cloth.fabric) * 100.0,
    })
}

/// Why a way is on dried cloth: what it would come to without.
pub(super) fn why(job: &Job, cloth: &Cloth, outlook: &Outlook<'_>) -> Option<Reason> {
    let undried = outlook.undried?;
    let water = water(&damp(job, cloth), &cloth.fabric);
    Some(Reason::new(Code::DriedFirst).number("water_percent", water * 100.0).word("verdict", word(undried)))
}
