//! Cloth: fibres, constructions, fabrics, what a garment label says, moisture.
//!
//! Hands out [`Fibre`], [`Construction`], [`Fabric`] (the numbers the march needs), [`label`] (text in,
//! composition out) and [`moisture`] (regain, sorption heat, vapour pressure). Never judges a print.

mod construction;
mod fabric;
mod fibre;
pub mod label;
pub mod moisture;

pub use construction::{Construction, ConstructionRecord};
pub use fabric::{Composition, Fabric, FabricRecord};
pub use fibre::{Fibre, FibreRecord};
