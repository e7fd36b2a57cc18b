//! Whitehold: which white for this cloth, which dryer setting, go or trial, and why.
//!
//! The house, floor by floor; arrows run one way, from the top of this list to the bottom:
//!
//! * [`quantity`]: SI inside, shop units at the edge, bounds that name the field when broken.
//! * [`numerics`]: lanes, the march, interpolation, contours, the normal distribution.
//! * [`textile`]: fibres, fabrics, what a label says, moisture.
//! * [`optics`]: CIELAB, colour difference, what a white film over a cloth looks like.
//! * [`ink`]: whites and their classes, mesh and deposit.
//! * [`dryer`]: zones, the stack on the belt, the [`History`](dryer::History) of its temperatures.
//! * [`cure`]: gelation, fusion, scorch and shrinkage read off a history; the cure window.
//! * [`migration`]: the dye that leaves the cloth and what it does to the white in the months after.
//! * [`plan`]: an order in, margins, a verdict and its reasons out.
//! * [`diagnosis`]: what is seen on a print, and which causes fit it.
//! * [`library`]: the starter library, and ids resolved into plain values.
//! * [`wording`]: margins, advice and cautions as sentences, in English and Spanish.
//! * [`desk`]: the page's state, its messages and its one update function.
//! * `web` (wasm only): the JS API and the views of the desk.
//!
//! The core reads no clock, no file and no page; a native `cargo test` fails the moment it tries.

// A shop must never lose its page to a panic. Tests may.
#![warn(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

pub mod cure;
pub mod desk;
pub mod diagnosis;
pub mod dryer;
pub mod ink;
pub mod library;
pub mod migration;
pub mod numerics;
pub mod optics;
pub mod plan;
pub mod quantity;
pub mod textile;
pub mod wording;

#[cfg(target_arch = "wasm32")]
pub mod web;
