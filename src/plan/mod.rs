//! An order in; candidate plans, margins, a verdict and its reasons out.
//!
//! Hands out [`Order`] and [`Report`] (the JSON contract) and the functions that turn one into the other.
//! Ids are resolved by [`library`](crate::library) before anything here runs.

mod ageing;
mod answer;
mod as_run;
mod bench;
pub mod bleed;
pub mod bounds;
mod candidate;
mod cost;
pub mod decide;
mod dial;
mod dried;
mod evidence;
mod explain;
mod flash;
mod follow_up;
mod forecast;
mod forecast_shape;
mod ghosting;
mod gloss;
mod hope;
mod job;
mod judge;
mod late;
mod memory;
mod mix;
mod opening;
mod order;
mod outlook;
mod oven;
mod press;
mod print;
mod rank;
mod reason;
mod report;
mod ride;
pub mod rim;
mod search;
mod trade;
mod ways;
mod whole;
pub mod window;
mod window_report;
mod window_shape;

pub use answer::{answer, answer_with, weigh};
pub use as_run::{AsRun, as_run};
pub use candidate::ANCHOR_FILM;
pub use cost::SCREEN_CHANGE;
pub use follow_up::{FollowUp, LOOKS, Leaves, days_to_look};
pub use forecast::PickForecast;
pub use forecast_shape::{
    BleedForecast, Cut, DyeLedger, FirstShows, Ghosting, GradeLine, OtherWorlds, RimShows, Spread,
};
pub use gloss::Sheen;
pub use job::{Base, Cloth, Job, Law, Rules, Yield, check};
pub use memory::Memory;
pub use mix::{Mix, mixes};
pub use order::{Colour, DyeClass, Evidence, Finish, Garment, Order, Shop, Use, UseKind};
pub use oven::OvenTest;
pub use print::{ColoursOnTop, CureKind, HeatEvent, Opacity, Print, Priority, Role, USUAL_OVERHANG_MM};
pub use reason::{Advice, Code, Reason, Value};
pub use report::{
    Caution, Look, Margin, Part, Pick, Plan, Rejected, Report, Setting, Side, Step, Topic, Trial, Unknown,
    Verdict, Whole,
};
pub use search::{Screening, Weighed, screening};
pub use trade::{Scale, Trade, Tried};
pub use window_report::PickWindow;
pub use window_shape::{Curve, Drift, Room, Wall, WindowReport};
