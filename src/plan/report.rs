use crate::ink::WhiteClass;
use crate::quantity::Band;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The answer to an order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Report {
    /// The verdict of the best pick; `refuse` where there is none.
    pub verdict: Verdict,
    /// Ways to print it, best first.
    pub picks: Vec<Pick>,
    /// Whites of the shelf that cannot do it, and why.
    pub rejected: Vec<Rejected>,
    /// What would make it possible, or make it a go.
    pub to_make_it_possible: Vec<Reason>,
    /// Cautions for this job.
    pub cautions: Vec<Reason>,
    /// What is not known, most worth finding out first.
    pub unknowns: Vec<Unknown>,
    /// What was read from the label and what was assumed.
    pub understood: Vec<Reason>,
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

/// One way to print the order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pick {
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
    /// The print run, in order.
    pub steps: Vec<Step>,
    /// What to do and what to leave.
    pub advice: Vec<Advice>,
    /// The dryer, at the robust set point; absent where the window is closed.
    pub setting: Option<Setting>,
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

/// One step of the print run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "step", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Step {
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
    /// How often the class ghosts on this shade.
    Ghosting,
    /// Contrast of the print over black against over white.
    Opacity,
    /// Film against the nap it must lay down.
    Matting,
    /// Thickness times stiffness.
    Hand,
    /// Stretch before cracking.
    Stretch,
    /// Hold on nylon and coatings.
    Adhesion,
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

/// A value inside a reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Value {
    /// A number, in the unit its name carries.
    Number(f64),
    /// A name or word, as typed by the shop or as a code.
    Word(String),
}

/// Why: a code with its values; `text` is filled by `wording` in the caller's language.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reason {
    /// Which sentence.
    pub code: Code,
    /// What goes into it.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub values: BTreeMap<String, Value>,
    /// The sentence; empty until worded.
    #[serde(default)]
    pub text: String,
}

impl Reason {
    /// A reason without values yet.
    #[must_use]
    pub fn new(code: Code) -> Self {
        Self { code, values: BTreeMap::new(), text: String::new() }
    }

    /// Adds a number.
    #[must_use]
    pub fn number(mut self, name: &str, value: f64) -> Self {
        self.values.insert(name.into(), Value::Number(value));
        self
    }

    /// Adds a word.
    #[must_use]
    pub fn word(mut self, name: &str, value: impl Into<String>) -> Self {
        self.values.insert(name.into(), Value::Word(value.into()));
        self
    }
}

