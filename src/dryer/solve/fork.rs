//! Many dwell times of a one-zone dryer at the cost of a few.
//!
//! In a one-zone dryer a slower belt only means a longer stay in the same surroundings. So the heating is
//! integrated once, to the longest dwell, and at each shorter one the cooling branches off from a copy of the
//! state. In a dryer of several zones a slower belt lengthens every zone, so that the heating differs from
//! the first zone on.

use super::error::{check_case, check_dryer, check_stack};
use super::surroundings::zone_surroundings;
use super::transit::{Transit, cooling_tolerance};
use super::{Case, HistoryError, HistorySample};
use crate::dryer::machine::{DriftCase, Dryer};
use crate::dryer::stack::{Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{Effort, Tolerance};
use crate::quantity::{FieldError, Problem};

/// A quantity accumulated along a history (fusion, dye release), cloned where the cooling branches off.
pub trait Follower<const L: usize>: Clone {
    /// Adds the step from one sample to the next; the cubic through their temperatures and rates holds in
    /// between.
    fn step(&mut self, from: &HistorySample<L>, to: &HistorySample<L>);
}

/// A dwell time after which a piece leaves the zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dwell {
    /// Time in the zone, s.
    pub seconds: f64,
    /// Whether its cooling is computed as well.
    pub cools: bool,
}

/// Accumulates a [`Follower`], from `start`, through a one-zone dryer at each of `dwells` (rising) and
/// through the cooling after it. The lanes are `runs`: set temperature (K) and drift case. Calls `done` with
/// the index of each dwell, the follower at the exit, and the follower after cooling.
///
/// # Errors
/// [`HistoryError::Outside`] if the dryer has several zones, or if the stack, the dryer or a run lies outside the range
/// in which the equations hold; [`HistoryError::Integration`] if the time steps fail.
#[allow(clippy::too_many_arguments, reason = "those of `history_on`, and what is accumulated")]
pub fn forked<const L: usize, F: Follower<L>>(
    grid: StackGrid,
    stack: &Stack,
    dryer: &Dryer,
    runs: &[(f64, DriftCase); L],
    dwells: &[Dwell],
    tolerance: Tolerance,
    start: &F,
    mut done: impl FnMut(usize, &F, Option<&F>),
) -> Result<Effort, HistoryError> {
    let ([zone], Some(&longest)) = (dryer.zones.as_slice(), dwells.last()) else {
        let count = dryer.zones.len().to_string();
        let problem = Problem::OutOfRange { min: 1.0, max: 1.0, unit: "1".into() };
        return Err(FieldError::new("zones", count, problem).into());
    };
    check_stack(stack)?;
    check_dryer(dryer)?;
    let (sets, drifts) = (runs.map(|(set, _)| set), &runs.map(|(_, drift)| drift));
    for (set, drift) in runs.iter().copied() {
        check_case(&Case { set, belt: zone.length / longest.seconds, drift }, dryer)?;
    }
    let belt = &dryer.belt;
    let under = [belt.heat_capacity, belt.contact, belt.entry_temperature];
    let mut hot = Transit::start(stack, drifts, under, grid, tolerance);
    let mut cold = Transit::start(stack, drifts, under, grid, cooling_tolerance(tolerance));
    let around = zone_surroundings(stack, dryer, zone, Lanes(sets), drifts);
    let mut trunk = start.clone();
    let mut before: Option<HistorySample<L>> = None;
    let mut reached = 0.0;
    let mut next_step = None;
    for (index, dwell) in dwells.iter().enumerate() {
        let part = dwell.seconds - reached;
        let first = next_step.map(|seconds: f64| (seconds / part).min(1.0));
        let next = hot.advance_with_step(around, Lanes::splat(part), first, &mut |sample| {
            if let Some(from) = &before {
                trunk.step(from, &sample);
            }
            before = Some(sample);
        })?;
        next_step = Some(next * part);
        reached = dwell.seconds;
        if !dwell.cools {
            done(index, &trunk, None);
            continue;
        }
        let mut branch = trunk.clone();
        (cold.state, cold.clock) = (hot.state, hot.clock);
        let mut last = before;
        cold.cool_until_inactive(dryer.cooling.stages(), &mut |sample| {
            if let Some(from) = &last {
                branch.step(from, &sample);
            }
            last = Some(sample);
        })?;
        done(index, &trunk, Some(&branch));
    }
    Ok(Effort {
        accepted: hot.effort.accepted + cold.effort.accepted,
        rejected: hot.effort.rejected + cold.effort.rejected,
    })
}
