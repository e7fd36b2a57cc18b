//! Every path that the guides and the comments name exists.

use super::source::{SourceFile, files, root};

/// Folders of the project that a path may begin with.
const FOLDERS: [&str; 4] = ["src/", "tests/", "data/", "www/"];

/// Paths of the project between backticks in a text.
fn named_paths(text: &str) -> Vec<String> {
    let inside = text.split('`').skip(1).step_by(2);
    let path = |text: &&str| {
        FOLDERS.iter().any(|folder| text.starts_with(folder))
            && text.chars().all(|c| c.is_ascii_alphanumeric() || "/._-".contains(c))
    };
    inside.filter(path).map(|path| path.trim_end_matches('/').to_owned()).collect()
}

fn missing(name: &str, text: &str) -> Vec<String> {
    let paths = named_paths(text).into_iter().filter(|path| !root().join(path).exists());
    paths.map(|path| format!("{name}: {path}")).collect()
}

#[test]
fn a_path_that_is_not_there_is_found() {
    let text = "Read `src/lib.rs` and `src/no_such_file.rs`, not `cargo xtask` nor `src/*.rs`.";
    assert_eq!(missing("a guide", text), ["a guide: src/no_such_file.rs"]);
}

#[test]
fn the_guides_name_files_that_exist() {
    for guide in ["README.md", "DEVELOPERS.md", "CHANGELOG.md"] {
        let text = std::fs::read_to_string(root().join(guide)).expect("a guide");
        assert_eq!(missing(guide, &text), Vec::<String>::new());
    }
}

#[test]
fn comments_name_files_that_exist() {
    let comments = |file: &SourceFile| {
        let lines = file.text.lines().filter(|line| line.trim_start().starts_with("//"));
        lines.collect::<Vec<_>>().join("\n")
    };
    let found: Vec<String> = ["src", "tests"]
        .iter()
        .flat_map(|folder| files(folder, "rs"))
        .filter(|file| !file.path.starts_with("tests/project/"))
        .flat_map(|file| missing(&file.path, &comments(&file)))
        .collect();
    assert!(found.is_empty(), "{found:#?}");
}
