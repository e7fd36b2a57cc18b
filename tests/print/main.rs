//! The white print: how much ink lies on the cloth, and how it looks.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../common/mod.rs"]
mod common;

mod colour_difference;
mod colour_in;
mod deposit;
mod gloss;
mod grades;
mod kubelka_munk;
mod meter_file;
mod mixture;
mod opacity;
mod weighed_print;
mod white_film;
mod white_on_cloth;
mod whiteness;
