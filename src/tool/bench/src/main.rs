//! What `cargo xtask bench` and `cargo xtask peer` run.
//!
//! `whitehold-bench` measures and prints the rows as JSON; with the feature `peers` diffsol is timed beside our solver.
//! `whitehold-bench pace` times one history, as `tests/web/main.rs` does in a browser.
//! `whitehold-bench export random COUNT`, `export timed` and `export films` print scenarios, or films with dye, for another solver.

#[allow(clippy::unwrap_used)] // shared with the wasm tests
#[path = "../../../../tests/web/pace.rs"]
mod pace;

use serde_json::Value;
use whitehold_bench::dye_films;
use whitehold_bench::export::export;
use whitehold_bench::rows::{self, Row};
use whitehold_bench::scenarios::{Failure, random, timed};

fn main() -> Result<(), Failure> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let found = match words.as_slice() {
        [] => rows::all()?.iter().map(Row::json).collect::<Value>(),
        ["pace"] => return print_pace(),
        ["export", "random", count] => export(&random(count.parse()?)?, false)?,
        ["export", "timed"] => export(&timed()?, true)?,
        ["export", "films"] => dye_films::export(),
        _ => {
            return Err(
                "give no word, or `pace`, `export random COUNT`, `export timed` or `export films`".into()
            );
        }
    };
    println!("{found:#}");
    Ok(())
}

/// Prints how long one history takes natively.
fn print_pace() -> Result<(), Failure> {
    let library = whitehold::library::starter()?;
    let record = library.dryer("long-kiln").map_err(|error| format!("{error:?}"))?;
    let dryer = whitehold::dryer::Dryer::from_record(record).map_err(|errors| format!("{errors:?}"))?;
    let start = std::time::Instant::now();
    let now = || start.elapsed().as_secs_f64() * 1e3;
    let [alone, beside] = pace::pace(&library, &dryer, now);
    println!("native: one history alone {alone:.1} µs, one of eight side by side {beside:.1} µs");
    for (white, took) in pace::forecasts(&library, now) {
        println!("native: a 90-day forecast over all drift cases, {white}: {took:.2} ms");
    }
    Ok(())
}
