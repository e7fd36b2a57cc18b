//! From records and labels to the plain values that the plan computes with, in SI.
//!
//! Comes in: an order, a garment or a run as people write it, and the [`Library`](super::Library). Goes
//! out: a [`Job`](crate::plan::Job), a [`Cloth`](crate::plan::Cloth), a
//! [`Fabric`](crate::textile::Fabric), a [`White`](crate::ink::White), a dryer run. It must not know the
//! shop's log.

mod dryer_run;
mod dye;
mod fabric;
mod garment;
mod label_reasons;
mod order;
mod white;

pub use dryer_run::{
    DryerLearnt, DryerRun, ProbeAt, ProbeReading, ProbeRun, TestedPrint, TestedWhite, WhiteLearnt,
};
pub use order::job;
pub use white::cure_kinetics;

pub(super) use garment::UNSAID;
use garment::resolve_garment;

use crate::dryer::HistoryError;
use crate::quantity::{FieldError, Problem};

/// A history that could not be computed, as an error of `field`.
pub(super) fn not_solved(field: &str, error: &HistoryError) -> Vec<FieldError> {
    vec![FieldError::new(field, error.to_string(), Problem::NotSolved)]
}
