//! Mutation testing: would the native tests notice a fault? A sample of small faults (mutants) is made in the physics and in the
//! plan, one at a time, and the tests are run on each.
//!
//! In: the sources and a seed. Out: how many mutants the tests caught, and every one that survived. It must not touch the
//! person's own files: the faults are made in a copy under `target/mutants`, and so is everything that is built for them.
//!
//! cargo-mutants makes the faults and runs the tests; it is compiled once, from crates.io. What makes a mutant cheap: the copy
//! and its build stay from run to run, so only what a fault touches is compiled again; no debug information; integration tests
//! only, for the unit tests would compile the whole library a second time. The optimization is that of the tests: without it
//! they take three times as long as the compiler saves.

mod outcomes;
mod tree;

use crate::host::command::{as_typed, run};
use crate::host::progress::{say, step};
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result, ensure};
use outcomes::MutantOutcome;
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// The version of cargo-mutants that is installed.
const VERSION: &str = "27.1.0";

/// Mutants of a sample, where no other number is asked for.
pub const SAMPLE: usize = 150;

/// How many times longer than the unchanged tests those of a mutant may run: a fault can make a loop endless, and a machine
/// may be busy. Chosen.
const TIMES_LONGER: u32 = 5;

/// The tests that are run: the integration tests, but for those that lay any cloth into any dryer. They take longer than all
/// others together, and no mutant is made in the dryer.
const TESTS: [&str; 2] = ["--test", "*"];
const LEFT_OUT: [&str; 3] = ["--", "--skip", "robust::"];

/// The folders in which mutants are made.
const MUTATED: [&str; 5] = ["src/cure", "src/migration", "src/plan", "src/ink", "src/optics"];

/// Draws a sample of mutants with a seed, runs the native tests on each, and says which survived.
///
/// # Errors
/// [`anyhow::Error`] if cargo-mutants cannot be installed, or the tests fail without any mutant.
pub fn mutants(workspace: &Workspace, seed: u64, sample: usize) -> Result<()> {
    let home = workspace.target().join("mutants");
    let program = install(workspace, &home)?;
    let bench = TestBench { program, tree: home.join("tree"), home };
    step("copy the sources", || tree::mirror(&workspace.root, &bench.tree))?;
    let all = bench.list()?;
    let drawn = draw(all.len(), seed, sample);
    say(&format!("==> {} mutants of {}, drawn with seed {seed}", drawn.len(), all.len()));
    step("compile the tests without any mutant", || bench.test_unchanged(workspace, &["--no-run"]))?;
    let start = Instant::now();
    step("run them", || bench.test_unchanged(workspace, &[]))?;
    let timeout = start.elapsed() * TIMES_LONGER;
    let mut outcomes = Vec::with_capacity(drawn.len());
    for place in drawn {
        let outcome = bench.test(place, &all, timeout)?;
        say(&format!("    {}", outcome.line()));
        outcomes.push(outcome);
        // After each of them: a sample takes an hour or more, and what is known when it is stopped stays known.
        let json: Vec<_> = outcomes.iter().map(MutantOutcome::json).collect();
        write(&workspace.dist().join("mutants.json"), format!("{}\n", serde_json::to_string_pretty(&json)?))?;
    }
    outcomes::summary(&outcomes, seed).iter().for_each(|line| say(line));
    Ok(())
}

/// The program cargo-mutants, compiled if it is not there yet.
fn install(workspace: &Workspace, home: &Path) -> Result<PathBuf> {
    let root = home.join(format!("cargo-mutants-{VERSION}"));
    let program = root.join("bin").join(format!("cargo-mutants{}", std::env::consts::EXE_SUFFIX));
    if !program.is_file() {
        say(&format!("    installing cargo-mutants {VERSION} into {}, some minutes, once", root.display()));
        let mut cargo = workspace.cargo();
        cargo
            .args(["install", "cargo-mutants", "--version", VERSION, "--locked", "--quiet", "--root"])
            .arg(&root);
        run(cargo.env_remove("CARGO_TARGET_DIR"), "let cargo reach crates.io once")?;
    }
    Ok(program)
}

/// Where mutants are made and tested.
struct TestBench {
    program: PathBuf,
    /// What cargo-mutants and cargo write.
    home: PathBuf,
    /// The copy of the sources.
    tree: PathBuf,
}

