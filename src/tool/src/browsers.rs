//! The other browsers that the page is opened in: Firefox, and WebKitGTK, whose engine is Safari's.
//!
//! Firefox needs no driver: it listens itself (`browser::marionette`). WebKitGTK's small browser draws its window on a
//! screen, so it is given one in memory.

use crate::chromium::{named, on_path};
use crate::toolchain::find_or_install;
use anyhow::Result;
use std::path::{Path, PathBuf};

/// Firefox, the long-term release where there is a choice.
#[derive(Clone, Debug)]
pub struct Firefox {
    /// The browser.
    pub browser: PathBuf,
}

impl Firefox {
    /// Finds it, or as root on Debian installs it.
    ///
    /// # Errors
    /// When it is not there and cannot be installed from here.
    pub fn find() -> Result<Self> {
        let look = || {
            let browser = named("FIREFOX").or_else(|| on_path(&["firefox-esr", "firefox"]))?;
            Some(Self { browser })
        };
        let advice = "the page is also opened in Firefox, which is not here. Next thing to try: Debian `sudo apt-get \
                      install firefox-esr`; anywhere else put `firefox` on the PATH, or name it in FIREFOX.";
        find_or_install(look, &["firefox-esr"], advice)
    }
}

/// WebKitGTK's driver, the small browser that comes with it, and the screen in memory.
#[derive(Clone, Debug)]
pub struct WebKit {
    /// The WebDriver program.
    pub driver: PathBuf,
    /// The browser.
    pub browser: PathBuf,
    /// What makes the screen.
    pub screen: PathBuf,
}

impl WebKit {
    /// Finds all three, or as root on Debian installs them.
    ///
    /// # Errors
    /// When they are not there and cannot be installed from here.
    pub fn find() -> Result<Self> {
        let look = || {
            let driver = named("WEBKITWEBDRIVER").or_else(|| on_path(&["WebKitWebDriver"]))?;
            let browser = named("MINIBROWSER").or_else(small_browser)?;
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

/// The letters of the approved pictures, where Debian puts them; as root they are installed.
///
/// # Errors
/// When they are not there and cannot be installed from here. Other systems keep them elsewhere: the page itself is asked
/// whether it has them.
pub fn find_letters() -> Result<()> {
    let folder = Path::new("/usr/share/fonts/truetype/dejavu");
    let look = || {
        ["DejaVuSansCondensed.ttf", "DejaVuSerifCondensed.ttf"]
            .iter()
            .all(|it| folder.join(it).is_file())
            .then_some(())
    };
    find_or_install(
        look,
        &["fonts-dejavu-core", "fonts-dejavu-extra"],
        "DejaVu's letters are not where Debian puts them",
    )
}
