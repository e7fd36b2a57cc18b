//! Taking the time of a call.

use crate::scenarios::Failure;
use std::time::Instant;

/// The mean.
pub fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// Time of one call, us: the fastest of some rounds, since other programs only ever slow a call down.
///
/// # Errors
/// [`Failure`] of the call.
pub fn time(mut work: impl FnMut() -> Result<(), Failure>) -> Result<f64, Failure> {
    work()?;
    let start = Instant::now();
    work()?;
    let calls = (2e-3 / start.elapsed().as_secs_f64().max(1e-7)).ceil().clamp(1.0, 1e4);
    let mut fastest = f64::MAX;
    for _ in 0..15 {
        let start = Instant::now();
        for _ in 0..calls as u32 {
            work()?;
        }
        fastest = fastest.min(start.elapsed().as_secs_f64() / calls * 1e6);
    }
    Ok(fastest)
}
