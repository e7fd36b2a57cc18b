//! Screen mesh and what it lays down.
//!
//! ```text
//! pitch p = 1/n,  opening w = p − d,  open area α = (w/p)²
//! theoretical volume V = α t          m³ of ink per m² of print, that is metres of wet film
//! film = transfer · V · strokes       a plastisol loses nothing on curing: wet = dry
//! ink mass = area · coverage · film · density
//! ```
//!
//! n threads per metre, d thread diameter, t mesh thickness. V counts only the straight-through columns; the whole
//! void of the weave is 1.4 to 2 times that, so the transfer is a fitted share of V, not a physical filling.
//! Source: plain-weave geometry. A study of contact screen printing found the mesh to decide the deposit and the
//! openings to be about half filled ("Fundamental investigations into screen printing", doctoral thesis, abstract
//! read): transfer 0.4 to 0.7, best taken from a weighed print, transfer = mass/(density · area · V · strokes).
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
    /// A value out of range, a thread that fills its pitch, or a mesh thinner than its own thread.
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
        })
    }
}

/// Share of the theoretical volume that a stroke leaves on the cloth.
pub const TRANSFER: Bound = Bound { field: "transfer", min: 0.1, max: 1.5, unit: "" };

/// Film after `strokes` strokes (print, flash, print), m. `transfer` within [`TRANSFER`].
/// Holds inside an area; fine lines and edges gain about the thickness of the stencil.
#[must_use]
pub fn deposit(mesh: &Mesh, transfer: f64, strokes: u32) -> f64 {
    transfer * mesh.volume() * f64::from(strokes)
}

/// Ink on one print, kg: area of the design's frame in m², share of it that is printed (0 to 1), film in m, density
/// in kg/m³.
#[must_use]
pub fn ink_per_print(area: f64, coverage: f64, film: f64, density: f64) -> f64 {
    area * coverage * film * density
}

/// Ink to have ready for a run, kg: kg per print, prints, and the share that stays on screens and tools (0 and up).
#[must_use]
pub fn ink_for_run(per_print: f64, prints: u32, waste: f64) -> f64 {
    per_print * f64::from(prints) * (1.0 + waste)
}
