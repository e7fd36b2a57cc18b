//! What can happen to the records.

use super::{RecordGroup, RoomChange};
use crate::library::Library;
use crate::library::log::{Key, Kind};
use crate::library::storage_layout::Contents;
use std::sync::Arc;

/// Something that happened on the Library screen or to the store.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordsMsg {
    /// The store was opened.
    Opened {
        /// The library that ships.
        ships: Arc<Library>,
        /// Name of this tablet.
        tablet: String,
        /// Name of this opening of the page.
        session: String,
        /// Everything that is stored.
        contents: Contents,
    },
    /// Another tab has stored this.
    Synced(Contents),
    /// Nothing but the time has changed.
    Tick,
    /// A text is searched for.
    Search(String),
    /// Another group is searched.
    Group(RecordGroup),
    /// More hits are shown.
    More,
    /// A record is opened.
    Open(Key),
    /// The open record is closed.
    Close,
    /// A record becomes again what it was after this entry.
    BringBack(Key, Box<str>),
    /// A record is removed.
    Remove(Key),
    /// A record is changed by hand.
    Edit(Key),
    /// A new record of this kind is written, as part of another if one is named.
    New(Kind, Option<Box<str>>),
    /// Text was typed into the column at this place.
    Type(usize, String),
    /// The record that is being written is saved.
    SaveForm,
    /// It is discarded.
    DiscardForm,
    /// Of a conflict of the open record, a claim holds: places of conflict and claim.
    Resolve(usize, usize),
    /// The cloth in the order form is kept as a record, with its lot.
    KeepCloth,
    /// The order in the form is kept as a record.
    KeepOrder,
    /// A cloth or an order of the library is put into the form.
    PutInForm(Key),
    /// A file was chosen: its name and bytes.
    FileChosen(String, Vec<u8>),
    /// Of a conflict in the file that waits, a claim is chosen: places of conflict and claim.
    ChooseClaim(usize, usize),
    /// The file that waits is imported.
    Import,
    /// The file that waits, or the notice of a refused one, is dismissed.
    DismissImport,
    /// The records were saved as a file.
    FileSaved,
    /// A question about the print room was answered.
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
