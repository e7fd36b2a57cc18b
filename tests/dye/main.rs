//! The dye that leaves the cloth, what the white binds of it, and what shows in the months after.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../common/mod.rs"]
mod common;

mod anchor_cases;
mod anchor_film;
mod anchor_table;
mod anchors;
mod cloth_tests;
mod dragged;
mod evidence;
mod exposure;
mod fit_anchors;
mod forecast;
mod lots;
mod migration;
mod rim;
mod sheet;
mod storage;
