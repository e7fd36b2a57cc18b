//! Running other programs: to their end, or for the one line that they print.
//!
//! By hand, because a failure must end with the next thing to try: a crate for shell scripts says only that a command failed,
//! and every call would add its advice again.

use anyhow::{Context, Result, bail};
use std::ffi::OsStr;
use std::path::Path;
use std::process::Command;

/// Runs a command to its end, showing what it prints.
///
/// # Errors
/// [`anyhow::Error`] if it cannot start or does not succeed; `advice` says the next thing to try.
pub fn run(command: &mut Command, advice: &str) -> Result<()> {
    let text = as_typed(command);
    let status =
        command.status().with_context(|| format!("`{text}` could not start. Next thing to try: {advice}"))?;
    if status.success() {
        return Ok(());
    }
    bail!("`{text}` failed. Next thing to try: {advice}")
}

/// The first line a command prints, or nothing when it cannot run or fails.
#[must_use]
pub fn first_line(command: &mut Command) -> Option<String> {
    let output = command.output().ok()?;
    let text = String::from_utf8(output.stdout).ok()?;
    output.status.success().then(|| text.lines().next().unwrap_or_default().trim().to_owned())
}

/// A command as one would type it.
#[must_use]
pub fn as_typed(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_stem().unwrap_or_default();
    std::iter::once(program)
        .chain(command.get_args())
        .map(OsStr::to_string_lossy)
        .collect::<Vec<_>>()
        .join(" ")
}
