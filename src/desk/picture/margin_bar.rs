//! The margin bar: one margin on a scale, with its limit as a wall.

use super::Ink;
use super::scale::AxisScale;
use crate::plan::{Margin, Side, Topic, Unit};
use crate::quantity::Band;

/// Width of the view box.
pub const WIDTH: f64 = 370.0;
/// Height of the view box.
pub const HEIGHT: f64 = 62.0;

/// The places of a margin bar, in its view box.
#[derive(Clone, Debug, PartialEq)]
pub struct MarginBar {
    /// Colour and hatch.
    pub ink: Ink,
    /// Values on the scale.
    pub scale: AxisScale,
    /// Left end and width of the failing side.
    pub fails: (f64, f64),
    /// The limit.
    pub limit: f64,
    /// Low and high end of the bar, held to the scale.
    pub bar: (f64, f64),
    /// True where the low or the high end lies beyond the scale.
    pub beyond: (bool, bool),
    /// The likely value.
    pub likely: f64,
    /// Ticks: position and whether it is a long one.
    pub ticks: Vec<(f64, bool)>,
    /// True if the failing side is the left one.
    pub fails_left: bool,
}

/// The bar of a margin.
#[must_use]
pub fn margin_bar(margin: &Margin) -> MarginBar {
    let Margin { value: Band { low, likely, high }, limit, .. } = *margin;
    let (from, to) = ends(margin, limit, low, high);
    let scale = AxisScale { from, to, start: 12.0, end: WIDTH - 12.0 };
    let fails_left = margin.needed == Side::AtLeast;
    let wall = scale.held(limit);
    let fails = if fails_left { (scale.start, wall - scale.start) } else { (wall, scale.end - wall) };
    let ticks = (0..=10)
        .map(|k| (scale.start + (scale.end - scale.start) * f64::from(k) / 10.0, k % 5 == 0))
        .collect();
    MarginBar {
        ink: Ink::of(margin.what),
        scale,
        fails,
        limit: wall,
        bar: (scale.held(low), scale.held(high)),
        beyond: (low < from, high > to),
        likely: scale.held(likely),
        ticks,
        fails_left,
    }
}

/// Round ends of the scale that hold the limit and as much of the bar as stays readable beside it.
fn ends(margin: &Margin, limit: f64, low: f64, high: f64) -> (f64, f64) {
    match margin.unit {
        _ if margin.what == Topic::Fusion => {
            let from = (low.min(limit - 20.0) / 10.0).floor() * 10.0;
            (if from.is_finite() { from.clamp(0.0, 90.0) } else { 0.0 }, 100.0)
        }
        Unit::Celsius => {
            let reach = (high - limit).abs().max((limit - low).abs()).max(10.0) * 1.25;
            let reach = (reach.min(80.0) / 10.0).ceil() * 10.0;
            (limit - reach, limit + reach)
        }
        _ => {
            let most = (limit * 2.5).max(high.min(limit * 6.0) * 1.1);
            (0.0, if most.is_finite() && most > 0.0 { most } else { 1.0 })
        }
    }
}
