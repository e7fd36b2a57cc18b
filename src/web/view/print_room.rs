//! The Print room screen: five questions that make the page the shop's own; then what is on its shelf and what is to
//! be printed.

use super::widgets::field::typed;
use super::widgets::markup::{self, question};
use super::widgets::static_view::static_view;
use crate::desk::print_room::{KeptOrder, Stock, kept_orders, stock};
use crate::desk::records::{RecordsMsg, RoomChange, RoomSettings, dryer_is_read};
use crate::desk::{Action, Field, State};
use crate::web::desk::Desk;
use crate::wording::{Label, Language, PrintRoomPhrase, Quantity, Units, Voice};
use leptos::prelude::*;
use maud::{Markup, html};

/// Signs of money to choose from; a shop may count without one.
const MONEY: [&str; 7] = ["€", "$", "£", "Q", "S/", "₡", "MX$"];

/// The screen.
pub fn print_room(desk: Desk) -> impl IntoView {
    desk.change_records(RecordsMsg::Tick);
    let own = desk.memo(|state| RoomSettings::of(state.records.log()).own);
    let asking = RwSignal::new(!own.get_untracked());
    Effect::new(move |was: Option<bool>| {
        let own = own.get();
        if was.is_some_and(|was| was != own) {
            asking.set(!own);
        }
        own
    });
    move || {
        if !own.get() || asking.get() {
            return questions(desk).into_any();
        }
        view! {
            {static_view(desk, shelf_and_orders)}
            <div class="row blk">
                <button class="btn btn-wide" type="button" id="change-answers" on:click=move |_| asking.set(true)>
                    {move || desk.voice().say(&PrintRoomPhrase::ChangeQuestions)}
                </button>
            </div>
        }
        .into_any()
    }
}

fn questions(desk: Desk) -> impl IntoView {
    view! {
        {static_view(desk, |state| html! { (demo(state)) (whites(state)) (dryers(state)) })}
        <div class="two blk">
            {typed(desk, Field::HeatedLength, Label::HeatedLength)}
            {typed(desk, Field::HottestSet, Label::HottestSet)}
        </div>
        {static_view(desk, |state| html! {
            (meshes(state))
            (speech(state))
            (money_question(state, &PrintRoomPhrase::WhichMoney))
            (open(state))
        })}
    }
}

/// Language, units and the shop's answers so far.
fn answers(state: &State) -> (Voice, RoomSettings) {
    (state.voice(), RoomSettings::of(state.records.log()))
}

fn back_to_demo(voice: Voice) -> Markup {
    markup::button("", &Action::Room(RoomChange::Demo), &voice.say(&PrintRoomPhrase::BackToDemo))
}

fn demo(state: &State) -> Markup {
    let (voice, room) = answers(state);
    html! {
        @if room.own {
            div class="row" { (back_to_demo(voice)) }
        } @else {
            div class="none" {
                h2 { (voice.say(&PrintRoomPhrase::Demo)) }
                p class="plain" { (voice.say(&PrintRoomPhrase::DemoSay)) }
            }
        }
    }
}

fn whites(state: &State) -> Markup {
    let (voice, room) = answers(state);
    let library = state.records.library();
    let answer = |id: &str, name: &str, class: &str| {
        let pressed = room.shelf.iter().any(|other| other == id);
        markup::answer(&Action::Room(RoomChange::Shelf(id.into())), pressed, &format!("{name}, {class}"))
    };
    let blocker = voice.label(Label::Blocker).to_lowercase();
    let answers = html! {
        @for white in &library.whites { (answer(&white.id, &white.name, voice.class(white.class))) }
        @for it in &library.blockers { (answer(&it.id, &it.name, &blocker)) }
    };
    question("q-whites", &voice.say(&PrintRoomPhrase::WhichWhites), &answers)
}

fn dryers(state: &State) -> Markup {
    let (voice, room) = answers(state);
    let answers = html! {
        @for dryer in &state.records.library().dryers {
            @let heats = dryer.zones.first().map_or("", |zone| voice.emitter(zone.emitter));
            @let length: f64 = dryer.zones.iter().map(|zone| zone.length.value).sum();
            @let length = voice.quantity(Quantity::Length, length);
            @let action = Action::Room(RoomChange::Dryer(dryer.id.clone()));
            (markup::answer(&action, room.dryer == dryer.id, &format!("{}: {heats}, {length}", dryer.name)))
        }
    };
    html! {
        (question("q-dryers", &voice.say(&PrintRoomPhrase::WhichDryer), &answers))
        p class="cap" { (voice.say(&PrintRoomPhrase::DryerSay)) }
    }
}

