//! The section of the compiled module in which wasm-bindgen describes what is imported.

use anyhow::{Context, Result};
use wasmparser::{Parser, Payload};

/// The custom section in which wasm-bindgen describes what is imported.
const DESCRIPTIONS: &str = "__wasm_bindgen_unstable";

pub(super) fn descriptions(compiled: &[u8]) -> Result<Vec<&[u8]>> {
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

/// What the section says of an imported function: `Class.method`, `new Class`, or the name of a function that belongs to no
/// class. Nothing if the section does not describe it.
///
/// The layout is that of `wasm_bindgen_shared` in the version pinned for the whole project: the name, four flags,
/// the class if there is one with the kind of call, a flag, the arguments, two flags, the name in JS.
pub(super) fn describe(section: &[u8], shim: &str) -> Option<String> {
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
    fn a_setter_is_told_from_a_method() {
        // shim, four flags, class, operation (not static, setter of a property), flag, no arguments, two flags, name
        let mut section = b"\x03abc\0\0\0\0\x01\x08Location\x01\0\x03\x04href\0\0\0\0\x08set_href".to_vec();
        assert_eq!(describe(&section, "abc").as_deref(), Some("Location.href="));
        section.truncate(20);
        assert_eq!(describe(&section, "abc"), None);
    }
}
