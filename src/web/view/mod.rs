//! The screens. Each only shows the state and sends messages; geometry comes from `desk::picture`, words from
//! `wording`.

mod advice;
mod ageing;
mod answer;
mod cloth;
mod field;
mod forecast;
mod form;
mod frame;
mod garments;
mod history;
mod icon;
mod job;
mod library;
mod map;
mod margins;
mod meter;
mod notice;
mod pen;
mod rule;
mod run;
mod section;
mod sheet;
mod week;
mod window;

pub use frame::frame;
