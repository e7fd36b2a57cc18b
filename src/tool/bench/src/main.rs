//! What `cargo xtask bench` and `cargo xtask peer` run.
//!
//! `whitehold-bench` measures and prints the rows as JSON; with the feature `peers` diffsol stands beside ours.
//! `whitehold-bench pace` times one history, as `tests/web/main.rs` does in a browser.
//! `whitehold-bench cases random` and `cases timed` write trips down for another solver, `cases films` films with dye.

#[allow(clippy::unwrap_used)] // shared with the wasm tests
#[path = "../../../../tests/web/pace.rs"]
mod pace;

use serde_json::Value;
use whitehold_bench::cases::written;
use whitehold_bench::films;
use whitehold_bench::journeys::{Failure, random, timed};
use whitehold_bench::rows::{self, Row};

fn main() -> Result<(), Failure> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let found = match words.as_slice() {
        [] => rows::all()?.iter().map(Row::json).collect::<Value>(),
        ["pace"] => return said_pace(),
        ["cases", "random"] => written(&random(50)?)?,
        ["cases", "timed"] => written(&timed()?)?,
        ["cases", "films"] => films::written(),
        _ => return Err("say nothing, `pace`, `cases random`, `cases timed` or `cases films`".into()),
    };
    println!("{found:#}");
    Ok(())
}

/// Prints how long one history takes natively.
fn said_pace() -> Result<(), Failure> {
    let library = whitehold::library::starter()?;
    let record = library.dryer("long-kiln").map_err(|error| format!("{error:?}"))?;
    let dryer = whitehold::dryer::Dryer::from_record(record).map_err(|errors| format!("{errors:?}"))?;
    let start = std::time::Instant::now();
    let now = || start.elapsed().as_secs_f64() * 1e3;
    let [alone, beside] = pace::pace(&library, &dryer, now);
    println!("native: one history alone {alone:.1} µs, one of eight side by side {beside:.1} µs");
    for (white, took) in pace::forecasts(&library, now) {
        println!("native: a 90-day forecast over all worlds, {white}: {took:.2} ms");
    }
    Ok(())
}
