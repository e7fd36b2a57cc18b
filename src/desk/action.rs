//! What a tap on a static view asks for, as the text of its `data-do` attribute.
//!
//! The text is a word of the action and, behind a colon, what it is about: `open-record:batch gannet/tub-0`,
//! `theme:dark`. Kinds and choices are written by their own words, so that the order of an enum means nothing. Text
//! that no action writes is refused.

use super::form::Theme;
use super::records::{RecordGroup, RoomChange};
use crate::diagnosis::Defect;
use crate::library::log::{Key, Kind};
use crate::library::table::RecordTable;
use crate::wording::{Language, Units};
use serde::Serialize;
use std::fmt;

/// A step of a number that has a button on each side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Nudge {
    /// One step down.
    Less,
    /// One step up.
    More,
}

impl Nudge {
    /// Both.
    const ALL: [Self; 2] = [Self::Less, Self::More];

    /// Taps of a stepper: one down or one up.
    #[must_use]
    pub fn taps(self) -> i32 {
        match self {
            Self::Less => -1,
            Self::More => 1,
        }
    }
}

/// What a tap on a static view asks for.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// Shows the cure window.
    ShowWindow,
    /// Chooses the pick of this key.
    ChoosePick(String),
    /// Shows what one recipe of the trade-off chart costs, by its place in the chart.
    TapTradeOff(usize),
    /// Answers that the polyester is not dyed.
    AssumeUndyed,
    /// Goes back to the last draft that could be read.
    BackToReadable,
    /// Says what is seen on a print, or takes that back.
    Defect(Defect),
    /// Answers a question about the print room.
    Room(RoomChange),
    /// Shows the page in a language.
    Language(Language),
    /// Shows the page in a system of units.
    Units(Units),
    /// Shows the page in a theme.
    Theme(Theme),
    /// Moves the humidity of the room a step.
    Humidity(Nudge),
    /// Moves the transfer of the mesh a step; without a step it goes back to the prior.
    Transfer(Option<Nudge>),
    /// Searches in a group of records.
    Group(RecordGroup),
    /// Searches for a text.
    Search(String),
    /// Shows more of what was found.
    ShowMore,
    /// Opens a record.
    OpenRecord(Key),
    /// Begins a record of a kind, as part of another if one is named by its id.
    NewRecord(Kind, Option<Box<str>>),
    /// Changes the open record by hand.
    EditRecord,
    /// Removes the open record.
    RemoveRecord,
    /// Makes the open record again what it was after an entry of the log.
    BringBack(Box<str>),
    /// Puts a cloth or an order into the order form.
    PutInForm(Key),
    /// Saves the record that is being written.
    SaveForm,
    /// Discards it.
    DiscardForm,
    /// Begins a new order, to read a new cloth from its label.
    NewCloth,
    /// Keeps the cloth of the order form as a record.
    KeepCloth,
    /// Keeps the order of the form as a record.
    KeepOrder,
    /// Of a conflict of the open record, lets a claim hold: places of both.
    Resolve(usize, usize),
    /// Of a conflict in a file that waits to be imported, chooses a claim: places of both.
    ChooseClaim(usize, usize),
    /// Imports the file that waits.
    Import,
    /// Dismisses the file that waits, or was refused.
    DismissImport,
    /// Saves the records as a file.
    SaveLibrary,
    /// Saves a table as a file.
    SaveTable(RecordTable),
    /// Lets a file be chosen that is kept up to date from now on.
    AutosaveFile,
}

impl fmt::Display for Action {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::ShowWindow => f.write_str("show-window"),
            Self::ChoosePick(key) => write!(f, "choose-pick:{key}"),
            Self::TapTradeOff(place) => write!(f, "tap-trade-off:{place}"),
            Self::AssumeUndyed => f.write_str("assume-undyed"),
            Self::BackToReadable => f.write_str("back-to-readable"),
            Self::Defect(defect) => write!(f, "defect:{}", word(defect)),
            Self::Room(RoomChange::Shelf(id)) => write!(f, "shelf:{id}"),
            Self::Room(RoomChange::Dryer(id)) => write!(f, "dryer:{id}"),
            Self::Room(RoomChange::Mesh(id)) => write!(f, "mesh:{id}"),
            Self::Room(RoomChange::Money(sign)) => write!(f, "money:{sign}"),
            Self::Room(RoomChange::Open) => f.write_str("open-print-room"),
            Self::Room(RoomChange::Demo) => f.write_str("back-to-demo"),
            Self::Language(language) => write!(f, "language:{}", word(language)),
            Self::Units(units) => write!(f, "units:{}", word(units)),
            Self::Theme(theme) => write!(f, "theme:{}", word(theme)),
            Self::Humidity(nudge) => write!(f, "humidity:{}", word(nudge)),
            Self::Transfer(Some(nudge)) => write!(f, "transfer:{}", word(nudge)),
            Self::Transfer(None) => f.write_str("transfer:prior"),
            Self::Group(group) => write!(f, "group:{}", word(group)),
            Self::Search(text) => write!(f, "search:{text}"),
            Self::ShowMore => f.write_str("show-more"),
            Self::OpenRecord(Key { kind, id }) => write!(f, "open-record:{} {id}", word(kind)),
            Self::NewRecord(kind, None) => write!(f, "new-record:{}", word(kind)),
            Self::NewRecord(kind, Some(owner)) => write!(f, "new-record:{} {owner}", word(kind)),
            Self::EditRecord => f.write_str("edit-record"),
            Self::RemoveRecord => f.write_str("remove-record"),
            Self::BringBack(entry) => write!(f, "bring-back:{entry}"),
            Self::PutInForm(Key { kind, id }) => write!(f, "put-in-form:{} {id}", word(kind)),
            Self::SaveForm => f.write_str("save-form"),
            Self::DiscardForm => f.write_str("discard-form"),
            Self::NewCloth => f.write_str("new-cloth"),
            Self::KeepCloth => f.write_str("keep-cloth"),
            Self::KeepOrder => f.write_str("keep-order"),
            Self::Resolve(conflict, claim) => write!(f, "resolve:{conflict} {claim}"),
            Self::ChooseClaim(conflict, claim) => write!(f, "choose-claim:{conflict} {claim}"),
            Self::Import => f.write_str("import"),
            Self::DismissImport => f.write_str("dismiss-import"),
            Self::SaveLibrary => f.write_str("save-library"),
            Self::SaveTable(table) => write!(f, "save-table:{}", word(table)),
            Self::AutosaveFile => f.write_str("autosave-file"),
        }
    }
}

