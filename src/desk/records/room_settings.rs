//! What the shop says of its print room: one record of the log, the setting `shop`.

use super::Records;
use crate::desk::form::{Draft, Field};
use crate::library::log::{Edit, Key, Kind, Log, fields};
use crate::wording;
use serde_json::{Map, Value, json};

/// Id of the record.
const ID: &str = "shop";
/// Id of the shop's own dryer.
pub(in crate::desk) const DRYER: &str = "our-dryer";

/// What the shop says of its print room.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RoomSettings {
    /// Whether it is the shop's own, not the demo's.
    pub own: bool,
    /// Whites and blockers on the shelf, by their ids.
    pub shelf: Vec<String>,
    /// The dryer that is most like its own, by its id; empty if not answered.
    pub dryer: String,
    /// Meshes that it prints white through, by their ids; empty = all that are known.
    pub meshes: Vec<String>,
    /// Sign of its money; empty for none.
    pub money: String,
}

impl RoomSettings {
    /// The settings in a log.
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
    pub(in crate::desk) fn key() -> Key {
        Key::new(Kind::Setting, ID)
    }

    /// Whether enough is answered to open it.
    #[must_use]
    pub fn ready(&self) -> bool {
        !self.shelf.is_empty() && !self.meshes.is_empty()
    }
}

/// A change of the print room.
#[derive(Clone, Debug, PartialEq)]
pub enum RoomChange {
    /// A white or blocker is put on the shelf, or taken off.
    Shelf(String),
    /// The dryer that is most like the shop's.
    Dryer(String),
    /// A mesh is added, or removed.
    Mesh(String),
    /// The sign of money is another.
    Money(String),
    /// The shop's own print room opens.
    Open,
    /// The demo print room is shown again.
    Demo,
}

/// The list with an id added, or without it if it was there.
fn turned(list: &[String], id: &str) -> Vec<String> {
    let mut turned: Vec<String> = list.iter().filter(|other| *other != id).cloned().collect();
    if turned.len() == list.len() {
        turned.push(id.into());
    }
    turned
}

/// The edits of the log that a change makes.
pub(super) fn edits(records: &Records, draft: &Draft, answer: &RoomChange) -> Vec<Edit> {
    let room = RoomSettings::of(records.log());
    let set = |name: &str, value: Value| {
        let fields: Map<String, Value> = std::iter::once((name.to_owned(), value)).collect();
        records.log().write(Kind::Setting, ID, &fields)
    };
    match answer {
        RoomChange::Shelf(id) => vec![set("shelf", json!(turned(&room.shelf, id)))],
        RoomChange::Mesh(id) => vec![set("meshes", json!(turned(&room.meshes, id)))],
        RoomChange::Dryer(id) => vec![set("dryer", json!(id))],
        RoomChange::Money(sign) => vec![set("money", json!(sign))],
        RoomChange::Demo => vec![set("own", json!(false))],
        RoomChange::Open if room.ready() && dryer_is_read(draft) => {
            let mut edits = vec![set("own", json!(true))];
            edits.extend(our_dryer(records, draft, &room));
            edits
        }
        RoomChange::Open => Vec::new(),
    }
}

/// The shop's own dryer: the one that is most like it, as long and as hot as the shop says.
fn our_dryer(records: &Records, draft: &Draft, room: &RoomSettings) -> Option<Edit> {
    let library = records.library();
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
    records.log().put(Kind::Dryer, DRYER, &fields(&ours), None)
}

/// Whether every field about the shop's dryer can be read.
#[must_use]
pub fn dryer_is_read(draft: &Draft) -> bool {
    let mut asked = Field::ALL.into_iter().filter(|field| field.of_shop());
    asked.all(|field| draft.value(field, field.bound()).is_ok())
}
