//! What the page says above the screen of a store that fails.

use super::DeskPage;
use anyhow::Result;
use std::path::Path;

/// The notice of a store that fails.
#[derive(Clone, Copy, Debug)]
pub struct StoreNotice<'a>(pub(super) &'a DeskPage);

impl<'a> StoreNotice<'a> {
    elements! {
        /// What is wrong.
        all => NOTICE;
        /// The link that hands the work out as a file.
        save_as_file => SAVE_AS_FILE;
        /// Where a file is chosen that brings the work back.
        file => FILE_AT_NOTICE;
    }

    /// Opens a file that brings the work back.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no notice.
    pub async fn open_file(self, file: &Path) -> Result<()> {
        self.file().choose_file(file).await
    }
}
