use crate::ink::WhiteClass;
use crate::plan::{DyeClass, Order};
use crate::quantity::Sourced;
use crate::textile::{Construction, Depth, Fibre};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One row of `data/limits.json`: a number that belongs to no fibre, white or dryer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LimitRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// The number.
    pub value: Sourced,
    /// Day of force, for a limit of law.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub since: Option<String>,
    /// What it means.
    pub note: String,
}

/// How the dryer was run in an anchor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AnchorSetting {
    /// The robust set point of this cloth and white.
    Robust,
    /// The same, 18 K hotter.
    #[serde(rename = "over-18-k")]
    Over18K,
    /// The belt left as it was set for cotton.
    CottonBelt,
    /// The robust set point, twice through the dryer.
    TwoPasses,
}

/// One row of `data/anchors.json`: how often the trade sees a print of this kind fail.
///
/// The level of every bleed forecast hangs on these rows; the equations only give ratios between them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AnchorRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// The cloth in words.
    pub case: String,
    /// Mass shares of the cloth, percent.
    pub composition_percent: BTreeMap<Fibre, f64>,
    /// How the cloth is made.
    pub construction: Construction,
    /// Weight of the cloth, g/m².
    pub areal_weight_gsm: f64,
    /// How deep it is dyed.
    pub depth: Depth,
    /// What kind of dye is on its polyester.
    pub dye_class: DyeClass,
    /// Class of the white.
    pub white_class: WhiteClass,
    /// Whether the white is low-cure.
    pub low_cure: bool,
    /// Whether a blocker lies under it.
    pub blocker: bool,
    /// How the dryer was run.
    pub setting: AnchorSetting,
    /// Share of such jobs whose white turns later, 0 to 1.
    pub fails: Sourced,
    /// Whether the row is fitted; the others only check the fit.
    pub fitted: bool,
    /// Day it was written down.
    pub date: String,
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
