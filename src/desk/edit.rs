//! Changing the draft: each change is a step of Undo, and what follows from it is asked for.

use super::draft::Draft;
use super::field::Field;
use super::keep;
use super::msg::{Choice, Effect};
use super::state::{Keeping, State, Touch};
use super::update::{look, reread};
use crate::plan::{Garment, Order};
use crate::textile::Fibre;
use crate::wording::Quantity;

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
    reread(state, effects);
    look(state, effects);
    // A drag is kept where it ends; until then what stands on the page is not on the disk.
    state.keeping = Keeping::Saving;
    if state.touch != Some(Touch::Point) {
        keep::save(state, effects);
    }
}

/// One step back or forward. The screen stays; what was typed since is on the other pile.
pub(super) fn travel(state: &mut State, back: bool, effects: &mut Vec<Effect>) {
    let (from, onto) =
        if back { (&mut state.undo, &mut state.redo) } else { (&mut state.redo, &mut state.undo) };
    let Some(draft) = from.pop() else { return };
    let before = std::mem::replace(&mut state.draft, draft);
    onto.push(before.clone());
    state.touch = None;
    after(state, &before, effects);
}

/// A set point held to what the window shows, on whole degrees and twentieths of a metre of the units shown.
pub(super) fn held(state: &State, set_c: f64, belt: f64) -> (f64, f64) {
    let units = state.draft.units;
    let round = |quantity: Quantity, field: Field, value: f64| {
        let tap = quantity.tap(units);
        let shown = (quantity.shown(value, units) / tap).round() * tap;
        let value = quantity.kept(shown, units);
        state.bound(field).map_or(value, |bound| value.clamp(bound.min, bound.max))
    };
    (round(Quantity::Temperature, Field::Air, set_c), round(Quantity::Belt, Field::Belt, belt))
}

/// One or more taps of a stepper, from the value that stands there, on round steps of the units shown.
pub(super) fn step(state: &mut State, field: Field, taps: i32, effects: &mut Vec<Effect>) {
    let Some(quantity) = field.quantity() else { return };
    let setting = state.stands();
    let stands = state.draft.value(field, None).ok().flatten().or(match field {
        Field::Air => setting.map(|setting| setting.set_c),
        Field::Belt => setting.map(|setting| setting.belt_m_per_min),
        _ => None,
    });
    let bound = state.bound(field);
    let units = state.draft.units;
    let tap = if field == Field::Pieces { 10.0 } else { quantity.tap(units) };
    let shown = quantity.shown(stands.or(bound.map(|bound| bound.min)).unwrap_or(0.0), units);
    let next = ((shown / tap + f64::from(taps) * 0.999).round() * tap * 1e6).round() / 1e6;
    let value = quantity.kept(next, units);
    let value = bound.map_or(value, |bound| value.clamp(bound.min, bound.max));
    if matches!(field, Field::Air | Field::Belt) {
        let at = setting.map_or((value, value), |setting| (setting.set_c, setting.belt_m_per_min));
        let at = state.point().ok().flatten().unwrap_or(at);
        let (set_c, belt) = if field == Field::Air { (value, at.1) } else { (at.0, value) };
        change(state, Some(Touch::Point), effects, |draft| {
            draft.set(Field::Air, Some(set_c));
            draft.set(Field::Belt, Some(belt));
        });
        keep::save(state, effects);
    } else {
        let touch = Touch::Field(field, if field.of_garment() { state.draft.at } else { 0 });
        change(state, Some(touch), effects, |draft| draft.set(field, Some(value)));
    }
}

/// The garment takes the colour of a sample, and its name.
pub(super) fn sample(state: &mut State, place: usize, effects: &mut Vec<Effect>) {
    let Some(Ok(file)) = &state.meter else { return };
    let Some(sample) = file.samples.get(place).cloned() else { return };
    change(state, None, effects, |draft| draft.measure(sample.name, sample.lab));
}

pub(super) fn choose(draft: &mut Draft, choice: Choice) {
    let at = draft.at;
    let rest = &mut draft.rest;
    let garment = draft.garments.get_mut(at).map(|garment| &mut garment.rest);
    match (choice, garment) {
        (Choice::Priority(priority), _) => rest.print.priority = priority,
        (Choice::Role(role), _) => rest.print.role = role,
        (Choice::Opacity(opacity), _) => rest.print.opacity = opacity,
        (Choice::Sheen(sheen), _) => rest.print.finish = sheen,
        (Choice::ColourCure(cure), _) => rest.print.colours_on_top.cure = cure,
        (Choice::Kind(kind), _) => rest.use_.kind = kind,
        (Choice::StackedHot(hot), _) => rest.use_.stacked_hot = hot,
        (Choice::Dryer(id), _) => rest.shop.dryer = id,
        (Choice::Shelf(id, on), _) => {
            rest.shop.shelf.retain(|other| *other != id);
            if on {
                rest.shop.shelf.push(id);
            }
        }
        (Choice::Dyed(answer), Some(garment)) => garment.dyed_fibres = dyed(garment, answer),
        (Choice::DyeClass(class), Some(garment)) => garment.dye_class = class,
        (Choice::Finish(finish, on), Some(garment)) => {
            garment.finish.retain(|other| *other != finish);
            if on {
                garment.finish.push(finish);
            }
        }
        (Choice::Dyed(_) | Choice::DyeClass(_) | Choice::Finish(..), None) => {}
    }
}

/// The dyed fibres after the answer about polyester; what was said of other fibres stays.
fn dyed(garment: &Garment, answer: Option<bool>) -> Option<Vec<Fibre>> {
    let mut fibres = garment.dyed_fibres.clone().unwrap_or_default();
    fibres.retain(|fibre| *fibre != Fibre::Polyester);
    if answer? {
        fibres.push(Fibre::Polyester);
    }
    Some(fibres)
}

pub(super) fn add_garment(draft: &mut Draft) {
    let like = draft.garment().map(|garment| garment.rest.clone()).unwrap_or_default();
    let fresh = Garment { pieces: like.pieces, value_each: like.value_each, ..Garment::default() };
    let other = Draft::of(&Order { garments: vec![fresh], ..Order::default() }, "", draft.voice());
    draft.garments.extend(other.garments);
    draft.at = draft.garments.len() - 1;
}

pub(super) fn remove_garment(draft: &mut Draft) {
    if draft.garments.len() > 1 && draft.at < draft.garments.len() {
        draft.garments.remove(draft.at);
        draft.at = draft.at.min(draft.garments.len() - 1);
    }
}

pub(super) fn blank(draft: &mut Draft) {
    let order = Order { shop: draft.rest.shop.clone(), ..Order::default() };
    draft.open(&order, "");
}
