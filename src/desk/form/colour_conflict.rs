//! Two colours for one garment: what its label says, and what stands in the colour field.
//!
//! The field decides: a lot often has another shade than its label was sewn for, and a measured colour is better
//! than a name. But the field may have been filled for another label, so the page shows that the two differ.

use super::draft::Draft;
use super::field::Field;
use crate::library::Library;
use crate::optics::{Lab, cie76};
use crate::textile::label;

/// ΔE*ab between a measured colour and the one that the label names, above which they are different colours.
/// Garments of one colour name scatter by some 10 (`textile::ColourRecord`); this is twice that. Assumed; 15 to 30
/// would do.
const OTHER_COLOUR: f64 = 20.0;

/// A label and a colour field that say different things.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColourConflict {
    /// The colour on the label, by its English name.
    pub label: String,
    /// The colour that the answer uses: its English name, or what is typed; empty for numbers without a name.
    pub chosen: String,
}

/// The two colours of the shown garment, where its label and its colour field differ.
#[must_use]
pub fn colour_conflict(draft: &Draft, library: &Library) -> Option<ColourConflict> {
    let garment = draft.garment()?;
    let had = &garment.rest.colour;
    let typed = draft.text(Field::Colour).trim();
    let measured = if typed == had.name { had.lab.map(Lab::from) } else { Lab::read(typed).ok()? };
    if typed.is_empty() && measured.is_none() {
        return None;
    }
    let label = label::read(draft.text(Field::Label)).ok()?.colour?;
    let said = library.colour(&label).ok()?;
    let chosen = library.colour(typed).ok();
    let differs = match (measured, chosen) {
        (Some(lab), _) => cie76(lab, said.lab.into()) > OTHER_COLOUR,
        (None, Some(chosen)) => chosen.id != said.id,
        // A colour that cannot be read is an error of its own.
        (None, None) => false,
    };
    differs.then(|| ColourConflict { label, chosen: chosen.map_or(typed, |chosen| &chosen.name).to_owned() })
}
