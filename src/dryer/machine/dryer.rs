use super::{Cooling, DriftRange, Emitter};

/// Heat transfer coefficient of blown air, linear in the temperature of the air, W/(m² K).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatTransfer {
    /// Value at the air temperature [`at`](Self::at).
    pub value: f64,
    /// Change with the air temperature, W/(m² K²).
    pub slope: f64,
    /// Air temperature of [`value`](Self::value), K.
    pub at: f64,
}

impl HeatTransfer {
    /// A measured value, taken as independent of the air temperature.
    #[must_use]
    pub const fn measured(value: f64) -> Self {
        Self { value, slope: 0.0, at: 0.0 }
    }

    /// Value at the air temperature `air`, K.
    #[inline]
    #[must_use]
    pub fn in_air(&self, air: f64) -> f64 {
        self.value + self.slope * (air - self.at)
    }
}

/// A zone of the dryer, SI. Its temperatures follow the set temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Heated length, m.
    pub length: f64,
    /// Air temperature minus set temperature, K.
    pub air_offset: f64,
    /// Heat transfer to the top of the print, W/(m² K).
    pub h_top: HeatTransfer,
    /// Heat transfer to the belt, W/(m² K).
    pub h_bottom: HeatTransfer,
    /// Emitter temperature minus set temperature, K; `None` without an emitter.
    pub panel_offset: Option<f64>,
    /// Exchange factor: view factor, coverage and emissivities in one, 0 to 1.
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
    /// Temperature at the entry, K.
    pub entry_temperature: f64,
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
    /// Name used by the shop.
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
    /// Humidity ratio of its air, kg water per kg dry air.
    pub humidity_ratio: f64,
    /// How pieces cool after the last zone.
    pub cooling: Cooling,
    /// Drift during a run.
    pub drift: DriftRange,
    /// Whether a probe run has calibrated it.
    pub measured: bool,
}

impl Dryer {
    /// Heated length of all zones, m.
    #[must_use]
    pub fn heated_length(&self) -> f64 {
        self.zones.iter().map(|zone| zone.length).sum()
    }

    /// Air temperature of the hottest zone at a set temperature, both K.
    #[must_use]
    pub fn hottest_air(&self, set: f64) -> f64 {
        self.zones.iter().map(|zone| set + zone.air_offset).fold(0.0, f64::max)
    }

    /// Emitter temperature of the hottest zone at a set temperature, both K; `None` without an emitter.
    #[must_use]
    pub fn hottest_panel(&self, set: f64) -> Option<f64> {
        self.zones.iter().filter_map(|zone| zone.panel_offset).map(|offset| set + offset).reduce(f64::max)
    }
}
