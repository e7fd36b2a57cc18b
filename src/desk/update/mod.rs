//! The one update function: a state and a message give the next state and what the browser has to do.
//!
//! In: a [`State`] and a [`Msg`].
//! Out: the next [`State`], and the [`Effect`]s that the browser runs.
//! Must not know: the browser, a clock, a store. Each file here serves one family of messages.

mod edit;
mod form;
mod records;
mod results;
mod saving;
mod scan;
mod set_point;

use super::form::Draft;
use super::msg::{Effect, Msg};
use super::requests::{request_answer, request_for_screen, request_save};
use super::state::State;
use crate::wording::Language;
use edit::change;

/// The next state and what the browser has to do.
#[must_use]
pub fn update(mut state: State, msg: Msg) -> (State, Vec<Effect>) {
    let mut effects = Vec::new();
    handle(&mut state, msg, &mut effects);
    (state, effects)
}

fn handle(state: &mut State, msg: Msg, effects: &mut Vec<Effect>) {
    match msg {
        Msg::Start => {
            request_answer(state, effects);
            request_save(state, effects);
        }
        Msg::Type(field, text) => form::type_in(state, field, &text, effects),
        Msg::Step(field, taps) => form::step(state, field, taps, effects),
        Msg::Choose(choice) => change(state, None, effects, |draft| form::choose(draft, choice)),
        Msg::Done => edit::end_of_touch(state, effects),
        Msg::Garment(index) => state.draft.at = index.min(state.draft.garments.len().saturating_sub(1)),
        Msg::AddGarment => change(state, None, effects, form::add_garment),
        Msg::RemoveGarment => change(state, None, effects, form::remove_garment),
        Msg::Open(order, title) => change(state, None, effects, |draft| draft.open(&order, &title)),
        Msg::Blank => change(state, None, effects, form::blank),
        Msg::Transfer(steps) => form::transfer(state, steps, effects),
        Msg::Units => change(state, None, effects, |draft| draft.convert(draft.units.other())),
        Msg::Language => change(state, None, effects, |draft| draft.translate(draft.language.other())),
        Msg::Theme(theme) => change(state, None, effects, |draft| draft.theme = theme),
        Msg::Undo => edit::travel(state, true, effects),
        Msg::Redo => edit::travel(state, false, effects),
        Msg::BackToReadable => edit::back_to_readable(state, effects),
        Msg::Meter(text) => form::meter(state, &text, effects),
        Msg::Sample(place) => form::sample(state, place, effects),
        Msg::ColourOfLabel => change(state, None, effects, Draft::forget_colour),
        Msg::Show(screen) => {
            state.screen = screen;
            request_for_screen(state, effects);
        }
        Msg::Tap(way) => state.tapped = Some(way).filter(|way| state.tapped != Some(*way)),
        Msg::Use(key) => set_point::choose_pick(state, key, effects),
        Msg::Point(to) => set_point::move_to(state, to, effects),
        Msg::BestPoint => change(state, None, effects, set_point::forget),
        Msg::Answered(order, result) => results::answered(state, &order, result, effects),
        Msg::Windowed(key, result) => results::windowed(state, &key, result),
        Msg::Forecast(key, result) => results::forecast(state, &key, result),
        Msg::DefectSeen(seen) => change(state, None, effects, |draft| draft.seen = seen),
        Msg::Diagnosed(key, result) => results::diagnosed(state, &key, result),
        Msg::Records(clock, msg) => records::records(state, clock, msg, effects),
        Msg::LogAppended(changes, result) => saving::log_appended(state, changes, result),
        Msg::DraftSaved(result) => saving::draft_saved(state, result),
        Msg::DraftFound(draft) => saving::draft_found(state, *draft, effects),
        Msg::OpenDraftFile(text) => saving::open_draft_file(state, &text, effects),
        Msg::Trouble(trouble) => state.trouble = Some(trouble),
        Msg::DismissTrouble => state.trouble = None,
        Msg::Scanned(read) => scan::scanned(state, read, effects),
        Msg::DismissScan => state.scanned = None,
    }
}

/// The language of the page for a language tag of the browser, `es-MX`.
#[must_use]
pub fn language_of(tag: &str) -> Language {
    if tag.to_lowercase().starts_with("es") { Language::Es } else { Language::En }
}
