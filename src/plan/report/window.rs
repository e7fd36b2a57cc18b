//! A cure window as it travels in JSON: grid, walls, set point, clearance, curve.

use super::margin::{Margin, Side, Topic, Unit};
use super::pick::Setting;
use super::verdict::Verdict;
use crate::quantity::Band;
use serde::{Deserialize, Serialize};

/// How far the dryer drifts, as a box round the set point.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Drift {
    /// ± K of the set temperature.
    pub set_k: f64,
    /// ± m/min of belt.
    pub belt_m_per_min: f64,
}

/// Clearance between the set point and the nearest wall on each side; absent where the axis ends first.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Clearance {
    /// K cooler.
    pub cooler: Option<f64>,
    /// K hotter.
    pub hotter: Option<f64>,
    /// m/min slower.
    pub slower: Option<f64>,
    /// m/min faster.
    pub faster: Option<f64>,
}

impl Clearance {
    /// No wall was looked for.
    pub const NONE: Self = Self { cooler: None, hotter: None, slower: None, faster: None };
}

/// One limit drawn on the window map: values over the grid, the limit, the side that works.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wall {
    /// What it is about.
    pub what: Topic,
    /// Likely value at each cell, row after row from the coolest; `set_c.len() × belt_m_per_min.len()`
    /// values.
    pub values: Vec<f64>,
    /// The limit.
    pub limit: f64,
    /// The side that works.
    pub needed: Side,
    /// Unit of values and limit.
    pub unit: Unit,
}

/// The cure window of one white on one cloth in one dryer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WindowReport {
    /// Set temperatures of the rows, °C, rising.
    pub set_c: Vec<f64>,
    /// Belt speeds of the columns, m/min, rising.
    pub belt_m_per_min: Vec<f64>,
    /// Every limit that bears on this cloth.
    pub walls: Vec<Wall>,
    /// The set point: the robust one, or the one asked for.
    pub setting: Option<Setting>,
    /// The drift box round it.
    pub drift: Drift,
    /// The clearance on each side.
    pub room: Clearance,
    /// Margins at the set point.
    pub margins: Vec<Margin>,
    /// Chance of a late fault there, 0 to 1.
    pub fail_later: Band,
    /// The verdict there.
    pub verdict: Verdict,
    /// Temperatures over time at the set point.
    pub curve: Curve,
}

/// Temperatures and fusion over time at one setting.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Curve {
    /// Time since the piece entered the heat, s.
    pub seconds: Vec<f64>,
    /// Film top, °C.
    pub film_top_c: Vec<f64>,
    /// Film bottom, °C.
    pub film_bottom_c: Vec<f64>,
    /// Front cloth, mean, °C.
    pub cloth_c: Vec<f64>,
    /// Fused share at the film bottom, 0 to 1.
    pub fused: Vec<f64>,
    /// Water left in the front cloth, % of its dry weight.
    pub water_percent: Vec<f64>,
    /// When the piece leaves the heat, s.
    pub leaves_s: f64,
}
