//! Rows of the library that belong to no floor below.

use crate::plan::Order;
use crate::quantity::Sourced;
use serde::{Deserialize, Serialize};

/// One row of `data/laws.json`: a limit of law.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LawRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// The limit; its source is the law.
    pub limit: Sourced,
    /// Day of force, `2026-11-24`.
    pub since: String,
    /// What it means.
    pub note: String,
}

/// A print room with its orders: `data/harbour_lane.json`, the demo.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PrintRoom {
    /// Name of the shop.
    pub name: String,
    /// Where the records come from.
    pub source: String,
    /// Ids of the whites and blockers it keeps.
    pub shelf: Vec<String>,
    /// Id of its dryer.
    pub dryer: String,
    /// Humidity of the room on an ordinary day, %.
    pub humidity_percent: f64,
    /// Its orders, in the order they came in.
    pub orders: Vec<RoomOrder>,
}

/// One order of a print room.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoomOrder {
    /// Number of the order.
    pub id: String,
    /// What is printed, in a few words.
    pub title: String,
    /// For whom.
    pub customer: String,
    /// The order itself.
    pub order: Order,
}
