//! What became of each mutant, and the file in which that is kept.

use crate::host::progress::seconds;
use crate::host::workspace::{read, write};
use anyhow::Result;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// What became of a mutant.
#[derive(Clone, Debug, PartialEq)]
pub struct MutantOutcome {
    /// Place and change: `src/cure/mod.rs:45:9: replace * with / in Cure<L>::advance`.
    pub name: String,
    /// What the tests said.
    pub result: MutantResult,
    /// Time of compiling and testing it.
    pub took: Duration,
}

/// What the tests said of a mutant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MutantResult {
    /// A test failed: its program and its name.
    Caught(String),
    /// The tests ran too long, which is noticed as well.
    TooLong,
    /// No test failed.
    Survived,
    /// It does not compile.
    Unviable,
}

impl MutantResult {
    fn word(&self) -> &'static str {
        match self {
            Self::Caught(_) => "caught",
            Self::TooLong => "ran too long",
            Self::Survived => "survived",
            Self::Unviable => "does not compile",
        }
    }

    /// The program and the test that caught it.
    fn by(&self) -> Option<&str> {
        if let Self::Caught(by) = self { Some(by) } else { None }
    }

    /// The program that caught it.
    pub fn program(&self) -> Option<&str> {
        self.by()?.split(' ').next()
    }
}

impl MutantOutcome {
    /// As it is printed when it is known.
    pub fn line(&self) -> String {
        let by = self.result.by().map_or(String::new(), |by| format!(" [{by}]"));
        format!("{:16} {:>6}  {}{by}", self.result.word(), seconds(self.took), self.name)
    }

    fn json(&self) -> Value {
        let (result, by) = (self.result.word(), self.result.by());
        json!({ "mutant": self.name, "result": result, "by": by, "seconds": self.took.as_secs_f64() })
    }

    fn of(json: &Value) -> Option<Self> {
        let by = json["by"].as_str().unwrap_or_default().to_owned();
        let word = json["result"].as_str()?;
        let results =
            [MutantResult::Caught(by), MutantResult::TooLong, MutantResult::Survived, MutantResult::Unviable];
        Some(Self {
            name: json["mutant"].as_str()?.to_owned(),
            result: results.into_iter().find(|result| result.word() == word)?,
            took: Duration::try_from_secs_f64(json["seconds"].as_f64()?).ok()?,
        })
    }
}

/// `dist/mutants.json`: what is known of a sample, written after each mutant, so that one that is stopped goes on from there.
pub struct OutcomeFile {
    path: PathBuf,
    seed: u64,
    /// The digest of the sources that were tested.
    sources: String,
    /// In the order in which the mutants were drawn.
    pub outcomes: Vec<MutantOutcome>,
}

impl OutcomeFile {
    /// What is known of these mutants: the beginning of the sample that an earlier run tested with the same seed on the same
    /// sources.
    pub fn resume<'a>(
        path: PathBuf,
        seed: u64,
        sources: String,
        names: impl Iterator<Item = &'a str>,
    ) -> Self {
        let earlier = earlier(&path, seed, &sources).unwrap_or_default();
        let same = earlier.into_iter().zip(names).take_while(|(outcome, name)| outcome.name == *name);
        let outcomes = same.map(|(outcome, _)| outcome).collect();
        Self { path, seed, sources, outcomes }
    }

    /// Keeps what became of one more.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the file cannot be written.
    pub fn push(&mut self, outcome: MutantOutcome) -> Result<()> {
        self.outcomes.push(outcome);
        let outcomes: Vec<_> = self.outcomes.iter().map(MutantOutcome::json).collect();
        let all = json!({ "seed": self.seed, "sources": self.sources, "outcomes": outcomes });
        write(&self.path, format!("{}\n", serde_json::to_string_pretty(&all)?))
    }

    /// The survivors, the time of a mutant, and how many were caught.
    pub fn summary(&self) -> Vec<String> {
        let survived: Vec<_> = self
            .outcomes
            .iter()
            .filter(|it| it.result == MutantResult::Survived)
            .map(|it| &it.name)
            .collect();
        let count = |result: &MutantResult| self.outcomes.iter().filter(|it| it.result == *result).count();
        let (too_long, unviable) = (count(&MutantResult::TooLong), count(&MutantResult::Unviable));
        let mut times: Vec<Duration> = self.outcomes.iter().map(|it| it.took).collect();
        times.sort();
        let median = times.get(times.len() / 2).copied().unwrap_or_default();
        let mut lines: Vec<String> = survived.iter().map(|name| format!("survived: {name}")).collect();
        lines.push(format!(
            "a mutant takes {} by the median, all took {}",
            seconds(median),
            seconds(times.iter().sum())
        ));
        let viable = times.len() - unviable;
        let noticed = viable - survived.len();
        let share = 100.0 * noticed as f64 / viable.max(1) as f64;
        lines.push(format!(
            "seed {}: {noticed} of {viable} caught ({share:.1} %), {too_long} of them by running too long; {} survived, \
             {unviable} did not compile",
            self.seed,
            survived.len()
        ));
        lines
    }
}

