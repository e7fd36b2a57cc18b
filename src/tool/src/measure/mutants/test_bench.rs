//! The copy in which faults are made, and the test programs that are run on it.
//!
//! In: a fault. Out: the first test that fails on it, if any does.
//!
//! **Decision**: the test programs are compiled and run one after another, and no further once a test has failed. First comes the
//! program that has caught the most mutants of the fault's folder so far; before any is caught, the quickest. **Because** one
//! failure is all that is asked, and compiling a program takes as long as most take to run. cargo and cargo-mutants compile all
//! and run them by name, the slowest first, and each to its end. **Reconsider when** cargo takes an order and stops at the first
//! failure.

use super::fault::Fault;
use super::outcomes::{MutantOutcome, MutantResult};
use super::tree;
use crate::host::progress::step;
use crate::host::workspace::{Workspace, read, write};
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::cmp::Reverse;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::mpsc::{RecvTimeoutError, channel};
use std::time::{Duration, Instant};

/// The test programs, the quick ones first. `project` is not among them: it reads the source as text.
const PROGRAMS: [&str; 6] = ["print", "dye", "heat", "page", "records", "answers"];

/// Tests that are left out: those that lay any cloth into any dryer. They take longer than all others together, and no mutant
/// is made in the dryer.
const LEFT_OUT: [&str; 2] = ["--skip", "robust::"];

/// How many times longer than on the unchanged sources a program may run: a fault can make a loop endless, and a machine may
/// be busy. Chosen.
const TIMES_LONGER: u32 = 5;

/// What a program may take on top of that, for one that runs in no time. Chosen.
const AT_LEAST: Duration = Duration::from_secs(20);

/// Where property tests keep what failed. A fault's failures are no part of the project.
const KEPT_FAILURES: &str = "tests/proptest-regressions";

/// Where faults are made and tested.
pub struct TestBench<'a> {
    workspace: &'a Workspace,
    /// The copy of the sources.
    tree: PathBuf,
    /// What cargo writes.
    build: PathBuf,
    /// How long each program may run.
    limits: Vec<(&'static str, Duration)>,
}

/// How a test program ended.
#[derive(Debug, PartialEq)]
enum Run {
    Passed,
    /// The test that failed first, or what else ended the program.
    Failed(String),
    TooLong,
}

impl<'a> TestBench<'a> {
    /// A bench on a copy without any fault: compiles the programs and runs them.
    ///
    /// # Errors
    /// [`anyhow::Error`] if a program does not compile, or a test fails.
    pub fn on(workspace: &'a Workspace, tree: PathBuf, build: PathBuf) -> Result<Self> {
        let mut bench = Self { workspace, tree, build, limits: Vec::new() };
        for name in PROGRAMS {
            let compile = || bench.compile(name, Stdio::inherit())?.context("it does not compile");
            let program = step(&format!("compile the tests {name}"), compile)?;
            let limit = step("run them", || bench.limit(&program))?;
            bench.limits.push((name, limit));
        }
        Ok(bench)
    }

    /// How long a program may run, after it was run on the unchanged sources.
    fn limit(&self, program: &Path) -> Result<Duration> {
        let start = Instant::now();
        match run(program, &self.tree, Duration::MAX)? {
            Run::Passed => Ok(start.elapsed() * TIMES_LONGER + AT_LEAST),
            other => {
                bail!("without any fault, {}: {other:?}. Run `cargo test` and mend it", name_of(program))
            }
        }
    }

    /// Makes a fault, runs the tests on it until one fails, and takes it back. `earlier` is what became of other mutants.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the file cannot be written, or a program cannot be started.
    pub fn test(&self, fault: &Fault, earlier: &[MutantOutcome]) -> Result<MutantOutcome> {
        let start = Instant::now();
        let file = self.tree.join(&fault.file);
        let text = read(&file)?;
        write(&file, fault.planted(&text)?)?;
        let result = self.first_failure(&self.in_order(&fault.file, earlier));
        write(&file, text)?;
        tree::mirror(&self.workspace.root.join(KEPT_FAILURES), &self.tree.join(KEPT_FAILURES))?;
        Ok(MutantOutcome { name: fault.name.clone(), result: result?, took: start.elapsed() })
    }

    /// The programs and how long they may run: that which has caught the most mutants of the file's folder first.
    fn in_order(&self, file: &Path, earlier: &[MutantOutcome]) -> Vec<(&'static str, Duration)> {
        let here = |outcome: &&MutantOutcome| {
            let place = outcome.name.split(':').next().map(Path::new);
            place.and_then(Path::parent) == file.parent()
        };
        let caught = |program: &str| {
            earlier.iter().filter(here).filter(|outcome| outcome.result.program() == Some(program)).count()
        };
        let mut programs = self.limits.clone();
        programs.sort_by_key(|(program, _)| Reverse(caught(program)));
        programs
    }

    fn first_failure(&self, programs: &[(&str, Duration)]) -> Result<MutantResult> {
        for (name, limit) in programs {
            let Some(program) = self.compile(name, Stdio::null())? else {
                return Ok(MutantResult::Unviable);
            };
            match run(&program, &self.tree, *limit)? {
                Run::Passed => {}
                Run::Failed(by) => return Ok(MutantResult::Caught(by)),
                Run::TooLong => return Ok(MutantResult::TooLong),
            }
        }
        Ok(MutantResult::Survived)
    }

