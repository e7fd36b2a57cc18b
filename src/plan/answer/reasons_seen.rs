//! What is said of how a print looks and feels at the press.

use super::reason_rank::RankedReasons;
use crate::plan::margins::gloss;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::Candidate;
use crate::plan::report::{Code, Reason, Side, Topic};
use crate::plan::verdict::Judgement;

/// How the white looks on this cloth, and what another stroke or mesh would change.
pub fn add_seen(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>, reasons: &mut RankedReasons) {
    let candidate = &judgement.assessment.candidate;
    if let Some(cover) = judgement.margins.on(Topic::Opacity) {
        let short = !cover.holds_likely();
        let reason = Reason::new(if short { Code::CoversShort } else { Code::Covers })
            .number("contrast", judgement.assessment.look.contrast_ratio)
            .number("shows", judgement.assessment.look.garment_shows)
            .number("limit", cover.limit)
            .number("film", candidate.film * 1e6);
        reasons.add(reason);
        // Where a thin film would not cover, what a press can do about it.
        if !cover.holds() {
            let other = |code: Code, candidate: &Candidate<'_>| {
                Reason::new(code)
                    .number("film", candidate.film * 1e6)
                    .number("shows", candidate.shows(job, cloth, 1.0))
                    .number("strokes", f64::from(candidate.strokes))
                    .number("threads", candidate.mesh.threads_per_m / 100.0)
            };
            let more = candidate.with_one_stroke_more(job, cloth);
            reasons.add_pressing(other(Code::OneStrokeMore, &more), short);
            if let Some(coarser) = candidate.through_coarser_mesh(job, cloth) {
                reasons.add_pressing(other(Code::CoarserMesh, &coarser), short);
            }
        }
    }
    // A step of one unit of CIELAB is what a trained eye finds beside the full white.
    if candidate.blocker.is_some() && judgement.assessment.look.dull() > 1.0 {
        reasons.add(Reason::new(Code::LooksDull).number("darker", judgement.assessment.look.dull()));
    } else if judgement.assessment.look.bluish() > 1.0 {
        let reason = Reason::new(Code::LooksBluish)
            .number("bluer", judgement.assessment.look.bluish())
            .number("film", candidate.film * 1e6);
        reasons.add(reason);
    }
    if candidate.smoothing && candidate.wants_smoothing(job, cloth) {
        reasons.add(Reason::new(Code::SmoothingHelps).number("nap", cloth.fabric.nap * 1e6));
    } else if !candidate.smoothing
        && judgement.margins.on(Topic::Matting).is_some_and(|nap| !nap.holds_likely())
    {
        let reason = Reason::new(Code::NapShows)
            .number("nap", cloth.fabric.nap * 1e6)
            .number("film", candidate.film * 1e6);
        reasons.add(reason);
    }
    add_finish(job, cloth, judgement, reasons);
}

/// What is said of the finish asked for.
fn add_finish(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>, reasons: &mut RankedReasons) {
    let candidate = &judgement.assessment.candidate;
    let Some(margin) = judgement.margins.on(Topic::Gloss) else { return };
    let code = match (margin.holds_likely(), margin.needed) {
        (true, _) => Code::FinishHolds,
        (false, Side::AtLeast) => Code::GlossShort,
        (false, Side::AtMost) => Code::MattShort,
    };
    reasons.add(Reason::new(code).number("gloss", margin.value.likely).number("limit", margin.limit));
    // A screen that is run for its shine and not for the nap.
    if candidate.smoothing && margin.needed == Side::AtLeast && !candidate.wants_smoothing(job, cloth) {
        let without = gloss(candidate, cloth.fabric.nap, 1.0, 1.0);
        reasons.add(Reason::new(Code::SmoothingShines).number("gloss", without));
    }
}

/// What a press does to the finish asked for, where something hot comes after the print.
pub fn pressed_later(job: &Job) -> Option<Reason> {
    let print = &job.order.print;
    let hottest = print.heat_after.iter().map(|event| event.temp_c).reduce(f64::max)?;
    (!print.finish.is_any()).then(|| Reason::new(Code::PressIrons).number("temp", hottest))
}