/// What an earlier run kept, if it was of the same seed and the same sources.
fn earlier(path: &Path, seed: u64, sources: &str) -> Option<Vec<MutantOutcome>> {
    let kept: Value = serde_json::from_str(&read(path).ok()?).ok()?;
    let same = kept["seed"].as_u64() == Some(seed) && kept["sources"].as_str() == Some(sources);
    same.then(|| kept["outcomes"].as_array()?.iter().map(MutantOutcome::of).collect())?
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outcomes() -> Vec<MutantOutcome> {
        let by = || MutantResult::Caught("heat cure::fused".into());
        [("one", by(), 5), ("two", MutantResult::Survived, 6), ("three", MutantResult::TooLong, 7)]
            .into_iter()
            .chain([("four", MutantResult::Unviable, 1)])
            .map(|(name, result, took)| MutantOutcome {
                name: name.into(),
                result,
                took: Duration::from_secs(took),
            })
            .collect()
    }

    #[test]
    fn survivors_are_named_and_counted() {
        assert_eq!(outcomes()[0].line(), "caught            5.0 s  one [heat cure::fused]");
        let file =
            OutcomeFile { path: PathBuf::new(), seed: 7, sources: String::new(), outcomes: outcomes() };
        assert_eq!(
            file.summary(),
            [
                "survived: two",
                "a mutant takes 6.0 s by the median, all took 19 s",
                "seed 7: 2 of 3 caught (66.7 %), 1 of them by running too long; 1 survived, 1 did not compile",
            ]
        );
    }

    #[test]
    fn a_sample_goes_on_where_it_was_stopped() -> Result<()> {
        let path = std::env::temp_dir().join(format!("whitehold-outcomes-{}.json", std::process::id()));
        let resume = |seed, sources: &str, names: &[&str]| {
            OutcomeFile::resume(path.clone(), seed, sources.into(), names.iter().copied()).outcomes
        };
        let drawn = ["one", "two", "three", "four", "five"];
        let mut file = OutcomeFile::resume(path.clone(), 7, "a".into(), drawn.into_iter());
        assert_eq!(file.outcomes, [], "before anything is kept");
        outcomes().into_iter().try_for_each(|outcome| file.push(outcome))?;
        assert_eq!(resume(7, "a", &drawn), outcomes());
        assert_eq!(resume(7, "a", &drawn[..2]), outcomes()[..2], "a smaller sample");
        assert_eq!(resume(8, "a", &drawn), [], "another seed");
        assert_eq!(resume(7, "b", &drawn), [], "other sources");
        assert_eq!(resume(7, "a", &["one", "other", "three"]), outcomes()[..1], "another list of mutants");
        std::fs::write(&path, "[")?;
        assert_eq!(resume(7, "a", &drawn), [], "a file that was half written");
        std::fs::remove_file(&path)?;
        Ok(())
    }
}
