//! Words for people, in English and Spanish: the only place where they live.
//!
//! A sentence is built from a code and its values; each language is one `match` over every code, so the
//! compiler refuses a build in which a sentence is missing in either. The voice: say the thing, then the
//! number, then what to do. Short, shop words, no blame. Chance as "7 in 10". The first sentence of a reason
//! is its lead and may be set in bold ([`lead`]).
//!
//! Hands out [`fill`] (writes the text of every reason of a report), [`reason`], [`problem`], [`label`],
//! [`phrase`] and the names of things. Decides nothing: codes and values come from `plan`.

mod aged;
mod en;
mod es;
mod facts;
mod label;
mod meter;
pub mod number;
mod phrase;
mod record;
mod room;
mod sheet;
mod time;
mod trade;
mod wrong;

pub use aged::{Aged, Table, Way};
pub use facts::Facts;
pub use label::Label;
pub use number::{Numeral, Quantity, Units};
pub use phrase::Phrase;
pub use record::{Told, Word};
pub use room::Room;
pub use sheet::Paper;
pub use time::{civil, on};
pub use trade::{Step as TradeStep, Traded};
pub use wrong::Fault;

use crate::ink::WhiteClass;
use crate::library::storage_layout::Trouble;
use crate::plan::{
    Advice, Code, DyeClass, Finish, Margin, Opacity, Priority, Reason, Report, Role, Sheen, Topic, UseKind,
    Verdict,
};
use crate::quantity::FieldError;
use crate::textile::{Construction, Fibre};
use serde::{Deserialize, Serialize};

/// A language of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
}

impl Language {
    /// Its tag for a `lang` attribute.
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
        }
    }

    /// The other language.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::En => Self::Es,
            Self::Es => Self::En,
        }
    }
}

/// Who is spoken to: language and units.
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
            // Half degrees are as fine as a dryer is read.
            Quantity::TemperatureDifference if shown.abs() < 9.75 => {
                numeral.short((shown * 2.0).round() / 2.0, 1)
            }
            Quantity::TemperatureDifference => numeral.fixed(shown, 0),
            Quantity::Plain => numeral.short(shown, 1),
            _ => numeral.fixed(shown, quantity.decimals(self.units)),
        }
    }

    /// A difference of belt speeds, with two figures that count.
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

    /// A word or phrase of the screens without a number in it.
    #[must_use]
    pub fn label(self, label: Label) -> &'static str {
        match self.language {
            Language::En => en::label(label),
            Language::Es => es::label(label),
        }
    }

    /// A sentence of the screens with numbers or names in it.
    #[must_use]
    pub fn say(self, phrase: &Phrase) -> String {
        match self.language {
            Language::En => en::phrase(phrase),
            Language::Es => es::phrase(phrase),
        }
    }

    /// The sentence of a reason, caution, question or reading.
    #[must_use]
    pub fn reason(self, reason: &Reason) -> String {
        let facts = Facts { values: &reason.values, voice: self };
        match self.language {
            Language::En => en::reason(reason.code, facts),
            Language::Es => es::reason(reason.code, facts),
        }
    }

    /// The sentence for a bare code, as for a check on the first piece.
    #[must_use]
    pub fn code(self, code: Code) -> String {
        self.reason(&Reason::new(code))
    }

    /// What is wrong with a field, and the way out.
    #[must_use]
    pub fn problem(self, error: &FieldError) -> String {
        match self.language {
            Language::En => en::problem(&error.problem, &error.value, self),
            Language::Es => es::problem(&error.problem, &error.value, self),
        }
    }

    /// What is wrong with the store, and the way out.
    #[must_use]
    pub fn trouble(self, trouble: &Trouble) -> String {
        match self.language {
            Language::En => en::trouble(trouble),
            Language::Es => es::trouble(trouble),
        }
    }

    /// A value of a margin with its unit.
    #[must_use]
    pub fn margin(self, margin: &Margin, value: f64) -> String {
        match margin.unit.as_str() {
            "°C" => self.quantity(Quantity::Temperature, value),
            "K" => self.quantity(Quantity::TemperatureDifference, value),
            "%" if margin.what == Topic::Shrink => {
                format!("{}\u{a0}%", Numeral(self.language).fixed(value, 1))
            }
            "%" => self.quantity(Quantity::Percent, value),
            "" | "1" if margin.what == Topic::Fusion => self.quantity(Quantity::Percent, value * 100.0),
            "" | "1" if margin.what == Topic::Scorch => Numeral(self.language).two_figures(value),
            "" | "1" | "ΔE00" if value.abs() < 0.05 => "0".into(),
            "" | "1" | "ΔE00" => Numeral(self.language).fixed(value, 1),
            "GU" => format!("{}\u{a0}GU", Numeral(self.language).fixed(value, 0)),
            unit => format!("{}\u{a0}{unit}", Numeral(self.language).two_figures(value)),
        }
    }
}

