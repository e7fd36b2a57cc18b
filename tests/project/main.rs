//! The shape of the source itself: which folder may use which, how types are named, which paths the guides name.
//!
//! The checks read the source as text. Nothing outside the project can be asked here; each reader is first shown a small
//! example that breaks its rule.

mod arrows;
mod names;
mod paths;
mod source;
