//! Time integration of a stiff initial-value problem, several cases side by side.
//!
//! A step of the Rosenbrock-W method ROS34PW2 (Rang & Angermann 2005, BIT 45, 761-787: four stages, order
//! three, L-stable, stiffly accurate, order kept with an inexact Jacobian) solves, for each stage,
//!
//! ```text
//! (1 / (gamma h) - J) u_i = f(y + sum_j a_ij u_j) + sum_j (c_ij / h) u_j
//! ```
//!
//! with the Jacobian of a band of blocks ([`block_band`](super::block_band)): no Newton iteration, no allocation
//! within a step. The coefficients are from memory in their published form, transformed as usual;
//! `tests/heat/march.rs` measures the order they give.
//!
//! Every lane has its own duration and takes the same step as a fraction of it, so that several belt speeds
//! are integrated side by side.
//!
//! **Decision:** integrate with ROS34PW2 and the block-tridiagonal Jacobian, lanes side by side for drift cases
//! and belt speeds.
//! **Because:** it needs no Newton iteration and no allocation, and the lanes share one step.
//! **Measured:** half of an integration's time goes into the rates, most of that into the vapour over each
//! cloth, which fewer nodes do not make cheaper (by 2026-11-25, machine not recorded; `cargo xtask bench`
//! compares it with general solvers).
//! **Reconsider when:** a general solver beats it in that bench, or a node couples to others than its
//! neighbours.

use super::Lanes;
use super::block_band::BandFactors;
pub use super::block_band::{Block, Jacobian, NODES, StateVector, UNKNOWNS, zeros};
use std::ops::Range;

/// Largest number of steps. The hardest of 10,000 soaked stacks drawn as `tests/heat/robust.rs` draws them took 2,756.
const MOST_STEPS: usize = 20_000;

const GAMMA: f64 = 0.435_866_521_508_459;
const A31: f64 = 1.419_217_317_455_765_2;
const A32: f64 = -0.259_232_211_672_969_8;
const M1: f64 = 4.184_760_482_319_164;
const M2: f64 = -0.285_192_017_355_495_43;
const M3: f64 = 2.294_280_360_279_042_7;
const C21: f64 = -4.588_560_720_558_084;
const C41: f64 = -6.368_179_200_128_36;
const C42: f64 = -6.795_620_944_466_837;
const C43: f64 = 2.870_098_604_331_055;
const E1: f64 = 0.277_749_947_647_971_23;
const E2: f64 = -1.403_239_895_175_998_6;
const E3: f64 = 1.772_630_127_667_551_6;
const E4: f64 = 0.5;

/// A system of ordinary differential equations with a block tridiagonal Jacobian.
pub trait System<const L: usize> {
    /// Number of nodes, at most [`NODES`].
    fn nodes(&self) -> usize;
    /// The nodes that hold water.
    fn wet(&self) -> Range<usize>;
    /// Computes the rate of change of every unknown, per second.
    fn rates(&self, state: &StateVector<L>, rates: &mut StateVector<L>);
    /// Computes the Jacobian of the rates. It may omit small terms: the method keeps its order. Entries that
    /// it does not write stay zero.
    fn jacobian(&self, state: &StateVector<L>, jacobian: &mut Jacobian<L>);
    /// Computes both at the same state; a system overrides it where that saves work.
    fn rates_and_jacobian(
        &self,
        state: &StateVector<L>,
        rates: &mut StateVector<L>,
        jacobian: &mut Jacobian<L>,
    ) {
        self.rates(state, rates);
        self.jacobian(state, jacobian);
    }
}

/// Accepted error of one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Root mean square over the temperatures, K.
    pub temperature: f64,
    /// Largest over the water of the nodes, kg per kg of dry cloth.
    pub water: f64,
}

/// Why an integration stopped before its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum IntegrationError {
    /// The rates are not finite, whatever the step size.
    NotFinite,
    /// The end was not reached within 20,000 steps.
    TooManySteps,
}

