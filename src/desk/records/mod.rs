//! The Library screen: the shop's records, what is searched for, the record that is open, and what waits to be
//! imported.
//!
//! In: stored lines of the log, [`RecordsMsg`]s, the draft where cloth or order are kept.
//! Out: lines to store, the library that orders are answered with, and what the screen shows.
//! Must not know: the page's state, an answer, the browser.
//!
//! Every change of a record is an entry appended to the log; nothing is overwritten. A file is previewed first
//! ([`Incoming`]) and imported only when that is confirmed. The search index is made on first use.

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

/// The time of the tablet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Clock {
    /// ms since 1970.
    pub now: i64,
    /// Minutes by which local time is ahead of UTC.
    pub ahead: i32,
}

/// A group of records that is searched together.
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
    /// Every group, in the order of the screen.
    pub const ALL: [Self; 5] = [Self::Fabrics, Self::Whites, Self::Lots, Self::Dryers, Self::Orders];

    /// The kinds of record in it.
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

/// Hits that are shown before more are asked for.
pub const HITS: usize = 12;

/// Id of the setting that says when this tablet last saved a file.
fn saved_id(tablet: &str) -> String {
    format!("saved-file/{tablet}")
}

/// The shop's records on the page.
#[derive(Clone, Debug, Default)]
pub struct Records {
    /// Counts every message, so that two states are compared without comparing logs.
    revision: u64,
    ships: Arc<Library>,
    library: Arc<Library>,
    log: Log,
    index: OnceLock<SearchIndex>,
    clock: Clock,
    /// Stored lines that this version cannot read; they stay in the store.
    unreadable: BTreeSet<Box<str>>,
    asked: String,
    group: RecordGroup,
    found: OnceLock<SearchHits>,
    shown: usize,
    open: Option<Key>,
    form: Option<Form>,
    incoming: Option<Incoming>,
    refused: Option<Refused>,
    /// Whether the library has changed since orders were last answered with it.
    library_changed: bool,
}

/// Two states of the records are the same if no message came between them.
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

    /// Every known mesh, in the shop's own print room or not: id and threads per cm.
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

    /// The group that is searched.
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

    /// The file that waits to be imported.
    #[must_use]
    pub fn incoming(&self) -> Option<&Incoming> {
        self.incoming.as_ref()
    }

    /// Why the last file cannot be imported.
    #[must_use]
    pub fn refused(&self) -> Option<&Refused> {
        self.refused.as_ref()
    }

    /// How many stored lines cannot be read.
    #[must_use]
    pub fn unreadable(&self) -> usize {
        self.unreadable.len()
    }

    /// Whether the records cannot be changed, because a newer version of this page wrote some of them.
    #[must_use]
    pub fn read_only(&self) -> bool {
        self.log.read_only()
    }

    /// The time of the last message.
    #[must_use]
    pub fn clock(&self) -> Clock {
        self.clock
    }

    /// Whether the library has changed since orders were last answered with it.
    pub(super) fn library_changed(&self) -> bool {
        self.library_changed
    }

    /// The same, once: asked again, it has not.
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

    /// Updates library and index for one record.
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

    /// Works the library out anew; the index follows when it is next used.
    fn refold(&mut self) {
        // Without records the library stays the very object that ships, so that its cached answers stay valid.
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

    /// Limits the library to the meshes of the shop's own print room.
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

    /// The search index.
    fn index(&self) -> &SearchIndex {
        self.index.get_or_init(|| SearchIndex::of(&self.library, &self.log))
    }

    /// What was found.
    fn answers(&self) -> &SearchHits {
        self.found.get_or_init(|| self.index().find(&self.asked, self.group.kinds()))
    }

    /// Makes the index before the first search needs it.
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
