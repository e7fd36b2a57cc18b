//! The folder for a shop's own web server: the one file as `index.html`, the JS package, and an example of embedding the desk.

use crate::host::workspace::{Workspace, write};
use anyhow::Result;
use std::path::Path;

/// Writes `dist/site`; the folder can be copied to any web server as it is.
///
/// # Errors
/// [`anyhow::Error`] if a file cannot be read or written.
pub fn write_site(workspace: &Workspace, page: &[u8]) -> Result<()> {
    let folder = workspace.dist().join("site");
    if folder.is_dir() {
        std::fs::remove_dir_all(&folder)?;
    }
    write(&folder.join("index.html"), page)?;
    for source in ["embed.html", "embed.js"] {
        std::fs::copy(workspace.www().join(source), folder.join(source))?;
    }
    copy_folder(&workspace.dist().join("pkg"), &folder.join("pkg"))
}

fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        std::fs::copy(entry.path(), to.join(entry.file_name()))?;
    }
    Ok(())
}
