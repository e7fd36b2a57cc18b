//! A disclosure: figures behind a finding. What is inside is drawn only while it is open.

use crate::web::desk::Desk;
use crate::wording::Label;
use leptos::prelude::*;
use maud::Markup;
use wasm_bindgen::JsCast;

/// A disclosure of this name around what `draw` writes; hidden unless `there`.
pub fn disclosure(
    desk: Desk,
    name: Label,
    there: impl Fn() -> bool + Send + 'static,
    draw: impl Fn() -> Markup + Send + 'static,
) -> impl IntoView {
    let opened = RwSignal::new(false);
    view! {
        <details class="more blk" hidden=move || !there() on:toggle=move |event| opened.set(is_open(&event))>
            <summary class="btn btn-wide">{move || desk.label(name)}</summary>
            <div inner_html=move || if opened.get() { draw().into_string() } else { String::new() }></div>
        </details>
    }
}

/// Whether the `details` element of a toggle event is open now.
pub fn is_open(event: &web_sys::Event) -> bool {
    let details = event.target().and_then(|it| it.dyn_into::<web_sys::Element>().ok());
    details.is_some_and(|it| it.has_attribute("open"))
}
