//! Mutation testing: would the native tests notice a fault? A sample of small faults (mutants) is made in the physics and in the
//! plan, one at a time, and the tests are run on each.
//!
//! In: the sources and a seed. Out: how many mutants the tests caught, and every one that survived. It must not touch the
//! person's own files: the faults are made in a copy under `target/mutants`, and so is everything that is built for them.
//!
//! cargo-mutants, compiled once from crates.io, lists the faults that can be made; this tool makes each and runs the tests. What
//! makes a mutant cheap: the copy and its build stay from run to run, so only what a fault touches is compiled again; no
//! debug information; integration tests only, for the unit tests would compile the whole library a second time; and
//! first the tests that are likeliest to fail (see [`test_bench`]). The optimization is that of the tests: without it they take three times as
//! long as the compiler saves.

mod fault;
mod outcomes;
mod test_bench;
mod tree;

use crate::host::command::{as_typed, run};
use crate::host::progress::{say, step};
use crate::host::workspace::Workspace;
use anyhow::{Context, Result, ensure};
use fault::Fault;
use outcomes::OutcomeFile;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use test_bench::TestBench;

/// The version of cargo-mutants that is installed.
const VERSION: &str = "27.1.0";

/// Mutants of a sample, where no other number is asked for.
pub const SAMPLE: usize = 150;

/// The folders in which mutants are made.
const MUTATED: [&str; 5] = ["src/cure", "src/migration", "src/plan", "src/ink", "src/optics"];

/// Draws a sample of mutants with a seed, runs the native tests on each, and says which survived. What an earlier run found
/// out on the same sources is not tested again.
///
/// # Errors
/// [`anyhow::Error`] if cargo-mutants cannot be installed, or the tests fail without any mutant.
pub fn mutants(workspace: &Workspace, seed: u64, sample: usize) -> Result<()> {
    let home = workspace.target().join("mutants");
    let program = install(workspace, &home)?;
    let tree = home.join("tree");
    step("copy the sources", || tree::mirror(&workspace.root, &tree))?;
    let all = list(&program, &tree)?;
    let drawn: Vec<&Fault> = draw(all.len(), seed, sample).into_iter().map(|place| &all[place]).collect();
    say(&format!("==> {} mutants of {}, drawn with seed {seed}", drawn.len(), all.len()));
    let names = drawn.iter().map(|fault| fault.name.as_str());
    let path = workspace.dist().join("mutants.json");
    let mut file = OutcomeFile::resume(path, seed, tree::digest(&workspace.root)?, names);
    file.outcomes.iter().for_each(|outcome| say(&format!("    {}", outcome.line())));
    let left = &drawn[file.outcomes.len()..];
    if !left.is_empty() {
        let bench = TestBench::on(workspace, tree, home.join("build"))?;
        for fault in left {
            let outcome = bench.test(fault, &file.outcomes)?;
            say(&format!("    {}", outcome.line()));
            file.push(outcome)?;
        }
    }
    file.summary().iter().for_each(|line| say(line));
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

/// All faults that can be made in these sources, in the order in which cargo-mutants lists them.
fn list(program: &Path, tree: &Path) -> Result<Vec<Fault>> {
    let mut command = Command::new(program);
    command
        .args(["mutants", "--list", "--json", "--package", "whitehold", "--dir"])
        .arg(tree)
        .current_dir(tree);
    for folder in MUTATED {
        command.arg("--file").arg(format!("{folder}/**"));
    }
    let text = as_typed(&command);
    let output =
        command.stderr(Stdio::inherit()).output().with_context(|| format!("`{text}` could not start"))?;
    ensure!(output.status.success(), "`{text}` failed; its output is above");
    Fault::read_all(&output.stdout)
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
