//! The print room: the demo's, or the shop's own after five answers at most.
//!
//! The answers are one record of the log, the setting `shop`; every tap is an entry, kept as any other. Until
//! [`Room::own`] holds, the demo print room stands in. The dryer becomes a record of its own when the shop opens.

use super::draft::Draft;
use super::edit::change;
use super::field::Field;
use super::msg::Effect;
use super::shop::Shop;
use super::state::{Screen, State};
use super::update::ask_again;
use crate::library::Batch;
use crate::library::log::{Edit, Key, Kind, Log, fields};
use crate::plan::{self, Order, Step};
use crate::wording;
use serde_json::{Map, Value, json};

/// Id of the record.
const ID: &str = "shop";
/// Id of the shop's own dryer.
const DRYER: &str = "our-dryer";

/// What the shop has said of itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Room {
    /// Whether it is the shop's own, not the demo's.
    pub own: bool,
    /// Whites and blockers on the shelf, by their ids.
    pub shelf: Vec<String>,
    /// The dryer that is most like its own, by its id; empty = not answered.
    pub dryer: String,
    /// Meshes it prints white through, by their ids; empty = all that are known.
    pub meshes: Vec<String>,
    /// Sign of its money.
    pub money: String,
}

impl Room {
    /// What the log says.
    #[must_use]
    pub fn of(log: &Log) -> Self {
        let fields = log.record(Kind::Setting, ID).map(|record| record.fields).unwrap_or_default();
        let word = |name: &str| fields.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
        let words = |name: &str| {
            let list = fields.get(name).and_then(Value::as_array);
            list.into_iter().flatten().filter_map(Value::as_str).map(str::to_owned).collect()
        };
        Self {
            own: fields.get("own").and_then(Value::as_bool).unwrap_or(false),
            shelf: words("shelf"),
            dryer: word("dryer"),
            meshes: words("meshes"),
            money: word("money"),
        }
    }

    /// Its record.
    pub(super) fn key() -> Key {
        Key::new(Kind::Setting, ID)
    }

    /// Whether enough is answered to work.
    #[must_use]
    pub fn ready(&self) -> bool {
        !self.shelf.is_empty() && !self.meshes.is_empty()
    }
}

/// Something that was answered.
#[derive(Clone, Debug, PartialEq)]
pub enum Answered {
    /// A white or blocker is on the shelf or not.
    Shelf(String),
    /// The dryer that is most like ours.
    Dryer(String),
    /// A mesh is there or not.
    Mesh(String),
    /// The sign of our money.
    Money(String),
    /// The shop opens.
    Open,
    /// Back to the demo.
    Demo,
}

/// Puts an id in or takes it out.
fn turned(list: &[String], id: &str) -> Vec<String> {
    let mut turned: Vec<String> = list.iter().filter(|other| *other != id).cloned().collect();
    if turned.len() == list.len() {
        turned.push(id.into());
    }
    turned
}

/// The edits that an answer makes.
pub(super) fn edits(shop: &Shop, draft: &Draft, answer: &Answered) -> Vec<Edit> {
    let room = Room::of(shop.log());
    let set = |name: &str, value: Value| {
        let fields: Map<String, Value> = std::iter::once((name.to_owned(), value)).collect();
        shop.log().write(Kind::Setting, ID, &fields)
    };
    match answer {
        Answered::Shelf(id) => vec![set("shelf", json!(turned(&room.shelf, id)))],
        Answered::Mesh(id) => vec![set("meshes", json!(turned(&room.meshes, id)))],
        Answered::Dryer(id) => vec![set("dryer", json!(id))],
        Answered::Money(sign) => vec![set("money", json!(sign))],
        Answered::Demo => vec![set("own", json!(false))],
        Answered::Open if room.ready() && dryer_is_read(draft) => {
            let mut edits = vec![set("own", json!(true))];
            edits.extend(our_dryer(shop, draft, &room));
            edits
        }
        Answered::Open => Vec::new(),
    }
}

/// Whether everything can be read that the shop says of its dryer.
#[must_use]
pub fn dryer_is_read(draft: &Draft) -> bool {
    let mut asked = Field::ALL.into_iter().filter(|field| field.of_shop());
    asked.all(|field| draft.value(field, field.bound()).is_ok())
}

/// The shop's own dryer: the one that is most like it, as long and as hot as the shop says.
fn our_dryer(shop: &Shop, draft: &Draft, room: &Room) -> Option<Edit> {
    let library = shop.library();
    let like = library.dryers.iter().find(|dryer| dryer.id == room.dryer).or(library.dryers.first())?;
    let mut ours = like.clone();
    let total: f64 = ours.zones.iter().map(|zone| zone.length.value).sum();
    let number = |field: Field| draft.value(field, field.bound()).ok().flatten();
    if let Some(length) = number(Field::HeatedLength).filter(|_| total > 0.0) {
        for zone in &mut ours.zones {
            let times = length / total;
            zone.length.value *= times;
            zone.length.range = zone.length.range.map(|end| end * times);
            zone.length.source = "measured by the shop".into();
        }
    }
    if let Some(hottest) = number(Field::HottestSet) {
        ours.set_c[1] = hottest.max(ours.set_c[0] + 1.0);
    }
    ours.id = DRYER.into();
    ours.name = draft.voice().say(&wording::PrintRoomPhrase::OurDryer);
    ours.measured = None;
    ours.source = format!("copied from {}", like.id);
    shop.log().put(Kind::Dryer, DRYER, &fields(&ours), None)
}

