//! The starter library, and ids resolved into plain values.
//!
//! Hands out [`Library`] (the records of `data/`, by id), [`starter`] (the library that ships), [`harbour_lane`]
//! (the demo print room) and the ways from records to what the rest of the house computes with: a
//! [`Fabric`](crate::textile::Fabric), a [`White`](crate::ink::White), a [`Mesh`](crate::ink::Mesh). Never judges.
//! [`shelf`] says how lines lie in a browser's database, [`ticket`] what the code on a job sheet holds.

mod anchor;
mod ask;
mod cloth;
pub mod file;
pub mod log;
mod overlay;
mod record;
mod resolve;
mod run;
pub mod search;
pub mod shelf;
mod shop_record;
mod starter;
pub mod table;
pub mod ticket;

pub use anchor::anchor_chance;
pub use ask::{
    answer, answer_with, diagnose, forecast_at, job, oven_test, pick_forecast, pick_window, report_at, window,
};
pub use overlay::Unusable;
pub use record::{AnchorRecord, AnchorSetting, LimitRecord, PrintRoom, RoomOrder};
pub use resolve::cure_kinetics;
pub use run::{
    DryerLearnt, DryerRun, ProbeAt, ProbeReading, ProbeRun, TestedPrint, TestedWhite, WhiteLearnt,
};
pub use shop_record::{Batch, Calibration, FabricDye, FollowUp, Lot, Reading, Trial};
pub use starter::{Library, LibraryError, harbour_lane, shipped, starter};
