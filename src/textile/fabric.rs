//! A cloth: its record and its values in SI.

use super::{Construction, Fibre};
use crate::quantity::{Bound, Sourced};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Mass shares of the fibres, each 0 to 1, together 1.
pub type Composition = BTreeMap<Fibre, f64>;

/// Accepted weight of a cloth as a label states it, which is at 65 % RH and includes the regain.
pub const AREAL_WEIGHT: Bound = Bound { field: "areal_weight_gsm", min: 20.0, max: 600.0, unit: "g/m²" };

/// One row of `data/fabrics.json`: a cloth that a shop may print on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FabricRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// Name in English.
    pub name: String,
    /// Name in Spanish.
    pub nombre: String,
    /// Mass shares, percent, together 100.
    pub composition_percent: BTreeMap<Fibre, f64>,
    /// How it is made.
    pub construction: Construction,
    /// Weight of the cloth, g/m².
    pub areal_weight: Sourced,
    /// Where the record comes from.
    pub source: String,
}

/// A cloth in SI.
#[derive(Clone, Debug, PartialEq)]
pub struct Fabric {
    /// Mass shares.
    pub composition: Composition,
    /// How it is made.
    pub construction: Construction,
    /// Dry mass per area, kg/m².
    pub areal_mass: f64,
    /// Thickness, m.
    pub thickness: f64,
    /// Conductivity through the cloth, W/(m K).
    pub conductivity: f64,
    /// Dry specific heat at 25 °C, J/(kg K).
    pub heat_capacity: f64,
    /// Its rise with temperature, J/(kg K²).
    pub heat_capacity_slope: f64,
    /// Regain at 65 % RH, kg/kg.
    pub regain_65: f64,
    /// Share of the face that is open hole.
    pub open_area: f64,
    /// Height of the nap, m.
    pub nap: f64,
    /// Stretch in wear, as a fraction.
    pub stretch: f64,
}
