//! The stack on the belt and the history of its temperatures.

mod record;

pub use record::{BeltRecord, DriftRecord, DryerRecord, Emitter, ZoneRecord};
