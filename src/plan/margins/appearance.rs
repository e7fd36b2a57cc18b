//! What is seen and felt at the press: cover, hand, nap, gloss.
//!
//! None of it makes the verdict: it shows on the first piece, where a press lead can still change a mesh or a
//! stroke.

use super::gloss::gloss_margin;
use crate::ink::FilmOpacity;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, most_shown};
use crate::plan::report::{Margin, Side, Topic, Unit, margin};
use crate::quantity::Band;

/// Margins of what is seen at the press, over the films of this shop from thin to thick.
pub fn press_margins(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>, look: &FilmOpacity) -> Vec<Margin> {
    let most = most_shown(job.order.print.opacity);
    let wander = job.dryer.drift.film;
    let (thin, thick) = (1.0 - wander, 1.0 + wander);
    let spread = |likely: f64| Band { low: likely * thin, likely, high: likely * thick };
    let [least, worst] = [thick, thin].map(|times| candidate.shows(job, cloth, times));
    // A print on a T-shirt feels like a board from about twice a usual hand on; common practice, no source.
    let hand = spread(candidate.total_film() / 100e-6 * candidate.white.stiffness);
    let (needed, held) = candidate.matting(job, cloth);
    let shows = Band::around(look.garment_shows, &[least, worst]);
    let seen = [
        margin(Topic::Opacity, shows, most, Side::AtMost, Unit::ColourDifference),
        margin(Topic::Hand, hand, 2.2, Side::AtMost, Unit::One),
        margin(Topic::Matting, spread(held * 1e6), needed * 1e6, Side::AtLeast, Unit::Micrometres),
    ];
    seen.into_iter().chain(gloss_margin(job, cloth, candidate)).collect()
}
