//! Whiteness, tint and yellowness of a nearly white surface.
//!
//! ```text
//! W  = Y + 800 (xn − x) + 1700 (yn − y)
//! Tw = 900 (xn − x) − 650 (yn − y)              10° observer (1000 instead of 900 for 2°); + greenish, − reddish
//! YI = 100 (Cx X − Cz Z)/Y                      yellowness
//! holds where 40 < W < 5Y − 280 and −4 < Tw < 2
//! ```
//!
//! Source: CIE 15:2004 for W, Tw and their limits (as quoted in public copies; ISO 105-J02 uses D65/10°,
//! from memory); ASTM E313-15e1 for YI, constants through colour-science 0.4.7.
//!
//! Whiteness and tint compare samples measured on one instrument at nearly the same time; they are
//! relative, not absolute. A blue bleed makes a white darker and *raises* W: never accept a white by W
//! alone, judge it by [`ciede2000`](super::ciede2000).
use super::{Lab, Xyz};
use serde::{Deserialize, Serialize};

/// Light and observer for which a whiteness is stated, with the constants of the formulas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Viewing {
    /// Chromaticity of the perfect white, x and y, as the standard prints it.
    pub white: [f64; 2],
    /// Weight of x in the tint: 900 for the 10° observer, 1000 for 2°.
    pub tint: f64,
    /// Cx and Cz of the yellowness.
    pub yellowness: [f64; 2],
}

impl Viewing {
    /// D65, 10°: what textile work uses.
    pub const D65_TEN: Self = Self { white: [0.3138, 0.3310], tint: 900.0, yellowness: [1.3013, 1.1498] };
    /// D65, 2°.
    pub const D65_TWO: Self = Self { white: [0.3127, 0.3290], tint: 1000.0, yellowness: [1.2985, 1.1335] };
    /// C, 10°.
    pub const C_TEN: Self = Self { white: [0.3104, 0.3191], tint: 900.0, yellowness: [1.2871, 1.0781] };
    /// C, 2°.
    pub const C_TWO: Self = Self { white: [0.3101, 0.3161], tint: 1000.0, yellowness: [1.2769, 1.0592] };
}

/// Whether the formula applies to a sample.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Validity {
    /// A white within the limits: W and Tw may be compared.
    Holds,
    /// W of 40 or less: too grey or too yellow to be called a white.
    NotWhite,
    /// W of 5Y − 280 or more: too dark, or too blue for its lightness.
    TooDark,
    /// Tw of 2 or more.
    TooGreen,
    /// Tw of −4 or less.
    TooRed,
}

/// Whiteness of a sample, and whether the formula applies to it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Whiteness {
    /// W; 100 for the perfect white, above that for bluish and brightened ones.
    pub index: f64,
    /// Tw; greenish above 0, reddish below.
    pub tint: f64,
    /// Whether both may be used.
    pub validity: Validity,
}

/// Whiteness and tint of tristimulus values under this viewing. The numbers of black are not finite and
/// its validity is [`Validity::NotWhite`].
#[must_use]
pub fn whiteness(colour: Xyz, viewing: &Viewing) -> Whiteness {
    let sum = colour.x + colour.y + colour.z;
    let (bluer, greener) = (viewing.white[0] - colour.x / sum, viewing.white[1] - colour.y / sum);
    let index = colour.y + 800.0 * bluer + 1700.0 * greener;
    let tint = viewing.tint * bluer - 650.0 * greener;
    let validity = match (index, tint) {
        (index, _) if index.is_nan() || index <= 40.0 => Validity::NotWhite,
        (index, _) if index >= 5.0 * colour.y - 280.0 => Validity::TooDark,
        (_, tint) if tint >= 2.0 => Validity::TooGreen,
        (_, tint) if tint <= -4.0 => Validity::TooRed,
        _ => Validity::Holds,
    };
    Whiteness { index, tint, validity }
}

/// Yellowness YI of tristimulus values under this viewing: 0 for the perfect white, positive for yellow,
/// negative for bluish.
#[must_use]
pub fn yellowness(colour: Xyz, viewing: &Viewing) -> f64 {
    let [cx, cz] = viewing.yellowness;
    100.0 * (cx * colour.x - cz * colour.z) / colour.y
}

impl Lab {
    /// Whiteness and tint of this colour, D65/10°.
    #[must_use]
    pub fn whiteness(self) -> Whiteness {
        whiteness(self.into(), &Viewing::D65_TEN)
    }
}
