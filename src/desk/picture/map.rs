//! The window map: belt speed along, set temperature up; what fails is hatched and named, what is clear works.

use super::Ink;
use super::contour::{Point, region};
use super::scale::{AxisScale, path};
use crate::numerics::sorting::sorted;
use crate::plan::{Drift, Side, Topic, Wall, WindowReport};
use crate::wording::{Quantity, Units};

/// Width of the view box.
pub const WIDTH: f64 = 620.0;
/// Height of the view box.
pub const HEIGHT: f64 = 540.0;
/// Width of one letter of the large and of the small words, in the widest face that may stand in.
const LETTER: [f64; 2] = [19.0, 9.6];
/// Height of a large word with the line under it, and of a small word.
const WORD_HEIGHT: [f64; 2] = [62.0, 26.0];
/// How far under the top of its room a large and a small word stand.
const BASE_LINE: [f64; 2] = [28.0, 19.0];
/// Spacing of the points at which the map is felt for room.
const STEP: f64 = 9.0;

/// Width of a large word with a small line under it, and of the word alone in small letters.
#[must_use]
pub fn word_width(word: &str, line: &str) -> [f64; 2] {
    let width = |text: &str, letter: f64| text.chars().count() as f64 * letter;
    [width(word, LETTER[0]).max(width(line, LETTER[1])), width(word, LETTER[1])]
}

/// One limit on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitArea {
    /// What it is about.
    pub topic: Topic,
    /// Colour and hatch.
    pub ink: Ink,
    /// The failing region, closed; empty where nothing fails.
    pub region: String,
    /// Its limit.
    pub wall: String,
    /// Left end and base line of its word, where it fits.
    pub word: Option<Point>,
    /// Whether there is room for it in small letters only, without its limit.
    pub small: bool,
}

/// Where everything on the map stands.
#[derive(Clone, Debug, PartialEq)]
pub struct WindowMap {
    /// Belt along, in the unit shown.
    pub belt: AxisScale,
    /// Set temperature up, in the unit shown.
    pub heat: AxisScale,
    /// Ticks of belt: position and value.
    pub belt_ticks: Vec<(f64, f64)>,
    /// Digits of those values.
    pub belt_decimals: usize,
    /// Ticks of heat.
    pub heat_ticks: Vec<(f64, f64)>,
    /// The limits, the most of the map first.
    pub areas: Vec<LimitArea>,
    /// Middle and turn (degrees) of the word for what works; absent where nothing does.
    pub works: Option<(Point, f64)>,
    /// A cool and a hot point of what works: set temperature (°C) and belt (m/min).
    pub strip: Option<(Point, Point)>,
}

/// The set point on the map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPointMark {
    /// Where it stands.
    pub middle: Point,
    /// Half the width and height of the drift box round it.
    pub half: Point,
}

impl WindowMap {
    /// Where a set temperature (°C) and a belt (m/min) stand.
    #[must_use]
    pub fn place(&self, set_c: f64, belt: f64, units: Units) -> Point {
        (
            self.belt.held(Quantity::Belt.shown(belt, units)),
            self.heat.held(Quantity::Temperature.shown(set_c, units)),
        )
    }

    /// The set temperature (°C) and belt (m/min) at a point of the map, held to its axes.
    #[must_use]
    pub fn setting(&self, (x, y): Point, units: Units) -> (f64, f64) {
        let x = x.clamp(self.belt.start, self.belt.end);
        let y = y.clamp(self.heat.end, self.heat.start);
        (
            Quantity::Temperature.kept(self.heat.value(y), units),
            Quantity::Belt.kept(self.belt.value(x), units),
        )
    }

    /// The set point at a temperature (°C) and a belt (m/min), with the box of how far the dryer wanders there.
    #[must_use]
    pub fn set_point(&self, drift: &Drift, set_c: f64, belt: f64, units: Units) -> SetPointMark {
        let slope = |scale: &AxisScale| ((scale.end - scale.start) / (scale.to - scale.from)).abs();
        SetPointMark {
            middle: self.place(set_c, belt, units),
            half: (
                Quantity::Belt.shown(drift.belt_m_per_min, units) * slope(&self.belt),
                Quantity::TemperatureDifference.shown(drift.set_k, units) * slope(&self.heat),
            ),
        }
    }
}

