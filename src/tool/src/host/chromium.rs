//! Chromium and its driver, found or installed: the browser that tests run in.

use crate::host::programs::{find_or_install, from_variable, is_root, on_path};
use anyhow::Result;
use serde_json::{Value, json};
use std::path::PathBuf;

/// Chromium and the program that drives it.
#[derive(Clone, Debug)]
pub struct Chromium {
    /// The WebDriver program.
    pub driver: PathBuf,
    /// The browser.
    pub browser: PathBuf,
}

impl Chromium {
    /// WasmSource both, or as root on Debian installs them.
    ///
    /// # Errors
    /// [`anyhow::Error`] if they are not there and cannot be installed from here.
    pub fn find() -> Result<Self> {
        find_or_install(
            Self::look,
            &["chromium", "chromium-driver"],
            "the browser tests need Chromium (or Chrome) and the chromedriver of the same version.\n\
             Next thing to try: Debian and Ubuntu `sudo apt-get install chromium chromium-driver`; Fedora `sudo dnf \
             install chromium chromedriver`; macOS `brew install --cask chromium chromedriver`; anywhere else put both \
             on the PATH, or name them in CHROMEDRIVER and CHROME.",
        )
    }

    fn look() -> Option<Self> {
        let driver = from_variable("CHROMEDRIVER").or_else(|| on_path(&["chromedriver"]))?;
        let browser = from_variable("CHROME")
            .or_else(|| {
                on_path(&["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"])
            })
            .or_else(|| {
                let mac = PathBuf::from("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome");
                mac.is_file().then_some(mac)
            })?;
        Some(Self { driver, browser })
    }

    /// The capabilities that a WebDriver session asks for: no window, no network traffic of the browser's own, and its logs.
    #[must_use]
    pub fn capabilities(&self) -> Value {
        let mut arguments = vec![
            "--headless=new",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-default-apps",
            "--disable-dev-shm-usage",
            "--disable-sync",
            // Text is drawn alike on every computer, so that pictures of the page can be compared.
            "--disable-lcd-text",
            "--font-render-hinting=none",
            "--force-color-profile=srgb",
            "--hide-scrollbars",
            "--no-first-run",
            "--password-store=basic",
        ];
        if is_root() {
            // Chromium's sandbox refuses to run for root.
            arguments.push("--no-sandbox");
        }
        json!({
            "goog:chromeOptions": { "binary": self.browser, "args": arguments },
            "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
            // Milliseconds: a measurement answers dozens of orders in one script.
            "timeouts": { "script": 300_000 }
        })
    }
}
