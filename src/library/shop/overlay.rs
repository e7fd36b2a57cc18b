//! The shop's own records laid over the library that ships, so that answers are computed with what the
//! shop typed in.

use super::records::FabricDye;
use crate::dryer::{Dryer, DryerRecord};
use crate::ink::{Blocker, Mesh, MeshRecord, WhiteRecord};
use crate::library::Library;
use crate::library::log::{Key, Kind, Log, Record, Recorded};
use crate::library::resolve::UNSAID;
use crate::numerics::sorting::map;
use crate::plan::{Colour, Garment};
use crate::quantity::{FieldError, Problem, Sourced};
use crate::textile::{FabricRecord, label, spelling};
use std::collections::HashMap;

/// A record of the shop that cannot be used. It stays in the log unchanged.
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
    /// This library with the shop's fabrics, whites, blockers, dryers and meshes: a record with the id of
    /// a shipped one replaces it, others are added. Records that cannot be used are left out and listed.
    #[must_use]
    pub fn with(&self, log: &Log) -> (Self, Vec<Unusable>) {
        let mut library = self.clone();
        let mut unusable = Vec::new();
        lay::<FabricRecord>(self, log, &mut library, &mut unusable);
        lay::<WhiteRecord>(self, log, &mut library, &mut unusable);
        lay::<Blocker>(self, log, &mut library, &mut unusable);
        lay::<DryerRecord>(self, log, &mut library, &mut unusable);
        lay::<MeshRecord>(self, log, &mut library, &mut unusable);
        (library, unusable)
    }

    /// Its meshes with those of the log laid over them.
    #[must_use]
    pub fn meshes_with(&self, log: &Log) -> Vec<MeshRecord> {
        let mut meshes = Self { meshes: self.meshes.clone(), ..Self::default() };
        lay::<MeshRecord>(self, log, &mut meshes, &mut Vec::new());
        meshes.meshes
    }

    /// Brings this library, made by [`Library::with`] from `base`, up to date with one record of the log.
    /// False if the record is of no kind that it holds, or cannot be used.
    pub fn follow(&mut self, base: &Self, log: &Log, key: &Key) -> bool {
        match key.kind {
            Kind::Fabric => follow::<FabricRecord>(base, log, self, key),
            Kind::White => follow::<WhiteRecord>(base, log, self, key),
            Kind::Blocker => follow::<Blocker>(base, log, self, key),
            Kind::Dryer => follow::<DryerRecord>(base, log, self, key),
            Kind::Mesh => follow::<MeshRecord>(base, log, self, key),
            _ => false,
        }
    }

    /// A fabric of the table as a garment of an order, with a label that is read like any other.
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

impl Library {
    /// A fabric record from a garment of an order: from its label, from what the order adds, and with the
    /// usual weight of its construction if neither states one. Its name is the label with the colour in
    /// front.
    ///
    /// # Errors
    /// A [`FieldError`] for each part of the label that cannot be read, or for a field of the garment
    /// that cannot be used.
    pub fn cloth_of(&self, garment: &Garment) -> Result<(FabricRecord, FabricDye), Vec<FieldError>> {
        let one = |error: FieldError| vec![error];
        let reading = label::read(&garment.label)?;
        let said = garment.construction.or(reading.construction);
        let construction = said.unwrap_or(UNSAID);
        let source = if said.is_some() { "its label" } else { "its label; the construction is assumed" };
        let usual = &self.construction(construction).map_err(one)?.usual_weight;
        let said = garment.areal_weight_gsm.or(reading.areal_weight_gsm);
        let areal_weight = said.map_or_else(
            || usual.clone(),
            |value| Sourced {
                value, unit: "g/m²".into(), range: [value, value], source: "its label".into()
            },
        );
        let named = garment.colour.name.trim();
        let colour =
            if named.is_empty() { reading.colour.clone().unwrap_or_default() } else { named.to_owned() };
        let words = garment.label.trim();
        let name = if colour.is_empty() || spelling::fold(words).contains(&spelling::fold(&colour)) {
            words.to_owned()
        } else {
            format!("{colour} · {words}")
        };
        let composition = reading.body.composition();
        let record = FabricRecord {
            id: String::new(),
            nombre: name.clone(),
            name,
            // Rounded to hundredths of a percent, finer than any label.
            composition_percent: map(composition
                .into_iter()
                .map(|(fibre, share)| (fibre, (share * 1e4).round() / 100.0))),
            construction,
            areal_weight,
            source: source.into(),
        };
        check_fabric(self, &record).map_err(one)?;
        let dye = FabricDye {
            colour: Colour { name: colour, lab: garment.colour.lab },
            dyed_fibres: garment.dyed_fibres.clone(),
            dye_class: garment.dye_class,
        };
        Ok((record, dye))
    }
}

/// A type of record of which the library holds a table.
trait TableRecord: Recorded + Clone {
    fn id(&self) -> &str;
    fn table(library: &Library) -> &Vec<Self>;
    fn table_mut(library: &mut Library) -> &mut Vec<Self>;
    /// Checks that it can be computed with.
    fn check(&self, base: &Library) -> Result<(), FieldError>;
}

