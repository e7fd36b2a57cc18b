//! What the page shows and says: its state, its pictures, its sentences and the job sheet. No browser is needed.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../common/mod.rs"]
mod common;

mod actions;
mod answered_desk;
mod contrast;
mod desk_colour;
mod desk_draft;
mod desk_errors;
mod desk_files;
mod desk_forecast;
mod desk_form;
mod desk_picture;
mod desk_reader;
mod desk_records;
mod desk_trade;
mod driver;
mod job_sheet;
mod print_room;
mod tablet;
mod used_words;
mod wording;
mod wording_number;
