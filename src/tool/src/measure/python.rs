//! SciPy as the peer: it solves the same histories and films by other means (`tests/peer`).

use crate::host::command::{first_line, run};
use crate::host::programs::on_path;
use crate::host::progress::step;
use crate::host::workspace::{Workspace, read, write};
use crate::measure::run_bench;
use anyhow::{Context, Result};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::Command;

/// Number of random histories that `cargo xtask peer` compares unless it is told another.
pub const SAMPLE: usize = 50;

/// Solves random histories by other means, on as many processes as the machine has cores, and compares.
///
/// # Errors
/// [`anyhow::Error`] if Python cannot be had, or a history is too far off.
pub fn peer(workspace: &Workspace, sample: usize) -> Result<()> {
    let python = step("Python with NumPy and SciPy", || python(workspace))?;
    let cases = step("random stacks and dryers, as ours has them", || {
        cases(workspace, &["random", &sample.to_string()])
    })?;
    run(
        Command::new(python).arg(workspace.root.join("tests/peer/history.py")).arg(cases),
        "read which case is off, and whether equations were changed on one side only",
    )
}

/// The row of SciPy's LSODA, whose right-hand side is Python.
pub(super) fn scipy(workspace: &Workspace, python: &Path, alone: Option<&Value>) -> Result<Value> {
    let cases = cases(workspace, &["timed"])?;
    let script = workspace.root.join("tests/peer/history.py");
    let found =
        first_line(Command::new(python).arg(script).arg("--time").arg(cases)).context("history.py failed")?;
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
pub(super) fn films(workspace: &Workspace, python: &Path, rows: &[Value]) -> Result<[Value; 2]> {
    let cases = cases(workspace, &["films"])?;
    let script = workspace.root.join("tests/peer/sheet.py");
    let found =
        first_line(Command::new(python).arg(script).arg("--time").arg(cases)).context("sheet.py failed")?;
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
fn cases(workspace: &Workspace, which: &[&str]) -> Result<PathBuf> {
    let file = workspace.target().join("peer").join(format!("{}.json", which.join("-")));
    write(&file, run_bench(workspace, &[], &[&["export"], which].concat())?)?;
    Ok(file)
}

/// A Python of our own under `target`, with the pinned packages of `tests/peer/requirements.txt`.
pub(super) fn python(workspace: &Workspace) -> Result<PathBuf> {
    let wanted = workspace.root.join("tests/peer/requirements.txt");
    let home = workspace.target().join("peer").join("python");
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
