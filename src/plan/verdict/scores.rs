//! A candidate's values on the scales of a trade-off.

use super::assessment::Assessment;
use super::cost::{cost_per_print, rate_per_hour};
use crate::plan::margins::finish_missed;
use crate::plan::order::{Cloth, Job};
use crate::plan::report::RecipeScores;

/// The scores of an assessed candidate.
pub fn scores(job: &Job, cloth: &Cloth, assessment: &Assessment<'_>) -> RecipeScores {
    let candidate = &assessment.candidate;
    let (needed, held) = candidate.matting(job, cloth);
    RecipeScores {
        recipe: candidate.recipe(job),
        white: candidate.white.id.clone(),
        name: candidate.white.name.clone(),
        blocker: candidate.blocker.map(|blocker| blocker.name.clone()),
        strokes: candidate.strokes,
        threads_per_cm: candidate.mesh.threads_per_m / 100.0,
        smoothing: candidate.smoothing,
        additive: candidate.additive,
        dried: candidate.dried,
        verdict: assessment.verdict,
        late: assessment.fail_later.likely,
        cost: cost_per_print(job, assessment),
        pace: rate_per_hour(job, assessment),
        hand: candidate.total_film() / 100e-6 * candidate.white.stiffness,
        cover: assessment.look.garment_shows,
        nap: (1.0 - held / needed.max(1e-9)).max(0.0),
        finish: finish_missed(job, cloth, candidate),
        front: false,
        pick: None,
    }
}
