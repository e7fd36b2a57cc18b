//! Copies the records of `data/` to where the core includes them from.
//!
//! For the page the copies are smaller: sources and notes of records that no screen shows are left out, and blanks between
//! values. Numbers stay as they are written. Natively the copies are the files themselves.
//!
//! **Decision:** a build script cuts what only a reader of `data/` needs.
//! **Because:** the page may weigh 900,000 bytes.
//! **Measured:** 4 kB of the page (2026-12-01).
//! **Reconsider when:** a screen shows where every number comes from.

use serde_json::Value;
use std::error::Error;
use std::path::Path;
use std::{env, fs};

/// Tables whose sources and notes no screen shows.
const UNSHOWN: [&str; 8] = [
    "colours.json",
    "constructions.json",
    "dye_classes.json",
    "dyes.json",
    "fibres.json",
    "kinetics.json",
    "limits.json",
    "white_classes.json",
];

/// Texts for the reader of `data/`.
const FOR_READERS: [&str; 3] = ["cas", "note", "source"];

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed=data");
    let target = env::var("OUT_DIR")?;
    let for_page = env::var("CARGO_CFG_TARGET_ARCH")? == "wasm32";
    for entry in fs::read_dir("data")? {
        let path = entry?.path();
        let Some(name) =
            path.file_name().and_then(|name| name.to_str()).filter(|name| name.ends_with(".json"))
        else {
            continue;
        };
        let mut text = fs::read_to_string(&path)?;
        if for_page {
            // A broken file is copied as it is: the library names it with line and column.
            if let Ok(mut table) = serde_json::from_str(&text) {
                if UNSHOWN.contains(&name) {
                    cut(&mut table);
                }
                text = table.to_string();
            }
        }
        fs::write(Path::new(&target).join(name), text)?;
    }
    Ok(())
}

/// Empties the texts for readers in every record; the fields stay, since a record without them is refused.
fn cut(value: &mut Value) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                match value {
                    Value::String(text) if FOR_READERS.contains(&name.as_str()) => text.clear(),
                    _ => cut(value),
                }
            }
        }
        Value::Array(rows) => rows.iter_mut().for_each(cut),
        _ => {}
    }
}
