//! How the time of one history grows with nodes, zones and lanes.

use super::timing::time;
use super::{Row, with_zones};
use crate::scenarios::{Failure, Scenario};
use crate::solve::solve;
use whitehold::dryer::{Case, DriftCase, StackGrid, TOLERANCE, history};

/// The rows of one scenario.
///
/// # Errors
/// [`Failure`] if the solver gives up.
pub fn rows(scenario: &Scenario) -> Result<Vec<Row>, Failure> {
    let row = |name: String, ours: f64| Row {
        name,
        ours,
        peer: None,
        unit: "us a history",
        accuracy: String::new(),
    };
    let mut rows = Vec::new();
    for cells in [2, 4, 8, 16, 32] {
        let grid = StackGrid { film: 2, blocker: 2, front: cells + 1, back: cells / 2 + 1 };
        let nodes = grid.film + grid.front + grid.back + 1;
        let took = time(|| solve(scenario, &[scenario.case], grid, TOLERANCE).map(drop))?;
        rows.push(row(format!("the same on {nodes} nodes"), took));
    }
    for zones in [1, 2, 3, 6, 12] {
        let dryer = with_zones(&scenario.dryer, zones);
        let took = time(|| Ok(history(&scenario.stack, &dryer, &[scenario.case], 1, TOLERANCE).map(drop)?))?;
        rows.push(row(format!("the same through {zones} zones"), took));
    }
    fn drift_cases<const L: usize>(scenario: &Scenario) -> Result<f64, Failure> {
        let cases: [Case; L] = std::array::from_fn(|lane| {
            let warmer = DriftCase { air: lane as f64 - 0.5 * L as f64, ..DriftCase::NOMINAL };
            Case { drift: warmer, ..scenario.case }
        });
        Ok(time(|| solve(scenario, &cases, StackGrid::of(&scenario.stack), TOLERANCE).map(drop))? / L as f64)
    }
    rows.push(row("the same, of 2 worlds side by side".into(), drift_cases::<2>(scenario)?));
    rows.push(row("the same, of 4 worlds side by side".into(), drift_cases::<4>(scenario)?));
    rows.push(row("the same, of 8 worlds side by side".into(), drift_cases::<8>(scenario)?));
    Ok(rows)
}
