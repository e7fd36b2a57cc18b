//! Candidates: ways to print one garment by white, blocker, mesh and strokes, and the stack that each puts on
//! the belt.
//!
//! Comes in: a job. Goes out: candidates, the stack of each, its flash, and the drift cases that it must
//! survive. It must not know set points, windows or verdicts.

mod adhesion;
mod candidate;
mod drift_cases;
mod enumerate;
mod flash;
mod stack;
mod vouched;

pub use candidate::ANCHOR_FILM;

pub(super) use adhesion::comes_off;
pub(super) use candidate::{Candidate, MOST_STROKES, film_on, most_shown, travelling_hue};
pub(super) use drift_cases::{COLD, DAMPER, DRIFT_CASES, HOT, PLANNED, STOPPED, drift_cases};
pub(super) use enumerate::{anchor_candidate, candidates, first_candidate};
pub(super) use flash::{FlashStep, SHORTEST_FLASH, flash_of, flash_step};
pub(super) use stack::{LEFT, cloth_in_room, comes_damp, damp, dry, is_damp, is_soaked, stack_of, water};
pub(super) use vouched::is_vouched;
