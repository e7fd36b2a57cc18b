//! Calibrates a dryer with a probe run.
//!
//! A probe or a temperature tape under a test print gives temperatures over time. Three numbers of the dryer
//! follow from them: the difference between its air and the dial, its heat transfer and its exchange factor,
//! the latter two as multiples `h` and `F` of the record. They minimise
//!
//! ```text
//! sum [(T(t_i) - T_i) / s_probe]^2 + (air / s_air)^2 + (ln h / s_h)^2 + (ln F / s_F)^2
//! ```
//!
//! the misfit of the readings `T_i` to the computed history `T`, plus the prior knowledge of such dryers. The
//! derivatives are lanes of the same integration. The inverse of the curvature at the minimum is the
//! covariance of the three numbers.

use super::machine::{DriftCase, Dryer};
use super::solve::{Case, HistoryError, Place, TOLERANCE, history};
use super::stack::Stack;
use crate::numerics::fit::{Fit, Residuals, least_squares};
use crate::numerics::normal::NINTH_DECILE;
use crate::numerics::rosenbrock::Tolerance;
use crate::quantity::{Band, Bound, FieldError, Problem};
use serde::{Deserialize, Serialize};

/// One reading of a probe.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemperatureReading {
    /// Time since the entry, s.
    pub seconds: f64,
    /// Temperature, K.
    pub temperature: f64,
}

/// A dryer's deviation from its record, found by a probe run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DryerCalibration {
    /// Air temperature minus that of the record, K.
    pub air: Band,
    /// Heat transfer, as a multiple of the record's.
    pub h: Band,
    /// Exchange factor, as a multiple of the record's.
    pub exchange: Band,
    /// Root mean square of the residuals, K.
    pub misfit: f64,
    /// Whether the readings can come from this dryer: the misfit is under three times the standard deviation
    /// of the probe.
    pub believable: bool,
}

/// Standard deviation of a reading, K: thermocouple 1 K, its place in the film 2 K; from memory.
const PROBE: f64 = 2.0;
/// Prior standard deviations: of the air temperature against the dial, K, and of the logarithms of heat
/// transfer and exchange factor. Common practice, no source: dials are off by several kelvin, and the factors
/// are known to a third.
const PRIOR: [f64; 3] = [6.0, 0.35, 0.40];
/// Smallest number of readings while the piece is followed: three numbers are fitted to them.
const LEAST: usize = 4;
/// Step sizes of the difference quotients.
const STEP: [f64; 3] = [0.5, 0.02, 0.02];
/// A tenth of the usual tolerance, for the difference quotients.
const TIGHT: Tolerance = Tolerance { temperature: TOLERANCE.temperature / 10.0, water: TOLERANCE.water };

/// Fits a dryer to a probe run of `stack` at `set` (K) and `belt` (m/s), read at `place`.
///
/// # Errors
/// [`HistoryError::Outside`] for fewer than four readings while the piece is followed, for a reading out of order or
/// range, and if the stack, the dryer or the setting lies outside the range in which the equations hold;
/// [`HistoryError::Integration`] if the time steps fail.
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
        // Four lanes would do; eight, as elsewhere, so that the page contains one instance of the integrator
        // less.
        let cases: [Case; 8] = std::array::from_fn(|lane| Case { set, belt, drift: drift(lane) });
        let history = history(stack, dryer, &cases, 1, TIGHT)?;
        let mut residuals = Residuals::with_capacity(readings.len() + 3);
        for reading in readings {
            // After the end of the history the piece is cool and readings carry no information.
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
        // Checked here because only the history shows how long the piece is followed.
        return Err(too_few(read.len()).into());
    }
    let mean: f64 = read.iter().map(|(r, _)| r * r).sum::<f64>() / read.len() as f64;
    let misfit = mean.sqrt() * PROBE;
    let band = |i: usize| {
        let spread = fit.covariance[i][i].sqrt() * NINTH_DECILE;
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
