//! Every code, piece of advice, label and phrase that has words is also made or shown by the program.
//!
//! The compiler only sees that each has its words, and those words are themselves a use. So the source is read as
//! text: a name counts as used if it stands, with its type, outside the folders of the languages.

use std::fs;
use std::path::Path;

/// The folders of the languages: naming a phrase there is giving it words, not using it.
const LANGUAGES: [&str; 2] = ["wording/en/", "wording/es/"];

/// Every Rust file under `src`, as its path below it and its text.
fn sources() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut folders = vec![root.clone()];
    let mut files = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                let name = path.strip_prefix(&root).unwrap().to_str().unwrap().replace('\\', "/");
                files.push((name, fs::read_to_string(path).unwrap()));
            }
        }
    }
    files
}

/// Names of the variants of the enum `name` in this source.
fn variants<'a>(source: &'a str, name: &str) -> Vec<&'a str> {
    let head = format!("enum {name} {{");
    let body = &source[source.find(&head).unwrap_or_else(|| panic!("no {head}")) + head.len()..];
    let mut depth = 0;
    let mut found = Vec::new();
    for line in body.lines().map(|line| line.split("//").next().unwrap_or_default().trim()) {
        if depth == 0 && line.starts_with(|letter: char| letter.is_ascii_uppercase()) {
            found.push(line.split(|c: char| !c.is_ascii_alphanumeric()).next().unwrap_or_default());
        }
        for letter in line.chars() {
            match letter {
                '{' | '(' => depth += 1,
                '}' | ')' => depth -= 1,
                _ => {}
            }
        }
        if depth < 0 {
            return found;
        }
    }
    panic!("{name} does not end")
}

/// True if `name` stands in the text as a whole word.
fn stands(text: &str, name: &str) -> bool {
    text.match_indices(name)
        .any(|(at, _)| !text[at + name.len()..].starts_with(|c: char| c.is_ascii_alphanumeric() || c == '_'))
}

/// The variants of an enum in `home` that stand, with their type, in no file that `counts`.
fn unused<'a>(
    files: &'a [(String, String)],
    home: &str,
    name: &str,
    counts: impl Fn(&str) -> bool,
) -> Vec<&'a str> {
    let (_, source) = files.iter().find(|(path, _)| path == home).unwrap_or_else(|| panic!("no {home}"));
    let users: Vec<&String> =
        files.iter().filter(|(path, _)| path != home && counts(path)).map(|(_, text)| text).collect();
    let mut all = variants(source, name);
    assert!(all.len() > 8, "{name}: only {all:?} was found");
    // A file may also make a phrase of its own.
    let rest = source.split("\nimpl ").skip(1).collect::<String>();
    all.retain(|variant| {
        let path = format!("{name}::{variant}");
        !users.iter().any(|text| stands(text, &path)) && !stands(&rest, &path)
    });
    all
}

#[test]
fn every_code_and_advice_is_made_by_the_plan_or_the_library() {
    let files = sources();
    for name in ["Code", "Advice"] {
        let made = |path: &str| path.starts_with("plan/") || path.starts_with("library/");
        assert_eq!(unused(&files, "plan/report/reason.rs", name, made), [""; 0], "{name} that nothing makes");
    }
}

#[test]
fn every_label_and_phrase_is_shown() {
    let files = sources();
    let (_, languages) = files.iter().find(|(path, _)| path == "wording/language.rs").unwrap();
    let (_, list) = languages.split_once("\nsentences! {").unwrap();
    let phrases = list.split('}').next().unwrap().split(';').filter_map(|line| line.trim().split_once(": "));
    let labels = [("Label", "label"), ("LibraryLabel", "library")];
    let all: Vec<(&str, &str)> = phrases.chain(labels).collect();
    assert!(all.len() > 8, "{all:?}");
    for (name, module) in all {
        let shown = |path: &str| !LANGUAGES.iter().any(|language| path.starts_with(language));
        let unused = unused(&files, &format!("wording/{module}.rs"), name, shown);
        assert_eq!(unused, [""; 0], "{name} that nothing shows");
    }
}

/// The two tests above find what is unused: a name that is only part of another, or only has words, is no use.
#[test]
fn a_planted_name_is_found() {
    let source = "enum Sign {\n    /// Not Made.\n    One,\n    Two { low: f64 },\n    Three(u8),\n    Four,\n    Five,\n    \
                  Six {\n        High: f64,\n    },\n    Seven,\n    Eight,\n    Nine,\n}\n";
    let user =
        "let all = [Sign::One, Sign::TwoMore, Sign::Four, Sign::Five, Sign::Six, Sign::Seven, Sign::Eight];";
    let words = "Sign::Three(_) => \"three\",";
    let files = [("home.rs", source), ("user.rs", user), ("wording/en/sign.rs", words)]
        .map(|(path, text)| (path.to_owned(), text.to_owned()));
    let found = unused(&files, "home.rs", "Sign", |path| !path.starts_with(LANGUAGES[0]));
    assert_eq!(found, ["Two", "Three", "Nine"]);
}
