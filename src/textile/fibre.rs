//! Fibres and their properties.

use crate::quantity::Sourced;
use serde::{Deserialize, Serialize};

/// A fibre as a label names it (generic names of ISO 2076 and EU 1007/2011).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fibre {
    /// Cotton, organic and recycled cotton too.
    Cotton,
    /// Flax.
    Linen,
    /// Hemp.
    Hemp,
    /// Viscose and rayon, bamboo viscose too.
    Viscose,
    /// Modal.
    Modal,
    /// Lyocell.
    Lyocell,
    /// Polyester (PET), recycled polyester too.
    Polyester,
    /// Polyamide.
    Nylon,
    /// Elastane, spandex.
    Elastane,
    /// Acrylic and modacrylic.
    Acrylic,
    /// Polypropylene.
    Polypropylene,
    /// Wool and fine animal hair.
    Wool,
    /// Silk.
    Silk,
    /// Acetate and triacetate.
    Acetate,
}

impl Fibre {
    /// Every fibre, in the order of the fibre table.
    pub const ALL: [Self; 14] = [
        Self::Cotton,
        Self::Linen,
        Self::Hemp,
        Self::Viscose,
        Self::Modal,
        Self::Lyocell,
        Self::Polyester,
        Self::Nylon,
        Self::Elastane,
        Self::Acrylic,
        Self::Polypropylene,
        Self::Wool,
        Self::Silk,
        Self::Acetate,
    ];

    /// Its generic name in English, as in the JSON contract.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cotton => "cotton",
            Self::Linen => "linen",
            Self::Hemp => "hemp",
            Self::Viscose => "viscose",
            Self::Modal => "modal",
            Self::Lyocell => "lyocell",
            Self::Polyester => "polyester",
            Self::Nylon => "nylon",
            Self::Elastane => "elastane",
            Self::Acrylic => "acrylic",
            Self::Polypropylene => "polypropylene",
            Self::Wool => "wool",
            Self::Silk => "silk",
            Self::Acetate => "acetate",
        }
    }
}

/// One row of `data/fibres.json`: the thermal properties of a fibre.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FibreRecord {
    /// Which fibre.
    pub fibre: Fibre,
    /// Density, kg/m³.
    pub density: Sourced,
    /// Specific heat of the dry fibre at 25 °C, J/(kg K).
    pub heat_capacity_25c: Sourced,
    /// Its rise with temperature, J/(kg K²), valid to 180 K above 25 °C.
    pub heat_capacity_slope: Sourced,
    /// Equilibrium regain at 65 % RH and 20 °C from the dry side, kg water per kg dry fibre.
    pub regain_65: Sourced,
    /// Temperature at which the fibre softens or sticks, °C; absent if it chars first.
    pub softens_c: Option<Sourced>,
    /// Melting temperature, °C; absent if it chars first.
    pub melts_c: Option<Sourced>,
    /// Temperature above which knits of it shrink or distort, °C, unless the maker states another; absent
    /// if the fibre is not heat-set.
    pub shrinks_above_c: Option<Sourced>,
    /// Whether the fibre yellows before it melts (cellulosics, wool, silk).
    pub scorches: bool,
}
