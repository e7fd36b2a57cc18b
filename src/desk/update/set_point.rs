//! The set point of the dryer, and the pick that it belongs to.

use super::edit::change;
use crate::desk::form::{Draft, Field};
use crate::desk::msg::Effect;
use crate::desk::state::{State, Touch};
use crate::plan::DialSetting;
use crate::wording::Quantity;

/// Chooses a pick by its key; the set point goes to its best.
pub(super) fn choose_pick(state: &mut State, key: String, effects: &mut Vec<Effect>) {
    change(state, None, effects, |draft| {
        draft.chosen = Some(key);
        forget(draft);
    });
}

/// Empties both fields, so that the best set point holds.
pub(super) fn forget(draft: &mut Draft) {
    draft.set(Field::SetTemperature, None);
    draft.set(Field::Belt, None);
}

/// Moves the set point, held to what the window shows.
pub(super) fn move_to(state: &mut State, to: DialSetting, effects: &mut Vec<Effect>) {
    let held = held(state, to);
    put(state, held, effects);
}

/// Puts a set point into its fields as it is; several in a row are one step of Undo.
pub(super) fn put(state: &mut State, at: DialSetting, effects: &mut Vec<Effect>) {
    change(state, Some(Touch::Point), effects, |draft| {
        draft.set(Field::SetTemperature, Some(at.set_c));
        draft.set(Field::Belt, Some(at.belt_m_per_min));
    });
}

/// A set point held to the axes of the window and rounded to the stepper's taps in the units shown.
fn held(state: &State, to: DialSetting) -> DialSetting {
    let units = state.draft.units;
    let round = |quantity: Quantity, field: Field, value: f64| {
        let tap = quantity.tap(units);
        let shown = (quantity.shown(value, units) / tap).round() * tap;
        let value = quantity.kept(shown, units);
        state.bound(field).map_or(value, |bound| value.clamp(bound.min, bound.max))
    };
    DialSetting {
        set_c: round(Quantity::Temperature, Field::SetTemperature, to.set_c),
        belt_m_per_min: round(Quantity::Belt, Field::Belt, to.belt_m_per_min),
    }
}
