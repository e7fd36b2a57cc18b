//! The whole answer: picks with their reasons, cautions and questions; the window, forecast and run of one
//! pick.
//!
//! Comes in: a job. Goes out: a report. It may use every folder of the plan; it must not hold equations of
//! heat or dye.

mod advice;
mod as_run;
mod cautions;
mod forecast;
mod improvements;
mod multi_garment;
mod order_answer;
mod pick;
mod reason_rank;
mod reasons;
mod reasons_seen;
mod unknowns;
mod window;

pub use as_run::{AsRun, as_run};
pub use forecast::PickForecast;
pub use order_answer::{answer, answer_with, assess_white};
pub use window::PickWindow;
