//! One plan for every garment of an order, beside a plan for each.

use super::pick::Setting;
use super::reason::Reason;
use super::verdict::Verdict;
use serde::{Deserialize, Serialize};

/// The garments of one design, in one plan and in a plan each.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WholeOrder {
    /// One white through one set of screens; absent where no white does all of them.
    pub together: Option<OrderPlan>,
    /// The best way for each garment.
    pub split: OrderPlan,
    /// Which of the two to run, and what the other costs.
    pub say: Reason,
}

/// A plan for all garments.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OrderPlan {
    /// The strictest verdict of its parts.
    pub verdict: Verdict,
    /// Ink, time, screens and ink changes of the whole order, in the shop's money.
    pub cost: f64,
    /// One part a garment, in the order's order.
    pub parts: Vec<GarmentPart>,
}

/// What a plan does with one garment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GarmentPart {
    /// Place of the garment in the order.
    pub garment: usize,
    /// Id of the white; absent where every white is refused.
    pub white: Option<String>,
    /// Its name.
    pub name: String,
    /// Whether the cloth is dried first.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub dried: bool,
    /// The verdict on this garment.
    pub verdict: Verdict,
    /// The dryer for it.
    pub setting: Option<Setting>,
    /// Ink and machine time of one print, in the shop's money.
    pub cost_per_print: f64,
}
