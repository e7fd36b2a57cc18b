use super::{DryerRecord, Emitter, ZoneRecord};
use crate::quantity::units::kelvin;

/// One heated length, SI. Temperatures are above the dryer's set temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Heated length, m.
    pub length: f64,
    /// Air above the set temperature, K.
    pub air_offset: f64,
    /// Heat transfer to the top of the print, W/(m² K).
    pub h_top: f64,
    /// Heat transfer to the belt, W/(m² K).
    pub h_bottom: f64,
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

/// How far a dryer wanders during a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drift {
    /// Air, ± K.
    pub air: f64,
    /// Panel, ± K.
    pub panel: f64,
    /// Heat transfer, ± fraction.
    pub h: f64,
    /// Exchange factor, ± fraction.
    pub exchange: f64,
    /// Film thickness, ± fraction.
    pub film: f64,
    /// Longest belt stop, s.
    pub stop: f64,
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
    /// How far it wanders.
    pub drift: Drift,
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

impl From<&ZoneRecord> for Zone {
    fn from(record: &ZoneRecord) -> Self {
        Self {
            length: record.length.value,
            air_offset: record.air_offset.value,
            h_top: record.h_top.value,
            h_bottom: record.h_bottom.value,
            panel_offset: record.panel_offset.as_ref().map(|offset| offset.value),
            exchange: record.exchange_factor.value,
            emitter: record.emitter,
        }
    }
}

impl From<&DryerRecord> for Dryer {
    fn from(record: &DryerRecord) -> Self {
        let [slowest, fastest] = record.belt.speed_m_per_min;
        Self {
            id: record.id.clone(),
            name: record.name.clone(),
            zones: record.zones.iter().map(Zone::from).collect(),
            belt: Belt {
                heat_capacity: record.belt.heat_capacity.value,
                contact: record.belt.contact.value,
                enters: kelvin(record.belt.enters_c.value),
                slowest: slowest / 60.0,
                fastest: fastest / 60.0,
            },
            set_low: kelvin(record.set_c[0]),
            set_high: kelvin(record.set_c[1]),
            step: record.step,
            humidity_ratio: record.humidity_ratio.value,
            drift: Drift {
                air: record.drift.air.value,
                panel: record.drift.panel.value,
                h: record.drift.h.value,
                exchange: record.drift.exchange.value,
                film: record.drift.film.value,
                stop: record.drift.stop.value,
            },
            measured: record.measured.is_some(),
        }
    }
}

/// How one run differs from the nominal one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct World {
    /// Added to the air, K.
    pub air: f64,
    /// Added to the panel, K.
    pub panel: f64,
    /// Times the heat transfer.
    pub h: f64,
    /// Times the exchange factor.
    pub exchange: f64,
    /// Times the film thickness.
    pub film: f64,
    /// Times the water in the cloth.
    pub water: f64,
    /// The belt stands still this long in the last zone, s.
    pub stop: f64,
}

impl World {
    /// The run as planned.
    pub const NOMINAL: Self =
        Self { air: 0.0, panel: 0.0, h: 1.0, exchange: 1.0, film: 1.0, water: 1.0, stop: 0.0 };

    /// Everything at its cold end: the corner that must still fuse.
    #[must_use]
    pub fn cold(drift: &Drift) -> Self {
        Self::corner(drift, -1.0)
    }

    /// Everything at its hot end: the corner that must still be white and unscorched.
    #[must_use]
    pub fn hot(drift: &Drift) -> Self {
        Self::corner(drift, 1.0)
    }

    /// The longest belt stop, nothing else wrong.
    #[must_use]
    pub fn stopped(drift: &Drift) -> Self {
        Self { stop: drift.stop, ..Self::NOMINAL }
    }

    fn corner(drift: &Drift, sign: f64) -> Self {
        Self {
            air: sign * drift.air,
            panel: sign * drift.panel,
            h: 1.0 + sign * drift.h,
            exchange: 1.0 + sign * drift.exchange,
            film: 1.0 - sign * drift.film,
            water: 1.0,
            stop: 0.0,
        }
    }
}

/// What happens after the heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooling {
    /// Room air, K.
    pub air: f64,
    /// Heat transfer on top, W/(m² K).
    pub h_top: f64,
    /// Heat transfer below, W/(m² K).
    pub h_bottom: f64,
    /// How long it is followed, s.
    pub seconds: f64,
}

impl Cooling {
    /// On the open belt end. Heat transfer 10 to 30 W/(m² K): common practice, no source; 60 s is long enough for
    /// the film to fall under 100 °C, where fusion and dye have stopped.
    pub const OPEN: Self = Self { air: 298.15, h_top: 20.0, h_bottom: 10.0, seconds: 60.0 };
}

/// A flash unit over a pallet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flash {
    /// Emitter, K. 450 to 550 °C: common practice, no source.
    pub panel: f64,
    /// View factor, coverage and emissivities in one. 0.3 to 0.6: assumed, no source.
    pub exchange: f64,
    /// Air under it, K.
    pub air: f64,
    /// Heat transfer, W/(m² K). Still air, 5 to 15: from memory.
    pub h: f64,
    /// Pallet, K. A running press warms its pallets to 50 to 60 °C: common practice, no source.
    pub pallet: f64,
    /// Heat capacity of the pallet's skin that follows within seconds, J/(m² K): assumed, 1 to 3 mm of wood board.
    pub pallet_heat_capacity: f64,
}

impl Flash {
    /// The usual unit on a warm press; every value as said at its field.
    pub const USUAL: Self = Self {
        panel: 773.15,
        exchange: 0.5,
        air: 313.15,
        h: 10.0,
        pallet: 328.15,
        pallet_heat_capacity: 2_000.0,
    };
}
