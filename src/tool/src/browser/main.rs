//! The part of the tool that drives a browser: the stories, the pictures, and the runner of the wasm tests.

mod bench;
mod desk;
mod listener;
mod shots;
mod stories;
mod tablet;

use anyhow::{Result, bail};
use std::process::ExitCode;
use xtask::workshop::Workshop;

fn main() -> ExitCode {
    let mut words: Vec<String> = std::env::args().skip(1).collect();
    let verb = if words.is_empty() { String::new() } else { words.remove(0) };
    let done = match verb.as_str() {
        // Called by cargo with a wasm test file.
        "wasm-tests" => wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(
            std::iter::once("wasm-tests".to_owned()).chain(words),
        ),
        "stories" => {
            in_runtime(async { stories::tell(&Workshop::find()?, words.first().map(String::as_str)).await })
        }
        "shots" => in_runtime(async { shots::take(&Workshop::find()?, &words).await }),
        other => usage(other),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\n{error:#}");
            ExitCode::FAILURE
        }
    }
}

fn usage(verb: &str) -> Result<()> {
    bail!("`{verb}` is not known; this program is called by `cargo xtask test` and `cargo xtask shots`")
}

fn in_runtime(work: impl Future<Output = Result<()>>) -> Result<()> {
    tokio::runtime::Builder::new_current_thread().enable_all().build()?.block_on(work)
}
