//! The frame: thumb index, head with undo, redo, units, language and theme, and the screen.

use super::widgets::icon;
use super::{diagnosis, forecast, job, job_sheet, library, notice, print_room, settings, window};
use crate::desk::records::{Records, RecordsMsg};
use crate::desk::{Field, Keeping, Msg, Screen, Theme};
use crate::web::desk::Desk;
use crate::wording::{
    DiagnosisPhrase, JobSheetPhrase, Label, LibraryLabel, LibraryPhrase, Phrase, PrintRoomPhrase, Quantity,
    Voice,
};
use leptos::prelude::*;

/// The whole page.
pub fn frame(desk: Desk, standalone: bool) -> impl IntoView {
    let screen = desk.memo(|state| state.screen);
    view! {
        <div
            class="desk"
            class:desk-own=standalone
            lang=move || desk.voice().language.tag()
            data-saved=move || desk.with(|state| state.kept() == Keeping::Kept).to_string()
            on:keydown=move |event| shortcut(desk, &event)
        >
            <button class="btn skip" type="button" on:click=move |_| desk.focus("main")>
                {move || desk.label(Label::SkipToAnswer)}
            </button>
            {index(desk)}
            <div class="page">
                {head(desk)}
                <main class="body" id="main" tabindex="-1">
                    {icon::hatches()}
                    {notice::notice(desk)}
                    {move || match screen.get() {
                        Screen::Job => job::job(desk).into_any(),
                        Screen::Window => window::window(desk).into_any(),
                        Screen::Forecast => forecast::forecast(desk).into_any(),
                        Screen::Library => library::library(desk).into_any(),
                        Screen::Diagnosis => diagnosis::diagnosis(desk).into_any(),
                        Screen::JobSheet => job_sheet::job_sheet(desk).into_any(),
                        Screen::PrintRoom => print_room::print_room(desk).into_any(),
                        Screen::Settings => settings::settings(desk).into_any(),
                    }}
                </main>
                <footer class="foot">
                    <span>{concat!("Whitehold ", env!("CARGO_PKG_VERSION"))}</span>
                    <span>{move || desk.label(Label::Offline)}</span>
                    <span>{move || keeping(desk)}</span>
                </footer>
            </div>
            <p class="sr" role="status" aria-live="polite">{move || desk.with(|state| state.spoken.clone())}</p>
        </div>
    }
}

/// Ctrl or Cmd with Z goes back, with Shift+Z or Y forward; in text fields too, since the page keeps their history.
fn shortcut(desk: Desk, event: &web_sys::KeyboardEvent) {
    if !(event.ctrl_key() || event.meta_key()) || event.alt_key() {
        return;
    }
    let back = match (event.key().to_lowercase().as_str(), event.shift_key()) {
        ("z", false) => true,
        ("z", true) | ("y", false) => false,
        _ => return,
    };
    event.prevent_default();
    travel(desk, back);
}

/// A step back or forward: of the records on screens that show them, else of the order.
fn travel(desk: Desk, back: bool) {
    let records = desk.with(|state| matches!(state.screen, Screen::Library | Screen::PrintRoom));
    match (records, back) {
        (true, true) => desk.change_records(RecordsMsg::Undo),
        (true, false) => desk.change_records(RecordsMsg::Redo),
        (false, true) => desk.send(Msg::Undo),
        (false, false) => desk.send(Msg::Redo),
    }
}

fn index(desk: Desk) -> impl IntoView {
    let link = move |screen: Screen| {
        let (label, sign) = match screen {
            Screen::Job => (Label::Job, icon::JOB),
            Screen::Window => (Label::Window, icon::WINDOW),
            Screen::Forecast => (Label::Forecast, icon::FORECAST),
            Screen::Library => (Label::Library, icon::LIBRARY),
            Screen::Diagnosis => (Label::Wrong, icon::WRONG),
            Screen::JobSheet => (Label::Sheet, icon::SHEET),
            Screen::PrintRoom => (Label::Shop, icon::SHOP),
            Screen::Settings => (Label::Settings, icon::SETTINGS),
        };
        let here = move || desk.with(|state| state.screen == screen);
        view! {
            <li>
                <a
                    href=format!("#{}", screen.hash())
                    aria-current=move || here().then_some("page")
                    on:click=move |event| desk.follow_link(&event, screen)
                >
                    {icon::icon(30, sign)}
                    <span>{move || desk.label(label)}</span>
                </a>
            </li>
        }
    };
    view! {
        <nav class="index" aria-label=move || desk.label(Label::Sections)>
            <div class="brand">{icon::icon(36, icon::BRAND)}<span class="sr">"Whitehold"</span></div>
            <ol>{Screen::ALL.map(link).collect_view()}</ol>
        </nav>
    }
}

