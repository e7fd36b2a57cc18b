//! The draft as text that outlives the page.

use super::draft::Draft;
use super::state::State;
use crate::library::shelf;
use serde::{Deserialize, Serialize};

/// Version of the kept text; a newer one is left alone.
const VERSION: u32 = 1;

#[derive(Serialize, Deserialize)]
struct Kept {
    version: u32,
    draft: Draft,
}

/// The draft of this state as text.
#[must_use]
pub fn write(state: &State) -> String {
    let kept = Kept { version: VERSION, draft: state.draft.clone() };
    serde_json::to_string(&kept).unwrap_or_default()
}

/// The last draft in a file of JSON lines; nothing if it holds none that can be read.
#[must_use]
pub fn read_file(text: &str) -> Option<Draft> {
    shelf::lines(text).filter_map(read).last()
}

/// The draft in a kept text; nothing if it cannot be read or is of a newer version.
#[must_use]
pub fn read(text: &str) -> Option<Draft> {
    let kept: Kept = serde_json::from_str(text).ok()?;
    let whole = kept.version == VERSION && !kept.draft.garments.is_empty();
    whole.then_some(kept.draft)
}
