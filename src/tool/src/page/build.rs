//! The steps of the build, from source to `dist`.

use crate::host::progress::{bytes, say, step};
use crate::host::workspace::{Workspace, write};
use crate::page::imports;
use crate::page::one_file::{self, BUDGET};
use crate::page::package::write_package;
use crate::page::site::write_site;
use crate::page::toolchain::Toolchain;
use crate::page::utf16;
use crate::page::wasm::{self, WasmBinding, WasmSource};
use anyhow::{Result, bail};

/// Builds everything that is handed out: `dist/whitehold.html`, `dist/pkg` and `dist/site`.
///
/// # Errors
/// [`anyhow::Error`] if a step fails, the wasm asks for a call that was not reviewed, or the page is over its budget.
pub fn build(workspace: &Workspace, toolchain: Toolchain) -> Result<()> {
    step("make sure the compiler knows wasm", || toolchain.prepare(workspace))?;
    let module =
        step("compile the core and the page to wasm, in release", || wasm::compile(workspace, toolchain))?;
    let bound = step("bind the wasm to JS", || wasm::bind(&module, WasmSource::HandedOver))?;
    step("compare what the wasm may call with the reviewed list", || {
        imports::check(workspace, &std::fs::read(&module)?, &bound)
    })?;
    let unpacker = step("compile the unpacker", || wasm::compile_unpacker(workspace, toolchain))?;
    let html = step("pack the one file", || Ok(utf16::file(&one_file::pack(workspace, &bound, &unpacker)?)))?;
    step("write the JS package", || {
        write_package(workspace, &wasm::bind(&module, WasmSource::FileBeside)?, &one_file::sheets(workspace)?)
    })?;
    step("write dist/whitehold.html and dist/site", || {
        write(&workspace.dist().join("whitehold.html"), &html)?;
        write_site(workspace, &html)
    })?;
    weigh(&html, &bound, &unpacker)
}

/// Prints the sizes and checks the page against its budget.
fn weigh(html: &[u8], bound: &WasmBinding, unpacker: &[u8]) -> Result<()> {
    say(&format!("    unpacker            {}", bytes(unpacker.len())));
    say(&format!("    wasm                {}", bytes(bound.wasm.len())));
    say(&format!("    dist/whitehold.html {} of {}", bytes(html.len()), bytes(BUDGET)));
    if html.len() > BUDGET {
        bail!(
            "dist/whitehold.html is {} over its budget. Next thing to try: look for what the last change brought in; \
             a dependency of the wasm part is the usual reason.",
            bytes(html.len() - BUDGET)
        );
    }
    Ok(())
}

/// Shows what the wasm may call, and compares it with the reviewed list or rewrites that list.
///
/// # Errors
/// [`anyhow::Error`] if the build fails, the wasm asks for something new, or for something that no review may let in.
pub fn review_imports(workspace: &Workspace, toolchain: Toolchain, accepts: bool) -> Result<()> {
    toolchain.prepare(workspace)?;
    let module = wasm::compile(workspace, toolchain)?;
    let bound = wasm::bind(&module, WasmSource::HandedOver)?;
    let compiled = std::fs::read(&module)?;
    if accepts {
        return imports::accept(workspace, &compiled, &bound);
    }
    for name in imports::names(&compiled, &bound)? {
        say(&name);
    }
    imports::check(workspace, &compiled, &bound)
}