impl std::fmt::Display for IntegrationError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(match self {
            Self::NotFinite => {
                "the temperatures could not be computed: the equations gave a value that is not a number"
            }
            Self::TooManySteps => "the temperatures could not be computed within 20,000 time steps",
        })
    }
}

impl std::error::Error for IntegrationError {}

/// One accepted step, passed to the visitor of [`integrate`].
#[derive(Debug)]
pub struct AcceptedStep<'a, const L: usize> {
    /// Time at the end of the step, as a share of the duration, 0 to 1.
    pub passed: f64,
    /// Unknowns at the end of the step.
    pub state: &'a StateVector<L>,
    /// Their rates, per second.
    pub rates: &'a StateVector<L>,
}

/// Numbers of steps taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Effort {
    /// Steps accepted.
    pub accepted: usize,
    /// Steps repeated with a smaller size.
    pub rejected: usize,
}

/// Integrates `state` over `duration` (s, positive, lane by lane); calls `on_step` at the start and after
/// each step.
///
/// # Errors
/// [`IntegrationError`] if the rates are not finite or 20,000 steps do not reach the end.
pub fn integrate<const L: usize>(
    system: &impl System<L>,
    state: &mut StateVector<L>,
    duration: Lanes<L>,
    tolerance: Tolerance,
    mut on_step: impl FnMut(&AcceptedStep<'_, L>),
) -> Result<Effort, IntegrationError> {
    integrate_with_step(system, state, duration, tolerance, None, &mut on_step).map(|(effort, _)| effort)
}

/// Like [`integrate`], continuing from an earlier integration: starts with the step `first` (a share of the
/// duration) and returns the step that it would have taken next. The visitor is a trait object because a
/// generic one would compile this function into the page once for every caller.
///
/// # Errors
/// [`IntegrationError`] if the rates are not finite or 20,000 steps do not reach the end.
pub fn integrate_with_step<const L: usize>(
    system: &impl System<L>,
    state: &mut StateVector<L>,
    duration: Lanes<L>,
    tolerance: Tolerance,
    first: Option<f64>,
    on_step: &mut dyn FnMut(&AcceptedStep<'_, L>),
) -> Result<(Effort, f64), IntegrationError> {
    let nodes = system.nodes().min(NODES);
    let wet = system.wet().start.min(nodes)..system.wet().end.min(nodes);
    let mut work = BandFactors::new(nodes, wet.clone());
    let mut jacobian = Jacobian::zero(nodes);
    let [mut rates, mut stage, mut right] = [zeros::<L>(); 3];
    let [mut u1, mut u2, mut u3, mut u4] = [zeros::<L>(); 4];

    system.rates_and_jacobian(state, &mut rates, &mut jacobian);
    on_step(&AcceptedStep { passed: 0.0, state, rates: &rates });
    let mut effort = Effort::default();
    let mut passed = 0.0;
    let mut step = first.unwrap_or_else(|| first_step(&rates, nodes, duration, tolerance));
    // The last step is cut short by the end; the caller gets the step that was wanted.
    let mut wanted = step;
    let mut control = StepControl { previous_error: 1.0, previous_step: step };
    while passed < 1.0 {
        if effort.accepted + effort.rejected > MOST_STEPS {
            return Err(IntegrationError::TooManySteps);
        }
        // Stretch the last step by up to 1 % rather than leave a tiny one.
        wanted = step;
        if passed + step * 1.01 >= 1.0 {
            step = 1.0 - passed;
        }
        let per_time = (duration * step).recip();
        work.factor(&jacobian, per_time * (1.0 / GAMMA));

        work.solve(&jacobian, &rates, &mut u1);
        each(nodes, &wet, |i| stage[i] = state[i] + u1[i] * 2.0);
        system.rates(&stage, &mut right);
        each(nodes, &wet, |i| right[i] += u1[i] * per_time * C21);
        work.solve(&jacobian, &right, &mut u2);
        each(nodes, &wet, |i| stage[i] = state[i] + u1[i] * A31 + u2[i] * A32);
        system.rates(&stage, &mut right);
        each(nodes, &wet, |i| right[i] += (u2[i] * -M2 - u1[i] * M1) * per_time);
        work.solve(&jacobian, &right, &mut u3);
        each(nodes, &wet, |i| stage[i] = state[i] + u1[i] * M1 + u2[i] * M2 + u3[i] * M3);
        system.rates(&stage, &mut right);
        each(nodes, &wet, |i| right[i] += (u1[i] * C41 + u2[i] * C42 + u3[i] * C43) * per_time);
        work.solve(&jacobian, &right, &mut u4);

        // Root mean square over the temperatures, so that the film's fast surface node alone does not set the
        // step of the whole stack; maximum over the water. The worst lane decides.
        let mut squares = Lanes::ZERO;
        let mut largest = Lanes::ZERO;
        each(nodes, &wet, |i| {
            let missed = u1[i] * E1 + u2[i] * E2 + u3[i] * E3 + u4[i] * E4;
            stage[i] += u4[i];
            if i < NODES {
                squares += missed * missed;
            } else {
                largest = largest.max_or_nan(missed.abs());
            }
        });
        let temperature = (squares * (1.0 / nodes as f64)).sqrt().largest_or_nan();
        let water = largest.largest_or_nan();
        if !(temperature + water).is_finite() {
            // A stage left the valid range: retry with a tenth of the step.
            effort.rejected += 1;
            step *= 0.1;
            if step < 1e-12 {
                return Err(IntegrationError::NotFinite);
            }
            continue;
        }
        let error = (temperature / tolerance.temperature).max(water / tolerance.water).max(1e-4);
        if error > 1.0 {
            effort.rejected += 1;
            step *= (0.9 * error.powf(-1.0 / 3.0)).clamp(0.15, 0.9);
            continue;
        }
        effort.accepted += 1;
        passed = if passed + step >= 1.0 - 1e-14 { 1.0 } else { passed + step };
        each(nodes, &wet, |i| state[i] = stage[i]);
        system.rates_and_jacobian(state, &mut rates, &mut jacobian);
        on_step(&AcceptedStep { passed, state, rates: &rates });
        step *= control.growth(error, step);
        wanted = wanted.max(step);
    }
    Ok((effort, wanted))
}

/// Step control halfway between the elementary one and Gustafsson's, which extrapolates the trend of the
/// error over the last step (Hairer & Wanner, Solving ODEs II, IV.8): after a jump of the surroundings the
/// step grows many times over, and the elementary control lags behind. Exponents, safety factor and limits
/// are fitted to transits through dryers.
struct StepControl {
    previous_error: f64,
    previous_step: f64,
}

impl StepControl {
    /// Factor of the next step after one of this size was accepted with this error, in units of the
    /// tolerance.
    #[inline(always)]
    fn growth(&mut self, error: f64, step: f64) -> f64 {
        let trend = self.previous_error.powf(0.35 / 3.0) * (step / self.previous_step).sqrt();
        let growth = 0.85 * error.powf(-0.95 / 3.0) * trend;
        (self.previous_error, self.previous_step) = (error, step);
        growth.clamp(0.2, 4.0)
    }
}

/// Calls `change` with the index of every unknown: temperatures first, then the water of the wet nodes.
#[inline(always)]
fn each(nodes: usize, wet: &Range<usize>, mut change: impl FnMut(usize)) {
    for i in 0..nodes.min(NODES) {
        change(i);
    }
    for i in wet.start..wet.end.min(NODES) {
        change(NODES + i);
    }
}

/// A first step, as a share of the duration, in which no temperature moves by more than 25 tolerances.
fn first_step<const L: usize>(
    rates: &StateVector<L>,
    nodes: usize,
    duration: Lanes<L>,
    tolerance: Tolerance,
) -> f64 {
    let fastest = rates[..nodes].iter().map(|rate| (rate.abs() * duration).largest()).fold(1e-9, f64::max);
    (25.0 * tolerance.temperature / fastest).clamp(1e-9, 0.1)
}