macro_rules! rows {
    ($($record:ty: $table:ident, $check:expr;)*) => {
        $(impl TableRecord for $record {
            fn id(&self) -> &str {
                &self.id
            }

            fn table(library: &Library) -> &Vec<Self> {
                &library.$table
            }

            fn table_mut(library: &mut Library) -> &mut Vec<Self> {
                &mut library.$table
            }

            fn check(&self, base: &Library) -> Result<(), FieldError> {
                let check: fn(&Library, &Self) -> Result<(), FieldError> = $check;
                check(base, self)
            }
        })*
    };
}

rows! {
    FabricRecord: fabrics, check_fabric;
    WhiteRecord: whites, check_white;
    Blocker: blockers, |_, it| blocker(it);
    DryerRecord: dryers, |_, it| dryer(it);
    MeshRecord: meshes, |_, it| Mesh::try_from(it).map(drop);
}

fn lay<T: TableRecord>(base: &Library, log: &Log, library: &mut Library, unusable: &mut Vec<Unusable>) {
    let table = T::table_mut(library);
    let at: HashMap<Box<str>, u32> = table.iter().map(|row| row.id().into()).zip(0..).collect();
    for key in log.keys(T::KIND) {
        let Some(read) = log.read::<T>(key) else { continue };
        match read.and_then(|row| row.check(base).map(|()| row)) {
            Ok(row) => match at.get(&key.id).and_then(|&at| table.get_mut(at as usize)) {
                Some(place) => *place = row,
                None => table.push(row),
            },
            Err(why) => unusable.push(Unusable { kind: T::KIND, id: key.id.to_string(), why }),
        }
    }
}

fn follow<T: TableRecord>(base: &Library, log: &Log, library: &mut Library, key: &Key) -> bool {
    let own = log.record(key.kind, &key.id).filter(|record| !record.removed);
    let read = own.map(|record| read::<T>(&record, base));
    let usable = read.as_ref().is_none_or(Result::is_ok);
    let ships = || T::table(base).iter().find(|row| row.id() == &*key.id).cloned();
    let row = read.and_then(Result::ok).or_else(ships);
    let table = T::table_mut(library);
    match (table.iter().position(|row| row.id() == &*key.id), row) {
        (Some(at), Some(row)) => table[at] = row,
        (Some(at), None) => drop(table.remove(at)),
        (None, Some(row)) => table.push(row),
        (None, None) => {}
    }
    usable
}

fn read<T: TableRecord>(record: &Record, base: &Library) -> Result<T, FieldError> {
    let row = record.read::<T>()?;
    row.check(base)?;
    Ok(row)
}

fn blocker(it: &Blocker) -> Result<(), FieldError> {
    let numbers = [
        (&it.density, "density"),
        (&it.dye_capacity, "dye_capacity"),
        (&it.reflectance, "reflectance"),
        (&it.film, "film"),
        (&it.price_per_kg, "price_per_kg"),
    ];
    numbers.into_iter().try_for_each(|(number, field)| sourced(number, field))
}

/// Checks that a record can be computed with. Kinds from which nothing is computed always pass.
pub(in crate::library) fn check(record: &Record, base: &Library) -> Result<(), FieldError> {
    match record.key.kind {
        Kind::Fabric => {
            read::<FabricRecord>(record, base)?;
            record.read::<FabricDye>().map(drop)
        }
        Kind::White => read::<WhiteRecord>(record, base).map(drop),
        Kind::Blocker => read::<Blocker>(record, base).map(drop),
        Kind::Dryer => read::<DryerRecord>(record, base).map(drop),
        Kind::Mesh => read::<MeshRecord>(record, base).map(drop),
        _ => Ok(()),
    }
}

/// Checks that a fabric can be computed with.
fn check_fabric(library: &Library, record: &FabricRecord) -> Result<(), FieldError> {
    sourced(&record.areal_weight, "areal_weight")?;
    library.fabric_of(record).map(drop)
}

/// Checks that a white can be computed with.
fn check_white(library: &Library, record: &WhiteRecord) -> Result<(), FieldError> {
    record.price_per_kg.as_ref().map_or(Ok(()), |price| sourced(price, "price_per_kg"))?;
    library.white(record).map(drop)
}

/// Checks that a number lies in its own range.
fn sourced(number: &Sourced, field: &str) -> Result<(), FieldError> {
    let [min, max] = number.range;
    if min <= number.value && number.value <= max {
        return Ok(());
    }
    let problem = Problem::OutOfRange { min, max, unit: number.unit.clone() };
    Err(FieldError::new(field, number.value.to_string(), problem))
}

/// Checks that a dryer can be computed with.
fn dryer(record: &DryerRecord) -> Result<(), FieldError> {
    Dryer::from_record(record).map(drop).map_err(|mut errors| errors.swap_remove(0))
}
