//! The stack on the belt and the history of its temperatures.
//!
//! Hands out [`Dryer`] and [`Flash`] (what heats), [`Stack`] (what is heated), [`history`] (how hot each part gets
//! and when) and [`World`] (how far the run may wander). A [`History`] knows nothing of the white's chemistry nor
//! of any dye: one serves every white, every dye, the window and the chart. Judges nothing.

mod chain;
mod equations;
mod history;
mod lay;
mod machine;
mod record;
mod stack;

pub use equations::{Around, Grid, Journey, Layer, SHIPPED_GRID, Stage, Water, history_on_grid};
pub use history::{Case, History, Place, Sample, TOLERANCE, between, flash, history};
pub use machine::{Belt, Cooling, Drift, Dryer, Flash, World, Zone};
pub use record::{BeltRecord, DriftRecord, DryerRecord, Emitter, ZoneRecord};
pub use stack::{Film, Stack};