impl Voice {
    /// A day written `2026-12-04` as "Fri 4 Dec"; anything else as it stands.
    #[must_use]
    pub fn day(self, iso: &str) -> String {
        let mut parts = iso.split('-').map(str::parse::<usize>);
        let (Some(Ok(year)), Some(Ok(month)), Some(Ok(day))) = (parts.next(), parts.next(), parts.next())
        else {
            return iso.into();
        };
        if !(1..=12).contains(&month) || !(1..=31).contains(&day) || !(1..=9999).contains(&year) {
            return iso.into();
        }
        // Day of the week after Sakamoto (1992): months before March count to the year before.
        let shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1];
        let counted = year - usize::from(month < 3);
        let weekday = (counted + counted / 4 - counted / 100 + counted / 400 + shift + day) % 7;
        let (days, months) = match self.language {
            Language::En => (en::DAYS, en::MONTHS),
            Language::Es => (es::DAYS, es::MONTHS),
        };
        format!("{} {day} {}", days[weekday], months[month - 1])
    }
}

macro_rules! names {
    ($($(#[$doc:meta])* $name:ident: $kind:ty;)*) => {
        impl Voice {
            $($(#[$doc])*
            #[must_use]
            pub fn $name(self, what: $kind) -> &'static str {
                match self.language {
                    Language::En => en::$name(what),
                    Language::Es => es::$name(what),
                }
            })*
        }
    };
}

names! {
    /// The verdict as the word on the plate.
    verdict: Verdict;
    /// The verdict as one word in a table.
    verdict_short: Verdict;
    /// What a margin is about, as a heading.
    topic: Topic;
    /// What happens past the limit, as a word on the picture.
    past_limit: Topic;
    /// A piece of advice.
    advice: Advice;
    /// A class of white.
    class: WhiteClass;
    /// A fibre.
    fibre: Fibre;
    /// A construction.
    construction: Construction;
    /// A kind of dye.
    dye_class: DyeClass;
    /// What matters most.
    priority: Priority;
    /// What the white is for.
    role: Role;
    /// How well it must cover.
    opacity: Opacity;
    /// How it shall shine.
    sheen: Sheen;
    /// What the garment is for.
    use_kind: UseKind;
    /// A finish.
    finish: Finish;
}

/// Writes the text of every reason in the report, in this voice.
pub fn fill(report: &mut Report, voice: impl Into<Voice>) {
    let voice = voice.into();
    let word = |reason: &mut Reason| reason.text = voice.reason(reason);
    for pick in report.picks.iter_mut().chain(report.closed.as_deref_mut()) {
        pick.reasons.iter_mut().for_each(word);
    }
    if let Some(whole) = &mut report.whole {
        word(&mut whole.say);
    }
    if let Some(trade) = &mut report.trade {
        trade.say.iter_mut().for_each(word);
    }
    for rejected in &mut report.rejected {
        rejected.reasons.iter_mut().for_each(word);
    }
    report.to_make_it_possible.iter_mut().for_each(word);
    report.cautions.iter_mut().for_each(word);
    report.understood.iter_mut().chain(report.understood_each.iter_mut().flatten()).for_each(word);
    report.unknowns.iter_mut().for_each(|unknown| word(&mut unknown.ask));
}

/// The first sentence of a text and the rest of it.
#[must_use]
pub fn lead(text: &str) -> (&str, &str) {
    match text.find(". ") {
        Some(at) => (&text[..=at], text[at + 1..].trim_start()),
        None => ("", text),
    }
}

/// A kind of thing named by a kebab-case word in a reason's values.
fn known<T: serde::de::DeserializeOwned>(word: &str) -> Option<T> {
    serde_json::from_value(serde_json::Value::String(word.into())).ok()
}
