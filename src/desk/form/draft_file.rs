//! The draft as text: what is saved in the browser and what a file holds.

use super::draft::Draft;
use super::field::Field;
use crate::library::file;
use crate::library::storage_layout;
use serde::{Deserialize, Serialize};

/// Version of the text; a newer one is not read.
const VERSION: u32 = 1;

#[derive(Serialize, Deserialize)]
struct Kept {
    version: u32,
    draft: Draft,
}

/// A draft as text.
#[must_use]
pub fn write(draft: &Draft) -> String {
    let kept = Kept { version: VERSION, draft: draft.clone() };
    serde_json::to_string(&kept).unwrap_or_default()
}

/// The draft in a file: in the header of a library file, or the last line that is a draft; `None` if there is none.
#[must_use]
pub fn read_file(text: &str) -> Option<Draft> {
    match file::header(text) {
        Some(header) => read(&header.draft?.to_string()),
        None => storage_layout::lines(text).filter_map(read).last(),
    }
}

/// The draft in a text; `None` if it cannot be read or is of a newer version.
#[must_use]
pub fn read(text: &str) -> Option<Draft> {
    let mut kept: Kept = serde_json::from_str(text).ok()?;
    // A field that an earlier version did not have is filled from its order.
    if !kept.draft.texts.contains_key(&Field::Overhang) {
        kept.draft.set(Field::Overhang, Some(kept.draft.rest.print.overhang_mm));
    }
    let whole = kept.version == VERSION && !kept.draft.garments.is_empty();
    whole.then_some(kept.draft)
}
