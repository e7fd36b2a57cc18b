//! Which inks of a print must fuse, and why a window is closed.

use crate::ink::{CureKinetics, White};
use crate::plan::order::{Cloth, CureKind, Job, kinetics};
use crate::plan::report::{Code, Reason, Side, word};
use crate::quantity::units::celsius;

/// Which of the two kinetics (ordinary, low-cure) must fuse: all inks share one heat, and the one that needs
/// most sets it.
#[must_use]
pub fn must_fuse(job: &Job, low_cure: bool) -> [bool; 2] {
    let colours = &job.order.print.colours_on_top;
    let ordinary_on_top = colours.count > 0 && colours.cure == CureKind::Ordinary;
    [!low_cure || ordinary_on_top, low_cure]
}

/// Kinetics of the ink that is hardest to fuse among those that share the heat of a white's print.
pub fn hardest(job: &Job, white: &White, must_fuse: [bool; 2]) -> CureKinetics {
    kinetics(job, white)[usize::from(!must_fuse[0])]
}

/// The reason why a window is closed. `side` says which demand no setting keeps; `peak_needed` is the
/// temperature that the film's bottom must reach, K.
pub fn closed(cloth: &Cloth, side: Side, peak_needed: f64) -> Reason {
    if let Some((fibre, limit)) = cloth.melts
        && limit < peak_needed + 8.0
    {
        return Reason::new(Code::MeltsInCure).word("fibre", word(fibre)).number("limit", celsius(limit));
    }
    Reason::new(Code::WindowClosed).word("side", word(side)).number("peak", celsius(peak_needed))
}