    /// Compiles a test program into a folder of its own, only what changed, and without debug information; nothing if it does
    /// not compile.
    fn compile(&self, name: &str, errors: Stdio) -> Result<Option<PathBuf>> {
        let mut cargo = self.workspace.cargo();
        cargo.args(["test", "--no-run", "--quiet", "--package", "whitehold", "--test", name]);
        cargo.args(["--message-format", "json-render-diagnostics"]);
        cargo
            .env("CARGO_TARGET_DIR", &self.build)
            .env("CARGO_INCREMENTAL", "1")
            .env("CARGO_PROFILE_DEV_DEBUG", "false");
        let output =
            cargo.current_dir(&self.tree).stderr(errors).output().context("cargo could not start")?;
        let mut messages =
            output.stdout.split(|byte| *byte == b'\n').flat_map(serde_json::from_slice::<Value>);
        let program = messages.find_map(|it| it["executable"].as_str().map(PathBuf::from));
        Ok(program.filter(|_| output.status.success()))
    }
}

/// Runs a test program until its first failure.
fn run(program: &Path, folder: &Path, limit: Duration) -> Result<Run> {
    let mut command = Command::new(program);
    command.args(LEFT_OUT).current_dir(folder);
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::null());
    let mut child = command.spawn().with_context(|| format!("{} could not start", program.display()))?;
    let output = BufReader::new(child.stdout.take().context("a program without output")?);
    let (sender, lines) = channel();
    // Ends with the program, or with the first line that is not asked for any more.
    std::thread::spawn(move || output.lines().map_while(Result::ok).try_for_each(|line| sender.send(line)));
    let start = Instant::now();
    let run = loop {
        match lines.recv_timeout(limit.saturating_sub(start.elapsed())) {
            Ok(line) => {
                if let Some(test) =
                    line.strip_prefix("test ").and_then(|line| line.strip_suffix(" ... FAILED"))
                {
                    break Run::Failed(format!("{} {test}", name_of(program)));
                }
            }
            Err(RecvTimeoutError::Timeout) => break Run::TooLong,
            Err(RecvTimeoutError::Disconnected) => {
                let status = child.wait()?;
                break if status.success() {
                    Run::Passed
                } else {
                    Run::Failed(format!("{} {status}", name_of(program)))
                };
            }
        }
    };
    // Fails only where the program has ended by itself.
    let _ = child.kill();
    child.wait()?;
    Ok(run)
}

/// `heat` of `…/deps/heat-0123456789abcdef`.
fn name_of(program: &Path) -> String {
    let stem = program.file_stem().unwrap_or_default().to_string_lossy();
    stem.rsplit_once('-').map_or(stem.to_string(), |(name, _)| name.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_caught_others_of_the_folder_comes_first() {
        let workspace = Workspace { root: PathBuf::new() };
        let limits = PROGRAMS.map(|name| (name, Duration::MAX)).into();
        let bench = TestBench { workspace: &workspace, tree: PathBuf::new(), build: PathBuf::new(), limits };
        let outcome = |file: &str, result| MutantOutcome {
            name: format!("src/{file}.rs:1:1: replace"),
            result,
            took: Duration::ZERO,
        };
        let caught = |file: &str, by: &str| outcome(file, MutantResult::Caught(by.into()));
        let earlier = [
            caught("cure/scorch", "page a::b"),
            caught("plan/answer/window", "answers a::b"),
            caught("plan/answer/pick", "answers a::b"),
            caught("plan/answer/pick", "heat a::b"),
            caught("plan/bleed/rim", "dye a::b"),
            outcome("plan/answer/pick", MutantResult::Survived),
        ];
        for (file, expected) in [
            ("src/optics/lab.rs", PROGRAMS),
            ("src/cure/mod.rs", ["page", "print", "dye", "heat", "records", "answers"]),
            ("src/plan/answer/mod.rs", ["answers", "heat", "print", "dye", "page", "records"]),
        ] {
            let order: Vec<_> =
                bench.in_order(Path::new(file), &earlier).into_iter().map(|it| it.0).collect();
            assert_eq!(order, expected, "{file}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_program_is_stopped_at_its_first_failure() -> Result<()> {
        use std::os::unix::fs::PermissionsExt;
        let folder = std::env::temp_dir().join(format!("whitehold-programs-{}", std::process::id()));
        let rows = [
            ("passes", "echo 'test a ... ok'", Run::Passed),
            ("fails", "echo 'test a::b ... FAILED'; exec sleep 600", Run::Failed("fails a::b".into())),
            ("crashes", "exit 3", Run::Failed("crashes exit status: 3".into())),
            ("endless", "exec sleep 600", Run::TooLong),
        ];
        for (name, script, expected) in rows {
            let program = folder.join(format!("{name}-0123"));
            write(&program, format!("#!/bin/sh\n{script}\n"))?;
            std::fs::set_permissions(&program, std::fs::Permissions::from_mode(0o755))?;
            let limit = Duration::from_secs(if name == "endless" { 1 } else { 60 });
            assert_eq!(run(&program, &folder, limit)?, expected, "{name}");
        }
        std::fs::remove_dir_all(&folder)?;
        Ok(())
    }
}