/// True if the drift box of a report, round a temperature (°C) and a belt (m/min), lies wholly in what works.
#[must_use]
pub fn drift_fits(report: &WindowReport, set_c: f64, belt: f64) -> bool {
    [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)].into_iter().all(|(along, up)| {
        let speed = belt + along * report.drift.belt_m_per_min;
        let celsius = set_c + up * report.drift.set_k;
        !report.walls.iter().any(|wall| fails_at(report, wall.what, speed, celsius))
    })
}

/// The map of a window report in these units. `width_of` says how wide the words of a topic are, large and small; they
/// keep clear of the setting in the report.
///
/// Returns nothing for a report without at least two temperatures and two belt speeds.
#[must_use]
pub fn window_map(
    report: &WindowReport,
    units: Units,
    width_of: &dyn Fn(Topic) -> [f64; 2],
) -> Option<WindowMap> {
    let (first_c, last_c) = (report.set_c.first()?, report.set_c.last()?);
    let (first_v, last_v) = (report.belt_m_per_min.first()?, report.belt_m_per_min.last()?);
    if report.set_c.len() < 2 || report.belt_m_per_min.len() < 2 {
        return None;
    }
    let heat_of = |celsius: f64| Quantity::Temperature.shown(celsius, units);
    let belt_of = |speed: f64| Quantity::Belt.shown(speed, units);
    let belt = AxisScale { from: belt_of(*first_v), to: belt_of(*last_v), start: 64.0, end: WIDTH - 14.0 };
    let heat = AxisScale { from: heat_of(*first_c), to: heat_of(*last_c), start: HEIGHT - 64.0, end: 14.0 };
    let place = |(speed, celsius): Point| (belt.at(belt_of(speed)), heat.at(heat_of(celsius)));

    let areas: Vec<(f64, LimitArea)> = report
        .walls
        .iter()
        .map(|wall| {
            let region = region(&report.belt_m_per_min, &report.set_c, &excess(wall));
            let outline =
                region.outlines.iter().map(|points| path(points.iter().map(|&p| place(p)), true)).collect();
            let limit =
                region.walls.iter().map(|points| path(points.iter().map(|&p| place(p)), false)).collect();
            let (topic, ink) = (wall.what, Ink::of(wall.what));
            let area = LimitArea { topic, ink, region: outline, wall: limit, word: None, small: false };
            (region.area(), area)
        })
        .collect();
    let mut areas = sorted(areas, &|(one, _), (other, _)| other.total_cmp(one));

    let points = felt(&belt, &heat);
    let states: Vec<(Point, Vec<bool>)> = points
        .into_iter()
        .map(|point| {
            let speed = Quantity::Belt.kept(belt.value(point.0), units);
            let celsius = Quantity::Temperature.kept(heat.value(point.1), units);
            let fails = areas.iter().map(|(_, area)| fails_at(report, area.topic, speed, celsius)).collect();
            (point, fails)
        })
        .collect();

    let clear: Vec<Point> =
        states.iter().filter(|(_, fails)| !fails.contains(&true)).map(|(point, _)| *point).collect();
    let set = report.setting.map(|setting| place((setting.belt_m_per_min, setting.set_c)));
    let works = strip_word(&clear, set);
    let mut taken: Vec<(Point, Point)> = Vec::new();
    taken.extend(set.map(|middle| ((middle.0 - 62.0, middle.1 - 66.0), (middle.0 + 62.0, middle.1 + 66.0))));
    taken.extend(
        works.map(|(middle, _)| ((middle.0 - 44.0, middle.1 - 44.0), (middle.0 + 44.0, middle.1 + 44.0))),
    );
    for (index, (_, area)) in areas.iter_mut().enumerate() {
        let width = width_of(area.topic);
        let failing: Vec<Point> =
            states.iter().filter(|(_, fails)| fails[index]).map(|(point, _)| *point).collect();
        // A region that is named small is still told from another of its colour.
        for size in [0, 1] {
            let word = room_for(&failing, &states, index, (width[size], WORD_HEIGHT[size]), &taken);
            if let Some((left, top)) = word {
                taken.push(((left - 8.0, top - 6.0), (left + width[size], top + WORD_HEIGHT[size] - 2.0)));
                area.word = Some((left, top + BASE_LINE[size]));
                area.small = size == 1;
                break;
            }
        }
    }
    let real = |point: &Point| {
        (
            Quantity::Temperature.kept(heat.value(point.1), units),
            Quantity::Belt.kept(belt.value(point.0), units),
        )
    };
    let strip = match (
        clear.iter().max_by(|a, b| a.1.total_cmp(&b.1)),
        clear.iter().min_by(|a, b| a.1.total_cmp(&b.1)),
    ) {
        (Some(cool), Some(hot)) => Some((real(cool), real(hot))),
        _ => None,
    };
    let (belt_values, belt_decimals) = belt.ticks(5);
    Some(WindowMap {
        belt_ticks: belt_values.into_iter().map(|value| (belt.at(value), value)).collect(),
        belt_decimals,
        heat_ticks: heat.ticks(6).0.into_iter().map(|value| (heat.at(value), value)).collect(),
        areas: areas.into_iter().map(|(_, area)| area).collect(),
        works,
        strip,
        belt,
        heat,
    })
}

