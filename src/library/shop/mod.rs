//! What a shop writes itself: its records, and the starter library with them laid over it.
//!
//! Comes in: the log and the library that ships. Goes out: the library that answers are computed with,
//! and the shop's own records as types. It must not know tables, files or pages.

mod overlay;
mod records;

pub use overlay::Unusable;
pub(super) use overlay::check;
pub use records::{
    BatchRecord, CalibrationRecord, FabricDye, FollowUpRecord, LotRecord, TrialReading, TrialRecord,
};
