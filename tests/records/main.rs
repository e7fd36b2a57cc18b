//! The library, the shop's log, files, tables and what the browser keeps.
//!
//! One module a claim; the head of each names the claim and its source.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../common/mod.rs"]
mod common;

mod data_is_read;
mod days;
mod library_file;
mod log_fold;
mod log_merge;
mod mutated_files;
mod search;
mod sheet_code;
mod shelf;
mod shop_records;
mod starter_library;
mod table;
