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
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The version of cargo-mutants that is installed.
const VERSION: &str = "27.1.0";

/// Mutants of a sample, where no other number is asked for.
pub const SAMPLE: usize = 150;

/// The folders in which mutants are made.
const MUTATED: [&str; 5] = ["src/cure", "src/migration", "src/plan", "src/ink", "src/optics"];

/// Draws a sample of mutants with a seed, runs the native tests on each, and says which survived.
///
/// # Errors
/// [`anyhow::Error`] if cargo-mutants cannot be installed, or the tests fail without any mutant.
pub fn mutants(workspace: &Workspace, seed: u64, sample: usize) -> Result<()> {
    let home = workspace.target().join("mutants");
    let program = install(workspace, &home)?;
    let tree = home.join("tree");
    step("copy the sources", || tree::mirror(&workspace.root, &tree))?;
    let all = list(&program, &tree)?;
    let drawn = draw(all.clone(), seed, sample);
    say(&format!("==> {} mutants of {}, drawn with seed {seed}", drawn.len(), all.len()));
    for name in &drawn {
        say(&format!("    {name}"));
    }
    let found = test(&program, &home, &tree, &drawn)?;
    outcomes::print(&found, seed);
    write(&workspace.dist().join("mutants.json"), format!("{}\n", serde_json::to_string_pretty(&found)?))
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

/// The names of every mutant, sorted: `src/cure/mod.rs:45:9: replace * with / in Cure<L>::advance`.
fn list(program: &Path, tree: &Path) -> Result<Vec<String>> {
    let mut command = cargo_mutants(program, tree);
    command.args(["--list", "--json"]);
    for folder in MUTATED {
        command.arg("--file").arg(format!("{folder}/**"));
    }
    let text = as_typed(&command);
    let output =
        command.stderr(Stdio::inherit()).output().with_context(|| format!("`{text}` could not start"))?;
    ensure!(output.status.success(), "`{text}` failed; its output is above");
    let listed: Vec<Value> = serde_json::from_slice(&output.stdout)?;
    let names = listed.iter().filter_map(|mutant| mutant["name"].as_str());
    let mut names: Vec<String> = names.map(str::to_owned).collect();
    ensure!(!names.is_empty(), "`{text}` lists no mutant");
    names.sort();
    Ok(names)
}

/// Draws so many of the names, the same ones for the same seed; sorted.
fn draw(mut names: Vec<String>, seed: u64, count: usize) -> Vec<String> {
    let mut state = seed;
    let count = count.min(names.len());
    // The first `count` places of a shuffle (Fisher and Yates), with random numbers by SplitMix64 (Steele, Lea & Flood 2014).
    for place in 0..count {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut random = state;
        random = (random ^ (random >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        random = (random ^ (random >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        random ^= random >> 31;
        let left = (names.len() - place) as u64;
        names.swap(place, place + (random % left) as usize);
    }
    names.truncate(count);
    names.sort();
    names
}

/// Runs the native tests on each of these mutants and hands back what cargo-mutants wrote of it.
fn test(program: &Path, home: &Path, tree: &Path, names: &[String]) -> Result<Value> {
    let mut command = cargo_mutants(program, tree);
    command.args(["--in-place", "--no-shuffle", "--caught", "--unviable", "--output"]).arg(home);
    for name in names {
        command.arg("--re").arg(format!("^{}$", escape(name)));
    }
    command.args(["--", "--test", "*"]);
    command
        .env("CARGO_TARGET_DIR", home.join("build"))
        .env("CARGO_INCREMENTAL", "1")
        .env("CARGO_PROFILE_DEV_DEBUG", "false");
    // It fails where a mutant survives, which is no failure of this command.
    command.status().with_context(|| format!("{} could not start", program.display()))?;
    let file = home.join("mutants.out/outcomes.json");
    let found = std::fs::read(&file).with_context(|| format!("{} is not there", file.display()))?;
    let found: Value = serde_json::from_slice(&found)?;
    ensure!(
        outcomes::count(&found) == names.len(),
        "of {} mutants {} were tested. Next thing to try: read what cargo-mutants says above; if the tests fail without \
         any mutant, mend them first",
        names.len(),
        outcomes::count(&found)
    );
    Ok(found)
}

/// cargo-mutants on the package in a folder.
fn cargo_mutants(program: &Path, tree: &Path) -> Command {
    let mut command = Command::new(program);
    command.args(["mutants", "--package", "whitehold", "--dir"]).arg(tree).current_dir(tree);
    command
}

/// A text as a regular expression that matches only that text.
fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(2 * text.len());
    for letter in text.chars() {
        if r"\.+*?()|[]{}^$".contains(letter) {
            escaped.push('\\');
        }
        escaped.push(letter);
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_seed_draws_the_same_mutants_each_time() {
        let names: Vec<String> = (0..100).map(|number| format!("mutant {number:02}")).collect();
        let drawn = draw(names.clone(), 7, 10);
        assert_eq!(drawn, draw(names.clone(), 7, 10));
        assert_ne!(drawn, draw(names.clone(), 8, 10));
        assert_eq!(drawn.len(), 10);
        assert!(drawn.windows(2).all(|pair| pair[0] < pair[1]), "one is drawn twice: {drawn:?}");
        assert_eq!(draw(names.clone(), 7, 1000), names);
    }

    /// Each mutant of a hundred is drawn about as often: of 1,000 draws of ten it comes 100 times, and by chance (binomial,
    /// five standard deviations) between 53 and 147 times.
    #[test]
    fn every_mutant_is_drawn_as_often() {
        let names: Vec<String> = (0..100).map(|number| number.to_string()).collect();
        let mut counts = std::collections::BTreeMap::<String, u32>::new();
        for name in (0..1000).flat_map(|seed| draw(names.clone(), seed, 10)) {
            *counts.entry(name).or_default() += 1;
        }
        assert_eq!(counts.len(), 100);
        assert!(counts.values().all(|count| (53..=147).contains(count)), "{counts:?}");
    }

    #[test]
    fn a_name_is_searched_for_letter_by_letter() {
        assert_eq!(
            escape("a.rs:1:2: replace + with * in A<L>::f"),
            r"a\.rs:1:2: replace \+ with \* in A<L>::f"
        );
        assert_eq!(escape("f -> [f64; 2] with [0.0]"), r"f -> \[f64; 2\] with \[0\.0\]");
    }
}
