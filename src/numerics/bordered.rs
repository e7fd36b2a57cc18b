//! Linear systems whose matrix is a tridiagonal band with a narrow border, several cases side by side.
//!
//! Heat conducted through a stack couples each node to its neighbours only, so the Jacobian of the
//! temperatures is tridiagonal. Water that leaves a cloth takes its heat from every node of that cloth at a
//! rate `j` that depends on their mean: one extra unknown a cloth, which borders the band. With the rates of
//! the temperatures `T` and of the bordering unknowns `w`,
//!
//! ```text
//! T' = band T + sum_k draw_k j_k,     w_k' = gain_k j_k,     j_k = pull_k . T + slope_k w_k
//! ```
//!
//! [`BorderedFactors`] solves `(shift - J) x = b`: the band by elimination, the border by its Schur
//! complement, a matrix of at most two rows.

use super::Lanes;

/// Largest number of temperature nodes.
pub const NODES: usize = 80;
/// Largest number of bordering unknowns.
pub const BORDERS: usize = 2;
/// Length of a state vector.
pub const UNKNOWNS: usize = NODES + BORDERS;

/// All unknowns: temperatures from index 0, bordering unknowns from index [`NODES`].
pub type StateVector<const L: usize> = [Lanes<L>; UNKNOWNS];

/// A state vector of zeros.
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
    /// A Jacobian of zeros for `nodes` temperatures and `borders` bordering unknowns.
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

/// Factors of `shift - J`.
///
/// The band is eliminated from both ends towards the middle: two independent chains of operations, because
/// the time of one elimination is the latency of its divisions.
pub(super) struct BorderedFactors<const L: usize> {
    shift: Lanes<L>,
    per_shift: Lanes<L>,
    pivot: Vec<Lanes<L>>,
    /// Coupling to the next node towards the middle, divided by the pivot.
    inward: Vec<Lanes<L>>,
    spread: Vec<Vec<Lanes<L>>>,
    /// Inverse of the Schur complement of the border.
    small: [[Lanes<L>; BORDERS]; BORDERS],
    column: Vec<Lanes<L>>,
}

impl<const L: usize> BorderedFactors<L> {
    pub(super) fn new(nodes: usize, borders: usize) -> Self {
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
    pub(super) fn factor(&mut self, jacobian: &Jacobian<L>, shift: Lanes<L>) {
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
    pub(super) fn solve(&mut self, jacobian: &Jacobian<L>, right: &StateVector<L>, x: &mut StateVector<L>) {
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
