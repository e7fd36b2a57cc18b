//! Words of the Library screen: of records, their fields and past, of files and merges.

mod en;
mod es;

use super::{Language, Numeral, Voice};
use crate::library::file::FileError;
use crate::library::log::{Difference, Kind};
use serde_json::Value;

/// A word or sentence without a number or name in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum Word {
    Library,
    Search,
    LookIn,
    Fabrics,
    Whites,
    Lots,
    Dryers,
    Orders,
    Found,
    NearestFirst,
    NewCloth,
    ImportFile,
    SaveFile,
    SaveTables,
    Yours,
    Ships,
    Removed,
    Differs,
    WhatItHolds,
    WhatBelongs,
    WhatHappened,
    NothingHappened,
    BringBack,
    TakeOut,
    PrintOnThis,
    OpenThis,
    KeepCloth,
    KeepOrder,
    ShowMore,
    Close,
    Choose,
    Made,
    Copied,
    TakenOut,
    Undone,
    AsItIsNow,
    OnAnotherTablet,
    Merge,
    What,
    ThisTablet,
    TheFile,
    Keep,
    LeaveIt,
    NothingYet,
    NothingToMerge,
    TableOf,
    Row,
    FixRows,
    ApplyTable,
    DraftFound,
    OpenDraft,
    ReadOnly,
    Understood,
    EmptySay,
    EmptyLibrary,
    DropHere,
    Stays,
    Goes,
    Nothing,
    Yes,
    No,
    NeverSaved,
    SaveNow,
    Edit,
    New,
    KeepIt,
    NewWhite,
    NewDryer,
    NewMesh,
    NewTrial,
    NewLot,
    NewBatch,
    NewReading,
    NewLook,
    NewCheck,
    NewProbeRun,
    OrderIsKept,
    Trials,
    Files,
    TapOne,
    SaveItself,
    SavesItself,
}

/// A sentence of the Library screen with numbers or names in it.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "the parts are named like the words they stand in")]
pub enum Told {
    Records { count: String },
    SavedDaysAgo { days: i64 },
    Unsaved { changes: String },
    Reminder { changes: String, days: Option<i64> },
    OfTotal { found: String, total: String },
    LookFor { word: String, count: String },
    NoneCalled { asked: String },
    LotsHere { lots: usize },
    Weight { gsm: String },
    Changed { what: String, before: String, after: String },
    MoreChanges { count: usize },
    FromFile { name: String },
    MergeFrom { name: String, saved: String },
    Same { count: String },
    New { count: String },
    Newer { count: String },
    ToChoose { count: String },
    Lost { count: String },
    MergeNow { count: String },
    TableRows { added: String, changed: String, unchanged: String, wrong: String },
    InRow { line: u64, column: String },
    NewerFile { name: String, records: String },
    Refused { name: String },
    Unreadable { count: usize },
    ApplyRows { count: String },
}

impl Voice {
    /// A word of the Library screen.
    #[must_use]
    pub fn word(self, word: Word) -> &'static str {
        match self.language {
            Language::En => en::word(word),
            Language::Es => es::word(word),
        }
    }

    /// A sentence of the Library screen.
    #[must_use]
    pub fn tell(self, told: &Told) -> String {
        match self.language {
            Language::En => en::told(told),
            Language::Es => es::told(told),
        }
    }

    /// Why a file was not taken, and the way out.
    #[must_use]
    pub fn file_error(self, error: &FileError) -> String {
        match self.language {
            Language::En => en::file_error(error),
            Language::Es => es::file_error(error),
        }
    }

    /// A kind of record.
    #[must_use]
    pub fn kind(self, kind: Kind) -> &'static str {
        match self.language {
            Language::En => en::kind(kind),
            Language::Es => es::kind(kind),
        }
    }

    /// A field of a record by its path, `zones[0].length`: known names in words, others as they stand.
    #[must_use]
    pub fn field(self, path: &str) -> String {
        let name = |part: &str| {
            let (name, index) = part.split_once('[').map_or((part, None), |(name, rest)| {
                (name, rest.trim_end_matches(']').parse::<usize>().ok())
            });
            let word = match self.language {
                Language::En => en::field(name),
                Language::Es => es::field(name),
            };
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
            None | Some(Value::Null) => self.word(Word::Nothing).into(),
            Some(Value::Bool(yes)) => self.word(if *yes { Word::Yes } else { Word::No }).into(),
            Some(Value::Number(it)) => number(it),
            Some(Value::String(text)) if text.is_empty() => self.word(Word::Nothing).into(),
            Some(Value::String(text)) => {
                let place = match self.language {
                    Language::En => en::place(text),
                    Language::Es => es::place(text),
                };
                place.map_or_else(|| super::facts::named(self, text), str::to_owned)
            }
            Some(Value::Array(array)) => {
                let items: Vec<String> = array.iter().map(|item| self.value(Some(item))).collect();
                // A comma between numbers could be a decimal one.
                let between = if array.iter().all(Value::is_number) { "; " } else { ", " };
                if items.is_empty() { self.word(Word::Nothing).into() } else { items.join(between) }
            }
            Some(Value::Object(parts)) => match (parts.get("value"), parts.get("unit")) {
                // A price whose money nobody named is a number: its field says what of.
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

    /// What changed, as one sentence; long lists are cut.
    #[must_use]
    pub fn changes(self, changes: &[Difference]) -> String {
        const SHOWN: usize = 4;
        let one = |change: &Difference| {
            self.tell(&Told::Changed {
                what: self.field(&change.path),
                before: self.value(change.before.as_ref()),
                after: self.value(change.after.as_ref()),
            })
        };
        let mut told: Vec<String> = changes.iter().take(SHOWN).map(one).collect();
        if changes.len() > SHOWN {
            told.push(self.tell(&Told::MoreChanges { count: changes.len() - SHOWN }));
        }
        told.join(" ")
    }

    /// A whole number with its thousands apart.
    #[must_use]
    pub fn count(self, count: usize) -> String {
        Numeral(self.language).fixed(count as f64, 0)
    }
}
