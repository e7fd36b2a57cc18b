//! Go, go with check, trial or refuse, and what a candidate costs.
//!
//! Comes in: a candidate with its set point. Goes out: its chances, margins and verdict, its cost, and its
//! rank against another. It must not know which other candidates there are.

mod assessment;
mod cost;
mod judgement;
mod rule;
mod scores;
mod trade_off;
mod usual;

pub use rule::{Stake, Standing, verdict};
pub use trade_off::trade_off;

pub(super) use assessment::{Assessment, verdict_for};
pub(super) use cost::{HOUR, Pace, burden, burden_of, cost_per_print, fastest, order, pace, rate_per_hour};
pub(super) use judgement::{Judgement, assess, judge, judgement};
pub(super) use scores::scores;
