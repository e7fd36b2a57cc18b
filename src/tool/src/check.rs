//! Every check there is, one after another: what a contributor runs before handing over, and what CI runs.

use crate::browsers::{Firefox, WebKit, find_letters};
use crate::build::build;
use crate::chromium::{Chromium, on_path};
use crate::steps::{say, seconds};
use crate::toolchain::{Toolchain, WASM, install};
use crate::workshop::{Workshop, ask, in_words, is_root, run, write};
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::time::Instant;

/// What a step needs to know.
struct Bench<'a> {
    workshop: &'a Workshop,
    toolchain: Toolchain,
    /// How often the browser is killed while it saves, where that is asked for.
    kills: Option<String>,
}

/// How many tests a step ran.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Tally {
    passed: usize,
    failed: usize,
}

struct Step {
    name: &'static str,
    what: &'static str,
    run: fn(&Bench<'_>) -> Result<Tally>,
}

const STEPS: [Step; 8] = [
    Step { name: "format", what: "the code is formatted", run: format },
    Step { name: "lints", what: "no warning from clippy, native and tool", run: lints },
    Step { name: "lints-wasm", what: "no warning from clippy, wasm", run: lints_wasm },
    Step { name: "native", what: "the native tests", run: native },
    Step { name: "wasm", what: "the tests of the release wasm, in Chromium", run: wasm },
    Step {
        name: "build",
        what: "the page builds, with nothing new to call and within its budget",
        run: build_page,
    },
    Step { name: "browser", what: "the stories, in Chromium, from a file and over http", run: browser },
    Step { name: "node", what: "the JS package, in Node", run: node },
];

/// Which steps to run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Which {
    /// All of them.
    All,
    /// The one of this name.
    Only(String),
}

impl Which {
    /// Reads the value of `--only`.
    ///
    /// # Errors
    /// When there is no step of that name.
    pub fn from_name(name: Option<String>) -> Result<Self> {
        match name {
            None => Ok(Self::All),
            Some(name) if STEPS.iter().any(|step| step.name == name) => Ok(Self::Only(name)),
            Some(name) => {
                let known: Vec<_> =
                    STEPS.iter().map(|step| format!("  {:11}{}", step.name, step.what)).collect();
                bail!("--only {name}: the steps are\n{}", known.join("\n"))
            }
        }
    }

    fn holds(&self, step: &Step) -> bool {
        match self {
            Self::All => true,
            Self::Only(name) => step.name == name,
        }
    }
}

/// Runs the steps, all of them even when one fails, and ends with one plain line that sums the tests.
///
/// # Errors
/// When any step failed.
pub fn run_all(
    workshop: &Workshop,
    toolchain: Toolchain,
    which: &Which,
    kills: Option<String>,
) -> Result<()> {
    let bench = Bench { workshop, toolchain, kills };
    let mut sum = Tally::default();
    let mut unhappy = Vec::new();
    for step in STEPS.iter().filter(|step| which.holds(step)) {
        say(&format!("==> {}: {}", step.name, step.what));
        let start = Instant::now();
        let mut tally = (step.run)(&bench).unwrap_or_else(|error| {
            say(&format!("{error:#}"));
            Tally { passed: 0, failed: 1 }
        });
        let took = seconds(start.elapsed());
        if tally.failed > 0 {
            unhappy.push(step.name);
        } else {
            tally.failed = 0;
        }
        say(&format!("    {took} {}: {} passed, {} failed", step.name, tally.passed, tally.failed));
        sum.passed += tally.passed;
        sum.failed += tally.failed;
    }
    say(&format!("{} passed, {} failed", sum.passed, sum.failed));
    if unhappy.is_empty() {
        return Ok(());
    }
    bail!("failed: {}. `cargo xtask test --only {}` repeats one step.", unhappy.join(", "), unhappy[0])
}

/// Takes pictures of the built page.
///
/// # Errors
/// When the page is not built, or no browser can be had.
pub fn shots(workshop: &Workshop, screens: &[String]) -> Result<()> {
    let program = browser_program(workshop)?;
    run(
        Command::new(program).arg("shots").args(screens),
        "`cargo xtask build`, and look at dist/whitehold.html by hand",
    )
}

/// Times the built page.
///
/// # Errors
/// As [`shots`].
pub fn waits(workshop: &Workshop) -> Result<()> {
    run(Command::new(browser_program(workshop)?).arg("waits"), "`cargo xtask build`")
}

fn format(bench: &Bench<'_>) -> Result<Tally> {
    run(bench.workshop.cargo().args(["fmt", "--all", "--check"]), "`cargo fmt --all`")?;
    Ok(Tally::default())
}

fn lints(bench: &Bench<'_>) -> Result<Tally> {
    let mut cargo = bench.workshop.cargo();
    cargo.args(["clippy", "--workspace", "--all-targets", "--features", "xtask/browser", "--locked"]);
    run(cargo.args(["--", "-D", "warnings"]), "what clippy says above each warning")?;
    Ok(Tally::default())
}

fn lints_wasm(bench: &Bench<'_>) -> Result<Tally> {
    bench.toolchain.prepare(bench.workshop)?;
    let mut cargo = bench.workshop.cargo();
    // In release, so that macros and build scripts are those of the build and are compiled once.
    cargo.args(["clippy", "--package", "whitehold", "--lib", "--release", "--target", WASM, "--locked"]);
    run(cargo.args(["--", "-D", "warnings"]), "what clippy says above each warning")?;
    Ok(Tally::default())
}

fn native(bench: &Bench<'_>) -> Result<Tally> {
    count(bench.workshop.cargo().args(["test", "--workspace", "--locked", "--no-fail-fast"]), |_| ())
}

