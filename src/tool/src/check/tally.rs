//! How many tests a command ran, read from what it prints.

use crate::host::command::as_typed;
use crate::host::progress::say;
use anyhow::{Context, Result};
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

/// How many tests a step ran.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Tally {
    pub(super) passed: usize,
    pub(super) failed: usize,
}

/// Runs a command, shows its lines as they come and hands them on, and sums the tests they report.
pub(super) fn count(command: &mut Command, mut hand_on: impl FnMut(&str)) -> Result<Tally> {
    let text = as_typed(command);
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
