//! The band over days: how far the white turns, with its limit, its grades and the day that matters.
//!
//! Days run along their square root, because that is how dye spreads and because the first week matters.

use super::scale::{AxisScale, path};
use crate::optics::GreyStep;
use crate::plan::{BleedForecast, Spread};

/// Width of the view box.
pub const WIDTH: f64 = 640.0;
/// Height of the view box.
pub const HEIGHT: f64 = 420.0;
/// Days that may be written under the axis.
const DAY_TICKS: [f64; 11] = [0.0, 1.0, 3.0, 7.0, 21.0, 45.0, 90.0, 180.0, 365.0, 1460.0, 3650.0];
/// Least distance between two labels.
const APART: f64 = 24.0;

/// The places of the band, in its view box.
#[derive(Clone, Debug, PartialEq)]
pub struct AgeingChart {
    /// Square roots of days along.
    pub time: AxisScale,
    /// Colour difference up.
    pub shift: AxisScale,
    /// Ticks of time: position and day.
    pub day_ticks: Vec<(f64, f64)>,
    /// Ticks of colour difference: position, value and digits.
    pub shift_ticks: Vec<(f64, f64, usize)>,
    /// Eight cases in ten.
    pub wide: String,
    /// Half of the cases.
    pub core: String,
    /// Lower edge, most likely, upper edge.
    pub lines: [String; 3],
    /// Height of the limit.
    pub limit: f64,
    /// Grades that fit: height and the grade from there on.
    pub grades: Vec<(f64, GreyStep)>,
    /// The day that matters: position, height and value of the likely case there.
    pub looked_at: [f64; 3],
    /// Position of the due day, and whether its words go to the left of it; `None` where it is not known or beyond
    /// the picture.
    pub leaves: Option<(f64, bool)>,
    /// Likely case at the end: position and height.
    pub end: [f64; 2],
    /// Heights of the labels at the end, kept apart: lower edge, most likely, upper edge, limit.
    pub labels: [f64; 4],
}

/// The band of a forecast; `None` for one without at least two days.
#[must_use]
pub fn ageing_chart(forecast: &BleedForecast) -> Option<AgeingChart> {
    let (days, spreads) = (&forecast.days, &forecast.de00);
    let (last, end) = (*days.last()?, spreads.last()?);
    if days.len() < 2 || days.len() != spreads.len() || last <= 0.0 {
        return None;
    }
    let most = spreads.iter().fold(0.0_f64, |most, spread| most.max(spread.high));
    // Beyond some 7, ΔE00 means little and may even fall again: the band may leave the picture there.
    let top = most.min(forecast.limit * 3.5).max(forecast.limit * 2.5).ceil().max(1.0);
    let time = AxisScale { from: 0.0, to: last.sqrt(), start: 36.0, end: 486.0 };
    let shift = AxisScale { from: 0.0, to: top, start: 358.0, end: 14.0 };
    let along = |day: f64| time.held(day.max(0.0).sqrt());
    let line = |of: &fn(&Spread) -> f64| -> Vec<(f64, f64)> {
        days.iter().zip(spreads).map(|(&day, spread)| (along(day), shift.held(of(spread)))).collect()
    };
    let edges: [fn(&Spread) -> f64; 5] =
        [|it| it.low, |it| it.lower, |it| it.likely, |it| it.upper, |it| it.high];
    let edges: Vec<Vec<(f64, f64)>> = edges.iter().map(line).collect();
    let [low, lower, likely, upper, high] = edges.as_slice() else { return None };
    let between = |over: &[(f64, f64)], under: &[(f64, f64)]| {
        let mut round = over.to_vec();
        round.extend(under.iter().rev());
        path(round, true)
    };
    let (ticks, digits) = shift.ticks(5);
    let shown = forecast.looked_at_days.clamp(0.0, last);
    let value = at(days, spreads, shown);
    Some(AgeingChart {
        day_ticks: day_ticks(last, along),
        shift_ticks: ticks.into_iter().map(|value| (shift.at(value), value, digits)).collect(),
        wide: between(high, low),
        core: between(upper, lower),
        limit: shift.held(forecast.limit),
        grades: grades(forecast, &shift),
        looked_at: [along(shown), shift.held(value), value],
        leaves: forecast.leaves.as_ref().filter(|leaves| (0.0..=last).contains(&leaves.day)).map(|leaves| {
            let at = along(leaves.day);
            (at, at > 0.5 * (time.start + time.end))
        }),
        end: [time.end, shift.held(end.likely)],
        labels: apart([end.low, end.likely, end.high, forecast.limit].map(|value| shift.held(value))),
        lines: [low, likely, high].map(|line| path(line.clone(), false)),
        time,
        shift,
    })
}

/// Days under the axis that do not overlap.
fn day_ticks(last: f64, along: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
    let mut ticks: Vec<(f64, f64)> = Vec::new();
    for day in DAY_TICKS.into_iter().filter(|&day| day <= last) {
        let at = along(day);
        if ticks.last().is_none_or(|(before, _)| at - before > APART) {
            ticks.push((at, day));
        }
    }
    ticks
}

/// Grades whose line keeps clear of the words at the top and of the limit.
fn grades(forecast: &BleedForecast, shift: &AxisScale) -> Vec<(f64, GreyStep)> {
    let mut shown: Vec<(f64, GreyStep)> = Vec::new();
    for line in &forecast.grades {
        let height = shift.at(line.de00);
        let free = height > shift.end + 76.0 && (height - shift.held(forecast.limit)).abs() > 4.0;
        if free && shown.last().is_none_or(|(under, _)| under - height > APART) {
            shown.push((height, line.step));
        }
    }
    shown
}

/// The likely value on a day, interpolated linearly.
fn at(days: &[f64], spreads: &[Spread], day: f64) -> f64 {
    let after = days.partition_point(|&other| other < day);
    let likely = |index: usize| spreads.get(index).map_or(0.0, |spread| spread.likely);
    let Some(before) = after.checked_sub(1) else { return likely(0) };
    let (Some(&from), Some(&to)) = (days.get(before), days.get(after)) else { return likely(before) };
    likely(before) + (likely(after) - likely(before)) * (day - from) / (to - from).max(1e-9)
}

/// The same heights, pushed apart just enough, in their order from the top.
fn apart(heights: [f64; 4]) -> [f64; 4] {
    let mut order = [0, 1, 2, 3];
    order.sort_by(|&a, &b| heights[a].total_cmp(&heights[b]));
    let mut placed = heights;
    // From the top down each keeps its distance; then from the foot up, so that none falls below the axis.
    for pair in order.windows(2) {
        placed[pair[1]] = placed[pair[1]].max(placed[pair[0]] + APART);
    }
    let mut floor = 352.0;
    for &index in order.iter().rev() {
        placed[index] = placed[index].min(floor);
        floor = placed[index] - APART;
    }
    placed
}