fn wasm(bench: &Bench<'_>) -> Result<Tally> {
    count(&mut wasm_tests(bench.workshop, bench.toolchain)?, |_| ())
}

/// Runs a bench of `tests/web/main.rs` in a browser, `march_bench` or `storage_bench`, and hands back what it says.
///
/// # Errors
/// When the wasm does not compile, no browser can be had, or the bench gives up.
pub fn wasm_bench(workshop: &Workshop, toolchain: Toolchain, name: &str) -> Result<Vec<String>> {
    let mut cargo = wasm_tests(workshop, toolchain)?;
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
fn wasm_tests(workshop: &Workshop, toolchain: Toolchain) -> Result<Command> {
    toolchain.prepare(workshop)?;
    let chromium = Chromium::find()?;
    let program = browser_program(workshop)?;
    let wishes = workshop.target().join("webdriver.json");
    write(&wishes, chromium.capabilities().to_string())?;
    // A list, not a line: the path may hold spaces.
    let runner = format!("target.{WASM}.runner=[{:?}, \"wasm-tests\"]", program.display().to_string());
    let mut cargo = toolchain.cargo(workshop, "test");
    cargo
        .args(["--package", "whitehold", "--release", "--test", "web", "--locked", "--config", &runner])
        .env("CHROMEDRIVER", &chromium.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &wishes)
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300");
    Ok(cargo)
}

fn build_page(bench: &Bench<'_>) -> Result<Tally> {
    build(bench.workshop, bench.toolchain)?;
    Ok(Tally::default())
}

fn browser(bench: &Bench<'_>) -> Result<Tally> {
    // Installs the browsers where that is allowed. One that is not to be had fails its own story, not all of them.
    Chromium::find()?;
    if cfg!(target_os = "linux") {
        let _ = (Firefox::find(), WebKit::find(), find_letters());
    }
    let mut command = Command::new(browser_program(bench.workshop)?);
    command.arg("stories").current_dir(&bench.workshop.root);
    if let Some(kills) = &bench.kills {
        command.env("XTASK_KILLS", kills);
    }
    count(&mut command, |_| ())
}

fn node(bench: &Bench<'_>) -> Result<Tally> {
    let node = find_node()?;
    let mut command = Command::new(node);
    command
        .args(["--test", "--test-reporter=tap"])
        .args(node_tests(bench.workshop)?)
        .current_dir(&bench.workshop.root);
    count(&mut command, |_| ())
}

/// The files of `tests/node`; Node 20 takes no folder.
fn node_tests(workshop: &Workshop) -> Result<Vec<PathBuf>> {
    let folder = workshop.root.join("tests/node");
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

/// Builds the second binary of this package, which holds the browser's driver and the wasm test runner.
fn browser_program(workshop: &Workshop) -> Result<PathBuf> {
    let mut cargo = workshop.cargo();
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
    Ok(workshop.target().join("debug").join(format!("xtask-browser{}", std::env::consts::EXE_SUFFIX)))
}

fn find_node() -> Result<PathBuf> {
    let look = || on_path(&["node", "nodejs"]);
    if look().is_none() && is_root() && on_path(&["apt-get"]).is_some() {
        install(&["nodejs"])?;
    }
    let advice = "the package is tested in Node 20 or later. Next thing to try: install it from your system's packages, \
                  or leave this step out with --only";
    let node = look().context(advice)?;
    let version = ask(Command::new(&node).arg("--version")).unwrap_or_default();
    let major = version.trim_start_matches('v').split('.').next().and_then(|major| major.parse::<u32>().ok());
    match major {
        Some(20..) => Ok(node),
        _ => bail!("{} is {version}; {advice}", node.display()),
    }
}

/// Runs a command, shows its lines as they come and hands them on, and sums the tests they report.
fn count(command: &mut Command, mut hand_on: impl FnMut(&str)) -> Result<Tally> {
    let text = in_words(command);
    let mut child =
        command.stdout(Stdio::piped()).spawn().with_context(|| format!("`{text}` could not start"))?;
    let mut tally = Tally::default();
    if let Some(output) = child.stdout.take() {
        for line in BufReader::new(output).lines() {
            let line = line?;
            say(&line);
            hand_on(&line);
            let found = read_tally(&line);
            tally.passed += found.passed;
            tally.failed += found.failed;
        }
    }
    let status = child.wait()?;
    if !status.success() && tally.failed == 0 {
        say(&format!("`{text}` failed before its tests could say why"));
        tally.failed = 1;
    }
    Ok(tally)
}

/// The tests one line reports: libtest's `test result: ok. 3 passed; 0 failed; …`, or TAP's `# pass 3`, `# fail 0`.
fn read_tally(line: &str) -> Tally {
    let mut tally = Tally::default();
    if let Some((_, counts)) = line.split_once("test result: ") {
        let words: Vec<_> = counts.split_whitespace().collect();
        for pair in words.windows(2) {
            let number = pair[0].parse().unwrap_or(0);
            match pair[1] {
                "passed;" => tally.passed = number,
                "failed;" => tally.failed = number,
                _ => {}
            }
        }
    } else if let Some(number) = line.strip_prefix("# pass ") {
        tally.passed = number.trim().parse().unwrap_or(0);
    } else if let Some(number) = line.strip_prefix("# fail ") {
        tally.failed = number.trim().parse().unwrap_or(0);
    }
    tally
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tests_of_a_line_are_counted() {
        for (line, passed, failed) in [
            (
                "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.02s",
                12,
                0,
            ),
            ("test result: FAILED. 3 passed; 2 failed; 0 ignored; 0 measured", 3, 2),
            ("# pass 4", 4, 0),
            ("# fail 1", 0, 1),
            ("test opens ... ok", 0, 0),
        ] {
            assert_eq!(read_tally(line), Tally { passed, failed }, "{line}");
        }
    }
}
