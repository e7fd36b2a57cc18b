//! The verdict on an order or on one way to print it.

use serde::{Deserialize, Serialize};

/// Whether to run the order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Run it.
    Go,
    /// Run it, hold two pieces and look before shipping.
    GoWithCheck,
    /// Print a test first.
    Trial,
    /// Not with what is on the shelf.
    Refuse,
}
