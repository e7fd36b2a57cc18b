//! The dryer's heat and the cure: conduction, water, the belt, gelation and fusion, and the numerics that solve them.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

mod calibration;
#[path = "../common/mod.rs"]
mod common;
mod dryer_record;
mod fit;
mod flash;
mod history;
mod history_laws;
mod kinetics;
mod march;
mod moisture;
mod normal;
mod reference;
mod robust;
mod under_print;
mod wet_cloth;
