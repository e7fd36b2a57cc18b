use super::{Advice, Code, Reason, Trade};
use crate::ink::WhiteClass;
use crate::optics::{Lab, Whiteness};
use crate::quantity::Band;
use serde::{Deserialize, Serialize};

/// The answer to an order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Report {
    /// The verdict of the best pick; `refuse` where there is none.
    pub verdict: Verdict,
    /// The garment that this answers, by its place in the order: the most demanding one.
    #[serde(default)]
    pub garment: usize,
    /// Ways to print it, best first.
    pub picks: Vec<Pick>,
    /// Whites of the shelf that cannot do it, and why.
    pub rejected: Vec<Rejected>,
    /// Where a closed window refuses the order: the way that was looked at, for its map. It has no setting; its margins
    /// are those at the middle of the dryer's range.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed: Option<Box<Pick>>,
    /// Where the design goes on several garments: one plan for all, or one for each.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub whole: Option<Whole>,
    /// The ways that were worked through, and what is given up for what; absent where none was looked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trade: Option<Trade>,
    /// What would make it possible, or make it a go.
    pub to_make_it_possible: Vec<Reason>,
    /// Cautions for this job.
    pub cautions: Vec<Reason>,
    /// What is not known, most worth finding out first.
    pub unknowns: Vec<Unknown>,
    /// What was read from the label and what was assumed.
    pub understood: Vec<Reason>,
    /// The same of every garment, in the order's order.
    #[serde(default)]
    pub understood_each: Vec<Vec<Reason>>,
}

impl Report {
    /// The pick that `wanted` accepts, or the way whose window is closed.
    pub fn way(&self, wanted: impl Fn(&Pick) -> bool) -> Option<&Pick> {
        self.picks.iter().chain(self.closed.as_deref()).find(|pick| wanted(pick))
    }
}

/// Whether to run the order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Run it.
    Go,
    /// Run it, hold two pieces and look before shipping.
    GoWithCheck,
    /// Print a test first.
    Trial,
    /// Not with what is on the shelf.
    Refuse,
}

/// The garments of one design, in one plan and in a plan each.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Whole {
    /// One white through one set of screens; absent where no white does all of them.
    pub together: Option<Plan>,
    /// The best way for each garment.
    pub split: Plan,
    /// Which of the two to run, and what the other costs.
    pub say: Reason,
}

/// A plan for all garments.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// The hardest verdict of its parts.
    pub verdict: Verdict,
    /// Ink, time, screens and ink changes of the whole order, in the shop's money.
    pub cost: f64,
    /// One part a garment, in the order's order.
    pub parts: Vec<Part>,
}

/// What a plan does with one garment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// Place of the garment in the order.
    pub garment: usize,
    /// Id of the white; absent where every white is refused.
    pub white: Option<String>,
    /// Its name.
    pub name: String,
    /// Whether the cloth is dried first.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub dried: bool,
    /// The verdict on this garment.
    pub verdict: Verdict,
    /// The dryer for it.
    pub setting: Option<Setting>,
    /// Ink and machine time of one print, in the shop's money.
    pub cost_per_print: f64,
}

/// One way to print the order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pick {
    /// Place of its garment in the order.
    #[serde(default)]
    pub garment: usize,
    /// Its verdict.
    pub verdict: Verdict,
    /// Id of the white.
    pub white: String,
    /// Its name.
    pub name: String,
    /// Its class.
    pub class: WhiteClass,
    /// Fuses cooler.
    pub low_cure: bool,
    /// Whites mixed into it and their shares, %; empty = pure.
    pub mix: Vec<(String, f64)>,
    /// Whether adhesion additive is stirred in.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub additive: bool,
    /// The print run, in order.
    pub steps: Vec<Step>,
    /// What to do and what to leave.
    pub advice: Vec<Advice>,
    /// The dryer, at the robust set point; absent where the window is closed.
    pub setting: Option<Setting>,
    /// What the fresh print looks like on this cloth; absent in reports of an older Whitehold.
    #[serde(default)]
    pub look: Option<Look>,
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

/// What the fresh print looks like.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Look {
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
pub enum Step {
    /// The bare cloth through the dryer, to be printed at once.
    PreDry {
        /// Times through it.
        passes: u32,
        /// Water in the cloth before, % of its dry weight.
        water_percent: f64,
        /// Water left in it, % of its dry weight.
        left_percent: f64,
    },
    /// The barrier base.
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
        /// Film temperature at its end, °C.
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

/// What a margin is about. The same word is the first-piece check for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Topic {
    /// Fused share at the film bottom.
    Fusion,
    /// Colour difference of the white at the date that matters.
    Bleed,
    /// Colour difference that is seen along the rim where the white stands over its blocker.
    Rim,
    /// How often the class ghosts on this shade.
    Ghosting,
    /// How much of the cloth still shows through the white.
    Opacity,
    /// What the film holds down against the nap it must lay down.
    Matting,
    /// Thickness times stiffness.
    Hand,
    /// Stretch before cracking.
    Stretch,
    /// How it shines, where the order asks for a finish.
    Gloss,
    /// Hold on nylon and coatings.
    Adhesion,
    /// Standing the wash of its use.
    Wash,
    /// Yellowing of the cloth.
    Scorch,
    /// Shrinkage and distortion.
    Shrink,
    /// Softening of the fibre.
    Softening,
    /// Overheating of the film itself.
    FilmHeat,
}

/// Which side of its limit a value must lie on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// Not under the limit.
    AtLeast,
    /// Not over the limit.
    AtMost,
}

/// A value against its limit: the only judge. Verdict, reasons and colours on the map are read from margins.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Margin {
    /// What it is about.
    pub what: Topic,
    /// The limit.
    pub limit: f64,
    /// The value, with its spread.
    #[serde(flatten)]
    pub value: Band,
    /// Which side it must lie on.
    pub needed: Side,
    /// Unit of value and limit.
    pub unit: String,
}

impl Margin {
    /// True if the likely value keeps the limit.
    #[must_use]
    pub fn holds_likely(&self) -> bool {
        match self.needed {
            Side::AtLeast => self.value.likely >= self.limit,
            Side::AtMost => self.value.likely <= self.limit,
        }
    }

    /// True if the whole band keeps the limit.
    #[must_use]
    pub fn holds(&self) -> bool {
        match self.needed {
            Side::AtLeast => self.value.low >= self.limit,
            Side::AtMost => self.value.high <= self.limit,
        }
    }
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
    /// Colour difference that passes.
    pub pass_mark: f64,
    /// Chance that the test shows a fault that is there.
    pub power: f64,
    /// Days on the shelf that it stands for.
    pub stands_for_days: f64,
}

/// A caution of the report (a [`Reason`] with a caution code).
pub type Caution = Reason;

/// A white that cannot do it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rejected {
    /// Id of the white.
    pub white: String,
    /// Its name.
    pub name: String,
    /// Why.
    pub reasons: Vec<Reason>,
}

/// Something worth finding out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Unknown {
    /// The question.
    pub ask: Reason,
    /// How far the chance of a late fault could move, 0 to 1.
    pub worth: f64,
}
