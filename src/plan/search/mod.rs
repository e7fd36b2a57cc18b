//! The best candidate for each white, without assessing every one.
//!
//! Comes in: a job and what was simulated for earlier answers. Goes out: the best candidate of each white. It
//! must not know how an answer is written.

mod best;
mod cache;
mod dye_estimate;
mod evaluator;
mod heat_estimate;
mod learning;
mod predry;
mod screening;

pub use cache::SimulationCache;
pub use learning::learn;
pub use screening::{ScreenedRecipe, Screening, screening};

pub(super) use evaluator::{Evaluator, first_closed};
pub(super) use predry::{dried_candidates, if_dried};
