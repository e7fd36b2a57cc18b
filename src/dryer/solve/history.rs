//! The temperature history of a stack.

use super::HistoryError;
use super::error::{check_air, check_case, check_dryer, check_stack};
use super::surroundings::flash_surroundings;
use super::transit::{Transit, at_entry, cooling_tolerance, stages};
use crate::dryer::machine::{Cooling, DriftCase, Dryer, FlashUnit};
use crate::dryer::stack::{Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{Effort, Tolerance};
use crate::quantity::Bound;

/// The tolerance used for answers: peaks within 0.1 K and fused shares within 0.0015 of the converged
/// solution (`tests/heat/history_laws.rs`).
pub const TOLERANCE: Tolerance = Tolerance { temperature: 0.1, water: 3e-4 };

/// One case to compute: the setting of the dryer and the drift of the run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case {
    /// Set temperature, K.
    pub set: f64,
    /// Belt speed, m/s.
    pub belt: f64,
    /// Drift of the run.
    pub drift: DriftCase,
}

/// State of the stack at one moment, lane by lane: temperatures, K, each with its rate, K/s.
#[derive(Clone, Copy, Debug)]
pub struct HistorySample<const L: usize> {
    /// Time since the entry, s.
    pub time: Lanes<L>,
    /// Top of the film.
    pub film_top: [Lanes<L>; 2],
    /// Bottom of the film.
    pub film_bottom: [Lanes<L>; 2],
    /// Face of the printed cloth.
    pub cloth_face: [Lanes<L>; 2],
    /// Mean of the printed cloth.
    pub cloth: [Lanes<L>; 2],
    /// Water in the printed cloth, kg per kg of dry cloth.
    pub water: Lanes<L>,
    /// Water at the face of the printed cloth, under the film, kg per kg of dry cloth.
    pub face_water: Lanes<L>,
}

/// Reads temperature and rate at one place of the stack, e.g. `|sample| sample.film_bottom`.
pub type Place<const L: usize> = fn(&HistorySample<L>) -> [Lanes<L>; 2];

/// Parts into which a time step is divided when a rate is integrated along the history.
const PARTS: u32 = 3;

/// Temperatures and water of a stack from its entry until it is cool.
#[derive(Clone, Debug)]
pub struct History<const L: usize> {
    /// Samples in order of time, one for each time step of the solver. Between two, the cubic through their
    /// temperatures and rates holds.
    pub samples: Vec<HistorySample<L>>,
    /// Time at which it leaves the last zone for the last time, s.
    pub exit_time: Lanes<L>,
    /// Time steps taken.
    pub effort: Effort,
}

impl<const L: usize> History<L> {
    /// The history of one lane.
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
            face_water: of(sample.face_water),
        };
        let samples = self.samples.iter().map(sample).collect();
        History { samples, exit_time: of(self.exit_time), effort: self.effort }
    }

    /// Peak temperature of the film's top, K.
    #[must_use]
    pub fn film_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.film_top)
    }

    /// Peak temperature of the film's bottom, K.
    #[must_use]
    pub fn film_bottom_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.film_bottom)
    }

    /// Peak temperature of the cloth's face, K.
    #[must_use]
    pub fn cloth_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.cloth_face)
    }

    /// Temperatures at `place` after `seconds`, K; `None` outside the history. The first lane's clock counts
    /// for all lanes.
    #[must_use]
    pub fn at(&self, place: Place<L>, seconds: f64) -> Option<Lanes<L>> {
        let after = self.samples.iter().position(|sample| sample.time[0] >= seconds)?;
        let (from, to) = (self.samples.get(after.max(1) - 1)?, self.samples.get(after.max(1))?);
        let length = to.time - from.time;
        let at = if length[0] > 0.0 { (seconds - from.time[0]) / length[0] } else { 1.0 };
        Some(hermite(place(from), place(to), length, at))
    }

    /// Calls `visit` with the duration (s) and the middle temperature (K) of every part of every time step.
    pub fn for_each_substep(&self, place: Place<L>, mut visit: impl FnMut(Lanes<L>, Lanes<L>)) {
        for pair in self.samples.windows(2) {
            if let [from, to] = pair {
                for_each_substep(from, to, place, &mut visit);
            }
        }
    }

    fn peak(&self, place: Place<L>) -> Lanes<L> {
        let mut peak = self.samples.iter().map(|sample| place(sample)[0]).fold(Lanes::ZERO, Lanes::max);
        // Inner layers peak shortly after the exit, between two samples.
        self.for_each_substep(place, |_, temperature| peak = peak.max(temperature));
        peak
    }
}

/// Calls `visit` with the duration (s) and the middle temperature (K) of every part of the step between two
/// samples, on the cubic through their temperatures and rates.
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

