//! Small values in web storage (`localStorage`, `sessionStorage`), beside the database: that something was stored,
//! names of tablet and tab, and the draft of versions before the database.
//!
//! A browser may clear a database that was not visited for long and leave these values: a mark without its database
//! is how that loss is noticed. A browser that clears everything at once leaves no trace.

use web_sys::Storage;

/// The key of the draft before there was a database.
const EARLIER_DRAFT: &str = "whitehold.draft.1";

fn local() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

fn session() -> Option<Storage> {
    web_sys::window()?.session_storage().ok()?
}

fn key(database: &str, note: &str) -> String {
    format!("{database}.{note}")
}

/// Marks that something is stored in a database of this name.
pub fn set(database: &str) {
    if let Some(store) = local() {
        // If localStorage refuses the mark, all that is lost is a later notice that stored data is gone.
        let _ = store.set_item(&key(database, "kept"), "1");
    }
}

/// True if something was stored in a database of this name.
#[must_use]
pub fn is_set(database: &str) -> bool {
    local().and_then(|store| store.get_item(&key(database, "kept")).ok().flatten()).is_some()
}

/// The draft that a version before the database saved.
#[must_use]
pub fn earlier_draft() -> Option<String> {
    local()?.get_item(EARLIER_DRAFT).ok()?
}

/// The random name of this tablet's browser, stored once. Where nothing can be stored it is new every time; changes
/// of earlier days then count as another tablet's.
#[must_use]
pub fn tablet(database: &str) -> String {
    let key = key(database, "tablet");
    let had = local().and_then(|store| store.get_item(&key).ok().flatten());
    had.filter(|name| !name.is_empty()).unwrap_or_else(|| {
        let name = random();
        if let Some(store) = local() {
            let _ = store.set_item(&key, &name);
        }
        name
    })
}

/// A random word of 96 bits. `randomUUID` does not exist over plain http.
#[must_use]
pub fn random() -> String {
    let part = || (js_sys::Math::random() * f64::from(1_u32 << 24) * f64::from(1_u32 << 24)) as u64;
    format!("{:012x}{:012x}", part(), part())
}

/// The name of this tab, the same after a reload; `None` for a new tab.
#[must_use]
pub fn tab(database: &str) -> Option<String> {
    session()?.get_item(&key(database, "tab")).ok()?
}

/// Gives this tab a new name that no other tab has.
#[must_use]
pub fn name_tab(database: &str) -> String {
    let name = random();
    if let Some(store) = session() {
        // If this fails, the tab is a new one after a reload and continues with the newest draft.
        let _ = store.set_item(&key(database, "tab"), &name);
    }
    name
}
