//! Reads a garment label in English or Spanish.
//!
//! A label is a sequence of shares and fibres. If there are as many shares as fibres, they are paired in
//! their order, which covers every way of writing them: `50% cotton 50% polyester`,
//! `algodón 60 poliéster 40 %`, `50/50 cotton/polyester`, `cotton/polyester 50/50`. The shares of one
//! section must add up to 100.
//!
//! What the reader assumed, what it would ask and what it left out is returned as [`LabelNote`]s; what it
//! cannot read is an error that quotes the words. It never guesses a share.
//!
//! Sources of the words: generic names of ISO 2076 and Regulation (EU) 1007/2011, 16 CFR 303 (from
//! memory); loose words of the trade: common practice, no source.

mod items;
mod meaning;
mod reader;
mod reading;
mod shares;
mod tokens;
mod words;

pub use reader::read;
pub use reading::{ClothLook, LONGEST, LabelNote, LabelReading, LabelSection};
