//! The order form: its fields, the text that was typed into them, and what can be read from that text.
//!
//! In: text as typed, an order to open, a saved draft.
//! Out: [`Draft`]; the order it describes, or each field that cannot be read; suggestions; the draft as text.
//! Must not know: the page's state, its messages, or an answer.

mod colour_conflict;
mod draft;
pub mod draft_file;
mod field;
mod suggestions;

pub use colour_conflict::{ColourConflict, colour_conflict};
pub use draft::{Draft, FieldText, GarmentDraft, Texts, Theme};
pub use field::Field;
pub use suggestions::{Suggestion, suggestions};
