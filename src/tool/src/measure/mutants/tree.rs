//! A copy of the project's sources, kept from run to run.

use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Makes `copy` hold the same files as the project, those that git ignores left out. A file that is the same already is not
/// written: cargo would take it for a changed one.
///
/// # Errors
/// [`anyhow::Error`] if git cannot list the files, or one cannot be copied.
pub fn mirror(root: &Path, copy: &Path) -> Result<()> {
    let files = listed(root)?;
    for file in &files {
        let new =
            std::fs::read(root.join(file)).with_context(|| format!("{} cannot be read", file.display()))?;
        let place = copy.join(file);
        if std::fs::read(&place).is_ok_and(|old| old == new) {
            continue;
        }
        crate::host::workspace::write(&place, new)?;
    }
    remove_others(copy, copy, &files)
}

/// A digest of the files that decide what a test says of a fault: two runs of the same digest belong together.
///
/// # Errors
/// [`anyhow::Error`] if git cannot list the files, or one cannot be read.
pub fn digest(root: &Path) -> Result<String> {
    let decides = |file: &&PathBuf| DECIDES.iter().any(|it| file.starts_with(it)) && !file.starts_with(TOOL);
    let mut hash = Sha256::new();
    for file in listed(root)?.iter().filter(decides) {
        let text =
            std::fs::read(root.join(file)).with_context(|| format!("{} cannot be read", file.display()))?;
        hash.update(format!("{} {}\0", file.display(), text.len()));
        hash.update(text);
    }
    Ok(hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect())
}

/// What decides what a test says of a fault, but for the tool.
const DECIDES: [&str; 6] = ["src", "tests", "data", "Cargo.toml", "Cargo.lock", "rust-toolchain.toml"];
const TOOL: &str = "src/tool";

/// The files of the project, committed or new.
fn listed(root: &Path) -> Result<BTreeSet<PathBuf>> {
    let mut git = Command::new("git");
    git.args(["ls-files", "-z", "--cached", "--others", "--exclude-standard"]).current_dir(root);
    let output = git.output().context("git could not start")?;
    ensure!(output.status.success(), "git cannot list the project's files");
    let text = String::from_utf8(output.stdout)?;
    let files = text.split('\0').filter(|file| !file.is_empty()).map(PathBuf::from);
    // A file that was deleted and not yet committed is still listed.
    Ok(files.filter(|file| root.join(file).is_file()).collect())
}

/// Removes what the project holds no longer.
fn remove_others(copy: &Path, folder: &Path, files: &BTreeSet<PathBuf>) -> Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            remove_others(copy, &path, files)?;
        } else if path.strip_prefix(copy).is_ok_and(|file| !files.contains(file)) {
            std::fs::remove_file(&path)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_copy_follows_its_project() -> Result<()> {
        let root = std::env::temp_dir().join(format!("whitehold-mirror-{}", std::process::id()));
        let (project, copy) = (root.join("project"), root.join("copy"));
        std::fs::create_dir_all(project.join("src"))?;
        ensure!(Command::new("git").args(["init", "-q"]).current_dir(&project).status()?.success());
        std::fs::write(project.join("src/one.rs"), "1")?;
        std::fs::write(project.join("src/two.rs"), "2")?;
        mirror(&project, &copy)?;
        let written = std::fs::metadata(copy.join("src/one.rs"))?.modified()?;

        std::fs::remove_file(project.join("src/two.rs"))?;
        std::fs::write(project.join("three.rs"), "3")?;
        mirror(&project, &copy)?;
        assert_eq!(std::fs::read_to_string(copy.join("three.rs"))?, "3");
        assert!(!copy.join("src/two.rs").exists(), "a deleted file stays in the copy");
        assert_eq!(
            std::fs::metadata(copy.join("src/one.rs"))?.modified()?,
            written,
            "an unchanged file was written"
        );
        std::fs::remove_dir_all(&root)?;
        Ok(())
    }

    #[test]
    fn a_digest_follows_what_the_tests_depend_on() -> Result<()> {
        let root = std::env::temp_dir().join(format!("whitehold-digest-{}", std::process::id()));
        std::fs::create_dir_all(&root)?;
        ensure!(Command::new("git").args(["init", "-q"]).current_dir(&root).status()?.success());
        let mut before = digest(&root)?;
        for (file, counts) in [
            ("src/one.rs", true),
            ("tests/one/main.rs", true),
            ("data/one.json", true),
            ("Cargo.lock", true),
            ("src/tool/src/main.rs", false),
            ("README.md", false),
        ] {
            crate::host::workspace::write(&root.join(file), "1")?;
            let after = digest(&root)?;
            assert_eq!(after != before, counts, "{file}");
            before = after;
        }
        std::fs::remove_dir_all(&root)?;
        Ok(())
    }
}
