//! How exact the grid and the tolerance that ship are, against the converged equations.
//!
//! Converged: the same equations on a grid about six times finer and with a tolerance a hundred times tighter. That these are
//! the right equations, rightly solved, is checked by another solver: `cargo xtask peer`.

use whitehold::dryer::{StackGrid, TOLERANCE};
use whitehold_bench::scenarios::{Scenario, random, timed};
use whitehold_bench::solve::{FINE, FINE_GRID, solve, summaries};

/// Asserts how far the film bottom's peak (K) and its fused share may be off.
fn within<'a>(scenarios: impl Iterator<Item = &'a Scenario>, kelvin: f64, share: f64) {
    for scenario in scenarios {
        let grid = StackGrid::of(&scenario.stack);
        let exact = summaries(scenario, &solve(scenario, &[scenario.case], FINE_GRID, FINE).unwrap())[0];
        let found = summaries(scenario, &solve(scenario, &[scenario.case], grid, TOLERANCE).unwrap())[0];
        let [peak, fused] = found.apart(exact);
        assert!(peak < kelvin && fused < share, "{}: {peak:.3} K, fused {fused:.4} off", scenario.name);
    }
}

fn is_wet(scenario: &&Scenario) -> bool {
    scenario.stack.added_water > 0.0
}

#[test]
fn random_dry_stacks_and_dryers() {
    within(random(80).unwrap().iter().filter(|scenario| !is_wet(scenario)), 0.15, 0.005);
}

/// A drying front passes from node to node, and its place is known to half a cell: on the converged grid too, which is 0.1 K
/// from the end in the worst of them. `peer.rs` holds them to 0.3 K.
#[test]
fn random_wet_stacks_and_dryers() {
    within(random(80).unwrap().iter().filter(is_wet), 0.5, 0.01);
}

#[test]
fn fourteen_usual_ones() {
    within(timed().unwrap().iter(), 0.1, 0.0025);
}

/// The error falls with the square of the cells where no drying front passes: if it did not, "converged" would mean
/// nothing.
#[test]
fn halving_the_cells_quarters_the_error() {
    let dry = |scenario: &&Scenario| !is_wet(scenario) && scenario.stack.humidity.0 < 0.85;
    for scenario in timed().unwrap().iter().filter(dry) {
        let peak = |cells: usize| {
            let grid = StackGrid { film: 8, blocker: 6, front: cells + 1, back: cells + 1 };
            summaries(scenario, &solve(scenario, &[scenario.case], grid, FINE).unwrap())[0].peak
        };
        let [coarse, middle, fine] = [3, 6, 12].map(peak);
        let ratio = (coarse - middle) / (middle - fine);
        assert!((3.0..4.5).contains(&ratio), "{}: {ratio:.2}", scenario.name);
    }
}
