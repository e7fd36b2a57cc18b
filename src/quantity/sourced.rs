use serde::{Deserialize, Serialize};

/// A number of `data/` with its unit, plausible range and source.
///
/// `source` is a reference that was read, or one of these phrases: "common practice, no source", "from
/// memory", "assumed", "fitted to the anchors", "invented for the demo".
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sourced {
    /// The value, in `unit`.
    pub value: f64,
    /// The unit as printed.
    pub unit: String,
    /// Range in which the true value may lie, in `unit`.
    pub range: [f64; 2],
    /// Source of the number.
    pub source: String,
}
