//! The part of the tool that drives a browser: the stories, the pictures, the latency, and the runner of the wasm tests.
//!
//! In: the built page. Out: which stories passed, pictures, times. It must not build the page. Arrows run from [`stories`],
//! [`look`] and [`latency`] over the [`fixture`] and its [`tablet`] to the page objects of [`screens`], and from those to
//! [`drive`].

pub mod axe;
pub mod drive;
pub mod fixture;
pub mod latency;
pub mod look;
pub mod screens;
pub mod stories;
pub mod tablet;

use crate::host::workspace::Workspace;
use anyhow::{Result, bail};

/// Does what the words of the command line ask for.
///
/// # Errors
/// [`anyhow::Error`] if it cannot be done, and when a test fails.
pub fn obey(mut words: Vec<String>) -> Result<()> {
    let verb = if words.is_empty() { String::new() } else { words.remove(0) };
    match verb.as_str() {
        // Called by cargo with a wasm test file.
        "wasm-tests" => wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(
            std::iter::once("wasm-tests".to_owned()).chain(words),
        ),
        "stories" => {
            in_runtime(async { stories::run(&Workspace::find()?, words.first().map(String::as_str)).await })
        }
        "latency" => in_runtime(async { latency::measure(&Workspace::find()?).await }),
        "shots" if words.iter().any(|word| word == "--approve") => {
            in_runtime(async { look::approved::renew(&Workspace::find()?).await })
        }
        "shots" => in_runtime(async { look::shots::take(&Workspace::find()?, &words).await }),
        other => {
            bail!(
                "`{other}` is not known; this program is called by `cargo xtask test`, `latency` and `shots`"
            )
        }
    }
}

fn in_runtime(work: impl Future<Output = Result<()>>) -> Result<()> {
    tokio::runtime::Builder::new_current_thread().enable_all().build()?.block_on(work)
}
