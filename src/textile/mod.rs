//! Cloth: fibres, constructions, fabrics, what a garment label says, moisture.
//!
//! Comes in: labels and names as people write them, records of fibres and cloths. Goes out: [`Fibre`],
//! [`Construction`], [`Fabric`] (a cloth in SI), [`DyeRecord`], [`colour`] (what a colour's name says),
//! [`label`] (text in, composition out) and [`moisture`] (regain, sorption heat, vapour pressure). It
//! must not judge a print.

pub mod colour;
mod construction;
mod dye;
mod fabric;
mod fibre;
pub mod label;
pub mod moisture;
pub mod spelling;

pub use colour::{ColourRecord, Depth, Shade};
pub use construction::{Construction, ConstructionRecord};
pub use dye::{DyeClassRecord, DyeEnergy, DyePhase, DyeRecord};
pub use fabric::{AREAL_WEIGHT, Composition, Fabric, FabricRecord};
pub use fibre::{Fibre, FibreRecord};
