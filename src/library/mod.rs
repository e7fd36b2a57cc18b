//! The starter library, and ids resolved into plain values.
//!
//! Gives [`Library`] (the records of `data/`, by id), [`starter`] (the library that ships),
//! [`harbour_lane`] (the demo print room), and turns records into what the floors below compute with: a
//! [`Fabric`](crate::textile::Fabric), a [`White`](crate::ink::White), a [`Job`](crate::plan::Job).
//! [`answer`] and the other queries are the entry points for callers. [`log`] holds the shop's own
//! records, [`storage_layout`] their layout in a browser's database, [`sheet_code`] the content of the
//! code on a job sheet.

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