impl Action {
    /// The action that a text names; nothing for a text that no action writes.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let Some((name, about)) = text.split_once(':') else { return Self::bare(text) };
        Some(match name {
            "choose-pick" => Self::ChoosePick(about.into()),
            "tap-trade-off" => Self::TapTradeOff(about.parse().ok()?),
            "defect" => Self::Defect(of_word(about, Defect::ALL)?),
            "shelf" => Self::Room(RoomChange::Shelf(about.into())),
            "dryer" => Self::Room(RoomChange::Dryer(about.into())),
            "mesh" => Self::Room(RoomChange::Mesh(about.into())),
            "money" => Self::Room(RoomChange::Money(about.into())),
            "language" => Self::Language(of_word(about, [Language::En, Language::Es])?),
            "units" => Self::Units(of_word(about, [Units::Metric, Units::Us])?),
            "theme" => Self::Theme(of_word(about, Theme::ALL)?),
            "humidity" => Self::Humidity(of_word(about, Nudge::ALL)?),
            "transfer" if about == "prior" => Self::Transfer(None),
            "transfer" => Self::Transfer(Some(of_word(about, Nudge::ALL)?)),
            "group" => Self::Group(of_word(about, RecordGroup::ALL)?),
            "search" => Self::Search(about.into()),
            "open-record" => Self::OpenRecord(key(about)?),
            "new-record" => match about.split_once(' ') {
                Some((kind, owner)) => Self::NewRecord(of_word(kind, Kind::ALL)?, Some(owner.into())),
                None => Self::NewRecord(of_word(about, Kind::ALL)?, None),
            },
            "bring-back" => Self::BringBack(about.into()),
            "put-in-form" => Self::PutInForm(key(about)?),
            "resolve" => places(about).map(|(conflict, claim)| Self::Resolve(conflict, claim))?,
            "choose-claim" => places(about).map(|(conflict, claim)| Self::ChooseClaim(conflict, claim))?,
            "save-table" => Self::SaveTable(of_word(about, RecordTable::ALL)?),
            _ => return None,
        })
    }

    /// The action of a text that is about nothing else.
    fn bare(text: &str) -> Option<Self> {
        Some(match text {
            "show-window" => Self::ShowWindow,
            "assume-undyed" => Self::AssumeUndyed,
            "back-to-readable" => Self::BackToReadable,
            "open-print-room" => Self::Room(RoomChange::Open),
            "back-to-demo" => Self::Room(RoomChange::Demo),
            "show-more" => Self::ShowMore,
            "edit-record" => Self::EditRecord,
            "remove-record" => Self::RemoveRecord,
            "save-form" => Self::SaveForm,
            "discard-form" => Self::DiscardForm,
            "new-cloth" => Self::NewCloth,
            "keep-cloth" => Self::KeepCloth,
            "keep-order" => Self::KeepOrder,
            "import" => Self::Import,
            "dismiss-import" => Self::DismissImport,
            "save-library" => Self::SaveLibrary,
            "autosave-file" => Self::AutosaveFile,
            _ => return None,
        })
    }
}

/// The kebab-case word of a choice, as serde writes it.
fn word(choice: &impl Serialize) -> String {
    match serde_json::to_value(choice) {
        Ok(serde_json::Value::String(word)) => word,
        _ => String::new(),
    }
}

/// The one among all choices whose word this is.
fn of_word<T: Serialize>(text: &str, all: impl IntoIterator<Item = T>) -> Option<T> {
    all.into_iter().find(|choice| word(choice) == text)
}

/// A key as `kind id`.
fn key(text: &str) -> Option<Key> {
    let (kind, id) = text.split_once(' ')?;
    Some(Key::new(of_word(kind, Kind::ALL)?, id))
}

fn places(text: &str) -> Option<(usize, usize)> {
    let (first, second) = text.split_once(' ')?;
    Some((first.parse().ok()?, second.parse().ok()?))
}
