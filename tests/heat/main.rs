//! The dryer's heat and the cure: conduction, water, the belt, gelation and fusion, and the numerics that solve them.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

mod calibration;
mod dryer_record;
mod fit;
mod history;
mod kinetics;
mod march;
mod moisture;
mod normal;
mod robust;
