//! Reads a dryer's record into SI units and checks every number against its range.

use super::jets::Jets;
use super::radiant::Emission;
use super::{
    Belt, DriftRange, Dryer, DryerRecord, EmissionRecord, Emitter, HeatTransfer, JetsRecord, Zone, ZoneRecord,
};
use crate::quantity::units::kelvin;
use crate::quantity::{Bound, FieldError, Problem, Sourced};

/// Accepted ranges of a dryer's record: wide enough for every dryer seen, narrow enough to catch typing
/// errors.
pub mod bounds {
    use crate::quantity::Bound;

    /// Heated length of one zone.
    pub const LENGTH: Bound = Bound { field: "length", min: 0.05, max: 20.0, unit: "m" };
    /// Air temperature of a zone minus set temperature; if the dial sets the panel, the air is hundreds of
    /// kelvin cooler.
    pub const AIR_OFFSET: Bound = Bound { field: "air_offset", min: -600.0, max: 100.0, unit: "K" };
    /// Heat transfer to the top of the print.
    pub const H_TOP: Bound = Bound { field: "h_top", min: 1.0, max: 300.0, unit: "W/(m² K)" };
    /// Heat transfer to the belt.
    pub const H_BOTTOM: Bound = Bound { field: "h_bottom", min: 1.0, max: 300.0, unit: "W/(m² K)" };
    /// Emitter temperature of a zone minus set temperature; a lamp's filament is 2000 K hotter than the air.
    pub const PANEL_OFFSET: Bound = Bound { field: "panel_offset", min: -300.0, max: 2800.0, unit: "K" };
    /// Exchange factor.
    pub const EXCHANGE: Bound = Bound { field: "exchange_factor", min: 0.0, max: 0.9, unit: "1" };
    /// Heat capacity of the belt.
    pub const BELT_HEAT: Bound =
        Bound { field: "heat_capacity", min: 50.0, max: 20_000.0, unit: "J/(m² K)" };
    /// Heat transfer between belt and cloth.
    pub const CONTACT: Bound = Bound { field: "contact", min: 1.0, max: 1000.0, unit: "W/(m² K)" };
    /// Temperature of the belt at the entry.
    pub const BELT_ENTERS: Bound = Bound { field: "enters_c", min: -10.0, max: 250.0, unit: "°C" };
    /// Speed of the belt.
    pub const BELT_SPEED: Bound = Bound { field: "speed_m_per_min", min: 0.02, max: 60.0, unit: "m/min" };
    /// Set temperature.
    pub const SET: Bound = Bound { field: "set_c", min: 20.0, max: 800.0, unit: "°C" };
    /// Step of the set temperature.
    pub const STEP: Bound = Bound { field: "step", min: 0.1, max: 50.0, unit: "K" };
    /// Humidity ratio of the dryer's air.
    pub const MOISTURE: Bound = Bound { field: "humidity_ratio", min: 0.0, max: 0.3, unit: "kg/kg" };
    /// Drift of a temperature.
    pub const DRIFT: Bound = Bound { field: "drift", min: 0.0, max: 60.0, unit: "K" };
    /// Relative drift.
    pub const DRIFT_SHARE: Bound = Bound { field: "drift", min: 0.0, max: 0.6, unit: "1" };
    /// Longest belt stop.
    pub const STOP: Bound = Bound { field: "stop", min: 0.0, max: 600.0, unit: "s" };
    /// Heated length of a whole dryer, from a table dryer to the longest tunnel of a factory: assumed.
    pub const HEATED_LENGTH: Bound = Bound { field: "heated_length", min: 0.3, max: 12.0, unit: "m" };
    /// The hottest that a dryer can be set to: assumed.
    pub const HOTTEST_SET: Bound = Bound { field: "hottest_set", min: 120.0, max: 350.0, unit: "°C" };
    /// Number of zones.
    pub const ZONES: Bound = Bound { field: "zones", min: 1.0, max: 12.0, unit: "1" };
}

/// Collects every error of a record instead of stopping at the first.
struct Reader {
    errors: Vec<FieldError>,
}

impl Reader {
    fn number(&mut self, bound: &Bound, field: &str, value: f64) -> f64 {
        if let Err(error) = bound.check(value) {
            self.errors.push(FieldError { field: field.into(), ..error });
        }
        value
    }

    /// A number that is either measured or computed from other fields. Both or neither is an error.
    fn either<T, R>(
        &mut self,
        field: &str,
        bound: &Bound,
        measured: Option<&Sourced>,
        instead: Option<&R>,
        compute: impl FnOnce(&mut Self, &R) -> Option<T>,
        plain: impl FnOnce(f64) -> T,
    ) -> Option<T> {
        match (measured, instead) {
            (Some(measured), None) => Some(plain(self.number(bound, field, measured.value))),
            (None, Some(instead)) => compute(self, instead),
            (Some(measured), Some(_)) => {
                let problem = Problem::Contradiction { with: "jets, emission".into() };
                self.errors.push(FieldError::new(field, measured.value.to_string(), problem));
                None
            }
            (None, None) => {
                self.errors.push(FieldError::new(field, "", Problem::Empty));
                None
            }
        }
    }

    /// Heat transfer over the temperatures that the zone's air may have: a straight line
    /// between the two ends is within 0.3 % of the correlation (`tests/heat/dryer_record.rs`).
    fn jets(&mut self, record: &JetsRecord, field: &str, [low, high]: [f64; 2]) -> Option<HeatTransfer> {
        let jets = Jets::from(record);
        let both = jets.transfer(low).and_then(|cool| jets.transfer(high).map(|hot| [cool, hot]));
        match both {
            Ok([cool, hot]) => {
                Some(HeatTransfer { value: cool, slope: (hot - cool) / (high - low).max(1.0), at: low })
            }
            Err(error) => {
                self.errors.push(error.within(field));
                None
            }
        }
    }

