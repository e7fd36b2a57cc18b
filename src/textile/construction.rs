//! How a cloth is made, and what follows from it.

use crate::quantity::Sourced;
use serde::{Deserialize, Serialize};

/// How a cloth is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Construction {
    /// Single jersey, the T-shirt knit.
    Jersey,
    /// Interlock, a double knit.
    Interlock,
    /// Rib.
    Rib,
    /// Piqué, the polo knit.
    Pique,
    /// Fleece, brushed or loop-backed.
    Fleece,
    /// French terry.
    Terry,
    /// Open mesh knit.
    Mesh,
    /// Warp-knit tricot.
    Tricot,
    /// Waffle knit.
    Waffle,
    /// Plain woven.
    Woven,
    /// Canvas, duck.
    Canvas,
    /// Twill, denim.
    Twill,
}

impl Construction {
    /// Every construction, in the order of its table.
    pub const ALL: [Self; 12] = [
        Self::Jersey,
        Self::Interlock,
        Self::Rib,
        Self::Pique,
        Self::Fleece,
        Self::Terry,
        Self::Mesh,
        Self::Tricot,
        Self::Waffle,
        Self::Woven,
        Self::Canvas,
        Self::Twill,
    ];
}

/// One row of `data/constructions.json`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConstructionRecord {
    /// Which construction.
    pub construction: Construction,
    /// Share of the cloth's volume that is fibre, 0 to 1 (gives thickness from weight).
    pub fibre_volume_fraction: Sourced,
    /// Share of the face that is open hole, 0 to 1.
    pub open_area: Sourced,
    /// Height of nap or loops above the face, µm.
    pub nap: Sourced,
    /// How far it stretches in wear, %.
    pub stretch: Sourced,
    /// Weight assumed if the label states none, g/m².
    pub usual_weight: Sourced,
}
