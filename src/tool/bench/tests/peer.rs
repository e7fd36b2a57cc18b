//! The first 240 random histories as another solver finds them: `peer.json`, kept by `tests/peer/history.py`.
//!
//! Source: SciPy 1.17.1 `LSODA` on cell-centred finite volumes; what it shares with ours are equations and constants. `cargo
//! xtask peer --sample 2000` solves more of them anew; what it found stands at the head of that script. To renew the file:
//!
//! ```text
//! cargo xtask peer --sample 240
//! target/peer/python/bin/python tests/peer/history.py --keep src/tool/bench/tests/peer.json target/peer/random-240.json
//! ```

use whitehold::dryer::{StackGrid, TOLERANCE};
use whitehold_bench::scenarios::random;
use whitehold_bench::solve::{solve, summaries};

/// Soaked cloth of 2 mm that dries from its face: the front passes from node to node, and the film's peak with it.
const BEYOND: (&str, f64) = ("random 202, wet", 0.75);

#[test]
fn random_histories_as_another_solver_finds_them() {
    let kept: Vec<(String, f64, f64, f64)> = serde_json::from_str(include_str!("peer.json")).unwrap();
    let scenarios = random(kept.len()).unwrap();
    let mut wet = 0;
    for (scenario, (name, peak, fused, water)) in scenarios.iter().zip(kept) {
        assert_eq!(scenario.name, name, "other scenarios are drawn: renew peer.json");
        let grid = StackGrid::of(&scenario.stack);
        let history = solve(scenario, &[scenario.case], grid, TOLERANCE).unwrap();
        let found = summaries(scenario, &history)[0];
        let leaves = history.samples.iter().find(|sample| sample.time[0] >= history.exit_time[0] - 1e-9);
        let off = [found.peak - peak, found.fused - fused, leaves.unwrap().water[0] - water];
        let kelvin = if name == BEYOND.0 { BEYOND.1 } else { 0.3 };
        for (off, limit) in off.into_iter().zip([kelvin, 0.01, 0.003]) {
            assert!(off.abs() < limit, "{name}: {off:.4} off, of {limit}");
        }
        wet += usize::from(scenario.stack.added_water > 0.0);
    }
    assert!(wet >= 50, "{wet} wet ones");
}
