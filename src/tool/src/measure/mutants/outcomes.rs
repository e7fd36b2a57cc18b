//! What became of each mutant, read from `outcomes.json` of cargo-mutants.

use crate::host::progress::{say, seconds};
use serde_json::Value;
use std::time::Duration;

/// How many mutants were tested.
pub fn count(found: &Value) -> usize {
    of_mutants(found).count()
}

/// Prints the counts, the time of a mutant, and every mutant that survived.
pub fn print(found: &Value, seed: u64) {
    for line in lines(found, seed) {
        say(&line);
    }
}

fn lines(found: &Value, seed: u64) -> Vec<String> {
    let with =
        |summary: &str| of_mutants(found).filter(|it| it["summary"] == summary).map(name).collect::<Vec<_>>();
    let [caught, missed, timeout, unviable] =
        ["CaughtMutant", "MissedMutant", "Timeout", "Unviable"].map(with);
    let mut lines = Vec::new();
    for (word, names) in [("survived", &missed), ("ran too long", &timeout)] {
        lines.extend(names.iter().map(|name| format!("    {word}: {name}")));
    }
    let mut times: Vec<f64> = of_mutants(found).map(took).collect();
    times.sort_by(f64::total_cmp);
    let median = times.get(times.len() / 2).copied().unwrap_or_default();
    let all: f64 = times.iter().sum();
    let text = |time: f64| seconds(Duration::from_secs_f64(time));
    lines.push(format!("    a mutant takes {} by the median, all of them took {}", text(median), text(all)));
    // A mutant that makes the tests run for ever is noticed as well.
    let noticed = caught.len() + timeout.len();
    let viable = noticed + missed.len();
    let share = 100.0 * noticed as f64 / viable.max(1) as f64;
    lines.push(format!(
        "seed {seed}: {noticed} of {viable} caught ({share:.1} %), {} of them by running too long; {} missed, {} unviable",
        timeout.len(),
        missed.len(),
        unviable.len()
    ));
    lines
}

/// The outcomes of mutants; the first outcome is the tests without any.
fn of_mutants(found: &Value) -> impl Iterator<Item = &Value> {
    let outcomes = found["outcomes"].as_array().map_or(&[][..], Vec::as_slice);
    outcomes.iter().filter(|outcome| outcome["scenario"]["Mutant"].is_object())
}

fn name(outcome: &Value) -> String {
    outcome["scenario"]["Mutant"]["name"].as_str().unwrap_or("a mutant without a name").to_owned()
}

/// Seconds of building and testing it.
fn took(outcome: &Value) -> f64 {
    let phases = outcome["phase_results"].as_array().map_or(&[][..], Vec::as_slice);
    phases.iter().filter_map(|phase| phase["duration"].as_f64()).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn survivors_are_named_and_counted() {
        let mutant = |name: &str, summary: &str, took: f64| {
            json!({ "scenario": { "Mutant": { "name": name } }, "summary": summary,
                "phase_results": [{ "phase": "Build", "duration": took }, { "phase": "Test", "duration": 1.0 }] })
        };
        let found = json!({ "outcomes": [
            { "scenario": "Baseline", "summary": "Success", "phase_results": [{ "phase": "Build", "duration": 99.0 }] },
            mutant("a.rs:1:1: one", "CaughtMutant", 4.0),
            mutant("a.rs:2:1: two", "MissedMutant", 5.0),
            mutant("a.rs:3:1: three", "Timeout", 6.0),
            mutant("a.rs:4:1: four", "Unviable", 1.0),
        ] });
        assert_eq!(count(&found), 4);
        assert_eq!(
            lines(&found, 7),
            [
                "    survived: a.rs:2:1: two",
                "    ran too long: a.rs:3:1: three",
                "    a mutant takes 6.0 s by the median, all of them took 20 s",
                "seed 7: 2 of 3 caught (66.7 %), 1 of them by running too long; 1 missed, 1 unviable",
            ]
        );
    }
}
