//! Screen mesh: how much ink a screen can hold.
//!
//! ```text
//! pitch p = 1/n,  opening w = p − d,  open area α = (w/p)²
//! theoretical volume V = α t          m³ of ink per m² of print, that is metres of wet film
//! ```
//!
//! n threads per metre, d thread diameter, t mesh thickness. V counts only the straight-through columns;
//! the whole void of the weave is 1.4 to 2 times as large. Source: plain-weave geometry.
use crate::quantity::{Bound, FieldError, Sourced};
use serde::{Deserialize, Serialize};

/// One row of `data/meshes.json`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeshRecord {
    /// Stable id, e.g. `mesh-43`.
    pub id: String,
    /// Threads per centimetre.
    pub threads_per_cm: Sourced,
    /// Thread diameter, µm.
    pub thread: Sourced,
    /// Thickness of the woven mesh, µm.
    pub thickness: Sourced,
    /// Thickness of the stencil beyond the mesh on the side of the cloth, µm.
    pub over_mesh: Sourced,
}

/// A mesh in SI.
#[derive(Clone, Debug, PartialEq)]
pub struct Mesh {
    /// Id of the record.
    pub id: String,
    /// Threads per metre.
    pub threads_per_m: f64,
    /// Thread diameter, m.
    pub thread: f64,
    /// Thickness, m.
    pub thickness: f64,
    /// Stencil beyond the mesh, m.
    pub over_mesh: f64,
}

/// Largest share of the pitch that a thread may take; a tighter mesh lets no ink through. Chosen.
const MOST_THREAD_IN_PITCH: f64 = 0.95;

impl Mesh {
    /// Accepted thread count.
    pub const THREADS_PER_CM: Bound = Bound { field: "threads_per_cm", min: 5.0, max: 200.0, unit: "1/cm" };
    /// Accepted thread diameter.
    pub const THREAD: Bound = Bound { field: "thread", min: 20.0, max: 500.0, unit: "µm" };
    /// Accepted mesh thickness; 1.5 to 1.8 threads when stretched, 2 as woven.
    pub const THICKNESS: Bound = Bound { field: "thickness", min: 20.0, max: 1000.0, unit: "µm" };

    /// Accepted stencil beyond the mesh.
    pub const OVER_MESH: Bound = Bound { field: "over_mesh", min: 0.0, max: 500.0, unit: "µm" };

    /// Distance from thread to thread, m.
    #[must_use]
    pub fn pitch(&self) -> f64 {
        1.0 / self.threads_per_m
    }

    /// Open width between two threads, m.
    #[must_use]
    pub fn opening(&self) -> f64 {
        self.pitch() - self.thread
    }

    /// Share of the mesh that is open, 0 to 1.
    #[must_use]
    pub fn open_area(&self) -> f64 {
        (self.opening() / self.pitch()).powi(2)
    }

    /// Theoretical ink volume, m³ per m² (1e-6 m = 1 cm³/m²).
    #[must_use]
    pub fn volume(&self) -> f64 {
        self.open_area() * self.thickness
    }
}

impl TryFrom<&MeshRecord> for Mesh {
    type Error = FieldError;

    /// The mesh of a record, in SI.
    ///
    /// # Errors
    /// A [`FieldError`] on `threads_per_cm`, `thread`, `thickness` or `over_mesh` outside its bound; on
    /// `thread` if it fills the pitch, on `thickness` if the mesh is thinner than its thread.
    fn try_from(record: &MeshRecord) -> Result<Self, FieldError> {
        let threads_per_cm = Self::THREADS_PER_CM.check(record.threads_per_cm.value)?;
        let pitch = 1e4 / threads_per_cm;
        let widest = Bound { max: Self::THREAD.max.min(MOST_THREAD_IN_PITCH * pitch), ..Self::THREAD };
        let thread = widest.check(record.thread.value)?;
        let thickness = Bound { min: thread, ..Self::THICKNESS }.check(record.thickness.value)?;
        Ok(Self {
            id: record.id.clone(),
            threads_per_m: threads_per_cm * 100.0,
            thread: thread * 1e-6,
            thickness: thickness * 1e-6,
            over_mesh: Self::OVER_MESH.check(record.over_mesh.value)? * 1e-6,
        })
    }
}
