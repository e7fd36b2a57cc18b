//! The library that ships: the records of `data/`, each as written there.
//!
//! Comes in: the files of `data/`, compiled into the page. Goes out: [`Library`] and look-ups by id, name
//! or kind. It must not know what is computed from a record.

mod limits;
mod lookup;
mod records;

pub use limits::{Limit, Limits};
pub use records::{LawRecord, PrintRoom, RoomOrder};

use super::log::Kind;
use crate::dryer::DryerRecord;
use crate::ink::{Blocker, KineticsRecord, MeshRecord, WhiteClassRecord, WhiteRecord};
use crate::textile::colour::COLOURS_JSON;
use crate::textile::{
    ColourRecord, ConstructionRecord, DyeClassRecord, DyeRecord, FabricRecord, FibreRecord,
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::sync::{Arc, OnceLock};

/// All records that the plan may need, as written in `data/`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Library {
    /// Fibres.
    pub fibres: Vec<FibreRecord>,
    /// Constructions.
    pub constructions: Vec<ConstructionRecord>,
    /// Cloths a shop may meet.
    pub fabrics: Vec<FabricRecord>,
    /// Disperse dyes.
    pub dyes: Vec<DyeRecord>,
    /// Energy classes of disperse dyes.
    pub dye_classes: Vec<DyeClassRecord>,
    /// Classes of whites.
    pub white_classes: Vec<WhiteClassRecord>,
    /// Whites.
    pub whites: Vec<WhiteRecord>,
    /// How ordinary and low-cure ink gel and fuse.
    pub kinetics: Vec<KineticsRecord>,
    /// Blockers.
    pub blockers: Vec<Blocker>,
    /// Dryers.
    pub dryers: Vec<DryerRecord>,
    /// Meshes.
    pub meshes: Vec<MeshRecord>,
    /// Limits and the numbers that belong to nothing else.
    pub limits: Arc<Limits>,
    /// Limits of law.
    pub laws: Vec<LawRecord>,
    /// Garment colours by name.
    pub colours: Vec<ColourRecord>,
}

/// A file of the library that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LibraryError {
    /// Name of the file, e.g. `whites.json`.
    pub file: &'static str,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
    /// What is wrong there.
    pub what: String,
}

impl std::fmt::Display for LibraryError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { file, line, column, what } = self;
        write!(out, "data/{file}, line {line}, column {column}: {what}")
    }
}

impl std::error::Error for LibraryError {}

fn parse<T: DeserializeOwned>(file: &'static str, text: &str) -> Result<T, LibraryError> {
    serde_json::from_str(text).map_err(|error| LibraryError {
        file,
        line: error.line(),
        column: error.column(),
        what: error.to_string(),
    })
}

macro_rules! table {
    ($file:literal) => {
        parse($file, include_str!(concat!(env!("OUT_DIR"), "/", $file)))
    };
}

/// The library that ships with the page. Each call parses it again: keep the result.
///
/// # Errors
/// [`LibraryError`] if a file is not the JSON of its type.
///
/// # Examples
/// ```
/// use whitehold::library;
///
/// let library = library::starter().unwrap();
/// assert_eq!(library.colour("rojo").unwrap().id, "red");
/// // An unknown id is refused with the nearest known ones.
/// assert!(library.white_record("ganet").unwrap_err().to_string().contains("nearest: gannet"));
/// ```
pub fn starter() -> Result<Library, LibraryError> {
    Ok(Library {
        fibres: table!("fibres.json")?,
        constructions: table!("constructions.json")?,
        fabrics: table!("fabrics.json")?,
        dyes: table!("dyes.json")?,
        dye_classes: table!("dye_classes.json")?,
        white_classes: table!("white_classes.json")?,
        whites: table!("whites.json")?,
        kinetics: table!("kinetics.json")?,
        blockers: table!("blockers.json")?,
        dryers: table!("dryers.json")?,
        meshes: table!("meshes.json")?,
        limits: table!("limits.json")?,
        laws: table!("laws.json")?,
        colours: parse("colours.json", COLOURS_JSON)?,
    })
}

/// The fields of a record that ships, as written in `data/`; `None` for an unknown id and for kinds that
/// only a shop writes.
#[must_use]
pub fn shipped(kind: Kind, id: &str) -> Option<Map<String, Value>> {
    static ROWS: OnceLock<Map<String, Value>> = OnceLock::new();
    let rows = ROWS.get_or_init(|| {
        let mut rows = Map::new();
        for (kind, text) in [
            (Kind::Fabric, include_str!(concat!(env!("OUT_DIR"), "/fabrics.json"))),
            (Kind::White, include_str!(concat!(env!("OUT_DIR"), "/whites.json"))),
            (Kind::Blocker, include_str!(concat!(env!("OUT_DIR"), "/blockers.json"))),
            (Kind::Dryer, include_str!(concat!(env!("OUT_DIR"), "/dryers.json"))),
            (Kind::Mesh, include_str!(concat!(env!("OUT_DIR"), "/meshes.json"))),
        ] {
            let Ok(Value::Array(table)) = serde_json::from_str(text) else { continue };
            for mut row in table {
                let Some(fields) = row.as_object_mut() else { continue };
                fields.retain(|_, value| !value.is_null());
                if let Some(Value::String(id)) = fields.remove("id") {
                    rows.insert(place(kind, &id), row);
                }
            }
        }
        rows
    });
    rows.get(&place(kind, id))?.as_object().cloned()
}

fn place(kind: Kind, id: &str) -> String {
    format!("{}/{id}", kind as usize)
}

/// The Harbour Lane print room, the demo: its shelf, its dryer and twelve orders. Invented.
///
/// # Errors
/// [`LibraryError`] if the file is not the JSON of its type.
pub fn harbour_lane() -> Result<PrintRoom, LibraryError> {
    table!("harbour_lane.json")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_broken_file_is_named_with_line_and_column() {
        let error = parse::<Vec<LawRecord>>("laws.json", "[\n  { \"id\": 4 }\n]").unwrap_err();
        assert_eq!((error.file, error.line, error.column), ("laws.json", 2, 11));
        assert!(error.to_string().starts_with("data/laws.json, line 2, column 11: invalid type"));
    }
}
