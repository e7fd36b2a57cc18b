//! What the wasm may call: its imports, compared with a reviewed list.
//!
//! A wasm module can do nothing but compute and call what it imports. So the list of imports is the list of what the
//! page can do, and a new line in it is a new power that somebody must look at. The binding names an import
//! `__wbg_open_07ea…`; which `open` that is (a database's or a window's) stands in a section that wasm-bindgen
//! leaves in the compiled module, and is read from there.

use crate::steps::say;
use crate::wasm::Bound;
use crate::workshop::{Workshop, read, write};
use anyhow::{Context, Result, bail};
use std::collections::BTreeSet;
use std::path::PathBuf;
use wasmparser::{Parser, Payload};

/// The custom section in which wasm-bindgen describes what is imported.
const DESCRIPTIONS: &str = "__wasm_bindgen_unstable";

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

/// Fails when the wasm asks for a call that the list does not hold.
///
/// # Errors
/// Names the calls, and how to review them.
pub fn check(workshop: &Workshop, compiled: &[u8], bound: &Bound) -> Result<()> {
    let asked = names(compiled, bound)?;
    refuse(&asked)?;
    let path = list(workshop);
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
        "the wasm asks for calls that nobody reviewed:\n    {}\nNext thing to try: find out which change brought each \
         of them and what it lets the page do; if that is right, `cargo xtask imports --accept` adds it to {}.",
        new.join("\n    "),
        path.display()
    )
}

/// Writes what the wasm asks for as the reviewed list, and says what is new.
///
/// # Errors
/// When the wasm asks for something that no review lets in.
pub fn accept(workshop: &Workshop, compiled: &[u8], bound: &Bound) -> Result<()> {
    let asked = names(compiled, bound)?;
    refuse(&asked)?;
    let path = list(workshop);
    let before = read(&path).unwrap_or_default();
    for name in asked.iter().filter(|name| !before.lines().any(|line| line == *name)) {
        say(&format!("    new: {name}"));
    }
    let lines: String = asked.iter().map(|name| format!("{name}\n")).collect();
    write(&path, format!("{HEAD}{lines}"))?;
    say(&format!("    {} imports in {}", asked.len(), path.display()));
    Ok(())
}

fn list(workshop: &Workshop) -> PathBuf {
    workshop.root.join("src/tool/wasm-imports.txt")
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
/// When a module cannot be read.
pub fn names(compiled: &[u8], bound: &Bound) -> Result<BTreeSet<String>> {
    let descriptions = descriptions(compiled)?;
    let mut names = BTreeSet::new();
    for payload in Parser::new(0).parse_all(&bound.wasm) {
        if let Payload::ImportSection(section) = payload.context("the bound wasm cannot be read")? {
            for import in section.into_imports() {
                let shim = import.context("the bound wasm cannot be read")?.name;
                let described = descriptions.iter().find_map(|section| describe(section, shim));
                names.insert(match described {
                    Some(name) if name.contains(['.', ' ', '[']) => name,
                    Some(name) => with_namespace(&bound.glue, shim, &name),
                    None => generic(&bound.glue, shim).unwrap_or_else(|| without_hash(shim).to_owned()),
                });
            }
        }
    }
    Ok(names)
}

fn descriptions(compiled: &[u8]) -> Result<Vec<&[u8]>> {
    let mut sections = Vec::new();
    for payload in Parser::new(0).parse_all(compiled) {
        if let Payload::CustomSection(section) = payload.context("the compiled wasm cannot be read")?
            && section.name() == DESCRIPTIONS
        {
            sections.push(section.data());
        }
    }
    Ok(sections)
}

/// `__wbg_then_0d9fe2c7b1857d32` without its last part, which changes with every version.
fn without_hash(shim: &str) -> &str {
    match shim.rsplit_once('_') {
        Some((name, hash)) if hash.len() == 16 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()) => name,
        _ => shim,
    }
}

/// A function that belongs to no class, with the object it is called on, as the glue writes it: `Reflect.set`.
fn with_namespace(glue: &str, shim: &str, name: &str) -> String {
    let written = || {
        let (_, body) = glue.split_once(&format!("{shim}: function"))?;
        let (before, _) = body.split_once(&format!("{name}("))?;
        let namespace =
            before.rsplit(|letter: char| !letter.is_alphanumeric() && !"._$".contains(letter)).next()?;
        // What lies further off belongs to another function.
        (before.len() < 400).then(|| format!("{namespace}{name}"))
    };
    written().unwrap_or_else(|| name.to_owned())
}

/// An import that is bound anew for each type it is used with has only a number for a name. The glue says what it does:
/// it turns a value of Rust into one of JS, or it calls what its first line calls.
fn generic(glue: &str, shim: &str) -> Option<String> {
    shim.strip_prefix("__wbindgen_generic_")?;
    let (_, body) = glue.split_once(&format!("{shim}: function"))?;
    let (_, body) = body.split_once("{\n")?;
    let line = body.lines().next()?.trim();
    Some(match line.strip_prefix("// Cast intrinsic for `") {
        Some(types) => format!("cast {}", types.split([' ', '{', '`']).next()?.trim_end_matches('(')),
        None => line.trim_start_matches("const ret = ").to_owned(),
    })
}

