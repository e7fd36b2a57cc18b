//! An order in; candidate plans, margins, a verdict and its reasons out.
//!
//! Hands out [`Order`] and [`Report`] (the JSON contract) and the functions that turn one into the other.
//! Ids are resolved by [`library`](crate::library) before anything here runs.

mod answer;
pub mod bleed;
mod candidate;
pub mod decide;
mod explain;
mod job;
mod judge;
mod order;
mod report;
pub mod window;
mod window_report;

pub use answer::{answer, weigh};
pub use job::{Base, Cloth, Job, Rules, check};
pub use window_report::window_report;

pub use order::{
    Colour, ColoursOnTop, CureKind, DyeClass, Evidence, Finish, Garment, HeatEvent, Opacity, Order, Print,
    Priority, Role, Shop, Use, UseKind, bounds,
};
pub use report::{
    Advice, Caution, Code, Curve, Drift, Margin, Pick, Reason, Rejected, Report, Room, Setting, Side, Step,
    Topic, Trial, Unknown, Value, Verdict, Wall, WindowReport,
};