impl TestBench {
    /// The names of all mutants, in the order in which cargo-mutants numbers them:
    /// `src/cure/mod.rs:45:9: replace * with / in Cure<L>::advance`.
    fn list(&self) -> Result<Vec<String>> {
        let mut command = self.cargo_mutants();
        command.args(["--list", "--json"]).stderr(Stdio::inherit());
        let text = as_typed(&command);
        let output = command.output().with_context(|| format!("`{text}` could not start"))?;
        ensure!(output.status.success(), "`{text}` failed; its output is above");
        let listed: Vec<Value> = serde_json::from_slice(&output.stdout)?;
        let name = |mutant: &Value| mutant["name"].as_str().map(str::to_owned);
        listed.iter().map(name).collect::<Option<_>>().context("cargo-mutants lists a mutant without a name")
    }

    /// Compiles the tests as they are, and without `--no-run` runs them.
    fn test_unchanged(&self, workspace: &Workspace, arguments: &[&str]) -> Result<()> {
        let mut cargo = workspace.cargo();
        cargo.args(["test", "--quiet", "--package", "whitehold"]).args(TESTS).args(arguments).args(LEFT_OUT);
        cargo.current_dir(&self.tree);
        self.cheaply(&mut cargo).stdout(Stdio::null());
        run(&mut cargo, "`cargo test -p whitehold`, and mend what fails: it fails without any mutant")
    }

    /// Makes the mutant at this place of the list, runs the tests on it, and takes it back.
    ///
    /// cargo-mutants is told to take one mutant by dividing all of them into as many shards as there are: its filter by name
    /// lets other mutants through (27.1.0: those that delete a field of a struct).
    fn test(&self, place: usize, all: &[String], timeout: Duration) -> Result<MutantOutcome> {
        let mut command = self.cargo_mutants();
        command.args(["--in-place", "--no-shuffle", "--shard", &format!("{place}/{}", all.len())]);
        command.args(["--baseline", "skip", "--timeout", &timeout.as_secs().max(1).to_string()]);
        command.arg("--output").arg(&self.home).arg("--").args(TESTS).args(LEFT_OUT);
        command.stdout(Stdio::null());
        // It fails where the mutant survives, which is an outcome like another.
        self.cheaply(&mut command)
            .status()
            .with_context(|| format!("{} could not start", self.program.display()))?;
        let outcome = MutantOutcome::read(&self.home.join("mutants.out/outcomes.json"))?;
        ensure!(outcome.name == all[place], "{} was tested instead of {}", outcome.name, all[place]);
        Ok(outcome)
    }

    /// cargo-mutants on the copy.
    fn cargo_mutants(&self) -> Command {
        let mut command = Command::new(&self.program);
        command.args(["mutants", "--package", "whitehold", "--dir"]).arg(&self.tree).current_dir(&self.tree);
        for folder in MUTATED {
            command.arg("--file").arg(format!("{folder}/**"));
        }
        command
    }

    /// Compiles into a folder of its own, only what changed, and without debug information.
    fn cheaply<'a>(&self, command: &'a mut Command) -> &'a mut Command {
        command
            .env("CARGO_TARGET_DIR", self.home.join("build"))
            .env("CARGO_INCREMENTAL", "1")
            .env("CARGO_PROFILE_DEV_DEBUG", "false")
    }
}

/// Draws so many places of a list, the same ones in the same order for the same seed: the first of them are a sample as well,
/// so that one that is stopped early is still worth its figures.
fn draw(length: usize, seed: u64, count: usize) -> Vec<usize> {
    let mut places: Vec<usize> = (0..length).collect();
    let count = count.min(length);
    let mut state = seed;
    // The first `count` places of a shuffle (Fisher and Yates), with random numbers by SplitMix64 (Steele, Lea & Flood 2014).
    for place in 0..count {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut random = state;
        random = (random ^ (random >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        random = (random ^ (random >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        random ^= random >> 31;
        places.swap(place, place + (random % (length - place) as u64) as usize);
    }
    places.truncate(count);
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_seed_draws_the_same_mutants_each_time() {
        let drawn = draw(100, 7, 10);
        assert_eq!(drawn, draw(100, 7, 10));
        assert_ne!(drawn, draw(100, 8, 10));
        assert_eq!(drawn.len(), 10);
        assert_eq!(draw(100, 7, 20)[..10], drawn, "a smaller sample is the beginning of a larger one");
        let mut all = draw(100, 7, 1000);
        all.sort_unstable();
        assert_eq!(all, (0..100).collect::<Vec<_>>());
    }

    /// Each mutant of a hundred is drawn about as often: of 1,000 draws of ten it comes 100 times, and by chance (binomial,
    /// five standard deviations) between 53 and 147 times.
    #[test]
    fn every_mutant_is_drawn_as_often() {
        let mut counts = [0_u32; 100];
        for place in (0..1000).flat_map(|seed| draw(100, seed, 10)) {
            counts[place] += 1;
        }
        assert!(counts.iter().all(|count| (53..=147).contains(count)), "{counts:?}");
    }
}
