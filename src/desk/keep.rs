//! The draft as text that outlives the page, and what is known of the keeping.

use super::draft::Draft;
use super::edit::change;
use super::field::Field;
use super::msg::Effect;
use super::state::{Keeping, State};
use crate::library::file;
use crate::library::storage_layout::{self, Trouble};
use serde::{Deserialize, Serialize};

/// Version of the kept text; a newer one is left alone.
const VERSION: u32 = 1;

#[derive(Serialize, Deserialize)]
struct Kept {
    version: u32,
    draft: Draft,
}

/// The draft of this state as text.
#[must_use]
pub fn write(state: &State) -> String {
    let kept = Kept { version: VERSION, draft: state.draft.clone() };
    serde_json::to_string(&kept).unwrap_or_default()
}

/// Everything on the page as one file: the shop's records, and the draft in its head.
#[must_use]
pub fn write_all(state: &State) -> String {
    let draft = serde_json::from_str(&write(state)).ok();
    file::write_with(state.shop.log(), state.shop.clock().now, draft)
}

/// The draft in a file: in the head of a library, or the last one of JSON lines; nothing if none can be read.
#[must_use]
pub fn read_file(text: &str) -> Option<Draft> {
    match file::header(text) {
        Some(header) => read(&header.draft?.to_string()),
        None => storage_layout::lines(text).filter_map(read).last(),
    }
}

/// The draft in a kept text; nothing if it cannot be read or is of a newer version.
#[must_use]
pub fn read(text: &str) -> Option<Draft> {
    let mut kept: Kept = serde_json::from_str(text).ok()?;
    // A field that an earlier version did not have shows what its order held.
    if !kept.draft.texts.contains_key(&Field::Overhang) {
        kept.draft.set(Field::Overhang, Some(kept.draft.rest.print.overhang_mm));
    }
    let whole = kept.version == VERSION && !kept.draft.garments.is_empty();
    whole.then_some(kept.draft)
}

/// Keeps the draft. Until that is acknowledged it is not called kept.
pub(super) fn save(state: &mut State, effects: &mut Vec<Effect>) {
    state.keeping = Keeping::Saving;
    effects.push(Effect::Keep);
}

/// The draft was kept, or could not be.
pub(super) fn kept(state: &mut State, result: Result<(), Trouble>) {
    match result {
        Ok(()) => {
            state.keeping = Keeping::Kept;
            settled(state);
        }
        Err(trouble) => {
            state.keeping = Keeping::NotKept;
            state.trouble = Some(trouble);
        }
    }
}

/// So many changes of records were stored, or could not be.
pub(super) fn stored(state: &mut State, changes: u32, result: Result<(), Trouble>) {
    match result {
        Ok(()) => {
            state.storing = state.storing.saturating_sub(changes);
            settled(state);
        }
        Err(trouble) => state.trouble = Some(trouble),
    }
}

/// Takes back what was told of the store once everything is on the disk, the draft and every record: a draft that fits
/// in says nothing of a record that did not. That something was deleted stays true.
fn settled(state: &mut State) {
    if state.keeping == Keeping::Kept && state.storing == 0 {
        state.trouble.take_if(|trouble| *trouble != Trouble::Wiped);
    }
}

/// A kept draft was found after the desk was drawn: it is shown if nobody touched the desk yet. Else what was typed
/// stays, and Undo goes back to the found one before it goes any further.
pub(super) fn found(state: &mut State, draft: Draft, effects: &mut Vec<Effect>) {
    if state.undo.is_empty() && state.redo.is_empty() {
        change(state, None, effects, |now| *now = draft);
    } else {
        state.undo.insert(0, draft);
    }
}

/// Brings back the draft in the text of a file.
pub(super) fn bring(state: &mut State, text: &str, effects: &mut Vec<Effect>) {
    match read_file(text) {
        Some(draft) => {
            state.trouble.take_if(|trouble| matches!(trouble, Trouble::Wiped | Trouble::NotOurs));
            // The order comes with the file; how it is read belongs to whoever stands here.
            change(state, None, effects, |now| *now = draft.read_like(now));
        }
        None => state.trouble = Some(Trouble::NotOurs),
    }
}
