use super::{Cooling, Nozzles};
use crate::quantity::Sourced;
use serde::{Deserialize, Serialize};

/// Air blown at the print: heat transfer is computed from it where it was not measured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JetsRecord {
    /// How the nozzles are laid out.
    pub nozzles: Nozzles,
    /// Diameter of a hole or width of a slot, m.
    pub width: Sourced,
    /// Distance from nozzle to print, m.
    pub distance: Sourced,
    /// Open share of the nozzle plate, 0 to 1; for a single nozzle `D² / 4 r²` with `r` the radius that it serves.
    pub open_share: Sourced,
    /// Speed of the air at the nozzle, m/s.
    pub speed: Sourced,
}

/// An emitter's geometry: its exchange factor is computed from it where it was not measured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EmissionRecord {
    /// Emissivity of the emitter, 0 to 1.
    pub emissivity: Sourced,
    /// Area of the emitter over the area of belt under it.
    pub area_share: Sourced,
    /// Share of the print's view that the emitter fills, 0 to 1.
    pub view: Sourced,
}

/// What a zone radiates with. Decides how much the garment's shade matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Emitter {
    /// No emitter: hot air and the walls only.
    None,
    /// Mid-infrared panel, 300 to 550 °C: cloth absorbs whatever its shade.
    MidInfrared,
    /// Near-infrared lamp: dark cloth absorbs several times what a white does.
    NearInfrared,
}

/// One heated length of a dryer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ZoneRecord {
    /// Heated length, m.
    pub length: Sourced,
    /// Air temperature above the dryer's set temperature, K (0 where the set temperature is the air's).
    pub air_offset: Sourced,
    /// Heat transfer from the air to the top of the print, W/(m² K); absent where it follows from the jets.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub h_top: Option<Sourced>,
    /// Air blown at the top of the print.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jets_top: Option<JetsRecord>,
    /// Heat transfer from the air to the belt and the underside, W/(m² K); absent where it follows from the jets.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub h_bottom: Option<Sourced>,
    /// Air blown at the belt from below.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jets_bottom: Option<JetsRecord>,
    /// Emitter temperature above the set temperature, K; absent without an emitter.
    pub panel_offset: Option<Sourced>,
    /// View factor, panel coverage and emissivities in one, 0 to 1; absent where it follows from the geometry.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exchange_factor: Option<Sourced>,
    /// Geometry of the emitter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emission: Option<EmissionRecord>,
    /// Kind of emitter.
    pub emitter: Emitter,
}

/// The belt under the garment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BeltRecord {
    /// Heat capacity per area, J/(m² K).
    pub heat_capacity: Sourced,
    /// Heat transfer from belt to cloth, W/(m² K).
    pub contact: Sourced,
    /// Temperature of the belt as it enters, °C.
    pub enters_c: Sourced,
    /// Slowest and fastest belt speed, m/min.
    pub speed_m_per_min: [f64; 2],
}

/// How far a dryer wanders during a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DriftRecord {
    /// Air, ± K.
    pub air: Sourced,
    /// Panel, ± K.
    pub panel: Sourced,
    /// Heat transfer, ± fraction.
    pub h: Sourced,
    /// Exchange factor, ± fraction.
    pub exchange: Sourced,
    /// Film thickness, ± fraction.
    pub film: Sourced,
    /// Longest belt stop that happens, s.
    pub stop: Sourced,
}

/// One row of `data/dryers.json`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DryerRecord {
    /// Stable id.
    pub id: String,
    /// Name, as the shop calls it.
    pub name: String,
    /// The zones, in the order the belt passes them.
    pub zones: Vec<ZoneRecord>,
    /// The belt.
    pub belt: BeltRecord,
    /// Lowest and highest set temperature, °C.
    pub set_c: [f64; 2],
    /// Smallest step of the set temperature, K.
    pub step: f64,
    /// Moisture of its air, kg water per kg dry air.
    pub humidity_ratio: Sourced,
    /// How the pieces cool at its end; on the open belt where nothing is said.
    #[serde(default)]
    pub cooling: Cooling,
    /// How far it wanders.
    pub drift: DriftRecord,
    /// Day of the last probe run, if any (`2026-11-17`).
    pub measured: Option<String>,
    /// Where the record comes from.
    pub source: String,
}
