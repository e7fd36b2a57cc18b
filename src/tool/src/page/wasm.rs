//! Compiling the root package to wasm and binding it to JS.
//!
//! **Decision:** the library is an rlib in `Cargo.toml`, and `cargo rustc --crate-type cdylib` makes the
//! wasm; all packages have one `opt-level`, and none sets `strip`.
//! **Because:** with both crate types in the manifest cargo leaves fat LTO out and says nothing; a level for
//! each package gave a broken wasm with fat LTO; `strip` removes the section from which the binding reads the
//! target's features.
//! **Measured:** seen in the build by 2026-11-25; compiler version and machine not recorded.
//! **Reconsider when:** cargo or wasm-bindgen changes one of these three: try each apart with `cargo xtask
//! build`.

use crate::host::command::run;
use crate::host::workspace::Workspace;
use crate::page::toolchain::{Toolchain, WASM};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use wasm_bindgen_cli_support::Bindgen;

/// One binding of the wasm module: the glue that loads it, its TypeScript types, and the module itself.
#[derive(Clone, Debug)]
pub struct WasmBinding {
    /// The JS module that instantiates the wasm and wraps its functions.
    pub glue: String,
    /// The TypeScript declarations of the same functions.
    pub types: String,
    /// The module after binding.
    pub wasm: Vec<u8>,
}

/// Where the glue gets the wasm from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WasmSource {
    /// From the page, which unpacks it and hands it over.
    HandedOver,
    /// From the file beside the glue, as in a JS package.
    FileBeside,
}

/// A low inlining threshold for the whole module (LLVM's default is 275): with the default, views and parsers inlined into each
/// other were a quarter of the wasm. Functions that must be inlined to be fast, those of the lanes, are `#[inline(always)]`.
const LOW_INLINING: &str = "llvm-args=-inline-threshold=5";

/// Compiles the library as a cdylib in release, and says where the module is.
///
/// The crate type is given here and not in `Cargo.toml`: with both kinds in the manifest cargo drops fat LTO.
///
/// # Errors
/// [`anyhow::Error`] if the code does not compile.
pub fn compile(workspace: &Workspace, toolchain: Toolchain) -> Result<PathBuf> {
    let mut cargo = toolchain.cargo(workspace, "rustc");
    cargo.args(["--package", "whitehold", "--release", "--lib", "--crate-type", "cdylib", "--locked"]);
    cargo.args(["--", "-C", LOW_INLINING]);
    run(
        &mut cargo,
        "read the compiler's first error above; `cargo check` repeats it without the wasm build",
    )?;
    let module = toolchain.target(workspace).join(WASM).join("release/whitehold.wasm");
    if module.is_file() {
        return Ok(module);
    }
    bail!(
        "cargo reported success, yet {} is not there. Is CARGO_TARGET_DIR what you expect?",
        module.display()
    )
}

/// Compiles the unpacker of the page's wasm, without its symbol names.
///
/// # Errors
/// [`anyhow::Error`] if the code does not compile.
pub fn compile_unpacker(workspace: &Workspace, toolchain: Toolchain) -> Result<Vec<u8>> {
    let mut cargo = toolchain.cargo(workspace, "rustc");
    cargo.args(["--package", "whitehold-unpack", "--release", "--lib", "--crate-type", "cdylib", "--locked"]);
    // As fast as at level 3, and half the size.
    cargo.args(["--", "-C", "strip=symbols", "-C", "opt-level=s"]);
    run(&mut cargo, "read the compiler's first error above")?;
    let module = toolchain.target(workspace).join(WASM).join("release/whitehold_unpack.wasm");
    std::fs::read(&module).with_context(|| format!("{} is not there", module.display()))
}

/// Binds a compiled module for browsers.
///
/// # Errors
/// [`anyhow::Error`] if the module was made for another version of wasm-bindgen, or needs JS files of its own, which one page cannot hold.
pub fn bind(module: &Path, source: WasmSource) -> Result<WasmBinding> {
    let advice = "wasm-bindgen could not read the module. Next thing to try: the versions of wasm-bindgen in \
                  Cargo.toml and of wasm-bindgen-cli-support in src/tool/Cargo.toml must be the same";
    let mut output = Bindgen::new()
        .input_path(module)
        .web(true)
        .context(advice)?
        .typescript(true)
        .omit_default_module_path(source == WasmSource::HandedOver)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate_output()
        .context(advice)?;
    let inline = output.snippets().iter().filter(|(_, files)| !files.is_empty()).map(|(name, _)| name);
    let names: Vec<_> = inline.chain(output.local_modules().keys()).cloned().collect();
    if !names.is_empty() {
        bail!(
            "a dependency brings JS files of its own, which one page cannot hold: {}. Next thing to try: another crate, or its feature that turns them off.",
            names.join(", ")
        );
    }
    Ok(WasmBinding {
        glue: output.js().to_owned(),
        types: output.ts().unwrap_or_default().to_owned(),
        wasm: output.wasm_mut().emit_wasm(),
    })
}
