//! The print room: the demo's, or the shop's own after five answers at most; what is on its shelf and to be printed.
//!
//! The answers are one record of the log ([`RoomSettings`](super::records::RoomSettings)); every tap is an entry,
//! stored as any other. Until its `own` is set, the demo print room stands in. The dryer becomes a record of its
//! own when the shop opens.

use super::state::State;
use crate::library::BatchRecord;
use crate::library::log::{Key, Kind};
use crate::plan::{Order, PrintStep};
use serde_json::Value;

/// One white or blocker on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// Its name.
    pub name: String,
    /// Its record.
    pub key: Key,
    /// Tubs that are recorded.
    pub tubs: usize,
    /// What is left in the tubs that were weighed, kg; `None` where none was.
    pub left_kg: Option<f64>,
    /// Pieces of the order in the form that it is enough for, where the chosen pick uses this white.
    pub enough: Option<f64>,
}

/// The whites and blockers on the shelf.
#[must_use]
pub fn stock(state: &State) -> Vec<Stock> {
    let (records, library) = (&state.records, state.records.library());
    let shelf = &state.draft.rest.shop.shelf;
    let one = |id: &String| {
        let white = library.whites.iter().find(|white| white.id == *id);
        let blocker = library.blockers.iter().find(|blocker| blocker.id == *id);
        let (kind, name) = match (white, blocker) {
            (Some(white), _) => (Kind::White, &white.name),
            (_, Some(blocker)) => (Kind::Blocker, &blocker.name),
            _ => return None,
        };
        let tubs: Vec<BatchRecord> =
            records.log().records_of(Kind::Batch, id).filter_map(|record| record.read().ok()).collect();
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

/// White on one piece of the order in the form, kg, where the chosen pick uses this white: printed area times film
/// times the density of its class.
fn kg_a_piece(state: &State, id: &str) -> Option<f64> {
    let (pick, order) = (state.pick().filter(|pick| pick.white == id)?, state.order.as_ref()?);
    let library = state.records.library();
    let density = library.white(library.white_record(id).ok()?).ok()?.density;
    let film = pick.steps.iter().filter_map(|step| match step {
        PrintStep::White { film_um, .. } => Some(*film_um),
        _ => None,
    });
    let film = film.fold(0.0, f64::max) * 1e-6;
    let area = order.print.area_cm2 * 1e-4 * order.print.coverage_percent / 100.0;
    let mass = area * film * density;
    (mass > 0.0).then_some(mass)
}

/// An order that is kept as a record.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptOrder {
    /// Its record.
    pub key: Key,
    /// Its title.
    pub title: String,
    /// Pieces of all its garments.
    pub pieces: u32,
    /// Day it must leave, `2026-11-24`; empty if none is set.
    pub due: String,
}

/// The kept orders by their due day, those without one last.
#[must_use]
pub fn kept_orders(state: &State) -> Vec<KeptOrder> {
    let mut kept: Vec<KeptOrder> = Vec::new();
    for record in state.records.log().records(Kind::Order) {
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
