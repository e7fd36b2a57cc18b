//! Dye that leaves the cloth, what the white binds of it, and what it does in the months after.
//!
//! Disperse dye leaves a hot polyester three ways:
//!
//! ```text
//! vapour    (D_air / gap) (P(T) M / R T) a f          a = dye on fibre / saturation, f = share of dyed polyester
//! contact   2 A f C sqrt(Theta / pi)                  Theta = integral of D_fibre(T) dt   (Crank, half-space)
//! surface   S [1 - exp(-integral of k_s(T) dt)]       loose dye on the yarn, hardly held at all
//! ```
//!
//! The film sees the upper yarns only, so the sum is held to what they carry: `m [1 - exp(-(v + c) / m)] + s`.
//! What arrives enters the film from below while the heat lasts; a part of it is bound where it is and the rest
//! spreads, quickly in the dryer and slowly on the shelf, where both cloths that lie against the film give more:
//! [`DyeProfile`], which [`HeatExposure`] takes through the dryer and [`Storage`] through the months.
//!
//! Checked in `tests/dye/migration.rs` (vapour pressures, half-space, bounds), `tests/dye/sheet.rs` (Crank's sheets, keeping of
//! mass) and `tests/dye/storage.rs` (stores). Ratios are firmer than levels: the diffusivities, the surface dye and what a
//! white binds are chosen to fit common practice, not measured.

pub mod accelerated;
mod dye_profile;
mod exposure;
mod fastness;
mod film;
mod source;
mod storage;
mod time_step;

pub use dye_profile::{AdjacentCloth, CELLS, DyeProfile, DyeStep, FilmLayer};
pub use exposure::{ExposureInputs, ExposureStep, HeatExposure, MOST_IN_A_STEP};
pub use fastness::{Belief, ClothTest, FastnessGrade, MOST_SEEN, SeenPrint, SourceBelief, crosses};
pub use film::{Binding, FilmDiffusion, VISIBLE_DEPTH};
pub use source::{Dye, DyedCloth, Release, release};
pub use storage::{DAY, Storage, StoragePeriod, hot_stack, summer_container};
