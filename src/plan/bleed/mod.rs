//! Whether dye turns the white: what heat drives into the film, how it spreads until the day that matters,
//! and the chance.
//!
//! Comes in: a candidate with the temperature histories of its print. Goes out: chances, margins of the tint,
//! oven tests. It must not know how the set point was found nor what the verdict is.

mod ageing;
mod chance;
mod evidence;
mod lots;
mod oven;
mod reach;
mod rim;
mod turning;

pub use chance::{BleedPath, after_lot_test};
pub use evidence::{LookedAt, learned, likelihoods};
pub use lots::LotDye;
pub use oven::OvenTest;
pub use rim::{Rim, seen};

pub(super) use ageing::{ADDITIVE, AGEING_CASES, Ageing, AgeingCases, release_elsewhere};
pub(super) use chance::{MOST, visible};
pub(super) use evidence::{evidence, followed, is_about};
pub(super) use lots::MIDDLE;
pub(super) use oven::oven_test;
pub(super) use reach::Reach;
pub(super) use turning::{Bled, Bleeding, DyeHeat, bleeding, fresh_and_dye};
