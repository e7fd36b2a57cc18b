//! The screens. Each only shows the state and sends messages; geometry comes from `desk::picture`, words from
//! `wording`.

mod advice;
mod ageing;
mod answer;
mod board;
mod clash;
mod cloth;
mod field;
mod fold;
mod forecast;
mod form;
mod frame;
mod garments;
mod history;
mod icon;
mod job;
mod keep;
mod library;
mod map;
mod margins;
mod meter;
mod notice;
mod pen;
mod press_room;
mod rule;
mod run;
mod section;
mod settings;
mod sheet;
mod shop;
mod trade;
mod week;
mod window;
mod wrong;

pub use frame::frame;
