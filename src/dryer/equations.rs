//! The equations of a journey, laid open for another solver.
//!
//! [`history`](super::history) marches them itself. What checks or times that march needs them bare: a starting state,
//! and stage by stage how long it lasts and how fast each unknown changes. The unknowns are the temperatures of the
//! nodes from the film's top to the belt, K, then the water of each cloth, kg/kg. A grid finer than the one that ships
//! tells what the grid costs in exactness.

use super::chain::Chain;
use super::history::{enter, history_on, stages};
use super::lay::GRID;
use super::{Case, Dryer, History, Stack};
use crate::numerics::Lanes;
use crate::numerics::march::{Jacobian, MarchError, NODES, State, System, Tolerance, zeros};
use std::ops::Range;

/// Nodes of film, front cloth and back cloth.
pub type Grid = [usize; 3];

/// The grid that [`history`](super::history) marches on.
pub const SHIPPED_GRID: Grid = GRID;

/// One journey through a dryer.
#[derive(Clone, Debug)]
pub struct Journey {
    /// Unknowns as the piece enters; the belt's temperature is set by the first stage.
    pub start: Vec<f64>,
    /// Its stages, one after another.
    pub stages: Vec<Stage>,
    /// The node at the film's bottom.
    pub film_bottom: usize,
}

/// A time with the same surroundings throughout.
#[derive(Clone, Debug)]
pub struct Stage {
    /// How long it lasts, s.
    pub duration: f64,
    /// Where the stage begins on a fresh piece of belt: that belt's temperature, K, for the last node.
    pub belt: Option<f64>,
    chain: Chain<1>,
}

/// What surrounds the stack during a stage; every number resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Around {
    /// Air, K.
    pub air: f64,
    /// Heat transfer to the top, W/(m² K).
    pub h_top: f64,
    /// Heat transfer to the belt, W/(m² K).
    pub h_bottom: f64,
    /// Radiation that the top takes in, W/m².
    pub source: f64,
    /// What the top sends out, W/(m² K⁴).
    pub emission: f64,
    /// What the belt exchanges with walls as hot as the air, W/(m² K⁴).
    pub belt_emission: f64,
    /// Vapour pressure of the air, Pa.
    pub vapour: f64,
}

/// A layer of the stack as a whole; every number resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Heat capacity at 298 K, J/(m² K), without water.
    pub capacity: f64,
    /// Its rise with temperature, J/(m² K²), up to 180 K above.
    pub capacity_slope: f64,
    /// Resistance from face to face, m² K/W.
    pub resistance: f64,
    /// Conductance to what lies below, W/(m² K).
    pub below: f64,
    /// Water that it holds.
    pub water: Option<Water>,
}

/// A cloth's water; every number resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// Dry mass of the cloth, kg/m².
    pub mass: f64,
    /// Regain at 65 % RH, kg/kg.
    pub regain_65: f64,
    /// Thickness that the vapour crosses, m.
    pub path: f64,
    /// Air layers beyond it, in units of `1 / h_m`.
    pub layers: f64,
    /// Water as the piece enters, kg/kg.
    pub start: f64,
}

impl Journey {
    /// The journey of a stack on a grid of at least two nodes a layer, [`NODES`] together with the belt.
    #[must_use]
    pub fn new(grid: Grid, stack: &Stack, dryer: &Dryer, case: &Case, passes: u32) -> Self {
        let (chain, state) = enter(grid, stack, dryer, &[*case]);
        let stages = stages(dryer, &[*case], passes).into_iter().map(|stage| Stage {
            duration: stage.duration[0],
            belt: stage.belt,
            chain: Chain { surroundings: stage.surroundings, ..chain.clone() },
        });
        Self { start: packed(&chain, &state), stages: stages.collect(), film_bottom: chain.film - 1 }
    }

