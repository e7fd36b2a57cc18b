//! The cure window: what every setting of a dryer does to one stack, and the set point that holds over drift.
//!
//! Comes in: a stack, a dryer, and what must be kept ([`Demands`]). Goes out: a window, a robust set point,
//! the clearance around it, and what would open a closed window. It must not know prices, chances or
//! verdicts.

mod belt_steps;
mod cell;
mod controls;
mod demands;
mod family;
mod fields;
mod grid;
mod model_error;
mod must_fuse;
mod openings;
mod outcome;
mod planned_run;
mod price;
mod question;
mod robust;
mod set_point;

pub use demands::Demands;
pub use family::Family;
pub use grid::Window;
pub use outcome::Outcome;
pub use question::{Detail, DriftRun, Question};
pub use set_point::SetPoint;

pub(super) use cell::logit;
pub(super) use controls::{clearance_around, dry_dwell, setting};
pub(super) use model_error::model_error;
pub(super) use must_fuse::{closed, hardest};
pub(super) use openings::openings;
pub(super) use planned_run::PlannedRun;
pub(super) use robust::robust;
