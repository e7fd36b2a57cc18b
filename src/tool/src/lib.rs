//! Everything a contributor does, in one tool: build, bundle, serve, check.
//!
//! `cargo xtask build` walks through the modules in this order: [`toolchain`] makes sure that rustc knows the wasm
//! target, [`wasm`] compiles and binds, [`imports`] reads what the module may call, [`page`] packs the one file
//! under the policy of [`policy`], [`package`] writes the JS package, [`site`] what a web server hands out.
//! `open` goes on to [`serve`]. `test` ([`check`]) runs every test there is, the ones in a browser
//! through the second binary of this package, which alone is built with the feature `browser`. `bench` and `peer` ([`measure`]) time and check the march beside other solvers.
//!
//! The tool says what it does, step by step, and every failure says the next thing to try.

#[cfg(feature = "browser")]
pub mod browser;
pub mod browsers;
pub mod build;
pub mod check;
pub mod chromium;
pub mod imports;
pub mod letters;
pub mod lzma;
pub mod measure;
pub mod package;
pub mod page;
pub mod picture;
pub mod policy;
pub mod serve;
pub mod site;
pub mod steps;
pub mod toolchain;
pub mod wasm;
pub mod workshop;
