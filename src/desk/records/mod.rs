//! The Library screen: the shop's records, what is searched for, the record that is open, and what waits to come in.
//!
//! [`Records`] holds the log and what follows from it: the library that orders are answered with and the index that is
//! searched, made when somebody first looks for something. Every change of a record is an entry appended to the log and handed out as a line to store; nothing is
//! written over. A file is looked at first ([`Incoming`]) and comes in only when somebody says so.

mod form;
mod handle;
mod incoming;
mod msg;
mod room_settings;
mod sync;
mod trials;
mod view_model;

pub use incoming::{Incoming, Refused};
pub use msg::RecordsMsg;
pub(super) use room_settings::DRYER;
pub use room_settings::{RoomChange, RoomSettings, dryer_is_read};
pub use view_model::{Fact, Hit, Moment, OpenRecord, RecordEvent, Reminder};

use crate::library::log::{Change, Edit, Key, Kind, Log};
use crate::library::search::{SearchHits, SearchIndex};
use crate::library::storage_layout::Line;
use crate::library::table::Form;
use crate::library::{Library, shipped};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use std::sync::{Arc, OnceLock};

/// The time, as the tablet has it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Clock {
    /// ms since 1970.
    pub now: i64,
    /// Minutes by which the wall is ahead of UTC.
    pub ahead: i32,
}

/// What the search looks in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RecordGroup {
    /// Cloths.
    #[default]
    Fabrics,
    /// Whites, blockers and their batches.
    Whites,
    /// Dye lots and what was tried on them.
    Lots,
    /// Dryers and meshes.
    Dryers,
    /// Orders that were kept.
    Orders,
}

impl RecordGroup {
    /// Everything that can be looked in.
    pub const ALL: [Self; 5] = [Self::Fabrics, Self::Whites, Self::Lots, Self::Dryers, Self::Orders];

    /// The kinds of record it covers.
    #[must_use]
    pub fn kinds(self) -> &'static [Kind] {
        match self {
            Self::Fabrics => &[Kind::Fabric],
            Self::Whites => &[Kind::White, Kind::Blocker, Kind::Batch],
            Self::Lots => &[Kind::Lot, Kind::Trial, Kind::FollowUp],
            Self::Dryers => &[Kind::Dryer, Kind::Mesh],
            Self::Orders => &[Kind::Order],
        }
    }
}

/// Hits that are shown before somebody asks for more.
pub const HITS: usize = 12;

/// Id of the setting that says when this tablet last saved a file.
fn saved_id(tablet: &str) -> String {
    format!("saved-file/{tablet}")
}

/// The shop's records on the page.
#[derive(Clone, Debug, Default)]
pub struct Records {
    /// Counts every change, so that two states are told apart without comparing logs.
    revision: u64,
    ships: Arc<Library>,
    library: Arc<Library>,
    log: Log,
    index: OnceLock<SearchIndex>,
    clock: Clock,
    /// Lines of the store that this version cannot read; they stay where they are.
    unreadable: BTreeSet<Box<str>>,
    asked: String,
    group: RecordGroup,
    found: OnceLock<SearchHits>,
    shown: usize,
    open: Option<Key>,
    form: Option<Form>,
    incoming: Option<Incoming>,
    refused: Option<Refused>,
    /// Whether the library is another than orders were answered with.
    library_changed: bool,
}

/// Two shops are the same if nothing happened between them.
impl PartialEq for Records {
    fn eq(&self, other: &Self) -> bool {
        self.revision == other.revision && self.log.len() == other.log.len()
    }
}

impl Records {
    /// The library that orders are answered with.
    #[must_use]
    pub fn library(&self) -> &Arc<Library> {
        &self.library
    }

    /// Every mesh that is known, its own print room's or not: id and threads per cm.
    #[must_use]
    pub fn every_mesh(&self) -> Vec<(String, f64)> {
        let all = self.ships.meshes_with(&self.log);
        all.into_iter().map(|mesh| (mesh.id, mesh.threads_per_cm.value)).collect()
    }

    /// The log.
    #[must_use]
    pub fn log(&self) -> &Log {
        &self.log
    }

    /// What is searched for.
    #[must_use]
    pub fn asked(&self) -> &str {
        &self.asked
    }

    /// What it is looked for in.
    #[must_use]
    pub fn group(&self) -> RecordGroup {
        self.group
    }

