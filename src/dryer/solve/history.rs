//! How hot each part of the stack gets, and when.

use super::HistoryError;
use super::error::{check_air, check_case, check_dryer, check_stack};
use super::surroundings::flash_surroundings;
use super::transit::{Transit, at_entry, cooling_tolerance, stages};
use crate::dryer::machine::{Cooling, DriftCase, Dryer, FlashUnit};
use crate::dryer::stack::{Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{Effort, Tolerance};
use crate::quantity::Bound;

/// The tolerance of a march: peaks within 0.1 K and fused shares within 0.0015 of the converged march
/// (`tests/heat/history.rs`).
pub const TOLERANCE: Tolerance = Tolerance { temperature: 0.1, border: 3e-5 };

/// One case of a march: a setting and how the run differs from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case {
    /// Set temperature, K.
    pub set: f64,
    /// Belt speed, m/s.
    pub belt: f64,
    /// How the run differs.
    pub drift: DriftCase,
}

/// State of the stack at one moment, lane by lane. Rates are per second.
#[derive(Clone, Copy, Debug)]
pub struct HistorySample<const L: usize> {
    /// Time since it entered, s.
    pub time: Lanes<L>,
    /// Film surface, K, and its rate.
    pub film_top: [Lanes<L>; 2],
    /// Film bottom, K, and its rate.
    pub film_bottom: [Lanes<L>; 2],
    /// Face of the printed cloth, K, and its rate.
    pub cloth_face: [Lanes<L>; 2],
    /// Mean of the printed cloth, K, and its rate.
    pub cloth: [Lanes<L>; 2],
    /// Water in the printed cloth, kg/kg.
    pub water: Lanes<L>,
}

/// Temperature and its rate at one place of the stack.
pub type Place<const L: usize> = fn(&HistorySample<L>) -> [Lanes<L>; 2];

/// Parts of a solver step in which a rate along the history is followed.
const PARTS: u32 = 3;

/// Temperatures and water from the dryer's mouth until the piece is cool.
#[derive(Clone, Debug)]
pub struct History<const L: usize> {
    /// Samples in the order of time; the solver's own steps, between which a cubic with the given rates
    /// holds.
    pub samples: Vec<HistorySample<L>>,
    /// When it leaves the heat for the last time, s.
    pub exit_time: Lanes<L>,
    /// What it took to compute.
    pub effort: Effort,
}

impl<const L: usize> History<L> {
    /// One lane of it.
    #[must_use]
    pub fn lane(&self, lane: usize) -> History<1> {
        let of = |lanes: Lanes<L>| Lanes([lanes[lane]]);
        let sample = |sample: &HistorySample<L>| HistorySample {
            time: of(sample.time),
            film_top: sample.film_top.map(of),
            film_bottom: sample.film_bottom.map(of),
            cloth_face: sample.cloth_face.map(of),
            cloth: sample.cloth.map(of),
            water: of(sample.water),
        };
        let samples = self.samples.iter().map(sample).collect();
        History { samples, exit_time: of(self.exit_time), effort: self.effort }
    }

    /// Highest temperature of the film's surface, K.
    #[must_use]
    pub fn film_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.film_top)
    }

    /// Highest temperature of the film's bottom, K.
    #[must_use]
    pub fn film_bottom_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.film_bottom)
    }

    /// Highest temperature of the cloth's face, K.
    #[must_use]
    pub fn cloth_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.cloth_face)
    }

    /// Temperatures at `place` at a moment, s, on the cubic between two samples; nothing outside the history.
    /// Lanes whose clocks differ are read by the first lane's.
    #[must_use]
    pub fn at(&self, place: Place<L>, seconds: f64) -> Option<Lanes<L>> {
        let after = self.samples.iter().position(|sample| sample.time[0] >= seconds)?;
        let (from, to) = (self.samples.get(after.max(1) - 1)?, self.samples.get(after.max(1))?);
        let length = to.time - from.time;
        let at = if length[0] > 0.0 { (seconds - from.time[0]) / length[0] } else { 1.0 };
        Some(hermite(place(from), place(to), length, at))
    }

    /// Calls `visit` with the length and the middle temperature of each part of each step.
    pub fn for_each_substep(&self, place: Place<L>, mut visit: impl FnMut(Lanes<L>, Lanes<L>)) {
        for pair in self.samples.windows(2) {
            if let [from, to] = pair {
                for_each_substep(from, to, place, &mut visit);
            }
        }
    }

    fn peak(&self, place: Place<L>) -> Lanes<L> {
        let mut peak = self.samples.iter().map(|sample| place(sample)[0]).fold(Lanes::ZERO, Lanes::max);
        // Inner layers are hottest a moment after the exit, between two samples.
        self.for_each_substep(place, |_, temperature| peak = peak.max(temperature));
        peak
    }
}

