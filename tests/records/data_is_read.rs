//! Nothing in `data/` is there for show: the code reads every field of every file, every limit and every law.
//!
//! The types of `data/` refuse a field or a limit that they do not know when the library loads, and this is the other
//! half: whoever changes a number there changes what is computed. Looked for in the text of the program, so a name that
//! another type has too may hide one that is not read; the names of the limits are looked for behind `limits.`.

#![allow(clippy::unwrap_used)]

use serde_json::Value;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Fields for the person who reads or changes the file: where a number comes from and how far to trust it.
const FOR_PEOPLE: [&str; 5] = ["cas", "phase", "valid_k", "pressure_spread", "note"];

/// Files whose rows the page holds. The anchors are read by the tests of the dye alone, and the limits by name.
const ROWS: [&str; 14] = [
    "blockers.json",
    "colours.json",
    "constructions.json",
    "dryers.json",
    "dye_classes.json",
    "dyes.json",
    "fabrics.json",
    "fibres.json",
    "harbour_lane.json",
    "kinetics.json",
    "laws.json",
    "meshes.json",
    "white_classes.json",
    "whites.json",
];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn data(file: &str) -> Value {
    serde_json::from_str(&std::fs::read_to_string(root().join("data").join(file)).unwrap()).unwrap()
}

/// The text of every Rust file in a folder, those of the tool left out.
fn program(folder: &Path) -> String {
    let mut text = String::new();
    for entry in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if entry.is_dir() && !entry.ends_with("src/tool") {
            text.push_str(&program(&entry));
        } else if entry.extension().is_some_and(|kind| kind == "rs") {
            text.push_str(&std::fs::read_to_string(entry).unwrap());
        }
    }
    text
}

/// Whether `words` stand in the program, and no letter goes on behind them.
fn stands(program: &str, words: &str) -> bool {
    let goes_on = |letter: char| letter.is_alphanumeric() || letter == '_';
    program.match_indices(words).any(|(at, _)| !program[at + words.len()..].starts_with(goes_on))
}

/// Names of the fields of every object in a value. The keys of a composition are fibres and no fields.
fn fields(value: &Value, names: &mut BTreeSet<String>) {
    match value {
        Value::Object(object) => {
            for (name, value) in object {
                names.insert(if name == "use" { "use_".into() } else { name.clone() });
                if name != "composition_percent" {
                    fields(value, names);
                }
            }
        }
        Value::Array(items) => items.iter().for_each(|item| fields(item, names)),
        _ => {}
    }
}

#[test]
fn every_file_has_a_reader() {
    let files = std::fs::read_dir(root().join("data")).unwrap().map(|entry| entry.unwrap().path());
    let files: BTreeSet<String> = files
        .filter(|path| path.extension().is_some_and(|kind| kind == "json"))
        .map(|path| path.file_name().unwrap().to_string_lossy().into_owned())
        .collect();
    let known = ROWS.into_iter().chain(["anchors.json", "limits.json"]).map(str::to_owned);
    assert_eq!(files, known.collect());
}

#[test]
fn every_field_is_read() {
    let program = program(&root().join("src"));
    for file in ROWS {
        let mut names = BTreeSet::new();
        fields(&data(file), &mut names);
        let unread: Vec<_> = names
            .iter()
            .filter(|name| !FOR_PEOPLE.contains(&name.as_str()) && !stands(&program, &format!(".{name}")))
            .collect();
        assert!(unread.is_empty(), "data/{file}: nothing reads {unread:?}");
    }
}

#[test]
fn every_limit_is_read() {
    let program = program(&root().join("src"));
    for name in data("limits.json").as_object().unwrap().keys() {
        let name = name.replace('-', "_");
        assert!(stands(&program, &format!("limits.{name}")), "data/limits.json: nothing reads {name}");
    }
}

#[test]
fn every_law_is_cited() {
    let program = program(&root().join("src/plan"));
    for law in data("laws.json").as_array().unwrap() {
        let id = law["id"].as_str().unwrap();
        assert!(program.contains(&format!("{id:?}")), "data/laws.json: nothing cites {id}");
    }
}
