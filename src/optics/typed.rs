//! A colour as people type it: a swatch of a screen or the three numbers of a colour meter.
use super::{Lab, Xyz};
use crate::quantity::{FieldError, Problem};

/// XYZ of D65/10° from linear sRGB: the inverse of the matrix in [`Lab::swatch`]. Computed with numpy
/// 2.4.
const LINEAR_SRGB_TO_XYZ: [[f64; 3]; 3] = [
    [0.412_549_521, 0.357_460_902, 0.178_115_529],
    [0.212_696_900, 0.715_775_598, 0.071_484_546],
    [0.018_983_240, 0.117_933_585, 0.936_044_780],
];

impl Lab {
    /// The colour of a swatch, `#b01924` or `#b12`; `None` if the text is not a swatch.
    ///
    /// The inverse of [`Self::swatch`] within the rounding to eight bits.
    #[must_use]
    pub fn of_swatch(text: &str) -> Option<Self> {
        let digits = text.trim().strip_prefix('#')?;
        let values: Vec<u32> = digits.chars().map(|digit| digit.to_digit(16)).collect::<Option<_>>()?;
        let channels = match *values.as_slice() {
            [r, g, b] => [17 * r, 17 * g, 17 * b],
            [r, s, g, h, b, c] => [16 * r + s, 16 * g + h, 16 * b + c],
            _ => return None,
        };
        let linear = channels.map(|channel| {
            let encoded = f64::from(channel) / 255.0;
            if encoded <= 0.040_45 { encoded / 12.92 } else { ((encoded + 0.055) / 1.055).powf(2.4) }
        });
        let [x, y, z] = LINEAR_SRGB_TO_XYZ
            .map(|row| 100.0 * row.iter().zip(&linear).map(|(part, light)| part * light).sum::<f64>());
        Some(Xyz { x, y, z }.into())
    }

    /// A colour as typed: a swatch (`#b01924`), or L*, a*, b* in this order (`38, 58, 35`,
    /// `38,2; 58; 35`, `L 38 a 58 b 35`, `Lab(38 58 35)`). `Ok(None)` if the text is a word, which may be
    /// the name of a colour.
    ///
    /// # Errors
    /// A [`FieldError`] on `colour`, with the accepted forms, if a swatch or numbers cannot be read; on
    /// `lab` if no cloth can have the colour (see [`Self::check`]).
    pub fn read(text: &str) -> Result<Option<Self>, FieldError> {
        let text = text.trim();
        if text.is_empty() {
            return Err(FieldError::new("colour", text, Problem::Empty));
        }
        let refused = || {
            let accepted = vec!["38, 58, 35".into(), "#b01924".into()];
            FieldError::new("colour", text, Problem::Unknown { nearest: Vec::new(), accepted })
        };
        if text.starts_with('#') {
            return Self::of_swatch(text).map(Some).ok_or_else(refused);
        }
        let bare = unlabelled(text);
        if !bare.chars().any(|letter| letter.is_ascii_digit()) || bare.chars().any(char::is_alphabetic) {
            return Ok(None);
        }
        let numbers: Option<Vec<f64>> = parts(&bare).iter().map(|part| number(part)).collect();
        match numbers.as_deref() {
            Some(&[lightness, a, b]) => Self { lightness, a, b }.check().map(Some),
            _ => Err(refused()),
        }
    }
}

/// The text without the labels L, a and b if they occur in this order; otherwise unchanged.
fn unlabelled(text: &str) -> String {
    let labels: String = text.chars().filter(|letter| letter.is_alphabetic()).collect();
    match labels.to_lowercase().as_str() {
        "lab" | "cielab" => text
            .chars()
            .map(|letter| if letter.is_alphabetic() || "*=:()".contains(letter) { ' ' } else { letter })
            .collect(),
        _ => text.into(),
    }
}

/// Splits three numbers. A comma is a decimal comma if something else separates the numbers.
fn parts(text: &str) -> Vec<String> {
    let points = |part: &str| part.trim().replace(',', ".");
    if text.contains(';') {
        return text.split(';').map(points).collect();
    }
    let spaced: Vec<&str> = text.split_whitespace().map(|part| part.trim_end_matches(',')).collect();
    if spaced.len() == 3 {
        return spaced.into_iter().map(points).collect();
    }
    text.split([',', ' ', '/', '\t'])
        .filter(|part| !part.trim().is_empty())
        .map(|part| part.trim().into())
        .collect()
}

/// A number as people type it, with any minus sign or a plus sign.
fn number(text: &str) -> Option<f64> {
    let plain = text.replace(['−', '–'], "-");
    let plausible = plain.chars().all(|letter| letter.is_ascii_digit() || "+-.".contains(letter));
    plain.parse().ok().filter(|_| plausible)
}
