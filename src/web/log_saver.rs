//! Saves lines of the log. Those that cannot be stored wait here and are tried again with the next.

use super::store::Store;
use crate::library::storage_layout::{Line, Trouble};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// Called with how many changes were stored, or why none was.
type Told = dyn Fn(u32, Result<(), Trouble>);

/// Saves lines; cheap to clone.
#[derive(Clone)]
pub struct LogSaver {
    inner: Rc<RefCell<Inner>>,
}

struct Inner {
    /// `None` while the store is still opening.
    store: Option<Result<Store, Trouble>>,
    waiting: Vec<Line>,
    /// How many changes the waiting lines are of.
    changes: u32,
    busy: bool,
    told: Rc<Told>,
}

impl LogSaver {
    /// A saver without a store yet. `told` is called with how many changes were stored, or why none was.
    pub fn new(told: impl Fn(u32, Result<(), Trouble>) + 'static) -> Self {
        let inner = Inner { store: None, waiting: Vec::new(), changes: 0, busy: false, told: Rc::new(told) };
        Self { inner: Rc::new(RefCell::new(inner)) }
    }

    /// Hands over the store, or why there is none, and stores what waits.
    pub fn use_store(&self, store: Result<Store, Trouble>) {
        self.inner.borrow_mut().store = Some(store);
        self.go_on();
    }

    /// Stores the lines of one change, now or when there is a store.
    pub fn append(&self, lines: Vec<Line>) {
        let mut inner = self.inner.borrow_mut();
        inner.waiting.extend(lines);
        inner.changes += 1;
        drop(inner);
        self.go_on();
    }

    fn go_on(&self) {
        let mut inner = self.inner.borrow_mut();
        if inner.busy || inner.waiting.is_empty() {
            return;
        }
        let Some(store) = inner.store.clone() else { return };
        inner.busy = true;
        drop(inner);
        let saver = self.clone();
        spawn_local(async move { while saver.store_waiting(&store).await {} });
    }

    /// The waiting lines, and of how many changes they are; `None` if none wait.
    fn take(&self) -> Option<(Vec<Line>, u32)> {
        let mut inner = self.inner.borrow_mut();
        inner.busy = !inner.waiting.is_empty();
        inner.busy.then(|| (std::mem::take(&mut inner.waiting), std::mem::take(&mut inner.changes)))
    }

    /// Stores what waits; true if there may be more to do.
    async fn store_waiting(&self, store: &Result<Store, Trouble>) -> bool {
        let Some((lines, changes)) = self.take() else { return false };
        let result = match store {
            Ok(store) => store.append(&lines).await,
            Err(trouble) => Err(trouble.clone()),
        };
        let stored = result.is_ok();
        let told = self.settled(lines, changes, stored);
        told(changes, result);
        stored
    }

    /// Puts lines that could not be stored back, before those that came meanwhile. They are tried again with the next
    /// change.
    fn settled(&self, lines: Vec<Line>, changes: u32, stored: bool) -> Rc<Told> {
        let mut inner = self.inner.borrow_mut();
        if !stored {
            let later = std::mem::replace(&mut inner.waiting, lines);
            inner.waiting.extend(later);
            inner.changes += changes;
            inner.busy = false;
        }
        Rc::clone(&inner.told)
    }
}
