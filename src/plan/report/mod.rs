//! What an answer says: picks, margins, reasons, windows and forecasts, as they travel in JSON.
//!
//! Comes in: nothing but plain values. Goes out: the types of the JSON contract, and the reasons that `wording` turns into
//! sentences. It must not know how any of its numbers is computed.

mod answer_report;
mod dial_setting;
mod follow_up;
mod forecast;
mod margin;
mod pick;
mod reason;
mod recipe;
mod sorted_insert;
mod spread;
mod trade_off;
mod verdict;
mod whole_order;
mod window;
mod word;

pub use answer_report::{Caution, Rejected, Report, Unknown};
pub use dial_setting::DialSetting;
pub use follow_up::{FollowUp, LOOKS, Leaves, days_to_look};
pub use forecast::{BleedForecast, Cut, DyeLedger, FirstShows, Ghosting, GradeLine, OtherWorlds, RimShows};
pub use margin::{Margin, Side, Topic, Unit};
pub use pick::{Appearance, Pick, PrintStep, Setting, Trial};
pub use reason::{Advice, Code, Reason, Value};
pub use recipe::{Mixture, PressScreen, Recipe};
pub use spread::Spread;
pub use trade_off::{RecipeScores, Scale, TradeOff};
pub use verdict::Verdict;
pub use whole_order::{GarmentPart, OrderPlan, WholeOrder};
pub use window::{Clearance, Curve, Drift, Wall, WindowReport};

pub(super) use margin::{margin, tightness};
pub(super) use sorted_insert::sorted_insert;
pub(super) use word::word;
