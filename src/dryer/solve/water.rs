//! Water in the cloths, node by node: vapour that moves, condenses and evaporates, and water that wicks.
//!
//! Each node of cloth has its own water `W`, kg per kg of dry cloth. With the vapour pressure `p` over it,
//!
//! ```text
//! vapour between nodes    J = K (u_i - u_j),    u = -ln(1 - p / P)                            (Stefan flow)
//!    in the cloth         K = M P opening D / (R T dx),    D = D_298 (T / 298 K)^1.75
//!    into the air         K = (M / M_air) h / (c_p Le^(2/3))                          (Chilton and Colburn)
//! wicking                 J = rho D_w (F_i - F_j) / dx,    F = water beyond what the fibres bind, kg/kg
//! water                   m dW/dt = -J,         heat drawn = J_vapour (h_fg + Q_l)
//! ```
//!
//! The film lets no vapour through, so under it the cloth dries downwards, through the back; beside the print
//! it dries upwards as well. Water also carries heat: it adds to the conductivity of the cloth in proportion
//! to its share of the volume.
//!
//! **Decision:** water lies where the vapour brings it, not evenly in its cloth.
//! **Because:** a thick cloth insulates its film from its own water: with even water, a film on soaked fleece
//! was computed 50 K too hot and fused.
//! **Measured:** `tests/heat/wet_cloth.rs`; another solver on another grid: `cargo xtask peer`.
//! **Reconsider when:** a drying curve measured on printed cloth disagrees.

use super::surroundings::Surroundings;
use crate::dryer::machine::air;
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{NODES, StateVector};
use crate::quantity::{ATMOSPHERE, GAS_CONSTANT};
use crate::textile::{Fabric, moisture};
use std::ops::Range;

/// Lewis number of water vapour in air to the power 2/3: `0.90^(2/3)`. Le 0.85 to 1.0, from memory.
const LEWIS: f64 = 0.932_169_751_786_0;
/// Diffusivity of water vapour in air at 298 K, m²/s, rising with T^1.75. 2.46e-5 at 23 °C (Monteith and
/// Unsworth, Principles of Environmental Physics, from memory); 2.4e-5 to 2.6e-5.
const VAPOUR_DIFFUSIVITY: f64 = 2.5e-5;
/// Share of the cloth's thickness that is open to vapour, tortuosity included. 0.3 to 0.6, assumed.
const VAPOUR_OPENING: f64 = 0.4;
/// Diffusivity of free water that wicks along the fibres, m²/s. 1e-7 to 1e-6, assumed: the two give the same
/// temperature of a film on soaked cloth.
const WICKING: f64 = 1e-7;
/// Conductivity that a cloth filled with water would gain, W/(m K): water 0.60 in place of air 0.03, in
/// parallel with the dry cloth. Water 0.60 at 20 °C to 0.68 at 100 °C (IAPWS).
const WATER_CONDUCTIVITY: f64 = 0.57;
/// Density of water, kg/m³.
const WATER_DENSITY: f64 = 1000.0;
/// Vapour pressure, as a share of the atmosphere, from which `u` goes on along `ln p`: the logarithm of the
/// Stefan flow has a pole at 1, where steam drives the air out and flows by its pressure alone. 0.95 to 0.99,
/// chosen.
const STEAM: f64 = 0.97;
/// Slope of `u` with `ln p` from there.
const STEAM_SLOPE: f64 = STEAM / (1.0 - STEAM);
/// Smallest regain at 65 % RH with which the vapour over a cloth is computed, kg/kg. Polyester (0.004) and
/// polypropylene hold so little that the equations get stiff, and so little that it hardly matters when it
/// leaves. 4e-3 to 2e-2, chosen.
const LEAST_REGAIN: f64 = 8e-3;
/// Conductance of the air between two cloths in units of that of the air below the garment: half a layer of
/// air lies between them. 1 to 4, assumed.
const GAP: f64 = 2.0;

