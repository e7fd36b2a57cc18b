//! The equations of a transit, for another solver.
//!
//! [`history`](super::history()) integrates them itself. Checks and benchmarks that compare it with another
//! solver need the equations alone: an initial state and, for each stage, its duration, rates and Jacobian.
//! The unknowns are the temperatures of the nodes from the film's top to the belt, K, then the water of each
//! node of cloth, kg/kg.

use super::chain::Chain;
use super::transit::{at_entry, stages};
use super::{Case, TOLERANCE};
use crate::dryer::machine::Dryer;
use crate::dryer::stack::{Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{Jacobian, NODES, StateVector, System, zeros};

/// The equations of one transit through a dryer and the cooling after it.
#[derive(Clone, Debug)]
pub struct TransitEquations {
    /// Unknowns at the entry.
    pub start: Vec<f64>,
    /// The stages, in order.
    pub stages: Vec<StageEquations>,
    /// Index of the node at the film's bottom.
    pub film_bottom: usize,
}

/// The equations of one stage, in which the surroundings are constant.
#[derive(Clone, Debug)]
pub struct StageEquations {
    /// Duration, s.
    pub duration: f64,
    /// Temperature of the belt, K, to give the last node if the stage begins on a new piece of belt.
    pub belt: Option<f64>,
    chain: Chain<1>,
}

impl TransitEquations {
    /// The equations of the transit of a stack. The arguments are not checked.
    #[must_use]
    pub fn new(grid: StackGrid, stack: &Stack, dryer: &Dryer, case: &Case, passes: u32) -> Self {
        let transit = at_entry(stack, dryer, &[*case], grid, TOLERANCE);
        let chain = &transit.chain;
        let stages = stages(stack, dryer, &[*case], passes).into_iter().map(|stage| StageEquations {
            duration: stage.seconds[0],
            belt: stage.belt,
            chain: Chain { surroundings: stage.around, ..chain.clone() },
        });
        Self {
            start: packed(chain, &transit.state),
            stages: stages.collect(),
            film_bottom: chain.film.saturating_sub(1),
        }
    }
}

impl StageEquations {
    /// Number of unknowns.
    #[must_use]
    pub fn unknowns(&self) -> usize {
        self.chain.count + self.chain.cloths.nodes.len()
    }

    /// Number of temperatures among the unknowns; the last one is the belt's.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.chain.count
    }

    /// Rate of change of every unknown, per second.
    pub fn rates(&self, state: &[f64], rates: &mut [f64]) {
        let mut found = zeros();
        self.chain.rates(&unpacked(&self.chain, state), &mut found);
        for (rate, place) in rates.iter_mut().zip(places(&self.chain)) {
            *rate = found[place][0];
        }
    }

    /// Calls `entry` with row, column and value of each entry of the Jacobian of the rates that may be
    /// nonzero.
    pub fn jacobian(&self, state: &[f64], mut entry: impl FnMut(usize, usize, f64)) {
        let mut found = Jacobian::zero(self.chain.count);
        self.chain.jacobian(&unpacked(&self.chain, state), &mut found);
        let (count, wet) = (self.chain.count, self.chain.cloths.range());
        for row in 0..count {
            for column in row.saturating_sub(1)..(row + 2).min(count) {
                let block = match column as isize - row as isize {
                    -1 => found.below[row],
                    0 => found.diagonal[row],
                    _ => found.above[row],
                };
                entry(row, column, block.tt[0]);
                let [row_wet, column_wet] = [row, column].map(|node| wet.contains(&node));
                let water = |node: usize| count + node - wet.start;
                if column_wet {
                    entry(row, water(column), block.tw[0]);
                }
                if row_wet {
                    entry(water(row), column, block.wt[0]);
                }
                if row_wet && column_wet {
                    entry(water(row), water(column), block.ww[0]);
                }
            }
        }
    }
}

/// Indices of the unknowns in a state vector.
fn places(chain: &Chain<1>) -> impl Iterator<Item = usize> {
    (0..chain.count).chain(chain.cloths.range().map(|i| NODES + i))
}

fn packed(chain: &Chain<1>, state: &StateVector<1>) -> Vec<f64> {
    places(chain).map(|place| state[place][0]).collect()
}

fn unpacked(chain: &Chain<1>, packed: &[f64]) -> StateVector<1> {
    let mut state = zeros();
    for (value, place) in packed.iter().zip(places(chain)) {
        state[place] = Lanes([*value]);
    }
    state
}
