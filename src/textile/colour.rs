//! What the name of a garment colour says: a rough Lab, and how deep the shade is dyed.

use super::spelling::fold;
use crate::numerics::sorting::map;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// How deep a shade is dyed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Depth {
    /// White or raw: no dye.
    Undyed,
    /// Light.
    Pale,
    /// Medium.
    Medium,
    /// Deep.
    Deep,
}

/// What kind of shade a colour is, as far as its dye travels unlike that of others as deep.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shade {
    /// Like most.
    #[default]
    Usual,
    /// Reds from cherry to burgundy: more of a dye that travels soon.
    Red,
    /// A mixture of dyed and undyed fibre.
    Heather,
    /// Fluorescent: cleared less hard, for a scoured fluorescent is a dull one.
    Fluorescent,
}

/// One row of `data/colours.json`: a garment colour by its name.
///
/// Real garments of one name differ by some 10 ΔE*ab from `lab`; a measured colour takes precedence.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ColourRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// Name in English.
    pub name: String,
    /// Name in Spanish.
    pub nombre: String,
    /// Other names, in either language.
    pub also: Vec<String>,
    /// CIELAB, D65/10°.
    pub lab: [f64; 3],
    /// How deep the shade is dyed.
    pub depth: Depth,
    /// What kind of shade it is.
    #[serde(default)]
    pub shade: Shade,
    /// A note for people; may be empty.
    pub note: String,
    /// Where the record comes from.
    pub source: String,
}

impl ColourRecord {
    /// Every name it goes by: id, English, Spanish and the others.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        [&self.id, &self.name, &self.nombre].into_iter().chain(&self.also).map(String::as_str)
    }
}

/// The text of `data/colours.json`.
pub const COLOURS_JSON: &str = include_str!(concat!(env!("OUT_DIR"), "/colours.json"));

/// The starter colour of a folded name, for reading labels.
///
/// It would know none if the file were broken, which `library::starter` reports.
pub(super) fn known(folded: &str) -> Option<&'static ColourRecord> {
    static COLOURS: OnceLock<Vec<ColourRecord>> = OnceLock::new();
    static BY_NAME: OnceLock<BTreeMap<String, &ColourRecord>> = OnceLock::new();
    let colours = COLOURS.get_or_init(|| serde_json::from_str(COLOURS_JSON).unwrap_or_default());
    let by_name = BY_NAME.get_or_init(|| {
        map(colours.iter().flat_map(|colour| colour.names().map(move |name| (fold(name), colour))))
    });
    by_name.get(folded).copied()
}

/// The starter colour of this name, in either language.
#[must_use]
pub fn named(name: &str) -> Option<&'static ColourRecord> {
    known(&fold(name))
}

/// The colour of this name among `colours`, in English or Spanish, whatever the case, accents and
/// hyphens.
#[must_use]
pub fn find<'a>(colours: &'a [ColourRecord], name: &str) -> Option<&'a ColourRecord> {
    let wanted = fold(name);
    colours.iter().find(|colour| colour.names().any(|known| fold(known) == wanted))
}
