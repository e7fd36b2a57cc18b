//! Conversions between SI and the units of the shop. Every factor is exact by definition.

use super::ZERO_CELSIUS;

/// Kelvin from °C.
#[must_use]
pub const fn kelvin(celsius: f64) -> f64 {
    celsius + ZERO_CELSIUS
}

/// °C from kelvin.
#[must_use]
pub const fn celsius(kelvin: f64) -> f64 {
    kelvin - ZERO_CELSIUS
}

/// °F from °C.
#[must_use]
pub fn fahrenheit(celsius: f64) -> f64 {
    celsius * 1.8 + 32.0
}

/// °C from °F.
#[must_use]
pub const fn celsius_from_fahrenheit(fahrenheit: f64) -> f64 {
    (fahrenheit - 32.0) / 1.8
}

/// Grams per square metre in a momme, the weight of silk: 3.75 g over 25 yards of 1.5 inches. From memory.
pub const GSM_PER_MOMME: f64 = 3.75 / (25.0 * 0.9144 * 1.5 * 0.0254);
/// Grams per square metre in one ounce per square yard (avoirdupois ounce 28.349523125 g, yard 0.9144 m).
pub const GSM_PER_OUNCE_YARD: f64 = 28.349_523_125 / (0.9144 * 0.9144);

/// Metres in one foot.
pub const METRES_PER_FOOT: f64 = 0.3048;

/// Centimetres in one inch: threads per inch = 2.54 × threads per cm.
pub const CENTIMETRES_PER_INCH: f64 = 2.54;
