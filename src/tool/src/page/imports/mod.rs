//! What the wasm may call: its imports, compared with a reviewed list.
//!
//! A wasm module can do nothing but compute and call what it imports. So the list of imports is the list of what the page can
//! do, and a new line in it is a new power that must be reviewed. The binding names an import `__wbg_open_07ea…`; which
//! `open` that is, a database's or a window's, is in a section that wasm-bindgen leaves in the compiled module
//! ([`description`]), or else in the JS of the binding ([`glue`]). An import that neither explains is an error.

mod description;
mod glue;

use crate::host::progress::say;
use crate::host::workspace::{Workspace, read, write};
use crate::page::wasm::WasmBinding;
use anyhow::{Context, Result, bail};
use description::{describe, descriptions};
use glue::{undescribed, with_namespace};
use std::collections::BTreeSet;
use std::path::PathBuf;
use wasmparser::{Parser, Payload};

const HEAD: &str = "\
# What the wasm may call, one name a line: `Class.method`, `Class.property=` for a setter, `new Class`.
# The build fails when the wasm asks for anything else. After a review, `cargo xtask imports --accept` writes this file.
";

/// Calls that no review lets in: each can carry something out of the page, or take the person away from it.
/// A name that ends in `*` stands for every call of that class.
const REFUSED: [&str; 29] = [
    "Document.domain=",
    "Document.location=",
    "Document.write*",
    "EventSource*",
    "Fetch*",
    "HTMLFormElement.requestSubmit",
    "HTMLFormElement.submit",
    "Location.assign",
    "Location.replace",
    "Location.hash=",
    "Location.host=",
    "Location.hostname=",
    "Location.href=",
    "Location.pathname=",
    "Location.port=",
    "Location.protocol=",
    "Location.search=",
    "Navigator.sendBeacon",
    "Navigation*",
    "RTC*",
    "Request*",
    "ServiceWorker*",
    "SharedWorker*",
    "WebSocket*",
    "WebTransport*",
    "Window.location=",
    "Window.open",
    "Worker*",
    "XMLHttpRequest*",
];

/// Functions of the same kind that belong to no class, or to several.
const REFUSED_ANYWHERE: [&str; 5] = ["eval", "fetch", "importScripts", "sendBeacon", "Function"];

/// Checks that the wasm asks for no call that the list does not hold.
///
/// # Errors
/// [`anyhow::Error`] that names the calls and says how to review them; and as [`names`].
pub fn check(workspace: &Workspace, compiled: &[u8], bound: &WasmBinding) -> Result<()> {
    let asked = names(compiled, bound)?;
    refuse(&asked)?;
    let path = list(workspace);
    let listed: BTreeSet<String> = read(&path)?
        .lines()
        .filter(|line| !line.starts_with('#'))
        .map(|line| line.trim().to_owned())
        .collect();
    let new: Vec<_> = asked.difference(&listed).map(String::as_str).collect();
    if new.is_empty() {
        say(&format!("    {} imports, all reviewed", asked.len()));
        return Ok(());
    }
    bail!(
        "the wasm asks for calls that were not reviewed:\n    {}\nNext thing to try: find out which change brought each \
         of them and what it lets the page do; if that is right, `cargo xtask imports --accept` adds it to {}.",
        new.join("\n    "),
        path.display()
    )
}

/// Writes what the wasm asks for as the reviewed list, and says what is new.
///
/// # Errors
/// [`anyhow::Error`] if the wasm asks for something that no review lets in; and as [`names`].
pub fn accept(workspace: &Workspace, compiled: &[u8], bound: &WasmBinding) -> Result<()> {
    let asked = names(compiled, bound)?;
    refuse(&asked)?;
    let path = list(workspace);
    let before = read(&path).unwrap_or_default();
    for name in asked.iter().filter(|name| !before.lines().any(|line| line == *name)) {
        say(&format!("    new: {name}"));
    }
    let lines: String = asked.iter().map(|name| format!("{name}\n")).collect();
    write(&path, format!("{HEAD}{lines}"))?;
    say(&format!("    {} imports in {}", asked.len(), path.display()));
    Ok(())
}

fn list(workspace: &Workspace) -> PathBuf {
    workspace.root.join("src/tool/wasm-imports.txt")
}

fn refuse(asked: &BTreeSet<String>) -> Result<()> {
    let refused: Vec<_> = asked.iter().filter(|name| is_refused(name)).map(String::as_str).collect();
    if refused.is_empty() {
        return Ok(());
    }
    bail!(
        "the wasm asks for calls that could carry something out of the page:\n    {}\nThe page promises that nothing \
         leaves it, so no review lets these in. Next thing to try: find the change that brought them and do without.",
        refused.join("\n    ")
    )
}

/// Whether a call is one that no review lets in.
fn is_refused(name: &str) -> bool {
    let bare = name.strip_prefix("new ").unwrap_or(name);
    let called = bare.split('(').next().unwrap_or(bare);
    let last = called.rsplit('.').next().unwrap_or(called);
    REFUSED_ANYWHERE.contains(&last)
        || REFUSED.iter().any(|refused| match refused.strip_suffix('*') {
            Some(start) => bare.starts_with(start),
            None => bare == *refused,
        })
}

/// The names of all imports of the bound module; `compiled` is the same module before binding, which describes them.
///
/// # Errors
/// [`anyhow::Error`] if a module cannot be read, or an import says nowhere what it calls.
pub fn names(compiled: &[u8], bound: &WasmBinding) -> Result<BTreeSet<String>> {
    let descriptions = descriptions(compiled)?;
    let mut names = BTreeSet::new();
    for payload in Parser::new(0).parse_all(&bound.wasm) {
        if let Payload::ImportSection(section) = payload.context("the bound wasm cannot be read")? {
            for import in section.into_imports() {
                let shim = import.context("the bound wasm cannot be read")?.name;
                names.insert(name(&descriptions, &bound.glue, shim)?);
            }
        }
    }
    Ok(names)
}

/// What an import calls, as a person reviews it.
fn name(descriptions: &[&[u8]], glue: &str, shim: &str) -> Result<String> {
    let found = match descriptions.iter().find_map(|section| describe(section, shim)) {
        // A member of a class, or one of the binding's own helpers.
        Some(name) if name.contains(['.', ' ', '[']) || name.starts_with("__wbindgen_") => Some(name),
        Some(name) => with_namespace(glue, shim, &name),
        None => undescribed(glue, shim),
    };
    found.with_context(|| {
        format!(
            "what the import `{shim}` calls is found neither in its description nor in the binding. Next thing to try: \
             look it up in dist/pkg/whitehold.js; if wasm-bindgen writes its JS otherwise than before, \
             src/tool/src/page/imports/glue.rs must follow"
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn calls_that_carry_something_out_are_refused() {
        let refused = [
            "fetch",
            "Window.fetch",
            "new XMLHttpRequest",
            "XMLHttpRequest.open",
            "new WebSocket",
            "RTCPeerConnection.createOffer",
            "Navigator.sendBeacon",
            "new EventSource",
            "Window.open",
            "Location.href=",
            "Window.location=",
            "eval",
            "arg0.sendBeacon(arg1);",
        ];
        let allowed = [
            "IDBFactory.open",
            "Window.location",
            "Location.href",
            "Element.setAttribute",
            "History.pushState",
        ];
        for name in refused {
            assert!(is_refused(name), "{name}");
        }
        for name in allowed {
            assert!(!is_refused(name), "{name}");
        }
    }
}
