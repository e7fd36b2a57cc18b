use super::draft::Draft;
use super::edit::{add_garment, blank, change, choose, held, remove_garment, sample, step, travel};
use super::field::Field;
use super::keep;
use super::msg::{Answer, Effect, Msg};
use super::shop::tend;
use super::state::{Screen, State, Touch};
use crate::optics::meter::MeterFile;
use crate::plan::{BleedForecast, Order};
use crate::quantity::FieldError;
use crate::wording::{Language, Phrase, Quantity, on};

/// The next state and what the browser has to do.
#[must_use]
pub fn update(mut state: State, msg: Msg) -> (State, Vec<Effect>) {
    let mut effects = Vec::new();
    match msg {
        Msg::Start => {
            reread(&mut state, &mut effects);
            keep::save(&mut state, &mut effects);
        }
        Msg::Type(field, text) => {
            let touch = Touch::Field(field, if field.of_garment() { state.draft.at } else { 0 });
            change(&mut state, Some(touch), &mut effects, |draft| draft.write(field, &text));
        }
        Msg::Step(field, taps) => step(&mut state, field, taps, &mut effects),
        Msg::Choose(choice) => change(&mut state, None, &mut effects, |draft| choose(draft, choice)),
        Msg::Done => {
            // A drag is kept where it ends.
            if state.touch.take() == Some(Touch::Point) {
                keep::save(&mut state, &mut effects);
            }
        }
        Msg::Garment(index) => state.draft.at = index.min(state.draft.garments.len().saturating_sub(1)),
        Msg::AddGarment => change(&mut state, None, &mut effects, add_garment),
        Msg::RemoveGarment => change(&mut state, None, &mut effects, remove_garment),
        Msg::Open(order, title) => change(&mut state, None, &mut effects, |draft| draft.open(&order, &title)),
        Msg::Blank => change(&mut state, None, &mut effects, blank),
        Msg::Units => change(&mut state, None, &mut effects, |draft| draft.convert(draft.units.other())),
        Msg::Language => {
            change(&mut state, None, &mut effects, |draft| draft.translate(draft.language.other()));
        }
        Msg::Theme(theme) => change(&mut state, None, &mut effects, |draft| draft.theme = theme),
        Msg::Undo => travel(&mut state, true, &mut effects),
        Msg::Redo => travel(&mut state, false, &mut effects),
        Msg::BackToReadable => {
            if let Some(order) = state.order.clone() {
                let same = |draft: &&Draft| draft.read().is_ok_and(|read| read == order);
                let readable = state.undo.iter().rev().find(same).cloned();
                let title = state.title.clone();
                // Undo reaches only so far back: then the order is put into the form anew.
                change(&mut state, None, &mut effects, |now| match readable {
                    Some(draft) => *now = draft,
                    None => now.open(&order, &title),
                });
            }
        }
        Msg::Meter(text) => {
            let file = MeterFile::read(&text);
            let only = matches!(&file, Ok(file) if file.samples.len() == 1);
            state.meter = Some(file);
            if only {
                sample(&mut state, 0, &mut effects);
            }
        }
        Msg::Sample(place) => sample(&mut state, place, &mut effects),
        Msg::ColourOfLabel => change(&mut state, None, &mut effects, Draft::forget_colour),
        Msg::Show(screen) => {
            state.screen = screen;
            look(&mut state, &mut effects);
        }
        Msg::Tap(way) => state.tapped = Some(way).filter(|way| state.tapped != Some(*way)),
        Msg::Use(key) => change(&mut state, None, &mut effects, |draft| {
            draft.chosen = Some(key);
            draft.set(Field::Air, None);
            draft.set(Field::Belt, None);
        }),
        Msg::Point(set_c, belt) => {
            let (set_c, belt) = held(&state, set_c, belt);
            change(&mut state, Some(Touch::Point), &mut effects, |draft| {
                draft.set(Field::Air, Some(set_c));
                draft.set(Field::Belt, Some(belt));
            });
        }
        Msg::BestPoint => change(&mut state, None, &mut effects, |draft| {
            draft.set(Field::Air, None);
            draft.set(Field::Belt, None);
        }),
        Msg::Answered(order, result) => answered(&mut state, &order, result, &mut effects),
        Msg::Windowed(key, result) => {
            worked_out(&mut state, &key, result, |state, it| state.window = Some(it));
        }
        Msg::Forecast(key, result) => {
            worked_out(&mut state, &key, result, |state, it| state.forecast = Some(dated(state, it)));
        }
        Msg::Stored(changes, result) => keep::stored(&mut state, changes, result),
        Msg::Shop(clock, what) => tend(&mut state, clock, what, &mut effects),
        Msg::Kept(result) => keep::kept(&mut state, result),
        Msg::Found(draft) => keep::found(&mut state, *draft, &mut effects),
        Msg::Trouble(trouble) => state.trouble = Some(trouble),
        Msg::Understood => state.trouble = None,
        Msg::Bring(text) => keep::bring(&mut state, &text, &mut effects),
        Msg::Seen(seen) => change(&mut state, None, &mut effects, |draft| draft.seen = seen),
        Msg::Diagnosed(key, result) => {
            worked_out(&mut state, &key, result.map(Box::new), |state, it| {
                state.diagnosis = it.map(|it| *it);
            });
        }
        Msg::Transfer(step) => {
            let next = step.map(|step| {
                let bound = crate::plan::bounds::TRANSFER;
                let next = ((state.transfer() / 0.05).round() + f64::from(step)) * 0.05;
                next.clamp(bound.min, bound.max)
            });
            change(&mut state, None, &mut effects, |draft| draft.rest.shop.transfer = next);
        }
        Msg::Scanned(read) => super::sheet::scanned(&mut state, read, &mut effects),
        Msg::ScanSeen => state.scanned = None,
    }
    (state, effects)
}

