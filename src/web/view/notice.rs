//! The notice above the screen about a store that fails, with buttons to save the work as a file and to open one.

use crate::desk::Msg;
use crate::web::desk::Desk;
use crate::web::file;
use crate::wording::Label;
use leptos::prelude::*;

/// The notice; nothing while the store works.
pub fn notice(desk: Desk) -> impl IntoView {
    let trouble = desk.memo(|state| state.trouble.clone());
    move || {
        let trouble = trouble.get()?;
        Some(view! {
            <div
                class="stale notice"
                id="trouble"
                role="alert"
                on:dragover=|event| event.prevent_default()
                on:drop=move |event| desk.bring(file::dropped(&event))
            >
                <p>{move || desk.voice().trouble(&trouble)}</p>
                <a class="btn" id="take-away" href="#job" on:click=move |event| desk.hand_out(&event)>
                    {move || desk.label(Label::SaveAsFile)}
                </a>
                <label class="btn" for="bring">
                    {move || desk.label(Label::OpenFile)}
                    <input
                        class="sr"
                        type="file"
                        id="bring"
                        on:change=move |event| desk.bring(file::chosen(&event))
                    />
                </label>
                <button class="btn" type="button" id="noticed" on:click=move |_| desk.send(Msg::DismissTrouble)>
                    {move || desk.label(Label::Noticed)}
                </button>
            </div>
        })
    }
}
