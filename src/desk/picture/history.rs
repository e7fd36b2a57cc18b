//! Temperatures and fusion over time, as paths.

use super::scale::{AxisScale, path};
use crate::plan::Curve;
use crate::wording::{Quantity, Units};

/// Width of the view box of both charts.
pub const WIDTH: f64 = 500.0;
/// Height of the temperature chart.
pub const HEIGHT: f64 = 352.0;
/// Height of the fusion chart.
pub const FUSED_HEIGHT: f64 = 170.0;

/// Both charts of a curve.
#[derive(Clone, Debug, PartialEq)]
pub struct HistoryCharts {
    /// Seconds along both charts.
    pub time: AxisScale,
    /// Ticks of time: position and value.
    pub time_ticks: Vec<(f64, f64)>,
    /// Shown temperatures up the first chart.
    pub heat: AxisScale,
    /// Ticks of temperature: position and value, in the unit shown.
    pub heat_ticks: Vec<(f64, f64)>,
    /// Fused share up the second chart.
    pub share: AxisScale,
    /// Film top.
    pub top: String,
    /// Film bottom.
    pub bottom: String,
    /// Front cloth.
    pub cloth: String,
    /// Fused share.
    pub fused: String,
    /// The area under it.
    pub fused_area: String,
    /// Where the piece leaves the heat.
    pub leaves: f64,
    /// Highest film temperature, °C.
    pub peak_c: f64,
    /// Largest lag of the underside behind the top while in the heat, K.
    pub lag: f64,
    /// When the fused share first reaches the limit, s.
    pub fused_at: Option<f64>,
    /// Fused share at the end.
    pub fused_end: f64,
    /// Points of the curves for their labels: film top and cloth, as time and position up.
    pub marks: [(f64, f64); 2],
}

/// The charts of a curve in these units; `limit` is the fused share that is needed, 0 to 1.
///
/// Returns `None` for a curve without at least two times.
#[must_use]
pub fn history_charts(curve: &Curve, limit: f64, units: Units) -> Option<HistoryCharts> {
    let end = *curve.seconds.last()?;
    let long_enough = curve.seconds.len() > 1 && end > 0.0;
    if !long_enough || curve.film_top_c.len() != curve.seconds.len() {
        return None;
    }
    let shown = |celsius: f64| Quantity::Temperature.shown(celsius, units);
    let peak_c =
        curve.film_top_c.iter().chain(&curve.film_bottom_c).fold(f64::MIN, |most, &now| most.max(now));
    let step = if units == Units::Metric { 20.0 } else { 50.0 };
    let ceiling = (shown(peak_c + 8.0) / step).ceil() * step;
    let time = AxisScale { from: 0.0, to: end, start: 46.0, end: WIDTH - 12.0 };
    let heat = AxisScale { from: shown(20.0), to: ceiling, start: HEIGHT - 48.0, end: 36.0 };
    let share = AxisScale { from: 0.0, to: 1.0, start: FUSED_HEIGHT - 52.0, end: 16.0 };
    let line = |values: &[f64]| {
        path(curve.seconds.iter().zip(values).map(|(&s, &c)| (time.at(s), heat.held(shown(c)))), false)
    };
    let fused_points: Vec<(f64, f64)> =
        curve.seconds.iter().zip(&curve.fused).map(|(&s, &f)| (time.at(s), share.held(f))).collect();
    let feet = [(time.end, share.start), (time.start, share.start)];
    let lag = curve
        .seconds
        .iter()
        .zip(curve.film_top_c.iter().zip(&curve.film_bottom_c))
        .filter(|(second, _)| **second <= curve.leaves_s)
        .fold(0.0_f64, |most, (_, (top, bottom))| most.max(top - bottom));
    let near = |values: &[f64], second: f64| {
        let index = curve.seconds.iter().position(|&s| s >= second).unwrap_or(0);
        values.get(index).map_or((time.at(second), heat.start), |&c| (time.at(second), heat.held(shown(c))))
    };
    let mark = curve.leaves_s.min(end);
    Some(HistoryCharts {
        time_ticks: ticks_at(&time, 6),
        heat_ticks: ticks_at(&heat, 5),
        top: line(&curve.film_top_c),
        bottom: line(&curve.film_bottom_c),
        cloth: line(&curve.cloth_c),
        fused: path(fused_points.iter().copied(), false),
        fused_area: path(fused_points.iter().copied().chain(feet), true),
        leaves: time.held(curve.leaves_s),
        peak_c,
        lag,
        fused_at: first_reach(&curve.seconds, &curve.fused, limit),
        fused_end: curve.fused.last().copied().unwrap_or(0.0),
        marks: [near(&curve.film_top_c, 0.35 * mark), near(&curve.cloth_c, 0.55 * mark)],
        time,
        heat,
        share,
    })
}

fn ticks_at(scale: &AxisScale, count: usize) -> Vec<(f64, f64)> {
    scale.ticks(count).0.into_iter().map(|value| (scale.at(value), value)).collect()
}

/// When a rising series first reaches a level, between its points in proportion.
fn first_reach(seconds: &[f64], values: &[f64], level: f64) -> Option<f64> {
    let index = values.iter().position(|&value| value >= level)?;
    let after = seconds.get(index).copied()?;
    let Some(before) = index.checked_sub(1) else { return Some(after) };
    let (low, high) = (values[before], values[index]);
    let share = if high > low { (level - low) / (high - low) } else { 1.0 };
    Some(seconds[before] + share * (after - seconds[before]))
}
