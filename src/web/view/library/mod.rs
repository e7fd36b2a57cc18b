//! The Library screen: search first, then what was found beside the record that is open; above them whatever waits to
//! be imported from a file.
//!
//! In: the records of the state, worked out by `desk::records`. Out: markup, whose taps are actions; what is typed
//! goes out as messages.

mod form;
mod incoming;
mod list;
mod record;

use super::perform::perform;
use super::widgets::markup;
use super::widgets::static_view::{action_of, tap, tapped};
use crate::desk::records::{Records, RecordsMsg};
use crate::desk::{Action, State};
use crate::web::desk::Desk;
use crate::web::file;
use crate::wording::{LibraryLabel, LibraryPhrase, Voice};
use leptos::prelude::*;
use maud::{Markup, html};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlInputElement, HtmlSelectElement};

/// The screen.
pub fn library(desk: Desk) -> impl IntoView {
    desk.change_records(RecordsMsg::Tick);
    let asked = desk.memo(|state| state.records.asked().to_owned());
    let pressed = StoredValue::new_local(None::<Element>);
    let body = desk.memo(move |state| {
        let (voice, records) = (state.voice(), &state.records);
        let body = html! {
            (notes(records, voice))
            (incoming::incoming(records, voice))
            (list::found(records, voice, desk.autosaves()))
        };
        body.into_string()
    });
    view! {
        <div
            class="library"
            on:pointerdown=move |event| pressed.set_value(tapped(&event))
            on:pointerup=move |event| {
                // What was pressed may have been drawn anew before the finger rose; the browser then makes no click.
                let gone = pressed.try_update_value(Option::take).flatten().filter(|it| !it.is_connected());
                let was = gone.as_ref().and_then(action_of);
                if let Some(action) = was.filter(|was| tapped(&event).as_ref().and_then(action_of).as_ref() == Some(was)) {
                    desk.focus_again(&action);
                    perform(desk, &action, None);
                }
            }
            on:click=move |event| tap(desk, &event)
            on:input=move |event| typed(desk, &event)
            on:change=move |event| typed(desk, &event)
            on:dragover=|event| event.prevent_default()
            on:drop=move |event| desk.take_in(file::dropped(&event))
        >
            <div class="find">
                <label class="sr" for="q">{move || desk.voice().word(LibraryLabel::Search)}</label>
                <input
                    class="field"
                    id="q"
                    type="search"
                    autocomplete="off"
                    enterkeyhint="search"
                    placeholder=move || desk.voice().word(LibraryLabel::Search)
                    prop:value=move || asked.get()
                    on:input=move |event| desk.change_records(RecordsMsg::Search(event_target_value(&event)))
                />
                <span class="find-n" aria-live="polite">{move || desk.with(count)}</span>
                <div class="seg" role="group" inner_html=move || desk.with(|state| list::groups(state).into_string())></div>
            </div>
            <div id="library-body" inner_html=move || body.get()></div>
        </div>
    }
}

/// How many were found of how many.
fn count(state: &State) -> String {
    let voice = state.voice();
    let [found, total] = [state.records.found(), state.records.total()].map(|it| voice.count(it));
    voice.say(&LibraryPhrase::OfTotal { found, total })
}

/// What has to be said before anything else.
fn notes(records: &Records, voice: Voice) -> Markup {
    let reminder = records.reminder();
    let note = |id: &str, words: &str, rest: &Markup| {
        html! { div class="stale" id=(id) { p { (words) } (rest) } }
    };
    let nothing = Markup::default();
    html! {
        @if records.read_only() { (note("read-only", voice.word(LibraryLabel::ReadOnly), &nothing)) }
        @if records.unreadable() > 0 {
            @let said = LibraryPhrase::Unreadable { count: records.unreadable() };
            (note("unreadable", &voice.say(&said), &nothing))
        }
        @if reminder.due {
            @let changes = voice.count(reminder.changes);
            @let said = LibraryPhrase::Reminder { changes, days: reminder.days };
            @let words = voice.word(LibraryLabel::SaveNow);
            @let save = markup::download("save-now", "", &Action::SaveLibrary, words);
            (note("reminder", &voice.say(&said), &save))
        }
    }
}

/// Something was typed or chosen in a form, or a file was chosen.
fn typed(desk: Desk, event: &Event) {
    let Some(inmost) = event.composed_path().get(0).dyn_into::<Element>().ok() else { return };
    if inmost.id() == "open-file" {
        if event.type_() == "change" {
            desk.take_in(file::chosen_of(&inmost));
        }
        return;
    }
    let Some(column) = inmost.get_attribute("data-column").and_then(|it| it.parse().ok()) else { return };
    let text = match (inmost.dyn_ref::<HtmlInputElement>(), inmost.dyn_ref::<HtmlSelectElement>()) {
        (Some(input), _) => input.value(),
        (_, Some(select)) => select.value(),
        _ => return,
    };
    desk.change_records(RecordsMsg::Type(column, text));
}
