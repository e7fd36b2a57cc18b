//! An answer over every white and blocker of the library, for each order of the demo's week, natively.
//!
//! `cargo run --release -p whitehold-bench --example whole_shelf`

#![allow(clippy::unwrap_used)]

use std::time::Instant;
use whitehold::library::starter;
use whitehold::plan::{Order, answer};

fn main() {
    let turns: usize = std::env::args().nth(1).and_then(|a| a.parse().ok()).unwrap_or(5);
    let only = std::env::args().nth(2);
    let library = starter().unwrap();
    let room: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string("data/harbour_lane.json").unwrap()).unwrap();
    for had in room["orders"].as_array().unwrap() {
        if only.as_ref().is_some_and(|only| had["id"].as_str() != Some(only)) {
            continue;
        }
        let mut order: Order = serde_json::from_value(had["order"].clone()).unwrap();
        order.shop.shelf = library
            .whites
            .iter()
            .map(|w| w.id.clone())
            .chain(library.blockers.iter().map(|b| b.id.clone()))
            .collect();
        let mut best = f64::INFINITY;
        let mut warm = f64::INFINITY;
        let mut memory = whitehold::plan::Memory::default();
        for _ in 0..turns {
            let start = Instant::now();
            let job = whitehold::library::job(&order, &library).unwrap();
            let report = answer(&job).unwrap();
            std::hint::black_box(report);
            best = best.min(start.elapsed().as_secs_f64() * 1e3);
            let start = Instant::now();
            let job = whitehold::library::job(&order, &library).unwrap();
            std::hint::black_box(whitehold::plan::answer_with(&job, &mut memory).unwrap());
            warm = warm.min(start.elapsed().as_secs_f64() * 1e3);
        }
        println!("{} {:>8.1} ms again {:>6.1} ms {}", had["id"], best, warm, order.garments[0].label);
    }
}
