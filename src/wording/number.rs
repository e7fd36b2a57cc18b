//! Numbers as a shop writes them.
//!
//! Inside, every value is in the unit of the JSON contract (°C, g/m², m/min, threads per cm). [`Quantity`]
//! knows what each kind of number is called and how it is converted in each system of [`Units`]; [`Numeral`]
//! writes digits with the separator of the language. Conversion is exact, rounding happens last.

use super::Language;
use super::language::in_language;
use crate::quantity::units::{
    CENTIMETRES_PER_INCH, GSM_PER_OUNCE_YARD, METRES_PER_FOOT, celsius_from_fahrenheit, fahrenheit,
};
use serde::{Deserialize, Serialize};

/// The system of units on the screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Units {
    /// °C, g/m², m/min, threads per cm.
    #[default]
    Metric,
    /// °F, oz/yd², ft/min, threads per inch.
    Us,
}

impl Units {
    /// The other system.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Metric => Self::Us,
            Self::Us => Self::Metric,
        }
    }
}

/// A kind of number, by what it measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// A temperature, °C inside.
    Temperature,
    /// A difference of temperatures, K inside.
    TemperatureDifference,
    /// Belt speed, m/min inside.
    Belt,
    /// Weight of a cloth, g/m² inside.
    Weight,
    /// Threads of a mesh, per cm inside.
    Threads,
    /// Area of a print, cm² inside.
    Area,
    /// Time, s.
    Seconds,
    /// Film, µm.
    Film,
    /// A narrow width on the print, mm.
    Width,
    /// A length of the dryer, m.
    Length,
    /// A share, %.
    Percent,
    /// Time, days.
    Days,
    /// A colour difference; no unit.
    ColourDifference,
    /// Money of the shop; no unit shown.
    Money,
    /// A count or a bare number.
    Plain,
}

impl Quantity {
    /// The value in the unit shown.
    #[must_use]
    pub fn shown(self, value: f64, units: Units) -> f64 {
        match (units, self) {
            (Units::Metric, _) => value,
            (Units::Us, Self::Temperature) => fahrenheit(value),
            (Units::Us, Self::TemperatureDifference) => value * 1.8,
            (Units::Us, Self::Belt | Self::Length) => value / METRES_PER_FOOT,
            (Units::Us, Self::Weight) => value / GSM_PER_OUNCE_YARD,
            (Units::Us, Self::Threads) => value * CENTIMETRES_PER_INCH,
            (Units::Us, Self::Area) => value / (CENTIMETRES_PER_INCH * CENTIMETRES_PER_INCH),
            (Units::Us, _) => value,
        }
    }

    /// The value in the unit of the JSON contract, from the value in the unit shown.
    #[must_use]
    pub fn kept(self, shown: f64, units: Units) -> f64 {
        match (units, self) {
            (Units::Metric, _) => shown,
            (Units::Us, Self::Temperature) => celsius_from_fahrenheit(shown),
            (Units::Us, Self::TemperatureDifference) => shown / 1.8,
            (Units::Us, Self::Belt | Self::Length) => shown * METRES_PER_FOOT,
            (Units::Us, Self::Weight) => shown * GSM_PER_OUNCE_YARD,
            (Units::Us, Self::Threads) => shown / CENTIMETRES_PER_INCH,
            (Units::Us, Self::Area) => shown * CENTIMETRES_PER_INCH * CENTIMETRES_PER_INCH,
            (Units::Us, _) => shown,
        }
    }

    /// The unit, as printed.
    #[must_use]
    pub fn unit(self, units: Units, language: Language) -> &'static str {
        match (self, units) {
            (Self::Temperature | Self::TemperatureDifference, Units::Metric) => "°C",
            (Self::Temperature | Self::TemperatureDifference, Units::Us) => "°F",
            (Self::Belt, Units::Metric) => "m/min",
            (Self::Weight, Units::Metric) => "g/m²",
            (Self::Weight, Units::Us) => "oz/yd²",
            (Self::Threads, Units::Metric) => "/cm",
            (Self::Area, Units::Metric) => "cm²",
            (Self::Seconds, _) => "s",
            (Self::Film, _) => "µm",
            (Self::Width, _) => "mm",
            (Self::Length, Units::Metric) => "m",
            (Self::Percent, _) => "%",
            (Self::Belt, Units::Us) => in_language!(language, number::FEET_PER_MINUTE),
            (Self::Threads, Units::Us) => in_language!(language, number::PER_INCH),
            (Self::Area, Units::Us) => in_language!(language, number::SQUARE_INCHES),
            (Self::Length, Units::Us) => in_language!(language, number::FEET),
            (Self::Days, _) => in_language!(language, number::DAYS),
            (Self::ColourDifference | Self::Money | Self::Plain, _) => "",
        }
    }

    /// Decimals that are of use in a shop.
    #[must_use]
    pub fn decimals(self, units: Units) -> usize {
        match (self, units) {
            (Self::Belt | Self::ColourDifference | Self::Width | Self::Length, _)
            | (Self::Weight, Units::Us) => 1,
            (Self::Area, Units::Us) => 1,
            (Self::Money, _) => 2,
            _ => 0,
        }
    }

    /// Step of one tap, in the unit shown.
    #[must_use]
    pub fn tap(self, units: Units) -> f64 {
        match (self, units) {
            (Self::Belt, Units::Metric) => 0.05,
            (Self::Belt, Units::Us) => 0.2,
            (Self::Weight | Self::Percent, _) => 5.0,
            (Self::Area, Units::Metric) => 50.0,
            (Self::Area, Units::Us) => 10.0,
            (Self::Days, _) => 10.0,
            (Self::Width, _) => 0.1,
            _ => 1.0,
        }
    }
}

