//! The set point that holds over the whole drift of the dryer.
//!
//! **Decision:** the robust set point, never the just-cured one; what a set point costs has fixed weights and
//! does not come from the verdict.
//! **Because:** the cold corner must fuse, and the hot corner and a belt stop must leave the print white and
//! whole.
//! **Measured:** with dye weighed four times as much, red polyester went from a trial to a bare go whose cold
//! corner is fused by 89 %: the edge that the film's model favours and the trade avoids (2026-11-29).
//! **Reconsider when:** measured prints, not the model alone, show that such an edge holds.

use super::belt_steps::BeltStep;
use super::cell::Cell;
use super::demands::{CellLimits, Demands};
use super::grid::Window;
use super::question::DriftRun;
use super::set_point::SetPoint;
use crate::dryer::Dryer;
use crate::numerics::interpolation;
use std::ops::Range;

/// The setting whose whole drift box holds (the cold corner fuses, the hot corner and a belt stop do no
/// harm), and among those the one that costs least in dye, heat and time. If no box holds, the best setting
/// that holds as planned; `None` if the window is closed.
///
/// Never the just-cured point: there the least drift leaves the film under-fused. The cost of a setting is
///
/// ```text
/// mean over drift of ln(dye) (where dye moves with it) + pace ln(dwell / 30 s) + crowding at both corners
/// ```
///
/// Crowding is 1 where a corner touches its limit and falls off e-fold over a shop's own uncertainty: one
/// unit of the logit of the fused share, 15 K of film or cloth, a third of the scorch index. Weights chosen,
/// no source.
#[must_use]
pub fn robust(window: &Window, dryer: &Dryer, demands: &Demands, fixed: Option<f64>) -> Option<SetPoint> {
    let sets: Vec<f64> = match fixed {
        Some(set) => vec![set],
        None => {
            let steps = ((dryer.set_high - dryer.set_low) / dryer.step.max(0.5)).floor().min(240.0) as usize;
            let skip = (steps / 50).max(1);
            (0..=steps).step_by(skip).map(|i| dryer.set_low + i as f64 * dryer.step.max(0.5)).collect()
        }
    };
    let belts = &*window.belt_steps;
    let search = Search { window, limits: demands.limits(), demands };
    // First every third step of both axes; if none of these settings holds throughout, every step.
    let near = |index: usize, count: usize| index.saturating_sub(STRIDE)..(index + STRIDE + 1).min(count);
    let rough =
        search.best(&sets, belts, 0..sets.len(), 0..belts.len(), STRIDE).filter(|found| found.point.robust);
    let found = match rough {
        Some(found) => {
            let (set, belt) = (near(found.at[0], sets.len()), near(found.at[1], belts.len()));
            search.best(&sets, belts, set, belt, 1)
        }
        None => search.best(&sets, belts, 0..sets.len(), 0..belts.len(), 1),
    };
    found.map(|found| found.point)
}

/// Steps from one setting of the first search to the next.
const STRIDE: usize = 3;

/// The best setting so far: its place on both axes, its cost and its set point.
struct Found {
    at: [usize; 2],
    cost: f64,
    point: SetPoint,
}

struct Search<'a> {
    window: &'a Window,
    limits: CellLimits,
    demands: &'a Demands,
}

impl Search<'_> {
    /// The best setting within these ranges of both axes, `step` places apart.
    fn best(
        &self,
        sets: &[f64],
        belts: &[BeltStep],
        rows: Range<usize>,
        columns: Range<usize>,
        step: usize,
    ) -> Option<Found> {
        let mut best: Option<Found> = None;
        for row in rows.step_by(step) {
            let set = *sets.get(row)?;
            let between_rows = interpolation::cubic(&self.window.set, set);
            let planned = self.window.row(DriftRun::Nominal, between_rows);
            // Computed where needed only: most rows hold nowhere.
            let mut drift = None;
            for column in columns.clone().step_by(step) {
                let step = belts.get(column)?;
                let nominal = between(&planned, step.planned);
                if !self.limits.hold(&nominal) {
                    continue;
                }
                let [cold, hot] = drift.get_or_insert_with(|| {
                    [DriftRun::Cold, DriftRun::Hot].map(|run| self.window.row(run, between_rows))
                });
                let (cold, hot) = (between(cold, step.planned), between(hot, step.planned));
                let stopped = between(&planned, step.stopped);
                let pace = self.demands.pace * step.ln_dwell;
                let dye = (nominal.dye() + cold.dye() + hot.dye() + stopped.dye()) / 4.0;
                let dye = if self.demands.bleeds { dye } else { 0.0 };
                // Crowding only adds to the cost.
                if best.as_ref().is_some_and(|best| best.point.robust && pace + dye >= best.cost) {
                    continue;
                }
                let robust = self.limits.hold_cold(&cold)
                    && self.limits.hold_hot(&hot)
                    && self.limits.hold_hot(&stopped);
                let cost = pace + self.limits.crowding(&cold, &[hot, stopped]) + dye;
                let better = best.as_ref().is_none_or(|best| {
                    (robust && !best.point.robust) || (robust == best.point.robust && cost < best.cost)
                });
                if better {
                    let point = SetPoint { set, belt: step.belt, robust };
                    best = Some(Found { at: [row, column], cost, point });
                }
            }
        }
        best
    }
}

/// The cell between the columns of a row.
fn between(row: &[Cell], (column, weights): (usize, [f64; 4])) -> Cell {
    let mut sum = Cell::ZERO;
    for (cell, weight) in row.get(column..).unwrap_or_default().iter().zip(weights) {
        sum.add(weight, cell);
    }
    sum
}

/// Clearance from a setting to the nearest wall on one axis: how far `step` can be taken before a demand
/// breaks; `None` if none breaks up to `most`.
#[must_use]
pub fn clearance(holds: impl Fn(f64) -> bool, most: f64) -> Option<f64> {
    if holds(most) {
        return None;
    }
    let (mut inside, mut outside) = (0.0, most);
    for _ in 0..24 {
        let middle = 0.5 * (inside + outside);
        if holds(middle) { inside = middle } else { outside = middle }
    }
    Some(inside)
}
