//! Whites and their classes, blockers, meshes, and the film that a mesh deposits.
//!
//! Comes in: records of whites, blockers and meshes, and a substrate. Goes out: [`White`] and [`Mesh`] in
//! SI, the [`DepositedFilm`] of strokes on a cloth, the [`InkTransfer`] of a weighed print,
//! [`FilmOpacity`], whether a film holds a nap down, and how rough its surface stays. It must not choose
//! among whites.

mod deposit;
mod matting;
mod mesh;
mod mix;
mod opacity;
mod relief;
mod weighed;
mod white;

pub use deposit::{DepositedFilm, Substrate, TRANSFER, USUAL_TRANSFER, deposit, ink_per_print, stencil_gain};
pub use matting::{film_needed, reduced_body, smoothed, standing};
pub use mesh::{Mesh, MeshRecord};
pub use opacity::{FilmOpacity, colour, contrast_ratio, opacity};
pub use relief::surface_slope;
pub use weighed::{InkTransfer, MeasuredValue, Weighing};
pub use white::{
    Blocker, CureKinetics, DrawDownRecord, KineticsRecord, White, WhiteClass, WhiteClassRecord, WhiteRecord,
};
