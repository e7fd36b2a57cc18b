//! The program behind `cargo xtask test` and `cargo xtask shots`, as far as they need a browser.

use std::process::ExitCode;

fn main() -> ExitCode {
    match xtask::browser::obey(std::env::args().skip(1).collect()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\n{error:#}");
            ExitCode::FAILURE
        }
    }
}
