//! The Settings screen: what holds for every order of this tablet and of the shop.

use super::print_room::{languages, money_question, units};
use super::widgets::markup::{self, question};
use super::widgets::static_view::static_view;
use crate::desk::records::RecordsMsg;
use crate::desk::{Action, Field, Nudge, State, Theme};
use crate::library::log::{Key, Kind};
use crate::web::desk::Desk;
use crate::wording::{JobSheetPhrase, LibraryLabel, LibraryPhrase, PrintRoomPhrase, Quantity, Voice};
use leptos::prelude::*;
use maud::{Markup, html};

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
        let backup = if reminder.due {
            PrintRoomPhrase::BackupDue { changes }
        } else {
            PrintRoomPhrase::BackupFine { changes }
        };
        // The words begin with a small letter, as they stand elsewhere within a line.
        let mut letters = last.chars();
        let first = letters.next().map(|letter| letter.to_uppercase().to_string()).unwrap_or_default();
        format!("{first}{}. {}", letters.as_str(), voice.say(&backup))
    };
    view! {
        <div class="settings">
            <div>
                {static_view(desk, for_the_reader)}
                <h2 class="sec-head gap">{move || desk.voice().say(&PrintRoomPhrase::Backup)}</h2>
                <p class="plain" id="backup">{say}</p>
                <div class="row blk">
                    <a class="btn" id="save-backup" href="#settings" on:click=move |event| desk.hand_out_library(&event)>
                        {move || desk.voice().word(LibraryLabel::SaveFile)}
                    </a>
                </div>
            </div>
            {static_view(desk, for_the_shop)}
        </div>
    }
}

/// Language, units, theme and money.
fn for_the_reader(state: &State) -> Markup {
    let voice = state.voice();
    let themes = [
        (Theme::Device, PrintRoomPhrase::AsDevice),
        (Theme::Light, PrintRoomPhrase::Light),
        (Theme::Dark, PrintRoomPhrase::Dark),
    ];
    let themes = html! {
        @for (theme, name) in &themes {
            (markup::answer(&Action::Theme(*theme), state.draft.theme == *theme, &voice.say(name)))
        }
    };
    html! {
        (question("q-tongue", &voice.say(&PrintRoomPhrase::Language), &languages(voice)))
        (question("q-units", &voice.say(&PrintRoomPhrase::Units), &units(voice)))
        (question("q-theme", &voice.say(&PrintRoomPhrase::Theme), &themes))
        (money_question(state, &PrintRoomPhrase::Money))
    }
}

/// Air, mesh transfer and dryer; what this program is.
fn for_the_shop(state: &State) -> Markup {
    let voice = state.voice();
    html! { (air(state)) (transfer(state)) (dryer(state)) (about(voice)) }
}

/// A number with a button on each side and a sentence under it.
fn stepped(
    id: &str,
    asks: &PrintRoomPhrase,
    value: &str,
    say: &PrintRoomPhrase,
    action: impl Fn(Nudge) -> Action,
    voice: Voice,
) -> Markup {
    let button = |nudge: Nudge, sign: &str, name: &PrintRoomPhrase| {
        html! {
            button class="btn" type="button" data-do=(action(nudge))
                aria-label={ (voice.say(asks)) ": " (voice.say(name)) } { (sign) }
        }
    };
    html! {
        div class="blk" {
            h2 class="sec-head" { (voice.say(asks)) }
            div class="row" {
                (button(Nudge::Less, "\u{2212}", &PrintRoomPhrase::Less))
                b class="num set-v" id=(id) { (value) }
                (button(Nudge::More, "+", &PrintRoomPhrase::More))
            }
            p class="cap" { (voice.say(say)) }
        }
    }
}

fn air(state: &State) -> Markup {
    let voice = state.voice();
    let percent = state.draft.value(Field::Humidity, None).ok().flatten().unwrap_or(65.0);
    let value = voice.quantity(Quantity::Percent, percent);
    let (asks, say) = (PrintRoomPhrase::Humidity, PrintRoomPhrase::HumiditySay);
    stepped("humidity-now", &asks, &value, &say, Action::Humidity, voice)
}

fn transfer(state: &State) -> Markup {
    let voice = state.voice();
    let own = state.draft.rest.shop.transfer.is_some();
    let percent = voice.quantity(Quantity::Percent, state.transfer() * 100.0);
    let say = if own {
        PrintRoomPhrase::TransferOwn { percent: percent.clone() }
    } else {
        PrintRoomPhrase::TransferPrior { percent: percent.clone() }
    };
    let action = |nudge| Action::Transfer(Some(nudge));
    html! {
        (stepped("transfer-now", &PrintRoomPhrase::Transfer, &percent, &say, action, voice))
        @if own {
            (markup::button("", &Action::Transfer(None), &voice.say(&PrintRoomPhrase::ForgetTransfer)))
        }
    }
}

fn dryer(state: &State) -> Markup {
    let voice = state.voice();
    let id = &state.draft.rest.shop.dryer;
    let Some(dryer) = state.records.library().dryers.iter().find(|dryer| dryer.id == *id) else {
        return Markup::default();
    };
    let (drift, name) = (&dryer.drift, dryer.name.clone());
    let measured = match &dryer.measured {
        Some(day) => JobSheetPhrase::Measured { dryer: name, day: voice.day(day) },
        None => JobSheetPhrase::NotMeasured { dryer: name },
    };
    let say = voice.say(&PrintRoomPhrase::Drift {
        air: voice.quantity(Quantity::TemperatureDifference, drift.air.value),
        film: voice.quantity(Quantity::Percent, drift.film.value * 100.0),
        stop: voice.quantity(Quantity::Seconds, drift.stop.value),
    });
    let open = Action::OpenRecord(Key::new(Kind::Dryer, id.as_str()));
    html! {
        (markup::head("dryer-now", &voice.say(&measured), ""))
        p class="plain" { (say) }
        div class="row blk" { (markup::button("", &open, &voice.say(&PrintRoomPhrase::ChangeIt))) }
    }
}

fn about(voice: Voice) -> Markup {
    let part = |head: &PrintRoomPhrase, say: &PrintRoomPhrase| {
        html! { h2 class="sec-head gap" { (voice.say(head)) } p class="plain" { (voice.say(say)) } }
    };
    html! {
        (part(&PrintRoomPhrase::About, &PrintRoomPhrase::AboutSay))
        p class="cap" { "Whitehold " (env!("CARGO_PKG_VERSION")) }
        (part(&PrintRoomPhrase::Licences, &PrintRoomPhrase::LicencesSay))
    }
}
