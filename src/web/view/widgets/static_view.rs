//! A part of a screen that is drawn as markup and tapped by name: what is only read and tapped costs the page a tenth
//! of what a Leptos view for each kind of row does.
//!
//! **Decision:** what is only read and tapped is written as text: whole screens, and the answer, whose parts
//! are replaced where they differ. Folds are no part of a text, so that they stay open.
//! **Because:** a Leptos view for each kind of row is ten times as long, and one that is drawn anew takes off
//! every attribute and sets it again.
//! **Measured:** that was nearly a third of the script behind a tap (2026-11-29, machine not recorded).
//! **Reconsider when:** Leptos leaves equal attributes alone, or such a part needs fields to type in.

use crate::desk::{Action, State};
use crate::web::desk::Desk;
use crate::web::view::perform::perform;
use leptos::prelude::*;
use maud::Markup;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, MouseEvent};

/// A static view: `draw` writes its markup, and a tap on whatever carries `data-do` performs that action.
pub fn static_view(desk: Desk, draw: fn(&State) -> Markup) -> impl IntoView {
    let drawn = desk.memo(move |state| draw(state).into_string());
    view! { <div inner_html=move || drawn.get() on:click=move |event| tap(desk, &event)></div> }
}

/// Performs the action of what was tapped. The focus returns to it when it is drawn anew.
pub fn tap(desk: Desk, event: &MouseEvent) {
    if let Some(action) = tapped(event).and_then(|it| action_of(&it)) {
        // Both wait for the drawing; the focus first, so that what comes into view afterwards stays there.
        desk.focus_again(&action);
        perform(desk, &action, Some(event));
    }
}

/// The element with an action that an event happened on.
pub fn tapped(event: &Event) -> Option<Element> {
    event.composed_path().get(0).dyn_into::<Element>().ok()?.closest("[data-do]").ok().flatten()
}

/// The action of an element.
pub fn action_of(element: &Element) -> Option<Action> {
    Action::read(&element.get_attribute("data-do")?)
}
