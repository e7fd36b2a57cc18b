use super::{Board, Film, Stack};
use crate::numerics::rosenbrock::NODES;
use crate::textile::Fabric;
use crate::textile::moisture::regain;

/// Number of nodes of each layer.
///
/// A layer follows the heat at its face with the time constant `tau = R C`: its thermal resistance from face
/// to face times its heat capacity, evaporation of its water included. With `n` cells the error at the film's
/// bottom is about `0.1 K tau / n²` (tau in s), so `n` grows with the square root of `tau`.
///
/// **Decision:** nodes lie on the faces of the layers, one of them on the film's bottom; their number goes
/// with the root of each layer's lag, evaporation counted; cloth that dries from a front gets twice as many.
/// **Because:** the film's bottom is what must fuse, and a thin shell needs 3 nodes where a fleece needs 12.
/// **Measured:** the errors are in `StackGrid::of`, and at the head of `tests/peer/history.py` those of 2,000
/// histories that SciPy solves on another grid (2026-12-01). Twice the nodes and a third of the tolerance of
/// water make a wet history take 2.1 times as long, and leave 3 of 22 histories beyond their limits.
/// **Reconsider when:** `cargo xtask peer --sample 2000` finds more than those three, or a layer is added that none
/// of its stacks has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StackGrid {
    /// The film on top, at least 2.
    pub film: usize,
    /// The blocker film under it, at least 2.
    pub blocker: usize,
    /// The printed cloth, at least 2.
    pub front: usize,
    /// The cloth or the board under it, at least 2.
    pub back: usize,
}

/// Largest number of cells of one layer.
const MOST_CELLS: f64 = 39.0;

/// Largest number of nodes of a layer other than the printed cloth, which gets what these and the belt leave of
/// [`NODES`].
const MOST_NODES: usize = 20;

impl StackGrid {
    /// The grid used for answers. With it and [`TOLERANCE`](crate::dryer::TOLERANCE), peaks at the film's
    /// bottom are within 0.15 K and fused shares within 0.005 of the converged solution on random dry stacks
    /// and dryers, within 0.5 K and 0.01 on wet ones (`src/tool/bench/tests/converged.rs`); the worst of 566 wet
    /// ones is 0.71 K off (`tests/peer/history.py`).
    #[must_use]
    pub fn of(stack: &Stack) -> Self {
        Self::scaled(stack, 1.0)
    }

    /// A grid of about two thirds of the cells, for a first estimate; error about 0.3 K.
    #[must_use]
    pub fn rough(stack: &Stack) -> Self {
        Self::scaled(stack, 0.8)
    }

    fn scaled(stack: &Stack, scale: f64) -> Self {
        let nodes = |least: f64, factor: f64, resistance: f64, heat: f64| {
            (least + scale * factor * (resistance * heat).sqrt()).ceil().clamp(1.0, MOST_CELLS) as usize + 1
        };
        let film = |film: Film| {
            let heat = film.thickness * film.density * Film::HEAT_CAPACITY;
            nodes(0.0, 2.5, film.thickness / Film::CONDUCTIVITY, heat).min(MOST_NODES)
        };
        let cloth = |least: f64, factor: f64, cloth: &Fabric| {
            let water = regain(stack.humidity.0, cloth.regain_65) + stack.added_water;
            let heat = cloth.areal_mass * (cloth.heat_capacity + water * DRYING);
            let damp = water > DAMP * regain(1.0, cloth.regain_65) || stack.board.is_some();
            let factor = if damp { factor * FRONT } else { factor };
            nodes(least, factor, cloth.thickness / cloth.conductivity, heat)
        };
        let back = match (&stack.board, &stack.back) {
            (Some(board), _) => {
                let heat = board.thickness * Board::DENSITY * Board::HEAT_CAPACITY;
                nodes(0.0, 1.3, board.thickness / Board::CONDUCTIVITY, heat)
            }
            (None, Some(back)) => cloth(0.0, 0.8, back),
            (None, None) => 2,
        };
        let (film, blocker, back) = (film(stack.film), stack.blocker.map_or(2, film), back.min(MOST_NODES));
        let front = cloth(1.0, 1.2, &stack.front).min(NODES - 1 - film - blocker - back);
        Self { film, blocker, front, back }
    }
}

/// Share of the water that a cloth's fibres bind from which it dries from a front, whose place is known to half
/// a cell; over a board, which holds its vapour back, any cloth does. Chosen.
const DAMP: f64 = 0.5;

/// Factor on the cells of such a cloth. Chosen: 1.5 leaves twice as many of the soaked beyond 0.3 K.
const FRONT: f64 = 2.0;

/// Heat of evaporation, spread over the hundred kelvin by which a print warms up, J/(kg K).
const DRYING: f64 = 24e3;
