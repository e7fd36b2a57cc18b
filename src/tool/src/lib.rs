//! Everything a contributor does, in one tool: build, serve, check, measure.
//!
//! [`host`] is the computer that it runs on, [`page`] builds what is handed out, [`check`] runs every test there is, and
//! [`measure`] times and compares with other solvers. `browser` drives browsers; it is the second binary of this package,
//! which alone is built with the feature `browser`, so that building the page never compiles it. Arrows run from
//! `measure` over `check` and `page` to `host`, never back.
//!
//! The tool says what it does, step by step, and every failure says the next thing to try.

#[cfg(feature = "browser")]
pub mod browser;
pub mod check;
pub mod host;
pub mod measure;
pub mod page;
