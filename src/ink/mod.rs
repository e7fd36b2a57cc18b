//! Whites and their classes, blockers, mesh and deposit.
//!
//! Hands out [`White`] (one tub, as plain values), [`Mesh`] and the deposit it lays,
//! and [`Opacity`]. Never chooses among them.

mod mesh;
mod opacity;
mod white;

pub use mesh::{Mesh, MeshRecord, TRANSFER, deposit, ink_for_run, ink_per_print};
pub use opacity::{Opacity, contrast_ratio, opacity, strokes_needed};
pub use white::{Blocker, CureKinetics, KineticsRecord, White, WhiteClass, WhiteClassRecord, WhiteRecord};
