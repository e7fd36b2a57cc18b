//! The build, from source to `dist`.

use crate::imports;
use crate::letters;
use crate::package::write_package;
use crate::page::{self, BUDGET};
use crate::site::write_site;
use crate::steps::{bytes, say, step};
use crate::toolchain::Toolchain;
use crate::wasm::{self, Bound, Finds};
use crate::workshop::{Workshop, write};
use anyhow::{Result, bail};

/// Builds everything that is handed out: `dist/whitehold.html`, `dist/pkg` and `dist/site`.
///
/// # Errors
/// When a step fails, when the wasm asks for something that nobody reviewed, or when the page is over its budget.
pub fn build(workshop: &Workshop, toolchain: Toolchain) -> Result<()> {
    step("make sure the compiler knows wasm", || toolchain.prepare(workshop))?;
    let module =
        step("compile the core and the page to wasm, in release", || wasm::compile(workshop, toolchain))?;
    let bound = step("bind the wasm to JS", || wasm::bind(&module, Finds::Nothing))?;
    step("compare what the wasm may call with the reviewed list", || {
        imports::check(workshop, &std::fs::read(&module)?, &bound)
    })?;
    let unpacker = step("compile what unpacks it", || wasm::compile_unpacker(workshop, toolchain))?;
    let html = step("pack the one file", || Ok(letters::file(&page::pack(workshop, &bound, &unpacker)?)))?;
    step("write the JS package", || {
        write_package(workshop, &wasm::bind(&module, Finds::FileBeside)?, &page::sheets(workshop)?)
    })?;
    step("write dist/whitehold.html and dist/site", || {
        write(&workshop.dist().join("whitehold.html"), &html)?;
        write_site(workshop, &html)
    })?;
    weigh(&html, &bound, &unpacker)
}

/// Prints the sizes and holds the page to its budget.
fn weigh(html: &[u8], bound: &Bound, unpacker: &[u8]) -> Result<()> {
    say(&format!("    what unpacks        {}", bytes(unpacker.len())));
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
/// When the build fails, the wasm asks for something new, or for something that no review may let in.
pub fn review_imports(workshop: &Workshop, toolchain: Toolchain, accepts: bool) -> Result<()> {
    toolchain.prepare(workshop)?;
    let module = wasm::compile(workshop, toolchain)?;
    let bound = wasm::bind(&module, Finds::Nothing)?;
    let compiled = std::fs::read(&module)?;
    if accepts {
        return imports::accept(workshop, &compiled, &bound);
    }
    for name in imports::names(&compiled, &bound)? {
        say(&name);
    }
    imports::check(workshop, &compiled, &bound)
}
