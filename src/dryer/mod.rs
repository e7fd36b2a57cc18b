//! The stack on the belt and the history of its temperatures.
//!
//! Three folders, each importing only those before it: `stack` (what is heated), `machine` (what heats) and
//! `solve` (how hot each part gets, and when). [`calibrate`] then fits a dryer to a probe run.
//!
//! In: a [`Stack`], a [`Dryer`] or [`FlashUnit`], a [`Case`] (set temperature, belt speed, drift). Out: a
//! [`History`]. It knows neither the white's chemistry nor any dye, so one history serves every white, every
//! dye, the cure window and the chart. Judges nothing.

mod calibrate;
mod machine;
mod solve;
mod stack;

pub use calibrate::{DryerCalibration, TemperatureReading, calibrate};
pub use machine::{
    Belt, BeltRecord, Cooling, CoolingStage, DriftCase, DriftRange, DriftRecord, Dryer, DryerRecord,
    Emission, EmissionRecord, Emitter, FlashUnit, HeatTransfer, Jets, JetsRecord, Nozzles, Zone, ZoneRecord,
    bounds,
};
pub use solve::{
    Case, Dwell, Follower, History, HistoryError, HistorySample, Place, StageEquations, TOLERANCE,
    TransitEquations, flash, for_each_substep, forked, history, history_on,
};
pub use stack::{Board, Film, NearInfrared, Stack, StackGrid};