/// Writes digits in one language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Numeral(pub Language);

impl Numeral {
    /// `value` with this many decimals, a minus sign (U+2212) if it is negative, and never a negative zero.
    #[must_use]
    pub fn fixed(self, value: f64, decimals: usize) -> String {
        if !value.is_finite() {
            return "–".into();
        }
        let text = format!("{value:.decimals$}");
        let zero = text.trim_start_matches('-').chars().all(|c| c == '0' || c == '.');
        let text = if zero { text.trim_start_matches('-').into() } else { text.replace('-', "\u{2212}") };
        self.separated(&text)
    }

    /// As `fixed`, but without trailing zeros and with a hyphen for minus, as a field can read it back.
    #[must_use]
    pub fn short(self, value: f64, decimals: usize) -> String {
        let text = format!("{value:.decimals$}");
        let text = if text.contains('.') {
            text.trim_end_matches('0').trim_end_matches('.').to_owned()
        } else {
            text
        };
        self.separated(if text == "-0" { "0" } else { &text })
    }

    /// About two significant figures: 0.05, 0.3, 4.2, 18.
    #[must_use]
    pub fn two_figures(self, value: f64) -> String {
        let size = value.abs();
        let decimals = if size >= 9.95 || size == 0.0 {
            0
        } else if size >= 0.095 {
            1
        } else {
            2
        };
        self.fixed(value, decimals)
    }

    fn separated(self, text: &str) -> String {
        text.replace('.', in_language!(self.0, number::DECIMAL))
    }
}

/// A number as it was typed: the value, and the system of its unit if one was typed after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typed {
    /// The number.
    pub value: f64,
    /// The system of the unit typed after it; `None` if none was typed or both systems share it.
    pub units: Option<Units>,
}

/// Reads a typed number: decimal comma or point, spaces between thousands, a unit after it (`330 F`, `5,3 oz`).
///
/// With both separators the last one is the decimal separator. Where only whole numbers make sense
/// (`whole`), a separator before exactly three digits separates thousands. Returns `None` for anything else.
#[must_use]
pub fn read(text: &str, quantity: Quantity, whole: bool) -> Option<Typed> {
    let text: String = text.trim().replace(['\u{a0}', '\u{202f}', ' '], "").replace('\u{2212}', "-");
    let split = text
        .char_indices()
        .find(|(_, c)| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+')))
        .map_or(text.len(), |(at, _)| at);
    let (digits, unit) = text.split_at(split);
    let units = system_of(unit, quantity)?;
    let plain = match (digits.rfind(','), digits.rfind('.')) {
        (Some(comma), Some(point)) if comma > point => digits.replace('.', "").replace(',', "."),
        (Some(_), Some(_)) => digits.replace(',', ""),
        (Some(at), None) | (None, Some(at)) if whole && thousands(digits, at) => {
            digits.replace([',', '.'], "")
        }
        (Some(_), None) => digits.replace(',', "."),
        _ => digits.into(),
    };
    let value: f64 = plain.parse().ok()?;
    value.is_finite().then_some(Typed { value, units })
}

/// True if each separator is followed by exactly three digits, so that it separates thousands.
fn thousands(digits: &str, last: usize) -> bool {
    let mark = &digits[last..=last];
    let mut groups = digits.split(mark);
    let first = groups.next().unwrap_or_default().trim_start_matches('-');
    (1..=3).contains(&first.len()) && !first.starts_with('0') && groups.all(|group| group.len() == 3)
}

/// The system a typed unit belongs to: `Some(None)` for no unit or a shared one, `None` for a unit that is not known.
fn system_of(unit: &str, quantity: Quantity) -> Option<Option<Units>> {
    let unit = unit.to_lowercase().replace(['°', '²', '2', '.'], "");
    if unit.is_empty() {
        return Some(None);
    }
    let (metric, us): (&[&str], &[&str]) = match quantity {
        Quantity::Temperature | Quantity::TemperatureDifference => (&["c", "k"], &["f"]),
        Quantity::Belt => (&["m/min", "m"], &["ft/min", "ft", "fpm", "pies/min", "pies"]),
        Quantity::Weight => (&["g/m", "gsm", "g"], &["oz/yd", "oz"]),
        Quantity::Threads => (&["/cm", "cm"], &["/in", "in", "/pulg", "pulg"]),
        Quantity::Area => (&["cm"], &["in", "pulg"]),
        Quantity::Percent => (&["%"], &["%"]),
        Quantity::Seconds => (&["s"], &["s"]),
        Quantity::Film => (&["µm", "um"], &["µm", "um"]),
        Quantity::Width => (&["mm"], &["mm"]),
        Quantity::Length => (&["m"], &["ft", "pies"]),
        Quantity::Days => (&["d", "days", "días", "dias"], &["d", "days", "días", "dias"]),
        Quantity::ColourDifference | Quantity::Money | Quantity::Plain => (&[], &[]),
    };
    let unit = unit.as_str();
    match (metric.contains(&unit), us.contains(&unit)) {
        (true, true) => Some(None),
        (true, false) => Some(Some(Units::Metric)),
        (false, true) => Some(Some(Units::Us)),
        (false, false) => None,
    }
}
