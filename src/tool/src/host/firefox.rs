//! Firefox, found or installed. It needs no driver: it listens itself (`browser::drive::marionette`).

use crate::host::programs::{find_or_install, from_variable, on_path};
use anyhow::Result;
use std::path::PathBuf;

/// The program of Firefox, the long-term release where there is a choice; as root on Debian it is installed.
///
/// # Errors
/// [`anyhow::Error`] if it is missing and cannot be installed from here.
pub fn find() -> Result<PathBuf> {
    let look = || from_variable("FIREFOX").or_else(|| on_path(&["firefox-esr", "firefox"]));
    let advice = "the page is also opened in Firefox, which is not here. Next thing to try: Debian `sudo apt-get install \
                  firefox-esr`; anywhere else put `firefox` on the PATH, or name it in FIREFOX.";
    find_or_install(look, &["firefox-esr"], advice)
}