/// Every sentence the core can ask `wording` for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Code {
    // --- reasons for or against a pick ---
    /// Dyed polyester lets go of dye; `white`, `likely`, `high`, `limit`, `days`, `holds` (1 or 0).
    ClothBleeds,
    /// Nothing on this cloth bleeds; `fibre` words.
    NothingToBleed,
    /// Whether the polyester is dyed, or with what, is not known.
    DyeUnknown,
    /// This lot was not printed here before; `lot`.
    LotNew,
    /// Own evidence counted; `pieces`, `turned`, `days`.
    EvidenceCounted,
    /// Fuses with room; `low`, `likely`, `limit`.
    FusionHolds,
    /// Does not fuse at the cold corner; `low`, `likely`, `limit`.
    FusionShort,
    /// Room in the window; `cooler`, `hotter` (K), `slower`, `faster` (m/min).
    WindowOpen,
    /// Little room in the window; same values.
    WindowNarrow,
    /// No setting works; `side` (which limits meet), `peak`.
    WindowClosed,
    /// Water in the cloth costs belt speed; `water_percent`, `seconds`.
    WaterSlows,
    /// Heavy cloth costs belt speed; `gsm`, `seconds`.
    HeavyCloth,
    /// The white covers; `contrast`, `limit`, `film`.
    Covers,
    /// The white does not cover; same values.
    CoversShort,
    /// The white may ghost; `frequency`.
    MayGhost,
    /// Soft or stiff hand; `hand`.
    HandSoft,
    /// Stiff hand; `hand`.
    HandStiff,
    /// Film stretches enough; `stretch`, `needed`.
    StretchHolds,
    /// Film cracks before the cloth stops; same values.
    StretchShort,
    /// Not made to hold on nylon or a coating.
    AdhesionUnknown,
    /// Made to hold on nylon.
    AdhesionHolds,
    /// Nap stands through the film; `nap`, `film`.
    NapShows,
    /// Holes of a mesh cloth lose film; `open_percent`.
    HolesLoseFilm,
    /// Fusing cooler keeps the dye in the cloth.
    LowCureHelps,
    /// Class printed without any dye blocking on cloth that bleeds; `white`.
    NoBlocking,
    /// Blocker under the white takes up dye.
    BlockerHelps,
    /// The cloth yellows; `index`.
    ScorchNear,
    /// The cloth shrinks or distorts; `peak`, `limit`.
    ShrinkNear,
    /// The fibre softens; `fibre`, `peak`, `limit`.
    SoftensNear,
    /// The fibre melts in any plastisol cure; `fibre`, `limit`.
    MeltsInCure,
    /// All inks on the shirt share one heat; the colours are ordinary, so low cure gains nothing.
    ColoursSetHeat,
    /// The maker must say yes first: protective, flame-resistant or high-visibility wear.
    MakerWordNeeded,
    /// The customer bans what every white here is made of; `ban`.
    CustomerBans,
    /// Reducer spends the blocking; `percent`.
    ReducerSpoils,
    /// Nothing on the shelf.
    ShelfEmpty,
    /// A chance that no model sees; `percent`.
    Lapse,
    /// Much money rides on it; `pieces`, `value`.
    MoneyAddsCare,
    // --- what would change it ---
    /// Buy a class; `class`, `verdict`.
    BuyClass,
    /// Put a blocker under it; `verdict`.
    UseBlocker,
    /// If the polyester is undyed; `verdict`.
    IfUndyed,
    /// If the dryer runs hot; `kelvin`, `verdict`.
    IfHotter,
    /// Another dryer or setting; `side`.
    OtherHeat,
    /// Another process than plastisol.
    OtherProcess,
    // --- advice, also as codes in `Pick::advice` and checks in `Pick::first_piece` ---
    /// First piece: stretch it when cool.
    CheckStretch,
    /// First piece: probe in the wet film.
    CheckProbe,
    /// First piece: look at the cover.
    CheckCover,
    /// First piece: look for yellowing.
    CheckScorch,
    /// First piece: measure it.
    CheckSize,
    /// First piece: rub and tape.
    CheckAdhesion,
    /// First piece: feel it.
    CheckHand,
    /// First piece: look at the surface.
    CheckNap,
    // --- cautions ---
    /// Hot film and cloth at the belt end; `exit`.
    HotGarments,
    /// Overheated plastisol gives off acid gas; `peak`.
    OverheatedPvc,
    /// Belt stop under panels.
    BeltStop,
    /// Coated belts and sheets.
    CoatedBelt,
    /// Solvents near flash and dryer.
    FlammableVapour,
    /// Additives with isocyanate.
    Isocyanate,
    /// Child-care article, three years and under; `age`.
    ChildCare,
    /// Children's product, twelve years and under; `age`.
    ChildProduct,
    /// Sleepwear flammability.
    SleepwearFlammability,
    /// Melting fibre burns.
    MeltBurns,
    /// Dye fume and plasticiser mist.
    DyeFume,
    /// Hot-hold tests in an oven.
    HotHold,
    // --- what is not known ---
    /// Is the polyester dyed?
    AskDyed,
    /// Which dye?
    AskDyeClass,
    /// What does the cloth weigh?
    AskWeight,
    /// How is it made?
    AskConstruction,
    /// Measure the dryer.
    AskMeasureDryer,
    /// Test the lot.
    AskLotTest,
    /// Which colour?
    AskColour,
    // --- what was understood ---
    /// A share of a fibre; `fibre`, `percent`, `section`.
    ReadShare,
    /// A construction; `construction`.
    ReadConstruction,
    /// A weight; `gsm`.
    ReadWeight,
    /// A colour; `colour`.
    ReadColour,
    /// A construction was assumed; `construction`.
    AssumedConstruction,
    /// A weight was assumed; `gsm`.
    AssumedWeight,
    /// Polyester is taken as dyed.
    AssumedDyed,
    /// A colour was assumed; `colour`.
    AssumedColour,
    /// Something on the label was left out of account; `words`.
    LeftOut,
    /// What the reader assumed or asks; `note` (which), `words`, `fibre`, `shares`, `percent`, `section`.
    LabelNote,
}

/// Advice codes of the JSON contract.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Advice {
    /// Print the barrier base first.
    BlockerBase,
    /// Flatten the nap with a smoothing screen.
    SmoothingScreen,
    /// Add the adhesion additive.
    AdhesionAdditive,
    /// Mix in stretch.
    StretchAdditive,
    /// No reducer.
    NoReducer,
    /// Let pieces cool before stacking.
    CoolBeforeStacking,
    /// Print a test first.
    TestPrint,
    /// Press white cloth on the garment first.
    ClothPressTest,
    /// Look again later.
    FollowUp,
    /// Slow the belt.
    SlowerBelt,
    /// Speed the belt.
    FasterBelt,
    /// Turn the dryer down.
    CoolerDryer,
    /// Turn the dryer up.
    HotterDryer,
    /// Dry the cloth first.
    PreDry,
    /// A second stroke.
    SecondStroke,
    /// Use a low-cure white.
    LowCureWhite,
    /// Split the order.
    SplitOrder,
    /// The cloth's own heat limit lies under the cure.
    OutsideHeatLimit,
    /// Ask the garment's maker.
    MakerWordNeeded,
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

/// How far the dryer wanders, as a box round the set point.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Drift {
    /// ± K of the set temperature.
    pub set_k: f64,
    /// ± m/min of belt.
    pub belt_m_per_min: f64,
}

/// Room between the set point and the nearest wall on each side; absent where the axis ends first.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Room {
    /// K cooler.
    pub cooler: Option<f64>,
    /// K hotter.
    pub hotter: Option<f64>,
    /// m/min slower.
    pub slower: Option<f64>,
    /// m/min faster.
    pub faster: Option<f64>,
}

/// One limit drawn on the window map: values over the grid, the limit, the side that works.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wall {
    /// What it is about.
    pub what: Topic,
    /// Likely value at each cell, row after row from the coolest; `set_c.len() × belt_m_per_min.len()` values.
    pub values: Vec<f64>,
    /// The limit.
    pub limit: f64,
    /// The side that works.
    pub needed: Side,
    /// Unit of values and limit.
    pub unit: String,
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
    /// The room on each side.
    pub room: Room,
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
