//! The shop's part of the order: dryer, shelf, room.

use crate::desk::{Choice, Field, Msg, State};
use crate::web::desk::Desk;
use crate::web::view::widgets::field::{choice, typed};
use crate::web::view::widgets::icon;
use crate::wording::{Label, Phrase};
use leptos::prelude::*;

/// A dryer in the form: its id, its name, the day it was measured.
type DryerChoice = (String, String, String);

/// The shop, with the dryers and whites of its library.
pub(super) fn shop_fields(desk: Desk) -> impl IntoView {
    let choices = desk.memo(|state| {
        let library = state.records.library();
        let dryers = library.dryers.iter();
        let dryers =
            dryers.map(|it| (it.id.clone(), it.name.clone(), it.measured.clone().unwrap_or_default()));
        let whites = library.whites.iter().map(|it| (it.id.clone(), it.name.clone()));
        let blockers = library.blockers.iter().map(|it| (it.id.clone(), it.name.clone()));
        (dryers.collect::<Vec<DryerChoice>>(), whites.chain(blockers).collect::<Vec<_>>())
    });
    move || {
        let (dryers, shelf) = choices.get();
        shop_of(desk, &dryers, shelf)
    }
}

fn shop_of(desk: Desk, dryers: &[DryerChoice], shelf: Vec<(String, String)>) -> impl IntoView + use<> {
    let dryer_name = dryers.to_vec();
    view! {
        <h2 class="sec-head gap">{move || desk.label(Label::TheShop)}</h2>
        <div class="stack">
            {choice(
                desk,
                "q-dryer",
                Label::DryerUsed,
                dryers.iter().map(|(id, _, _)| id.clone()).collect(),
                move |desk, id| {
                    let known = dryer_name.iter().find(|(other, _, _)| other == id);
                    let (name, measured) =
                        known.map_or((id.clone(), String::new()), |(_, name, day)| (name.clone(), day.clone()));
                    let voice = desk.voice();
                    voice.say(&Phrase::DryerLine { name, measured: voice.day(&measured) })
                },
                |state| state.draft.rest.shop.dryer.clone(),
                |id| Msg::Choose(Choice::Dryer(id)),
            )}
            <div>
                <p class="label" id="q-shelf">{move || desk.label(Label::Shelf)}</p>
                <div class="seg seg-2" role="group" aria-labelledby="q-shelf">
                    {shelf.into_iter().map(|(id, name)| on_shelf(desk, id, name)).collect_view()}
                </div>
                {errors_of_shelf(desk)}
            </div>
            <div class="two">
                {typed(desk, Field::FixedSetTemperature, Label::FixedHeat)}
                {typed(desk, Field::Passes, Label::Passes)}
            </div>
        </div>
    }
}

fn on_shelf(desk: Desk, id: String, name: String) -> impl IntoView {
    let sent = id.clone();
    let on = desk.memo(move |state: &State| state.draft.rest.shop.shelf.contains(&id));
    view! {
        <button
            class="btn"
            type="button"
            aria-pressed=move || if on.get() { "true" } else { "false" }
            on:click=move |_| desk.send(Msg::Choose(Choice::Shelf(sent.clone(), !on.get_untracked())))
        >
            {name}
        </button>
    }
}

/// Errors that belong to no field of the form.
fn errors_of_shelf(desk: Desk) -> impl IntoView {
    let wrong = desk.memo(|state| {
        let voice = state.voice();
        let homeless = state.errors.iter().filter(|error| Field::of_path(&error.field).is_none());
        homeless.map(|error| (error.field.clone(), voice.problem(error))).collect::<Vec<_>>()
    });
    move || {
        wrong
            .get()
            .into_iter()
            .map(|(field, text)| {
                view! {
                    <p class="err" data-error-for=field>
                        {icon::icon(24, icon::CROSS)}
                        <span>{text}</span>
                    </p>
                }
            })
            .collect_view()
    }
}
