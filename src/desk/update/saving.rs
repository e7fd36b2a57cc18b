//! Reports about saving, and drafts that are found or opened later.

use super::edit::change;
use crate::desk::form::{Draft, draft_file};
use crate::desk::msg::Effect;
use crate::desk::state::{Keeping, State};
use crate::library::storage_layout::Trouble;

/// The draft was saved, or could not be.
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

/// Clears the notice about the store once draft and records are all on the disk: that a draft fits in does not mean
/// that every record did. The notice that stored data was deleted stays.
fn clear_trouble_when_saved(state: &mut State) {
    if state.keeping == Keeping::Kept && state.storing == 0 {
        state.trouble.take_if(|trouble| *trouble != Trouble::Wiped);
    }
}

/// A saved draft was found after the page was drawn. It is shown if nothing was changed yet; otherwise it becomes the
/// first step of Undo.
pub(super) fn draft_found(state: &mut State, draft: Draft, effects: &mut Vec<Effect>) {
    if state.undo.is_empty() && state.redo.is_empty() {
        change(state, None, effects, |now| *now = draft);
    } else {
        state.undo.insert(0, draft);
    }
}

/// Opens the draft in the text of a file.
pub(super) fn open_draft_file(state: &mut State, text: &str, effects: &mut Vec<Effect>) {
    match draft_file::read_file(text) {
        Some(draft) => {
            state.trouble.take_if(|trouble| matches!(trouble, Trouble::Wiped | Trouble::NotOurs));
            // The order comes from the file; language, units and theme are the reader's.
            change(state, None, effects, |now| *now = draft.read_like(now));
        }
        None => state.trouble = Some(Trouble::NotOurs),
    }
}
