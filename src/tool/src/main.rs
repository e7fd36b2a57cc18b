//! `cargo xtask`: everything a contributor does, in one tool.

use anyhow::{Result, bail};
use std::process::ExitCode;
use xtask::check::{self, Which, browser_program};
use xtask::host::progress::say;
use xtask::host::workspace::Workspace;
use xtask::measure;
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
cargo xtask peer     solve fifty random histories with SciPy instead, and compare
cargo xtask shots    take pictures of the built page into dist/shots
                       SCREEN...       the screens, without their # (the first one if none is given)
                       --spanish       in Spanish
                       --approve       renew tests/approved, which the browser tests compare the page with
cargo xtask latency  time what a person waits for in Chromium, slowed down four times, into dist/latency.json
cargo xtask imports  list what the wasm may call and compare it with src/tool/wasm-imports.txt
                       --accept        write that file after a review

Building takes --toolchain debian where rustup is not allowed.";

fn main() -> ExitCode {
    match obey(std::env::args().skip(1).collect()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\n{error:#}");
            ExitCode::FAILURE
        }
    }
}

fn obey(words: Vec<String>) -> Result<()> {
    let mut words = Words { rest: words };
    let Some(verb) = words.first() else {
        say(HELP);
        return Ok(());
    };
    let workspace = Workspace::find()?;
    let toolchain = match words.value("--toolchain")? {
        Some(name) => Toolchain::from_name(&name)?,
        None => Toolchain::default(),
    };
    match verb.as_str() {
        "open" => {
            let opens = !words.flag("--no-open");
            let port = match words.value("--port")? {
                Some(port) => {
                    port.parse().map_err(|_| anyhow::anyhow!("--port {port}: a port is 1 to 65535"))?
                }
                None => serve::PORT,
            };
            words.finish()?;
            build(&workspace, toolchain)?;
            serve::serve_site(&workspace, port, opens)
        }
        "build" => {
            words.finish()?;
            build(&workspace, toolchain)
        }
        "test" => {
            let which = Which::from_name(words.value("--only")?)?;
            let kills = words.value("--kills")?;
            words.finish()?;
            check::run_all(&workspace, toolchain, &which, kills)
        }
        "bench" => {
            let only = words.value("--only")?;
            words.finish()?;
            match only.as_deref() {
                None => measure::bench(&workspace).and_then(|()| measure::storage(&workspace, toolchain)),
                Some("march") => measure::bench(&workspace),
                Some("wasm") => measure::pace(&workspace).and_then(|()| {
                    browser_program::wasm_bench(&workspace, toolchain, "march_bench").map(drop)
                }),
                Some("storage") => measure::storage(&workspace, toolchain),
                Some(other) => bail!("bench --only {other}: there are march, wasm and storage"),
            }
        }
        "latency" => {
            words.finish()?;
            browser_program::latency(&workspace)
        }
        "peer" => {
            words.finish()?;
            measure::python::peer(&workspace)
        }
        "shots" => browser_program::shots(&workspace, &words.rest),
        "imports" => {
            let accepts = words.flag("--accept");
            words.finish()?;
            review_imports(&workspace, toolchain, accepts)
        }
        "help" | "--help" | "-h" => {
            say(HELP);
            Ok(())
        }
        other => bail!("`cargo xtask {other}` is not known. What is:\n\n{HELP}"),
    }
}

/// The words of the command line that nobody has taken yet.
struct Words {
    rest: Vec<String>,
}

impl Words {
    fn first(&mut self) -> Option<String> {
        if self.rest.is_empty() { None } else { Some(self.rest.remove(0)) }
    }

    fn flag(&mut self, name: &str) -> bool {
        let before = self.rest.len();
        self.rest.retain(|word| word != name);
        self.rest.len() < before
    }

    fn value(&mut self, name: &str) -> Result<Option<String>> {
        let Some(place) = self.rest.iter().position(|word| word == name) else { return Ok(None) };
        if place + 1 >= self.rest.len() {
            bail!("{name} needs a word after it");
        }
        self.rest.remove(place);
        Ok(Some(self.rest.remove(place)))
    }

    fn finish(&self) -> Result<()> {
        match self.rest.first() {
            None => Ok(()),
            Some(word) => bail!("`{word}` is not known here. What is:\n\n{HELP}"),
        }
    }
}
