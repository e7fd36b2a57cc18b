//! What is said of how a print looks and feels at the press.

use crate::plan::margins::gloss;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::Candidate;
use crate::plan::report::{Code, Reason, Side, Topic};
use crate::plan::verdict::Judgement;

/// How the white looks on this cloth, and what another stroke or mesh would change.
pub fn seen_reasons(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Vec<(f64, Reason)> {
    let candidate = &judgement.assessment.candidate;
    let mut ranked = Vec::new();
    if let Some(cover) = judgement.margins.on(Topic::Opacity) {
        let short = !cover.holds_likely();
        let reason = Reason::new(if short { Code::CoversShort } else { Code::Covers })
            .number("contrast", judgement.assessment.look.contrast_ratio)
            .number("shows", judgement.assessment.look.garment_shows)
            .number("limit", cover.limit)
            .number("film", candidate.film * 1e6);
        ranked.push((if short { 65.0 } else { 20.0 }, reason));
        // Where a thin film would not cover, what a press can do about it.
        if !cover.holds() {
            let rank = if short { 64.5 } else { 19.5 };
            let other = |code: Code, candidate: &Candidate<'_>| {
                Reason::new(code)
                    .number("film", candidate.film * 1e6)
                    .number("shows", candidate.shows(job, cloth, 1.0))
                    .number("strokes", f64::from(candidate.strokes))
                    .number("threads", candidate.mesh.threads_per_m / 100.0)
            };
            let more = candidate.with_one_stroke_more(job, cloth);
            ranked.push((rank, other(Code::OneStrokeMore, &more)));
            let coarser = candidate.through_coarser_mesh(job, cloth);
            ranked.extend(coarser.map(|coarser| (rank - 0.1, other(Code::CoarserMesh, &coarser))));
        }
    }
    // A step of one unit of CIELAB is what a trained eye finds beside the full white.
    if candidate.blocker.is_some() && judgement.assessment.look.dull() > 1.0 {
        ranked.push((48.0, Reason::new(Code::LooksDull).number("darker", judgement.assessment.look.dull())));
    } else if judgement.assessment.look.bluish() > 1.0 {
        let reason = Reason::new(Code::LooksBluish)
            .number("bluer", judgement.assessment.look.bluish())
            .number("film", candidate.film * 1e6);
        ranked.push((47.0, reason));
    }
    if candidate.smoothing && candidate.wants_smoothing(job, cloth) {
        ranked.push((46.0, Reason::new(Code::SmoothingHelps).number("nap", cloth.fabric.nap * 1e6)));
    } else if !candidate.smoothing
        && judgement.margins.on(Topic::Matting).is_some_and(|nap| !nap.holds_likely())
    {
        let reason = Reason::new(Code::NapShows)
            .number("nap", cloth.fabric.nap * 1e6)
            .number("film", candidate.film * 1e6);
        ranked.push((45.0, reason));
    }
    ranked.extend(finish_reasons(job, cloth, judgement));
    ranked
}

/// What is said of the finish asked for, with its rank among the reasons.
fn finish_reasons(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Vec<(f64, Reason)> {
    let (Some(gloss_is), candidate) = (judgement.margins.on(Topic::Gloss), &judgement.assessment.candidate)
    else {
        return Vec::new();
    };
    let (likely, limit) = (gloss_is.value.likely, gloss_is.limit);
    let reason = |code: Code| Reason::new(code).number("gloss", likely).number("limit", limit);
    let mut said = vec![match (gloss_is.holds_likely(), gloss_is.needed) {
        (true, _) => (41.0, reason(Code::FinishHolds)),
        (false, Side::AtLeast) => (64.8, reason(Code::GlossShort)),
        (false, Side::AtMost) => (64.8, reason(Code::MattShort)),
    }];
    // A screen that is run for its shine and not for the nap.
    if candidate.smoothing && gloss_is.needed == Side::AtLeast && !candidate.wants_smoothing(job, cloth) {
        let without = gloss(candidate, cloth.fabric.nap, 1.0, 1.0);
        said.push((46.0, Reason::new(Code::SmoothingShines).number("gloss", without)));
    }
    said
}

/// What a press does to the finish asked for, where something hot comes after the print.
pub fn pressed_later(job: &Job) -> Option<Reason> {
    let print = &job.order.print;
    let hottest = print.heat_after.iter().map(|event| event.temp_c).reduce(f64::max)?;
    (!print.finish.is_any()).then(|| Reason::new(Code::PressIrons).number("temp", hottest))
}
