//! A fold: figures behind a finding. What is inside is written as text, and only while it is open.

use crate::web::desk::Desk;
use crate::wording::Label;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A fold of this name around what `draw` writes; hidden while it is not `there`.
pub fn disclosure(
    desk: Desk,
    name: Label,
    there: impl Fn() -> bool + Send + 'static,
    draw: impl Fn() -> String + Send + 'static,
) -> impl IntoView {
    let opened = RwSignal::new(false);
    view! {
        <details
            class="more blk"
            hidden=move || !there()
            on:toggle=move |event| {
                let target = event.target().and_then(|it| it.dyn_into::<web_sys::Element>().ok());
                opened.set(target.is_some_and(|it| it.has_attribute("open")));
            }
        >
            <summary class="btn btn-wide">{move || desk.label(name)}</summary>
            <div inner_html=move || if opened.get() { draw() } else { String::new() }></div>
        </details>
    }
}
