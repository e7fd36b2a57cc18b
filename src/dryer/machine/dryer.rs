use super::{Cooling, DriftRange, Emitter};

/// Heat transfer from blown air, W/(m² K): measured, or following the air's temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatTransfer {
    /// Value in air of [`at`](Self::at).
    pub value: f64,
    /// Its change with the air's temperature, W/(m² K²).
    pub slope: f64,
    /// Temperature of the air, K.
    pub at: f64,
}

impl HeatTransfer {
    /// The same in air of any temperature.
    #[must_use]
    pub const fn measured(value: f64) -> Self {
        Self { value, slope: 0.0, at: 0.0 }
    }

    /// The transfer in air at `air` (K).
    #[inline]
    #[must_use]
    pub fn in_air(&self, air: f64) -> f64 {
        self.value + self.slope * (air - self.at)
    }
}

/// One heated length, SI. Temperatures are above the dryer's set temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Heated length, m.
    pub length: f64,
    /// Air above the set temperature, K.
    pub air_offset: f64,
    /// Heat transfer to the top of the print, W/(m² K).
    pub h_top: HeatTransfer,
    /// Heat transfer to the belt, W/(m² K).
    pub h_bottom: HeatTransfer,
    /// Emitter above the set temperature, K.
    pub panel_offset: Option<f64>,
    /// View factor, coverage and emissivities in one.
    pub exchange: f64,
    /// Kind of emitter.
    pub emitter: Emitter,
}

/// The belt, SI.
#[derive(Clone, Debug, PartialEq)]
pub struct Belt {
    /// Heat capacity per area, J/(m² K).
    pub heat_capacity: f64,
    /// Heat transfer between belt and cloth, W/(m² K).
    pub contact: f64,
    /// Temperature as it enters, K.
    pub enters: f64,
    /// Slowest speed, m/s.
    pub slowest: f64,
    /// Fastest speed, m/s.
    pub fastest: f64,
}

/// A dryer, SI.
#[derive(Clone, Debug, PartialEq)]
pub struct Dryer {
    /// Id of the record.
    pub id: String,
    /// Name, as the shop calls it.
    pub name: String,
    /// Its zones, in the order of the belt.
    pub zones: Vec<Zone>,
    /// Its belt.
    pub belt: Belt,
    /// Lowest set temperature, K.
    pub set_low: f64,
    /// Highest set temperature, K.
    pub set_high: f64,
    /// Smallest step of the set temperature, K.
    pub step: f64,
    /// Moisture of its air, kg/kg.
    pub humidity_ratio: f64,
    /// How the pieces cool at its end.
    pub cooling: Cooling,
    /// How far it wanders.
    pub drift: DriftRange,
    /// Whether a probe run was made.
    pub measured: bool,
}

impl Dryer {
    /// Heated length of all zones, m.
    #[must_use]
    pub fn heated_length(&self) -> f64 {
        self.zones.iter().map(|zone| zone.length).sum()
    }

    /// Air of the hottest zone at this set temperature, K.
    #[must_use]
    pub fn hottest_air(&self, set: f64) -> f64 {
        self.zones.iter().map(|zone| set + zone.air_offset).fold(0.0, f64::max)
    }

    /// Emitter of the hottest zone at this set temperature, K.
    #[must_use]
    pub fn hottest_panel(&self, set: f64) -> Option<f64> {
        self.zones.iter().filter_map(|zone| zone.panel_offset).map(|offset| set + offset).reduce(f64::max)
    }
}
