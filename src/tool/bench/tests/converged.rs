//! What the grid and the tolerance that ship cost in exactness, against the converged equations.
//!
//! Converged: the same equations on a grid about six times finer and a tolerance a hundred times tighter. That they are
//! the right equations, and that our march of them is right, `cargo xtask peer` asks another solver.

use whitehold::dryer::{StackGrid, TOLERANCE};
use whitehold_bench::journeys::{Trip, random, timed};
use whitehold_bench::ours::{FINE, FINE_GRID, march, results};

/// Asserts how far the film bottom's peak (K) and its fused share may be off.
fn within(trips: &[Trip], kelvin: f64, share: f64) {
    for trip in trips {
        let grid = StackGrid::of(&trip.stack);
        let exact = results(trip, &march(trip, &[trip.case], FINE_GRID, FINE).unwrap())[0];
        let found = results(trip, &march(trip, &[trip.case], grid, TOLERANCE).unwrap())[0];
        let [peak, fused] = found.apart(exact);
        assert!(peak < kelvin && fused < share, "{}: {peak:.3} K, fused {fused:.4} off", trip.name);
    }
}

#[test]
fn fifty_random_stacks_and_dryers() {
    within(&random(50).unwrap(), 0.1, 0.005);
}

#[test]
fn fourteen_usual_ones() {
    within(&timed().unwrap(), 0.1, 0.0015);
}

/// A finer grid is nearer, as the square of the cells: without it, "converged" would mean nothing.
#[test]
fn halving_the_cells_quarters_the_error() {
    for trip in &timed().unwrap() {
        let peak = |cells: usize| {
            let grid = StackGrid { film: 8, blocker: 6, front: cells + 1, back: cells + 1 };
            results(trip, &march(trip, &[trip.case], grid, FINE).unwrap())[0].peak
        };
        let [coarse, middle, fine] = [3, 6, 12].map(peak);
        let ratio = (coarse - middle) / (middle - fine);
        assert!((3.0..4.5).contains(&ratio), "{}: {ratio:.2}", trip.name);
    }
}
