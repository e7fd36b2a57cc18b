//! How hot each part of a stack gets, and when.
//!
//! In: a [`Stack`](super::Stack), a [`Dryer`](super::Dryer) or flash unit, and the [`Case`]s to compute side
//! by side. Out: a [`History`] of temperatures and water, or the [`HistoryError`] that says which value is
//! out of range. [`forked`] computes many dwells of a one-zone dryer at the price of a few;
//! [`TransitEquations`] hands the bare equations to another solver. Must not know: fusion, scorch, dye, nor
//! what temperature is good or bad.

mod assembly;
#[cfg(test)]
mod balance;
mod chain;
mod equations;
mod error;
mod fork;
#[cfg(test)]
mod handbook;
mod history;
mod surroundings;
mod transit;
mod water;

pub use equations::{StageEquations, TransitEquations};
pub use error::HistoryError;
pub use fork::{Dwell, Follower, forked};
pub use history::{
    Case, History, HistorySample, Place, TOLERANCE, flash, for_each_substep, history, history_on,
};
