//! One history, alone and in lanes, beside another solver of the same equations.

use super::timing::{mean, time};
use super::{Row, as_text, worst};
use crate::scenarios::{Failure, Scenario};
use crate::solve::{CureSummary, FINE, FINE_GRID, solve, summaries};
use whitehold::dryer::{StackGrid, TOLERANCE};

/// The rows of a history, the mean over all scenarios, beside diffsol's BDF on the same equations and grid.
///
/// # Errors
/// [`Failure`] if a solver gives up.
pub fn rows(scenarios: &[Scenario]) -> Result<Vec<Row>, Failure> {
    let (mut alone, mut lanes) = (Vec::new(), Vec::new());
    let (mut off_alone, mut off_lanes) = (Vec::new(), Vec::new());
    for scenario in scenarios {
        let grid = StackGrid::of(&scenario.stack);
        let case = [scenario.case];
        let eight = scenario.at_eight_speeds();
        let off = |found: &[CureSummary], exact: &[CureSummary]| {
            worst(found.iter().zip(exact).map(|(found, exact)| found.apart(*exact)))
        };
        let exact = summaries(scenario, &solve(scenario, &case, FINE_GRID, FINE)?);
        off_alone.push(off(&summaries(scenario, &solve(scenario, &case, grid, TOLERANCE)?), &exact));
        let exact = summaries(scenario, &solve(scenario, &eight, FINE_GRID, FINE)?);
        off_lanes.push(off(&summaries(scenario, &solve(scenario, &eight, grid, TOLERANCE)?), &exact));
        alone.push(time(|| solve(scenario, &case, grid, TOLERANCE).map(drop))?);
        lanes.push(time(|| solve(scenario, &eight, grid, TOLERANCE).map(drop))? / 8.0);
    }
    let peer = peer(scenarios)?;
    let beside = peer.as_ref().map(|peer| (peer.time, peer.name.clone()));
    let accuracy = |off: Vec<[f64; 2]>| {
        let peers = peer.as_ref().map_or(String::new(), |peer| format!("; peer {}", as_text(peer.off)));
        format!(
            "worst of {} stacks against the converged equations: ours {}{peers}",
            scenarios.len(),
            as_text(worst(off))
        )
    };
    let row = |name: &str, ours: &[f64], off| Row {
        name: name.into(),
        ours: mean(ours),
        peer: beside.clone(),
        unit: "us a history",
        accuracy: accuracy(off),
    };
    Ok(vec![
        row("one history, alone", &alone, off_alone),
        row("one history, of eight in lanes", &lanes, off_lanes),
    ])
}

/// What a peer took.
struct Peer {
    name: String,
    /// Mean time of a history, us.
    time: f64,
    /// Worst error.
    off: [f64; 2],
}

#[cfg(not(feature = "peers"))]
#[allow(clippy::unnecessary_wraps)] // with the feature it may fail
fn peer(_: &[Scenario]) -> Result<Option<Peer>, Failure> {
    Ok(None)
}

/// diffsol at the loosest tolerance that is as exact as ours in time: on our grid, against that grid solved tightly.
#[cfg(feature = "peers")]
fn peer(scenarios: &[Scenario]) -> Result<Option<Peer>, Failure> {
    use crate::diffsol_peer::{bdf, summary};
    use whitehold::dryer::TransitEquations;
    let mut ours = [0.0_f64; 2];
    let mut prepared = Vec::new();
    for scenario in scenarios {
        let grid = StackGrid::of(&scenario.stack);
        let tight = summaries(scenario, &solve(scenario, &[scenario.case], grid, FINE)?)[0];
        let exact = summaries(scenario, &solve(scenario, &[scenario.case], FINE_GRID, FINE)?)[0];
        ours = worst([
            ours,
            summaries(scenario, &solve(scenario, &[scenario.case], grid, TOLERANCE)?)[0].apart(tight),
        ]);
        prepared.push((
            scenario,
            TransitEquations::new(grid, &scenario.stack, &scenario.dryer, &scenario.case, 1),
            tight,
            exact,
        ));
    }
    const RELATIVE: [f64; 8] = [3e-4, 1e-4, 7e-5, 5e-5, 4e-5, 3e-5, 2e-5, 1e-5];
    for (place, relative) in RELATIVE.into_iter().enumerate() {
        let mut off = [[0.0_f64; 2]; 2];
        for (scenario, equations, tight, exact) in &prepared {
            let found = summary(&bdf(equations, relative)?, &scenario.ink);
            off = [worst([off[0], found.apart(*tight)]), worst([off[1], found.apart(*exact)])];
        }
        let as_good = off[0][0] <= ours[0] && off[0][1] <= ours[1];
        eprintln!("diffsol at {relative:e}: in time off by {}; ours by {}", as_text(off[0]), as_text(ours));
        if as_good || place + 1 == RELATIVE.len() {
            let mut times = Vec::new();
            for (_, equations, _, _) in &prepared {
                times.push(time(|| bdf(equations, relative).map(drop))?);
            }
            let name =
                format!("diffsol 0.18 BDF, our right-hand side, Jacobian and grid, tolerance {relative:e}");
            return Ok(Some(Peer { name, time: mean(&times), off: off[1] }));
        }
    }
    Ok(None)
}
