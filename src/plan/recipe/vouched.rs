//! Whether a way of printing is among those of which the trade says how often they turn.
//!
//! The chances are fitted to the rows of `data/anchors.json`. They have the plain whites on blends and polyester, low-bleed,
//! polyester and ordinary cotton white over a blocker, and a polyester white with stretch white in it. What lies further off
//! is computed by the same equations, but no row holds it: it is a check at best until a print of the lot was followed.

use super::candidate::Candidate;
use crate::ink::WhiteClass;
use crate::plan::order::{Cloth, Job};

/// True for a way on undyed cloth, and for one of which there is a row.
#[must_use]
pub fn is_vouched(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> bool {
    if cloth.dyed.is_none() {
        return true;
    }
    let white = candidate.white;
    let mixed = job.mixes.iter().any(|mix| mix.white.id == white.id);
    let over_blocker = match white.class {
        WhiteClass::LowBleed | WhiteClass::Polyester => true,
        WhiteClass::Cotton => !white.low_cure,
        _ => false,
    };
    (!mixed || white.class == WhiteClass::Polyester) && (candidate.blocker.is_none() || over_blocker)
}
