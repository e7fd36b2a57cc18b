//! The draft kept in this browser: each tab has its own, in a slot of the store that bears the tab's name.
//!
//! While one save is on its way the next draft waits, and a newer one takes its place: what is reported kept is
//! always what stands on the page.
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

/// How the slots of drafts begin.
const DRAFTS: &str = "draft/";

/// Whoever hears whether what stands on the page is kept.
type Told = dyn Fn(Result<(), Trouble>);

/// Keeps drafts; cheap to copy.
#[derive(Clone)]
pub struct DraftSaver {
    inner: Rc<RefCell<Inner>>,
}

struct Inner {
    /// Nothing while the store is still opening.
    store: Option<Result<Store, Trouble>>,
    /// The name of this tab.
    tab: String,
    /// Drafts saved by this page.
    saved: u32,
    /// The draft that stands on the page.
    latest: String,
    waiting: Option<String>,
    busy: bool,
    told: Rc<Told>,
}

impl DraftSaver {
    /// A keeper that has no store yet. `told` hears whether what stands on the page is kept.
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

    /// Keeps a draft, now or when there is a store.
    pub fn keep(&self, text: String) {
        let mut inner = self.inner.borrow_mut();
        inner.latest.clone_from(&text);
        inner.waiting = Some(text);
        drop(inner);
        // Not within the tap, which is to be painted; and not with a frame, for a page in the background has none.
        let saver = self.clone();
        set_timeout(move || saver.go_on(), Duration::ZERO);
    }

    /// Hands over the store, or why there is none, and keeps what waits.
    pub fn use_store(&self, store: Result<Store, Trouble>) {
        if let Ok(store) = &store {
            let saver = self.clone();
            let tab = self.inner.borrow().tab.clone();
            store.introduce(&tab, move |other| saver.step_aside(other));
        }
        self.inner.borrow_mut().store = Some(store);
        self.go_on();
    }

    /// A duplicated tab bears the name of the tab it comes from and says so: this one takes a new name, and keeps what
    /// it shows under it.
    fn step_aside(&self, other: &str) {
        if self.inner.borrow().tab == other {
            self.take_a_new_name();
            self.go_on();
        }
    }

    /// Keeps under a new name from now on, so that what is kept under the old one stays.
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

    /// Who hears of the last save; nobody while a newer draft waits.
    fn settled(&self) -> Option<Rc<Told>> {
        let inner = self.inner.borrow();
        inner.waiting.is_none().then(|| Rc::clone(&inner.told))
    }

    /// Takes the waiting draft as a line for its slot; nothing if none waits.
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

    /// Saves the waiting draft; nothing if none waits.
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

/// Opens the page's store. `tell` hears what happens to it later.
///
/// # Errors
/// If nothing can be kept in this browser.
pub async fn open(tell: impl Fn(Trouble) + Clone + 'static) -> Result<OpenedStore, Trouble> {
    Store::open(store::NAME, tell).await
}

/// The draft to go on with: the one of this tab, the newest of any, or the one that an earlier version kept. Language,
/// units and theme are the newest's in any case: they belong to whoever works here, not to a tab.
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

/// Whether a later version of the page wrote what is kept of this tab: it must not be superseded.
#[must_use]
pub fn is_of_a_later_version(contents: &Contents) -> bool {
    own(contents).is_some_and(|row| draft_file::read(&row.line.text).is_none())
}

/// What is kept of this tab.
fn own(contents: &Contents) -> Option<&JournalRow> {
    contents.slot(&slot(&web_storage::tab(store::NAME)?))
}
