//! The draft kept in this browser. Every store may refuse: a private window, a sandboxed frame, a full disk.

use crate::desk::{Draft, State, keep};
use web_sys::Storage;

/// The key the draft is kept under; storage of local files may be shared, so it carries our name.
const KEY: &str = "whitehold.draft.1";

fn store() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Keeps the draft; true only if it can be read back.
#[must_use]
pub fn write(state: &State) -> bool {
    let text = keep::write(state);
    let Some(store) = store() else { return false };
    store.set_item(KEY, &text).is_ok() && store.get_item(KEY).ok().flatten().as_deref() == Some(text.as_str())
}

/// The draft that was kept, if there is one that can be read.
#[must_use]
pub fn read() -> Option<Draft> {
    keep::read(&store()?.get_item(KEY).ok()??)
}
