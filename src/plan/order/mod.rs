//! The order: as it travels in JSON ([`Order`]), and with every id resolved into plain values ([`Job`]).
//!
//! Comes in: an order and the records that the library found for it. Goes out: a job in SI, and the accepted
//! range of every number. It must not know candidates, temperature histories or verdicts.

pub mod bounds;
mod garment;
mod job;
mod kinetics;
mod mix;
mod order_fields;
mod print;
mod wear;

pub use garment::{Colour, DyeClass, Finish, Garment, UnderPrint};
pub use job::{BlockerBase, Cloth, Job, Law, Rules, Yield, check};
pub use mix::{Mix, mixes};
pub use order_fields::{Evidence, EvidenceSubject, Order, Shop};
pub use print::{
    ColoursOnTop, CureKind, HeatEvent, Opacity, Print, Priority, Role, Sheen, USUAL_OVERHANG_MM,
};
pub use wear::{Use, UseKind};

pub(super) use kinetics::kinetics;
