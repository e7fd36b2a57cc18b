//! How exact the grid and the tolerance that ship are, against the converged equations.
//!
//! Converged: the same equations on a grid about six times finer and with a tolerance a hundred times tighter. That these are
//! the right equations, rightly solved, is checked by another solver: `cargo xtask peer`.

use whitehold::dryer::{StackGrid, TOLERANCE};
use whitehold_bench::scenarios::{Scenario, random, timed};
use whitehold_bench::solve::{FINE, FINE_GRID, solve, summaries};

/// Asserts how far the film bottom's peak (K) and its fused share may be off.
fn within(scenarios: &[Scenario], kelvin: f64, share: f64) {
    for scenario in scenarios {
        let grid = StackGrid::of(&scenario.stack);
        let exact = summaries(scenario, &solve(scenario, &[scenario.case], FINE_GRID, FINE).unwrap())[0];
        let found = summaries(scenario, &solve(scenario, &[scenario.case], grid, TOLERANCE).unwrap())[0];
        let [peak, fused] = found.apart(exact);
        assert!(peak < kelvin && fused < share, "{}: {peak:.3} K, fused {fused:.4} off", scenario.name);
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

/// The error falls with the square of the cells: if it did not, "converged" would mean nothing.
#[test]
fn halving_the_cells_quarters_the_error() {
    for scenario in &timed().unwrap() {
        let peak = |cells: usize| {
            let grid = StackGrid { film: 8, blocker: 6, front: cells + 1, back: cells + 1 };
            summaries(scenario, &solve(scenario, &[scenario.case], grid, FINE).unwrap())[0].peak
        };
        let [coarse, middle, fine] = [3, 6, 12].map(peak);
        let ratio = (coarse - middle) / (middle - fine);
        assert!((3.0..4.5).contains(&ratio), "{}: {ratio:.2}", scenario.name);
    }
}
