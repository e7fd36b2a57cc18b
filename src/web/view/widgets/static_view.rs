//! A part of a screen that is drawn as text and tapped by name: what is only read and tapped costs the page a tenth of
//! what a view of Leptos for each kind of row does.

use crate::desk::State;
use crate::web::desk::Desk;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, MouseEvent};

/// A board: `draw` writes its markup, `does` answers a tap on whatever carries `data-do`. The focus returns to what was
/// tapped.
pub fn static_view(desk: Desk, draw: fn(&State) -> String, does: fn(Desk, &str)) -> impl IntoView {
    let drawn = desk.memo(draw);
    view! {
        <div
            inner_html=move || drawn.get()
            on:click=move |event| {
                if let Some(act) = act_of(&event) {
                    does(desk, &act);
                    desk.focus_again(&act);
                }
            }
        ></div>
    }
}

/// What the tapped part of a text does, by its `data-do`.
pub fn act_of(event: &MouseEvent) -> Option<String> {
    let inmost = event.composed_path().get(0).dyn_into::<Element>().ok()?;
    inmost.closest("[data-do]").ok()??.get_attribute("data-do")
}