fn meshes(state: &State) -> Markup {
    let (voice, room) = answers(state);
    let answers = html! {
        @for (id, threads) in state.records.every_mesh() {
            @let pressed = room.meshes.contains(&id);
            @let words = voice.quantity(Quantity::Threads, threads);
            (markup::answer(&Action::Room(RoomChange::Mesh(id)), pressed, &words))
        }
    };
    question("q-meshes", &voice.say(&PrintRoomPhrase::WhichMeshes), &answers)
}

fn speech(state: &State) -> Markup {
    let voice = state.voice();
    let answers = html! { (languages(voice)) (units(voice)) };
    question("q-speech", &voice.say(&PrintRoomPhrase::HowToSay), &answers)
}

/// The languages to choose from.
pub fn languages(voice: Voice) -> Markup {
    html! {
        @for (language, name) in [(Language::En, "English"), (Language::Es, "Español")] {
            (markup::answer(&Action::Language(language), voice.language == language, name))
        }
    }
}

/// The systems of units to choose from.
pub fn units(voice: Voice) -> Markup {
    let all = [(Units::Metric, "°C, m/min, g/m², /cm"), (Units::Us, "°F, ft/min, oz/yd², /in")];
    html! {
        @for (units, names) in all { (markup::answer(&Action::Units(units), voice.units == units, names)) }
    }
}

/// The question about the sign of money.
pub fn money_question(state: &State, asks: &PrintRoomPhrase) -> Markup {
    let (voice, room) = answers(state);
    let none = voice.say(&PrintRoomPhrase::NoMoney);
    let signs = MONEY.iter().map(|sign| (*sign, *sign)).chain([("", none.as_str())]);
    let answers = html! {
        @for (sign, name) in signs {
            (markup::answer(&Action::Room(RoomChange::Money(sign.into())), room.money == sign, name))
        }
    };
    question("q-money", &voice.say(asks), &answers)
}

/// The button that opens the shop's own print room, or what it still needs.
fn open(state: &State) -> Markup {
    let (voice, room) = answers(state);
    let missing =
        |phrase: PrintRoomPhrase| html! { p class="state blk" id="missing" { (voice.say(&phrase)) } };
    if !dryer_is_read(&state.draft) {
        return missing(PrintRoomPhrase::StillWrong);
    }
    if !room.ready() {
        return missing(PrintRoomPhrase::StillMissing);
    }
    let words = voice.say(&PrintRoomPhrase::OpenOurs);
    html! {
        div class="row blk" { (markup::button("btn-main", &Action::Room(RoomChange::Open), &words)) }
    }
}

fn shelf_and_orders(state: &State) -> Markup {
    let voice = state.voice();
    let kept = kept_orders(state);
    html! {
        (markup::head("shelf", &voice.say(&PrintRoomPhrase::OnTheShelf), ""))
        div id="stock" { @for stock in stock(state) { (on_shelf(&stock, voice)) } }
        (markup::head("orders", &voice.say(&PrintRoomPhrase::KeptOrders), ""))
        @if kept.is_empty() {
            p class="state" { (voice.say(&PrintRoomPhrase::NoOrders)) }
        } @else {
            div id="kept" { @for order in &kept { (to_print(order, voice)) } }
        }
        div class="row blk" { (back_to_demo(voice)) }
    }
}

fn on_shelf(stock: &Stock, voice: Voice) -> Markup {
    let tubs = (stock.tubs > 0).then(|| PrintRoomPhrase::Tubs { count: stock.tubs.to_string() });
    let left = match (stock.left_kg, stock.tubs) {
        (Some(kg), _) => Some(PrintRoomPhrase::Left { kg: voice.bare(Quantity::Plain, kg) }),
        (None, 0) => None,
        (None, _) => Some(PrintRoomPhrase::NotWeighed),
    };
    let enough =
        stock.enough.map(|pieces| PrintRoomPhrase::Enough { pieces: voice.count(pieces.max(0.0) as usize) });
    let said: Vec<String> = tubs.iter().chain(&left).chain(&enough).map(|it| voice.say(it)).collect();
    row(&Action::OpenRecord(stock.key.clone()), &stock.name, &said.join(", "), "")
}

fn to_print(order: &KeptOrder, voice: Voice) -> Markup {
    let pieces = voice.bare(Quantity::Plain, f64::from(order.pieces));
    let say = format!("{} {}", pieces, voice.label(Label::Pieces).to_lowercase());
    row(&Action::PutInForm(order.key.clone()), &order.title, &say, &voice.day(&order.due))
}

fn row(action: &Action, name: &str, said: &str, end: &str) -> Markup {
    html! {
        button class="hit" type="button" data-do=(action) {
            span class="fill" { b { (name) } span { (said) } }
            span class="hit-v" { (end) }
        }
    }
}
