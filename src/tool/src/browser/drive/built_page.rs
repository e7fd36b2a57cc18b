//! The built page, as a file and on a web server.

use crate::host::workspace::Workspace;
use crate::page::serve;
use anyhow::{Context, Result, bail};
use std::net::SocketAddr;
use std::path::{Path, PathBuf};

/// The two ways in which the page is handed out.
pub struct BuiltPage {
    file: PathBuf,
    server: SocketAddr,
}

impl BuiltPage {
    /// Starts the web server.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the page is not built.
    pub async fn serve(workspace: &Workspace) -> Result<Self> {
        let file = workspace.dist().join("whitehold.html");
        if !file.is_file() {
            bail!("{} is not there. Next thing to try: `cargo xtask build`", file.display());
        }
        Ok(Self { file, server: serve_folder(workspace.dist().join("site")).await? })
    }

    /// The address of the one file on a stick.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the file is gone.
    pub fn file(&self) -> Result<String> {
        file_address(&self.file)
    }

    /// The address of a page on the shop's web server, `""` for the desk itself.
    #[must_use]
    pub fn site(&self, page: &str) -> String {
        format!("http://{}/{page}", self.server)
    }
}

/// Serves a folder over http for as long as the program runs.
///
/// # Errors
/// [`anyhow::Error`] if no port is free.
pub async fn serve_folder(folder: PathBuf) -> Result<SocketAddr> {
    let (listener, address) = serve::listen(0).await?;
    tokio::spawn(serve::serve(listener, folder));
    Ok(address)
}

/// A `file://` address.
///
/// # Errors
/// [`anyhow::Error`] if the file does not exist.
pub fn file_address(path: &Path) -> Result<String> {
    let full = path.canonicalize().with_context(|| format!("{} is not there", path.display()))?;
    url::Url::from_file_path(&full)
        .map(String::from)
        .map_err(|()| anyhow::anyhow!("{} has no address", full.display()))
}
