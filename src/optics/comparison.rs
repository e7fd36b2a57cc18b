//! Two colours compared in every figure that is in use.

use super::{Grade, Lab, Whiteness, change_grade, cie76, ciede2000, cmc, staining_grade};
use serde::{Deserialize, Serialize};

/// The comparison of two colours, in every figure that a printer, a dyehouse or a customer may ask for.
///
/// A white is judged by `de00`. The grades are shown beside it because customers write them into orders.
/// They are lenient on a tinted white (a pink bleed of ΔE00 2.2 is still a staining grade 5), and a blue
/// bleed may even raise W.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Comparison {
    /// ΔE00, CIEDE2000.
    pub de00: f64,
    /// ΔE*ab.
    pub de_ab: f64,
    /// ΔE of CMC(2:1), seen from the clean colour.
    pub de_cmc: f64,
    /// Staining, ISO 105-A04.
    pub staining: Grade,
    /// Change in colour, ISO 105-A05.
    pub change: Grade,
    /// Whiteness of the clean colour and of the other one.
    pub whiteness: [Whiteness; 2],
}

impl Comparison {
    /// Compares a colour with an earlier one: `clean` is the fresh or unstained colour.
    #[must_use]
    pub fn of(clean: Lab, other: Lab) -> Self {
        Self {
            de00: ciede2000(clean, other),
            de_ab: cie76(clean, other),
            de_cmc: cmc(clean, other, 2.0, 1.0),
            staining: staining_grade(clean, other),
            change: change_grade(clean, other),
            whiteness: [clean.whiteness(), other.whiteness()],
        }
    }
}