    /// The record that is being written.
    #[must_use]
    pub fn form(&self) -> Option<&Form> {
        self.form.as_ref()
    }

    /// The record that is open.
    #[must_use]
    pub fn open(&self) -> Option<&Key> {
        self.open.as_ref()
    }

    /// What waits to come in.
    #[must_use]
    pub fn incoming(&self) -> Option<&Incoming> {
        self.incoming.as_ref()
    }

    /// Why the last file was not taken.
    #[must_use]
    pub fn refused(&self) -> Option<&Refused> {
        self.refused.as_ref()
    }

    /// Lines of the store that cannot be read.
    #[must_use]
    pub fn unreadable(&self) -> usize {
        self.unreadable.len()
    }

    /// Whether the records can only be read: a newer Whitehold wrote some of them.
    #[must_use]
    pub fn read_only(&self) -> bool {
        self.log.read_only()
    }

    /// The time of the last thing that happened.
    #[must_use]
    pub fn clock(&self) -> Clock {
        self.clock
    }

    /// Whether the library is another than orders were answered with.
    pub(super) fn library_changed(&self) -> bool {
        self.library_changed
    }

    /// The same, and from now on it counts as known.
    pub(super) fn take_library_changed(&mut self) -> bool {
        std::mem::take(&mut self.library_changed)
    }

    /// Writes a change as an entry; returns the line to store.
    fn append(&mut self, change: Change) -> Line {
        let entry = self.log.append(self.clock.now, change);
        for edit in entry.change.edits() {
            self.follow(&edit.key());
        }
        Line::new(&*entry.id, entry.line())
    }

    fn edit(&mut self, edits: Vec<Edit>, from: Option<String>) -> Option<Line> {
        (!edits.is_empty()).then(|| self.append(Change::Edit { edits, from }))
    }

    /// Brings library and index up to date with one record.
    fn follow(&mut self, key: &Key) {
        if *key == RoomSettings::key() {
            self.narrow();
        }
        if matches!(key.kind, Kind::Fabric | Kind::White | Kind::Blocker | Kind::Dryer | Kind::Mesh) {
            Arc::make_mut(&mut self.library).follow(&self.ships, &self.log, key);
            self.library_changed = true;
        }
        if let Some(index) = self.index.get_mut() {
            index.follow(&self.library, &self.log, key);
        }
    }

    /// Works the library out anew, and the index when it is asked next.
    fn refold(&mut self) {
        // Where the shop adds nothing it stays the very library that ships: what was answered with that is still true.
        self.library = Arc::clone(&self.ships);
        if !self.log.is_empty() {
            let library = self.ships.with(&self.log).0;
            if library != *self.ships {
                self.library = Arc::new(library);
            }
            self.narrow();
        }
        self.library_changed = true;
        self.index = OnceLock::new();
        self.search();
    }

    /// Leaves the shop's own print room with the meshes it has.
    fn narrow(&mut self) {
        let room = RoomSettings::of(&self.log);
        let meshes = if room.own { room.meshes } else { Vec::new() };
        let now: Vec<&str> = self.library.meshes.iter().map(|mesh| mesh.id.as_str()).collect();
        let all = self.ships.meshes_with(&self.log);
        let kept = |id: &str| meshes.is_empty() || meshes.iter().any(|mesh| mesh == id);
        let mut wanted: Vec<_> = all.iter().filter(|mesh| kept(&mesh.id)).cloned().collect();
        if wanted.is_empty() {
            wanted = all;
        }
        if !wanted.iter().map(|mesh| mesh.id.as_str()).eq(now) {
            Arc::make_mut(&mut self.library).meshes = wanted;
            self.library_changed = true;
        }
    }

    /// What is searched.
    fn index(&self) -> &SearchIndex {
        self.index.get_or_init(|| SearchIndex::of(&self.library, &self.log))
    }

    /// What was found.
    fn answers(&self) -> &SearchHits {
        self.found.get_or_init(|| self.index().find(&self.asked, self.group.kinds()))
    }

    /// Makes the index, so that whoever searches first does not wait for it.
    pub fn prepare(&self) {
        self.index();
    }

    fn search(&mut self) {
        self.found = OnceLock::new();
        if let Some(key) = self.open.take() {
            self.open = (self.log.record(key.kind, &key.id).is_some()
                || shipped(key.kind, &key.id).is_some())
            .then_some(key);
        }
    }
}
