//! The days on which to look at a print that is kept: what to expect then, and their dates if the day of
//! printing is known.

use super::spread::Spread;
use serde::{Deserialize, Serialize};

/// Days after printing on which a shop looks at what it keeps: most of what will show does so in the first
/// week, nearly all of it in a month. Common practice, no source.
pub const LOOKS: [f64; 3] = [1.0, 7.0, 30.0];

/// A day on which to look.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FollowUp {
    /// Days after printing.
    pub day: f64,
    /// The date, `2026-12-04`; absent while the day of printing is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// Colour difference to expect beside a piece that was kept cool, ΔE00.
    pub de00: Spread,
    /// Chance that it is over its limit by then, 0 to 1.
    pub shows: f64,
}

/// When the order must leave.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Leaves {
    /// The date, `2026-12-04`.
    pub date: String,
    /// Days after printing; negative where it should have left before.
    pub day: f64,
    /// Chance that it is over its limit by then, 0 to 1.
    pub shows: f64,
}

/// Days after printing on which to look where `looked_at` is the one that matters: the usual ones before it,
/// then it.
#[must_use]
pub fn days_to_look(looked_at: f64) -> Vec<f64> {
    let mut days: Vec<f64> = LOOKS.into_iter().filter(|day| *day < looked_at).collect();
    days.push(looked_at);
    days
}
