use super::{Cooling, Nozzles};
use crate::quantity::Sourced;
use serde::{Deserialize, Serialize};

/// Air jets of a zone whose heat transfer has not been measured: it is computed from them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JetsRecord {
    /// How the nozzles are laid out.
    pub nozzles: Nozzles,
    /// Diameter of a hole or width of a slot, m.
    pub width: Sourced,
    /// Distance from nozzle to print, m.
    pub distance: Sourced,
    /// Open share of the nozzle plate, 0 to 1; for a single nozzle `D² / 4 r²` with `r` the radius that it
    /// serves.
    pub open_share: Sourced,
    /// Speed of the air at the nozzle, m/s.
    pub speed: Sourced,
}

/// Geometry of an emitter whose exchange factor has not been measured: it is computed from it.
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

/// Kind of emitter. It decides how much the colour of the garment matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Emitter {
    /// No emitter: hot air and the walls only.
    None,
    /// Mid-infrared panel, 300 to 550 °C: cloths of every colour absorb alike.
    MidInfrared,
    /// Near-infrared lamp: dark cloth absorbs several times what white cloth does.
    NearInfrared,
}

/// One heated length of a dryer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ZoneRecord {
    /// Heated length, m.
    pub length: Sourced,
    /// Air temperature minus set temperature, K; 0 if the dial sets the air temperature.
    pub air_offset: Sourced,
    /// Heat transfer from the air to the top of the print, W/(m² K); absent if the jets are given instead.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub h_top: Option<Sourced>,
    /// Air blown at the top of the print.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jets_top: Option<JetsRecord>,
    /// Heat transfer from the air to the belt and the underside, W/(m² K); absent if the jets are given
    /// instead.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub h_bottom: Option<Sourced>,
    /// Air blown at the belt from below.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jets_bottom: Option<JetsRecord>,
    /// Emitter temperature minus set temperature, K; absent without an emitter.
    pub panel_offset: Option<Sourced>,
    /// View factor, panel coverage and emissivities in one, 0 to 1; absent if the geometry is given instead.
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
    /// Temperature of the belt at the entry, °C.
    pub enters_c: Sourced,
    /// Slowest and fastest belt speed, m/min.
    pub speed_m_per_min: [f64; 2],
}

/// How far a dryer drifts during a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DriftRecord {
    /// Air temperature, ± K.
    pub air: Sourced,
    /// Emitter temperature, ± K.
    pub panel: Sourced,
    /// Heat transfer, ± share.
    pub h: Sourced,
    /// Exchange factor, ± share.
    pub exchange: Sourced,
    /// Film thickness, ± share.
    pub film: Sourced,
    /// Longest belt stop, s.
    pub stop: Sourced,
}

/// One row of `data/dryers.json`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DryerRecord {
    /// Stable id.
    pub id: String,
    /// Name used by the shop.
    pub name: String,
    /// Its zones, in the order of the belt.
    pub zones: Vec<ZoneRecord>,
    /// Its belt.
    pub belt: BeltRecord,
    /// Lowest and highest set temperature, °C.
    pub set_c: [f64; 2],
    /// Smallest step of the set temperature, K.
    pub step: f64,
    /// Humidity ratio of its air, kg water per kg dry air.
    pub humidity_ratio: Sourced,
    /// How pieces cool after the last zone; on the open end of the belt if absent.
    #[serde(default)]
    pub cooling: Cooling,
    /// Drift during a run.
    pub drift: DriftRecord,
    /// Day of the last probe run, if any (`2026-11-17`).
    pub measured: Option<String>,
    /// Source of the record.
    pub source: String,
}
