//! The integrator: a stiff initial-value problem in time, several cases side by side.
//!
//! Heat conducted through a stack couples each node to its neighbours only, so the Jacobian of the temperatures
//! is tridiagonal. Water that leaves a cloth takes its heat from every node of that cloth at a rate that depends
//! on their mean: one extra unknown a cloth, a narrow border round the band. With `j` the change of such a rate,
//!
//! ```text
//! T' = band T + sum_k draw_k j_k,     w_k' = gain_k j_k,     j_k = pull_k . T + slope_k w_k
//! ```
//!
//! A step of the Rosenbrock-W method ROS34PW2 (Rang & Angermann 2005, BIT 45, 761-787: four stages, order three,
//! L-stable, stiffly accurate, order kept with an inexact Jacobian) solves, for each stage,
//!
//! ```text
//! (1 / (gamma h) - J) u_i = f(y + sum_j a_ij u_j) + sum_j (c_ij / h) u_j
//! ```
//!
//! No Newton iteration, no allocation. Coefficients are from memory in their published form and transformed as
//! usual; `tests/heat/march.rs` measures the order they give.
//!
//! Lanes share the step as a fraction of their own duration, so that belt speeds are integrated side by side.
//!
//! **Decision:** integrate with ROS34PW2 and the exact bordered-tridiagonal Jacobian, lanes side by side for
//! drift cases and belt speeds.
//! **Because:** it needs no Newton iteration and no allocation, and the lanes share one step.
//! **Measured:** half of an integration's time goes into the rates, most of that into the vapour over each
//! cloth, which fewer nodes do not make cheaper (by 2026-11-25, machine not recorded; `cargo xtask bench`
//! compares it with general solvers).
//! **Reconsider when:** a general solver beats it in that bench, or the Jacobian stops being tridiagonal but
//! for its border.

use super::Lanes;

/// Most temperature nodes of a chain.
pub const NODES: usize = 80;
/// Most bordering unknowns.
pub const BORDERS: usize = 2;
/// Most unknowns.
pub const UNKNOWNS: usize = NODES + BORDERS;

/// Steps after which a march gives up. The hardest of 20,000 random journeys took 358 (`tests/heat/robust.rs`).
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

/// All unknowns of a march: temperatures first, then the bordering unknowns.
pub type StateVector<const L: usize> = [Lanes<L>; UNKNOWNS];

/// A state of zeros.
#[must_use]
pub const fn zeros<const L: usize>() -> StateVector<L> {
    [Lanes::ZERO; UNKNOWNS]
}

/// One bordering unknown's part in the Jacobian.
#[derive(Clone, Debug)]
pub struct Border<const L: usize> {
    /// Change of each temperature's rate with `j`.
    pub draw: Vec<Lanes<L>>,
    /// Change of `j` with each temperature.
    pub pull: Vec<Lanes<L>>,
    /// Change of `j` with the bordering unknown.
    pub slope: Lanes<L>,
    /// Change of the bordering unknown's rate with `j`.
    pub gain: Lanes<L>,
}

/// Jacobian: a tridiagonal band with a narrow border.
#[derive(Clone, Debug)]
pub struct Jacobian<const L: usize> {
    /// `below[i]`: change of rate `i` with temperature `i - 1`.
    pub below: Vec<Lanes<L>>,
    /// `diagonal[i]`: change of rate `i` with temperature `i`.
    pub diagonal: Vec<Lanes<L>>,
    /// `above[i]`: change of rate `i` with temperature `i + 1`.
    pub above: Vec<Lanes<L>>,
    /// The border.
    pub border: Vec<Border<L>>,
}

impl<const L: usize> Jacobian<L> {
    /// All zero, for so many temperatures and bordering unknowns.
    #[must_use]
    pub fn zero(nodes: usize, borders: usize) -> Self {
        let row = || vec![Lanes::ZERO; nodes];
        let border = || Border { draw: row(), pull: row(), slope: Lanes::ZERO, gain: Lanes::ZERO };
        Self {
            below: row(),
            diagonal: row(),
            above: row(),
            border: std::iter::repeat_with(border).take(borders).collect(),
        }
    }
}

/// What marches.
pub trait System<const L: usize> {
    /// Temperatures, at most [`NODES`].
    fn nodes(&self) -> usize;
    /// Bordering unknowns, at most [`BORDERS`].
    fn borders(&self) -> usize;
    /// Rate of change of every unknown.
    fn rates(&self, state: &StateVector<L>, rates: &mut StateVector<L>);
    /// Jacobian of the rates; may leave small terms out. What it does not write stays zero.
    fn jacobian(&self, state: &StateVector<L>, jacobian: &mut Jacobian<L>);
    /// Both at the same state, for a system that saves work by it.
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

/// How exact a march must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Error of the temperatures in one step, root mean square, K.
    pub temperature: f64,
    /// Error of a bordering unknown in one step, in its unit.
    pub border: f64,
}

