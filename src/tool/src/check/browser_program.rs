//! The second binary of this package, which drives browsers: built when it is needed, and run for the stories, the pictures,
//! the latency and the tests of the wasm.

use crate::check::tally::count;
use crate::host::chromium::Chromium;
use crate::host::command::run;
use crate::host::workspace::{Workspace, write};
use crate::page::toolchain::{Toolchain, WASM};
use anyhow::{Result, bail};
use std::path::PathBuf;
use std::process::Command;

/// Builds the second binary of this package, which holds the browser's driver and the wasm test runner.
pub(super) fn build(workspace: &Workspace) -> Result<PathBuf> {
    let mut cargo = workspace.cargo();
    cargo.args([
        "build",
        "--quiet",
        "--package",
        "xtask",
        "--bin",
        "xtask-browser",
        "--features",
        "browser",
        "--locked",
    ]);
    run(&mut cargo, "read the compiler's first error above")?;
    Ok(workspace.target().join("debug").join(format!("xtask-browser{}", std::env::consts::EXE_SUFFIX)))
}

/// Takes pictures of the built page.
///
/// # Errors
/// [`anyhow::Error`] if the page is not built, or no browser can be had.
pub fn shots(workspace: &Workspace, screens: &[String]) -> Result<()> {
    let program = build(workspace)?;
    run(
        Command::new(program).arg("shots").args(screens),
        "`cargo xtask build`, and look at dist/whitehold.html by hand",
    )
}

/// Times the built page.
///
/// # Errors
/// [`anyhow::Error`] if the page is not built, or no browser can be had.
pub fn latency(workspace: &Workspace) -> Result<()> {
    run(Command::new(build(workspace)?).arg("latency"), "`cargo xtask build`")
}

/// Runs a bench of `tests/web/main.rs` in a browser, `march_bench` or `storage_bench`, and hands back what it says.
///
/// # Errors
/// [`anyhow::Error`] if the wasm does not compile, no browser can be had, or the bench gives up.
pub fn wasm_bench(workspace: &Workspace, toolchain: Toolchain, name: &str) -> Result<Vec<String>> {
    let mut cargo = wasm_tests(workspace, toolchain)?;
    let mut said = Vec::new();
    let tally = count(cargo.args(["--", "--include-ignored", "--nocapture", name]), |line| {
        said.push(line.to_owned());
    })?;
    if tally.failed > 0 {
        bail!("{name} gave up. Next thing to try: read what the browser says above");
    }
    Ok(said)
}

/// `tests/web/main.rs` as it ships: release wasm, in a browser.
pub(super) fn wasm_tests(workspace: &Workspace, toolchain: Toolchain) -> Result<Command> {
    toolchain.prepare(workspace)?;
    let chromium = Chromium::find()?;
    let program = build(workspace)?;
    let wishes = workspace.target().join("webdriver.json");
    write(&wishes, chromium.capabilities().to_string())?;
    // A list, not a line: the path may hold spaces.
    let runner = format!("target.{WASM}.runner=[{:?}, \"wasm-tests\"]", program.display().to_string());
    let mut cargo = toolchain.cargo(workspace, "test");
    cargo
        .args(["--package", "whitehold", "--release", "--test", "web", "--locked", "--config", &runner])
        .env("CHROMEDRIVER", &chromium.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &wishes)
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300");
    Ok(cargo)
}
