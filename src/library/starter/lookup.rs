//! Records by id, name or kind.

use super::Library;
use crate::dryer::DryerRecord;
use crate::ink::{Blocker, KineticsRecord, WhiteClass, WhiteClassRecord, WhiteRecord};
use crate::quantity::{FieldError, Problem};
use crate::textile::{
    ColourRecord, Construction, ConstructionRecord, DyeClassRecord, DyeEnergy, DyeRecord, FabricRecord,
    Fibre, FibreRecord, colour, spelling,
};

/// The record whose key is `wanted`.
fn find<'a, T>(
    field: &str,
    records: &'a [T],
    key: impl Fn(&T) -> &str,
    wanted: &str,
) -> Result<&'a T, FieldError> {
    records.iter().find(|record| key(record) == wanted).ok_or_else(|| {
        let accepted: Vec<String> = records.iter().map(|record| key(record).to_owned()).collect();
        let nearest = spelling::nearest(wanted, accepted.iter().map(String::as_str));
        let nearest = nearest.into_iter().map(str::to_owned).collect();
        FieldError::new(field, wanted, Problem::Unknown { nearest, accepted })
    })
}

/// The record of an enum's variant. A library without it is incomplete.
fn kind<'a, T, K: serde::Serialize + PartialEq + Copy>(
    field: &str,
    records: &'a [T],
    key: impl Fn(&T) -> K,
    wanted: K,
) -> Result<&'a T, FieldError> {
    records.iter().find(|record| key(record) == wanted).ok_or_else(|| {
        let name = serde_json::to_string(&wanted).unwrap_or_default();
        let problem = Problem::Unknown { nearest: Vec::new(), accepted: Vec::new() };
        FieldError::new(field, name.trim_matches('"'), problem)
    })
}

/// Look-ups. Each fails with [`Problem::Unknown`] if the library holds no such record; the error names
/// the nearest ids.
impl Library {
    /// The record of a fibre.
    pub fn fibre(&self, fibre: Fibre) -> Result<&FibreRecord, FieldError> {
        kind("fibre", &self.fibres, |record| record.fibre, fibre)
    }

    /// The record of a construction.
    pub fn construction(&self, construction: Construction) -> Result<&ConstructionRecord, FieldError> {
        kind("construction", &self.constructions, |record| record.construction, construction)
    }

    /// The record of a class of whites.
    pub fn white_class(&self, class: WhiteClass) -> Result<&WhiteClassRecord, FieldError> {
        kind("white_class", &self.white_classes, |record| record.class, class)
    }

    /// The record of an energy class of dyes.
    pub fn dye_class(&self, energy: DyeEnergy) -> Result<&DyeClassRecord, FieldError> {
        kind("dye_class", &self.dye_classes, |record| record.energy, energy)
    }

    /// A cloth of the table by id.
    pub fn fabric_record(&self, id: &str) -> Result<&FabricRecord, FieldError> {
        find("fabric", &self.fabrics, |record| &record.id, id)
    }

    /// A dye by id.
    pub fn dye(&self, id: &str) -> Result<&DyeRecord, FieldError> {
        find("dye", &self.dyes, |record| &record.id, id)
    }

    /// A white by id.
    pub fn white_record(&self, id: &str) -> Result<&WhiteRecord, FieldError> {
        find("white", &self.whites, |record| &record.id, id)
    }

    /// A blocker by id.
    pub fn blocker(&self, id: &str) -> Result<&Blocker, FieldError> {
        find("blocker", &self.blockers, |record| &record.id, id)
    }

    /// A dryer by id.
    pub fn dryer(&self, id: &str) -> Result<&DryerRecord, FieldError> {
        find("dryer", &self.dryers, |record| &record.id, id)
    }

    /// Gelation and fusion by id, `ordinary` or `low-cure`.
    pub fn kinetics_record(&self, id: &str) -> Result<&KineticsRecord, FieldError> {
        find("kinetics", &self.kinetics, |record| &record.id, id)
    }

    /// A colour by any of its names, in English or Spanish.
    pub fn colour(&self, name: &str) -> Result<&ColourRecord, FieldError> {
        colour::find(&self.colours, name).ok_or_else(|| {
            let names = self.colours.iter().flat_map(|record| [record.name.as_str(), record.nombre.as_str()]);
            let nearest = spelling::nearest(name, names).into_iter().map(str::to_owned).collect();
            FieldError::new("colour", name, Problem::Unknown { nearest, accepted: Vec::new() })
        })
    }
}
