//! The reader's language and units, and numbers written for that reader.

use super::language::in_language;
use super::{Label, Language, Numeral, Phrase, Quantity, Sentence, Units};
use crate::plan::{Margin, Topic, Unit};
use serde::{Deserialize, Serialize};

/// Language and units of the reader.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Voice {
    /// The language.
    pub language: Language,
    /// The units.
    pub units: Units,
}

impl From<Language> for Voice {
    fn from(language: Language) -> Self {
        Self { language, units: Units::Metric }
    }
}

impl Voice {
    /// A number of this kind with its unit: `165 °C`, `2,8 m/min`.
    #[must_use]
    pub fn quantity(self, quantity: Quantity, value: f64) -> String {
        let unit = quantity.unit(self.units, self.language);
        let number = self.bare(quantity, value);
        match (quantity, unit) {
            (_, "") => number,
            (Quantity::Threads, unit) => format!("{number}{unit}"),
            (_, unit) => format!("{number}\u{a0}{unit}"),
        }
    }

    /// The same without its unit.
    #[must_use]
    pub fn bare(self, quantity: Quantity, value: f64) -> String {
        let shown = quantity.shown(value, self.units);
        let numeral = Numeral(self.language);
        match quantity {
            Quantity::Seconds if shown < 9.95 && shown.fract().abs() > 0.05 => numeral.fixed(shown, 1),
            // A dryer is read to half a degree at best.
            Quantity::TemperatureDifference if shown.abs() < 9.75 => {
                numeral.short((shown * 2.0).round() / 2.0, 1)
            }
            Quantity::TemperatureDifference => numeral.fixed(shown, 0),
            Quantity::Plain => numeral.short(shown, 1),
            _ => numeral.fixed(shown, quantity.decimals(self.units)),
        }
    }

    /// A difference of belt speeds, to about two significant figures.
    #[must_use]
    pub fn belt_difference(self, metres_per_minute: f64) -> String {
        let shown = Quantity::Belt.shown(metres_per_minute, self.units);
        let unit = Quantity::Belt.unit(self.units, self.language);
        format!("{}\u{a0}{unit}", Numeral(self.language).two_figures(shown))
    }

    /// A chance from 0 to 1 as "7 in 10".
    #[must_use]
    pub fn chance(self, chance: f64) -> String {
        let phrase = if chance < 0.005 {
            Phrase::FewerThanOne
        } else if chance > 0.995 {
            Phrase::MoreThanNinetyNine
        } else if (0.095..=0.905).contains(&chance) {
            Phrase::OutOf { count: self.bare(Quantity::Percent, chance * 10.0), of: "10".into() }
        } else {
            Phrase::OutOf { count: self.bare(Quantity::Percent, chance * 100.0), of: "100".into() }
        };
        self.say(&phrase)
    }

    /// A word of the screens.
    #[must_use]
    pub fn label(self, label: Label) -> &'static str {
        in_language!(self.language, label::label(label))
    }

    /// A sentence of a screen.
    #[must_use]
    pub fn say(self, sentence: &impl Sentence) -> String {
        sentence.written(self.language)
    }

    /// A value of a margin with its unit.
    #[must_use]
    pub fn margin(self, margin: &Margin, value: f64) -> String {
        let numeral = Numeral(self.language);
        match margin.unit {
            Unit::Celsius => self.quantity(Quantity::Temperature, value),
            Unit::Percent if margin.what == Topic::Shrink => format!("{}\u{a0}%", numeral.fixed(value, 1)),
            Unit::Percent => self.quantity(Quantity::Percent, value),
            Unit::One if margin.what == Topic::Scorch => numeral.two_figures(value),
            Unit::One | Unit::ColourDifference if value.abs() < 0.05 => "0".into(),
            Unit::One | Unit::ColourDifference => numeral.fixed(value, 1),
            Unit::Gloss => format!("{}\u{a0}GU", numeral.fixed(value, 0)),
            Unit::Micrometres => format!("{}\u{a0}µm", numeral.two_figures(value)),
        }
    }
}
