//! What a probe that rode through the dryer tells of it.
//!
//! A probe or tape under a test print gives temperatures over time. Three numbers of the dryer can be told from them:
//! how far its air is off the dial, how well its air and how well its emitter hand over heat. They are found where
//!
//! ```text
//! sum [(T(t_i) - T_i) / s_probe]^2 + (air / s_air)^2 + (ln h / s_h)^2 + (ln F / s_F)^2
//! ```
//!
//! is least: the readings against the march, and what is known of such dryers before. The derivatives are lanes of the
//! same march. Where readings and priors can be trusted the curvature there is how well each number is known.

use super::machine::{DriftCase, Dryer};
use super::solve::{Case, HistoryError, Place, TOLERANCE, history};
use super::stack::Stack;
use crate::numerics::fit::{Fit, Residuals, least_squares};
use crate::numerics::rosenbrock::Tolerance;
use crate::quantity::{Band, Bound, FieldError, Problem};
use serde::{Deserialize, Serialize};

/// One reading of the probe.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemperatureReading {
    /// Time since the print entered the heat, s.
    pub seconds: f64,
    /// What the probe read, K.
    pub temperature: f64,
}

/// What was learnt of a dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DryerCalibration {
    /// Air above what the dial says, K.
    pub air: Band,
    /// Heat transfer, as a multiple of what the record says.
    pub h: Band,
    /// Exchange factor, as a multiple of what the record says.
    pub exchange: Band,
    /// Root mean square of what is left between readings and march, K.
    pub misfit: f64,
    /// Whether the readings can be believed of this dryer at all: the misfit is under three times the probe's own spread.
    pub believable: bool,
}

/// Spread of a probe's reading, K: thermocouple 1 K, its place in the film 2 K; from memory.
const PROBE: f64 = 2.0;
/// What is known before: spread of the air against the dial, K, and of the logarithms of heat transfer and exchange.
/// Common practice, no source: dials are off by several kelvin, and the two factors are guesses within a third.
const PRIOR: [f64; 3] = [6.0, 0.35, 0.40];
/// Fewest readings, in the heat or soon after: three numbers are asked of them.
const LEAST: usize = 4;
/// Steps of the derivatives.
const STEP: [f64; 3] = [0.5, 0.02, 0.02];
/// A tenth of the shipped tolerance: derivatives are differences.
const TIGHT: Tolerance = Tolerance { temperature: TOLERANCE.temperature / 10.0, border: TOLERANCE.border };
/// Standard normal quantile of 0.9.
const EIGHT_IN_TEN: f64 = 1.281_551_6;

/// Fits a dryer to a probe run of `stack` at `set` (K) and `belt` (m/s), read at `place`.
///
/// # Errors
/// Fewer than four readings while the piece is followed, a reading out of order or range; or as the march.
pub fn calibrate(
    stack: &Stack,
    dryer: &Dryer,
    set: f64,
    belt: f64,
    place: Place<8>,
    readings: &[TemperatureReading],
) -> Result<DryerCalibration, HistoryError> {
    check(readings)?;
    let residuals = |x: &[f64; 3]| -> Result<Residuals<3>, HistoryError> {
        let drift = |moved: usize| {
            let [air, h, exchange] =
                std::array::from_fn(|i| x[i] + if moved == i + 1 { STEP[i] } else { 0.0 });
            DriftCase { air, h: h.exp(), exchange: exchange.exp(), ..DriftCase::NOMINAL }
        };
        // Eight lanes, as the plan marches them, though four would do: another width would be another march in the page.
        let cases: [Case; 8] = std::array::from_fn(|lane| Case { set, belt, drift: drift(lane) });
        let history = history(stack, dryer, &cases, 1, TIGHT)?;
        let mut residuals = Residuals::with_capacity(readings.len() + 3);
        for reading in readings {
            // Past the followed time a piece is cool and tells nothing.
            let Some(there) = history.at(place, reading.seconds) else { continue };
            let derivatives = std::array::from_fn(|i| (there[i + 1] - there[0]) / STEP[i] / PROBE);
            residuals.push(((there[0] - reading.temperature) / PROBE, derivatives));
        }
        for i in 0..3 {
            let mut derivatives = [0.0; 3];
            derivatives[i] = 1.0 / PRIOR[i];
            residuals.push((x[i] / PRIOR[i], derivatives));
        }
        Ok(residuals)
    };
    let fit: Fit<3> = least_squares([0.0; 3], residuals)?;
    let last = residuals(&fit.at)?;
    let read = &last[..last.len() - PRIOR.len()];
    if read.len() < LEAST {
        // Told late, since only the march knows how long a piece is followed.
        return Err(too_few(read.len()).into());
    }
    let mean: f64 = read.iter().map(|(r, _)| r * r).sum::<f64>() / read.len() as f64;
    let misfit = mean.sqrt() * PROBE;
    let band = |i: usize| {
        let spread = fit.covariance[i][i].sqrt() * EIGHT_IN_TEN;
        Band { low: fit.at[i] - spread, likely: fit.at[i], high: fit.at[i] + spread }
    };
    Ok(DryerCalibration {
        air: band(0),
        h: band(1).map(f64::exp),
        exchange: band(2).map(f64::exp),
        misfit,
        believable: misfit < 3.0 * PROBE,
    })
}

fn too_few(readings: usize) -> FieldError {
    let problem = Problem::OutOfRange { min: LEAST as f64, max: 10_000.0, unit: "1".into() };
    FieldError::new("readings", readings.to_string(), problem)
}

fn check(readings: &[TemperatureReading]) -> Result<(), FieldError> {
    if readings.len() < LEAST {
        return Err(too_few(readings.len()));
    }
    let mut last = -1.0;
    for (i, reading) in readings.iter().enumerate() {
        let at = format!("readings[{i}]");
        let time = Bound { field: "seconds", min: 0.0, max: 3600.0, unit: "s" };
        let heat = Bound { field: "temperature", min: 250.0, max: 800.0, unit: "K" };
        time.check(reading.seconds).map_err(|error| error.within(&at))?;
        heat.check(reading.temperature).map_err(|error| error.within(&at))?;
        if reading.seconds <= last {
            let problem = Problem::Contradiction { with: format!("readings[{}].seconds", i - 1) };
            return Err(FieldError::new("seconds", reading.seconds.to_string(), problem).within(&at));
        }
        last = reading.seconds;
    }
    Ok(())
}
