//! One way to print the order, as a report shows it.

use super::margin::{Margin, Topic};
use super::reason::{Advice, Code, Reason};
use super::recipe::Recipe;
use super::verdict::Verdict;
use crate::ink::WhiteClass;
use crate::optics::{Lab, Whiteness};
use crate::quantity::Band;
use serde::{Deserialize, Serialize};

/// One way to print the order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pick {
    /// Place of its garment in the order.
    #[serde(default)]
    pub garment: usize,
    /// Its verdict.
    pub verdict: Verdict,
    /// The recipe, by ids.
    pub recipe: Recipe,
    /// Id of the white or mixture.
    pub white: String,
    /// Its name.
    pub name: String,
    /// Its class.
    pub class: WhiteClass,
    /// Whether it fuses cooler than ordinary inks.
    pub low_cure: bool,
    /// Whites mixed into it and their shares, %; empty = pure.
    pub mix: Vec<(String, f64)>,
    /// Whether adhesion additive is stirred in.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub additive: bool,
    /// The print run, in order.
    pub steps: Vec<PrintStep>,
    /// What to do and what to leave.
    pub advice: Vec<Advice>,
    /// The dryer, at the robust set point; absent where the window is closed.
    pub setting: Option<Setting>,
    /// What the fresh print looks like on this cloth; absent in reports of an older Whitehold.
    #[serde(default)]
    pub look: Option<Appearance>,
    /// Every margin, the tightest first.
    pub margins: Vec<Margin>,
    /// Chance that a fault shows after the order has left, 0 to 1.
    pub fail_later: Band,
    /// Cost of ink and machine time for one print, in the shop's money.
    pub cost_per_print: Band,
    /// Prints per hour.
    pub rate_per_hour: Band,
    /// What to check on the first piece.
    pub first_piece: Vec<Code>,
    /// The trial to run, where the verdict asks for one.
    pub trial: Option<Trial>,
    /// Why, most telling first.
    pub reasons: Vec<Reason>,
}

impl Pick {
    /// The margin of a topic, if it bears on this pick.
    #[must_use]
    pub fn margin(&self, what: Topic) -> Option<&Margin> {
        self.margins.iter().find(|margin| margin.what == what)
    }

    /// Whether its cloth is dried before it is printed.
    #[must_use]
    pub fn is_dried(&self) -> bool {
        self.steps.iter().any(|step| matches!(step, PrintStep::PreDry { .. }))
    }
}

/// What the fresh print looks like.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Appearance {
    /// Its colour, D65/10°.
    pub lab: Lab,
    /// Luminance over black by luminance over a white card, 0 to 1.
    pub contrast_ratio: f64,
    /// ΔE00 to a film of the same white too thick to see through.
    pub garment_shows: f64,
    /// Whiteness and tint, and whether they mean anything here.
    pub whiteness: Whiteness,
}

/// One step of the print run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "step", rename_all = "kebab-case", deny_unknown_fields)]
pub enum PrintStep {
    /// The bare cloth through the dryer, to be printed at once.
    PreDry {
        /// Times through it.
        passes: u32,
        /// Water in the cloth before, % of its dry weight.
        water_percent: f64,
        /// Water left in it, % of its dry weight.
        left_percent: f64,
    },
    /// The blocker.
    Blocker {
        /// Id of the blocker.
        id: String,
        /// Its name.
        name: String,
        /// Film, µm.
        film_um: f64,
    },
    /// Strokes of white.
    White {
        /// How many.
        strokes: u32,
        /// Threads per cm of the mesh.
        threads_per_cm: f64,
        /// Film after them, µm.
        film_um: f64,
    },
    /// A flash between strokes.
    Flash {
        /// How long, s.
        seconds: f64,
        /// Temperature of the film's surface at its end, °C.
        film_c: f64,
    },
    /// A blank smoothing screen over the flashed film.
    Smooth,
    /// The dryer.
    Dryer {
        /// Times through it.
        passes: u32,
    },
}

/// A dryer setting with how well it must be held.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Setting {
    /// What is dialled, °C.
    pub set_c: f64,
    /// Air of the hottest zone, °C.
    pub air_c: f64,
    /// Emitter of the hottest zone, °C; absent without one.
    pub panel_c: Option<f64>,
    /// Belt, m/min.
    pub belt_m_per_min: f64,
    /// Time in the heat, s.
    pub dwell_s: f64,
    /// Hold the set temperature within ± this, K.
    pub hold_c: f64,
    /// Hold the belt within ± this, m/min.
    pub hold_belt_m_per_min: f64,
}

/// A test print that decides.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Trial {
    /// Pieces to print.
    pub pieces: u32,
    /// Hours in the oven; 0 = look only.
    pub hours: f64,
    /// Oven temperature, °C.
    pub oven_c: f64,
    /// Colour difference that passes, ΔE00.
    pub pass_mark: f64,
    /// Chance that the test shows a fault that is there, 0 to 1.
    pub power: f64,
    /// Days of storage that it represents.
    pub stands_for_days: f64,
}
