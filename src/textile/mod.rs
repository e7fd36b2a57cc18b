//! Cloth: fibres, constructions, fabrics, what a garment label says, moisture.
//!
//! Hands out [`Fibre`], [`Construction`], [`Fabric`] (the numbers the march needs), [`DyeRecord`], [`colour`] (what
//! a colour's name says), [`label`] (text in, composition out) and [`moisture`] (regain, sorption heat, vapour
//! pressure). Never judges a print.

pub mod colour;
mod construction;
mod dye;
mod fabric;
mod fibre;
pub mod label;
pub mod moisture;
pub mod spelling;

pub use colour::{ColourRecord, Depth};
pub use construction::{Construction, ConstructionRecord};
pub use dye::{DyeClassRecord, DyeEnergy, DyePhase, DyeRecord};
pub use fabric::{AREAL_WEIGHT, Composition, Fabric, FabricRecord};
pub use fibre::{Fibre, FibreRecord};
