//! The belt speeds that a shop can dial.

use crate::dryer::Dryer;
use crate::numerics::interpolation;
use std::sync::Arc;

/// A belt speed that a shop can dial, and where it lies between the columns of a window.
#[derive(Clone, Copy, Debug)]
pub struct BeltStep {
    /// Belt speed, m/s.
    pub belt: f64,
    /// Time in the heat, s.
    pub dwell: f64,
    /// Logarithm of the dwell over 30 s.
    pub ln_dwell: f64,
    /// First column and weights of the interpolation at this speed.
    pub planned: (usize, [f64; 4]),
    /// The same with a stop of the belt: at the speed whose dwell is as long.
    pub stopped: (usize, [f64; 4]),
}

/// From one belt speed to the next, as a share: finer than a dial is read, so that the grid is not felt in the
/// chances. At 2.5 % they wandered by half a percent from one degree of the dial to the next.
pub const STEP: f64 = 0.006_25;

/// The belt speeds that a shop can dial, over columns at these logarithms of the speed: the same in every row
/// of every window of one dryer.
pub fn belt_steps(dryer: &Dryer, columns: &[f64]) -> Arc<[BeltStep]> {
    let (Some(slowest), Some(fastest)) = (columns.first(), columns.last()) else { return Arc::default() };
    let length = dryer.heated_length();
    let speeds = ((fastest - slowest) / STEP).ceil().max(1.0) as usize;
    let step = |i: usize| {
        let log = slowest + (fastest - slowest) * i as f64 / speeds as f64;
        let belt = log.exp();
        let stopped = (length / (length / belt + dryer.drift.stop)).ln();
        BeltStep {
            belt,
            dwell: length / belt,
            ln_dwell: (length / belt / 30.0).ln(),
            planned: interpolation::cubic(columns, log),
            stopped: interpolation::cubic(columns, stopped),
        }
    };
    (0..=speeds).map(step).collect()
}
