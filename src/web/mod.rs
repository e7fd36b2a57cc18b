//! The browser's side, compiled for wasm only: the JS API and the views of the desk.

use wasm_bindgen::prelude::wasm_bindgen;

/// The version of this build, as in `Cargo.toml`.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").into()
}
