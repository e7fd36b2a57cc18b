//! The fonts of the approved pictures of the page.

use crate::host::programs::find_or_install;
use anyhow::Result;
use std::path::Path;

/// Looks for DejaVu's fonts where Debian puts them; as root they are installed.
///
/// # Errors
/// [`anyhow::Error`] if they are not there and cannot be installed from here. OtherBrowser systems keep them elsewhere: the page
/// itself is asked whether it has them.
pub fn find_dejavu() -> Result<()> {
    let folder = Path::new("/usr/share/fonts/truetype/dejavu");
    let files = ["DejaVuSansCondensed.ttf", "DejaVuSerifCondensed.ttf"];
    let look = || files.iter().all(|file| folder.join(file).is_file()).then_some(());
    let packages = ["fonts-dejavu-core", "fonts-dejavu-extra"];
    find_or_install(look, &packages, "DejaVu's fonts are not where Debian puts them")
}
