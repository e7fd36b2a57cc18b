//! Linear systems whose matrix is a band of small blocks, several cases side by side.
//!
//! Heat and vapour that pass through a stack couple each node to its neighbours only. A node of cloth has two
//! unknowns, temperature and water, a node of film one; so the Jacobian is block tridiagonal,
//!
//! ```text
//! x_i' = below_i x_(i-1) + diagonal_i x_i + above_i x_(i+1)          x_i = (temperature, water)
//! ```
//!
//! [`BandFactors`] solves `(shift - J) x = b` by block elimination. Nodes without water are eliminated as
//! single numbers.

use super::Lanes;
use std::ops::Range;

/// Largest number of nodes.
pub const NODES: usize = 80;
/// Length of a state vector.
pub const UNKNOWNS: usize = 2 * NODES;

/// All unknowns: temperatures from index 0, the water of node `i` at index `NODES + i`.
pub type StateVector<const L: usize> = [Lanes<L>; UNKNOWNS];

/// A state vector of zeros.
#[must_use]
pub const fn zeros<const L: usize>() -> StateVector<L> {
    [Lanes::ZERO; UNKNOWNS]
}

/// Two rows of two: change of the rates of temperature and water of one node with temperature and water of
/// one node.
#[derive(Clone, Copy, Debug)]
pub struct Block<const L: usize> {
    /// Rate of the temperature, with the temperature.
    pub tt: Lanes<L>,
    /// Rate of the temperature, with the water.
    pub tw: Lanes<L>,
    /// Rate of the water, with the temperature.
    pub wt: Lanes<L>,
    /// Rate of the water, with the water.
    pub ww: Lanes<L>,
}

impl<const L: usize> Block<L> {
    /// No coupling.
    pub const ZERO: Self = Self { tt: Lanes::ZERO, tw: Lanes::ZERO, wt: Lanes::ZERO, ww: Lanes::ZERO };

    /// Temperature coupled to temperature only.
    #[inline(always)]
    #[must_use]
    pub const fn temperature(tt: Lanes<L>) -> Self {
        Self { tt, ..Self::ZERO }
    }

    #[inline(always)]
    fn times(self, other: Self) -> Self {
        Self {
            tt: self.tt * other.tt + self.tw * other.wt,
            tw: self.tt * other.tw + self.tw * other.ww,
            wt: self.wt * other.tt + self.ww * other.wt,
            ww: self.wt * other.tw + self.ww * other.ww,
        }
    }

    #[inline(always)]
    fn inverse(self) -> Self {
        let per = (self.tt * self.ww - self.tw * self.wt).recip();
        Self { tt: self.ww * per, tw: -self.tw * per, wt: -self.wt * per, ww: self.tt * per }
    }

    #[inline(always)]
    fn on(self, [temperature, water]: [Lanes<L>; 2]) -> [Lanes<L>; 2] {
        [self.tt * temperature + self.tw * water, self.wt * temperature + self.ww * water]
    }
}

/// Jacobian of the rates: one block for each node and each of its neighbours.
#[derive(Clone, Debug)]
pub struct Jacobian<const L: usize> {
    /// `below[i]`: rates of node `i` with the unknowns of node `i - 1`.
    pub below: Vec<Block<L>>,
    /// `diagonal[i]`: rates of node `i` with its own unknowns.
    pub diagonal: Vec<Block<L>>,
    /// `above[i]`: rates of node `i` with the unknowns of node `i + 1`.
    pub above: Vec<Block<L>>,
}

impl<const L: usize> Jacobian<L> {
    /// A Jacobian of zeros for `nodes` nodes.
    #[must_use]
    pub fn zero(nodes: usize) -> Self {
        let row = || vec![Block::ZERO; nodes];
        Self { below: row(), diagonal: row(), above: row() }
    }
}

/// Factors of `shift - J`.
///
/// The band is eliminated from both ends towards the middle: two independent chains of operations, because
/// the time of one elimination is the latency of its divisions.
pub(super) struct BandFactors<const L: usize> {
    wet: Range<usize>,
    /// Inverse of each eliminated diagonal block.
    pivot: Vec<Block<L>>,
    /// The pivot times the coupling to the next node towards the middle.
    inward: Vec<Block<L>>,
}

impl<const L: usize> BandFactors<L> {
    /// Room for `nodes` nodes, of which those of `wet` hold water.
    pub(super) fn new(nodes: usize, wet: Range<usize>) -> Self {
        Self { wet, pivot: vec![Block::ZERO; nodes], inward: vec![Block::ZERO; nodes] }
    }

