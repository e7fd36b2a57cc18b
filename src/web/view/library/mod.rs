//! The Library screen: search first, then what was found beside the record that is open; above them whatever waits to
//! come in from a file. Says what is tapped as messages; shows what `desk::records` says.

mod form;
mod incoming;
mod list;
mod record;

use crate::desk::records::{RecordGroup, RecordsMsg};
use crate::desk::{Msg, Screen};
use crate::library::log::{Key, Kind};
use crate::library::table::RecordTable;
use crate::web::desk::Desk;
use crate::web::file;
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Voice};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlInputElement, HtmlSelectElement};

/// The screen.
pub fn library(desk: Desk) -> impl IntoView {
    desk.change_records(RecordsMsg::Tick);
    let asked = desk.memo(|state| state.records.asked().to_owned());
    let pressed = StoredValue::new_local(None::<Element>);
    let body = desk.memo(move |state| {
        let voice = state.voice();
        let shop = &state.records;
        [notes(shop, voice), incoming::incoming(shop, voice), list::found(shop, voice, desk.autosaves())]
            .concat()
    });
    view! {
        <div
            class="library"
            on:pointerdown=move |event| pressed.set_value(acting(&event))
            on:pointerup=move |event| {
                // Where what was pressed was drawn anew before the finger rose, no click comes of it.
                let gone = pressed.try_update_value(Option::take).flatten().filter(|it| !it.is_connected());
                let act = |it: Element| it.get_attribute("data-do");
                if let Some(was) = gone.and_then(act)
                    && acting(&event).and_then(act).as_ref() == Some(&was)
                {
                    does(desk, &was);
                }
            }
            on:click=move |event| tapped(desk, &event)
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
                <span class="find-n" aria-live="polite">{move || {
                    desk.with(|state| {
                        let voice = state.voice();
                        let [found, total] = [state.records.found(), state.records.total()].map(|it| voice.count(it));
                        voice.say(&LibraryPhrase::OfTotal { found, total })
                    })
                }}</span>
                <div class="seg" role="group" inner_html=move || desk.with(list::groups)></div>
            </div>
            <div id="library-body" inner_html=move || body.get()></div>
        </div>
    }
}

/// What has to be said before anything else.
fn notes(shop: &crate::desk::records::Records, voice: Voice) -> String {
    let note = |id: &str, words: &str, rest: &str| {
        format!("<div class=\"stale\" id=\"{id}\"><p>{}</p>{rest}</div>", markup::text(words))
    };
    let mut notes = String::new();
    if shop.read_only() {
        notes += &note("read-only", voice.word(LibraryLabel::ReadOnly), "");
    }
    if shop.unreadable() > 0 {
        notes += &note("unreadable", &voice.say(&LibraryPhrase::Unreadable { count: shop.unreadable() }), "");
    }
    let reminder = shop.reminder();
    if reminder.due {
        let said = LibraryPhrase::Reminder { changes: voice.count(reminder.changes), days: reminder.days };
        let save = markup::download("save-now", "", "save", voice.word(LibraryLabel::SaveNow));
        notes += &note("reminder", &voice.say(&said), &save);
    }
    notes
}

/// Something was tapped.
fn tapped(desk: Desk, event: &web_sys::MouseEvent) {
    let Some(act) = acting(event).and_then(|it| it.get_attribute("data-do")) else { return };
    let (what, rest) = act.split_once(':').unwrap_or((&act, ""));
    match what {
        "save" => return desk.hand_out_library(event),
        "table" => {
            let table = rest.parse().ok().and_then(|at: usize| RecordTable::ALL.get(at).copied());
            return table.map_or((), |table| desk.hand_out_table(event, table));
        }
        "handle" => return desk.autosave(),
        _ => {}
    }
    does(desk, &act);
}

/// What an event happened on, if it is something to tap.
fn acting(event: &Event) -> Option<Element> {
    event.composed_path().get(0).dyn_into::<Element>().ok()?.closest("[data-do]").ok().flatten()
}

/// Does what an act asks for, files aside: those a browser hands out for a click only.
fn does(desk: Desk, act: &str) {
    let (what, rest) = act.split_once(':').unwrap_or((act, ""));
    if what == "new-cloth" {
        desk.send(Msg::Blank);
        return desk.send(Msg::Show(Screen::Job));
    }
    if let Some(msg) = desk.with(|state| act_of(what, rest, state.records.open())) {
        desk.change_records(msg);
        desk.focus_again(act);
        if matches!(what, "see" | "edit" | "new") {
            desk.show("rec");
        }
    }
}

/// What an act means. A record's key is written `kind id`, numbers as such.
fn act_of(what: &str, rest: &str, open: Option<&Key>) -> Option<RecordsMsg> {
    let number = |text: &str| text.parse::<usize>().ok();
    let two = || rest.split_once(' ').and_then(|(a, b)| Some((number(a)?, number(b)?)));
    Some(match what {
        "look" => RecordsMsg::Group(*RecordGroup::ALL.get(number(rest)?)?),
        "ask" => RecordsMsg::Search(rest.into()),
        "more" => RecordsMsg::More,
        "see" => RecordsMsg::Open(key(rest)?),
        "close" => RecordsMsg::Close,
        "edit" => RecordsMsg::Edit(open?.clone()),
        "new" => {
            let (kind, owner) = rest.split_once(' ').unwrap_or((rest, ""));
            RecordsMsg::New(kind_of(kind)?, (!owner.is_empty()).then(|| owner.into()))
        }
        "put" => RecordsMsg::SaveForm,
        "drop" => RecordsMsg::DiscardForm,
        "back" => RecordsMsg::BringBack(open?.clone(), rest.into()),
        "remove" => RecordsMsg::Remove(open?.clone()),
        "take" => RecordsMsg::PutInForm(open?.clone()),
        "keep-cloth" => RecordsMsg::KeepCloth,
        "keep-order" => RecordsMsg::KeepOrder,
        "settle" => two().map(|(conflict, claim)| RecordsMsg::Resolve(conflict, claim))?,
        "choose" => two().map(|(conflict, claim)| RecordsMsg::ChooseClaim(conflict, claim))?,
        "apply" => RecordsMsg::Import,
        "leave" => RecordsMsg::DismissImport,
        _ => return None,
    })
}

/// A key as an act names it.
fn named(key: &Key) -> String {
    format!("{} {}", key.kind as usize, key.id)
}

fn key(text: &str) -> Option<Key> {
    let (kind, id) = text.split_once(' ')?;
    Some(Key::new(kind_of(kind)?, id))
}

fn kind_of(text: &str) -> Option<Kind> {
    Kind::ALL.get(text.parse::<usize>().ok()?).copied()
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
