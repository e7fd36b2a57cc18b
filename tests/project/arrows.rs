//! Folders use only those before them: the top folders of `src` in the order of `src/lib.rs`, and those of `src/plan` in
//! the order of an answer.

use super::source::{SourceFile, files};

/// The top folders, each using only those before it.
const FLOORS: [&str; 14] = [
    "quantity",
    "numerics",
    "textile",
    "optics",
    "ink",
    "dryer",
    "cure",
    "migration",
    "plan",
    "diagnosis",
    "library",
    "wording",
    "desk",
    "web",
];

/// The folders of `src/plan`, each using only those before it.
const PLAN: [&str; 9] =
    ["report", "order", "recipe", "bleed", "window", "margins", "verdict", "search", "answer"];

/// What a file uses of `folders` that comes after the one it lies in: `path: folder`. `base` is the folder's path below
/// `src`, `within` the Rust path of it.
fn back_arrows(file: &SourceFile, base: &str, within: &str, folders: &[&str]) -> Vec<String> {
    let Some(own) = file.path.strip_prefix(base).and_then(|rest| rest.split(['/', '.']).next()) else {
        return Vec::new();
    };
    let place = |name: &str| folders.iter().position(|folder| *folder == name);
    let Some(own) = place(own) else { return Vec::new() };
    let code = file.code();
    let used = code.match_indices(within).flat_map(|(at, _)| names_after(&code[at + within.len()..]));
    let back = used.filter(|name| place(name).is_some_and(|used| used > own));
    back.map(|name| format!("{}: {name}", file.path)).collect()
}

/// The first names of a path, or of each path in braces.
fn names_after(text: &str) -> Vec<String> {
    let word = |text: &str| -> String {
        text.trim_start().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect()
    };
    let Some(inside) = text.strip_prefix('{') else { return vec![word(text)] };
    let (mut depth, mut names, mut start) = (0, Vec::new(), 0);
    for (at, c) in inside.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => {
                names.push(word(&inside[start..at]));
                return names;
            }
            '}' => depth -= 1,
            ',' if depth == 0 => {
                names.push(word(&inside[start..at]));
                start = at + 1;
            }
            _ => {}
        }
    }
    names
}

#[test]
fn a_planted_back_arrow_is_found() {
    let of = |path: &str, text: &str| SourceFile { path: path.into(), text: text.into() };
    let rows = [
        ("a plain path", of("src/dryer/x.rs", "use crate::plan::Job;"), 1),
        ("in braces", of("src/cure/x.rs", "use crate::{ink::White, plan::{Job, Order}, web};"), 2),
        ("inside a function", of("src/ink/mod.rs", "fn f() { crate::library::starter(); }"), 1),
        ("downwards", of("src/plan/x.rs", "use crate::dryer::Stack;"), 0),
        ("in a comment", of("src/ink/x.rs", "// see crate::plan::Job"), 0),
        ("in its tests", of("src/ink/x.rs", "#[cfg(test)]\nmod tests { use crate::library::starter; }"), 0),
    ];
    for (case, file, expected) in rows {
        assert_eq!(back_arrows(&file, "src/", "crate::", &FLOORS).len(), expected, "{case}");
    }
}

#[test]
fn no_top_folder_uses_one_after_it() {
    let found: Vec<String> =
        files("src", "rs").iter().flat_map(|file| back_arrows(file, "src/", "crate::", &FLOORS)).collect();
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn no_folder_of_plan_uses_one_after_it() {
    let files = files("src/plan", "rs");
    let found: Vec<String> =
        files.iter().flat_map(|file| back_arrows(file, "src/plan/", "crate::plan::", &PLAN)).collect();
    assert!(found.is_empty(), "{found:#?}");
    // The root of plan only hands names out: no folder of it takes any from there, which would hide an arrow.
    let through_root = files.iter().filter(|file| file.path.matches('/').count() > 2).flat_map(|file| {
        let code = file.code();
        let used: Vec<String> =
            code.match_indices("crate::plan::").flat_map(|(at, _)| names_after(&code[at + 13..])).collect();
        let hidden = used.into_iter().filter(|name| !PLAN.contains(&name.as_str()));
        hidden.map(|name| format!("{}: {name}", file.path)).collect::<Vec<_>>()
    });
    let through_root: Vec<String> = through_root.collect();
    assert!(through_root.is_empty(), "{through_root:#?}");
}

#[test]
fn every_top_folder_has_its_place() {
    let placed = |name: &str| FLOORS.contains(&name) || ["tool", "unpack", "lib", "build"].contains(&name);
    for file in files("src", "rs") {
        let name = file.path.split(['/', '.']).nth(1).unwrap_or_default().to_owned();
        assert!(placed(&name), "{} lies in no folder that has its place among the floors", file.path);
    }
}
