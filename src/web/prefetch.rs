//! Prefetching: while the page is idle, the other orders of the demo print room are answered one after another, so
//! that they open at once; then the search index of the records is made.
//!
//! **Decision:** the first answer is computed while the browser opens its store; the rest of the week, then
//! the index of the records, while the page is idle. Work that can wait does.
//! **Because:** the browser compiles each wasm function when it is first called.
//! **Measured:** that compiling is a third of a first answer (2026-11-29, machine not recorded; `cargo xtask
//! latency`).
//! **Reconsider when:** browsers keep compiled wasm, or answers move to a worker.

use super::cached_queries::title;
use super::desk::Desk;
use crate::library::RoomOrder;
use leptos::prelude::set_timeout;
use std::time::Duration;

/// How long the page must be idle before each step. Chosen.
const CALM: Duration = Duration::from_millis(400);

/// Starts prefetching, unless it is under way or done.
pub fn prefetch(desk: Desk) {
    if !desk.set_prefetching(true) {
        go_on(desk);
    }
}

fn go_on(desk: Desk) {
    let stirred = desk.stirred();
    let next = move || {
        if desk.stirred() != stirred || answer_one(desk) {
            go_on(desk);
        } else {
            desk.with_untracked(|state| state.records.prepare());
        }
    };
    set_timeout(next, CALM);
}

/// Answers the first order that is not answered yet; false where there is none.
fn answer_one(desk: Desk) -> bool {
    let library = desk.library();
    desk.queries(|queries| {
        let asked = |it: &RoomOrder| desk.with_untracked(|state| state.would_ask(&it.order, &title(it)));
        let mut orders = queries.room.orders.iter().filter_map(asked);
        let left = orders.find(|order| !queries.has_answered(order, &library));
        left.map(|order| queries.answer(&order, &library)).is_some()
    })
}