/// What follows from an answer once it is in the log.
pub(super) fn follow(state: &mut State, answer: &Answered, effects: &mut Vec<Effect>) {
    let room = Room::of(state.shop.log());
    match answer {
        Answered::Open if room.own => {
            let dryer =
                if state.shop.log().record(Kind::Dryer, DRYER).is_some() { DRYER.into() } else { room.dryer };
            let shop = plan::Shop { shelf: room.shelf, dryer, ..plan::Shop::default() };
            change(state, None, effects, |draft| draft.open(&Order { shop, ..Order::default() }, ""));
            // The last answer is the demo's, and says nothing of this shop.
            (state.report, state.order, state.window, state.forecast) = (None, None, None, None);
            state.screen = Screen::Job;
        }
        Answered::Shelf(_) if room.own => {
            change(state, None, effects, |draft| draft.rest.shop.shelf = room.shelf);
        }
        Answered::Mesh(_) if room.own => ask_again(state, effects),
        _ => {}
    }
}

/// What stands on the shelf of one white.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// Its name.
    pub name: String,
    /// Its record.
    pub key: Key,
    /// Tubs that are noted.
    pub tubs: usize,
    /// What is left in those that were weighed, kg; nothing where none was.
    pub left_kg: Option<f64>,
    /// Pieces of the order in the form that it is enough for, where its way to print uses this white.
    pub enough: Option<f64>,
}

/// What stands on the shelf.
#[must_use]
pub fn stock(state: &State) -> Vec<Stock> {
    let (shop, library) = (&state.shop, state.shop.library());
    let shelf = &state.draft.rest.shop.shelf;
    let one = |id: &String| {
        let white = library.whites.iter().find(|white| white.id == *id);
        let blocker = library.blockers.iter().find(|blocker| blocker.id == *id);
        let (kind, name) = match (white, blocker) {
            (Some(white), _) => (Kind::White, &white.name),
            (_, Some(blocker)) => (Kind::Blocker, &blocker.name),
            _ => return None,
        };
        let tubs: Vec<Batch> =
            shop.log().records_of(Kind::Batch, id).filter_map(|record| record.read().ok()).collect();
        let weighed: Vec<f64> = tubs.iter().filter_map(|tub| tub.left_kg).collect();
        let left_kg = (!weighed.is_empty()).then(|| weighed.iter().sum());
        let each = white.and_then(|_| kg_a_piece(state, id));
        let enough = left_kg.zip(each).map(|(left, each): (f64, f64)| (left / each).floor());
        Some(Stock {
            name: name.clone(),
            key: Key::new(kind, id.as_str()),
            tubs: tubs.len(),
            left_kg,
            enough,
        })
    };
    shelf.iter().filter_map(one).collect()
}

/// White on one piece of the order in the form, kg, where its way to print uses this white: area, coverage and film
/// times the density of its class.
fn kg_a_piece(state: &State, id: &str) -> Option<f64> {
    let (pick, order) = (state.pick().filter(|pick| pick.white == id)?, state.order.as_ref()?);
    let library = state.shop.library();
    let density = library.white(library.white_record(id).ok()?).ok()?.density;
    let film = pick.steps.iter().filter_map(|step| match step {
        Step::White { film_um, .. } => Some(*film_um),
        _ => None,
    });
    let film = film.fold(0.0, f64::max) * 1e-6;
    let area = order.print.area_cm2 * 1e-4 * order.print.coverage_percent / 100.0;
    let mass = area * film * density;
    (mass > 0.0).then_some(mass)
}

/// A kept order: its record, title, pieces and day.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptOrder {
    /// Its record.
    pub key: Key,
    /// Its title.
    pub title: String,
    /// Pieces of all its garments.
    pub pieces: u32,
    /// Day it must leave; empty if open.
    pub due: String,
}

/// The orders that are kept, those that are due first at the head, those without a day last.
#[must_use]
pub fn kept_orders(state: &State) -> Vec<KeptOrder> {
    let mut kept: Vec<KeptOrder> = Vec::new();
    for record in state.shop.log().records(Kind::Order) {
        let Ok(order) = record.read::<Order>() else { continue };
        let title = record.fields.get("title").and_then(Value::as_str).unwrap_or_default().to_owned();
        let pieces = order.garments.iter().map(|garment| garment.pieces).fold(0, u32::saturating_add);
        let one = KeptOrder { key: record.key, title, pieces, due: order.use_.due };
        let later = |other: &KeptOrder| {
            (other.due.is_empty(), &other.due, &other.title) > (one.due.is_empty(), &one.due, &one.title)
        };
        let place = kept.iter().position(later).unwrap_or(kept.len());
        kept.insert(place, one);
    }
    kept
}
