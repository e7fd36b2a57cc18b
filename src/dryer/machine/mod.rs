//! What heats: the dryer's zones, belt and drift, a flash unit, and how printed pieces cool.
//!
//! In: the records of `data/dryers.json` and of the shop, as written.
//! Out: [`Dryer`], [`FlashUnit`], [`DriftCase`], [`Cooling`], in SI units and within the accepted ranges.
//! Heat transfer and exchange factors come from a measurement, or are computed from nozzles ([`Jets`]) and
//! emitter geometry ([`Emission`]). Must not know: how a stack heats up over time, nor any ink or dye.

pub(in crate::dryer) mod air;
mod cooling;
mod drift;
mod dryer;
mod flash;
mod from_record;
mod jets;
mod radiant;
mod record;

pub use cooling::{Cooling, CoolingStage};
pub use drift::{DriftCase, DriftRange};
pub use dryer::{Belt, Dryer, HeatTransfer, Zone};
pub use flash::FlashUnit;
pub use from_record::bounds;
pub use jets::{Jets, Nozzles};
pub use radiant::Emission;
pub use record::{BeltRecord, DriftRecord, DryerRecord, EmissionRecord, Emitter, JetsRecord, ZoneRecord};
