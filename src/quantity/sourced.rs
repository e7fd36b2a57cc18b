use serde::{Deserialize, Serialize};

/// A number of `data/`: value, unit, range and where it comes from.
///
/// `source` is a reference that was read, or one of the house phrases: "common practice, no source",
/// "from memory", "invented for the demo", "fitted to the anchors".
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sourced {
    /// The value, in `unit`.
    pub value: f64,
    /// The unit, as printed.
    pub unit: String,
    /// Where the true value may lie, in `unit`.
    pub range: [f64; 2],
    /// Where the number comes from.
    pub source: String,
}
