//! The order as it travels in JSON: the shop that prints it, and earlier tests.

use super::garment::Garment;
use super::print::Print;
use super::wear::Use;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

/// One design, the garments it goes on, and what the shop has to print it with.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Order {
    /// The garments; one design may go on several.
    pub garments: Vec<Garment>,
    /// The print.
    pub print: Print,
    /// How the print is worn, stored and looked at.
    #[serde(rename = "use")]
    pub use_: Use,
    /// The shop that prints it.
    pub shop: Shop,
    /// Earlier tests of this lot, article or white.
    pub evidence: Vec<Evidence>,
    /// Fields written by a newer Whitehold, kept so that saving loses nothing.
    #[serde(flatten)]
    pub other: Map<String, Value>,
}

/// The shop: the inks on its shelf, its dryer and its room.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Shop {
    /// Ids of the whites and blockers on the shelf.
    pub shelf: Vec<String>,
    /// Id of the dryer.
    pub dryer: String,
    /// Set temperature that cannot be changed for this order, °C.
    pub dryer_fixed: Option<f64>,
    /// Times each piece goes through the dryer for this print.
    pub passes: u32,
    /// Humidity of the room where the cloth lies, %.
    pub humidity_percent: f64,
    /// Share of the open mesh volume that is transferred to the cloth, from the shop's own weighed print;
    /// absent = the prior of `data/limits.json`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub transfer: Option<f64>,
}

impl Default for Shop {
    fn default() -> Self {
        Self {
            shelf: Vec::new(),
            dryer: String::new(),
            dryer_fixed: None,
            passes: 1,
            humidity_percent: 65.0,
            transfer: None,
        }
    }
}

/// What an earlier test tested.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum EvidenceSubject {
    /// The dye lot of the cloth.
    Lot,
    /// The article, whatever its lot.
    Article,
    /// The white, whatever the cloth.
    White,
}

/// An earlier test of this lot, article or white.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Evidence {
    /// What was tested.
    pub about: EvidenceSubject,
    /// Id or name of that lot, article or white.
    pub name: String,
    /// Id of the white that was printed.
    pub white: String,
    /// Pieces inspected.
    pub pieces: u32,
    /// Pieces whose white turned.
    pub turned: u32,
    /// Days after printing; a 24 h oven test counts as the days of storage that it represents.
    pub days: f64,
    /// Id of the blocker that was under it; absent = none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blocker: Option<String>,
}
