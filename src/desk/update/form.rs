//! Changes of the order form: typing, stepping, choosing, garments, the colour meter.

use super::edit::change;
use super::set_point;
use crate::desk::form::{Draft, Field};
use crate::desk::msg::{Choice, Effect};
use crate::desk::requests::request_save;
use crate::desk::state::{State, Touch};
use crate::optics::meter::MeterFile;
use crate::plan::{DialSetting, Garment, Order, bounds};
use crate::textile::Fibre;

/// Step of the share of the open mesh volume that is transferred to the cloth.
const TRANSFER_STEP: f64 = 0.05;

/// Writes text into a field, as typed.
pub(super) fn type_in(state: &mut State, field: Field, text: &str, effects: &mut Vec<Effect>) {
    let touch = touch_of(state, field);
    change(state, Some(touch), effects, |draft| draft.write(field, text));
}

/// What a change of this field touches: a field of a garment together with the garment's number.
fn touch_of(state: &State, field: Field) -> Touch {
    Touch::Field(field, if field.of_garment() { state.draft.at } else { 0 })
}

/// One or more taps of a stepper, from the value in the field, in round steps of the units shown.
pub(super) fn step(state: &mut State, field: Field, taps: i32, effects: &mut Vec<Effect>) {
    let Some(quantity) = field.quantity() else { return };
    let setting = state.stands();
    let stands = state.draft.value(field, None).ok().flatten().or(match field {
        Field::SetTemperature => setting.map(|setting| setting.set_c),
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
    if matches!(field, Field::SetTemperature | Field::Belt) {
        let stands = setting.map(|setting| setting.dialled());
        let at = state.point().ok().flatten().or(stands);
        let at = at.unwrap_or(DialSetting { set_c: value, belt_m_per_min: value });
        let to = if field == Field::SetTemperature {
            DialSetting { set_c: value, ..at }
        } else {
            DialSetting { belt_m_per_min: value, ..at }
        };
        set_point::put(state, to, effects);
        request_save(state, effects);
    } else {
        let touch = touch_of(state, field);
        change(state, Some(touch), effects, |draft| draft.set(field, Some(value)));
    }
}

/// Moves the transfer of the mesh some steps up or down; without steps it goes back to the prior.
pub(super) fn transfer(state: &mut State, steps: Option<i32>, effects: &mut Vec<Effect>) {
    let next = steps.map(|steps| {
        let next = ((state.transfer() / TRANSFER_STEP).round() + f64::from(steps)) * TRANSFER_STEP;
        next.clamp(bounds::TRANSFER.min, bounds::TRANSFER.max)
    });
    change(state, None, effects, |draft| draft.rest.shop.transfer = next);
}

/// Opens a colour meter's file; its only sample becomes the garment's colour at once.
pub(super) fn meter(state: &mut State, text: &str, effects: &mut Vec<Effect>) {
    let file = MeterFile::read(text);
    let only = matches!(&file, Ok(file) if file.samples.len() == 1);
    state.meter = Some(file);
    if only {
        sample(state, 0, effects);
    }
}

/// The garment takes the colour of a sample, and its name.
pub(super) fn sample(state: &mut State, place: usize, effects: &mut Vec<Effect>) {
    let Some(Ok(file)) = &state.meter else { return };
    let Some(sample) = file.samples.get(place).cloned() else { return };
    change(state, None, effects, |draft| draft.measure(sample.name, sample.lab));
}

/// Writes a choice into the draft.
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
        (Choice::UnderPrint(under), Some(garment)) => garment.under_print = under,
        (Choice::Finish(finish, on), Some(garment)) => {
            garment.finish.retain(|other| *other != finish);
            if on {
                garment.finish.push(finish);
            }
        }
        (Choice::Dyed(_) | Choice::DyeClass(_) | Choice::UnderPrint(_) | Choice::Finish(..), None) => {}
    }
}

/// The dyed fibres after the answer about polyester; answers about other fibres stay.
fn dyed(garment: &Garment, answer: Option<bool>) -> Option<Vec<Fibre>> {
    let mut fibres = garment.dyed_fibres.clone().unwrap_or_default();
    fibres.retain(|fibre| *fibre != Fibre::Polyester);
    if answer? {
        fibres.push(Fibre::Polyester);
    }
    Some(fibres)
}

/// Adds a garment like the shown one, and shows it.
pub(super) fn add_garment(draft: &mut Draft) {
    let like = draft.garment().map(|garment| garment.rest.clone()).unwrap_or_default();
    let fresh = Garment { pieces: like.pieces, value_each: like.value_each, ..Garment::default() };
    let other = Draft::of(&Order { garments: vec![fresh], ..Order::default() }, "", draft.voice());
    draft.garments.extend(other.garments);
    draft.at = draft.garments.len() - 1;
}

/// Removes the shown garment, unless it is the only one.
pub(super) fn remove_garment(draft: &mut Draft) {
    if draft.garments.len() > 1 && draft.at < draft.garments.len() {
        draft.garments.remove(draft.at);
        draft.at = draft.at.min(draft.garments.len() - 1);
    }
}

/// Begins a new order for the same shop.
pub(super) fn blank(draft: &mut Draft) {
    let order = Order { shop: draft.rest.shop.clone(), ..Order::default() };
    draft.open(&order, "");
}
