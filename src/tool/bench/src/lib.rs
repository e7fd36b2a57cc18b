//! What `cargo xtask bench` times and `cargo xtask peer` checks. It is apart from the tool because it links the product, and
//! with the feature `peers` other solvers.
//!
//! In: the library that ships. Out: rows of a table, and scenarios as JSON for a solver in another language.

#[cfg(feature = "peers")]
pub mod diffsol_peer;
pub mod dye_films;
pub mod export;
pub mod rows;
pub mod scenarios;
pub mod solve;