    fn zone(&mut self, record: &ZoneRecord, at: &str, set: [f64; 2]) -> Option<Zone> {
        use bounds::{AIR_OFFSET, EXCHANGE, H_BOTTOM, H_TOP, LENGTH, PANEL_OFFSET};
        let name = |field: &str| format!("{at}.{field}");
        let air_offset = self.number(&AIR_OFFSET, &name("air_offset"), record.air_offset.value);
        let air = set.map(|set| (set + air_offset).max(250.0));
        let length = self.number(&LENGTH, &name("length"), record.length.value);
        let h_top = self.either(
            &name("h_top"),
            &H_TOP,
            record.h_top.as_ref(),
            record.jets_top.as_ref(),
            |reader, jets| reader.jets(jets, &name("jets_top"), air),
            HeatTransfer::measured,
        );
        let h_bottom = self.either(
            &name("h_bottom"),
            &H_BOTTOM,
            record.h_bottom.as_ref(),
            record.jets_bottom.as_ref(),
            |reader, jets| reader.jets(jets, &name("jets_bottom"), air),
            HeatTransfer::measured,
        );
        let panel_offset = record
            .panel_offset
            .as_ref()
            .map(|offset| self.number(&PANEL_OFFSET, &name("panel_offset"), offset.value));
        if panel_offset.is_none() && record.emitter != Emitter::None {
            self.errors.push(FieldError::new(name("panel_offset"), "", Problem::Empty));
        }
        let exchange = if record.emitter == Emitter::None {
            Some(0.0)
        } else {
            self.either(
                &name("exchange_factor"),
                &EXCHANGE,
                record.exchange_factor.as_ref(),
                record.emission.as_ref(),
                |reader, emission| match Emission::from(emission).exchange() {
                    Ok(exchange) => Some(exchange),
                    Err(error) => {
                        reader.errors.push(error.within(&name("emission")));
                        None
                    }
                },
                |exchange| exchange,
            )
        };
        Some(Zone {
            length,
            air_offset,
            h_top: h_top?,
            h_bottom: h_bottom?,
            panel_offset,
            exchange: exchange?,
            emitter: record.emitter,
        })
    }
}

impl From<&JetsRecord> for Jets {
    fn from(record: &JetsRecord) -> Self {
        Self {
            nozzles: record.nozzles,
            width: record.width.value,
            distance: record.distance.value,
            open_share: record.open_share.value,
            speed: record.speed.value,
        }
    }
}

impl From<&EmissionRecord> for Emission {
    fn from(record: &EmissionRecord) -> Self {
        Self {
            emissivity: record.emissivity.value,
            area_share: record.area_share.value,
            view: record.view.value,
        }
    }
}

impl Dryer {
    /// Reads a record.
    ///
    /// # Errors
    /// A [`FieldError`] for every field that is missing, contradictory or outside its range, by its path in the record
    /// (`zones[0].length`).
    pub fn from_record(record: &DryerRecord) -> Result<Self, Vec<FieldError>> {
        use bounds::{
            BELT_ENTERS, BELT_HEAT, BELT_SPEED, CONTACT, DRIFT, DRIFT_SHARE, MOISTURE, SET, STEP, STOP, ZONES,
        };
        let mut reader = Reader { errors: Vec::new() };
        let set = record.set_c.map(|set| kelvin(reader.number(&SET, "set_c", set)));
        let speed = record
            .belt
            .speed_m_per_min
            .map(|speed| reader.number(&BELT_SPEED, "belt.speed_m_per_min", speed) / 60.0);
        for (field, [low, high], bound) in
            [("set_c", record.set_c, SET), ("belt.speed_m_per_min", record.belt.speed_m_per_min, BELT_SPEED)]
        {
            if low >= high {
                let problem = Problem::OutOfRange { min: low, max: bound.max, unit: bound.unit.into() };
                reader.errors.push(FieldError::new(field, high.to_string(), problem));
            }
        }
        reader.number(&ZONES, "zones", record.zones.len() as f64);
        let zones = record.zones.iter().enumerate();
        let zones: Vec<Zone> =
            zones.filter_map(|(i, zone)| reader.zone(zone, &format!("zones[{i}]"), set)).collect();
        let (belt, drift) = (&record.belt, &record.drift);
        let dryer = Self {
            id: record.id.clone(),
            name: record.name.clone(),
            zones,
            belt: Belt {
                heat_capacity: reader.number(&BELT_HEAT, "belt.heat_capacity", belt.heat_capacity.value),
                contact: reader.number(&CONTACT, "belt.contact", belt.contact.value),
                entry_temperature: kelvin(reader.number(&BELT_ENTERS, "belt.enters_c", belt.enters_c.value)),
                slowest: speed[0],
                fastest: speed[1],
            },
            set_low: set[0],
            set_high: set[1],
            step: reader.number(&STEP, "step", record.step),
            humidity_ratio: reader.number(&MOISTURE, "humidity_ratio", record.humidity_ratio.value),
            cooling: record.cooling,
            drift: DriftRange {
                air: reader.number(&DRIFT, "drift.air", drift.air.value),
                panel: reader.number(&DRIFT, "drift.panel", drift.panel.value),
                h: reader.number(&DRIFT_SHARE, "drift.h", drift.h.value),
                exchange: reader.number(&DRIFT_SHARE, "drift.exchange", drift.exchange.value),
                film: reader.number(&DRIFT_SHARE, "drift.film", drift.film.value),
                stop: reader.number(&STOP, "drift.stop", drift.stop.value),
            },
            measured: record.measured.is_some(),
        };
        if reader.errors.is_empty() { Ok(dryer) } else { Err(reader.errors) }
    }
}
