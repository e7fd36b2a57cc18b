//! The set point that holds over the whole drift of the dryer.
//!
//! **Decision:** the robust set point, never the just-cured one; what a set point costs has fixed weights and
//! does not come from the verdict.
//! **Because:** the cold corner must fuse, and the hot corner and a belt stop must leave the print white and
//! whole.
//! **Measured:** with dye weighed four times as much, red polyester went from a trial to a bare go whose cold
//! corner is fused by 89 %: the edge that the film's model favours and the trade avoids (2026-11-29).
//! **Reconsider when:** measured prints, not the model alone, show that such an edge holds.

use super::belt_steps::{BeltStep, STEP};
use super::cell::Cell;
use super::demands::{CellLimits, Demands};
use super::grid::Window;
use super::price::{Price, Trust};
use super::question::DriftRun;
use super::set_point::SetPoint;
use crate::dryer::Dryer;
use crate::numerics::interpolation;
use std::ops::Range;

/// The setting whose whole drift box holds (the cold corner fuses, the hot corner and a belt stop do no
/// harm), and among those the one that costs least in dye, heat, time and risk. If no box holds, or only those
/// that are too slow or too hot for any shop, the one whose middle holds and that costs least in all but risk:
/// it is no more than tried, and the coolest is tried first. If there is none either, the one that costs least
/// among those that hold as planned; `None` if the window is closed.
///
/// Never the just-cured point: there the least drift leaves the film under-fused. The cost of a setting is
///
/// ```text
/// mean over drift of ln(dye) (where dye moves with it) + pace ln(dwell / 30 s)
///     + heat and time + risk of under-cure + crowding of the hot corner and the belt stop
/// ```
///
/// Heat, time and risk: [`Price`]. Crowding is 1 where a limit is touched and falls off
/// e-fold over a shop's own uncertainty: 15 K of film or cloth, a third of the scorch index. Weights chosen,
/// no source.
#[must_use]
pub fn robust(window: &Window, dryer: &Dryer, demands: &Demands, fixed: Option<f64>) -> Option<SetPoint> {
    let sets: Vec<f64> = match fixed {
        Some(set) => vec![set],
        None => {
            let step = dryer.step.max((dryer.set_high - dryer.set_low) / MOST_SETS);
            let steps = ((dryer.set_high - dryer.set_low) / step + 1e-9).floor() as usize;
            (0..=steps).map(|i| dryer.set_low + i as f64 * step).collect()
        }
    };
    let search = Search { window, limits: demands.limits(), demands, sets: &sets, belts: &window.belt_steps };
    let best = search.settle(0..sets.len())?;
    // The belt once more along the whole of its row: as a dryer that is fixed there would be searched.
    let row = best.at[0];
    search.settle(row..row + 1).map(|found| found.point)
}

/// Most set temperatures that are looked at, less one.
const MOST_SETS: f64 = 240.0;
/// Steps on both axes from one setting of the first look to the next, and of each closer one around the best:
/// the last looks at every degree of the dial.
const STRIDES: [[usize; 2]; 3] = [[6, 12], [2, 4], [1, 1]];
/// The same on a dial of few steps: from one of them to the next the belt speed that fits changes by more than
/// a stride.
const STRIDES_OF_FEW: [[usize; 2]; 3] = [[1, 12], [1, 4], [1, 1]];
/// Fewest steps of a dial that is looked at in strides.
const FEW: usize = 40;

/// The best setting so far: its place on both axes, its cost and its set point.
struct Found {
    at: [usize; 2],
    trust: Trust,
    cost: f64,
    point: SetPoint,
}

struct Search<'a> {
    window: &'a Window,
    limits: CellLimits,
    demands: &'a Demands,
    /// Set temperatures that can be dialled, K.
    sets: &'a [f64],
    belts: &'a [BeltStep],
}

impl Search<'_> {
    /// The best setting within these rows: first in long strides, over everything in closer ones if none of
    /// those settings holds throughout, then closer around the best.
    fn settle(&self, rows: Range<usize>) -> Option<Found> {
        let [first, closer, last] = if self.sets.len() < FEW { STRIDES_OF_FEW } else { STRIDES };
        let all = 0..self.belts.len();
        let rough = self.best(rows.clone(), all.clone(), first).filter(|found| found.point.robust);
        let near = |found: &Found, [set, belt]: [usize; 2]| {
            let [row, column] = found.at;
            let within = row.saturating_sub(set).max(rows.start)..(row + set + 1).min(rows.end);
            (within, column.saturating_sub(belt)..(column + belt + 1).min(all.end))
        };
        let found = match rough {
            Some(found) => {
                let (rows, columns) = near(&found, first);
                self.best(rows, columns, closer)
            }
            None => self.best(rows.clone(), all.clone(), closer),
        }?;
        let (rows, columns) = near(&found, closer);
        self.best(rows, columns, last)
    }

    /// The best setting within these ranges of both axes, so many places apart.
    fn best(&self, rows: Range<usize>, columns: Range<usize>, stride: [usize; 2]) -> Option<Found> {
        let mut best: Option<Found> = None;
        let price = &self.demands.price;
        let damper_by = (price.damper / STEP).round() as usize;
        for row in rows.step_by(stride[0]) {
            let set = *self.sets.get(row)?;
            let between_rows = interpolation::cubic(&self.window.set, set);
            let planned = self.window.row(DriftRun::Nominal, between_rows);
            // Computed where needed only: most rows hold nowhere.
            let mut drift = None;
            for column in columns.clone().step_by(stride[1]) {
                let step = self.belts.get(column)?;
                let nominal = between(&planned, step.planned);
                if !self.limits.hold(&nominal) {
                    continue;
                }
                let [cold, hot] = drift.get_or_insert_with(|| {
                    [DriftRun::Cold, DriftRun::Hot].map(|run| self.window.row(run, between_rows))
                });
                let (cold, hot) = (between(cold, step.planned), between(hot, step.planned));
                let stopped = between(&planned, step.stopped);
                let dye = (nominal.dye() + cold.dye() + hot.dye() + stopped.dye()) / 4.0;
                let dye = if self.demands.bleeds { dye } else { 0.0 };
                let sure = self.demands.pace * step.ln_dwell
                    + dye
                    + price.heat_and_time(nominal.bottom_peak(), step.dwell, set);
                // Crowding and risk only add to the cost.
                if best.as_ref().is_some_and(|best| best.trust == Trust::Robust && sure >= best.cost) {
                    continue;
                }
                let holds = self.limits.hold_cold(&cold)
                    && self.limits.hold_hot(&hot)
                    && self.limits.hold_hot(&stopped);
                // More water takes as much of the heat as a shorter dwell.
                let damper = self.belts.get(column + damper_by).unwrap_or(step);
                let damper = between(&planned, damper.planned);
                let over = [&nominal, &cold, &damper].map(|cell| self.limits.fused_over(cell));
                let spare = price.spare(over, step.dwell);
                let trust = price.trust(step.dwell, hot.film_peak(), spare, holds);
                let ln_risk = Price::ln_risk(trust, spare);
                let cost = sure + self.limits.crowding_and_risk(&[hot, stopped], ln_risk);
                let better = best
                    .as_ref()
                    .is_none_or(|best| trust > best.trust || (trust == best.trust && cost < best.cost));
                if better {
                    let point = SetPoint { set, belt: step.belt, robust: trust == Trust::Robust };
                    best = Some(Found { at: [row, column], trust, cost, point });
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
