//! What is seen and felt at the press: cover, hand, nap, finish, and how the white looks.
//!
//! None of it makes the verdict: it shows on the first piece, where a press lead can still change a mesh or a stroke.

use super::candidate::{Candidate, most_shown};
use super::explain::of;
use super::gloss::{gloss_margin, of_finish};
use super::judge::{Judged, margin};
use super::{Cloth, Code, Job, Look, Margin, Reason, Side, Topic};
use crate::ink::FilmOpacity;
use crate::quantity::Band;

/// What the fresh print of a way looks like.
pub(super) fn look(judged: &Judged<'_>) -> Look {
    let seen = &judged.look;
    Look {
        lab: seen.colour,
        contrast_ratio: seen.contrast_ratio,
        garment_shows: seen.garment_shows,
        whiteness: seen.colour.whiteness(),
    }
}

/// What is seen at the press, over films as thin and as thick as this shop's wander.
pub(super) fn press_margins(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    look: &FilmOpacity,
) -> Vec<Margin> {
    let most = most_shown(job.order.print.opacity);
    let wander = job.dryer.drift.film;
    let (thin, thick) = (1.0 - wander, 1.0 + wander);
    let spread = |likely: f64| Band { low: likely * thin, likely, high: likely * thick };
    let [least, worst] = [thick, thin].map(|times| way.shows(job, cloth, times));
    // A tee's print feels like a board from about twice a usual one on; common practice, no source.
    let hand = spread(way.total_film() / 100e-6 * way.white.stiffness);
    let (needed, held) = way.matting(job, cloth);
    let shows = Band::around(look.garment_shows, &[least, worst]);
    let seen = [
        margin(Topic::Opacity, shows, most, Side::AtMost, "ΔE00"),
        margin(Topic::Hand, hand, 2.2, Side::AtMost, ""),
        margin(Topic::Matting, spread(held * 1e6), needed * 1e6, Side::AtLeast, "µm"),
    ];
    seen.into_iter().chain(gloss_margin(job, cloth, way)).collect()
}

/// How the white looks on this cloth, and what another stroke or mesh would change.
pub(super) fn looks(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> Vec<(f64, Reason)> {
    let way = &judged.way;
    let mut ranked = Vec::new();
    if let Some(cover) = of(judged, Topic::Opacity) {
        let short = !cover.holds_likely();
        let reason = Reason::new(if short { Code::CoversShort } else { Code::Covers })
            .number("contrast", judged.look.contrast_ratio)
            .number("shows", judged.look.garment_shows)
            .number("limit", cover.limit)
            .number("film", way.film * 1e6);
        ranked.push((if short { 65.0 } else { 20.0 }, reason));
        // Where a thin film would not cover, what a press can do about it.
        if !cover.holds() {
            let rank = if short { 64.5 } else { 19.5 };
            let other = |code: Code, way: &Candidate<'_>| {
                Reason::new(code)
                    .number("film", way.film * 1e6)
                    .number("shows", way.shows(job, cloth, 1.0))
                    .number("strokes", f64::from(way.strokes))
                    .number("threads", way.mesh.threads_per_m / 100.0)
            };
            let more = way.with_one_stroke_more(job, cloth);
            ranked.push((rank, other(Code::OneStrokeMore, &more)));
            let coarser = way.through_coarser_mesh(job, cloth);
            ranked.extend(coarser.map(|coarser| (rank - 0.1, other(Code::CoarserMesh, &coarser))));
        }
    }
    // A step of one unit of CIELAB is what a trained eye finds beside the full white.
    if way.base.is_some() && judged.look.dull() > 1.0 {
        ranked.push((48.0, Reason::new(Code::LooksDull).number("darker", judged.look.dull())));
    } else if judged.look.bluish() > 1.0 {
        let reason = Reason::new(Code::LooksBluish)
            .number("bluer", judged.look.bluish())
            .number("film", way.film * 1e6);
        ranked.push((47.0, reason));
    }
    if way.smoothing && way.wants_smoothing(job, cloth) {
        ranked.push((46.0, Reason::new(Code::SmoothingHelps).number("nap", cloth.fabric.nap * 1e6)));
    } else if !way.smoothing && of(judged, Topic::Matting).is_some_and(|nap| !nap.holds_likely()) {
        let reason =
            Reason::new(Code::NapShows).number("nap", cloth.fabric.nap * 1e6).number("film", way.film * 1e6);
        ranked.push((45.0, reason));
    }
    ranked.extend(of_finish(job, cloth, judged));
    ranked
}
