//! Words and sentences of the Library screen: records and their history, files, merges.

use super::Voice;
use super::language::in_language;
use crate::library::file::FileError;

/// A word or sentence of the Library screen without a number or name in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum LibraryLabel {
    Library,
    Search,
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
    Choose,
    Made,
    Copied,
    TakenOut,
    Undone,
    AsItIsNow,
    OnAnotherTablet,
    Merge,
    ThisTablet,
    TheFile,
    LeaveIt,
    NothingYet,
    NothingToMerge,
    TableOf,
    FixRows,
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

/// A sentence of the Library screen. Numbers and names come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each field is the piece of text of that name")]
pub enum LibraryPhrase {
    Records { count: String },
    SavedDaysAgo { days: i64 },
    Reminder { changes: String, days: Option<i64> },
    OfTotal { found: String, total: String },
    LookFor { word: String, count: String },
    NoneCalled { asked: String },
    LotsHere { lots: usize },
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
    pub fn word(self, word: LibraryLabel) -> &'static str {
        in_language!(self.language, library::label(word))
    }

    /// Why a file was refused, and what to do.
    #[must_use]
    pub fn file_error(self, error: &FileError) -> String {
        in_language!(self.language, library::file_error(error))
    }
}
