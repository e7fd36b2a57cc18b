//! The window map: belt speed along, set temperature up; what fails is hatched and named, what is clear works.

use super::Ink;
use super::contour::{Point, region};
use super::map_labels::{Labels, Sample, sample_points};
use super::scale::{AxisScale, path};
use crate::numerics::sorting::sorted;
use crate::plan::{DialSetting, Drift, Setting, Side, Topic, Wall, WindowReport};
use crate::wording::{Quantity, Units};

pub use super::map_labels::word_width;

/// Width of the view box.
pub const WIDTH: f64 = 620.0;
/// Height of the view box.
pub const HEIGHT: f64 = 540.0;

/// What a map is drawn from: the part of a window report that stays as it is while the set point moves.
#[derive(Clone, Debug, PartialEq)]
pub struct MapGrid {
    /// Set temperatures up, °C.
    pub set_c: Vec<f64>,
    /// Belt speeds along, m/min.
    pub belt_m_per_min: Vec<f64>,
    /// Each limit with its values, a row for each temperature.
    pub walls: Vec<Wall>,
    /// The setting that words keep clear of.
    pub setting: Option<Setting>,
}

impl MapGrid {
    /// The grid of a report.
    #[must_use]
    pub fn of(report: &WindowReport) -> Self {
        Self {
            set_c: report.set_c.clone(),
            belt_m_per_min: report.belt_m_per_min.clone(),
            walls: report.walls.clone(),
            setting: report.setting,
        }
    }
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
    /// Whether it fits in small letters only, without its limit.
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
    /// Ticks of the set temperature.
    pub heat_ticks: Vec<(f64, f64)>,
    /// The limits, the largest region first.
    pub areas: Vec<LimitArea>,
    /// Middle and turn (degrees) of the word for what works; `None` where nothing does.
    pub works: Option<(Point, f64)>,
    /// A cool and a hot setting that works.
    pub strip: Option<(DialSetting, DialSetting)>,
}

/// The set point on the map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPointMark {
    /// Where it stands.
    pub middle: Point,
    /// Half the width and height of the drift box around it.
    pub half: Point,
}

impl WindowMap {
    /// Where a setting of the dryer stands, held to the axes.
    #[must_use]
    pub fn place(&self, at: DialSetting, units: Units) -> Point {
        (
            self.belt.held(Quantity::Belt.shown(at.belt_m_per_min, units)),
            self.heat.held(Quantity::Temperature.shown(at.set_c, units)),
        )
    }

    /// The setting at a point of the map, held to its axes.
    #[must_use]
    pub fn setting(&self, (x, y): Point, units: Units) -> DialSetting {
        let x = x.clamp(self.belt.start, self.belt.end);
        let y = y.clamp(self.heat.end, self.heat.start);
        Axes { belt: self.belt, heat: self.heat, units }.setting((x, y))
    }

    /// The mark of a set point, with the box of how far the dryer wanders there.
    #[must_use]
    pub fn set_point(&self, drift: &Drift, at: DialSetting, units: Units) -> SetPointMark {
        let slope = |scale: &AxisScale| ((scale.end - scale.start) / (scale.to - scale.from)).abs();
        SetPointMark {
            middle: self.place(at, units),
            half: (
                Quantity::Belt.shown(drift.belt_m_per_min, units) * slope(&self.belt),
                Quantity::TemperatureDifference.shown(drift.set_k, units) * slope(&self.heat),
            ),
        }
    }
}

/// True if the drift box of a report, around a set point, lies wholly in what works.
#[must_use]
pub fn drift_fits(report: &WindowReport, at: DialSetting) -> bool {
    let grid = MapGrid::of(report);
    [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)].into_iter().all(|(along, up)| {
        let at = DialSetting {
            set_c: at.set_c + up * report.drift.set_k,
            belt_m_per_min: at.belt_m_per_min + along * report.drift.belt_m_per_min,
        };
        !grid.walls.iter().any(|wall| fails_at(&grid, wall, at))
    })
}

/// Both axes in the units shown.
#[derive(Clone, Copy)]
struct Axes {
    belt: AxisScale,
    heat: AxisScale,
    units: Units,
}

impl Axes {
    /// `None` for a grid without at least two temperatures and two belt speeds.
    fn of(grid: &MapGrid, units: Units) -> Option<Self> {
        let ends = |values: &[f64]| match values {
            [first, .., last] => Some((*first, *last)),
            _ => None,
        };
        let ((slow, fast), (cool, hot)) = (ends(&grid.belt_m_per_min)?, ends(&grid.set_c)?);
        let belt = |speed: f64| Quantity::Belt.shown(speed, units);
        let heat = |celsius: f64| Quantity::Temperature.shown(celsius, units);
        Some(Self {
            belt: AxisScale { from: belt(slow), to: belt(fast), start: 64.0, end: WIDTH - 14.0 },
            heat: AxisScale { from: heat(cool), to: heat(hot), start: HEIGHT - 64.0, end: 14.0 },
            units,
        })
    }

    /// Where a belt speed (m/min) and a set temperature (°C) stand.
    fn place(&self, (speed, celsius): Point) -> Point {
        let speed = Quantity::Belt.shown(speed, self.units);
        (self.belt.at(speed), self.heat.at(Quantity::Temperature.shown(celsius, self.units)))
    }

    /// The setting at a point of the map.
    fn setting(&self, (x, y): Point) -> DialSetting {
        DialSetting {
            set_c: Quantity::Temperature.kept(self.heat.value(y), self.units),
            belt_m_per_min: Quantity::Belt.kept(self.belt.value(x), self.units),
        }
    }
}