/// Reads the draft: a new order is asked about, the same one only clears the errors.
pub(super) fn reread(state: &mut State, effects: &mut Vec<Effect>) {
    match state.draft.read().map(|order| state.shop.with_trials(order)) {
        Err(errors) => {
            state.errors = errors;
            state.asked = None;
        }
        Ok(order) => {
            let known = state.asked.as_ref().or(state.order.as_ref());
            if known == Some(&order) {
                // Back at an order that was already answered: what the form said against another one is gone.
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

/// Asks anew about the order that was answered, because what it is answered with has changed.
pub(super) fn ask_again(state: &mut State, effects: &mut Vec<Effect>) {
    if let Ok(order) = state.draft.read() {
        let order = state.shop.with_trials(order);
        state.asked = Some(order.clone());
        effects.push(Effect::Answer(Box::new(order)));
    }
}

/// Asks for the window or the forecast that is on the screen, if the set point can be read.
pub(super) fn look(state: &mut State, effects: &mut Vec<Effect>) {
    let wanted = match state.screen {
        Screen::Job | Screen::Library | Screen::Shop | Screen::Settings => false,
        Screen::Wrong => return ask_why(state, effects),
        Screen::Window | Screen::Sheet => true,
        Screen::Forecast => state.bleeds(),
    };
    if !wanted || state.asked.is_some() {
        return;
    }
    match state.point() {
        Err(errors) => state.window_errors = errors,
        Ok(at) => {
            state.window_errors.clear();
            if let (Some(order), Some(pick)) = (&state.order, state.way()) {
                let (order, pick) = (Box::new(order.clone()), Box::new(pick.clone()));
                let key = super::state::key(&pick);
                effects.push(match state.screen {
                    Screen::Forecast => Effect::Forecast { order, pick, key, at },
                    _ => Effect::Window { order, pick, key, at },
                });
            }
        }
    }
}

/// Asks for the causes of what is seen, if it can be read how the print was run.
fn ask_why(state: &mut State, effects: &mut Vec<Effect>) {
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
        let key = super::state::key(&pick);
        effects.push(Effect::Diagnose { order, pick, key, run, seen });
    }
}

fn answered(
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
            look(state, effects);
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

/// A forecast with the dates of a print made today; without them while the edge has not said which day it is.
fn dated(state: &State, forecast: BleedForecast) -> BleedForecast {
    let clock = state.shop.clock();
    let due = state.order.as_ref().map_or("", |order| order.use_.due.as_str());
    if clock.now > 0 { forecast.dated(on(clock.now, clock.ahead), due) } else { forecast }
}

/// Puts what was worked out for a way where it belongs, if that way is still the chosen one.
fn worked_out<T>(
    state: &mut State,
    key: &str,
    result: Result<Box<T>, Vec<FieldError>>,
    put: impl FnOnce(&mut State, T),
) {
    if state.way().map(super::state::key).as_deref() != Some(key) {
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

/// The language that a browser's list of languages asks for.
#[must_use]
pub fn language_of(tag: &str) -> Language {
    if tag.to_lowercase().starts_with("es") { Language::Es } else { Language::En }
}
