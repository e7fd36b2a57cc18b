//! WebKitGTK, whose engine is Safari's, found or installed. Its small browser draws its window on a screen, so it gets a
//! virtual one (Xvfb).

use crate::host::programs::{find_or_install, from_variable, on_path};
use anyhow::Result;
use std::path::{Path, PathBuf};

/// WebKitGTK's driver, the small browser that comes with it, and the virtual screen.
#[derive(Clone, Debug)]
pub struct WebKit {
    /// The WebDriver program.
    pub driver: PathBuf,
    /// The browser.
    pub browser: PathBuf,
    /// The X server that draws into memory.
    pub screen: PathBuf,
}

impl WebKit {
    /// WasmSource all three, or as root on Debian installs them.
    ///
    /// # Errors
    /// [`anyhow::Error`] if one is missing and cannot be installed from here.
    pub fn find() -> Result<Self> {
        let look = || {
            let driver = from_variable("WEBKITWEBDRIVER").or_else(|| on_path(&["WebKitWebDriver"]))?;
            let browser = from_variable("MINIBROWSER").or_else(small_browser)?;
            Some(Self { driver, browser, screen: on_path(&["Xvfb"])? })
        };
        let advice = "the page is also opened in WebKitGTK, which is not here. Next thing to try: Debian and Ubuntu `sudo \
                      apt-get install webkit2gtk-driver xvfb`; anywhere else put WebKitWebDriver and Xvfb on the PATH, \
                      or name the driver in WEBKITWEBDRIVER and its browser in MINIBROWSER.";
        find_or_install(look, &["webkit2gtk-driver", "xvfb"], advice)
    }
}

/// Distributions put it beside the library, not on the PATH.
fn small_browser() -> Option<PathBuf> {
    let debian = format!("/usr/lib/{}-linux-gnu", std::env::consts::ARCH);
    let folders = [debian.as_str(), "/usr/lib64", "/usr/lib", "/usr/libexec"];
    let versions = ["webkit2gtk-4.1", "webkit2gtk-4.0", "webkitgtk-6.0"];
    let places = folders.iter().flat_map(|folder| versions.map(|version| Path::new(folder).join(version)));
    places.map(|place| place.join("MiniBrowser")).find(|program| program.is_file())
}
