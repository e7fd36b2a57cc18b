//! How a candidate is run: its set point and what that must keep, its flash, its drying.

use super::demands::Demands;
use super::set_point::SetPoint;
use crate::plan::recipe::FlashStep;

/// How a candidate is run.
#[derive(Clone, Copy, Debug)]
pub struct PlannedRun {
    /// Its set point.
    pub point: SetPoint,
    /// Its demands on the window.
    pub demands: Demands,
    /// Its flash, if it has one.
    pub flash: Option<FlashStep>,
    /// Passes in which its cloth is dried before; 0 if it is printed as it lies.
    pub dryings: u32,
}
