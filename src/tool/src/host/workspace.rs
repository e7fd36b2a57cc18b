//! The project's folders, the cargo that runs in them, and its files.

use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The folders the tool reads and writes.
#[derive(Clone, Debug)]
pub struct Workspace {
    /// The project's root, where the root `Cargo.toml` is.
    pub root: PathBuf,
}

impl Workspace {
    /// WasmSource the project's root from the folder the command was given in.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the command was given outside the project.
    pub fn find() -> Result<Self> {
        let here = std::env::current_dir().context("the current folder cannot be read")?;
        let root = here.ancestors().find(|folder| folder.join("src/tool/Cargo.toml").is_file());
        match root {
            Some(root) => Ok(Self { root: root.to_path_buf() }),
            None => bail!("{} is not inside the project. Go to its folder and try again.", here.display()),
        }
    }

    /// The folder for what is built: the one file, the site, the package.
    #[must_use]
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// The sources of the static page.
    #[must_use]
    pub fn www(&self) -> PathBuf {
        self.root.join("www")
    }

    /// Cargo's output folder: `target`, or what `CARGO_TARGET_DIR` says.
    #[must_use]
    pub fn target(&self) -> PathBuf {
        match std::env::var_os("CARGO_TARGET_DIR") {
            Some(folder) if !folder.is_empty() => self.root.join(folder),
            _ => self.root.join("target"),
        }
    }

    /// A cargo command in the project's root: the same cargo that runs this tool.
    #[must_use]
    pub fn cargo(&self) -> Command {
        let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
        let mut command = Command::new(cargo);
        command.current_dir(&self.root);
        // The outer cargo set these for this run of the tool; they would mislead the inner one.
        for name in ["CARGO_MANIFEST_DIR", "CARGO_MANIFEST_PATH", "CARGO_PKG_NAME", "CARGO_PKG_VERSION"] {
            command.env_remove(name);
        }
        command
    }
}

/// Writes a file, making its folder first.
///
/// # Errors
/// [`anyhow::Error`] if the folder or the file cannot be written.
pub fn write(path: &Path, contents: impl AsRef<[u8]>) -> Result<()> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).with_context(|| format!("{} cannot be made", folder.display()))?;
    }
    std::fs::write(path, contents).with_context(|| format!("{} cannot be written", path.display()))
}

/// Reads a text file.
///
/// # Errors
/// [`anyhow::Error`] if it cannot be read or is not UTF-8.
pub fn read(path: &Path) -> Result<String> {
    std::fs::read_to_string(path).with_context(|| format!("{} cannot be read", path.display()))
}