/// Calls `visit` with the length and the middle temperature of each part of one step: cubic Hermite in
/// between.
pub fn for_each_substep<const L: usize>(
    from: &HistorySample<L>,
    to: &HistorySample<L>,
    place: Place<L>,
    mut visit: impl FnMut(Lanes<L>, Lanes<L>),
) {
    let length = to.time - from.time;
    if length.largest() <= 0.0 {
        return;
    }
    let (start, end) = (place(from), place(to));
    let parts = f64::from(PARTS);
    for part in 0..PARTS {
        let at = (f64::from(part) + 0.5) / parts;
        visit(length * (1.0 / parts), hermite(start, end, length, at));
    }
}

/// The cubic through two values with their rates, at a share of the way.
#[inline(always)]
fn hermite<const L: usize>(
    [start, start_rate]: [Lanes<L>; 2],
    [end, end_rate]: [Lanes<L>; 2],
    length: Lanes<L>,
    at: f64,
) -> Lanes<L> {
    let rest = 1.0 - at;
    start * ((1.0 + 2.0 * at) * rest * rest)
        + end * (at * at * (3.0 - 2.0 * at))
        + (start_rate * (at * rest * rest) - end_rate * (at * at * rest)) * length
}

/// Marches the stack through every zone of the dryer, `passes` times, cooling in between and after.
///
/// # Errors
/// [`HistoryError`] where the stack, the dryer or the setting leave the range in which the equations hold.
pub fn history<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
    tolerance: Tolerance,
) -> Result<History<L>, HistoryError> {
    history_on(StackGrid::of(stack), stack, dryer, cases, passes, tolerance)
}

/// The same on another grid, for those who ask how far the shipped one is off.
///
/// # Errors
/// As [`history`].
pub fn history_on<const L: usize>(
    grid: StackGrid,
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
    tolerance: Tolerance,
) -> Result<History<L>, HistoryError> {
    check_stack(stack)?;
    check_dryer(dryer)?;
    for case in cases {
        check_case(case, dryer)?;
    }
    let mut transit = at_entry(stack, dryer, cases, grid, tolerance);
    let mut samples = room();
    let mut exit_time = Lanes::ZERO;
    for stage in stages(stack, dryer, cases, passes) {
        if let Some(belt) = stage.belt {
            transit.change_belt(belt);
        }
        transit.tolerance = if stage.heats { tolerance } else { cooling_tolerance(tolerance) };
        transit.advance(stage.around, stage.seconds, &mut |sample| samples.push(sample))?;
        if stage.heats {
            exit_time = transit.clock;
        }
    }
    Ok(History { samples, exit_time, effort: transit.effort })
}

/// Marches a film on a pallet under a flash unit for `seconds`, then until it is cool.
///
/// # Errors
/// As [`history`].
pub fn flash<const L: usize>(
    stack: &Stack,
    unit: &FlashUnit,
    seconds: Lanes<L>,
    tolerance: Tolerance,
) -> Result<History<L>, HistoryError> {
    let mut flat = stack.clone();
    flat.back = None;
    check_stack(&flat)?;
    check_air(unit.air)?;
    for second in seconds.0 {
        Bound { field: "seconds", min: 0.05, max: 3600.0, unit: "s" }.check(second)?;
    }
    let under_it = [unit.pallet_heat_capacity, stack.gap_conductance, unit.pallet];
    let mut transit =
        Transit::start(&flat, &[DriftCase::NOMINAL; L], under_it, StackGrid::of(&flat), tolerance);
    let mut samples = room();
    transit.advance(flash_surroundings(&flat, unit), seconds, &mut |sample| samples.push(sample))?;
    let exit_time = transit.clock;
    transit.cool(Cooling::Open.stages(), &mut |sample| samples.push(sample))?;
    Ok(History { samples, exit_time, effort: transit.effort })
}

/// Room for the usual transit, so that the march itself does not allocate.
fn room<const L: usize>() -> Vec<HistorySample<L>> {
    Vec::with_capacity(192)
}
