//! The answer to an order.

use super::pick::Pick;
use super::reason::Reason;
use super::trade_off::TradeOff;
use super::verdict::Verdict;
use super::whole_order::WholeOrder;
use serde::{Deserialize, Serialize};

/// The answer to an order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Report {
    /// The verdict of the best pick; `refuse` where there is none.
    pub verdict: Verdict,
    /// The garment that this report is for, by its place in the order: the most demanding one.
    #[serde(default)]
    pub garment: usize,
    /// Ways to print it, best first.
    pub picks: Vec<Pick>,
    /// Whites of the shelf that cannot print it, and why.
    pub rejected: Vec<Rejected>,
    /// If a closed window refuses the order: the candidate that was looked at, for its map. It has no
    /// setting; its margins are those at the middle of the dryer's range.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed: Option<Box<Pick>>,
    /// If the design goes on several garments: one plan for all, beside one for each.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub whole: Option<WholeOrder>,
    /// The recipes that were assessed, and what is given up for what; absent if none was looked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trade: Option<TradeOff>,
    /// What would make it possible, or make it a go.
    pub to_make_it_possible: Vec<Reason>,
    /// Cautions for this job.
    pub cautions: Vec<Reason>,
    /// What is not known, most worth finding out first.
    pub unknowns: Vec<Unknown>,
    /// What was read from the label and what was assumed.
    pub understood: Vec<Reason>,
    /// The same of every garment, in the order's sequence.
    #[serde(default)]
    pub understood_each: Vec<Vec<Reason>>,
}

impl Report {
    /// The first pick that `wanted` accepts, the candidate whose window is closed last.
    pub fn find_pick(&self, wanted: impl Fn(&Pick) -> bool) -> Option<&Pick> {
        self.picks.iter().chain(self.closed.as_deref()).find(|pick| wanted(pick))
    }
}

/// A caution of the report (a [`Reason`] with a caution code).
pub type Caution = Reason;

/// A white that cannot print it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rejected {
    /// Id of the white.
    pub white: String,
    /// Its name.
    pub name: String,
    /// Why.
    pub reasons: Vec<Reason>,
}

/// Something worth finding out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Unknown {
    /// The question.
    pub ask: Reason,
    /// How far the chance of a late fault could move, 0 to 1.
    pub worth: f64,
}
