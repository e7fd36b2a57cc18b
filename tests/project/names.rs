//! A public type has a name of its own: where two share one, the line that uses it does not say which.

use super::source::{SourceFile, files};
use std::collections::BTreeMap;

/// The public types that a file defines.
fn public_types(file: &SourceFile) -> Vec<String> {
    let kinds = ["pub struct ", "pub enum ", "pub trait ", "pub type "];
    let name = |line: &str| {
        let rest = kinds.iter().find_map(|kind| line.trim_start().strip_prefix(kind))?;
        Some(rest.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>())
    };
    file.code().lines().filter_map(name).collect()
}

#[test]
fn the_reader_finds_what_is_defined() {
    let text = "pub struct Film;\n/// pub struct InAComment;\nstruct Private;\n    pub enum Side { A }\npub type Point = u8;";
    let file = SourceFile { path: "src/x.rs".into(), text: text.into() };
    assert_eq!(public_types(&file), ["Film", "Side", "Point"]);
}

#[test]
fn no_public_type_name_is_defined_twice() {
    let mut homes: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for file in files("src", "rs") {
        for name in public_types(&file) {
            homes.entry(name).or_default().push(file.path.clone());
        }
    }
    assert!(homes.len() > 200, "the reader finds the project's types: {}", homes.len());
    let twice: Vec<_> = homes.iter().filter(|(_, homes)| homes.len() > 1).collect();
    assert!(twice.is_empty(), "{twice:#?}");
}
