//! The table of the ten orders, as the tests of the JS package and of the page read it too.

use serde::Deserialize;
use whitehold::plan::Verdict;

/// One row: an order of the demo print room and the answer that is accepted.
#[derive(Clone, Debug, Deserialize)]
pub struct Row {
    /// Number of the order.
    pub id: String,
    /// What is printed on.
    pub order: String,
    /// Why this answer is the accepted one.
    pub why: String,
    /// The verdict.
    pub verdict: Verdict,
    /// Ids of the whites that may come first; none where the order is refused.
    pub first: Vec<String>,
}

/// The rows of `tests/ten_orders.json`.
pub fn rows() -> Vec<Row> {
    #[derive(Deserialize)]
    struct Table {
        rows: Vec<Row>,
    }
    let table: Table = serde_json::from_str(include_str!("../ten_orders.json")).expect("the table parses");
    table.rows
}
