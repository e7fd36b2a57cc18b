//! The steps of `cargo xtask test`, each a function that runs one kind of check.

use crate::check::CheckOptions;
use crate::check::browser_program::{self, wasm_tests};
use crate::check::tally::{Tally, count};
use crate::host::chromium::Chromium;
use crate::host::command::{first_line, run};
use crate::host::firefox;
use crate::host::fonts;
use crate::host::programs::{install, is_root, on_path};
use crate::host::webkit::WebKit;
use crate::host::workspace::Workspace;
use crate::page::build::build;
use crate::page::toolchain::WASM;
use anyhow::{Context, Result, bail};
use std::path::PathBuf;
use std::process::Command;

pub(super) fn format(options: &CheckOptions<'_>) -> Result<Tally> {
    run(options.workspace.cargo().args(["fmt", "--all", "--check"]), "`cargo fmt --all`")?;
    Ok(Tally::default())
}

pub(super) fn lints(options: &CheckOptions<'_>) -> Result<Tally> {
    let mut cargo = options.workspace.cargo();
    cargo.args(["clippy", "--workspace", "--all-targets", "--features", "xtask/browser", "--locked"]);
    run(cargo.args(["--", "-D", "warnings"]), "what clippy says above each warning")?;
    Ok(Tally::default())
}

pub(super) fn lints_wasm(options: &CheckOptions<'_>) -> Result<Tally> {
    options.toolchain.prepare(options.workspace)?;
    let mut cargo = options.workspace.cargo();
    // In release, so that macros and build scripts are those of the build and are compiled once.
    cargo.args(["clippy", "--package", "whitehold", "--lib", "--release", "--target", WASM, "--locked"]);
    run(cargo.args(["--", "-D", "warnings"]), "what clippy says above each warning")?;
    Ok(Tally::default())
}

pub(super) fn native(options: &CheckOptions<'_>) -> Result<Tally> {
    count(options.workspace.cargo().args(["test", "--workspace", "--locked", "--no-fail-fast"]), |_| ())
}

pub(super) fn wasm(options: &CheckOptions<'_>) -> Result<Tally> {
    count(&mut wasm_tests(options.workspace, options.toolchain)?, |_| ())
}

pub(super) fn build_page(options: &CheckOptions<'_>) -> Result<Tally> {
    build(options.workspace, options.toolchain)?;
    Ok(Tally::default())
}

pub(super) fn browser(options: &CheckOptions<'_>) -> Result<Tally> {
    // Installs the browsers where that is allowed. One that is not to be had fails its own story, not all of them.
    Chromium::find()?;
    if cfg!(target_os = "linux") {
        let _ = (firefox::find(), WebKit::find(), fonts::find_dejavu());
    }
    let mut command = Command::new(browser_program::build(options.workspace)?);
    command.arg("stories").current_dir(&options.workspace.root);
    if let Some(kills) = &options.kills {
        command.env("XTASK_KILLS", kills);
    }
    count(&mut command, |_| ())
}

pub(super) fn node(options: &CheckOptions<'_>) -> Result<Tally> {
    let node = find_node()?;
    let mut command = Command::new(node);
    command
        .args(["--test", "--test-reporter=tap"])
        .args(node_tests(options.workspace)?)
        .current_dir(&options.workspace.root);
    count(&mut command, |_| ())
}

/// The files of `tests/node`; Node 20 takes no folder.
fn node_tests(workspace: &Workspace) -> Result<Vec<PathBuf>> {
    let folder = workspace.root.join("tests/node");
    let mut tests = Vec::new();
    for entry in std::fs::read_dir(&folder).with_context(|| format!("{} cannot be read", folder.display()))? {
        let path = entry?.path();
        if path.extension().is_some_and(|ending| ending == "mjs") {
            tests.push(path);
        }
    }
    tests.sort();
    Ok(tests)
}

fn find_node() -> Result<PathBuf> {
    let look = || on_path(&["node", "nodejs"]);
    if look().is_none() && is_root() && on_path(&["apt-get"]).is_some() {
        install(&["nodejs"])?;
    }
    let advice = "the package is tested in Node 20 or later. Next thing to try: install it from your system's packages, \
                  or leave this step out with --only";
    let node = look().context(advice)?;
    let version = first_line(Command::new(&node).arg("--version")).unwrap_or_default();
    let major = version.trim_start_matches('v').split('.').next().and_then(|major| major.parse::<u32>().ok());
    match major {
        Some(20..) => Ok(node),
        _ => bail!("{} is {version}; {advice}", node.display()),
    }
}
