use crate::quantity::Sourced;
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
