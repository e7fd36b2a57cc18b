//! The shop screen: five questions that make the desk the shop's own; then what is on its shelf and what is to be printed.

use super::widgets::field::typed;
use super::widgets::markup;
use super::widgets::static_view::static_view;
use crate::desk::print_room::{KeptOrder, Stock, kept_orders, stock};
use crate::desk::records::{RecordsMsg, RoomChange, RoomSettings, dryer_is_read};
use crate::desk::{Field, Msg, Screen, State};
use crate::library::log::{Key, Kind};
use crate::web::desk::Desk;
use crate::wording::{Label, Language, PrintRoomPhrase, Quantity, Units, Voice};
use leptos::prelude::*;

/// Signs of money to choose from; a shop may count without one.
pub const MONEY: [&str; 7] = ["€", "$", "£", "Q", "S/", "₡", "MX$"];

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
        match (own.get(), asking.get()) {
        (true, false) => view! {
            {static_view(desk, ours, does)}
            <div class="row blk">
                <button class="btn btn-wide" type="button" id="change-answers" on:click=move |_| asking.set(true)>
                    {move || desk.voice().say(&PrintRoomPhrase::ChangeQuestions)}
                </button>
            </div>
        }
        .into_any(),
        _ => questions(desk).into_any(),
    }
    }
}

fn questions(desk: Desk) -> impl IntoView {
    view! {
        {static_view(desk, |state| [demo(state), whites(state), dryers(state)].concat(), does)}
        <div class="two blk">
            {typed(desk, Field::HeatedLength, Label::HeatedLength)}
            {typed(desk, Field::HottestSet, Label::HottestSet)}
        </div>
        {static_view(desk, |state| [meshes(state), speech(state), money_of(state, &PrintRoomPhrase::WhichMoney), open(state)].concat(), does)}
    }
}

/// Answers a tap on this screen or on the settings.
pub fn does(desk: Desk, act: &str) {
    let (what, id) = act.split_once(':').unwrap_or((act, ""));
    let id_of = || id.to_owned();
    match what {
        "shelf" => desk.change_records(RecordsMsg::PrintRoom(RoomChange::Shelf(id_of()))),
        "dryer" => desk.change_records(RecordsMsg::PrintRoom(RoomChange::Dryer(id_of()))),
        "mesh" => desk.change_records(RecordsMsg::PrintRoom(RoomChange::Mesh(id_of()))),
        "money" => desk.change_records(RecordsMsg::PrintRoom(RoomChange::Money(id_of()))),
        "open" => desk.change_records(RecordsMsg::PrintRoom(RoomChange::Open)),
        "demo" => desk.change_records(RecordsMsg::PrintRoom(RoomChange::Demo)),
        "language" => desk.send(Msg::Language),
        "units" => desk.send(Msg::Units),
        "order" => desk.change_records(RecordsMsg::PutInForm(Key::new(Kind::Order, id))),
        "see" => {
            let (kind, id) = id.split_once(' ').unwrap_or(("", id));
            let kind = if kind == "blocker" { Kind::Blocker } else { Kind::White };
            desk.change_records(RecordsMsg::Open(Key::new(kind, id)));
            desk.send(Msg::Show(Screen::Library));
        }
        _ => {}
    }
}

fn word(voice: Voice, room: &PrintRoomPhrase) -> String {
    markup::text(&voice.say(room))
}

/// A question with its answers.
pub fn question(id: &str, asks: &str, answers: &str) -> String {
    format!(
        "<div class=\"blk\"><h2 class=\"sec-head\" id=\"{id}\">{asks}</h2><div class=\"seg\" role=\"group\" \
         aria-labelledby=\"{id}\">{answers}</div></div>"
    )
}

fn demo(state: &State) -> String {
    let voice = state.voice();
    if RoomSettings::of(state.records.log()).own {
        let back = markup::button("", "demo", &voice.say(&PrintRoomPhrase::BackToDemo));
        return format!("<div class=\"row\">{back}</div>");
    }
    format!(
        "<div class=\"none\"><h2>{}</h2><p class=\"plain\">{}</p></div>",
        word(voice, &PrintRoomPhrase::Demo),
        word(voice, &PrintRoomPhrase::DemoSay)
    )
}

fn whites(state: &State) -> String {
    let (voice, room) = (state.voice(), RoomSettings::of(state.records.log()));
    let library = state.records.library();
    let answer = |id: &str, name: &str, class: &str| {
        let pressed = room.shelf.iter().any(|other| other == id);
        markup::answer(&format!("shelf:{id}"), pressed, &format!("{name}, {class}"))
    };
    let mut answers = String::new();
    for white in &library.whites {
        answers += &answer(&white.id, &white.name, voice.class(white.class));
    }
    for blocker in &library.blockers {
        answers += &answer(&blocker.id, &blocker.name, &voice.label(Label::Blocker).to_lowercase());
    }
    question("q-whites", &word(voice, &PrintRoomPhrase::WhichWhites), &answers)
}

fn dryers(state: &State) -> String {
    let (voice, room) = (state.voice(), RoomSettings::of(state.records.log()));
    let library = state.records.library();
    let answers: String = library
        .dryers
        .iter()
        .map(|dryer| {
            let pressed = room.dryer == dryer.id;
            let heats = dryer.zones.first().map_or("", |zone| voice.emitter(zone.emitter));
            let length: f64 = dryer.zones.iter().map(|zone| zone.length.value).sum();
            let length = voice.quantity(Quantity::Length, length);
            markup::answer(
                &format!("dryer:{}", dryer.id),
                pressed,
                &format!("{}: {heats}, {length}", dryer.name),
            )
        })
        .collect();
    let say = word(voice, &PrintRoomPhrase::DryerSay);
    format!(
        "{}<p class=\"cap\">{say}</p>",
        question("q-dryers", &word(voice, &PrintRoomPhrase::WhichDryer), &answers)
    )
}

