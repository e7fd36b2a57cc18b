//! What is known of the saving of draft and records, and drafts that are found or opened later.

use super::edit::change;
use crate::desk::form::{Draft, draft_file};
use crate::desk::msg::Effect;
use crate::desk::state::{Keeping, State};
use crate::library::storage_layout::Trouble;

/// The draft was kept, or could not be.
pub(super) fn draft_saved(state: &mut State, result: Result<(), Trouble>) {
    match result {
        Ok(()) => {
            state.keeping = Keeping::Kept;
            clear_trouble_when_saved(state);
        }
        Err(trouble) => {
            state.keeping = Keeping::NotKept;
            state.trouble = Some(trouble);
        }
    }
}

/// So many changes of records were stored, or could not be.
pub(super) fn log_appended(state: &mut State, changes: u32, result: Result<(), Trouble>) {
    match result {
        Ok(()) => {
            state.storing = state.storing.saturating_sub(changes);
            clear_trouble_when_saved(state);
        }
        Err(trouble) => state.trouble = Some(trouble),
    }
}

/// Takes back what was told of the store once everything is on the disk, the draft and every record: a draft that fits
/// in says nothing of a record that did not. That something was deleted stays true.
fn clear_trouble_when_saved(state: &mut State) {
    if state.keeping == Keeping::Kept && state.storing == 0 {
        state.trouble.take_if(|trouble| *trouble != Trouble::Wiped);
    }
}

/// A kept draft was found after the desk was drawn: it is shown if nobody touched the desk yet. Else what was typed
/// stays, and Undo goes back to the found one before it goes any further.
pub(super) fn draft_found(state: &mut State, draft: Draft, effects: &mut Vec<Effect>) {
    if state.undo.is_empty() && state.redo.is_empty() {
        change(state, None, effects, |now| *now = draft);
    } else {
        state.undo.insert(0, draft);
    }
}

/// Brings back the draft in the text of a file.
pub(super) fn open_draft_file(state: &mut State, text: &str, effects: &mut Vec<Effect>) {
    match draft_file::read_file(text) {
        Some(draft) => {
            state.trouble.take_if(|trouble| matches!(trouble, Trouble::Wiped | Trouble::NotOurs));
            // The order comes with the file; how it is read belongs to whoever stands here.
            change(state, None, effects, |now| *now = draft.read_like(now));
        }
        None => state.trouble = Some(Trouble::NotOurs),
    }
}
