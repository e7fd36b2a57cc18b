//! What comes back from the browser: an answer, a window, a forecast, a diagnosis.

use crate::desk::form::Field;
use crate::desk::msg::{Answer, Effect};
use crate::desk::requests::request_for_screen;
use crate::desk::state::{State, key as key_of};
use crate::diagnosis::Diagnosis;
use crate::plan::{BleedForecast, Order, WindowReport};
use crate::quantity::FieldError;
use crate::wording::{Phrase, Quantity, on};

/// An order was answered; an answer to another order than the one asked about is dropped.
pub(super) fn answered(
    state: &mut State,
    order: &Order,
    result: Result<Box<Answer>, Vec<FieldError>>,
    effects: &mut Vec<Effect>,
) {
    if state.asked.as_ref() != Some(order) {
        return;
    }
    state.asked = None;
    match result {
        Err(errors) => state.errors = errors,
        Ok(answer) => {
            state.errors.clear();
            state.title = state.draft.text(Field::Title).into();
            state.order = Some(order.clone());
            state.cloth = answer.cloth;
            state.report = Some(answer.report);
            state.window = None;
            state.forecast = None;
            state.diagnosis = None;
            state.tapped = None;
            state.spoken = heard(state);
            request_for_screen(state, effects);
        }
    }
}

/// The answer in one sentence, for the live region.
fn heard(state: &State) -> String {
    let voice = state.voice();
    match state.pick() {
        None => voice.say(&Phrase::HeardNo),
        Some(pick) => {
            let (air, belt) = pick.setting.map_or_else(
                || (voice.label(crate::wording::Label::WindowClosedHere).into(), "–".into()),
                |setting| {
                    (
                        voice.quantity(Quantity::Temperature, setting.air_c),
                        voice.quantity(Quantity::Belt, setting.belt_m_per_min),
                    )
                },
            );
            let verdict = voice.verdict(pick.verdict).into();
            voice.say(&Phrase::Heard { verdict, white: pick.name.clone(), air, belt })
        }
    }
}

/// The window of the pick of this key was worked out.
pub(super) fn windowed(state: &mut State, key: &str, result: Result<Box<WindowReport>, Vec<FieldError>>) {
    worked_out(state, key, result, |state, window| state.window = Some(window));
}

/// How the white of the pick of this key ages was worked out.
pub(super) fn forecast(state: &mut State, key: &str, result: Result<Box<BleedForecast>, Vec<FieldError>>) {
    worked_out(state, key, result, |state, forecast| state.forecast = Some(dated(state, forecast)));
}

/// The causes that fit what is seen were worked out for the pick of this key.
pub(super) fn diagnosed(
    state: &mut State,
    key: &str,
    result: Result<Option<Box<Diagnosis>>, Vec<FieldError>>,
) {
    worked_out(state, key, result.map(Box::new), |state, found| state.diagnosis = found.map(|found| *found));
}

/// A forecast with the dates of a print made today; without dates until the browser has sent the time.
fn dated(state: &State, forecast: BleedForecast) -> BleedForecast {
    let clock = state.records.clock();
    let due = state.order.as_ref().map_or("", |order| order.use_.due.as_str());
    if clock.now > 0 { forecast.dated(on(clock.now, clock.ahead), due) } else { forecast }
}

/// Puts a result for a pick into the state, if that pick is still the shown one.
fn worked_out<T>(
    state: &mut State,
    key: &str,
    result: Result<Box<T>, Vec<FieldError>>,
    put: impl FnOnce(&mut State, T),
) {
    if state.pick_or_closed().map(key_of).as_deref() != Some(key) {
        return;
    }
    match result {
        Ok(found) => {
            state.window_errors.clear();
            put(state, *found);
        }
        Err(errors) => state.window_errors = errors,
    }
}
