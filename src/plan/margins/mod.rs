//! A candidate at its set point against every limit.
//!
//! Comes in: a candidate with its planned run. Goes out: margins, the tightest first, the temperature
//! histories behind them, and the chances of late faults that do not depend on the heat. It must not know
//! what a margin leads to: verdicts are made in [`verdict`](super::verdict).

mod appearance;
mod ghosting;
mod gloss;
mod heat_standing;
mod histories;
mod late_faults;
mod later_heat;
mod measure;
mod under_cure;

pub use heat_standing::HeatStanding;

pub(super) use ghosting::ghosting;
pub(super) use gloss::{finish_missed, gloss};
pub(super) use histories::{HistoryCache, RunHistories};
pub(super) use late_faults::LateFaults;
pub(super) use later_heat::LaterHeat;
pub(super) use measure::{Margins, Measured};
pub(super) use under_cure::{UnderCure, chance_at};
