//! What can happen to the records.

use super::{RecordGroup, RoomChange};
use crate::library::Library;
use crate::library::log::{Key, Kind};
use crate::library::storage_layout::Contents;
use std::sync::Arc;

/// Something that happened on the Library screen or to the store.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordsMsg {
    /// The store was opened: what ships, who this is, and every line that was kept.
    Opened {
        /// The library that ships.
        ships: Arc<Library>,
        /// This tablet.
        tablet: String,
        /// This opening of its page.
        session: String,
        /// What was kept.
        contents: Contents,
    },
    /// What another tab has stored.
    Synced(Contents),
    /// Time goes on.
    Tick,
    /// Something is searched for.
    Search(String),
    /// It is looked for in something else.
    Group(RecordGroup),
    /// More of what was found.
    More,
    /// A record is opened.
    Open(Key),
    /// It is closed.
    Close,
    /// A record becomes again what it was after an entry.
    BringBack(Key, Box<str>),
    /// A record goes.
    Remove(Key),
    /// A record is changed by hand.
    Edit(Key),
    /// A new record of this kind is written, as part of another if one is named.
    New(Kind, Option<Box<str>>),
    /// Text was typed into the column of this number.
    Type(usize, String),
    /// What was written is kept.
    SaveForm,
    /// What was written is dropped.
    DiscardForm,
    /// Of a conflict of the open record, the claim of this number holds: which conflict, which claim.
    Resolve(usize, usize),
    /// The cloth in the order is kept as a record, with its lot.
    KeepCloth,
    /// The order is kept as a record.
    KeepOrder,
    /// A cloth or an order of the library goes into the form.
    PutInForm(Key),
    /// A file was opened.
    FileChosen(String, Vec<u8>),
    /// Of a conflict that waits to come in, the claim of this number is chosen.
    ChooseClaim(usize, usize),
    /// What waits comes in.
    Import,
    /// What waits is left, or what was refused is understood.
    DismissImport,
    /// The records were saved as a file.
    FileSaved,
    /// Something was answered about the print room.
    PrintRoom(RoomChange),
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
}

impl RecordsMsg {
    /// Whether it adds to the log.
    pub(super) fn writes(&self) -> bool {
        matches!(
            self,
            Self::BringBack(..)
                | Self::Remove(_)
                | Self::Edit(_)
                | Self::New(..)
                | Self::SaveForm
                | Self::Resolve(..)
                | Self::KeepCloth
                | Self::KeepOrder
                | Self::Import
                | Self::FileSaved
                | Self::PrintRoom(_)
                | Self::Undo
                | Self::Redo
        )
    }
}
