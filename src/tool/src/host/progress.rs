//! What the tool prints while it works: a line for each step, with its time.

use std::io::Write;
use std::time::{Duration, Instant};

/// Runs one step; prints its name before and its time after.
///
/// # Errors
/// [`anyhow::Error`] of the step.
pub fn step<T>(name: &str, work: impl FnOnce() -> anyhow::Result<T>) -> anyhow::Result<T> {
    say(&format!("==> {name}"));
    let start = Instant::now();
    let done = work()?;
    say(&format!("    {} {name}", seconds(start.elapsed())));
    Ok(done)
}

/// Prints a line and flushes it, so that it appears at once in a file or a pipe too.
pub fn say(line: &str) {
    let mut out = std::io::stdout().lock();
    // A closed pipe must not stop the work.
    let _ = writeln!(out, "{line}");
    let _ = out.flush();
}

/// A time as text: `0.4 s`, `75 s`.
#[must_use]
pub fn seconds(time: Duration) -> String {
    let seconds = time.as_secs_f64();
    if seconds < 10.0 { format!("{seconds:.1} s") } else { format!("{seconds:.0} s") }
}

/// A size as text: `812,345 bytes`.
#[must_use]
pub fn bytes(size: usize) -> String {
    let digits = size.to_string();
    let mut grouped = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    grouped + " bytes"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_grouped_by_thousands() {
        for (size, text) in
            [(0, "0 bytes"), (999, "999 bytes"), (1000, "1,000 bytes"), (1234567, "1,234,567 bytes")]
        {
            assert_eq!(bytes(size), text);
        }
    }

    #[test]
    fn short_times_keep_a_decimal() {
        assert_eq!(seconds(Duration::from_millis(420)), "0.4 s");
        assert_eq!(seconds(Duration::from_millis(75_400)), "75 s");
    }
}
