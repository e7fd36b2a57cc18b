//! The march: a stiff initial-value problem in time, several cases side by side.
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
//! usual; `tests/march.rs` measures the order they give.
//!
//! Lanes share the step as a fraction of their own duration, so that belt speeds march side by side.

use super::Lanes;

/// Most temperature nodes of a chain.
pub const NODES: usize = 48;
/// Most bordering unknowns.
pub const BORDERS: usize = 2;
/// Most unknowns.
pub const UNKNOWNS: usize = NODES + BORDERS;

/// Steps after which a march gives up. The hardest of 20,000 random journeys took 358 (`tests/robust.rs`).
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
pub type State<const L: usize> = [Lanes<L>; UNKNOWNS];

/// A state of zeros.
#[must_use]
pub const fn zeros<const L: usize>() -> State<L> {
    [Lanes::ZERO; UNKNOWNS]
}

/// One bordering unknown's part in the Jacobian.
#[derive(Clone, Debug)]
pub struct Border<const L: usize> {
    /// Change of each temperature's rate with `j`.
    pub draw: [Lanes<L>; NODES],
    /// Change of `j` with each temperature.
    pub pull: [Lanes<L>; NODES],
    /// Change of `j` with the bordering unknown.
    pub slope: Lanes<L>,
    /// Change of the bordering unknown's rate with `j`.
    pub gain: Lanes<L>,
}

/// Jacobian: a tridiagonal band with a narrow border.
#[derive(Clone, Debug)]
pub struct Jacobian<const L: usize> {
    /// `below[i]`: change of rate `i` with temperature `i - 1`.
    pub below: [Lanes<L>; NODES],
    /// `diagonal[i]`: change of rate `i` with temperature `i`.
    pub diagonal: [Lanes<L>; NODES],
    /// `above[i]`: change of rate `i` with temperature `i + 1`.
    pub above: [Lanes<L>; NODES],
    /// The border.
    pub border: [Border<L>; BORDERS],
}

impl<const L: usize> Jacobian<L> {
    /// All zero.
    #[must_use]
    pub const fn zero() -> Self {
        const fn border<const L: usize>() -> Border<L> {
            Border {
                draw: [Lanes::ZERO; NODES],
                pull: [Lanes::ZERO; NODES],
                slope: Lanes::ZERO,
                gain: Lanes::ZERO,
            }
        }
        Self {
            below: [Lanes::ZERO; NODES],
            diagonal: [Lanes::ZERO; NODES],
            above: [Lanes::ZERO; NODES],
            border: [border(), border()],
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
    fn rates(&self, state: &State<L>, rates: &mut State<L>);
    /// Jacobian of the rates; may leave small terms out.
    fn jacobian(&self, state: &State<L>, jacobian: &mut Jacobian<L>);
}

/// How exact a march must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Largest error of a temperature in one step, K.
    pub temperature: f64,
    /// Largest error of a bordering unknown in one step, in its unit.
    pub border: f64,
}

/// A march that could not be finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum MarchError {
    /// The equations gave a value that is not a number.
    NotFinite,
    /// More steps than any sound case needs.
    TooManySteps,
}

impl std::fmt::Display for MarchError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(match self {
            Self::NotFinite => "the march met a value that is not a number",
            Self::TooManySteps => "the march needed more steps than it may take",
        })
    }
}

impl std::error::Error for MarchError {}

