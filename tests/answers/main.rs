//! From an order to its answer: labels, verdicts, reasons, and the search behind them.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../common/mod.rs"]
mod common;

mod bad_orders;
mod colours;
mod cost;
mod dried;
mod estimates;
mod evidence;
mod heat_standing;
mod labels;
mod later_heat;
mod laws;
mod memory;
mod mended;
mod never;
mod reasons_told;
mod role;
mod runs;
mod screening;
mod set_points;
mod ten_orders;
mod trade;
mod verdict_rule;
mod wash;
mod what_went_wrong;
mod whole_order;
mod window_agrees;
