//! Whites with stretch white stirred in, as a press stirs them.

use crate::ink::{White, WhiteClass};
use crate::plan::report::Mixture;

/// A white on the shelf with another in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mix {
    /// The mixture, under an id and a name of its own.
    pub white: White,
    /// Id of the white it is made of.
    pub of: String,
    /// What is stirred in, by id.
    pub mixture: Mixture,
    /// Name of what is stirred in.
    pub stretch_name: String,
}

/// Shares of stretch white that are tried, %. More than half, and it is the stretch white that is printed: common practice,
/// no source.
const SHARES: [u32; 3] = [15, 30, 50];

/// The mixtures of a shelf: each white with the stretch white in steps. Only whites of one heat are stirred together: a
/// bucket of both would fuse as neither.
#[must_use]
pub fn mixes(whites: &[White]) -> Vec<Mix> {
    let mut mixes = Vec::new();
    for stretch in whites.iter().filter(|white| white.class == WhiteClass::Stretch) {
        for white in whites.iter().filter(|white| white.class != WhiteClass::Stretch) {
            if white.low_cure != stretch.low_cure || white.kinetics != stretch.kinetics {
                continue;
            }
            mixes.extend(SHARES.map(|percent| {
                let mixture = Mixture { stretch: stretch.id.clone(), percent };
                let id = mixture.ink_id(&white.id);
                Mix {
                    white: White { id, ..white.with(stretch, f64::from(percent) / 100.0) },
                    of: white.id.clone(),
                    mixture,
                    stretch_name: stretch.name.clone(),
                }
            }));
        }
    }
    mixes
}
