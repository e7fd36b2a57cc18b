//! The usual way to print a cloth, and what a press lead would give to stay with it.
//!
//! Where several ways hold, the trade prints the plain white of the cloth's own kind first: cotton white on what has no dye to
//! give, low-bleed white on blends, polyester white on dyed polyester, nylon white on nylon, stretch white where half and more
//! is asked. A way that needs a screen, a tub or a mixture more is left for an order that cannot do without: it is worth it
//! where it changes the verdict, where it is asked for, or where it saves a few percent of the whole cost.
//!
//! So each such step counts like a chance that the order fails, in lots of a hundred.

use crate::ink::WhiteClass;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::Candidate;
use crate::textile::Fibre;

/// A blocker under the white: a screen, a flash and a station more. 0.02 to 0.08; common practice, no source: in forty blind
/// orders the plain white comes first wherever its chance is within about four in a hundred of the blocked one's.
const BLOCKER: f64 = 0.04;
/// Stretch white stirred in where no stretch is asked for: a pot that is weighed, and that no other order uses. 0.01 to 0.05;
/// common practice, no source.
const MIXTURE: f64 = 0.03;
/// Adhesion additive: a pot that lives for hours. 0.005 to 0.02; common practice, no source: on nylon it is taken as a matter of
/// course.
const ADDITIVE: f64 = 0.01;
/// A white of another kind than the cloth's own. 0.003 to 0.02; common practice, no source: with a piece worth 9 it is a few
/// percent of a print's cost.
const OTHER_KIND: f64 = 0.006;

/// Stretch asked of the print from which a stretch white is the cloth's own kind, %. Common practice, no source.
const STRETCHY: f64 = 40.0;
/// Share of nylon from which a nylon white is. Common practice, no source.
const NYLON: f64 = 0.5;
/// Share of polyester from which a dyed cloth is printed as polyester. Common practice, no source.
const POLYESTER: f64 = 0.85;

/// Stretch that the order asks of the print, %.
fn stretch_asked(job: &Job, cloth: &Cloth) -> f64 {
    job.order.print.stretch_needed_percent.max(cloth.garment.stretch_percent)
}

/// The kind of white that is usual on this cloth.
#[must_use]
pub fn own_kind(job: &Job, cloth: &Cloth) -> WhiteClass {
    if stretch_asked(job, cloth) >= STRETCHY {
        WhiteClass::Stretch
    } else if cloth.share(Fibre::Nylon) >= NYLON {
        WhiteClass::Nylon
    } else if cloth.dyed.is_none() {
        WhiteClass::Cotton
    } else if cloth.share(Fibre::Polyester) >= POLYESTER {
        WhiteClass::Polyester
    } else {
        WhiteClass::LowBleed
    }
}

/// How far a way lies from the usual one, as a chance that the order fails.
#[must_use]
pub fn unusual(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> f64 {
    let mixed = job.mixes.iter().any(|mix| mix.white.id == candidate.white.id);
    let steps = [
        (candidate.blocker.is_some(), BLOCKER),
        (mixed && stretch_asked(job, cloth) <= 0.0, MIXTURE),
        (candidate.additive, ADDITIVE),
        (candidate.white.class != own_kind(job, cloth), OTHER_KIND),
    ];
    steps.into_iter().filter_map(|(taken, worth)| taken.then_some(worth)).sum()
}
