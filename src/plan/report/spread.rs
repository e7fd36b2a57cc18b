//! The spread of a value over lots.

use serde::{Deserialize, Serialize};

/// A value over lots, by the share of lots below it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spread {
    /// One case in ten is lower.
    pub low: f64,
    /// One in four is lower.
    pub lower: f64,
    /// The most likely value.
    pub likely: f64,
    /// One in four is higher.
    pub upper: f64,
    /// One case in ten is higher.
    pub high: f64,
}
