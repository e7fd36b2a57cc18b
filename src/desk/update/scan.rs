//! A job sheet that is read back.

use super::edit::change;
use crate::desk::form::Field;
use crate::desk::msg::Effect;
use crate::desk::state::State;
use crate::library::sheet_code::{SheetCode, SheetCodeError};
use crate::wording::JobSheetPhrase;

/// Puts the order of a sheet into the form, as one step of Undo, and reports that or why it could not be read.
pub(super) fn scanned(
    state: &mut State,
    read: Result<Box<SheetCode>, SheetCodeError>,
    effects: &mut Vec<Effect>,
) {
    let voice = state.voice();
    let result = read.map(|sheet_code| {
        let SheetCode { order, title, way, at } = *sheet_code;
        change(state, None, effects, |draft| {
            draft.open(&order, &title);
            draft.chosen = (!way.is_empty()).then_some(way);
            draft.set(Field::SetTemperature, at.map(|at| at.set_c));
            draft.set(Field::Belt, at.map(|at| at.belt_m_per_min));
        });
        title
    });
    state.spoken = voice.say(&match &result {
        Ok(title) => JobSheetPhrase::ReadBack { title: title.clone() },
        Err(why) => JobSheetPhrase::Unread(*why),
    });
    state.scanned = Some(result);
}
