//! The trade-off chart: recipes as marks between what is paid, along, and what is got for it, up. Better is to the
//! left and down.
//!
//! Chances are drawn by their logarithm, because orders are decided on one in ten against one in a hundred. Pace runs
//! from fast to slow, so that better is to the left there too.

use super::scale::{AxisScale, path};
use crate::plan;

/// Width of the view box.
pub const WIDTH: f64 = 640.0;
/// Height of the view box.
pub const HEIGHT: f64 = 400.0;
/// Width of a letter of a name, bold and in the widest face.
const LETTER: f64 = 10.6;
/// Height of a line of words.
const LINE: f64 = 19.0;
/// Half the side of a mark with a name, and with the ring of the chosen one.
const MARK: f64 = 18.0;
/// Half the side of any other mark.
const SMALL: f64 = 8.0;
/// Chances that are written beside the scale.
const CHANCES: [f64; 9] = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5];

/// A recipe in the chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Where it stands.
    pub at: [f64; 2],
    /// Left end and base line of its name, if it is named and the name fits.
    pub name: Option<[f64; 2]>,
}

/// The chart.
#[derive(Clone, Debug, PartialEq)]
pub struct TradeOffChart {
    /// What is paid, along.
    pub pays: AxisScale,
    /// What is got, up; for chances the logarithm.
    pub gets: AxisScale,
    /// Ticks along: position, value and digits.
    pub pays_ticks: Vec<(f64, f64, usize)>,
    /// Ticks up: height, value and digits.
    pub gets_ticks: Vec<(f64, f64, usize)>,
    /// Each recipe, in the order of the trade-off.
    pub marks: Vec<Mark>,
    /// The line through the Pareto front: recipes that no other beats on both scales.
    pub front: String,
}

/// The chart of a trade-off. `names` are places and names of the recipes to be named, the most important first,
/// because names that do not fit are left out. `None` for fewer than two recipes.
#[must_use]
pub fn trade_off_chart(trade: &plan::TradeOff, names: &[(usize, String)]) -> Option<TradeOffChart> {
    let late = trade.gets == plan::Scale::Late;
    let up = |way: &plan::RecipeScores| rise(late, way.value(trade.gets));
    let along = |way: &plan::RecipeScores| way.value(trade.pays);
    let [left, right] = room(trade.ways.iter().map(along), 0.08)?;
    let [low, high] = room(trade.ways.iter().map(up), 0.14)?;
    if trade.ways.len() < 2 {
        return None;
    }
    let (from, to) = if trade.pays == plan::Scale::Pace { (right, left) } else { (left, right) };
    let pays = AxisScale { from, to, start: 142.0, end: WIDTH - 14.0 };
    let gets = AxisScale { from: low, to: high, start: HEIGHT - 66.0, end: 30.0 };
    let places: Vec<[f64; 2]> =
        trade.ways.iter().map(|way| [pays.held(along(way)), gets.held(up(way))]).collect();
    let gets_ticks = if late { chances(&gets) } else { ticks_of(&gets, &gets, |value| value) };
    Some(TradeOffChart {
        pays_ticks: ticks_of(&pays, &pays, |value| value),
        gets_ticks,
        front: front(trade, &places, &pays, &gets),
        marks: named(&places, names, &pays, &gets),
        pays,
        gets,
    })
}

/// Round values of a scale, placed on another by `at`.
fn ticks_of(values: &AxisScale, on: &AxisScale, at: fn(f64) -> f64) -> Vec<(f64, f64, usize)> {
    let (ticks, digits) = values.ticks(5);
    ticks.into_iter().map(|value| (on.at(at(value)), value, digits)).collect()
}

/// Ticks of chances: familiar ones; where fewer than three are on the scale, round ones instead.
fn chances(gets: &AxisScale) -> Vec<(f64, f64, usize)> {
    let known = CHANCES.into_iter().filter(|chance| (gets.from..=gets.to).contains(&chance.ln()));
    let known: Vec<(f64, f64, usize)> = known.map(|chance| (gets.at(chance.ln()), chance, 0)).collect();
    if known.len() > 2 {
        return known;
    }
    let values = AxisScale { from: gets.from.exp(), to: gets.to.exp(), ..*gets };
    ticks_of(&values, gets, |chance| chance.max(1e-4).ln())
}

fn rise(late: bool, value: f64) -> f64 {
    if late { value.max(1e-4).ln() } else { value }
}

/// The ends of a scale with a margin on both sides; `None` without a finite value.
fn room(values: impl Iterator<Item = f64>, margin: f64) -> Option<[f64; 2]> {
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for value in values {
        (low, high) = (low.min(value), high.max(value));
    }
    let wide = (high - low).max(0.02 * high.abs()).max(0.02);
    low.is_finite().then_some([low - margin * wide, high + margin * wide])
}

/// Steps through the front: what is got stays the same until more is paid.
fn front(trade: &plan::TradeOff, places: &[[f64; 2]], pays: &AxisScale, gets: &AxisScale) -> String {
    let on: Vec<[f64; 2]> =
        trade.ways.iter().zip(places).filter(|(way, _)| way.front).map(|(_, at)| *at).collect();
    let (Some(first), Some(last)) = (on.first(), on.last()) else { return String::new() };
    let mut points = vec![(first[0], gets.end), (first[0], first[1])];
    for pair in on.windows(2) {
        points.extend([(pair[1][0], pair[0][1]), (pair[1][0], pair[1][1])]);
    }
    points.push((pays.end, last[1]));
    path(points, false)
}

/// Marks with their names. A name keeps clear of every mark and of the names before it.
fn named(places: &[[f64; 2]], names: &[(usize, String)], pays: &AxisScale, gets: &AxisScale) -> Vec<Mark> {
    let mut marks: Vec<Mark> = places.iter().map(|at| Mark { at: *at, name: None }).collect();
    let half = |at: usize| if names.iter().any(|(named, _)| *named == at) { MARK } else { SMALL };
    let mut taken: Vec<[f64; 4]> = places
        .iter()
        .enumerate()
        .map(|(at, [x, y])| [x - half(at), y - half(at), x + half(at), y + half(at)])
        .collect();
    for (at, name) in names {
        let Some(mark) = marks.get_mut(*at) else { continue };
        let (wide, [x, y]) = (LETTER * name.chars().count() as f64, mark.at);
        let places = [
            [x + MARK + 5.0, y + 6.0],
            [x - MARK - 5.0 - wide, y + 6.0],
            [x - 0.5 * wide, y - MARK - 6.0],
            [x - 0.5 * wide, y + MARK + 18.0],
            [x + MARK, y - MARK],
            [x - MARK - wide, y + MARK + 12.0],
        ];
        let free = places.into_iter().find(|[x, y]| {
            let words = [*x, y - LINE + 5.0, x + wide, y + 5.0];
            let inside = words[0] >= pays.start + 4.0
                && words[2] <= pays.end
                && words[1] >= gets.end - 24.0
                && words[3] <= gets.start - 4.0;
            inside && !taken.iter().any(|other| overlap(&words, other))
        });
        if let Some([x, y]) = free {
            taken.push([x, y - LINE + 5.0, x + wide, y + 5.0]);
            mark.name = Some([x, y]);
        }
    }
    marks
}

/// True where two boxes (left, top, right, bottom) overlap.
fn overlap(a: &[f64; 4], b: &[f64; 4]) -> bool {
    a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]
}
