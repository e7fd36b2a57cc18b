//! Messages to the records: their new entries are stored, and the order is answered anew where they change its
//! answer.

use super::edit::change;
use crate::desk::form::Field;
use crate::desk::msg::Effect;
use crate::desk::records::{Clock, DRYER, Incoming, RecordsMsg, RoomChange, RoomSettings};
use crate::desk::requests::{request_answer, request_answer_again};
use crate::desk::screen::Screen;
use crate::desk::state::State;
use crate::library::FabricDye;
use crate::library::log::{Key, Kind};
use crate::plan::{self, Order};
use serde_json::Value;
use std::sync::Arc;

/// The next state of the records and what the browser has to do.
pub(super) fn records(state: &mut State, clock: Clock, msg: RecordsMsg, effects: &mut Vec<Effect>) {
    let room_change = match &msg {
        RecordsMsg::PutInForm(key) => {
            put_in_form(state, key, effects);
            None
        }
        RecordsMsg::Import => {
            import_draft(state, effects);
            None
        }
        RecordsMsg::PrintRoom(change) => Some(change.clone()).filter(|_| !state.records.read_only()),
        _ => None,
    };
    match state.records.handle(clock, msg, &state.draft) {
        Ok(lines) if !lines.is_empty() => {
            state.storing += 1;
            effects.push(Effect::AppendLog(lines));
            // A recorded trial counts at once.
            if !state.records.library_changed() {
                request_answer(state, effects);
            }
        }
        Ok(_) => {}
        Err(errors) => state.errors = errors,
    }
    if state.records.take_library_changed() {
        effects.push(Effect::LibraryChanged);
        request_answer_again(state, effects);
    }
    if let Some(change) = room_change {
        follow(state, &change, effects);
    }
}

/// Puts a waiting draft of an earlier version into the form.
fn import_draft(state: &mut State, effects: &mut Vec<Effect>) {
    let draft = match state.records.incoming() {
        Some(Incoming::Draft { draft, .. }) if !state.records.read_only() => (**draft).clone(),
        _ => return,
    };
    change(state, None, effects, |now| *now = draft);
    state.screen = Screen::Job;
}

/// Puts a cloth or an order of the library into the form.
fn put_in_form(state: &mut State, key: &Key, effects: &mut Vec<Effect>) {
    let own = state.records.log().record(key.kind, &key.id);
    match key.kind {
        Kind::Order => {
            let Some(record) = own else { return };
            let Ok(order) = record.read::<Order>() else { return };
            let title = record.fields.get("title").and_then(Value::as_str).unwrap_or_default().to_owned();
            change(state, None, effects, |draft| draft.open(&order, &title));
        }
        Kind::Fabric => {
            let library = Arc::clone(state.records.library());
            let Ok(fabric) = library.fabric_record(&key.id) else { return };
            let dye = own.and_then(|record| record.read::<FabricDye>().ok()).unwrap_or_default();
            let garment = library.garment(fabric, &dye);
            change(state, None, effects, |draft| {
                let order = Order { garments: vec![garment], ..draft.rest.clone() };
                let title = draft.text(Field::Title).to_owned();
                draft.open(&order, &title);
            });
        }
        _ => return,
    }
    state.screen = Screen::Job;
}

/// What an answer about the print room changes on the page once it is in the log.
pub(super) fn follow(state: &mut State, answer: &RoomChange, effects: &mut Vec<Effect>) {
    let room = RoomSettings::of(state.records.log());
    match answer {
        RoomChange::Open if room.own => {
            let dryer = if state.records.log().record(Kind::Dryer, DRYER).is_some() {
                DRYER.into()
            } else {
                room.dryer
            };
            let shop = plan::Shop { shelf: room.shelf, dryer, ..plan::Shop::default() };
            change(state, None, effects, |draft| draft.open(&Order { shop, ..Order::default() }, ""));
            // The last answer belongs to the demo print room.
            (state.report, state.order, state.window, state.forecast) = (None, None, None, None);
            state.screen = Screen::Job;
        }
        RoomChange::Shelf(_) if room.own => {
            change(state, None, effects, |draft| draft.rest.shop.shelf = room.shelf);
        }
        RoomChange::Mesh(_) if room.own => request_answer_again(state, effects),
        _ => {}
    }
}
