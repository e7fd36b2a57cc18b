//! The screens. Each only shows the state and sends messages; geometry comes from `desk::picture`, words from
//! `wording`.

mod advice;
mod answer;
mod cloth;
mod field;
mod form;
mod frame;
mod garments;
mod history;
mod icon;
mod job;
mod map;
mod margins;
mod rule;
mod run;
mod week;
mod window;

pub use frame::frame;