    /// Factors `shift - J`.
    pub(super) fn factor(&mut self, jacobian: &Jacobian<L>, shift: Lanes<L>) {
        let nodes = self.pivot.len();
        let middle = nodes / 2;
        let (mut from_top, mut from_bottom) = (Block::ZERO, Block::ZERO);
        for i in 0..middle {
            from_top = self.eliminate(i, jacobian, shift, &jacobian.below, from_top, &jacobian.above);
            let i = nodes - 1 - i;
            if i > middle {
                from_bottom =
                    self.eliminate(i, jacobian, shift, &jacobian.above, from_bottom, &jacobian.below);
            }
        }
        if middle < nodes {
            let [above, below] = [jacobian.below[middle], jacobian.above[middle]];
            self.pivot[middle] = if self.wet.contains(&middle) {
                let rest = shifted(jacobian.diagonal[middle], shift);
                less(less(rest, above.times(from_top)), below.times(from_bottom)).inverse()
            } else {
                let rest = shift - jacobian.diagonal[middle].tt;
                Block::temperature((rest - above.tt * from_top.tt - below.tt * from_bottom.tt).recip())
            };
        }
    }

    /// Eliminates node `i`, coupled by `outer` to the node before it, whose inward factor is `before`, and by
    /// `inner` to the next; returns its own inward factor.
    #[inline(always)]
    fn eliminate(
        &mut self,
        i: usize,
        jacobian: &Jacobian<L>,
        shift: Lanes<L>,
        outer: &[Block<L>],
        before: Block<L>,
        inner: &[Block<L>],
    ) -> Block<L> {
        let inward = if self.wet.contains(&i) {
            let pivot = less(shifted(jacobian.diagonal[i], shift), outer[i].times(before)).inverse();
            self.pivot[i] = pivot;
            pivot.times(inner[i])
        } else {
            let pivot = (shift - jacobian.diagonal[i].tt - outer[i].tt * before.tt).recip();
            self.pivot[i] = Block::temperature(pivot);
            Block::temperature(pivot * inner[i].tt)
        };
        self.inward[i] = inward;
        inward
    }

    /// Solves `(shift - J) x = right`. Not inlined: a step calls it four times, and the copies cost the page more
    /// than the calls take.
    #[inline(never)]
    pub(super) fn solve(&self, jacobian: &Jacobian<L>, right: &StateVector<L>, x: &mut StateVector<L>) {
        let nodes = self.pivot.len().min(NODES);
        let middle = nodes / 2;
        if middle >= nodes {
            return;
        }
        let none = [Lanes::ZERO; 2];
        let (mut from_top, mut from_bottom) = (none, none);
        for i in 0..middle {
            from_top = self.forward(i, right, &jacobian.below, from_top, x);
            let i = nodes - 1 - i;
            if i > middle {
                from_bottom = self.forward(i, right, &jacobian.above, from_bottom, x);
            }
        }
        let [mut temperature, mut water] = [right[middle], right[NODES + middle]];
        for part in [jacobian.below[middle].on(from_top), jacobian.above[middle].on(from_bottom)] {
            temperature += part[0];
            water += part[1];
        }
        let centre = self.pivot[middle].on([temperature, water]);
        [x[middle], x[NODES + middle]] = centre;
        let (mut upwards, mut downwards) = (centre, centre);
        for i in (0..middle).rev() {
            upwards = self.backward(i, upwards, x);
            let i = 2 * middle - i;
            if i < nodes {
                downwards = self.backward(i, downwards, x);
            }
        }
    }

    #[inline(always)]
    fn forward(
        &self,
        i: usize,
        right: &StateVector<L>,
        outer: &[Block<L>],
        before: [Lanes<L>; 2],
        x: &mut StateVector<L>,
    ) -> [Lanes<L>; 2] {
        let found = if self.wet.contains(&i) {
            let [temperature, water] = outer[i].on(before);
            self.pivot[i].on([right[i] + temperature, right[NODES + i] + water])
        } else {
            [(right[i] + outer[i].tt * before[0]) * self.pivot[i].tt, Lanes::ZERO]
        };
        [x[i], x[NODES + i]] = found;
        found
    }

    #[inline(always)]
    fn backward(&self, i: usize, inner: [Lanes<L>; 2], x: &mut StateVector<L>) -> [Lanes<L>; 2] {
        if self.wet.contains(&i) {
            let [temperature, water] = self.inward[i].on(inner);
            x[i] += temperature;
            x[NODES + i] += water;
        } else {
            x[i] += self.inward[i].tt * inner[0];
        }
        [x[i], x[NODES + i]]
    }
}

/// `shift - block`.
#[inline(always)]
fn shifted<const L: usize>(block: Block<L>, shift: Lanes<L>) -> Block<L> {
    Block { tt: shift - block.tt, tw: -block.tw, wt: -block.wt, ww: shift - block.ww }
}

#[inline(always)]
fn less<const L: usize>(block: Block<L>, by: Block<L>) -> Block<L> {
    Block { tt: block.tt - by.tt, tw: block.tw - by.tw, wt: block.wt - by.wt, ww: block.ww - by.ww }
}
