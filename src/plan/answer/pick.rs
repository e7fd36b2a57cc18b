//! A candidate with its margins, written as the pick of a report.

use super::advice::{advice, first_piece};
use super::reasons::reasons;
use crate::dryer::HistoryError;
use crate::ink::{FilmOpacity, White};
use crate::plan::bleed::{fresh_and_dye, oven_test};
use crate::plan::order::{Cloth, Job, Role};
use crate::plan::recipe::{damp, dry, water};
use crate::plan::report::{Appearance, Pick, PrintStep, Trial, Verdict};
use crate::plan::search::Evaluator;
use crate::plan::verdict::{Assessment, Judgement, cost_per_print, rate_per_hour};
use crate::plan::window::{clearance_around, dry_dwell, setting};
use crate::quantity::Band;

/// The pick of a candidate with its margins.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn pick(
    job: &Job,
    cloth: &Cloth,
    evaluator: &mut Evaluator<'_>,
    judgement: &Judgement<'_>,
) -> Result<Pick, HistoryError> {
    let window = evaluator.window(&judgement.assessment.candidate)?;
    let clearance = clearance_around(window, &judgement.assessment.run);
    let dry = dry_dwell(job, cloth, &judgement.assessment.candidate, &judgement.assessment.run.point)?;
    let white = judgement.assessment.candidate.white;
    let cost = cost_per_print(job, &judgement.assessment);
    let rate = rate_per_hour(job, &judgement.assessment);
    Ok(Pick {
        garment: 0,
        verdict: judgement.assessment.verdict,
        recipe: judgement.assessment.candidate.recipe(job),
        white: white.id.clone(),
        name: white.name.clone(),
        class: white.class,
        low_cure: white.low_cure,
        mix: mixed(job, white),
        additive: judgement.assessment.candidate.additive,
        steps: steps(job, cloth, judgement),
        advice: advice(job, cloth, judgement),
        setting: Some(setting(job, &judgement.assessment.run.point, &clearance)),
        look: Some(appearance(&judgement.assessment.look)),
        margins: judgement.margins.each.clone(),
        fail_later: judgement.assessment.fail_later,
        // Deposit and pace wander by about a fifth between shops; common practice, no source.
        cost_per_print: Band { low: cost * 0.85, likely: cost, high: cost * 1.25 },
        rate_per_hour: Band { low: rate * 0.8, likely: rate, high: rate * 1.1 },
        first_piece: first_piece(judgement),
        trial: trial(job, cloth, judgement),
        reasons: reasons(job, cloth, judgement, &clearance, dry),
    })
}

/// The steps of the print run, in order.
fn steps(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Vec<PrintStep> {
    let candidate = &judgement.assessment.candidate;
    let flash = judgement
        .assessment
        .run
        .flash
        .map(|flash| PrintStep::Flash { seconds: flash.seconds, film_c: flash.film_c });
    let role = job.order.print.role;
    let mut steps: Vec<PrintStep> = predry_step(job, cloth, &judgement.assessment).into_iter().collect();
    if role == Role::Highlight {
        steps.extend(flash.clone());
    }
    // The smoothing screen runs once, over the first film that has been flashed.
    let smooth = candidate.smoothing.then_some(PrintStep::Smooth);
    if let Some(blocker) = candidate.blocker {
        steps.push(PrintStep::Blocker {
            id: blocker.id.clone(),
            name: blocker.name.clone(),
            film_um: blocker.film * 1e6,
        });
        steps.extend(flash.clone());
        steps.extend(smooth.clone());
    }
    for stroke in 1..=candidate.strokes {
        if stroke > 1 {
            steps.extend(flash.clone());
            steps.extend(smooth.clone().filter(|_| stroke == 2 && candidate.blocker.is_none()));
        }
        steps.push(PrintStep::White {
            strokes: 1,
            threads_per_cm: candidate.mesh.threads_per_m / 100.0,
            film_um: candidate.film * 1e6 * f64::from(stroke) / f64::from(candidate.strokes),
        });
    }
    if role == Role::Underbase {
        steps.extend(flash);
    }
    steps.push(PrintStep::Dryer { passes: job.order.shop.passes });
    steps
}

/// The test that decides: a day in the oven at 60 °C, below the heat at which anything new starts in the
/// fibre. Without dye, a look.
fn trial(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Option<Trial> {
    if judgement.assessment.verdict != Verdict::Trial {
        return None;
    }
    let pieces = if cloth.garment.pieces >= 24 { 6 } else { 2 };
    let latent = cloth.dyed.is_some();
    let (hours, oven_c) = if latent { (24.0, 60.0) } else { (0.0, job.order.use_.storage_c) };
    let oven =
        judgement.assessment.bled.as_ref().zip(fresh_and_dye(cloth, &judgement.assessment.candidate)).map(
            |(bled, (fresh, dye))| oven_test(bled, &fresh, &dye, hours, oven_c, judgement.assessment.bleeds),
        );
    Some(Trial {
        pieces,
        hours,
        oven_c,
        pass_mark: job.rules.bleed,
        power: oven.map_or(job.rules.power_exit[0], |oven| oven.power),
        stands_for_days: oven.map_or(0.0, |oven| oven.film_days.likely),
    })
}

/// What is stirred into a white, by name and %.
fn mixed(job: &Job, white: &White) -> Vec<(String, f64)> {
    job.mixes
        .iter()
        .find(|mix| mix.white.id == white.id)
        .map(|mix| (mix.stretch_name.clone(), f64::from(mix.mixture.percent)))
        .into_iter()
        .collect()
}

/// The first step on cloth that is dried before; `None` if it is printed as it lies.
fn predry_step(job: &Job, cloth: &Cloth, assessment: &Assessment<'_>) -> Option<PrintStep> {
    let damp = damp(job, cloth);
    (assessment.run.dryings > 0).then(|| PrintStep::PreDry {
        passes: assessment.run.dryings,
        water_percent: water(&damp, &cloth.fabric) * 100.0,
        left_percent: water(&dry(damp, &cloth.fabric), &cloth.fabric) * 100.0,
    })
}

/// What the fresh print looks like.
fn appearance(look: &FilmOpacity) -> Appearance {
    Appearance {
        lab: look.colour,
        contrast_ratio: look.contrast_ratio,
        garment_shows: look.garment_shows,
        whiteness: look.colour.whiteness(),
    }
}