fn meshes(state: &State) -> String {
    let (voice, room) = (state.voice(), RoomSettings::of(state.records.log()));
    let mut answers = String::new();
    for mesh in state.records.every_mesh() {
        let pressed = room.meshes.contains(&mesh.0);
        answers +=
            &markup::answer(&format!("mesh:{}", mesh.0), pressed, &voice.quantity(Quantity::Threads, mesh.1));
    }
    question("q-meshes", &word(voice, &PrintRoomPhrase::WhichMeshes), &answers)
}

fn speech(state: &State) -> String {
    let voice = state.voice();
    question("q-speech", &word(voice, &PrintRoomPhrase::HowToSay), &(tongues(voice) + &units(voice)))
}

/// The languages to choose from.
pub fn tongues(voice: Voice) -> String {
    let one = |language, name| {
        let here = voice.language == language;
        markup::answer(if here { "as-it-is:language" } else { "language" }, here, name)
    };
    one(Language::En, "English") + &one(Language::Es, "Español")
}

/// The systems of units to choose from.
pub fn units(voice: Voice) -> String {
    let one = |units, name| {
        let here = voice.units == units;
        markup::answer(if here { "as-it-is:units" } else { "units" }, here, name)
    };
    one(Units::Metric, "°C, m/min, g/m², /cm") + &one(Units::Us, "°F, ft/min, oz/yd², /in")
}

/// The sign of money.
pub fn money_of(state: &State, asks: &PrintRoomPhrase) -> String {
    let (voice, room) = (state.voice(), RoomSettings::of(state.records.log()));
    let mut answers: String = MONEY
        .iter()
        .map(|sign| markup::answer(&format!("money:{sign}"), room.money == *sign, sign))
        .collect();
    answers += &markup::answer("money:", room.money.is_empty(), &voice.say(&PrintRoomPhrase::NoMoney));
    question("q-money", &word(voice, asks), &answers)
}

fn open(state: &State) -> String {
    let (voice, room) = (state.voice(), RoomSettings::of(state.records.log()));
    if !dryer_is_read(&state.draft) {
        return format!(
            "<p class=\"state blk\" id=\"missing\">{}</p>",
            word(voice, &PrintRoomPhrase::StillWrong)
        );
    }
    if room.ready() {
        return format!(
            "<div class=\"row blk\">{}</div>",
            markup::button("btn-main", "open", &voice.say(&PrintRoomPhrase::OpenOurs))
        );
    }
    format!("<p class=\"state blk\" id=\"missing\">{}</p>", word(voice, &PrintRoomPhrase::StillMissing))
}

fn ours(state: &State) -> String {
    let voice = state.voice();
    let shelf: String = stock(state).iter().map(|it| on_shelf(it, voice)).collect();
    let kept = kept_orders(state);
    let orders: String = kept.iter().map(|it| to_print(it, voice)).collect();
    let orders = if kept.is_empty() {
        format!("<p class=\"state\">{}</p>", word(voice, &PrintRoomPhrase::NoOrders))
    } else {
        format!("<div id=\"kept\">{orders}</div>")
    };
    [
        markup::head("shelf", &voice.say(&PrintRoomPhrase::OnTheShelf), ""),
        format!("<div id=\"stock\">{shelf}</div>"),
        markup::head("orders", &voice.say(&PrintRoomPhrase::KeptOrders), ""),
        orders,
        format!(
            "<div class=\"row blk\">{}</div>",
            markup::button("", "demo", &voice.say(&PrintRoomPhrase::BackToDemo))
        ),
    ]
    .concat()
}

fn on_shelf(stock: &Stock, voice: Voice) -> String {
    let tubs = (stock.tubs > 0).then(|| PrintRoomPhrase::Tubs { count: stock.tubs.to_string() });
    let left = match (stock.left_kg, stock.tubs) {
        (Some(kg), _) => Some(PrintRoomPhrase::Left { kg: voice.bare(Quantity::Plain, kg) }),
        (None, 0) => None,
        (None, _) => Some(PrintRoomPhrase::NotWeighed),
    };
    let enough =
        stock.enough.map(|pieces| PrintRoomPhrase::Enough { pieces: voice.count(pieces.max(0.0) as usize) });
    let said: Vec<String> = tubs.iter().chain(&left).chain(&enough).map(|it| word(voice, it)).collect();
    let kind = if stock.key.kind == Kind::Blocker { "blocker" } else { "white" };
    row(&format!("see:{kind} {}", stock.key.id), &stock.name, &said.join(", "), "")
}

fn to_print(order: &KeptOrder, voice: Voice) -> String {
    let pieces = voice.bare(Quantity::Plain, f64::from(order.pieces));
    let say = format!("{} {}", pieces, voice.label(Label::Pieces).to_lowercase());
    row(
        &format!("order:{}", order.key.id),
        &order.title,
        &markup::text(&say),
        &markup::text(&voice.day(&order.due)),
    )
}

fn row(act: &str, name: &str, said: &str, end: &str) -> String {
    let (act, name) = (markup::text(act), markup::text(name));
    format!(
        "<button class=\"hit\" type=\"button\" data-do=\"{act}\"><span class=\"fill\"><b>{name}</b><span>{said}</span></span>\
         <span class=\"hit-v\">{end}</span></button>"
    )
}
