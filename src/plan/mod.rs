//! An order in; candidates, margins, a verdict and its reasons out.
//!
//! Hands out [`Order`] and [`Report`] (the JSON contract) and the functions that turn one into the other.
//! Ids are resolved by [`library`](crate::library) before anything here runs.
//!
//! Its folders are the steps of an answer; each uses only those before it:
//!
//! ```text
//! report <- order <- recipe <- bleed <- window <- margins <- verdict <- search <- answer
//! ```

mod answer;
mod bleed;
mod margins;
mod order;
mod recipe;
mod report;
mod search;
mod verdict;
mod window;

pub use answer::{AsRun, PickForecast, PickWindow, answer, answer_with, as_run, assess_white};
pub use bleed::{
    BleedPath, LookedAt, LotDye, OvenTest, Rim, after_lot_test, learned, likelihoods, seen as seen_share,
};
pub use margins::HeatStanding;
pub use order::{
    BlockerBase, Cloth, Colour, ColoursOnTop, CureKind, DyeClass, Evidence, EvidenceSubject, Finish, Garment,
    HeatEvent, Job, Law, Mix, Opacity, Order, Print, Priority, Role, Rules, Sheen, Shop, USUAL_OVERHANG_MM,
    UnderPrint, Use, UseKind, Yield, bounds, check, mixes,
};
pub use recipe::ANCHOR_FILM;
pub use report::{
    Advice, Appearance, BleedForecast, Caution, Clearance, Code, Curve, Cut, DialSetting, Drift, DyeLedger,
    FirstShows, FollowUp, GarmentPart, Ghosting, GradeLine, LOOKS, Leaves, Margin, Mixture, OrderPlan,
    OtherWorlds, Pick, PressScreen, PrintStep, Reason, Recipe, RecipeScores, Rejected, Report, RimShows,
    Scale, Setting, Side, Spread, Topic, TradeOff, Trial, Unit, Unknown, Value, Verdict, Wall, WholeOrder,
    WindowReport, days_to_look,
};
pub use search::{ScreenedRecipe, Screening, SimulationCache, learn, screening};
pub use verdict::{Stake, Standing, trade_off, verdict};
pub use window::{Demands, Detail, DriftRun, Family, Outcome, Question, SetPoint, Window};
