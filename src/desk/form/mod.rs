//! The order form: its fields, the text that was typed into them, and what can be read from that text.
//!
//! In: text as typed, an order to open, a saved draft.
//! Out: [`Draft`]; the order it describes, or each field that cannot be read; suggestions; the draft as text.
//! Must not know: the page's state, its messages, or an answer.
//!
//! **Decision:** undo of the form is separate from the log. A draft is kept in its tab's slot; *Keep this
//! order* makes it a record, and from there history, undo and merge are the log's.
//! **Because:** a draft changes with every letter, belongs to one tab and may be unreadable as an order; an
//! entry is a finished change on which all tablets agree.
//! **Measured:** not measured; entries of letters would be most of the log and of every file (2026-11-25).
//! **Reconsider when:** two tablets must edit one draft together.

mod colour_conflict;
mod draft;
pub mod draft_file;
mod draft_reader;
mod field;
mod suggestions;

pub use colour_conflict::{ColourConflict, colour_conflict};
pub use draft::{Draft, FieldText, GarmentDraft, Texts, Theme};
pub use field::Field;
pub use suggestions::{Suggestion, suggestions};
