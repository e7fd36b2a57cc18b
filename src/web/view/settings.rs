//! The settings: what holds for every order of this tablet and of the shop.

use super::print_room::{does, money_of, question, tongues, units};
use super::widgets::markup;
use super::widgets::static_view::static_view;
use crate::desk::records::RecordsMsg;
use crate::desk::{Field, Msg, Screen, State, Theme};
use crate::library::log::{Key, Kind};
use crate::web::desk::Desk;
use crate::wording::{LibraryLabel, LibraryPhrase, PrintRoomPhrase, Quantity, Voice};
use leptos::prelude::*;

/// The screen.
pub fn settings(desk: Desk) -> impl IntoView {
    desk.change_records(RecordsMsg::Tick);
    let due = desk.memo(|state| (state.records.reminder(), state.voice()));
    let say = move || {
        let (reminder, voice) = due.get();
        let last = reminder.days.map_or_else(
            || voice.word(LibraryLabel::NeverSaved).to_owned(),
            |days| voice.say(&LibraryPhrase::SavedDaysAgo { days }),
        );
        let changes = voice.count(reminder.changes);
        let room = if reminder.due {
            PrintRoomPhrase::BackupDue { changes }
        } else {
            PrintRoomPhrase::BackupFine { changes }
        };
        // The words of the head begin small.
        let mut letters = last.chars();
        let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
        format!("{first}{}. {}", letters.as_str(), voice.say(&room))
    };
    view! {
        <div class="settings">
            <div>
                {static_view(desk, |state| [tongue(state), theme(state), money_of(state, &PrintRoomPhrase::Money)].concat(), acts)}
                <h2 class="sec-head gap">{move || desk.voice().say(&PrintRoomPhrase::Backup)}</h2>
                <p class="plain" id="backup">{say}</p>
                <div class="row blk">
                    <a class="btn" id="save-backup" href="#settings" on:click=move |event| desk.hand_out_library(&event)>
                        {move || desk.voice().word(LibraryLabel::SaveFile)}
                    </a>
                </div>
            </div>
            {static_view(desk, |state| [air(state), deposit(state), dryer(state), about(state)].concat(), acts)}
        </div>
    }
}

fn acts(desk: Desk, act: &str) {
    let (what, rest) = act.split_once(':').unwrap_or((act, ""));
    match (what, rest) {
        ("theme", "light") => desk.send(Msg::Theme(Theme::Light)),
        ("theme", "dark") => desk.send(Msg::Theme(Theme::Dark)),
        ("theme", _) => desk.send(Msg::Theme(Theme::Device)),
        ("humidity", by) => desk.send(Msg::Step(Field::Humidity, if by == "more" { 1 } else { -1 })),
        ("transfer", by) => desk.send(Msg::Transfer(match by {
            "more" => Some(1),
            "less" => Some(-1),
            _ => None,
        })),
        ("see-dryer", id) => {
            desk.change_records(RecordsMsg::Open(Key::new(Kind::Dryer, id)));
            desk.send(Msg::Show(Screen::Library));
        }
        _ => does(desk, act),
    }
}

fn word(voice: Voice, room: &PrintRoomPhrase) -> String {
    markup::text(&voice.say(room))
}

fn tongue(state: &State) -> String {
    let voice = state.voice();
    question("q-tongue", &word(voice, &PrintRoomPhrase::Language), &tongues(voice))
        + &question("q-units", &word(voice, &PrintRoomPhrase::Units), &units(voice))
}

fn theme(state: &State) -> String {
    let voice = state.voice();
    let answers: String = [
        (Theme::Device, "theme:device", PrintRoomPhrase::AsDevice),
        (Theme::Light, "theme:light", PrintRoomPhrase::Light),
        (Theme::Dark, "theme:dark", PrintRoomPhrase::Dark),
    ]
    .iter()
    .map(|(theme, act, name)| markup::answer(act, state.draft.theme == *theme, &voice.say(name)))
    .collect();
    question("q-theme", &word(voice, &PrintRoomPhrase::Theme), &answers)
}