/// How far each cell is past the limit, on a scale on which it is nearly straight: the logit of a share, a colour
/// difference held near its limit, the plain value of a temperature.
fn excess(wall: &Wall) -> Vec<f64> {
    wall.values.iter().map(|&value| past(wall, value)).collect()
}

fn past(wall: &Wall, value: f64) -> f64 {
    let straight = |value: f64| match wall.what {
        Topic::Fusion => {
            let whole = if wall.unit == "%" { 100.0 } else { 1.0 };
            let share = (value / whole).clamp(1e-6, 1.0 - 1e-6);
            (share / (1.0 - share)).ln()
        }
        // Nought while the white binds all the dye, then steep: what lies far past the limit must not pull it.
        Topic::Bleed => value.min(4.0 * wall.limit),
        _ => value,
    };
    let past = straight(value) - straight(wall.limit);
    match wall.needed {
        Side::AtLeast => -past,
        Side::AtMost => past,
    }
}

/// True if this topic is past its limit here, in proportion between the cells.
fn fails_at(report: &WindowReport, topic: Topic, speed: f64, celsius: f64) -> bool {
    let Some(wall) = report.walls.iter().find(|wall| wall.what == topic) else { return false };
    let (column, along) = cell(&report.belt_m_per_min, speed);
    let (row, up) = cell(&report.set_c, celsius);
    let width = report.belt_m_per_min.len();
    let at = |row: usize, column: usize| {
        wall.values.get(row * width + column).map_or(f64::NAN, |&value| past(wall, value))
    };
    let low = at(row, column) * (1.0 - along) + at(row, column + 1) * along;
    let high = at(row + 1, column) * (1.0 - along) + at(row + 1, column + 1) * along;
    let here = low * (1.0 - up) + high * up;
    here.is_nan() || here > 0.0
}

/// The cell of a rising axis that holds a value, and how far into it; held at the ends.
fn cell(axis: &[f64], value: f64) -> (usize, f64) {
    let last = axis.len().saturating_sub(2);
    let index = axis.iter().skip(1).position(|&edge| value < edge).unwrap_or(last).min(last);
    let span = axis[index + 1] - axis[index];
    let share = if span > 0.0 { (value - axis[index]) / span } else { 0.0 };
    (index, share.clamp(0.0, 1.0))
}

