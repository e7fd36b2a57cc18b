//! What the state asks the browser to do: each function reads a [`State`] and pushes an [`Effect`].

use super::form::Field;
use super::msg::Effect;
use super::screen::Screen;
use super::state::{Keeping, State, key};

/// Asks for the answer to the draft. For the order that is already answered, only its errors are cleared.
pub(super) fn request_answer(state: &mut State, effects: &mut Vec<Effect>) {
    match state.draft.read().map(|order| state.records.with_trials(order)) {
        Err(errors) => {
            state.errors = errors;
            state.asked = None;
        }
        Ok(order) => {
            let known = state.asked.as_ref().or(state.order.as_ref());
            if known == Some(&order) {
                // The form is back at the answered order: its errors belonged to another text.
                if state.asked.is_none() {
                    state.errors.clear();
                    state.title = state.draft.text(Field::Title).into();
                }
                return;
            }
            state.asked = Some(order.clone());
            effects.push(Effect::Answer(Box::new(order)));
        }
    }
}

/// Asks for the answer to the draft although its order has not changed, because the library has.
pub(super) fn request_answer_again(state: &mut State, effects: &mut Vec<Effect>) {
    if let Ok(order) = state.draft.read() {
        let order = state.records.with_trials(order);
        state.asked = Some(order.clone());
        effects.push(Effect::Answer(Box::new(order)));
    }
}

/// Asks for what the shown screen needs: window, forecast or diagnosis. A set point that cannot be read is an error
/// instead.
pub(super) fn request_for_screen(state: &mut State, effects: &mut Vec<Effect>) {
    let wanted = match state.screen {
        Screen::Job | Screen::Library | Screen::PrintRoom | Screen::Settings => false,
        Screen::Diagnosis => return request_diagnosis(state, effects),
        Screen::Window | Screen::JobSheet => true,
        Screen::Forecast => state.bleeds(),
    };
    if !wanted || state.asked.is_some() {
        return;
    }
    match state.point() {
        Err(errors) => state.window_errors = errors,
        Ok(at) => {
            state.window_errors.clear();
            if let (Some(order), Some(pick)) = (&state.order, state.pick_or_closed()) {
                let (order, pick) = (Box::new(order.clone()), Box::new(pick.clone()));
                let key = key(&pick);
                effects.push(match state.screen {
                    Screen::Forecast => Effect::Forecast { order, pick, key, at },
                    _ => Effect::Window { order, pick, key, at },
                });
            }
        }
    }
}

/// Asks for the causes of the defect that is seen. A run that cannot be read is an error instead.
fn request_diagnosis(state: &mut State, effects: &mut Vec<Effect>) {
    state.diagnosis = None;
    let run = match state.run() {
        Err(errors) => {
            state.window_errors = errors;
            return;
        }
        Ok(run) => run,
    };
    state.window_errors.clear();
    if state.asked.is_none()
        && let (Some(seen), Some(order), Some(pick)) = (state.draft.seen, &state.order, state.pick())
    {
        let (order, pick) = (Box::new(order.clone()), Box::new(pick.clone()));
        let key = key(&pick);
        effects.push(Effect::Diagnose { order, pick, key, run, seen });
    }
}

/// Asks for the draft to be saved. Until that is acknowledged it does not count as saved.
pub(super) fn request_save(state: &mut State, effects: &mut Vec<Effect>) {
    state.keeping = Keeping::Saving;
    effects.push(Effect::SaveDraft);
}
