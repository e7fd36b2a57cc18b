//! Saves the draft in this browser: each tab has its own, in a slot of the store with the tab's name.
//!
//! While one save is on its way the next draft waits, and a newer one replaces it, so that what is reported as
//! saved is always what is on the page.
//!
//! **Decision:** a draft goes to the store after the tap that changed it is painted.
//! **Because:** a tablet that stores first shows the tap later.
//! **Measured:** on 2026-11-29, figures and machine not recorded.
//! **Reconsider when:** browsers store without holding up the page.

use super::store::{self, OpenedStore, Store, web_storage};
use crate::desk::{Draft, draft_file};
use crate::library::storage_layout::{Contents, JournalRow, Line, Trouble};
use leptos::prelude::set_timeout;
use std::cell::RefCell;
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen_futures::spawn_local;

/// Prefix of the slots of drafts.
const DRAFTS: &str = "draft/";

/// Called when the draft on the page was saved, or could not be.
type Told = dyn Fn(Result<(), Trouble>);

/// Saves drafts; cheap to clone.
#[derive(Clone)]
pub struct DraftSaver {
    inner: Rc<RefCell<Inner>>,
}

struct Inner {
    /// `None` while the store is still opening.
    store: Option<Result<Store, Trouble>>,
    /// The name of this tab.
    tab: String,
    /// How many drafts this page has saved.
    saved: u32,
    /// The draft on the page.
    latest: String,
    waiting: Option<String>,
    busy: bool,
    told: Rc<Told>,
}

impl DraftSaver {
    /// A saver without a store yet. `told` is called when the draft on the page was saved, or could not be.
    pub fn new(told: impl Fn(Result<(), Trouble>) + 'static) -> Self {
        let tab = web_storage::tab(store::NAME).unwrap_or_else(|| web_storage::name_tab(store::NAME));
        let inner = Inner {
            store: None,
            tab,
            saved: 0,
            latest: String::new(),
            waiting: None,
            busy: false,
            told: Rc::new(told),
        };
        Self { inner: Rc::new(RefCell::new(inner)) }
    }

    /// Saves a draft, now or when there is a store.
    pub fn keep(&self, text: String) {
        let mut inner = self.inner.borrow_mut();
        inner.latest.clone_from(&text);
        inner.waiting = Some(text);
        drop(inner);
        // Not within the tap, which is to be painted first; and not with a frame, because a page in the background
        // has none.
        let saver = self.clone();
        set_timeout(move || saver.go_on(), Duration::ZERO);
    }

    /// Hands over the store, or why there is none, and saves what waits.
    pub fn use_store(&self, store: Result<Store, Trouble>) {
        if let Ok(store) = &store {
            let saver = self.clone();
            let tab = self.inner.borrow().tab.clone();
            store.introduce(&tab, move |other| saver.step_aside(other));
        }
        self.inner.borrow_mut().store = Some(store);
        self.go_on();
    }

    /// A duplicated tab has the name of the tab that it was copied from, and announces it: this one then takes a
    /// new name and saves its draft under that.
    fn step_aside(&self, other: &str) {
        if self.inner.borrow().tab == other {
            self.take_a_new_name();
            self.go_on();
        }
    }

    /// Saves under a new name from now on, so that the draft under the old one stays.
    pub fn take_a_new_name(&self) {
        let mut inner = self.inner.borrow_mut();
        inner.tab = web_storage::name_tab(store::NAME);
        if !inner.latest.is_empty() {
            inner.waiting = Some(inner.latest.clone());
        }
    }

    fn go_on(&self) {
        let mut inner = self.inner.borrow_mut();
        if inner.busy || inner.waiting.is_none() || inner.store.is_none() {
            return;
        }
        inner.busy = true;
        drop(inner);
        let saver = self.clone();
        spawn_local(async move {
            while let Some(result) = saver.save().await {
                if let Some(told) = saver.settled() {
                    told(result);
                }
            }
        });
    }

    /// The callback for the last save; `None` while a newer draft waits.
    fn settled(&self) -> Option<Rc<Told>> {
        let inner = self.inner.borrow();
        inner.waiting.is_none().then(|| Rc::clone(&inner.told))
    }

    /// Takes the waiting draft as a line for its slot; `None` if none waits.
    fn take(&self) -> Option<(Line, String, Result<Store, Trouble>)> {
        let mut inner = self.inner.borrow_mut();
        let Some((text, store)) = inner.waiting.take().zip(inner.store.clone()) else {
            inner.busy = false;
            return None;
        };
        inner.saved += 1;
        let line = Line::new(format!("{}-{}", inner.tab, inner.saved), text);
        Some((line, slot(&inner.tab), store))
    }

    /// Saves the waiting draft; `None` if none waits.
    async fn save(&self) -> Option<Result<(), Trouble>> {
        let (line, slot, store) = self.take()?;
        Some(match store {
            Ok(store) => store.keep(&slot, &line).await,
            Err(trouble) => Err(trouble),
        })
    }
}

fn slot(tab: &str) -> String {
    format!("{DRAFTS}{tab}")
}

/// Opens the page's store. `tell` is called with later problems.
///
/// # Errors
/// [`Trouble`] if nothing can be stored in this browser.
pub async fn open(tell: impl Fn(Trouble) + Clone + 'static) -> Result<OpenedStore, Trouble> {
    Store::open(store::NAME, tell).await
}

/// The draft to continue with: that of this tab, the newest of any, or the one that an earlier version saved.
/// Language, units and theme are those of the newest, because they belong to the reader and not to a tab.
#[must_use]
pub fn draft(contents: &Contents) -> Option<Draft> {
    let own = own(contents).and_then(|row| draft_file::read(&row.line.text));
    let newest = contents.slots(DRAFTS).find_map(|row| draft_file::read(&row.line.text));
    let earlier =
        || draft_file::read(&web_storage::earlier_draft().filter(|_| !web_storage::is_set(store::NAME))?);
    match (own, newest) {
        (Some(own), Some(newest)) => Some(own.read_like(&newest)),
        (own, newest) => own.or(newest).or_else(earlier),
    }
}

/// Whether a later version of the page wrote the draft of this tab: it must not be overwritten.
#[must_use]
pub fn is_of_a_later_version(contents: &Contents) -> bool {
    own(contents).is_some_and(|row| draft_file::read(&row.line.text).is_none())
}

/// The saved draft of this tab.
fn own(contents: &Contents) -> Option<&JournalRow> {
    contents.slot(&slot(&web_storage::tab(store::NAME)?))
}
