use super::language::in_language;
use super::{Quantity, Voice};
use crate::ink::WhiteClass;
use crate::plan::{DyeClass, Topic, Value, Verdict};
use crate::textile::{Construction, Fibre, colour};
use std::collections::BTreeMap;

/// The values of one reason, written in the reader's language and units. A missing value is written "–".
#[derive(Clone, Copy)]
pub struct Facts<'a> {
    /// The values, by name.
    pub values: &'a BTreeMap<String, Value>,
    /// Language and units of the reader.
    pub voice: Voice,
}

impl<'a> Facts<'a> {
    /// The number of this name.
    #[must_use]
    pub fn number(self, name: &str) -> Option<f64> {
        match self.values.get(name) {
            Some(Value::Number(number)) => Some(*number),
            _ => None,
        }
    }

    /// Whether what this name stands for is so; `None` if the reason does not say.
    #[must_use]
    pub fn flag(self, name: &str) -> Option<bool> {
        self.number(name).map(|number| number > 0.5)
    }

    fn written(self, name: &str, quantity: Quantity) -> String {
        self.number(name).map_or_else(|| "–".into(), |value| self.voice.quantity(quantity, value))
    }

    /// A temperature with its unit.
    #[must_use]
    pub fn heat(self, name: &str) -> String {
        self.written(name, Quantity::Temperature)
    }

    /// A difference of temperatures with its unit.
    #[must_use]
    pub fn kelvin(self, name: &str) -> String {
        self.written(name, Quantity::TemperatureDifference)
    }

    /// A difference of belt speeds with its unit.
    #[must_use]
    pub fn belt(self, name: &str) -> String {
        self.number(name).map_or_else(|| "–".into(), |value| self.voice.belt_difference(value))
    }

    /// A weight of cloth with its unit.
    #[must_use]
    pub fn weight(self, name: &str) -> String {
        self.written(name, Quantity::Weight)
    }

    /// Seconds with the unit.
    #[must_use]
    pub fn seconds(self, name: &str) -> String {
        self.written(name, Quantity::Seconds)
    }

    /// A film with its unit.
    #[must_use]
    pub fn film(self, name: &str) -> String {
        self.written(name, Quantity::Film)
    }

    /// A mesh by its threads with the unit.
    #[must_use]
    pub fn threads(self, name: &str) -> String {
        self.written(name, Quantity::Threads)
    }

    /// A percentage with its sign. Reasons carry every share in percent; only a chance lies between 0 and 1.
    #[must_use]
    pub fn percent(self, name: &str) -> String {
        self.written(name, Quantity::Percent)
    }

    /// A colour difference with one decimal.
    #[must_use]
    pub fn tenth(self, name: &str) -> String {
        match self.number(name) {
            Some(value) if value.abs() < 0.05 => "0".into(),
            _ => self.written(name, Quantity::ColourDifference),
        }
    }

    /// The `limit` that a law sets, in percent with one decimal and its sign.
    #[must_use]
    pub fn by_law(self) -> String {
        format!("{}\u{a0}%", self.tenth("limit"))
    }

    /// A count.
    #[must_use]
    pub fn count(self, name: &str) -> String {
        self.number(name).map_or_else(|| "–".into(), |value| self.voice.bare(Quantity::Days, value))
    }

    /// A chance from 0 to 1 as "7 in 10".
    #[must_use]
    pub fn chance(self, name: &str) -> String {
        self.number(name).map_or_else(|| "–".into(), |value| self.voice.chance(value))
    }

    /// A word: a fibre, construction, class, verdict or topic by its name in the language, any other word unchanged.
    #[must_use]
    pub fn word(self, name: &str) -> String {
        let Some(Value::Word(word)) = self.values.get(name) else {
            return self
                .number(name)
                .map_or_else(|| "–".into(), |value| self.voice.bare(Quantity::Plain, value));
        };
        self.named(word)
    }

    /// True if there is a word of this name and it is not empty.
    #[must_use]
    pub fn has_word(self, name: &str) -> bool {
        matches!(self.values.get(name), Some(Value::Word(word)) if !word.is_empty())
    }

    /// Several words, separated by commas in the value, each by its name in the language.
    #[must_use]
    pub fn words(self, name: &str) -> String {
        match self.values.get(name) {
            Some(Value::Word(words)) => {
                words.split(',').map(|word| self.named(word.trim())).collect::<Vec<_>>().join(", ")
            }
            _ => self.word(name),
        }
    }

    /// The word as it is in the value, for sentences that differ by it.
    #[must_use]
    pub fn code(self, name: &str) -> &'a str {
        match self.values.get(name) {
            Some(Value::Word(word)) => word,
            _ => "",
        }
    }

    fn named(self, word: &str) -> String {
        named(self.voice, word)
    }

    /// The class of white named by this value.
    #[must_use]
    pub fn class(self, name: &str) -> String {
        known::<WhiteClass>(self.code(name))
            .map_or_else(|| self.word(name), |class| self.voice.class(class).into())
    }
}

/// A word of the JSON contract by its name in the language; any other word unchanged.
pub(super) fn named(voice: Voice, word: &str) -> String {
    let name = known::<Fibre>(word)
        .map(|fibre| voice.fibre(fibre))
        .or_else(|| known::<Construction>(word).map(|it| voice.construction(it)))
        .or_else(|| known::<Verdict>(word).map(|it| voice.verdict_short(it)))
        .or_else(|| known::<WhiteClass>(word).map(|it| voice.class(it)))
        .or_else(|| known::<DyeClass>(word).map(|it| voice.dye_class(it)))
        .or_else(|| known::<Topic>(word).map(|it| voice.topic(it)))
        .or_else(|| voice.colour(word));
    name.map_or_else(|| word.into(), Into::into)
}

impl Voice {
    /// A colour by its name in this language; a colour that is not known, unchanged.
    #[must_use]
    pub fn colour_or(self, name: &str) -> String {
        self.colour(name).unwrap_or(name).into()
    }

    /// A colour by its name in this language; `None` for a name that is not known.
    #[must_use]
    pub fn colour(self, name: &str) -> Option<&'static str> {
        let record = colour::named(name)?;
        Some(in_language!(self.language, name::shade(record)))
    }
}

/// The enum value that a kebab-case word in a reason's values names, if it names one.
fn known<T: serde::de::DeserializeOwned>(word: &str) -> Option<T> {
    serde_json::from_value(serde_json::Value::String(word.into())).ok()
}
