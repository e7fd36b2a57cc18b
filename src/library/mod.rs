//! The starter library, and ids resolved into plain values.
//!
//! Hands out [`Library`] (the records of `data/`, by id), [`starter`] (the library that ships), [`harbour_lane`]
//! (the demo print room) and the ways from records to what the rest of the house computes with: a
//! [`Fabric`](crate::textile::Fabric), a [`White`](crate::ink::White), a [`Mesh`](crate::ink::Mesh). Never judges.
//! [`storage_layout`] says how lines lie in a browser's database, [`sheet_code`] what the code on a job sheet holds.

pub mod bounds;
pub mod file;
pub mod log;
mod queries;
mod resolve;
pub mod search;
pub mod sheet_code;
mod shop;
mod starter;
pub mod storage_layout;
pub mod table;

pub use queries::{
    answer, answer_with, diagnose, forecast_at, oven_test, pick_forecast, pick_window, report_at, window,
};
pub use resolve::{
    DryerLearnt, DryerRun, ProbeAt, ProbeReading, ProbeRun, TestedPrint, TestedWhite, WhiteLearnt,
    cure_kinetics, job,
};
pub use shop::{
    BatchRecord, CalibrationRecord, FabricDye, FollowUpRecord, LotRecord, TrialReading, TrialRecord, Unusable,
};
pub use starter::{
    LawRecord, Library, LibraryError, Limit, Limits, PrintRoom, RoomOrder, harbour_lane, shipped, starter,
};
