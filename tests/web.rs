//! The release wasm as it ships, in a browser: the functions that JS sees.
#![cfg(target_arch = "wasm32")]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn the_version_is_the_one_of_the_manifest() {
    assert_eq!(whitehold::web::version(), env!("CARGO_PKG_VERSION"));
}
