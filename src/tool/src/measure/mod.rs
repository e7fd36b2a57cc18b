//! What is timed, compared with other solvers, and tested by planted faults: `cargo xtask bench`, `peer` and `mutants`.
//!
//! In: the package `whitehold-bench`, which alone links the peers, and the wasm tests that are benches. Out: a table on the
//! screen and in `dist/bench.json`. It must not be needed by a build or a check: both would take minutes longer.

pub mod mutants;
pub mod python;
mod table;

use crate::check::browser_program::wasm_bench;
use crate::host::command::as_typed;
use crate::host::progress::say;
use crate::host::workspace::Workspace;
use crate::page::toolchain::Toolchain;
use anyhow::{Context, Result};
use python::{films, python, scipy};
use serde_json::Value;
use table::keep;

/// Times what ships beside its peers, prints a table and writes `dist/bench.json`.
///
/// # Errors
/// [`anyhow::Error`] if the bench cannot be built, or a peer gives up.
pub fn bench(workspace: &Workspace) -> Result<()> {
    say("==> our solver and diffsol; compiling takes some minutes the first time");
    let mut rows: Vec<Value> = serde_json::from_str(&run_bench(workspace, &["--features", "peers"], &[])?)?;
    match python(workspace).and_then(|python| scipy(workspace, &python, rows.first())) {
        Ok(row) => rows.push(row),
        Err(error) => say(&format!("no SciPy beside ours: {error:#}")),
    }
    match python(workspace).and_then(|python| films(workspace, &python, &rows)) {
        Ok(beside) => rows.extend(beside),
        Err(error) => say(&format!("no SciPy beside our films: {error:#}")),
    }
    keep(workspace, rows)
}

/// Times a whole library kept in a browser's database, prints a table and writes its rows to `dist/bench.json`.
///
/// # Errors
/// [`anyhow::Error`] if the wasm does not compile, no browser can be had, or the bench gives up.
pub fn storage(workspace: &Workspace, toolchain: Toolchain) -> Result<()> {
    let said = wasm_bench(workspace, toolchain, "storage_bench")?;
    let rows = said.iter().filter_map(|line| serde_json::from_str(line.trim()).ok());
    keep(workspace, rows.filter(Value::is_object).collect())
}

/// Times one history natively, for the same in a browser to stand beside.
///
/// # Errors
/// [`anyhow::Error`] if the bench cannot be built.
pub fn pace(workspace: &Workspace) -> Result<()> {
    say(run_bench(workspace, &[], &["pace"])?.trim_end());
    Ok(())
}

/// Everything that `whitehold-bench` prints.
fn run_bench(workspace: &Workspace, features: &[&str], words: &[&str]) -> Result<String> {
    let mut cargo = workspace.cargo();
    cargo.args(["run", "--quiet", "--release", "--package", "whitehold-bench", "--locked"]).args(features);
    cargo.arg("--").args(words).stderr(std::process::Stdio::inherit());
    let text = as_typed(&cargo);
    let output = cargo.output().with_context(|| format!("`{text}` could not start"))?;
    if !output.status.success() {
        anyhow::bail!("`{text}` failed; its output is above");
    }
    Ok(String::from_utf8(output.stdout)?)
}
