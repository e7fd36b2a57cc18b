//! What `cargo xtask bench` and `cargo xtask peer` run.
//!
//! `whitehold-bench` measures and prints the rows as JSON; with the feature `peers` diffsol stands beside ours.
//! `whitehold-bench cases random` and `cases timed` write trips down for another solver.

use serde_json::Value;
use whitehold_bench::cases::written;
use whitehold_bench::journeys::{Failure, random, timed};
use whitehold_bench::rows::{self, Row};

fn main() -> Result<(), Failure> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let found = match words.as_slice() {
        [] => rows::all()?.iter().map(Row::json).collect::<Value>(),
        ["cases", "random"] => written(&random(50)?)?,
        ["cases", "timed"] => written(&timed()?)?,
        _ => return Err("say nothing, `cases random` or `cases timed`".into()),
    };
    println!("{found:#}");
    Ok(())
}
