//! The part of the tool that drives a browser: the stories, the pictures, and the runner of the wasm tests.
//!
//! [`Bench`](bench::Bench) holds the driver and the web server, [`Tablet`](tablet::Tablet) says what is opened on what,
//! [`Desk`](desk::Desk) is the page as a person sees it. The stories are in [`stories`].

pub mod approved;
pub mod axe;
pub mod bench;
pub mod desk;
pub mod listener;
pub mod marionette;
pub mod others;
pub mod shots;
pub mod stories;
pub mod tablet;
pub mod waits;

use crate::workshop::Workshop;
use anyhow::{Result, bail};

/// Does what the words of the command line ask for.
///
/// # Errors
/// When it cannot be done, and when a test fails.
pub fn obey(mut words: Vec<String>) -> Result<()> {
    let verb = if words.is_empty() { String::new() } else { words.remove(0) };
    match verb.as_str() {
        // Called by cargo with a wasm test file.
        "wasm-tests" => wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(
            std::iter::once("wasm-tests".to_owned()).chain(words),
        ),
        "stories" => {
            in_runtime(async { stories::tell(&Workshop::find()?, words.first().map(String::as_str)).await })
        }
        "waits" => in_runtime(async { waits::measure(&Workshop::find()?).await }),
        "shots" if words.iter().any(|word| word == "--approve") => {
            in_runtime(async { approved::renew(&Workshop::find()?).await })
        }
        "shots" => in_runtime(async { shots::take(&Workshop::find()?, &words).await }),
        other => {
            bail!("`{other}` is not known; this program is called by `cargo xtask test`, `waits` and `shots`")
        }
    }
}

fn in_runtime(work: impl Future<Output = Result<()>>) -> Result<()> {
    tokio::runtime::Builder::new_current_thread().enable_all().build()?.block_on(work)
}
