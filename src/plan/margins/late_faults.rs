//! Late faults that do not depend on the heat: ghosting, cracks, film that comes off or fails in the wash.
//!
//! There are no equations for these. They are frequencies of classes from common practice, without a source,
//! and labelled so; together with bleeding they make the chance of a late fault.

use super::ghosting::{frequency, ghosting};
use crate::numerics::normal;
use crate::plan::order::{Cloth, Job, UseKind};
use crate::plan::recipe::{Candidate, comes_off};
use crate::plan::report::{Margin, Side, Topic, Unit, margin};
use crate::quantity::Band;

/// Share of fully fused prints on workwear that crack or lift within ninety days of wash, hotter and rougher than at home.
/// 0.01 to 0.2; common practice, no source: four blind estimates give .34 for fifty washes in an industrial tunnel, three blind
/// leads run workwear of cotton without a check (at most .05 with all else), so most of it is not washed so.
const WORKWEAR_WASH: f64 = 0.025;

/// Chances of the late faults that do not depend on the heat, 0 to 1 each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LateFaults {
    /// That it ghosts.
    pub ghosts: f64,
    /// That it comes off.
    pub comes_off: f64,
    /// That it cracks.
    pub cracks: f64,
    /// That it fails in the wash.
    pub washes_off: f64,
}

impl LateFaults {
    /// The chances for a candidate on its cloth.
    pub fn of(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Self {
        Self {
            ghosts: ghosting(job, cloth, candidate.white).frequency,
            comes_off: comes_off(cloth, candidate.white, candidate.additive),
            cracks: cracks(job, cloth, candidate),
            washes_off: if job.order.use_.kind == UseKind::Workwear { WORKWEAR_WASH } else { 0.0 },
        }
    }

    /// Chance of any of these.
    pub fn any(&self) -> f64 {
        let Self { ghosts, comes_off, cracks, washes_off } = *self;
        1.0 - [ghosts, comes_off, cracks, washes_off].into_iter().map(|chance| 1.0 - chance).product::<f64>()
    }

    /// The margins of ghosting, adhesion and wash, where they bear on the print.
    pub fn margins(&self, job: &Job) -> impl Iterator<Item = Margin> {
        let ghosting = (self.ghosts > 0.002).then(|| frequency(job, Topic::Ghosting, self.ghosts));
        let adhesion = (self.comes_off > 0.0).then(|| frequency(job, Topic::Adhesion, self.comes_off));
        let wash = (self.washes_off > 0.0).then(|| frequency(job, Topic::Wash, self.washes_off));
        [ghosting, adhesion, wash].into_iter().flatten()
    }
}

/// Stretch that the print must take, as a fraction.
fn stretch_needed(job: &Job, cloth: &Cloth) -> f64 {
    let asked = job.order.print.stretch_needed_percent.max(cloth.garment.stretch_percent) / 100.0;
    // A worn print sees about two thirds of what the cloth can give.
    asked.max(cloth.fabric.stretch * 0.65).max(0.05)
}

/// Spread between films and wearers of the stretch at which a film cracks, ln units. 0.25 to 0.5; chosen with the whites'
/// stretch so that a polyester white where half is asked cracks as often as four blind estimates say (.19 to .59).
const STRETCH_SPREAD: f64 = 0.4;

/// Chance that the film cracks in wear.
fn cracks(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> f64 {
    normal::cumulative((stretch_needed(job, cloth) / candidate.white.stretch).ln() / STRETCH_SPREAD)
}

/// The margin of the stretch that the print must take, %.
pub fn stretch_margin(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Margin {
    let stretch = candidate.white.stretch;
    let value =
        Band { low: stretch * 0.75, likely: stretch, high: stretch * 1.33 }.map(|share| share * 100.0);
    margin(Topic::Stretch, value, stretch_needed(job, cloth) * 100.0, Side::AtLeast, Unit::Percent)
}
