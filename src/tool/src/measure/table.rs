//! `dist/bench.json`, the table of what was timed.

use crate::host::command::first_line;
use crate::host::progress::say;
use crate::host::workspace::{Workspace, read, write};
use anyhow::Result;
use serde_json::{Value, json};
use std::process::Command;

/// Prints rows and puts them in the place of those of the same names in `dist/bench.json`.
pub(super) fn keep(workspace: &Workspace, mut rows: Vec<Value>) -> Result<()> {
    let commit = first_line(
        Command::new("git").args(["describe", "--always", "--dirty"]).current_dir(&workspace.root),
    );
    let machine = machine();
    for row in &mut rows {
        row["commit"] = json!(commit);
        row["machine"] = json!(machine);
        say(&line(row));
    }
    say(&machine);
    let file = workspace.dist().join("bench.json");
    let mut all: Vec<Value> =
        read(&file).ok().and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
    all.retain(|old| rows.iter().all(|row| row["name"] != old["name"]));
    all.append(&mut rows);
    write(&file, format!("{:#}\n", Value::Array(all)))
}

/// A row of the table.
fn line(row: &Value) -> String {
    let text = |field: &str| row[field].as_str().unwrap_or_default().to_owned();
    let number = |field: &str| row[field].as_f64();
    let mut line = format!(
        "{:44}{:>10} {}",
        text("name"),
        number("ours").map_or_else(String::new, in_digits),
        text("unit")
    );
    if let (Some(peer), Some(ratio)) = (number("peer"), number("ratio")) {
        line += &format!("; {} of {}: {}", in_digits(peer), text("peer_name"), in_digits(ratio) + " times");
    }
    match text("accuracy") {
        accuracy if accuracy.is_empty() => line,
        accuracy => format!("{line}; {accuracy}"),
    }
}

fn in_digits(value: f64) -> String {
    if value < 100.0 { format!("{value:.1}") } else { format!("{value:.0}") }
}

/// What it was measured on.
fn machine() -> String {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let processor = std::fs::read_to_string("/proc/cpuinfo").ok().and_then(|text| {
        let line = text.lines().find(|line| line.starts_with("model name"))?;
        line.split(':').nth(1).map(|name| name.trim().to_owned())
    });
    let processor = processor.unwrap_or_else(|| std::env::consts::ARCH.to_owned());
    format!("{processor}, {cores} cores, {}", std::env::consts::OS)
}
