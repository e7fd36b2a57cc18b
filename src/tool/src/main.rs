//! `cargo xtask`: everything a contributor does, in one tool.

use anyhow::{Result, bail};
use lexopt::prelude::*;
use std::process::ExitCode;
use xtask::check::{self, browser_program};
use xtask::host::progress::say;
use xtask::host::workspace::Workspace;
use xtask::measure::{self, mutants};
use xtask::page::build::{build, review_imports};
use xtask::page::serve;
use xtask::page::toolchain::Toolchain;

const HELP: &str = "\
cargo xtask open     build, serve on this computer and open the browser
                       --no-open       serve, but open no browser
                       --port NUMBER   the port to try first (8737)
cargo xtask build    build dist/whitehold.html, dist/site and dist/pkg
cargo xtask test     run every check: format, lints, native tests, wasm tests, build, browser, Node
                       --only STEP     run one step; `--only help` lists them
                       --kills NUMBER  how often the browser is killed while it saves (12)
cargo xtask bench    time what ships beside its peers (minutes)
                       --only march    the march and the window, into dist/bench.json
                       --only wasm     one history in Chromium beside the same natively
                       --only storage  a whole library kept in the browser's database, into dist/bench.json
cargo xtask mutants  plant faults one at a time and say which of them the native tests miss (an hour and more);
                       the same command goes on with a sample that was stopped
                       --sample NUMBER how many are drawn (150)
                       --seed NUMBER   what they are drawn with (1)
cargo xtask peer     solve random histories with SciPy instead, and compare
                       --sample NUMBER how many (50)
cargo xtask shots    take pictures of the built page into dist/shots
                       SCREEN...       the screens by their addresses, and what is tapped there: library~Whites (job)
                       --spanish       in Spanish
                       --approve       renew tests/approved, which the browser tests compare the page with
cargo xtask latency  time what a person waits for in Chromium, slowed down four times, into dist/latency.json
cargo xtask imports  list what the wasm may call and compare it with src/tool/wasm-imports.txt
                       --accept        write that file after a review

Building takes --toolchain debian where rustup is not allowed.";

/// What the command line says beside the command.
struct Options {
    toolchain: Toolchain,
    opens_browser: bool,
    port: u16,
    only: Option<String>,
    kills: Option<String>,
    accepts: bool,
    seed: u64,
    sample: Option<usize>,
    /// Words that are handed on to the program that drives the browser.
    shots: Vec<String>,
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\n{error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<()> {
    let mut arguments = lexopt::Parser::from_env();
    let command = match arguments.next()? {
        Some(Value(command)) => command.string()?,
        None | Some(Short('h') | Long("help")) => "help".to_owned(),
        Some(other) => return Err(other.unexpected().into()),
    };
    let options = read_options(&command, &mut arguments)?;
    let workspace = Workspace::find()?;
    let toolchain = options.toolchain;
    match command.as_str() {
        "help" => {
            say(HELP);
            Ok(())
        }
        "open" => {
            build(&workspace, toolchain)?;
            serve::serve_site(&workspace, options.port, options.opens_browser)
        }
        "build" => build(&workspace, toolchain),
        "test" => check::run_all(&workspace, toolchain, options.only.as_deref(), options.kills),
        "bench" => match options.only.as_deref() {
            None => measure::bench(&workspace).and_then(|()| measure::storage(&workspace, toolchain)),
            Some("march") => measure::bench(&workspace),
            Some("wasm") => measure::pace(&workspace)
                .and_then(|()| browser_program::wasm_bench(&workspace, toolchain, "march_bench").map(drop)),
            Some("storage") => measure::storage(&workspace, toolchain),
            Some(other) => bail!("bench --only {other}: there are march, wasm and storage"),
        },
        "mutants" => mutants::mutants(&workspace, options.seed, options.sample.unwrap_or(mutants::SAMPLE)),
        "latency" => browser_program::latency(&workspace),
        "peer" => measure::python::peer(&workspace, options.sample.unwrap_or(measure::python::SAMPLE)),
        "shots" => browser_program::shots(&workspace, &options.shots),
        "imports" => review_imports(&workspace, toolchain, options.accepts),
        other => bail!("`cargo xtask {other}` is not known. What is:\n\n{HELP}"),
    }
}

/// Reads the options of a command; one that belongs to another command is an error.
fn read_options(command: &str, arguments: &mut lexopt::Parser) -> Result<Options> {
    let mut options = Options {
        toolchain: Toolchain::default(),
        opens_browser: true,
        port: serve::PORT,
        only: None,
        kills: None,
        accepts: false,
        seed: 1,
        sample: None,
        shots: Vec::new(),
    };
    while let Some(argument) = arguments.next()? {
        match (command, argument) {
            (_, Long("toolchain")) => {
                options.toolchain = Toolchain::from_name(&arguments.value()?.string()?)?;
            }
            ("open", Long("no-open")) => options.opens_browser = false,
            ("open", Long("port")) => options.port = arguments.value()?.parse()?,
            ("test" | "bench", Long("only")) => options.only = Some(arguments.value()?.string()?),
            ("test", Long("kills")) => options.kills = Some(arguments.value()?.string()?),
            ("imports", Long("accept")) => options.accepts = true,
            ("mutants", Long("seed")) => options.seed = arguments.value()?.parse()?,
            ("mutants" | "peer", Long("sample")) => options.sample = Some(arguments.value()?.parse()?),
            ("shots", Long(name @ ("spanish" | "approve"))) => options.shots.push(format!("--{name}")),
            ("shots", Value(screen)) => options.shots.push(screen.string()?),
            (_, other) => {
                bail!("{}. What is known:\n\n{HELP}", other.unexpected());
            }
        }
    }
    Ok(options)
}
