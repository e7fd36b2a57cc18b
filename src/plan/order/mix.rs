//! Whites with stretch white stirred in, as printers mix them at the press.

use crate::ink::{White, WhiteClass};
use crate::plan::report::Mixture;

/// A white of the shelf with stretch white stirred in.
#[derive(Clone, Debug, PartialEq)]
pub struct Mix {
    /// The mixture, under an id and a name of its own.
    pub white: White,
    /// Id of the base white.
    pub of: String,
    /// The stretch white, by id, and its share.
    pub mixture: Mixture,
    /// Name of the stretch white.
    pub stretch_name: String,
}

/// Shares of stretch white that are considered, %. With more than half, the stretch white itself is the white
/// to print: common practice, no source.
const SHARES: [u32; 3] = [15, 30, 50];

/// The mixtures of a shelf: each white with each stretch white, at 15, 30 and 50 %. Only whites with the same
/// fusion kinetics are mixed; a bucket of ordinary and low-cure white would fuse like neither.
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
