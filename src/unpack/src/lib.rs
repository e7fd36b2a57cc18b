//! Unpacks the page's wasm. This is a wasm module of its own, of a few kilobytes, which the page holds unpacked.
//!
//! The single-file page holds its wasm as LZMA, a quarter shorter than the formats that browsers unpack. It is unpacked
//! piece by piece, so that the browser compiles one piece while the next is unpacked, and so that its optimizing
//! compiler can replace the first version of this code between two pieces.
//!
//! No standard library and no allocation: two buffers and a table. Out: [`Unpacker`]. The tool packs the stream, and
//! its tests check that both agree.
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
