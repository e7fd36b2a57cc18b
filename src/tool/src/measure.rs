//! What takes minutes and a second language: `cargo xtask bench` and `cargo xtask peer`.
//!
//! Both run the package `whitehold-bench`, which alone links the peers; neither `open` nor `test` compiles them.

use crate::check::wasm_bench;
use crate::chromium::on_path;
use crate::steps::{say, step};
use crate::toolchain::Toolchain;
use crate::workshop::{Workshop, ask, in_words, read, run, write};
use anyhow::{Context, Result};
use serde_json::{Value, json};
use std::path::PathBuf;
use std::process::Command;

/// Solves fifty random histories by other means and compares.
///
/// # Errors
/// When Python cannot be had, or a history is too far off.
pub fn peer(workshop: &Workshop) -> Result<()> {
    let python = step("Python with NumPy and SciPy", || python(workshop))?;
    let cases = step("fifty random stacks and dryers, as ours has them", || cases(workshop, "random"))?;
    run(
        Command::new(python).arg(workshop.root.join("tests/peer/history.py")).arg(cases),
        "read which case is off, and whether equations were changed on one side only",
    )
}

/// Times what ships beside its peers, prints a table and writes `dist/bench.json`.
///
/// # Errors
/// When the bench cannot be built, or a peer gives up.
pub fn bench(workshop: &Workshop) -> Result<()> {
    say("==> ours and diffsol, compiled for this once: some minutes the first time");
    let mut rows: Vec<Value> = serde_json::from_str(&ask_bench(workshop, &["--features", "peers"], &[])?)?;
    match python(workshop).and_then(|python| scipy(workshop, &python, rows.first())) {
        Ok(row) => rows.push(row),
        Err(error) => say(&format!("no SciPy beside ours: {error:#}")),
    }
    match python(workshop).and_then(|python| films(workshop, &python, &rows)) {
        Ok(beside) => rows.extend(beside),
        Err(error) => say(&format!("no SciPy beside our films: {error:#}")),
    }
    keep(workshop, rows)
}

/// Times a whole library kept in a browser's database, prints a table and writes its rows to `dist/bench.json`.
///
/// # Errors
/// When the wasm does not compile, no browser can be had, or the bench gives up.
pub fn storage(workshop: &Workshop, toolchain: Toolchain) -> Result<()> {
    let said = wasm_bench(workshop, toolchain, "storage_bench")?;
    let rows = said.iter().filter_map(|line| serde_json::from_str(line.trim()).ok());
    keep(workshop, rows.filter(Value::is_object).collect())
}

/// Prints rows and puts them in the place of those of the same names in `dist/bench.json`.
fn keep(workshop: &Workshop, mut rows: Vec<Value>) -> Result<()> {
    let commit =
        ask(Command::new("git").args(["describe", "--always", "--dirty"]).current_dir(&workshop.root));
    let machine = machine();
    for row in &mut rows {
        row["commit"] = json!(commit);
        row["machine"] = json!(machine);
        say(&line(row));
    }
    say(&machine);
    let file = workshop.dist().join("bench.json");
    let mut all: Vec<Value> =
        read(&file).ok().and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
    all.retain(|old| rows.iter().all(|row| row["name"] != old["name"]));
    all.append(&mut rows);
    write(&file, format!("{:#}\n", Value::Array(all)))
}

