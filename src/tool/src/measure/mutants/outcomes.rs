//! What became of each mutant.

use crate::host::progress::seconds;
use anyhow::{Context, Result};
use serde_json::{Value, json};
use std::path::Path;
use std::time::Duration;

/// What became of a mutant.
#[derive(Clone, Debug, PartialEq)]
pub struct MutantOutcome {
    /// Place and change: `src/cure/mod.rs:45:9: replace * with / in Cure<L>::advance`.
    pub name: String,
    result: MutantResult,
    /// Time of compiling and testing it.
    took: Duration,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum MutantResult {
    /// A test failed.
    Caught,
    /// The tests ran too long, which is noticed as well.
    TooLong,
    /// No test failed.
    Survived,
    /// It does not compile.
    Unviable,
}

impl MutantResult {
    fn word(self) -> &'static str {
        match self {
            Self::Caught => "caught",
            Self::TooLong => "ran too long",
            Self::Survived => "survived",
            Self::Unviable => "does not compile",
        }
    }
}

impl MutantOutcome {
    /// Reads what cargo-mutants wrote of one mutant.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the file is missing, or holds something else.
    pub fn read(file: &Path) -> Result<Self> {
        let text = std::fs::read(file).with_context(|| format!("{} is not there", file.display()))?;
        Self::of(&serde_json::from_slice(&text)?)
            .with_context(|| format!("{} holds no mutant", file.display()))
    }

    fn of(found: &Value) -> Option<Self> {
        let outcome = found["outcomes"].as_array()?.iter().find(|it| it["scenario"]["Mutant"].is_object())?;
        let name = outcome["scenario"]["Mutant"]["name"].as_str()?.to_owned();
        let result = match outcome["summary"].as_str()? {
            "CaughtMutant" => MutantResult::Caught,
            "Timeout" => MutantResult::TooLong,
            "MissedMutant" => MutantResult::Survived,
            "Unviable" => MutantResult::Unviable,
            _ => return None,
        };
        let phases = outcome["phase_results"].as_array()?;
        let took = phases.iter().filter_map(|phase| phase["duration"].as_f64()).sum();
        Some(Self { name, result, took: Duration::try_from_secs_f64(took).ok()? })
    }

    /// As it is printed when it is known.
    pub fn line(&self) -> String {
        format!("{:16} {:>6}  {}", self.result.word(), seconds(self.took), self.name)
    }

    /// As it is written into `dist/mutants.json`.
    pub fn json(&self) -> Value {
        json!({ "mutant": self.name, "result": self.result.word(), "seconds": self.took.as_secs_f64() })
    }
}

/// The survivors, the time of a mutant, and how many were caught.
pub fn summary(outcomes: &[MutantOutcome], seed: u64) -> Vec<String> {
    let count = |result| outcomes.iter().filter(|it| it.result == result).count();
    let [caught, too_long, survived, unviable] =
        [MutantResult::Caught, MutantResult::TooLong, MutantResult::Survived, MutantResult::Unviable]
            .map(count);
    let survivors = outcomes.iter().filter(|it| it.result == MutantResult::Survived);
    let mut lines: Vec<String> = survivors.map(|it| format!("survived: {}", it.name)).collect();
    let mut times: Vec<Duration> = outcomes.iter().map(|it| it.took).collect();
    times.sort();
    let median = times.get(times.len() / 2).copied().unwrap_or_default();
    lines.push(format!(
        "a mutant takes {} by the median, all took {}",
        seconds(median),
        seconds(times.iter().sum())
    ));
    let (noticed, viable) = (caught + too_long, caught + too_long + survived);
    let share = 100.0 * noticed as f64 / viable.max(1) as f64;
    lines.push(format!(
        "seed {seed}: {noticed} of {viable} caught ({share:.1} %), {too_long} of them by running too long; {survived} \
         survived, {unviable} did not compile"
    ));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outcome(name: &str, summary: &str, took: f64) -> MutantOutcome {
        let phases = json!([{ "phase": "Build", "duration": took }, { "phase": "Test", "duration": 1.0 }]);
        let mutant = json!({ "scenario": { "Mutant": { "name": name } }, "summary": summary, "phase_results": phases });
        let baseline = json!({ "scenario": "Baseline", "summary": "Success", "phase_results": [] });
        MutantOutcome::of(&json!({ "outcomes": [baseline, mutant] })).unwrap()
    }

    #[test]
    fn survivors_are_named_and_counted() {
        let outcomes = [
            outcome("a.rs:1:1: one", "CaughtMutant", 4.0),
            outcome("a.rs:2:1: two", "MissedMutant", 5.0),
            outcome("a.rs:3:1: three", "Timeout", 6.0),
            outcome("a.rs:4:1: four", "Unviable", 1.0),
        ];
        assert_eq!(outcomes[0].line(), "caught            5.0 s  a.rs:1:1: one");
        assert_eq!(
            summary(&outcomes, 7),
            [
                "survived: a.rs:2:1: two",
                "a mutant takes 6.0 s by the median, all took 20 s",
                "seed 7: 2 of 3 caught (66.7 %), 1 of them by running too long; 1 survived, 1 did not compile",
            ]
        );
    }

    #[test]
    fn a_file_without_a_mutant_is_refused() {
        for found in
            [json!({}), json!({ "outcomes": [] }), json!({ "outcomes": [{ "scenario": "Baseline" }] })]
        {
            assert_eq!(MutantOutcome::of(&found), None, "{found}");
        }
    }
}