/// What the section says of an imported function, read from where its name stands.
///
/// The layout is that of `wasm_bindgen_shared` in the version pinned for the whole project: the name, four flags,
/// the class if there is one with the kind of call, a flag, the arguments, two flags, the name in JS.
fn describe(section: &[u8], shim: &str) -> Option<String> {
    let mut named = Vec::new();
    let mut length = shim.len();
    while length >= 0x80 {
        named.push(u8::try_from(length & 0x7f).ok()? | 0x80);
        length >>= 7;
    }
    named.push(u8::try_from(length).ok()?);
    named.extend_from_slice(shim.as_bytes());
    let place = section.windows(named.len()).position(|window| window == named)?;
    read_function(Reader { rest: section.get(place + named.len()..)? })
}

fn read_function(mut reader: Reader<'_>) -> Option<String> {
    for _ in ["catch", "variadic", "assert_no_shim", "suspending"] {
        reader.flag()?;
    }
    let class = if reader.flag()? { Some(reader.text()?) } else { None };
    let mut kind = Call::Method;
    if class.is_some() {
        kind = reader.call()?;
    }
    let _structural = reader.flag()?;
    for _ in 0..reader.number()? {
        let _name = reader.text()?;
        reader.optional_text()?;
        let _optional = reader.flag()?;
        reader.optional_text()?;
    }
    for _ in ["asyncness", "jspi"] {
        reader.flag()?;
    }
    let name = reader.text()?;
    Some(match (class, kind) {
        (None, _) => name.to_owned(),
        (Some(class), Call::New) => format!("new {class}"),
        (Some(class), Call::Method) => format!("{class}.{name}"),
        (Some(class), Call::Get(property)) => format!("{class}.{property}"),
        (Some(class), Call::Set(property)) => format!("{class}.{property}="),
        (Some(class), Call::Index) => format!("{class}[]"),
    })
}

/// How an import is called.
enum Call<'a> {
    New,
    Method,
    Get(&'a str),
    Set(&'a str),
    Index,
}

/// Reads the section's encoding: numbers in LEB128, texts with their length before them, flags as one byte.
struct Reader<'a> {
    rest: &'a [u8],
}

impl<'a> Reader<'a> {
    fn byte(&mut self) -> Option<u8> {
        let (first, rest) = self.rest.split_first()?;
        self.rest = rest;
        Some(*first)
    }

    fn flag(&mut self) -> Option<bool> {
        match self.byte()? {
            0 => Some(false),
            1 => Some(true),
            _ => None,
        }
    }

    fn number(&mut self) -> Option<usize> {
        let mut number = 0;
        for place in 0..5 {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << (7 * place);
            if byte & 0x80 == 0 {
                return Some(number);
            }
        }
        None
    }

    fn text(&mut self) -> Option<&'a str> {
        let length = self.number()?;
        let (text, rest) = self.rest.split_at_checked(length)?;
        self.rest = rest;
        std::str::from_utf8(text).ok()
    }

    fn optional_text(&mut self) -> Option<Option<&'a str>> {
        if self.flag()? { self.text().map(Some) } else { Some(None) }
    }

    fn call(&mut self) -> Option<Call<'a>> {
        if self.byte()? == 0 {
            return Some(Call::New);
        }
        let _is_static = self.flag()?;
        Some(match self.byte()? {
            0 | 1 => Call::Method,
            2 => Call::Get(self.text()?),
            3 => Call::Set(self.text()?),
            _ => Call::Index,
        })
    }
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

    #[test]
    fn a_name_loses_its_hash_and_nothing_else() {
        assert_eq!(without_hash("__wbg_then_0d9fe2c7b1857d32"), "__wbg_then");
        assert_eq!(without_hash("__wbindgen_init_externref_table"), "__wbindgen_init_externref_table");
    }

    #[test]
    fn a_free_function_is_named_with_its_object() {
        let glue =
            "__wbg_set_12: function() { return handleError(function (arg0) {\nconst ret = Reflect.set(arg0);";
        assert_eq!(with_namespace(glue, "__wbg_set_12", "set"), "Reflect.set");
        assert_eq!(with_namespace("__wbg_f_1: function(arg0) {\nfetch(arg0)", "__wbg_f_1", "fetch"), "fetch");
        assert_eq!(with_namespace(glue, "__wbg_other_12", "set"), "set");
    }

    #[test]
    fn a_numbered_import_is_named_by_what_it_does() {
        let glue = "__wbindgen_generic_0001: function(arg0, arg1) {\n// Cast intrinsic for `Ref(String) -> Externref`.\n\
                    __wbindgen_generic_0002: function(arg0, arg1) {\nconst ret = arg0.then(arg1);\n";
        assert_eq!(generic(glue, "__wbindgen_generic_0001").as_deref(), Some("cast Ref(String)"));
        assert_eq!(generic(glue, "__wbindgen_generic_0002").as_deref(), Some("arg0.then(arg1);"));
        assert_eq!(generic(glue, "__wbindgen_throw"), None);
    }

    #[test]
    fn a_setter_is_told_from_a_method() {
        // shim, four flags, class, operation (not static, setter of a property), flag, no arguments, two flags, name
        let mut section = b"\x03abc\0\0\0\0\x01\x08Location\x01\0\x03\x04href\0\0\0\0\x08set_href".to_vec();
        assert_eq!(describe(&section, "abc").as_deref(), Some("Location.href="));
        section.truncate(20);
        assert_eq!(describe(&section, "abc"), None);
    }
}
