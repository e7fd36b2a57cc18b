//! Finding installed programs, and installing what is missing where that is allowed: as root on Debian.

use crate::host::command::{first_line, run};
use crate::host::progress::say;
use anyhow::{Context, Result};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The program that an environment variable names.
#[must_use]
pub fn from_variable(variable: &str) -> Option<PathBuf> {
    std::env::var_os(variable).map(PathBuf::from).filter(|path| path.is_file())
}

/// The first of the programs that is in a folder of the PATH.
#[must_use]
pub fn on_path(programs: &[&str]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let folders: Vec<_> = std::env::split_paths(&path).collect();
    programs.iter().find_map(|program| {
        let file = format!("{program}{}", std::env::consts::EXE_SUFFIX);
        folders.iter().map(|folder| folder.join(&file)).find(|path| path.is_file())
    })
}

/// What `look` finds; where it finds nothing, root on Debian has the packages installed and looks again.
///
/// # Errors
/// [`anyhow::Error`] with `advice` if it is missing and cannot be installed from here.
pub fn find_or_install<T>(look: impl Fn() -> Option<T>, packages: &[&str], advice: &str) -> Result<T> {
    if let Some(found) = look() {
        return Ok(found);
    }
    if is_root() && Path::new("/usr/bin/apt-get").is_file() {
        install(packages).context(advice.to_owned())?;
    }
    look().context(advice.to_owned())
}

/// Installs Debian packages; only root may.
///
/// # Errors
/// [`anyhow::Error`] if apt-get is missing or fails.
pub fn install(packages: &[&str]) -> Result<()> {
    say(&format!("    installing {}", packages.join(" ")));
    let advice = "check the connection and the package sources, then give the command by hand";
    let apt = || {
        let mut command = Command::new("apt-get");
        command.env("DEBIAN_FRONTEND", "noninteractive").arg("-qq");
        command
    };
    run(apt().arg("update"), advice)?;
    run(apt().args(["install", "-y", "--no-install-recommends"]).args(packages), advice)
}

/// Whether the tool runs as root: root may install packages, and Chromium's sandbox refuses to run for root.
#[must_use]
pub fn is_root() -> bool {
    cfg!(unix) && first_line(Command::new("id").arg("-u")).is_some_and(|id| id == "0")
}
