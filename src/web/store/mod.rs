//! The store: lines saved in this browser, and acknowledged only when they are on the disk.
//!
//! In: lines of the log, drafts in named slots.
//! Out: everything that is stored, and what other tabs store later.
//! Must not know: what a line says. How lines are laid out in the database is decided in [`storage_layout`].
//!
//! [`Store::append`] and [`Store::keep`] return when their transaction is durable. Tabs share the database and no
//! memory: each adds rows and never rewrites one, so that no tab overwrites what another saved; a tab that is told
//! of new rows [reads them](Store::read_on). The store works from a local file and over plain http.
//!
//! **Decision:** lines in IndexedDB, strictly durable: a journal of single rows, sealed into texts of a
//! thousand lines; tabs only add rows.
//! **Because:** a row is a small write, a text a quick read, and no tab can overwrite another.
//! **Measured:** a browser reads 200 texts ten times as fast as 200,000 rows (by 2026-11-25, browser and
//! machine not recorded).
//! **Reconsider when:** `cargo xtask bench --only storage` shows that rows read as fast as texts.

mod database;
mod tab_channel;
pub mod web_storage;

use crate::library::storage_layout::{
    self, Contents, JournalRow, Line, ObjectStore, SCHEMA, SEGMENT, Sealing, Trouble,
};
use database::{Database, Transaction};
use js_sys::Array;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use tab_channel::TabChannel;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;

pub use database::trouble;

/// The name of the page's database: a name of our own, because local files may share their storage.
pub const NAME: &str = "whitehold";

/// Segments read at once, of about 100 kB each: few, so that a long library is never twice in memory.
const SEGMENTS_AT_ONCE: u32 = 32;

/// Rows of the journal read at once.
const ROWS_AT_ONCE: u32 = 4 * SEGMENT as u32;

/// The message to other tabs that something was saved.
const SAVED: &str = "saved";

/// The message of a tab that opens, followed by its name.
const HERE: &str = "here ";

/// An open store; cheap to clone.
#[derive(Clone)]
pub struct Store {
    inner: Rc<Inner>,
}

struct Inner {
    name: String,
    database: Database,
    tabs: TabChannel,
    /// Why it can only be read.
    trouble: RefCell<Option<Trouble>>,
    /// Keys of the last segment and the last row that were read.
    read: Cell<(f64, f64)>,
    /// Rows in the journal, as far as this tab knows.
    rows: Cell<usize>,
}

/// A store that was opened, with its contents.
pub struct OpenedStore {
    /// The store.
    pub store: Store,
    /// Everything in it.
    pub contents: Contents,
    /// True if something was stored here before, and is gone.
    pub wiped: bool,
}

impl Store {
    /// Opens the database of this name. `tell` is called with later problems, and while the opening waits for another
    /// tab.
    ///
    /// # Errors
    /// [`Trouble`] if nothing can be read. A database of a later version opens, and refuses every change.
    pub async fn open(name: &str, tell: impl Fn(Trouble) + Clone + 'static) -> Result<OpenedStore, Trouble> {
        Self::open_as(name, SCHEMA, tell).await
    }

    /// Opens it as a page of another version would; for tests.
    ///
    /// # Errors
    /// [`Trouble`] if nothing can be read.
    pub async fn open_as(
        name: &str,
        schema: u32,
        tell: impl Fn(Trouble) + Clone + 'static,
    ) -> Result<OpenedStore, Trouble> {
        let told = tell.clone();
        let opened = Database::open(name, Some(schema), move || told(Trouble::Blocked)).await;
        let (database, trouble) = match opened {
            Err(Trouble::Newer) => (Database::open(name, None, || ()).await?, Some(Trouble::Newer)),
            opened => (opened?, None),
        };
        let store = Self {
            inner: Rc::new(Inner {
                name: name.into(),
                database,
                tabs: TabChannel::open(name),
                trouble: RefCell::new(trouble),
                read: Cell::new((0.0, 0.0)),
                rows: Cell::new(0),
            }),
        };
        let closing = Rc::downgrade(&store.inner);
        store.inner.database.when_closed(move || {
            if let Some(inner) = closing.upgrade() {
                inner.trouble.replace(Some(Trouble::Closed));
                tell(Trouble::Closed);
            }
        });
        let contents = store.read_on().await.map_err(|error| store.trouble().unwrap_or(error))?;
        store.inner.rows.set(contents.journal.len());
        let wiped = contents.is_empty() && web_storage::is_set(name);
        store.seal_if_long();
        Ok(OpenedStore { store, contents, wiped })
    }

    /// Why nothing can be saved, where that is known.
    #[must_use]
    pub fn trouble(&self) -> Option<Trouble> {
        self.inner.trouble.borrow().clone()
    }

    /// Saves lines. As many as a whole segment holds go into segments at once.
    ///
    /// # Errors
    /// [`Trouble`] if none of them was saved.
    pub async fn append(&self, lines: &[Line]) -> Result<(), Trouble> {
        let (segments, rest) = storage_layout::sort(lines);
        let transaction = self.write()?;
        // One segment at a time, so that a whole library is never twice in memory.
        for lines in segments {
            transaction.add(ObjectStore::Segments, &storage_layout::segment(lines).into())?;
        }
        for line in &rest {
            transaction.add(ObjectStore::Journal, &row(line, None))?;
        }
        transaction.commit().await?;
        self.saved(rest.len());
        Ok(())
    }