/// A march that could not be finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum IntegrationError {
    /// The equations gave a value that is not a number.
    NotFinite,
    /// More steps than any sound case needs.
    TooManySteps,
}

impl std::fmt::Display for IntegrationError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(match self {
            Self::NotFinite => "the march met a value that is not a number",
            Self::TooManySteps => "the march needed more steps than it may take",
        })
    }
}

impl std::error::Error for IntegrationError {}

/// One accepted step, handed to the caller of [`integrate`].
#[derive(Debug)]
pub struct AcceptedStep<'a, const L: usize> {
    /// Share of the duration that has passed at its end, 0 to 1.
    pub passed: f64,
    /// Unknowns at its end.
    pub state: &'a StateVector<L>,
    /// Their rates there.
    pub rates: &'a StateVector<L>,
}

/// Counts of a march.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Effort {
    /// Steps accepted.
    pub accepted: usize,
    /// Steps tried again smaller.
    pub rejected: usize,
}

/// Marches `state` over `duration` (s, lane by lane, positive), calling `on_step` at the start and after each step.
///
/// # Errors
/// [`IntegrationError`] where the rates are not finite or the steps do not end.
pub fn integrate<const L: usize>(
    system: &impl System<L>,
    state: &mut StateVector<L>,
    duration: Lanes<L>,
    tolerance: Tolerance,
    mut on_step: impl FnMut(&AcceptedStep<'_, L>),
) -> Result<Effort, IntegrationError> {
    integrate_with_step(system, state, duration, tolerance, None, &mut on_step).map(|(effort, _)| effort)
}

/// The same where a march goes on from another: starts with the step `first` (a share of the duration) and returns the
/// step that it would have taken next. The visitor is called through a pointer: compiled anew for every visitor, the march
/// would stand in the page many times.
///
/// # Errors
/// As [`integrate`].
pub fn integrate_with_step<const L: usize>(
    system: &impl System<L>,
    state: &mut StateVector<L>,
    duration: Lanes<L>,
    tolerance: Tolerance,
    first: Option<f64>,
    on_step: &mut dyn FnMut(&AcceptedStep<'_, L>),
) -> Result<(Effort, f64), IntegrationError> {
    let nodes = system.nodes().min(NODES);
    let borders = system.borders().min(BORDERS);
    let mut work = Factors::new(nodes, borders);
    let mut jacobian = Jacobian::zero(nodes, borders);
    let [mut rates, mut stage, mut right] = [zeros::<L>(); 3];
    let [mut u1, mut u2, mut u3, mut u4] = [zeros::<L>(); 4];

    system.rates_and_jacobian(state, &mut rates, &mut jacobian);
    on_step(&AcceptedStep { passed: 0.0, state, rates: &rates });
    let mut effort = Effort::default();
    let mut passed = 0.0;
    let mut step = first.unwrap_or_else(|| first_step(&rates, nodes, duration, tolerance));
    // A step cut short by the end says nothing of the step that would have been taken.
    let mut wanted = step;
    let (mut previous_error, mut previous_step) = (1.0_f64, step);
    while passed < 1.0 {
        if effort.accepted + effort.rejected > MOST_STEPS {
            return Err(IntegrationError::TooManySteps);
        }
        // A sliver left at the end would cost a step of its own.
        wanted = step;
        if passed + step * 1.01 >= 1.0 {
            step = 1.0 - passed;
        }
        let per_time = (duration * step).recip();
        work.factor(&jacobian, per_time * (1.0 / GAMMA));

        work.solve(&jacobian, &rates, &mut u1);
        each(nodes, borders, |i| stage[i] = state[i] + u1[i] * 2.0);
        system.rates(&stage, &mut right);
        each(nodes, borders, |i| right[i] += u1[i] * per_time * C21);
        work.solve(&jacobian, &right, &mut u2);
        each(nodes, borders, |i| stage[i] = state[i] + u1[i] * A31 + u2[i] * A32);
        system.rates(&stage, &mut right);
        each(nodes, borders, |i| right[i] += (u2[i] * -M2 - u1[i] * M1) * per_time);
        work.solve(&jacobian, &right, &mut u3);
        each(nodes, borders, |i| stage[i] = state[i] + u1[i] * M1 + u2[i] * M2 + u3[i] * M3);
        system.rates(&stage, &mut right);
        each(nodes, borders, |i| right[i] += (u1[i] * C41 + u2[i] * C42 + u3[i] * C43) * per_time);
        work.solve(&jacobian, &right, &mut u4);

        // Root mean square over the temperatures, so that a film's fast surface, which forgets, does not set the pace for
        // the whole stack; the largest of the bordering unknowns. The worst lane counts.
        let mut squares = Lanes::ZERO;
        let mut largest = Lanes::ZERO;
        each(nodes, borders, |i| {
            let missed = u1[i] * E1 + u2[i] * E2 + u3[i] * E3 + u4[i] * E4;
            stage[i] += u4[i];
            if i < NODES {
                squares += missed * missed;
            } else {
                largest = largest.max_or_nan(missed.abs());
            }
        });
        let temperature = (squares * (1.0 / nodes as f64)).sqrt().largest_or_nan();
        let border = largest.largest_or_nan();
        if !(temperature + border).is_finite() {
            // A stage that left the valid range: try much smaller, and give up only where that does not help.
            effort.rejected += 1;
            step *= 0.1;
            if step < 1e-12 {
                return Err(IntegrationError::NotFinite);
            }
            continue;
        }
        let error = (temperature / tolerance.temperature).max(border / tolerance.border).max(1e-4);
        if error > 1.0 {
            effort.rejected += 1;
            step *= (0.9 * error.powf(-1.0 / 3.0)).clamp(0.15, 0.9);
            continue;
        }
        effort.accepted += 1;
        passed = if passed + step >= 1.0 - 1e-14 { 1.0 } else { passed + step };
        each(nodes, borders, |i| state[i] = stage[i]);
        system.rates_and_jacobian(state, &mut rates, &mut jacobian);
        on_step(&AcceptedStep { passed, state, rates: &rates });
        // Halfway between the elementary control and Gustafsson's, which expects the error to go on changing as it did over
        // the last step (Hairer & Wanner, Solving ODEs II, IV.8): after a jump of the surroundings steps grow many times
        // over, and the elementary control lags behind. Exponents, safety and growth fitted to journeys through dryers.
        let trend = previous_error.powf(0.35 / 3.0) * (step / previous_step).sqrt();
        let change = 0.85 * error.powf(-0.95 / 3.0) * trend;
        (previous_error, previous_step) = (error, step);
        step *= change.clamp(0.2, 4.0);
        wanted = wanted.max(step);
    }
    Ok((effort, wanted))
}

/// Calls `change` with the place of every unknown: temperatures first, the borders behind them at [`NODES`].
#[inline(always)]
fn each(nodes: usize, borders: usize, mut change: impl FnMut(usize)) {
    for i in 0..nodes.min(NODES) {
        change(i);
    }
    for k in 0..borders.min(BORDERS) {
        change(NODES + k);
    }
}

/// A first step in which no temperature moves by more than some tolerances.
fn first_step<const L: usize>(
    rates: &StateVector<L>,
    nodes: usize,
    duration: Lanes<L>,
    tolerance: Tolerance,
) -> f64 {
    let fastest = rates[..nodes].iter().map(|rate| (rate.abs() * duration).largest()).fold(1e-9, f64::max);
    (25.0 * tolerance.temperature / fastest).clamp(1e-9, 0.1)
}

/// Factors of one step's matrix. The band is eliminated from both ends towards its middle, so that two chains of
/// operations run beside each other: what counts in one march is how long the processor waits for each result.
struct Factors<const L: usize> {
    shift: Lanes<L>,
    per_shift: Lanes<L>,
    pivot: Vec<Lanes<L>>,
    /// Coupling to the next node towards the middle, over the pivot.
    inward: Vec<Lanes<L>>,
    spread: Vec<Vec<Lanes<L>>>,
    /// Inverse of the border's own small matrix.
    small: [[Lanes<L>; BORDERS]; BORDERS],
    column: Vec<Lanes<L>>,
}

impl<const L: usize> Factors<L> {
    fn new(nodes: usize, borders: usize) -> Self {
        let row = || vec![Lanes::ZERO; nodes];
        Self {
            shift: Lanes::ZERO,
            per_shift: Lanes::ZERO,
            pivot: row(),
            inward: row(),
            spread: vec![row(); borders],
            small: [[Lanes::ZERO; BORDERS]; BORDERS],
            column: row(),
        }
    }

    /// Factors `shift - J`.
    fn factor(&mut self, jacobian: &Jacobian<L>, shift: Lanes<L>) {
        self.shift = shift;
        self.per_shift = shift.recip();
        let nodes = self.pivot.len();
        let (pivot, inward) = (&mut self.pivot[..nodes], &mut self.inward[..nodes]);
        let below = &jacobian.below[..nodes];
        let above = &jacobian.above[..nodes];
        let diagonal = &jacobian.diagonal[..nodes];
        let middle = nodes / 2;
        let (mut from_top, mut from_bottom) = (Lanes::ZERO, Lanes::ZERO);
        for i in 0..middle {
            pivot[i] = (shift - diagonal[i] - below[i] * from_top).recip();
            from_top = above[i] * pivot[i];
            inward[i] = from_top;
            let i = nodes - 1 - i;
            if i > middle {
                pivot[i] = (shift - diagonal[i] - above[i] * from_bottom).recip();
                from_bottom = below[i] * pivot[i];
                inward[i] = from_bottom;
            }
        }
        if let Some(last) = pivot.get_mut(middle) {
            *last =
                (shift - diagonal[middle] - below[middle] * from_top - above[middle] * from_bottom).recip();
        }
        let mut spread = std::mem::take(&mut self.spread);
        for (column, border) in spread.iter_mut().zip(&jacobian.border) {
            column.copy_from_slice(&border.draw);
            self.band(jacobian, column);
        }
        self.spread = spread;
        // (1 - slope gain / shift) j_k - sum_l (pull_k . spread_l) j_l = pull_k . T0 + slope r_k / shift
        let mut small = [[Lanes::ZERO; BORDERS]; BORDERS];
        for (k, border) in jacobian.border.iter().enumerate().take(BORDERS) {
            for (l, spread) in self.spread.iter().enumerate().take(BORDERS) {
                small[k][l] = -dot(&border.pull, spread);
            }
            small[k][k] += -border.slope * border.gain * self.per_shift + 1.0;
        }
        let [[a, b], [c, d]] = small;
        self.small = if self.spread.len() == BORDERS {
            let per = (a * d - b * c).recip();
            [[d * per, -b * per], [-c * per, a * per]]
        } else {
            [[a.recip(), Lanes::ZERO], [Lanes::ZERO; 2]]
        };
    }

    /// Solves the band alone, in place.
    #[inline(always)]
    fn band(&self, jacobian: &Jacobian<L>, column: &mut [Lanes<L>]) {
        let nodes = self.pivot.len();
        let column = &mut column[..nodes];
        let (pivot, inward) = (&self.pivot[..nodes], &self.inward[..nodes]);
        let below = &jacobian.below[..nodes];
        let above = &jacobian.above[..nodes];
        let middle = nodes / 2;
        if middle >= nodes {
            return;
        }
        let (mut from_top, mut from_bottom) = (Lanes::ZERO, Lanes::ZERO);
        for i in 0..middle {
            from_top = (column[i] + below[i] * from_top) * pivot[i];
            column[i] = from_top;
            let i = nodes - 1 - i;
            if i > middle {
                from_bottom = (column[i] + above[i] * from_bottom) * pivot[i];
                column[i] = from_bottom;
            }
        }
        let centre =
            (column[middle] + below[middle] * from_top + above[middle] * from_bottom) * pivot[middle];
        column[middle] = centre;
        let (mut upwards, mut downwards) = (centre, centre);
        for i in (0..middle).rev() {
            upwards = column[i] + inward[i] * upwards;
            column[i] = upwards;
            let i = 2 * middle - i;
            if i < nodes {
                downwards = column[i] + inward[i] * downwards;
                column[i] = downwards;
            }
        }
    }

    /// Solves `(shift - J) x = right`.
    #[inline(always)]
    fn solve(&mut self, jacobian: &Jacobian<L>, right: &StateVector<L>, x: &mut StateVector<L>) {
        let nodes = self.pivot.len().min(NODES);
        let mut column = std::mem::take(&mut self.column);
        column[..nodes].copy_from_slice(&right[..nodes]);
        self.band(jacobian, &mut column);
        let mut j = [Lanes::ZERO; BORDERS];
        for (k, border) in jacobian.border.iter().enumerate().take(BORDERS) {
            j[k] = dot(&border.pull, &column) + border.slope * right[NODES + k] * self.per_shift;
        }
        let [[a, b], [c, d]] = self.small;
        j = [a * j[0] + b * j[1], c * j[0] + d * j[1]];
        x[..nodes].copy_from_slice(&column[..nodes]);
        for (k, (border, spread)) in jacobian.border.iter().zip(&self.spread).enumerate().take(BORDERS) {
            for (x, spread) in x[..nodes].iter_mut().zip(spread) {
                *x += *spread * j[k];
            }
            x[NODES + k] = (right[NODES + k] + border.gain * j[k]) * self.per_shift;
        }
        self.column = column;
    }
}

/// Sum of the products.
#[inline(always)]
fn dot<const L: usize>(a: &[Lanes<L>], b: &[Lanes<L>]) -> Lanes<L> {
    a.iter().zip(b).fold(Lanes::ZERO, |sum, (a, b)| sum + *a * *b)
}
