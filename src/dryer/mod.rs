//! The stack on the belt and the history of its temperatures.
//!
//! Hands out [`Dryer`] and [`Flash`] (what heats), [`Stack`] (what is heated), [`history`] (how hot each part gets
//! and when), [`forked`] (the same for many dwells at once) and [`World`] (how far the run may wander). A [`History`]
//! knows nothing of the white's chemistry nor of any dye: one serves every white, every dye, the window and the chart.
//! [`Jets`] and [`Emission`] tell what a zone does where nobody has measured it, [`calibrate`] what a probe run says of it.
//! Judges nothing.

mod air;
#[cfg(test)]
mod balance;
mod calibrate;
mod chain;
mod cooling;
mod equations;
mod error;
mod flash;
mod fork;
mod history;
mod jets;
mod journey;
mod lay;
mod machine;
mod radiant;
mod read;
mod record;
mod stack;

pub use calibrate::{Calibration, Reading, calibrate};
pub use cooling::{Cooling, Rest};
pub use equations::{Equations, Stage};
pub use error::HistoryError;
pub use flash::Flash;
pub use fork::{Dwell, Follow, forked};
pub use history::{Case, History, Place, Sample, TOLERANCE, between, flash, history, history_on};
pub use jets::{Jets, Nozzles};
pub use lay::Grid;
pub use machine::{Belt, Drift, Dryer, Transfer, World, Zone};
pub use radiant::Emission;
pub use read::bounds;
pub use record::{BeltRecord, DriftRecord, DryerRecord, EmissionRecord, Emitter, JetsRecord, ZoneRecord};
pub use stack::{Film, NearInfrared, Stack};
