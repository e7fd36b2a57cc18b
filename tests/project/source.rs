//! The source tree as text.

use std::fs;
use std::path::{Path, PathBuf};

/// A file below the project's root.
pub struct SourceFile {
    /// Its path below the root, with `/`.
    pub path: String,
    /// Its text.
    pub text: String,
}

impl SourceFile {
    /// Its code: no comments, and nothing from the first module of tests on.
    pub fn code(&self) -> String {
        let code = self.text.split("#[cfg(test)]\nmod ").next().unwrap_or_default();
        code.lines().map(|line| line.split("//").next().unwrap_or_default()).collect::<Vec<_>>().join("\n")
    }
}

/// The project's root.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Every file with this ending below a folder of the project, in the order of their paths.
pub fn files(folder: &str, ending: &str) -> Vec<SourceFile> {
    let mut paths = Vec::new();
    collect(&root().join(folder), ending, &mut paths);
    paths.sort();
    let read = |path: PathBuf| SourceFile {
        path: path.strip_prefix(root()).expect("below the root").to_string_lossy().replace('\\', "/"),
        text: fs::read_to_string(&path).expect("a text file"),
    };
    paths.into_iter().map(read).collect()
}

fn collect(folder: &Path, ending: &str, paths: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder of the project") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            collect(&path, ending, paths);
        } else if path.extension().is_some_and(|found| found == ending) {
            paths.push(path);
        }
    }
}
