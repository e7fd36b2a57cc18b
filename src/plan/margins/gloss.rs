//! Whether a print has the finish that was asked for.
//!
//! Gloss is seen on the first piece, so it never makes the verdict; where an order asks for a finish, it
//! changes how candidates are ranked. Where none is asked for, there is no margin. Under colours the white's
//! surface still counts: they follow it.

use crate::ink::surface_slope;
use crate::optics::{PVC_INDEX, WHITE_SCATTERS, gloss_units};
use crate::plan::order::{Cloth, Job, Sheen};
use crate::plan::recipe::Candidate;
use crate::plan::report::{Margin, Side, Topic, Unit, margin};
use crate::quantity::Band;

/// Highest gloss of a paint called flat and lowest of one called semi-gloss, GU at 60°: levels 2 and 5 of the
/// Master Painters Institute (its table read). Paints called gloss read 70 and more there, which no film with
/// a grain of its own reaches.
const MATT: f64 = 10.0;
const GLOSS: f64 = 35.0;
/// Factor by which a real slope may differ from the computed one, either way (1.2 to 2). Assumed.
const DOUBT: f64 = 1.3;

/// The limit that a finish sets and the side to keep, GU at 60°; `None` if any finish will do.
fn limit_of(finish: Sheen) -> Option<(f64, Side)> {
    match finish {
        Sheen::Any => None,
        Sheen::Matt => Some((MATT, Side::AtMost)),
        Sheen::Gloss => Some((GLOSS, Side::AtLeast)),
    }
}

/// Gloss of a candidate at 60°, GU, over a nap of this height (m); `films` and `slopes` scale the planned
/// film and slope.
pub fn gloss(candidate: &Candidate<'_>, nap: f64, films: f64, slopes: f64) -> f64 {
    let on_flashed = candidate.strokes.saturating_sub(1) + u32::from(candidate.blocker.is_some());
    let slope = slopes * surface_slope(nap, films * candidate.total_film(), on_flashed);
    gloss_units(PVC_INDEX, slope, WHITE_SCATTERS)
}

/// By what share of its limit a candidate misses the finish asked for, 0 to 1; 0 if none is asked for.
pub fn finish_missed(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> f64 {
    let Some((limit, side)) = limit_of(job.order.print.finish) else { return 0.0 };
    let over = gloss(candidate, candidate.nap(cloth), 1.0, 1.0) / limit - 1.0;
    let missed = if side == Side::AtMost { over } else { -over };
    missed.clamp(0.0, 1.0)
}

/// The margin of the finish asked for, over the films of this shop from thin to thick.
pub fn gloss_margin(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Option<Margin> {
    let (limit, side) = limit_of(job.order.print.finish)?;
    let (nap, wander) = (candidate.nap(cloth), job.dryer.drift.film);
    let value = Band {
        low: gloss(candidate, nap, 1.0 - wander, DOUBT),
        likely: gloss(candidate, nap, 1.0, 1.0),
        high: gloss(candidate, nap, 1.0 + wander, 1.0 / DOUBT),
    };
    // Round to whole gloss units; assumed slopes do not justify decimals.
    Some(margin(Topic::Gloss, value.map(f64::round), limit, side, Unit::Gloss))
}
