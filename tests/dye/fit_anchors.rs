//! What is fitted to the anchors, and how: a peer gives numbers of `data/` other values and reads the chances back.
//!
//! Nothing is claimed here; `tests/dye/anchors.rs` holds what the fit came to. The fit itself is `tests/peer/anchors.py`,
//! which starts this program, writes a line of JSON with a value by the name of each number, and reads a line with the
//! chance of each row.

use crate::anchor_cases::{anchor_chance, anchors};
use std::collections::BTreeMap;
use std::io::BufRead;
use whitehold::library::{Library, starter};

/// The library with one number changed: a limit by its name, what a class of white binds as `capacity/low-bleed`, what
/// a blocker binds as `capacity/blocker`.
fn set(library: &mut Library, name: &str, value: f64) {
    if let Some(class) = name.strip_prefix("capacity/") {
        if class == "blocker" {
            library.blockers.iter_mut().for_each(|blocker| blocker.dye_capacity.value = value);
        }
        for record in &mut library.white_classes {
            if serde_json::to_value(record.class).expect("a name") == class {
                record.dye_capacity.value = value;
            }
        }
        return;
    }
    let mut limits = serde_json::to_value(&library.limits).expect("limits are JSON");
    limits[name]["value"] = value.into();
    library.limits = serde_json::from_value(limits).expect("a limit of this name");
}

#[test]
#[ignore = "reads from standard input what to compute; `tests/peer/anchors.py` starts it"]
fn chances_for_a_fit() {
    for line in std::io::stdin().lock().lines() {
        let asked: BTreeMap<String, f64> =
            serde_json::from_str(&line.expect("a line")).expect("numbers by their names");
        let mut library = starter().expect("the library");
        for (name, value) in asked {
            set(&mut library, &name, value);
        }
        let chances: BTreeMap<String, f64> = anchors()
            .into_iter()
            .filter_map(|row| Some((row.id.clone(), anchor_chance(&row, &library, "long-kiln").ok()?)))
            .collect();
        println!("> {}", serde_json::to_string(&chances).expect("numbers"));
    }
}
