//! Every check there is, one after another: what a contributor runs before handing over, and what CI runs.
//!
//! In: the project, and which steps to run. Out: what each step printed, how many tests passed and failed, and an error that
//! names the steps that failed. It must not know what is measured.

pub mod browser_program;
mod steps;
mod tally;

use crate::host::progress::{say, seconds};
use crate::host::workspace::Workspace;
use crate::page::toolchain::Toolchain;
use anyhow::{Result, bail};
use std::time::Instant;
use tally::Tally;

/// What a step needs to know.
struct CheckOptions<'a> {
    workspace: &'a Workspace,
    toolchain: Toolchain,
    /// How often the browser is killed while it saves, where that is asked for.
    kills: Option<String>,
}

struct Step {
    name: &'static str,
    what: &'static str,
    run: fn(&CheckOptions<'_>) -> Result<Tally>,
}

const STEPS: [Step; 8] = [
    Step { name: "format", what: "the code is formatted", run: steps::format },
    Step { name: "lints", what: "no warning from clippy, native and tool", run: steps::lints },
    Step { name: "lints-wasm", what: "no warning from clippy, wasm", run: steps::lints_wasm },
    Step { name: "native", what: "the native tests", run: steps::native },
    Step { name: "wasm", what: "the tests of the release wasm, in Chromium", run: steps::wasm },
    Step {
        name: "build",
        what: "the page builds, with nothing new to call and within its budget",
        run: steps::build_page,
    },
    Step {
        name: "browser",
        what: "the stories, in Chromium, from a file and over http",
        run: steps::browser,
    },
    Step { name: "node", what: "the JS package, in Node", run: steps::node },
];

/// Runs the steps, or the one of the name `only`, all of them even when one fails, and ends with one plain line that sums the
/// tests.
///
/// # Errors
/// [`anyhow::Error`] if a step failed, or there is none of that name.
pub fn run_all(
    workspace: &Workspace,
    toolchain: Toolchain,
    only: Option<&str>,
    kills: Option<String>,
) -> Result<()> {
    if let Some(name) = only.filter(|name| STEPS.iter().all(|step| step.name != *name)) {
        let known: Vec<_> = STEPS.iter().map(|step| format!("  {:11}{}", step.name, step.what)).collect();
        bail!("--only {name}: the steps are\n{}", known.join("\n"));
    }
    let options = CheckOptions { workspace, toolchain, kills };
    let mut sum = Tally::default();
    let mut unhappy = Vec::new();
    for step in STEPS.iter().filter(|step| only.is_none_or(|name| step.name == name)) {
        say(&format!("==> {}: {}", step.name, step.what));
        let start = Instant::now();
        let mut tally = (step.run)(&options).unwrap_or_else(|error| {
            say(&format!("{error:#}"));
            Tally { passed: 0, failed: 1 }
        });
        let took = seconds(start.elapsed());
        if tally.failed > 0 {
            unhappy.push(step.name);
        } else {
            tally.failed = 0;
        }
        say(&format!("    {took} {}: {} passed, {} failed", step.name, tally.passed, tally.failed));
        sum.passed += tally.passed;
        sum.failed += tally.failed;
    }
    say(&format!("{} passed, {} failed", sum.passed, sum.failed));
    if unhappy.is_empty() {
        return Ok(());
    }
    bail!("failed: {}. `cargo xtask test --only {}` repeats one step.", unhappy.join(", "), unhappy[0])
}
