//! Times an answer with every white and blocker of the library on the shelf, for each order of the demo's week: with an empty
//! cache, and asked again with what was simulated before. Prints the fastest of some turns.
//!
//! `cargo run --release -p whitehold-bench --example whole_shelf -- [turns] [order]`: an order by its number, or `own` for all
//! orders with their own shelf.

#![allow(clippy::unwrap_used)]

use std::time::Instant;
use whitehold::library::{answer, answer_with, harbour_lane, starter};
use whitehold::plan::SimulationCache;

fn main() {
    let mut arguments = std::env::args().skip(1);
    let turns: usize = arguments.next().and_then(|turns| turns.parse().ok()).unwrap_or(5);
    let only = arguments.next();
    let library = starter().unwrap();
    let ids = library.whites.iter().map(|white| &white.id);
    let shelf: Vec<String> = ids.chain(library.blockers.iter().map(|blocker| &blocker.id)).cloned().collect();
    let orders = harbour_lane().unwrap().orders;
    for had in orders.iter().filter(|had| only.as_ref().is_none_or(|only| only == "own" || *only == had.id)) {
        let mut order = had.order.clone();
        if only.as_deref() != Some("own") {
            order.shop.shelf.clone_from(&shelf);
        }
        let mut memory = SimulationCache::default();
        let best = |run: &mut dyn FnMut()| {
            let times = (0..turns).map(|_| {
                let start = Instant::now();
                run();
                start.elapsed().as_secs_f64() * 1e3
            });
            times.fold(f64::INFINITY, f64::min)
        };
        let afresh = best(&mut || drop(std::hint::black_box(answer(&order, &library))));
        let again = best(&mut || drop(std::hint::black_box(answer_with(&order, &library, &mut memory))));
        println!("{} {afresh:>8.1} ms, again {again:>6.1} ms  {}", had.id, order.garments[0].label);
    }
}
