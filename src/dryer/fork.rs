//! Many dwells of a one-zone dryer at the price of a few.
//!
//! A belt that runs slower only stays longer in the same heat. So the hot part is marched once, to the longest
//! dwell, and at each shorter one a cooling tail is forked off, from the state between two steps (cubic Hermite, which is
//! as exact as the steps themselves). Dryers of several zones cannot share it: there a slower belt stretches every zone.

use super::error::{check_case, check_dryer, check_stack};
use super::journey::{Journey, in_zone};
use super::lay::Grid;
use super::{Case, Dryer, HistoryError, Sample, Stack, World};
use crate::numerics::Lanes;
use crate::numerics::march::{Effort, NODES, State, Tolerance, zeros};
use crate::quantity::{FieldError, Problem};

/// What is followed along the way, and copied where the way forks.
pub trait Follow<const L: usize>: Clone {
    /// Goes from one sample to the next; a cubic with their rates holds in between.
    fn step(&mut self, from: &Sample<L>, to: &Sample<L>);
}

/// Follows `start` through a one-zone dryer at each of `dwells` (s, rising) and through the cooling after it, set
/// temperatures and worlds side by side; calls `done` with each dwell's index.
///
/// # Errors
/// [`HistoryError`]; a dryer of several zones.
pub fn forked<const L: usize, F: Follow<L>>(
    stack: &Stack,
    dryer: &Dryer,
    sets: [f64; L],
    worlds: &[World; L],
    dwells: &[f64],
    tolerance: Tolerance,
    start: &F,
    mut done: impl FnMut(usize, F),
) -> Result<Effort, HistoryError> {
    let ([zone], Some(&longest)) = (dryer.zones.as_slice(), dwells.last()) else {
        let count = dryer.zones.len().to_string();
        let problem = Problem::OutOfRange { min: 1.0, max: 1.0, unit: "1".into() };
        return Err(FieldError::new("zones", count, problem).into());
    };
    check_stack(stack)?;
    check_dryer(dryer)?;
    for (set, world) in sets.into_iter().zip(worlds) {
        check_case(&Case { set, belt: zone.length / longest, world: *world }, dryer)?;
    }
    let belt = &dryer.belt;
    let under = [belt.heat_capacity, belt.contact, belt.enters];
    let mut hot = Journey::start(stack, worlds, under, Grid::SHIPPED, tolerance);
    let mut cold = hot.clone();
    let mut trunk = start.clone();
    let mut before: Option<(f64, State<L>, State<L>, Sample<L>)> = None;
    let mut next = 0;
    let mut failed = None;
    let around = in_zone(stack, dryer, zone, Lanes(sets), worlds);
    let chain = hot.chain.clone();
    hot.go(around, Lanes::splat(longest), |step, sample| {
        if let Some((passed, state, rates, from)) = &before {
            while let Some(&dwell) = dwells.get(next)
                && dwell <= longest * step.passed * (1.0 + 1e-12)
                && failed.is_none()
            {
                let length = longest * (step.passed - passed);
                let at = ((dwell - longest * passed) / length).clamp(0.0, 1.0);
                let between = Between { chain_count: chain.count, borders: chain.wet.len(), at, length };
                let (there, rates) = between.state([state, rates], [step.state, step.rates]);
                let sample = chain.sample(Lanes::splat(dwell), &there, &rates);
                let mut branch = trunk.clone();
                branch.step(from, &sample);
                cold.state = there;
                cold.clock = Lanes::splat(dwell);
                let mut last = sample;
                let cooled = cold.rest(dryer.cooling.rests(), |sample| {
                    branch.step(&last, &sample);
                    last = sample;
                });
                match cooled {
                    Ok(()) => done(next, branch),
                    Err(error) => failed = Some(error),
                }
                next += 1;
            }
            trunk.step(from, &sample);
        }
        before = Some((step.passed, *step.state, *step.rates, sample));
    })?;
    match failed {
        Some(error) => Err(error),
        None => Ok(Effort {
            accepted: hot.effort.accepted + cold.effort.accepted,
            rejected: hot.effort.rejected + cold.effort.rejected,
        }),
    }
}

/// A place between two steps.
struct Between {
    chain_count: usize,
    borders: usize,
    /// Share of the step that has passed.
    at: f64,
    /// Length of the step, s.
    length: f64,
}

impl Between {
    fn state<const L: usize>(
        &self,
        [start, start_rates]: [&State<L>; 2],
        [end, end_rates]: [&State<L>; 2],
    ) -> (State<L>, State<L>) {
        let (at, rest, length) = (self.at, 1.0 - self.at, self.length);
        let [mut state, mut rates] = [zeros(); 2];
        let places = (0..self.chain_count).chain(NODES..NODES + self.borders);
        for i in places {
            let (t0, t1) = (start_rates[i] * length, end_rates[i] * length);
            state[i] = start[i] * ((1.0 + 2.0 * at) * rest * rest)
                + end[i] * (at * at * (3.0 - 2.0 * at))
                + t0 * (at * rest * rest)
                - t1 * (at * at * rest);
            let slope = (end[i] - start[i]) * (6.0 * at * rest)
                + t0 * (rest * (rest - 2.0 * at))
                + t1 * (at * (at - 2.0 * rest));
            rates[i] = slope * (1.0 / length);
        }
        (state, rates)
    }
}