/// Times one history natively, for the same in a browser to stand beside.
///
/// # Errors
/// When the bench cannot be built.
pub fn pace(workshop: &Workshop) -> Result<()> {
    say(ask_bench(workshop, &[], &["pace"])?.trim_end());
    Ok(())
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

/// The row of SciPy's LSODA, whose right-hand side is Python.
fn scipy(workshop: &Workshop, python: &PathBuf, alone: Option<&Value>) -> Result<Value> {
    let cases = cases(workshop, "timed")?;
    let script = workshop.root.join("tests/peer/history.py");
    let found =
        ask(Command::new(python).arg(script).arg("--time").arg(cases)).context("history.py failed")?;
    let found: Value = serde_json::from_str(&found)?;
    let number = |field: &str| found[field].as_f64().unwrap_or(f64::NAN);
    let (ours, peer) =
        (alone.and_then(|row| row["ours"].as_f64()).unwrap_or(f64::NAN), number("seconds") * 1e6);
    Ok(json!({
        "name": "one history, alone, beside Python",
        "ours": ours, "peer": peer, "ratio": peer / ours, "unit": "us a history",
        "peer_name": "SciPy LSODA on a grid of its own, right-hand side in NumPy",
        "accuracy": format!("worst: peer {:.3} K, {:.4}", number("peak"), number("fused")),
    }))
}

/// The rows of SciPy's method of lines: one film with dye, and the films of a whole forecast.
fn films(workshop: &Workshop, python: &PathBuf, rows: &[Value]) -> Result<[Value; 2]> {
    let cases = cases(workshop, "films")?;
    let script = workshop.root.join("tests/peer/sheet.py");
    let found = ask(Command::new(python).arg(script).arg("--time").arg(cases)).context("sheet.py failed")?;
    let found: Value = serde_json::from_str(&found)?;
    let number = |field: &str| found[field].as_f64().unwrap_or(f64::NAN);
    let ours = |name: &str| {
        let row = rows.iter().find(|row| row["name"] == name);
        row.and_then(|row| row["ours"].as_f64()).unwrap_or(f64::NAN)
    };
    let peer = format!("SciPy BDF, {} cells as a method of lines, to {:e}", number("cells"), number("rtol"));
    let accuracy = format!(
        "worst top layer against 400 cells: ours {:.4}, peer {:.4} kg/m³",
        number("ours"),
        number("off")
    );
    let row = |name: &str, ours: f64, films: f64, unit: &str, accuracy: &str| {
        let took = number("seconds") * 1e6 * films;
        json!({
            "name": name, "ours": ours, "peer": took, "ratio": took / ours, "unit": unit, "peer_name": peer,
            "accuracy": accuracy,
        })
    };
    let whole = "a 90-day forecast over all worlds";
    Ok([
        row(
            "one film with dye, beside Python",
            ours("one film with dye, alone"),
            1.0,
            "us a film",
            &accuracy,
        ),
        row(
            &format!("{whole}, beside Python"),
            ours(whole),
            16.0,
            "us a forecast",
            "the peer without its histories: 16 films, as many as ours ages",
        ),
    ])
}

/// Trips written down by the bench, in a file.
fn cases(workshop: &Workshop, which: &str) -> Result<PathBuf> {
    let file = workshop.target().join("peer").join(format!("{which}.json"));
    write(&file, ask_bench(workshop, &[], &["cases", which])?)?;
    Ok(file)
}

/// Everything that `whitehold-bench` prints.
fn ask_bench(workshop: &Workshop, features: &[&str], words: &[&str]) -> Result<String> {
    let mut cargo = workshop.cargo();
    cargo.args(["run", "--quiet", "--release", "--package", "whitehold-bench", "--locked"]).args(features);
    cargo.arg("--").args(words).stderr(std::process::Stdio::inherit());
    let text = in_words(&cargo);
    let output = cargo.output().with_context(|| format!("`{text}` could not start"))?;
    if !output.status.success() {
        anyhow::bail!("`{text}` failed; what it said stands above");
    }
    Ok(String::from_utf8(output.stdout)?)
}

/// A Python of our own under `target`, with the pinned packages of `tests/peer/requirements.txt`.
fn python(workshop: &Workshop) -> Result<PathBuf> {
    let wanted = workshop.root.join("tests/peer/requirements.txt");
    let home = workshop.target().join("peer").join("python");
    let bin = if cfg!(windows) { home.join("Scripts/python.exe") } else { home.join("bin/python") };
    let done = home.join("requirements.txt");
    if bin.is_file() && done.is_file() && read(&done)? == read(&wanted)? {
        return Ok(bin);
    }
    let advice = "install Python 3.11 or later with venv and pip, and let pip reach its index once";
    let python = on_path(&["python3", "python"]).with_context(|| format!("no Python here; {advice}"))?;
    run(Command::new(python).args(["-m", "venv"]).arg(&home), advice)?;
    run(Command::new(&bin).args(["-m", "pip", "install", "--quiet", "--requirement"]).arg(&wanted), advice)?;
    std::fs::copy(&wanted, &done).with_context(|| format!("{} cannot be written", done.display()))?;
    Ok(bin)
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
