//! CIELAB: a colour as lightness, red-green and yellow-blue.
//!
//! ```text
//! f(t) = ∛t                      t > 216/24389
//!      = (24389/27 · t + 16)/116 otherwise
//! L* = 116 f(Y/Yn) − 16,  a* = 500 (f(X/Xn) − f(Y/Yn)),  b* = 200 (f(Y/Yn) − f(Z/Zn))
//! ```
//!
//! Source: ISO/CIE 11664-4 (from memory), with the exact knee 216/24389 and slope 24389/27.
use serde::{Deserialize, Serialize};

/// Tristimulus values on the scale where a perfect white has Y = 100.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Xyz {
    /// X, 0 to about 95.
    pub x: f64,
    /// Y, the luminance factor in percent, 0 to 100.
    pub y: f64,
    /// Z, 0 to about 107.
    pub z: f64,
}

/// The perfect white under D65 for the CIE 1964 10° observer.
/// Source: ASTM E308 (from memory); colour-science 0.4.7 gives the same three decimals from the spectra.
pub const WHITE_POINT: Xyz = Xyz { x: 94.811, y: 100.0, z: 107.304 };

/// A colour in CIELAB, D65/10°. In JSON it is `[L*, a*, b*]`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(from = "[f64; 3]", into = "[f64; 3]")]
pub struct Lab {
    /// L*, 0 (black) to 100 (white).
    pub lightness: f64,
    /// a*, about −120 (green) to 120 (red).
    pub a: f64,
    /// b*, about −120 (blue) to 120 (yellow).
    pub b: f64,
}

impl From<[f64; 3]> for Lab {
    fn from([lightness, a, b]: [f64; 3]) -> Self {
        Self { lightness, a, b }
    }
}

impl From<Lab> for [f64; 3] {
    fn from(lab: Lab) -> Self {
        [lab.lightness, lab.a, lab.b]
    }
}

/// Value at which the cube root of CIELAB is replaced by its straight part.
const KNEE: f64 = 216.0 / 24389.0;
/// Slope of the straight part, times 116.
const SLOPE: f64 = 24389.0 / 27.0;

fn compress(t: f64) -> f64 {
    if t > KNEE { t.cbrt() } else { (SLOPE * t + 16.0) / 116.0 }
}

fn expand(f: f64) -> f64 {
    let cube = f * f * f;
    if cube > KNEE { cube } else { (116.0 * f - 16.0) / SLOPE }
}

impl Lab {
    /// A colour from L*, a*, b*.
    #[must_use]
    pub const fn new(lightness: f64, a: f64, b: f64) -> Self {
        Self { lightness, a, b }
    }

    /// C*, the distance from grey, 0 and up.
    #[must_use]
    pub fn chroma(self) -> f64 {
        self.a.hypot(self.b)
    }

    /// h, the hue angle, 0 to 360°; 0 for a grey.
    #[must_use]
    pub fn hue(self) -> f64 {
        hue_angle(self.a, self.b)
    }

    /// The swatch of this colour on a screen, `#rrggbb`, each channel clipped to what sRGB can show.
    ///
    /// The white of D65/10° is carried to the white of sRGB (D65/2°) by the Bradford transform, so that a
    /// neutral cloth is a neutral swatch. A colour that is not a number gives black. Source: IEC
    /// 61966-2-1 matrix and curve, Bradford matrix, both through colour-science 0.4.7.
    #[must_use]
    pub fn swatch(self) -> String {
        let Xyz { x, y, z } = Xyz::from(self);
        let [red, green, blue] = XYZ_TO_LINEAR_SRGB.map(|row| {
            let linear = (row[0] * x + row[1] * y + row[2] * z) / 100.0;
            let encoded =
                if linear <= 0.003_130_8 { 12.92 * linear } else { 1.055 * linear.powf(1.0 / 2.4) - 0.055 };
            (encoded.clamp(0.0, 1.0) * 255.0).round() as u8
        });
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

/// Linear sRGB from XYZ of D65/10°: the matrix of IEC 61966-2-1 times the Bradford adaptation to the white of
/// sRGB (x 0.3127, y 0.3290). Computed with colour-science 0.4.7.
const XYZ_TO_LINEAR_SRGB: [[f64; 3]; 3] = [
    [3.238_313_095, -1.535_012_168, -0.498_976_345],
    [-0.967_903_708, 1.873_690_955, 0.041_086_426],
    [0.056_273_676, -0.204_938_473, 1.073_267_796],
];

/// Angle of (a, b) in degrees, 0 to 360; 0 where both are 0.
pub(super) fn hue_angle(a: f64, b: f64) -> f64 {
    if a == 0.0 && b == 0.0 {
        return 0.0;
    }
    let degrees = b.atan2(a).to_degrees();
    if degrees < 0.0 { degrees + 360.0 } else { degrees }
}

impl From<Xyz> for Lab {
    fn from(colour: Xyz) -> Self {
        let x = compress(colour.x / WHITE_POINT.x);
        let y = compress(colour.y / WHITE_POINT.y);
        let z = compress(colour.z / WHITE_POINT.z);
        Self { lightness: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }
}

impl From<Lab> for Xyz {
    fn from(lab: Lab) -> Self {
        let y = (lab.lightness + 16.0) / 116.0;
        Self {
            x: WHITE_POINT.x * expand(y + lab.a / 500.0),
            y: WHITE_POINT.y * expand(y),
            z: WHITE_POINT.z * expand(y - lab.b / 200.0),
        }
    }
}
