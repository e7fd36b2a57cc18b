//! The shop's own records laid over the library that ships: what a shop types in is what it is answered with.

use super::Library;
use super::log::{Kind, Log, Record, Recorded};
use super::shop_record::FabricDye;
use crate::dryer::DryerRecord;
use crate::ink::{Blocker, Mesh, MeshRecord, WhiteRecord};
use crate::plan::Garment;
use crate::quantity::{FieldError, Problem, Sourced};
use crate::textile::FabricRecord;

/// A record of the shop that cannot be used: which, and why. It stays in the log as it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Unusable {
    /// Its kind.
    pub kind: Kind,
    /// Its id.
    pub id: String,
    /// What is wrong with it.
    pub why: FieldError,
}

impl Library {
    /// This library with the shop's fabrics, whites, blockers, dryers and meshes in it: a record of the same id
    /// takes the place of the one that ships, others come on top. Records that cannot be used are left out and named.
    #[must_use]
    pub fn with(&self, log: &Log) -> (Self, Vec<Unusable>) {
        let mut library = self.clone();
        let mut unusable = Vec::new();
        let base = self;
        lay(
            log,
            &mut library.fabrics,
            &mut unusable,
            |it: &FabricRecord| &it.id,
            |it| {
                sourced(&it.areal_weight, "areal_weight")?;
                base.fabric_of(it).map(drop)
            },
        );
        lay(
            log,
            &mut library.whites,
            &mut unusable,
            |it: &WhiteRecord| &it.id,
            |it| {
                it.price_per_kg.as_ref().map_or(Ok(()), |price| sourced(price, "price_per_kg"))?;
                base.white(it).map(drop)
            },
        );
        lay(
            log,
            &mut library.blockers,
            &mut unusable,
            |it: &Blocker| &it.id,
            |it| {
                let numbers = [
                    (&it.density, "density"),
                    (&it.dye_capacity, "dye_capacity"),
                    (&it.reflectance, "reflectance"),
                    (&it.film, "film"),
                    (&it.price_per_kg, "price_per_kg"),
                ];
                numbers.into_iter().try_for_each(|(number, field)| sourced(number, field))
            },
        );
        lay(log, &mut library.dryers, &mut unusable, |it: &DryerRecord| &it.id, dryer);
        lay(
            log,
            &mut library.meshes,
            &mut unusable,
            |it: &MeshRecord| &it.id,
            |it| Mesh::try_from(it).map(drop),
        );
        (library, unusable)
    }

    /// A garment of a cloth of the table, as an order has it: the plan reads it like any other label.
    #[must_use]
    pub fn garment(&self, fabric: &FabricRecord, dye: &FabricDye) -> Garment {
        let shares = fabric.composition_percent.iter();
        let shares: Vec<String> = shares.map(|(fibre, share)| format!("{share}% {}", fibre.name())).collect();
        Garment {
            label: shares.join(" "),
            construction: Some(fabric.construction),
            areal_weight_gsm: Some(fabric.areal_weight.value),
            colour: dye.colour.clone(),
            dyed_fibres: dye.dyed_fibres.clone(),
            dye_class: dye.dye_class,
            ..Garment::default()
        }
    }
}

fn lay<T: Recorded>(
    log: &Log,
    table: &mut Vec<T>,
    unusable: &mut Vec<Unusable>,
    id: impl Fn(&T) -> &str,
    check: impl Fn(&T) -> Result<(), FieldError>,
) {
    let at: std::collections::HashMap<String, usize> =
        table.iter().enumerate().map(|(at, row)| (id(row).to_owned(), at)).collect();
    for record in log.records(T::KIND) {
        match read(&record, &check) {
            Ok(row) => match at.get(&*record.key.id).and_then(|&at| table.get_mut(at)) {
                Some(place) => *place = row,
                None => table.push(row),
            },
            Err(why) => unusable.push(Unusable { kind: T::KIND, id: record.key.id.to_string(), why }),
        }
    }
}

fn read<T: Recorded>(
    record: &Record,
    check: &impl Fn(&T) -> Result<(), FieldError>,
) -> Result<T, FieldError> {
    let row = record.read::<T>()?;
    check(&row)?;
    Ok(row)
}

/// Whether a cloth can be computed with.
pub(super) fn check_fabric(library: &Library, record: &FabricRecord) -> Result<(), FieldError> {
    sourced(&record.areal_weight, "areal_weight")?;
    library.fabric_of(record).map(drop)
}

/// Whether a white can be computed with.
pub(super) fn check_white(library: &Library, record: &WhiteRecord) -> Result<(), FieldError> {
    record.price_per_kg.as_ref().map_or(Ok(()), |price| sourced(price, "price_per_kg"))?;
    library.white(record).map(drop)
}

/// A number that lies in its own range.
fn sourced(number: &Sourced, field: &str) -> Result<(), FieldError> {
    let [min, max] = number.range;
    if min <= number.value && number.value <= max {
        return Ok(());
    }
    let problem = Problem::OutOfRange { min, max, unit: number.unit.clone() };
    Err(FieldError::new(field, number.value.to_string(), problem))
}

/// A dryer that has a zone, a belt that moves and a heat that can be set; its numbers lie in their ranges.
fn dryer(record: &DryerRecord) -> Result<(), FieldError> {
    if record.zones.is_empty() {
        return Err(FieldError::new("zones", "", Problem::Empty));
    }
    for (index, zone) in record.zones.iter().enumerate() {
        let within = |number: &Sourced, field: &str| {
            sourced(number, field).map_err(|error| error.within(&format!("zones[{index}]")))
        };
        within(&zone.length, "length")?;
        within(&zone.air_offset, "air_offset")?;
        within(&zone.h_top, "h_top")?;
        within(&zone.h_bottom, "h_bottom")?;
        within(&zone.exchange_factor, "exchange_factor")?;
        zone.panel_offset.as_ref().map_or(Ok(()), |offset| within(offset, "panel_offset"))?;
        above_zero(zone.length.value, &format!("zones[{index}].length"))?;
        above_zero(zone.h_top.value, &format!("zones[{index}].h_top"))?;
    }
    let rising = |[low, high]: [f64; 2], field: &str| {
        if low < high && low.is_finite() && high.is_finite() {
            return Ok(());
        }
        let with = format!("{field}[0]");
        Err(FieldError::new(format!("{field}[1]"), high.to_string(), Problem::Contradiction { with }))
    };
    rising(record.belt.speed_m_per_min, "belt.speed_m_per_min")?;
    above_zero(record.belt.speed_m_per_min[0], "belt.speed_m_per_min[0]")?;
    rising(record.set_c, "set_c")?;
    above_zero(record.step, "step")?;
    Ok(())
}

fn above_zero(value: f64, field: &str) -> Result<(), FieldError> {
    if value.is_finite() && value > 0.0 {
        return Ok(());
    }
    let problem = Problem::OutOfRange { min: f64::MIN_POSITIVE, max: f64::MAX, unit: String::new() };
    Err(FieldError::new(field, value.to_string(), problem))
}
