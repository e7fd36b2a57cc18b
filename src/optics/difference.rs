//! How far two colours lie apart: CIEDE2000 for the eye's judgement of small differences, ΔE*ab for large ones.
//!
//! ```text
//! C̄ = (C1 + C2)/2,  G = ½ (1 − √(C̄⁷/(C̄⁷ + 25⁷))),  a' = (1 + G) a,  C' = √(a'² + b²),  h' = atan2(b, a')
//! ΔH' = 2 √(C1' C2') sin(Δh'/2)
//! T = 1 − 0.17 cos(h̄' − 30) + 0.24 cos 2h̄' + 0.32 cos(3h̄' + 6) − 0.20 cos(4h̄' − 63)
//! Δθ = 30 exp(−((h̄' − 275)/25)²),  RC = 2 √(C̄'⁷/(C̄'⁷ + 25⁷)),  RT = −RC sin 2Δθ
//! SL = 1 + 0.015 (L̄ − 50)²/√(20 + (L̄ − 50)²),  SC = 1 + 0.045 C̄',  SH = 1 + 0.015 C̄' T
//! ΔE00² = (ΔL'/SL)² + (ΔC'/SC)² + (ΔH'/SH)² + RT (ΔC'/SC)(ΔH'/SH)
//! ```
//!
//! Source: Sharma, Wu & Dalal (2005), Color Research and Application 30(1):21-30; kL = kC = kH = 1.
use super::Lab;
use super::lab::hue_angle;

/// Slack on the test for hues that lie opposite each other, degrees: without it the last bit of `atan2` decides,
/// and pair 14 of Sharma's table reads 4.7461 on one machine and 4.8045 on another.
const OPPOSITE_HUES: f64 = 1e-9;

/// 25⁷.
const TWENTY_FIVE_TO_THE_7TH: f64 = 6_103_515_625.0;

/// ΔE00 between two colours, 0 and up; the same in both directions.
///
/// Meant for small differences (ΔE*ab up to about 5, CIE 142-2001, from memory); beyond that look at [`cie76`] too.
#[must_use]
pub fn ciede2000(one: Lab, other: Lab) -> f64 {
    let stretch = 1.5 - 0.5 * chroma_weight(0.5 * (one.chroma() + other.chroma()));
    let (a1, a2) = (stretch * one.a, stretch * other.a);
    let (chroma1, chroma2) = (a1.hypot(one.b), a2.hypot(other.b));
    let (hue1, hue2) = (hue_angle(a1, one.b), hue_angle(a2, other.b));

    let chromatic = chroma1 * chroma2 > 0.0;
    let apart = hue2 - hue1;
    let same_side = apart.abs() <= 180.0 + OPPOSITE_HUES;
    let hue_step = match (chromatic, same_side) {
        (false, _) => 0.0,
        (true, true) => apart,
        (true, false) if apart > 0.0 => apart - 360.0,
        (true, false) => apart + 360.0,
    };
    let sum = hue1 + hue2;
    let mean_hue = match (chromatic, same_side) {
        (false, _) => sum,
        (true, true) => 0.5 * sum,
        (true, false) if sum < 360.0 => 0.5 * (sum + 360.0),
        (true, false) => 0.5 * (sum - 360.0),
    };
    let mean_chroma = 0.5 * (chroma1 + chroma2);
    let off_middle = (0.5 * (one.lightness + other.lightness) - 50.0).powi(2);

    let cosine = |degrees: f64| degrees.to_radians().cos();
    let t = 1.0 - 0.17 * cosine(mean_hue - 30.0)
        + 0.24 * cosine(2.0 * mean_hue)
        + 0.32 * cosine(3.0 * mean_hue + 6.0)
        - 0.20 * cosine(4.0 * mean_hue - 63.0);
    let lightness =
        (other.lightness - one.lightness) / (1.0 + 0.015 * off_middle / (20.0 + off_middle).sqrt());
    let chroma = (chroma2 - chroma1) / (1.0 + 0.045 * mean_chroma);
    let hue = 2.0 * (chroma1 * chroma2).sqrt() * (0.5 * hue_step).to_radians().sin()
        / (1.0 + 0.015 * mean_chroma * t);
    let turn = 30.0 * (-((mean_hue - 275.0) / 25.0).powi(2)).exp();
    let rotation = -2.0 * chroma_weight(mean_chroma) * (2.0 * turn).to_radians().sin();

    (lightness * lightness + chroma * chroma + hue * hue + rotation * chroma * hue).max(0.0).sqrt()
}

/// √(C⁷/(C⁷ + 25⁷)), 0 to 1.
fn chroma_weight(chroma: f64) -> f64 {
    let seventh = chroma.powi(7);
    (seventh / (seventh + TWENTY_FIVE_TO_THE_7TH)).sqrt()
}

/// ΔE*ab, the straight distance in CIELAB, 0 and up. Source: ISO/CIE 11664-4 (from memory).
#[must_use]
pub fn cie76(one: Lab, other: Lab) -> f64 {
    (other.lightness - one.lightness).hypot(other.a - one.a).hypot(other.b - one.b)
}
