//! Whites and their classes, blockers, mesh and deposit.
//!
//! Hands out [`White`] (one tub, as plain values), [`Mesh`] and the deposit it lays. Never chooses among them.

mod mesh;
mod white;

pub use mesh::{Mesh, MeshRecord};
pub use white::{Blocker, CureKinetics, KineticsRecord, White, WhiteClass, WhiteClassRecord, WhiteRecord};