fn head(desk: Desk) -> impl IntoView {
    let next_theme = move || {
        let dark = desk.with(|state| match state.draft.theme {
            Theme::Device => device_is_dark(),
            theme => theme == Theme::Dark,
        });
        if dark { Theme::Light } else { Theme::Dark }
    };
    view! {
        <header class="head">
            <div class="head-title">
                <h1>{move || title(desk)}</h1>
                <p>{move || subtitle(desk)}</p>
            </div>
            <button
                class="btn btn-icon"
                type="button"
                aria-label=move || desk.label(Label::Undo)
                disabled=move || desk.with(|state| match state.screen {
                    Screen::Library | Screen::PrintRoom => state.records.log().to_undo().is_none(),
                    _ => state.undo.is_empty(),
                })
                on:click=move |_| travel(desk, true)
            >
                {icon::icon(24, icon::UNDO)}
            </button>
            <button
                class="btn btn-icon"
                type="button"
                aria-label=move || desk.label(Label::Redo)
                disabled=move || desk.with(|state| match state.screen {
                    Screen::Library | Screen::PrintRoom => state.records.log().to_redo().is_none(),
                    _ => state.redo.is_empty(),
                })
                on:click=move |_| travel(desk, false)
            >
                {icon::icon(24, icon::REDO)}
            </button>
            <button
                class="btn"
                type="button"
                id="units"
                aria-label=move || format!("{}: {}", desk.label(Label::UnitsAre), units(desk))
                on:click=move |_| desk.send(Msg::Units)
            >
                {move || {
                    let voice = desk.voice();
                    Quantity::Temperature.unit(voice.units, voice.language)
                }}
            </button>
            <button
                class="btn"
                type="button"
                id="language"
                lang=move || desk.voice().language.other().tag()
                aria-label=move || {
                    let mut voice = desk.voice();
                    voice.language = voice.language.other();
                    voice.label(Label::ChangeLanguage)
                }
                on:click=move |_| desk.send(Msg::Language)
            >
                {move || desk.voice().language.other().tag().to_uppercase()}
            </button>
            <button
                class="btn btn-icon"
                type="button"
                id="theme"
                aria-label=move || desk.label(Label::Theme)
                on:click=move |_| desk.send(Msg::Theme(next_theme()))
            >
                {icon::icon(24, icon::THEME)}
            </button>
        </header>
    }
}

fn device_is_dark() -> bool {
    web_sys::window()
        .and_then(|window| window.match_media("(prefers-color-scheme: dark)").ok().flatten())
        .is_some_and(|query| query.matches())
}

/// The units in use, one of each kind.
fn units(desk: Desk) -> String {
    let voice = desk.voice();
    [Quantity::Temperature, Quantity::Belt, Quantity::Weight, Quantity::Threads]
        .map(|quantity| quantity.unit(voice.units, voice.language))
        .join(", ")
}

fn title(desk: Desk) -> String {
    let name = desk.text(Field::Title);
    let voice = desk.voice();
    let name = if name.is_empty() { voice.label(Label::NewOrder).to_owned() } else { name };
    let white = desk.with(|state| state.pick_or_closed().map(|pick| pick.name.clone())).unwrap_or_default();
    match desk.with(|state| state.screen) {
        Screen::Library => voice.word(LibraryLabel::Library).to_owned(),
        Screen::JobSheet => voice.say(&JobSheetPhrase::Sheet),
        Screen::Diagnosis => voice.say(&DiagnosisPhrase::Title),
        Screen::PrintRoom => voice.say(&PrintRoomPhrase::Shop),
        Screen::Settings => voice.say(&PrintRoomPhrase::Settings),
        Screen::Window => voice.say(&Phrase::WindowTitle { white }),
        Screen::Forecast => voice.say(&Phrase::ForecastTitle { white }),
        Screen::Job => name,
    }
}

fn subtitle(desk: Desk) -> String {
    let voice = desk.voice();
    let line = desk.with(|state| match state.screen {
        Screen::Window | Screen::Forecast | Screen::JobSheet | Screen::Diagnosis => {
            state.draft.text(Field::Title).to_owned()
        }
        Screen::Library | Screen::PrintRoom | Screen::Settings => records(&state.records, voice),
        Screen::Job => voice.say(&Phrase::OrderLine {
            pieces: state.draft.text(Field::Pieces).into(),
            lot: state.draft.text(Field::Lot).into(),
            due: voice.day(state.draft.text(Field::Due)),
        }),
    });
    [line, keeping(desk).to_owned()]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" · ")
}

/// How many records there are, and when they were last saved as a file.
fn records(shop: &Records, voice: Voice) -> String {
    let reminder = shop.reminder();
    let last = reminder.days.map_or_else(
        || voice.word(LibraryLabel::NeverSaved).to_owned(),
        |days| voice.say(&LibraryPhrase::SavedDaysAgo { days }),
    );
    format!("{} · {last}", voice.say(&LibraryPhrase::Records { count: voice.count(shop.total()) }))
}

fn keeping(desk: Desk) -> &'static str {
    match desk.with(|state| state.kept()) {
        Keeping::Untried => "",
        Keeping::Saving => desk.label(Label::Saving),
        Keeping::Kept => desk.label(Label::KeptHere),
        Keeping::NotKept => desk.label(Label::NotKeptHere),
    }
}
