//! Changes of the draft: each is a step of Undo, and asks for whatever the changed draft needs.

use crate::desk::form::Draft;
use crate::desk::msg::Effect;
use crate::desk::requests::{request_answer, request_for_screen, request_save};
use crate::desk::state::{Keeping, State, Touch};

/// Drafts that Undo keeps.
const MOST_UNDO: usize = 200;

/// Changes the draft as one step of Undo, or as part of the last one if the same thing is touched again.
pub(super) fn change(
    state: &mut State,
    touch: Option<Touch>,
    effects: &mut Vec<Effect>,
    with: impl FnOnce(&mut Draft),
) {
    let before = state.draft.clone();
    with(&mut state.draft);
    if state.draft == before {
        return;
    }
    if touch.is_none() || touch != state.touch {
        state.undo.push(before.clone());
        if state.undo.len() > MOST_UNDO {
            state.undo.remove(0);
        }
    }
    state.redo.clear();
    state.touch = touch;
    after(state, &before, effects);
}

/// What follows from a changed draft.
fn after(state: &mut State, before: &Draft, effects: &mut Vec<Effect>) {
    if before.chosen != state.draft.chosen {
        state.window = None;
        state.forecast = None;
    }
    request_answer(state, effects);
    request_for_screen(state, effects);
    // A drag is saved where it ends; until then the draft on the page is not on the disk.
    state.keeping = Keeping::Saving;
    if state.touch != Some(Touch::Point) {
        request_save(state, effects);
    }
}

/// One step back or forward. The screen stays; the draft that is left goes onto the other stack.
pub(super) fn travel(state: &mut State, back: bool, effects: &mut Vec<Effect>) {
    let (from, onto) =
        if back { (&mut state.undo, &mut state.redo) } else { (&mut state.redo, &mut state.undo) };
    let Some(draft) = from.pop() else { return };
    let before = std::mem::replace(&mut state.draft, draft);
    onto.push(before.clone());
    state.touch = None;
    after(state, &before, effects);
}

/// Typing or dragging is over. A drag is saved where it ends.
pub(super) fn end_of_touch(state: &mut State, effects: &mut Vec<Effect>) {
    if state.touch.take() == Some(Touch::Point) {
        request_save(state, effects);
    }
}

/// Back to the last draft that reads as the answered order.
pub(super) fn back_to_readable(state: &mut State, effects: &mut Vec<Effect>) {
    let Some(order) = state.order.clone() else { return };
    let same = |draft: &&Draft| draft.read().is_ok_and(|read| read == order);
    let readable = state.undo.iter().rev().find(same).cloned();
    let title = state.title.clone();
    // Undo reaches only so far back: beyond that, the order is put into the form anew.
    change(state, None, effects, |now| match readable {
        Some(draft) => *now = draft,
        None => now.open(&order, &title),
    });
}
