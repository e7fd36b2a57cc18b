//! Whether a print has the finish that was asked for.
//!
//! How it shines is seen on the first piece, so it never makes the verdict; where an order asks for a finish it moves what
//! a way is worth. Where none is asked for, nothing is judged. Under colours it is the white's surface all the same: they
//! repeat it.

use super::candidate::Candidate;
use super::explain::of;
use super::judge::{Judged, margin};
use super::{Cloth, Code, Job, Margin, Reason, Side, Topic};
use crate::ink::surface_slope;
use crate::optics::{PVC_INDEX, WHITE_SCATTERS, gloss_units};
use crate::quantity::Band;
use serde::{Deserialize, Serialize};

/// How the print shall shine.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sheen {
    /// As it comes.
    #[default]
    Any,
    /// Dull.
    Matt,
    /// Shiny.
    Gloss,
}

/// Gloss up to which a paint is called flat and from which semi-gloss, GU at 60°: levels 2 and 5 of the Master Painters
/// Institute (its table read). Paints called gloss read 70 and more there, which no film with a grain of its own reaches.
const MATT: f64 = 10.0;
const GLOSS: f64 = 35.0;
/// How far a real slope may lie from the computed one, as a factor either way (1.2 to 2). Assumed.
const DOUBT: f64 = 1.3;

impl Sheen {
    // Serde hands the field by reference.
    #[allow(clippy::trivially_copy_pass_by_ref)]
    pub(super) fn is_any(&self) -> bool {
        *self == Self::Any
    }

    /// The limit that it sets and the side to keep, GU; none where any will do.
    fn limit(self) -> Option<(f64, Side)> {
        match self {
            Self::Any => None,
            Self::Matt => Some((MATT, Side::AtMost)),
            Self::Gloss => Some((GLOSS, Side::AtLeast)),
        }
    }
}

/// Gloss of a way at 60°, GU, with films and slopes so many times the planned ones.
fn gloss(way: &Candidate<'_>, nap: f64, films: f64, slopes: f64) -> f64 {
    let on_flashed = way.strokes.saturating_sub(1) + u32::from(way.base.is_some());
    let slope = slopes * surface_slope(nap, films * way.total_film(), on_flashed);
    gloss_units(PVC_INDEX, slope, WHITE_SCATTERS)
}

/// By what share of its limit a way misses the finish asked for, 0 to 1; 0 where none is asked for.
pub(super) fn finish_missed(job: &Job, cloth: &Cloth, way: &Candidate<'_>) -> f64 {
    let Some((limit, side)) = job.order.print.finish.limit() else { return 0.0 };
    let over = gloss(way, way.nap(cloth), 1.0, 1.0) / limit - 1.0;
    let missed = if side == Side::AtMost { over } else { -over };
    missed.clamp(0.0, 1.0)
}

/// The margin of the finish asked for, over films as thin and as thick as this shop's wander.
pub(super) fn gloss_margin(job: &Job, cloth: &Cloth, way: &Candidate<'_>) -> Option<Margin> {
    let (limit, side) = job.order.print.finish.limit()?;
    let (nap, wander) = (way.nap(cloth), job.dryer.drift.film);
    let value = Band {
        low: gloss(way, nap, 1.0 - wander, DOUBT),
        likely: gloss(way, nap, 1.0, 1.0),
        high: gloss(way, nap, 1.0 + wander, 1.0 / DOUBT),
    };
    // Slopes that are assumed give no tenths of a unit.
    Some(margin(Topic::Gloss, value.map(f64::round), limit, side, "GU"))
}

/// What is said of the finish asked for, with its rank among the reasons.
pub(super) fn of_finish(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> Vec<(f64, Reason)> {
    let (Some(gloss_is), way) = (of(judged, Topic::Gloss), &judged.way) else { return Vec::new() };
    let (likely, limit) = (gloss_is.value.likely, gloss_is.limit);
    let reason = |code: Code| Reason::new(code).number("gloss", likely).number("limit", limit);
    let mut said = vec![match (gloss_is.holds_likely(), gloss_is.needed) {
        (true, _) => (41.0, reason(Code::FinishHolds)),
        (false, Side::AtLeast) => (64.8, reason(Code::GlossShort)),
        (false, Side::AtMost) => (64.8, reason(Code::MattShort)),
    }];
    // A screen that is run for its shine and not for the nap.
    if way.smoothing && gloss_is.needed == Side::AtLeast && !way.wants_smoothing(job, cloth) {
        let without = gloss(way, cloth.fabric.nap, 1.0, 1.0);
        said.push((46.0, Reason::new(Code::SmoothingShines).number("gloss", without)));
    }
    said
}

/// What a press does to the finish asked for, where something hot comes after the print.
pub(super) fn pressed_later(job: &Job) -> Option<Reason> {
    let print = &job.order.print;
    let hottest = print.heat_after.iter().map(|event| event.temp_c).reduce(f64::max)?;
    (!print.finish.is_any()).then(|| Reason::new(Code::PressIrons).number("temp", hottest))
}