/// Vapour conductance of an air layer per W/(m² K) of heat transfer, kg/(m² s): the ratio of the gases'
/// molar masses over `c_p Le^(2/3)`.
const AIR_LAYER: f64 =
    moisture::MOLAR_MASS / (GAS_CONSTANT / air::GAS_CONSTANT) / (air::HEAT_CAPACITY * LEWIS);
/// Vapour conductance of a metre of still air at 298 K, kg/(m s).
const STILL_AIR: f64 = moisture::MOLAR_MASS * ATMOSPHERE * VAPOUR_DIFFUSIVITY / (GAS_CONSTANT * 298.0);
/// The same of a metre of cloth.
const CLOTH: f64 = STILL_AIR * VAPOUR_OPENING;

/// What a node of cloth and its joint to the next node are made of.
#[derive(Clone, Copy, Debug)]
pub(super) struct WetNode {
    /// Dry mass, kg/m².
    pub mass: f64,
    /// Regain at 65 % RH with which its vapour is computed, kg/kg.
    regain_65: f64,
    /// Water that its fibres can bind, kg/kg.
    bound: f64,
    /// Vapour conductance to the next node at 298 K, kg/(m² s); 0 for the last node of a cloth.
    vapour: f64,
    /// Wicking conductance to the next node, kg/(m² s); 0 for the last node of a cloth.
    pub wicking: f64,
    /// Conductance of heat to the next node that water adds, W/(m² K) per kg/kg.
    wet_conductance: f64,
}

impl WetNode {
    /// The nodes of a cloth, half cells at its two faces.
    pub(super) fn of(cloth: &Fabric, nodes: usize) -> impl Iterator<Item = Self> {
        let cells = (nodes - 1) as f64;
        let width = cloth.thickness / cells;
        let density = cloth.areal_mass / cloth.thickness;
        let regain_65 = cloth.regain_65;
        (0..nodes).map(move |i| {
            let (first, last) = (i == 0, i + 1 == nodes);
            let inside = if last { 0.0 } else { 1.0 / width };
            Self {
                mass: cloth.areal_mass / cells * if first || last { 0.5 } else { 1.0 },
                regain_65: regain_65.max(LEAST_REGAIN),
                bound: moisture::regain(1.0, regain_65),
                vapour: CLOTH * inside,
                wicking: WICKING * density * inside,
                wet_conductance: WATER_CONDUCTIVITY * density / WATER_DENSITY * inside,
            }
        })
    }
}

/// The cloths of a chain: their nodes follow each other, from the face of the printed cloth down.
#[derive(Clone, Debug, Default)]
pub(super) struct WetCloths {
    /// Index of the first node in the chain.
    pub first: usize,
    /// The nodes.
    pub nodes: Vec<WetNode>,
    /// Number of nodes of the printed cloth.
    pub front: usize,
    /// Whether vapour leaves upwards: nothing is printed.
    pub open_above: bool,
    /// Still air that holds the vapour back like the board below, m; 0 without a board.
    pub board: f64,
}

/// Water moved and heat drawn at one node, with the slopes that the Jacobian needs.
#[derive(Clone, Copy)]
pub(super) struct NodeVapour<const L: usize> {
    /// Potential of the vapour, `u`.
    pub potential: Lanes<L>,
    /// Heat that leaving water takes, J/kg.
    pub heat: Lanes<L>,
    /// Change of the potential with temperature, 1/K.
    pub per_kelvin: Lanes<L>,
    /// Change of the potential with water.
    pub per_water: Lanes<L>,
    /// Water beyond what the fibres bind, kg/kg.
    pub free: Lanes<L>,
    /// Its change with water: 0 or 1.
    pub free_per_water: Lanes<L>,
}

impl<const L: usize> NodeVapour<L> {
    pub(super) const NONE: Self = Self {
        potential: Lanes::ZERO,
        heat: Lanes::ZERO,
        per_kelvin: Lanes::ZERO,
        per_water: Lanes::ZERO,
        free: Lanes::ZERO,
        free_per_water: Lanes::ZERO,
    };
}

impl WetCloths {
    /// The nodes in the chain.
    pub(super) fn range(&self) -> Range<usize> {
        self.first..self.first + self.nodes.len()
    }

