//! Small notes beside the database: that something was kept here, which tab this is, the draft of earlier versions.
//!
//! Browsers clear a database that nobody visited for long and may leave these notes, so that a note without its
//! database is how the loss is noticed. A browser that clears everything at once leaves no trace of it.

use web_sys::Storage;

/// Under this name a draft was kept before there was a database.
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

/// Notes that something is kept in a database of this name.
pub fn set(database: &str) {
    if let Some(store) = local() {
        // Without the note only the notice of a loss is lost.
        let _ = store.set_item(&key(database, "kept"), "1");
    }
}

/// True if something was kept in a database of this name.
#[must_use]
pub fn is_set(database: &str) -> bool {
    local().and_then(|store| store.get_item(&key(database, "kept")).ok().flatten()).is_some()
}

/// The draft that a version before the database kept.
#[must_use]
pub fn earlier_draft() -> Option<String> {
    local()?.get_item(EARLIER_DRAFT).ok()?
}

/// The name of this tablet's browser, drawn once and kept. Where nothing is kept it is a new one every time, which
/// costs only that its own changes of earlier days are another tablet's.
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

/// A word that nobody else draws. Plain http knows no `randomUUID`; 96 random bits will do.
#[must_use]
pub fn random() -> String {
    let part = || (js_sys::Math::random() * f64::from(1_u32 << 24) * f64::from(1_u32 << 24)) as u64;
    format!("{:012x}{:012x}", part(), part())
}

/// The name of this tab, the same after a reload; nothing if it is new.
#[must_use]
pub fn tab(database: &str) -> Option<String> {
    session()?.get_item(&key(database, "tab")).ok()?
}

/// Gives this tab a new name that no other tab has.
#[must_use]
pub fn name_tab(database: &str) -> String {
    let name = random();
    if let Some(store) = session() {
        // Without it the tab is a new one after a reload, and goes on with the newest draft.
        let _ = store.set_item(&key(database, "tab"), &name);
    }
    name
}
