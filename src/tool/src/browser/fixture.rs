//! What every story is handed: the project, the driven browser and the built page.

use crate::browser::drive::built_page::BuiltPage;
use crate::browser::drive::chromedriver::ChromeDriver;
use crate::browser::tablet::Tablet;
use crate::host::workspace::Workspace;
use anyhow::Result;
use std::path::PathBuf;

/// The running programs that stories need; they end with this value.
pub struct Fixture {
    /// Where the project is.
    pub workspace: Workspace,
    /// The page that is opened.
    pub page: BuiltPage,
    driver: ChromeDriver,
}

impl Fixture {
    /// Starts the driver and the web server.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the page is not built, or Chromium cannot be had.
    pub async fn set_up(workspace: &Workspace) -> Result<Self> {
        let page = BuiltPage::serve(workspace).await?;
        let driver = ChromeDriver::start().await?;
        Ok(Self { workspace: workspace.clone(), page, driver })
    }

    /// A tablet in landscape, in light colours.
    #[must_use]
    pub fn tablet(&self) -> Tablet<'_> {
        Tablet::new(&self.driver, &self.page)
    }

    /// The two ways in which the page is used: from a stick on a tablet in landscape, and from the shop's server on one in
    /// portrait.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`BuiltPage::file`].
    pub fn both_ways(&self) -> Result<[(Tablet<'_>, String); 2]> {
        Ok([(self.tablet(), self.page.file()?), (self.tablet().portrait(), self.page.site(""))])
    }

    /// An empty folder of this name, for what a browser writes or reads.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it cannot be made.
    pub fn empty_folder(&self, name: &str) -> Result<PathBuf> {
        let folder = self.workspace.target().join("stories").join(name);
        if folder.exists() {
            std::fs::remove_dir_all(&folder)?;
        }
        std::fs::create_dir_all(&folder)?;
        Ok(folder)
    }
}