/// How far the cubic between two samples may pass beyond both, K. A film's peak between two samples passes by less
/// in each of 2,000 random histories; where a node falls dry its rate jumps, and the cubic would pass by up to a
/// hundred.
const PAST_BOTH: f64 = 2.0;

/// The cubic through two values and their rates, at the share `at` of the step.
#[inline(always)]
fn hermite<const L: usize>(
    [start, start_rate]: [Lanes<L>; 2],
    [end, end_rate]: [Lanes<L>; 2],
    length: Lanes<L>,
    at: f64,
) -> Lanes<L> {
    let rest = 1.0 - at;
    let cubic = start * ((1.0 + 2.0 * at) * rest * rest)
        + end * (at * at * (3.0 - 2.0 * at))
        + (start_rate * (at * rest * rest) - end_rate * (at * at * rest)) * length;
    cubic.max(start.min(end) - PAST_BOTH).min(start.max(end) + PAST_BOTH)
}

/// Computes the history of a stack through every zone of the dryer, `passes` times, with cooling after each
/// pass.
///
/// The cases are the lanes of one integration. Two cases of a cotton tee at 3 m/min, without drift and in the
/// cold corner:
///
/// ```
/// use whitehold::dryer::{Case, DriftCase, Dryer, Film, Stack, TOLERANCE, history};
/// use whitehold::library::starter;
/// use whitehold::quantity::{Celsius, MetresPerMinute, Share};
/// use whitehold::textile::{Construction, Fibre};
///
/// let library = starter().expect("the starter library");
/// let dryer = Dryer::from_record(library.dryer("long-kiln").expect("a dryer")).expect("a sound record");
/// let tee = library.fabric(&[(Fibre::Cotton, 1.0)].into(), Construction::Jersey, 180.0).expect("a jersey");
/// let stack = Stack::garment(Film { thickness: 100e-6, density: Film::DENSITY }, &tee, Share(0.65));
/// let case = |drift| Case {
///     set: Celsius(165.0).kelvin(),
///     belt: MetresPerMinute(3.0).metres_per_second(),
///     drift,
/// };
/// let cases = [case(DriftCase::NOMINAL), case(DriftCase::cold(&dryer.drift))];
/// let history = history(&stack, &dryer, &cases, 1, TOLERANCE)?;
/// let peak = history.film_bottom_peak();
/// assert!(peak[1] < peak[0] && peak[0] < dryer.hottest_air(Celsius(165.0).kelvin()));
/// # Ok::<(), whitehold::dryer::HistoryError>(())
/// ```
///
/// # Errors
/// [`HistoryError::Outside`] if the stack, the dryer or a case lies outside the range in which the equations hold;
/// [`HistoryError::Integration`] if the time steps fail.
pub fn history<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
    tolerance: Tolerance,
) -> Result<History<L>, HistoryError> {
    history_on(StackGrid::of(stack), stack, dryer, cases, passes, tolerance)
}

/// Like [`history`], on a given grid, to measure the error of the usual one.
///
/// # Errors
/// [`HistoryError::Outside`] if the stack, the dryer or a case lies outside the range in which the equations hold;
/// [`HistoryError::Integration`] if the time steps fail.
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
    let mut samples = sample_buffer();
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

/// Computes the history of a film on a pallet under a flash unit for `seconds`, then until it is cool. The
/// back of the stack, and a board in its place, are left out.
///
/// # Errors
/// [`HistoryError::Outside`] if the stack, the air of the unit or the time lies outside the range in which the equations
/// hold; [`HistoryError::Integration`] if the time steps fail.
pub fn flash<const L: usize>(
    stack: &Stack,
    unit: &FlashUnit,
    seconds: Lanes<L>,
    tolerance: Tolerance,
) -> Result<History<L>, HistoryError> {
    let mut flat = stack.clone();
    (flat.back, flat.board) = (None, None);
    check_stack(&flat)?;
    check_air(unit.air)?;
    for second in seconds.0 {
        Bound { field: "seconds", min: 0.05, max: 3600.0, unit: "s" }.check(second)?;
    }
    let under_it = [unit.pallet_heat_capacity, stack.gap_conductance, unit.pallet];
    let mut transit =
        Transit::start(&flat, &[DriftCase::NOMINAL; L], under_it, StackGrid::of(&flat), tolerance);
    let mut samples = sample_buffer();
    transit.advance(flash_surroundings(&flat, unit), seconds, &mut |sample| samples.push(sample))?;
    let exit_time = transit.clock;
    transit.cool(Cooling::Open.stages(), &mut |sample| samples.push(sample))?;
    Ok(History { samples, exit_time, effort: transit.effort })
}

/// Space for the usual number of time steps, so that the integration itself does not allocate.
fn sample_buffer<const L: usize>() -> Vec<HistorySample<L>> {
    Vec::with_capacity(192)
}
