//! Records: kinds, fields and values in words, and what changed between two versions of one.

use super::facts::named;
use super::language::in_language;
use super::{LibraryLabel, LibraryPhrase, Numeral, Voice};
use crate::library::log::{FieldDifference, Kind};
use serde_json::Value;

impl Voice {
    /// A kind of record.
    #[must_use]
    pub fn kind(self, kind: Kind) -> &'static str {
        in_language!(self.language, records::kind(kind))
    }

    /// A field of a record by its path, `zones[0].length`: known names in words, others unchanged.
    #[must_use]
    pub fn field(self, path: &str) -> String {
        let name = |part: &str| {
            let (name, index) = part.split_once('[').map_or((part, None), |(name, rest)| {
                (name, rest.trim_end_matches(']').parse::<usize>().ok())
            });
            let word = in_language!(self.language, records::field(name));
            let word = word.map_or_else(|| name.replace('_', " "), str::to_owned);
            index.map_or(word.clone(), |index| format!("{word} {}", index + 1))
        };
        path.split('.').map(name).collect::<Vec<_>>().join(", ")
    }

    /// A value of a record as text.
    #[must_use]
    pub fn value(self, value: Option<&Value>) -> String {
        let number = |number: &serde_json::Number| {
            number
                .as_f64()
                .map_or_else(|| number.to_string(), |number| Numeral(self.language).short(number, 3))
        };
        match value {
            None | Some(Value::Null) => self.word(LibraryLabel::Nothing).into(),
            Some(Value::Bool(yes)) => {
                self.word(if *yes { LibraryLabel::Yes } else { LibraryLabel::No }).into()
            }
            Some(Value::Number(it)) => number(it),
            Some(Value::String(text)) if text.is_empty() => self.word(LibraryLabel::Nothing).into(),
            Some(Value::String(text)) => {
                let place = in_language!(self.language, records::place(text));
                place.map_or_else(|| named(self, text), str::to_owned)
            }
            Some(Value::Array(array)) => {
                let items: Vec<String> = array.iter().map(|item| self.value(Some(item))).collect();
                // Between numbers a comma could be read as a decimal separator.
                let between = if array.iter().all(Value::is_number) { "; " } else { ", " };
                if items.is_empty() { self.word(LibraryLabel::Nothing).into() } else { items.join(between) }
            }
            Some(Value::Object(parts)) => match (parts.get("value"), parts.get("unit")) {
                // A price without a currency has the unit "1" or "1/kg": the name of the field says the rest.
                (Some(Value::Number(value)), Some(Value::String(unit))) if unit == "1" || unit == "1/kg" => {
                    number(value)
                }
                (Some(Value::Number(value)), Some(Value::String(unit))) => {
                    format!("{}\u{a0}{unit}", number(value))
                }
                _ => {
                    let part = |(name, value): (&String, &Value)| {
                        format!("{} {}", self.field(name), self.value(Some(value)))
                    };
                    parts.iter().map(part).collect::<Vec<_>>().join(", ")
                }
            },
        }
    }

    /// What changed, a sentence for each of the first four changes and one for how many more there are.
    #[must_use]
    pub fn changes(self, changes: &[FieldDifference]) -> String {
        const SHOWN: usize = 4;
        let one = |change: &FieldDifference| {
            self.say(&LibraryPhrase::Changed {
                what: self.field(&change.path),
                before: self.value(change.before.as_ref()),
                after: self.value(change.after.as_ref()),
            })
        };
        let mut told: Vec<String> = changes.iter().take(SHOWN).map(one).collect();
        if changes.len() > SHOWN {
            told.push(self.say(&LibraryPhrase::MoreChanges { count: changes.len() - SHOWN }));
        }
        told.join(" ")
    }

    /// A whole number.
    #[must_use]
    pub fn count(self, count: usize) -> String {
        Numeral(self.language).fixed(count as f64, 0)
    }
}