    /// The layers from the film down, and the heat capacity of the belt under them, J/(m² K).
    #[must_use]
    pub fn layers(&self) -> (Vec<Layer>, f64) {
        let Some(Stage { chain, .. }) = self.stages.first() else { return (Vec::new(), 0.0) };
        let layer = |nodes: Range<usize>, water: Option<Water>| Layer {
            capacity: chain.capacity[nodes.clone()].iter().map(|node| node[0]).sum(),
            capacity_slope: chain.capacity_slope[nodes.clone()].iter().sum(),
            resistance: chain.conductance[nodes.start..nodes.end - 1]
                .iter()
                .map(|inside| 1.0 / inside[0])
                .sum(),
            below: chain.conductance[nodes.end - 1][0],
            water,
        };
        let mut layers = vec![layer(0..chain.film, None)];
        for (k, wet) in chain.wet.iter().enumerate() {
            let start = self.start[chain.count + k];
            let water =
                Water { mass: wet.mass, regain_65: wet.regain_65, path: wet.path, layers: wet.layers, start };
            layers.push(layer(wet.nodes.clone(), Some(water)));
        }
        (layers, chain.capacity[chain.count - 1][0])
    }
}

impl Stage {
    /// Number of unknowns.
    #[must_use]
    pub fn unknowns(&self) -> usize {
        self.chain.count + self.chain.wet.len()
    }

    /// Number of nodes: the temperatures among the unknowns, the belt's last.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.chain.count
    }

    /// What surrounds the stack.
    #[must_use]
    pub fn around(&self) -> Around {
        let at = &self.chain.surroundings;
        Around {
            air: at.air[0],
            h_top: at.h_top[0],
            h_bottom: at.h_bottom[0],
            source: at.source[0],
            emission: at.emission[0],
            belt_emission: at.belt_emission,
            vapour: at.vapour,
        }
    }

    /// Rate of change of every unknown, per second.
    pub fn rates(&self, state: &[f64], rates: &mut [f64]) {
        let mut found = zeros();
        self.chain.rates(&unpacked(&self.chain, state), &mut found);
        for (rate, place) in rates.iter_mut().zip(places(&self.chain)) {
            *rate = found[place][0];
        }
    }

    /// Calls `entry` with row, column and value of each entry of the rates' Jacobian that may differ from zero.
    pub fn jacobian(&self, state: &[f64], mut entry: impl FnMut(usize, usize, f64)) {
        let mut found = Jacobian::zero(self.chain.count, self.chain.wet.len());
        self.chain.jacobian(&unpacked(&self.chain, state), &mut found);
        let (count, wet) = (self.chain.count, &self.chain.wet);
        for row in 0..count {
            for column in row.saturating_sub(1)..(row + 2).min(count) {
                let mut value = match column as isize - row as isize {
                    -1 => found.below[row][0],
                    0 => found.diagonal[row][0],
                    _ => found.above[row][0],
                };
                for (border, wet) in found.border.iter().zip(wet) {
                    if wet.nodes.contains(&row) && wet.nodes.contains(&column) {
                        value += border.draw[row][0] * border.pull[column][0];
                    }
                }
                entry(row, column, value);
            }
        }
        for (k, (border, wet)) in found.border.iter().zip(wet).enumerate() {
            for row in wet.nodes.clone() {
                for column in wet.nodes.clone().filter(|column| column.abs_diff(row) > 1) {
                    entry(row, column, border.draw[row][0] * border.pull[column][0]);
                }
                entry(row, count + k, border.draw[row][0] * border.slope[0]);
                entry(count + k, row, border.gain[0] * border.pull[row][0]);
            }
            entry(count + k, count + k, border.gain[0] * border.slope[0]);
        }
    }
}

/// [`history`](super::history) on another grid.
///
/// # Errors
/// As [`history`](super::history).
pub fn history_on_grid<const L: usize>(
    grid: Grid,
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
    tolerance: Tolerance,
) -> Result<History<L>, MarchError> {
    history_on(grid, stack, dryer, cases, passes, tolerance)
}

/// Where the unknowns stand in a state of the march.
fn places(chain: &Chain<1>) -> impl Iterator<Item = usize> {
    (0..chain.count).chain((0..chain.wet.len()).map(|k| NODES + k))
}

fn packed(chain: &Chain<1>, state: &State<1>) -> Vec<f64> {
    places(chain).map(|place| state[place][0]).collect()
}

fn unpacked(chain: &Chain<1>, packed: &[f64]) -> State<1> {
    let mut state = zeros();
    for (value, place) in packed.iter().zip(places(chain)) {
        state[place] = Lanes([*value]);
    }
    state
}