/// One accepted step, handed to the caller of [`march`].
#[derive(Debug)]
pub struct Accepted<'a, const L: usize> {
    /// Share of the duration that has passed at its end, 0 to 1.
    pub passed: f64,
    /// Unknowns at its end.
    pub state: &'a State<L>,
    /// Their rates there.
    pub rates: &'a State<L>,
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
/// [`MarchError`] where the rates are not finite or the steps do not end.
pub fn march<const L: usize>(
    system: &impl System<L>,
    state: &mut State<L>,
    duration: Lanes<L>,
    tolerance: Tolerance,
    mut on_step: impl FnMut(&Accepted<'_, L>),
) -> Result<Effort, MarchError> {
    march_on(system, state, duration, tolerance, None, &mut on_step).map(|(effort, _)| effort)
}

/// The same where a march goes on from another: starts with the step `first` (a share of the duration) and returns the
/// step that it would have taken next. The visitor is called through a pointer: compiled anew for every visitor, the march
/// would stand in the page many times.
///
/// # Errors
/// As [`march`].
pub fn march_on<const L: usize>(
    system: &impl System<L>,
    state: &mut State<L>,
    duration: Lanes<L>,
    tolerance: Tolerance,
    first: Option<f64>,
    on_step: &mut dyn FnMut(&Accepted<'_, L>),
) -> Result<(Effort, f64), MarchError> {
    let nodes = system.nodes().min(NODES);
    let borders = system.borders().min(BORDERS);
    let count = nodes + borders;
    let mut work = Factors::new();
    let mut jacobian = Jacobian::zero();
    let [mut rates, mut stage, mut right] = [zeros::<L>(); 3];
    let [mut u1, mut u2, mut u3, mut u4] = [zeros::<L>(); 4];
    // Temperatures are indexed first; the borders stand behind them at `NODES`.
    let place = |i: usize| if i < nodes { i } else { NODES + i - nodes };

    system.rates(state, &mut rates);
    on_step(&Accepted { passed: 0.0, state, rates: &rates });
    let mut effort = Effort::default();
    let mut passed = 0.0;
    let mut step = first.unwrap_or_else(|| first_step(&rates, nodes, duration, tolerance));
    // A step cut short by the end says nothing of the step that would have been taken.
    let mut wanted = step;
    let mut previous_error = 1.0_f64;
    while passed < 1.0 {
        if effort.accepted + effort.rejected > MOST_STEPS {
            return Err(MarchError::TooManySteps);
        }
        // A sliver left at the end would cost a step of its own.
        wanted = step;
        if passed + step * 1.01 >= 1.0 {
            step = 1.0 - passed;
        }
        let per_time = (duration * step).recip();
        system.jacobian(state, &mut jacobian);
        work.factor(&jacobian, per_time * (1.0 / GAMMA), nodes, borders);

        work.solve(&jacobian, &rates, &mut u1, nodes, borders);
        for i in 0..count {
            let i = place(i);
            stage[i] = state[i] + u1[i] * 2.0;
        }
        system.rates(&stage, &mut right);
        for i in 0..count {
            let i = place(i);
            right[i] += u1[i] * per_time * C21;
        }
        work.solve(&jacobian, &right, &mut u2, nodes, borders);
        for i in 0..count {
            let i = place(i);
            stage[i] = state[i] + u1[i] * A31 + u2[i] * A32;
        }
        system.rates(&stage, &mut right);
        for i in 0..count {
            let i = place(i);
            right[i] += (u2[i] * -M2 - u1[i] * M1) * per_time;
        }
        work.solve(&jacobian, &right, &mut u3, nodes, borders);
        for i in 0..count {
            let i = place(i);
            stage[i] = state[i] + u1[i] * M1 + u2[i] * M2 + u3[i] * M3;
        }
        system.rates(&stage, &mut right);
        for i in 0..count {
            let i = place(i);
            right[i] += (u1[i] * C41 + u2[i] * C42 + u3[i] * C43) * per_time;
        }
        work.solve(&jacobian, &right, &mut u4, nodes, borders);

        let mut error = 0.0_f64;
        let mut finite = true;
        for i in 0..count {
            let allowed = if i < nodes { tolerance.temperature } else { tolerance.border };
            let i = place(i);
            let missed = u1[i] * E1 + u2[i] * E2 + u3[i] * E3 + u4[i] * E4;
            stage[i] += u4[i];
            finite &= missed.is_finite() && stage[i].is_finite();
            error = error.max(missed.abs().largest() / allowed);
        }
        if !finite || !error.is_finite() {
            // A stage that left the valid range: try much smaller, and give up only where that does not help.
            effort.rejected += 1;
            step *= 0.1;
            if step < 1e-12 {
                return Err(MarchError::NotFinite);
            }
            continue;
        }
        if error > 1.0 {
            effort.rejected += 1;
            step *= (0.9 * error.powf(-1.0 / 3.0)).clamp(0.15, 0.9);
            continue;
        }
        effort.accepted += 1;
        passed = if passed + step >= 1.0 - 1e-14 { 1.0 } else { passed + step };
        *state = stage;
        system.rates(state, &mut rates);
        on_step(&Accepted { passed, state, rates: &rates });
        // Proportional-integral control (Hairer & Wanner, Solving ODEs II, IV.2) keeps rejections rare.
        let error = error.max(1e-4);
        step *= (0.9 * error.powf(-0.7 / 3.0) * previous_error.powf(0.3 / 3.0)).clamp(0.2, 4.0);
        previous_error = error;
        wanted = wanted.max(step);
    }
    Ok((effort, wanted))
}

/// A first step in which no temperature moves by more than some tolerances.
fn first_step<const L: usize>(
    rates: &State<L>,
    nodes: usize,
    duration: Lanes<L>,
    tolerance: Tolerance,
) -> f64 {
    let fastest = rates[..nodes].iter().map(|rate| (rate.abs() * duration).largest()).fold(1e-9, f64::max);
    (8.0 * tolerance.temperature / fastest).clamp(1e-9, 0.1)
}

/// Factors of one step's matrix.
struct Factors<const L: usize> {
    shift: Lanes<L>,
    pivot: [Lanes<L>; NODES],
    upper: [Lanes<L>; NODES],
    spread: [[Lanes<L>; NODES]; BORDERS],
    small: [[Lanes<L>; BORDERS]; BORDERS],
}

impl<const L: usize> Factors<L> {
    const fn new() -> Self {
        Self {
            shift: Lanes::ZERO,
            pivot: [Lanes::ZERO; NODES],
            upper: [Lanes::ZERO; NODES],
            spread: [[Lanes::ZERO; NODES]; BORDERS],
            small: [[Lanes::ZERO; BORDERS]; BORDERS],
        }
    }

    /// Factors `shift - J`.
    fn factor(&mut self, jacobian: &Jacobian<L>, shift: Lanes<L>, nodes: usize, borders: usize) {
        self.shift = shift;
        let mut upper = Lanes::ZERO;
        for i in 0..nodes {
            let pivot = (shift - jacobian.diagonal[i] - jacobian.below[i] * upper).recip();
            upper = jacobian.above[i] * pivot;
            self.pivot[i] = pivot;
            self.upper[i] = upper;
        }
        for k in 0..borders {
            let mut column = jacobian.border[k].draw;
            self.band(jacobian, &mut column, nodes);
            self.spread[k] = column;
        }
        // (1 - slope gain / shift) j_k - sum_l (pull_k . spread_l) j_l = pull_k . T0 + slope r_k / shift
        for k in 0..borders {
            let border = &jacobian.border[k];
            for l in 0..borders {
                let mut through = Lanes::ZERO;
                for i in 0..nodes {
                    through += border.pull[i] * self.spread[l][i];
                }
                let own = if k == l { -border.slope * border.gain / shift + 1.0 } else { Lanes::ZERO };
                self.small[k][l] = own - through;
            }
        }
    }

    /// Solves the band alone, in place.
    fn band(&self, jacobian: &Jacobian<L>, column: &mut [Lanes<L>; NODES], nodes: usize) {
        let mut last = Lanes::ZERO;
        for i in 0..nodes {
            last = (column[i] + jacobian.below[i] * last) * self.pivot[i];
            column[i] = last;
        }
        for i in (0..nodes.saturating_sub(1)).rev() {
            column[i] += self.upper[i] * column[i + 1];
        }
    }

    /// Solves `(shift - J) x = right`.
    fn solve(
        &self,
        jacobian: &Jacobian<L>,
        right: &State<L>,
        x: &mut State<L>,
        nodes: usize,
        borders: usize,
    ) {
        let mut column = [Lanes::ZERO; NODES];
        column[..nodes].copy_from_slice(&right[..nodes]);
        self.band(jacobian, &mut column, nodes);
        let mut j = [Lanes::ZERO; BORDERS];
        for k in 0..borders {
            let border = &jacobian.border[k];
            let mut sum = border.slope * right[NODES + k] / self.shift;
            for i in 0..nodes {
                sum += border.pull[i] * column[i];
            }
            j[k] = sum;
        }
        match borders {
            0 => {}
            1 => j[0] = j[0] / self.small[0][0],
            _ => {
                let [[a, b], [c, d]] = self.small;
                let determinant = (a * d - b * c).recip();
                j = [(j[0] * d - j[1] * b) * determinant, (j[1] * a - j[0] * c) * determinant];
            }
        }
        for k in 0..borders {
            for i in 0..nodes {
                column[i] += self.spread[k][i] * j[k];
            }
            x[NODES + k] = (right[NODES + k] + jacobian.border[k].gain * j[k]) / self.shift;
        }
        x[..nodes].copy_from_slice(&column[..nodes]);
    }
}