    /// The nodes of the printed cloth.
    pub(super) fn front(&self) -> Range<usize> {
        self.first..self.first + self.front
    }

    /// Whether any node holds free water.
    pub(super) fn drip<const L: usize>(&self, state: &StateVector<L>) -> bool {
        self.nodes.iter().zip(&state[NODES + self.first..]).any(|(node, water)| water.largest() > node.bound)
    }

    /// One node of cloth that dries downwards only.
    #[cfg(test)]
    pub(super) fn alone(mass: f64, regain_65: f64) -> Self {
        let bound = moisture::regain(1.0, regain_65);
        let node = WetNode { mass, regain_65, bound, vapour: 0.0, wicking: 0.0, wet_conductance: 0.0 };
        Self { first: 0, nodes: vec![node], front: 1, open_above: false, board: 0.0 }
    }

    /// Adds a cloth.
    pub(super) fn lay(&mut self, cloth: &Fabric, nodes: usize) {
        if self.nodes.is_empty() {
            self.front = nodes;
        }
        self.nodes.extend(WetNode::of(cloth, nodes));
    }

    /// Conductance of heat from node `k` to the next one that its water adds, W/(m² K).
    #[inline(always)]
    pub(super) fn wet_conductance<const L: usize>(&self, k: usize, state: &StateVector<L>) -> Lanes<L> {
        let at = NODES + self.first + k;
        (state[at] + state[at + 1]).max(Lanes::ZERO) * (0.5 * self.nodes[k].wet_conductance)
    }

    /// Vapour and free water at node `k`.
    #[inline(always)]
    pub(super) fn vapour<const L: usize>(&self, k: usize, state: &StateVector<L>) -> NodeVapour<L> {
        let node = &self.nodes[k];
        let (temperature, water) = (state[self.first + k], state[NODES + self.first + k]);
        let over = moisture::vapour_over_cloth(water, node.regain_65, temperature);
        let share = over.pressure * (1.0 / ATMOSPHERE);
        let steam = std::array::from_fn(|lane| share[lane] >= STEAM);
        let rest = -share + 1.0;
        let logarithm = Lanes::select(steam, share * (1.0 / STEAM), rest).ln();
        let start = -(1.0 - STEAM).ln();
        let potential = Lanes::select(steam, logarithm * STEAM_SLOPE + start, -logarithm);
        let per_share = Lanes::select(steam, share.recip() * STEAM_SLOPE, rest.recip()) * (1.0 / ATMOSPHERE);
        let beyond = water - node.bound;
        let soaked = std::array::from_fn(|lane| beyond[lane] > 0.0);
        NodeVapour {
            potential,
            heat: over.heat,
            per_kelvin: per_share * over.per_kelvin,
            per_water: per_share * over.per_water,
            free: beyond.max(Lanes::ZERO),
            free_per_water: Lanes::select(soaked, Lanes::splat(1.0), Lanes::ZERO),
        }
    }

    /// Vapour conductance from node `k` to the next, kg/(m² s).
    #[inline(always)]
    pub(super) fn conductance<const L: usize>(
        &self,
        k: usize,
        at: &Surroundings<L>,
        state: &StateVector<L>,
    ) -> Lanes<L> {
        if k + 1 == self.front {
            return at.h_bottom * (GAP * AIR_LAYER);
        }
        let i = self.first + k;
        let reduced = (state[i] + state[i + 1]) * (0.5 / 298.0);
        let root = reduced.max(Lanes::splat(0.5)).sqrt();
        root * root.sqrt() * self.nodes[k].vapour
    }
}

/// Vapour conductance of an air layer with heat transfer `h` behind so much still air (m), kg/(m² s).
#[inline(always)]
pub(super) fn air_layer<const L: usize>(h: Lanes<L>, still_air: f64) -> Lanes<L> {
    let layer = h * AIR_LAYER;
    layer / (layer * (still_air / STILL_AIR) + 1.0)
}

/// Potential `u` of the vapour of air with this vapour pressure, Pa.
pub(super) fn air_potential(vapour: f64) -> f64 {
    -(1.0 - (vapour / ATMOSPHERE).min(STEAM)).ln()
}
