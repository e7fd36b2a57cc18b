//! Reasons as data: a code and what goes into its sentence. `wording` says it; no words for people stand here.

use crate::quantity::Percent;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

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

    /// Adds a percentage. Reasons carry every share in percent; only a chance is a number from 0 to 1.
    #[must_use]
    pub fn percent(self, name: &str, value: Percent) -> Self {
        self.number(name, value.0)
    }

    /// Adds whether something is so. In JSON it is the number 1 or 0.
    #[must_use]
    pub fn flag(self, name: &str, is_so: bool) -> Self {
        self.number(name, f64::from(u8::from(is_so)))
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
    /// Dyed polyester lets go of dye; `white`, `likely`, `high`, `limit`, `days`, `holds` (1 or 0), and
    /// the staining `grade` of the likely tint.
    ClothBleeds,
    /// Nothing on this cloth bleeds; `fibre` words.
    NothingToBleed,
    /// Whether the polyester is dyed, or with what, is not known.
    DyeUnknown,
    /// This lot was not printed here before; `lot`.
    LotNew,
    /// Own evidence counted; `pieces`, `turned`, `days`.
    EvidenceCounted,
    /// Fused with room; `low`, `likely`, `limit`, `chance` of under-cure %.
    FusionHolds,
    /// Does not fuse at the cold corner; `low`, `likely`, `limit`, `chance` of under-cure %.
    FusionShort,
    /// The dryer's drift breaks a limit, or was never measured; `low`, `high` °C of the film, `dryer`, `measured` (1 or 0).
    DriftTooWide,
    /// Clearance in the window; `cooler`, `hotter` (K), `slower`, `faster` (m/min).
    WindowOpen,
    /// Little room in the window; same values.
    WindowNarrow,
    /// No setting works; `side` (which limits meet), `peak`.
    WindowClosed,
    /// Water in the cloth costs belt speed; `water_percent`, `seconds`.
    WaterSlows,
    /// Water was added to the cloth, and it is printed as it lies.
    ComesDamp,
    /// No row of the anchors holds a print like this.
    FarFromKnown,
    /// The way is on dried cloth; `water_percent` before, `verdict` without.
    DriedFirst,
    /// Heavy cloth costs belt speed; `gsm`, `seconds`.
    HeavyCloth,
    /// The white covers; `contrast`, `limit`, `film`.
    Covers,
    /// The white does not cover; same values.
    CoversShort,
    /// What one stroke more would bring; `strokes`, `film`, `shows`.
    OneStrokeMore,
    /// What the next coarser mesh would bring; `threads` (per cm), `film`, `shows`.
    CoarserMesh,
    /// A thin white looks bluish; `bluer` (b*), `film`.
    LooksBluish,
    /// The grey blocker dulls the white; `darker` (L*).
    LooksDull,
    /// The white may ghost; `frequency`.
    MayGhost,
    /// Stiff hand; `hand`.
    HandStiff,
    /// Film stretches enough; `stretch`, `needed`.
    StretchHolds,
    /// Film cracks before the cloth stops; same values.
    StretchShort,
    /// The use washes harder than a home does; `frequency`.
    WashHard,
    /// Not made to hold on nylon or a coating.
    AdhesionUnknown,
    /// Made to hold on nylon.
    AdhesionHolds,
    /// Nap stands through the film; `nap`, `film`.
    NapShows,
    /// A smoothing screen lays the nap down; `nap`.
    SmoothingHelps,
    /// It shines as little or as much as asked; `gloss` and `limit`, GU, as in the two that follow.
    FinishHolds,
    /// It does not shine as it should.
    GlossShort,
    /// It shines and should not.
    MattShort,
    /// A smoothing screen makes it shine; `gloss` without it, GU.
    SmoothingShines,
    /// Holes of a mesh cloth lose film; `open_percent`.
    HolesLoseFilm,
    /// Fusing cooler keeps the dye in the cloth.
    LowCureHelps,
    /// Class printed without any dye blocking on cloth that bleeds; `white`.
    NoBlocking,
    /// Blocker under the white takes up dye.
    BlockerHelps,
    /// The rim of white beyond its blocker; `overhang` (mm), `low`, `likely`, `high`, `limit`, `holds` (1 or 0).
    RimBleeds,
    /// The cloth yellows; `index`.
    ScorchNear,
    /// The cloth shrinks or distorts; `peak`, `limit`.
    ShrinkNear,
    /// The fibre softens; `fibre`, `peak`, `limit`.
    SoftensNear,
    /// The coating does not stand more heat; `peak`, `limit`.
    CoatingNear,
    /// Heat after the cure breaks a limit or comes near it; `what`, `temp` for `seconds`, the `harm` that it does from
    /// `limit` on, to which `fibre`, `holds` (1 or 0).
    LaterHeat,
    /// The fibre melts in any plastisol cure; `fibre`, `limit`.
    MeltsInCure,
    /// Set free and cooler, the dryer has a window; `set`, `belt`, `robust` (1 or 0), as in all that follow.
    OpensCooler,
    /// Set free and hotter, the dryer has a window.
    OpensHotter,
    /// A belt that runs slower than it can now opens the window.
    OpensSlower,
    /// A belt that runs faster than it can now opens the window.
    OpensFaster,
    /// Cloth dried beforehand opens the window; `water_percent`.
    OpensPreDry,
    /// A thinner film opens the window; `film`.
    OpensThinner,
    /// Twice through the dryer opens the window.
    OpensTwoPasses,
    /// A low-cure white opens the window.
    OpensLowCure,
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
    /// Much money rides on it; `pieces`, `value`.
    MoneyAddsCare,
    // --- several garments ---
    /// One plan serves all garments; `garments`, `white`, `value` saved against a plan each.
    OnePlan,
    /// A plan for each costs less; `garments`, `white` of the one plan, `value` it costs more.
    SplitCheaper,
    /// A plan for each has the better verdict; `garments`, `white` of the one plan.
    SplitSafer,
    /// No white does all; `garments`.
    SplitOnly,
    /// Some garments are refused; `garments`, `refused`.
    SomeRefused,
    // --- what would change it ---
    /// Buy a class; `class`, `verdict`.
    BuyClass,
    /// Put a blocker under it; `verdict`.
    UseBlocker,
    /// If the polyester is undyed; `verdict`.
    IfUndyed,
    /// If the cloth is dried before; `water_percent`, `verdict`.
    IfDried,
    /// Another process than plastisol.
    OtherProcess,
    // --- what is given up for what ---
    /// How many ways were compared; `compared`, `judged`.
    WaysCompared,
    /// What the choice (`white`) costs beside the way that pays least and holds as well (`other-white`): `strokes`,
    /// `threads`, `blocker`, `verdict` of each, `dried` (1) of those on dried cloth; `late`, `cost`, `hand`, `cover`, `nap`,
    /// `pace` of each where they differ; `pays` and `gets`, the two scales.
    PaidFor,
    /// Nothing that holds as well pays less; `white`, `pays`.
    NothingPaid,
    /// A way (`white`) beats the choice (`other-white`) on both scales and is not chosen; the same values.
    OffFront,
    /// What a way (`white`) would give for more or for less than the choice (`other-white`); the same values.
    ForMore,
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
    /// First piece: tilt it in the light.
    CheckGloss,
    // --- cautions ---
    /// Hot film and cloth at the belt end; `exit`.
    HotGarments,
    /// Overheated plastisol gives off acid gas; `peak`.
    OverheatedPvc,
    /// What is pressed on later irons the print; `temp`.
    PressIrons,
    /// Belt stop under panels.
    BeltStop,
    /// Solvents near flash and dryer.
    FlammableVapour,
    /// Additives with isocyanate; `limit` %, `law`, `since`.
    Isocyanate,
    /// Child-care article, three years and under; `age`, `limit` %, `law`, `since`, `mouth`: the law on what a child may mouth.
    ChildCare,
    /// Children's product, twelve years and under; `age`, `limit` ppm, `law`, `since`, `coating` ppm.
    ChildProduct,
    /// Phthalates in any article; `limit` %, `law`, `since`.
    PhthalatesInArticle,
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
    /// What does the cloth assess?
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
    /// The label names a piece of one layer, and the order has a back panel under the print.
    AskFlat,
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
    /// Print the barrier blocker first.
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
    /// Appearance again later.
    FollowUp,
    /// Dry the cloth first.
    PreDry,
    /// A second stroke.
    SecondStroke,
    /// Run a probe through the dryer first: one curve.
    ProbeFirst,
}