/// A value with a button on each side and a sentence under it.
fn stepped(voice: Voice, id: &str, asks: &PrintRoomPhrase, value: &str, say: &str) -> String {
    let button = |by: &str, sign: &str, name: &PrintRoomPhrase| {
        format!(
            "<button class=\"btn\" type=\"button\" data-do=\"{id}:{by}\" aria-label=\"{}: {}\">{sign}</button>",
            word(voice, asks),
            word(voice, name)
        )
    };
    format!(
        "<div class=\"blk\"><h2 class=\"sec-head\">{}</h2><div class=\"row\">{}<b class=\"num set-v\" id=\"{id}\">{value}</b>{}</div>\
         <p class=\"cap\">{say}</p></div>",
        word(voice, asks),
        button("less", "\u{2212}", &PrintRoomPhrase::Less),
        button("more", "+", &PrintRoomPhrase::More),
    )
}

fn air(state: &State) -> String {
    let voice = state.voice();
    let value = voice
        .quantity(Quantity::Percent, state.draft.value(Field::Humidity, None).ok().flatten().unwrap_or(65.0));
    stepped(
        voice,
        "humidity-now",
        &PrintRoomPhrase::Humidity,
        &markup::text(&value),
        &word(voice, &PrintRoomPhrase::HumiditySay),
    )
    .replace("humidity-now:", "humidity:")
}

fn deposit(state: &State) -> String {
    let voice = state.voice();
    let own = state.draft.rest.shop.transfer;
    let percent = voice.quantity(Quantity::Percent, state.transfer() * 100.0);
    let say = match own {
        Some(_) => PrintRoomPhrase::TransferOwn { percent: percent.clone() },
        None => PrintRoomPhrase::TransferPrior { percent: percent.clone() },
    };
    let back =
        own.map(|_| markup::button("", "transfer:forget", &voice.say(&PrintRoomPhrase::ForgetTransfer)));
    stepped(voice, "transfer-now", &PrintRoomPhrase::Transfer, &markup::text(&percent), &word(voice, &say))
        .replace("transfer-now:", "transfer:")
        + &back.unwrap_or_default()
}

fn dryer(state: &State) -> String {
    let voice = state.voice();
    let id = &state.draft.rest.shop.dryer;
    let Some(dryer) = state.records.library().dryers.iter().find(|dryer| dryer.id == *id) else {
        return String::new();
    };
    let drift = &dryer.drift;
    let measured = match &dryer.measured {
        Some(day) => voice.say(&crate::wording::JobSheetPhrase::Measured {
            dryer: dryer.name.clone(),
            day: voice.day(day),
        }),
        None => voice.say(&crate::wording::JobSheetPhrase::NotMeasured { dryer: dryer.name.clone() }),
    };
    let say = word(
        voice,
        &PrintRoomPhrase::Drift {
            air: voice.quantity(Quantity::TemperatureDifference, drift.air.value),
            film: voice.quantity(Quantity::Percent, drift.film.value * 100.0),
            stop: voice.quantity(Quantity::Seconds, drift.stop.value),
        },
    );
    format!(
        "{}<p class=\"plain\">{say}</p><div class=\"row blk\">{}</div>",
        markup::head("dryer-now", &measured, ""),
        markup::button("", &format!("see-dryer:{id}"), &voice.say(&PrintRoomPhrase::ChangeIt))
    )
}

fn about(state: &State) -> String {
    let voice = state.voice();
    let part = |head: &PrintRoomPhrase, say: &PrintRoomPhrase| {
        format!(
            "<h2 class=\"sec-head gap\">{}</h2><p class=\"plain\">{}</p>",
            word(voice, head),
            word(voice, say)
        )
    };
    format!(
        "{}<p class=\"cap\">Whitehold {}</p>{}",
        part(&PrintRoomPhrase::About, &PrintRoomPhrase::AboutSay),
        env!("CARGO_PKG_VERSION"),
        part(&PrintRoomPhrase::Licences, &PrintRoomPhrase::LicencesSay)
    )
}