/// The map of a grid in these units. `width_of` says how wide the words of a topic are, large and small; they keep
/// clear of the grid's setting.
///
/// Returns `None` for a grid without at least two temperatures and two belt speeds.
#[must_use]
pub fn window_map(grid: &MapGrid, units: Units, width_of: &dyn Fn(Topic) -> [f64; 2]) -> Option<WindowMap> {
    let axes = Axes::of(grid, units)?;
    let mut areas = areas(grid, &axes);
    let samples = samples(grid, &axes, &areas);
    let set = grid.setting.map(|setting| axes.place((setting.belt_m_per_min, setting.set_c)));
    let mut labels = Labels::new(&samples, set);
    let works = labels.place_works();
    for (index, area) in areas.iter_mut().enumerate() {
        if let Some((place, small)) = labels.place_word(index, width_of(area.topic)) {
            (area.word, area.small) = (Some(place), small);
        }
    }
    let clear = || samples.iter().filter(|sample| sample.works()).map(|sample| sample.at);
    let cool = clear().max_by(|a, b| a.1.total_cmp(&b.1));
    let hot = clear().min_by(|a, b| a.1.total_cmp(&b.1));
    let (belt_values, belt_decimals) = axes.belt.ticks(5);
    Some(WindowMap {
        belt_ticks: belt_values.into_iter().map(|value| (axes.belt.at(value), value)).collect(),
        belt_decimals,
        heat_ticks: axes.heat.ticks(6).0.into_iter().map(|value| (axes.heat.at(value), value)).collect(),
        areas,
        works,
        strip: cool.zip(hot).map(|(cool, hot)| (axes.setting(cool), axes.setting(hot))),
        belt: axes.belt,
        heat: axes.heat,
    })
}

/// Each limit with its failing region, the largest first; not named yet.
fn areas(grid: &MapGrid, axes: &Axes) -> Vec<LimitArea> {
    let drawn = |points: &[Point], closed: bool| path(points.iter().map(|&point| axes.place(point)), closed);
    let areas: Vec<(f64, LimitArea)> = grid
        .walls
        .iter()
        .map(|wall| {
            let found = region(&grid.belt_m_per_min, &grid.set_c, &excess(wall));
            let area = LimitArea {
                topic: wall.what,
                ink: Ink::of(wall.what),
                region: found.outlines.iter().map(|points| drawn(points, true)).collect(),
                wall: found.walls.iter().map(|points| drawn(points, false)).collect(),
                word: None,
                small: false,
            };
            (found.area(), area)
        })
        .collect();
    sorted(areas, &|(one, _), (other, _)| other.total_cmp(one)).into_iter().map(|(_, area)| area).collect()
}

/// Points all over the map, each with the limits that fail there.
fn samples(grid: &MapGrid, axes: &Axes, areas: &[LimitArea]) -> Vec<Sample> {
    let wall_of = |area: &LimitArea| grid.walls.iter().find(|wall| wall.what == area.topic);
    let walls: Vec<Option<&Wall>> = areas.iter().map(wall_of).collect();
    let sample = |at: Point| {
        let setting = axes.setting(at);
        let fails = walls.iter().map(|wall| wall.is_some_and(|wall| fails_at(grid, wall, setting)));
        Sample { at, fails: fails.collect() }
    };
    sample_points(&axes.belt, &axes.heat).into_iter().map(sample).collect()
}

/// How far each cell is past the limit, on a scale on which it is nearly straight: the logit of a share, a colour
/// difference held near its limit, the plain value of a temperature.
fn excess(wall: &Wall) -> Vec<f64> {
    wall.values.iter().map(|&value| past(wall, value)).collect()
}

fn past(wall: &Wall, value: f64) -> f64 {
    let straight = |value: f64| match wall.what {
        Topic::Fusion => {
            let share = (value / 100.0).clamp(1e-6, 1.0 - 1e-6);
            (share / (1.0 - share)).ln()
        }
        // Zero while the white binds all the dye, then steep: values far past the limit must not pull the contour.
        Topic::Bleed => value.min(4.0 * wall.limit),
        _ => value,
    };
    let past = straight(value) - straight(wall.limit);
    match wall.needed {
        Side::AtLeast => -past,
        Side::AtMost => past,
    }
}

/// True if a limit is passed here, in proportion between the cells.
fn fails_at(grid: &MapGrid, wall: &Wall, at: DialSetting) -> bool {
    let (column, along) = cell(&grid.belt_m_per_min, at.belt_m_per_min);
    let (row, up) = cell(&grid.set_c, at.set_c);
    let width = grid.belt_m_per_min.len();
    let past_limit = |row: usize, column: usize| {
        wall.values.get(row * width + column).map_or(f64::NAN, |&value| past(wall, value))
    };
    let low = past_limit(row, column) * (1.0 - along) + past_limit(row, column + 1) * along;
    let high = past_limit(row + 1, column) * (1.0 - along) + past_limit(row + 1, column + 1) * along;
    let here = low * (1.0 - up) + high * up;
    here.is_nan() || here > 0.0
}

/// The cell of a rising axis that holds a value, and how far into it; held at the ends.
fn cell(axis: &[f64], value: f64) -> (usize, f64) {
    let last = axis.len().saturating_sub(2);
    let index = axis.iter().skip(1).position(|&edge| value < edge).unwrap_or(last).min(last);
    let Some(&[low, high]) = axis.get(index..index + 2) else { return (0, 0.0) };
    let share = if high > low { (value - low) / (high - low) } else { 0.0 };
    (index, share.clamp(0.0, 1.0))
}
