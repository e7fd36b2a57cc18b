//! What unpacks the page's wasm: a wasm of its own, of a few kilobytes, that the page can afford to carry plainly.
//!
//! The one file holds its wasm as LZMA, a quarter shorter than what browsers unpack by themselves. This unpacks it a piece at
//! a time, so that the browser compiles one piece while the next is
//! unpacked, and so that its own quick compiler can replace this code by a better one between two pieces.
//!
//! No standard library, no allocation: two buffers and a table. It hands out [`Unpacker`]; the tool packs what it reads,
//! and its tests hold both together.
//!
//! **Decision:** LZMA, unpacked by a wasm of 6 kB that hands pieces to the browser's compiler as they come.
//! **Because:** LZMA is a quarter shorter than deflate, but slow to unpack in script.
//! **Measured:** 50 ms of a start, where script took 250 to 400 ms (by 2026-11-25, machine not recorded).
//! **Reconsider when:** browsers unpack something as short by themselves, from a local file.
#![no_std]

mod lzma;
#[cfg(target_arch = "wasm32")]
mod page;

pub use lzma::{Damaged, Unpacker};