    /// Saves a line as the newest of a slot.
    ///
    /// # Errors
    /// [`Trouble`] if it was not saved; the slot then keeps its line before.
    pub async fn keep(&self, slot: &str, line: &Line) -> Result<(), Trouble> {
        let transaction = self.write()?;
        transaction.add(ObjectStore::Journal, &row(line, Some(slot)))?;
        transaction.commit().await?;
        self.saved(1);
        Ok(())
    }

    /// What was saved since the last reading, by this tab or another. Lines that were sealed meanwhile are read
    /// again.
    ///
    /// # Errors
    /// [`Trouble`] if it cannot be read.
    pub async fn read_on(&self) -> Result<Contents, Trouble> {
        let transaction = self.inner.database.read()?;
        let (mut segment, mut row) = self.inner.read.get();
        let mut contents = Contents::default();
        // Both are requested before either is awaited, so that a page that opens waits for the disk once.
        let mut segments = transaction.rows(ObjectStore::Segments, segment, SEGMENTS_AT_ONCE)?;
        let mut journal = transaction.rows(ObjectStore::Journal, row, ROWS_AT_ONCE)?;
        loop {
            let rows = segments.await?;
            let Some((last, _)) = rows.last() else { break };
            segment = *last;
            contents.segments.extend(rows.iter().filter_map(|(_, text)| text.as_string()));
            segments = transaction.rows(ObjectStore::Segments, segment, SEGMENTS_AT_ONCE)?;
        }
        loop {
            let rows = journal.await?;
            let Some((last, _)) = rows.last() else { break };
            row = *last;
            contents.journal.extend(rows.iter().filter_map(|(key, value)| read_row(*key, value)));
            journal = transaction.rows(ObjectStore::Journal, row, ROWS_AT_ONCE)?;
        }
        self.inner.read.set((segment, row));
        Ok(contents)
    }

    /// Calls `then` when another tab has saved something, and when this tab comes to the front, because it may have.
    pub fn on_news(&self, then: impl Fn() + Clone + 'static) {
        let heard = then.clone();
        self.inner.tabs.listen(move |word| {
            if word == SAVED {
                heard();
            }
        });
        tab_channel::when_in_front(then);
    }

    /// Announces the name of this tab, and calls `then` with the name that another tab announces: the same one
    /// where a tab was duplicated.
    pub fn introduce(&self, tab: &str, then: impl Fn(&str) + 'static) {
        self.inner.tabs.tell(&format!("{HERE}{tab}"));
        self.inner.tabs.listen(move |word| {
            if let Some(name) = word.strip_prefix(HERE) {
                then(name);
            }
        });
    }

    /// Seals the journal: moves its rows into segments, in one transaction.
    ///
    /// # Errors
    /// [`Trouble`] if the journal stays as it is; nothing is lost.
    pub async fn seal(&self) -> Result<Sealing, Trouble> {
        let transaction = self.write()?;
        let rows = transaction.rows(ObjectStore::Journal, 0.0, u32::MAX)?.await?;
        let rows: Vec<JournalRow> = rows.iter().filter_map(|(key, value)| read_row(*key, value)).collect();
        let sealing = storage_layout::seal(&rows);
        for text in &sealing.segments {
            transaction.add(ObjectStore::Segments, &text.into())?;
        }
        for key in &sealing.gone {
            transaction.delete(ObjectStore::Journal, *key)?;
        }
        transaction.commit().await?;
        self.inner.rows.set(rows.len() - sealing.gone.len());
        Ok(sealing)
    }

    /// Closes the connection, as happens when a tab is closed.
    pub fn close(&self) {
        self.inner.database.close();
        self.inner.trouble.replace(Some(Trouble::Closed));
    }

    fn write(&self) -> Result<Transaction, Trouble> {
        match self.trouble() {
            Some(trouble) => Err(trouble),
            None => self.inner.database.write(),
        }
    }

    /// After a save: notes it in web storage, tells the other tabs, and seals a journal that has grown long.
    fn saved(&self, rows: usize) {
        web_storage::set(&self.inner.name);
        self.inner.tabs.tell(SAVED);
        self.inner.rows.set(self.inner.rows.get() + rows);
        self.seal_if_long();
    }

    fn seal_if_long(&self) {
        if self.trouble().is_some() || !storage_layout::is_long(self.inner.rows.get()) {
            return;
        }
        // Counting restarts here, so that a sealing that fails is not tried again at every save.
        self.inner.rows.set(0);
        let store = self.clone();
        spawn_local(async move {
            let _ = store.seal().await;
        });
    }
}

/// A line as a row of the journal: its id, its text, its slot if it has one.
fn row(line: &Line, slot: Option<&str>) -> JsValue {
    let row = Array::of2(&line.id.as_str().into(), &line.text.as_str().into());
    if let Some(slot) = slot {
        row.push(&slot.into());
    }
    row.into()
}

/// A row of the journal as a line; `None` if it is not of our making.
fn read_row(key: f64, value: &JsValue) -> Option<JournalRow> {
    let row: &Array = value.dyn_ref()?;
    let line = Line { id: row.get(0).as_string()?, text: row.get(1).as_string()? };
    Some(JournalRow { key, line, slot: row.get(2).as_string() })
}
