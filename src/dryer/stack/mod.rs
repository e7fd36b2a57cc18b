//! What is heated: film, blocker and cloths as they lie on the belt.
//!
//! In: the films' thicknesses, the fabrics, the humidity of the room.
//! Out: [`Stack`], and [`StackGrid`], the number of nodes that each of its layers needs.
//! Must not know: dryers, the equations, nor the chemistry of ink or dye.

mod grid;
mod layers;

pub use grid::StackGrid;
pub use layers::{Board, Film, NearInfrared, Stack};
