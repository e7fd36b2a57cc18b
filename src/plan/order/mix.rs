//! Whites with stretch white stirred in, as a press stirs them.

use crate::ink::{White, WhiteClass};

/// A white on the shelf with another in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mix {
    /// The mixture, under an id and a name of its own.
    pub white: White,
    /// Id of the white it is made of.
    pub of: String,
    /// What is stirred in, by name, and its share of the mass, %.
    pub part: (String, f64),
}

/// Shares of stretch white that are tried, %. More than half, and it is the stretch white that is printed: common practice,
/// no source.
const SHARES: [f64; 3] = [15.0, 30.0, 50.0];

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
            mixes.extend(SHARES.map(|percent| Mix {
                white: White {
                    id: format!("{}+{}-{percent:.0}", white.id, stretch.id),
                    ..white.with(stretch, percent / 100.0)
                },
                of: white.id.clone(),
                part: (stretch.name.clone(), percent),
            }));
        }
    }
    mixes
}