/// Points all over the map.
fn felt(belt: &AxisScale, heat: &AxisScale) -> Vec<Point> {
    let columns = ((belt.end - belt.start) / STEP) as usize;
    let rows = ((heat.start - heat.end) / STEP) as usize;
    let mut points = Vec::with_capacity((columns + 1) * (rows + 1));
    for row in 0..=rows {
        for column in 0..=columns {
            points.push((belt.start + column as f64 * STEP, heat.end + row as f64 * STEP));
        }
    }
    points
}

/// The roomiest place for a word of this width and height inside a region, clear of what is taken: its left top corner.
fn room_for(
    failing: &[Point],
    states: &[(Point, Vec<bool>)],
    index: usize,
    (width, height): (f64, f64),
    taken: &[(Point, Point)],
) -> Option<Point> {
    let outside: Vec<Point> =
        states.iter().filter(|(_, fails)| !fails[index]).map(|(point, _)| *point).collect();
    let mut best: Option<(f64, Point)> = None;
    for &(x, y) in failing.iter().step_by(2) {
        let (left, right, top, bottom) = (x + 8.0, x + 8.0 + width, y + 4.0, y + 4.0 + height);
        if right > WIDTH - 16.0 || bottom > HEIGHT - 68.0 {
            continue;
        }
        let clash = taken.iter().any(|((l, t), (r, b))| left < *r && right > *l && top < *b && bottom > *t);
        if clash {
            continue;
        }
        // Distance from the box to the nearest point that does not fail.
        let clearance = outside.iter().fold(90.0_f64, |least, &(px, py)| {
            let dx = (left - px).max(px - right).max(0.0);
            let dy = (top - py).max(py - bottom).max(0.0);
            least.min(dx.hypot(dy))
        });
        // Other words over the same place make it crowded: a clean patch is better.
        let crowd = states
            .iter()
            .filter(|((px, py), fails)| {
                (left..right).contains(px)
                    && (top..bottom).contains(py)
                    && fails.iter().enumerate().any(|(other, fails)| other != index && *fails)
            })
            .count() as f64;
        let score = clearance - 0.8 * crowd;
        if clearance > 0.0 && best.is_none_or(|(most, _)| score > most) {
            best = Some((score, (left, top)));
        }
    }
    best.map(|(_, point)| point)
}

/// The middle of the roomiest part of what works clear of the set point, and the turn of the strip there, degrees.
fn strip_word(clear: &[Point], set: Option<Point>) -> Option<(Point, f64)> {
    if clear.len() < 12 {
        return None;
    }
    let near = |middle: Point, reach: f64| {
        clear
            .iter()
            .filter(move |p| (p.0 - middle.0).hypot(p.1 - middle.1) < reach)
            .copied()
            .collect::<Vec<_>>()
    };
    let mut best: Option<(usize, Point)> = None;
    for &point in clear.iter().step_by(2) {
        let inside = point.0 > 120.0 && point.0 < WIDTH - 70.0 && point.1 > 60.0 && point.1 < HEIGHT - 120.0;
        let free = set.is_none_or(|set| (set.0 - point.0).hypot(set.1 - point.1) > 115.0);
        if !inside || !free {
            continue;
        }
        let count = near(point, 60.0).len();
        if best.is_none_or(|(most, _)| count > most) {
            best = Some((count, point));
        }
    }
    let (_, middle) = best?;
    let around = near(middle, 80.0);
    let count = around.len() as f64;
    let (mx, my) = around.iter().fold((0.0, 0.0), |(x, y), p| (x + p.0 / count, y + p.1 / count));
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for p in &around {
        xx += (p.0 - mx).powi(2);
        xy += (p.0 - mx) * (p.1 - my);
        yy += (p.1 - my).powi(2);
    }
    let spread = ((xx - yy).powi(2) + 4.0 * xy * xy).sqrt();
    let turn = if spread < 0.35 * (xx + yy) { 0.0 } else { 0.5 * (2.0 * xy).atan2(xx - yy).to_degrees() };
    Some(((mx, my + 9.0), turn.clamp(-62.0, 62.0)))
}
