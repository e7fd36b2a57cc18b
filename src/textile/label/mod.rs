//! What a garment label says, in English or Spanish.
//!
//! A label is a row of shares and fibres. As many shares as fibres are paired in the order they stand, which
//! serves every way they are written: `50% cotton 50% polyester`, `algodón 60 poliéster 40 %`, `50/50
//! cotton/polyester`, `cotton/polyester 50/50`. Shares of one section must make 100.
//!
//! What the reader had to assume, what it would rather ask and what it left out come back as [`LabelNote`]s; what it
//! cannot read comes back as errors by name. It never guesses a share.
//!
//! Sources of the words: generic names of ISO 2076 and Regulation (EU) 1007/2011, 16 CFR 303 (from memory); loose
//! words of the trade: common practice, no source.

mod items;
mod meaning;
mod reader;
mod reading;
mod shares;
mod tokens;
mod words;

pub use reader::read;
pub use reading::{ClothLook, LONGEST, LabelNote, LabelReading, LabelSection};
