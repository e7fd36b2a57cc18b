//! The JS package: the functions of the page for other programs, in browsers and in Node.

use crate::host::workspace::{Workspace, write};
use crate::page::one_file::StyleSheet;
use crate::page::wasm::WasmBinding;
use anyhow::Result;
use serde_json::json;

/// Writes `dist/pkg`.
///
/// `import "whitehold"` needs no arguments anywhere: the browser's entry fetches the wasm that lies beside it, Node's
/// entry reads it from the disk. `import "whitehold/element.js"` defines `<whitehold-desk>`.
///
/// # Errors
/// [`anyhow::Error`] if a source cannot be read or a file cannot be written.
pub fn write_package(workspace: &Workspace, bound: &WasmBinding, sheets: &[StyleSheet]) -> Result<()> {
    let folder = workspace.dist().join("pkg");
    if folder.is_dir() {
        std::fs::remove_dir_all(&folder)?;
    }
    let texts: Vec<_> = sheets.iter().filter(|sheet| sheet.name != "page").map(|sheet| &sheet.text).collect();
    write(&folder.join("whitehold.js"), &bound.glue)?;
    write(&folder.join("whitehold.d.ts"), &bound.types)?;
    write(&folder.join("whitehold_bg.wasm"), &bound.wasm)?;
    write(&folder.join("styles.js"), format!("export default {};\n", serde_json::to_string_pretty(&texts)?))?;
    for source in ["browser.js", "node.js", "element.js", "index.d.ts"] {
        std::fs::copy(workspace.www().join(source), folder.join(source))?;
    }
    write(&folder.join("package.json"), serde_json::to_string_pretty(&manifest())? + "\n")
}

fn manifest() -> serde_json::Value {
    json!({
        "name": "whitehold",
        "version": env!("CARGO_PKG_VERSION"),
        "description": "Which white, which dryer setting, go or trial: computed beside the garment press.",
        "license": "MIT OR Apache-2.0",
        "private": true,
        "type": "module",
        "engines": { "node": ">=20" },
        "types": "./index.d.ts",
        "exports": {
            ".": { "types": "./index.d.ts", "node": "./node.js", "default": "./browser.js" },
            "./element.js": "./element.js"
        },
        "sideEffects": true
    })
}
