//! A tablet as a story describes it: its size, how it is held, its colours, what its browser lacks.

use crate::browser::drive::built_page::BuiltPage;
use crate::browser::drive::chromedriver::ChromeDriver;
use crate::browser::drive::session::{Engine, Session};
use crate::browser::screens::DeskPage;
use anyhow::{Context, Result};
use fantoccini::ClientBuilder;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Map, Value, json};
use std::path::{Path, PathBuf};

/// A tablet that has not opened anything yet.
#[derive(Clone)]
pub struct Tablet<'a> {
    driver: &'a ChromeDriver,
    page: &'a BuiltPage,
    width: u32,
    height: u32,
    dark: bool,
    before: String,
    profile: Option<PathBuf>,
}

impl<'a> Tablet<'a> {
    /// 1280 by 800, in light colours.
    #[must_use]
    pub fn new(driver: &'a ChromeDriver, page: &'a BuiltPage) -> Self {
        Self { driver, page, width: 1280, height: 800, dark: false, before: String::new(), profile: None }
    }

    /// Held in portrait.
    #[must_use]
    pub fn portrait(self) -> Self {
        self.sized(800, 1280)
    }

    /// Of another size, in CSS pixels.
    #[must_use]
    pub fn sized(mut self, width: u32, height: u32) -> Self {
        (self.width, self.height) = (width, height);
        self
    }

    /// Set to dark colours.
    #[must_use]
    pub fn dark(mut self) -> Self {
        self.dark = true;
        self
    }

    /// With a browser that lacks something, or does something otherwise: the script runs before the page's own.
    #[must_use]
    pub fn changed_by(mut self, script: &str) -> Self {
        self.before += script;
        self
    }

    /// With a browser that keeps its data in this folder, so that one that is started again finds it.
    #[must_use]
    pub fn with_profile(mut self, profile: &Path) -> Self {
        self.profile = Some(profile.to_owned());
        self
    }

    /// Opens the one file, as from a stick, and waits for its first answer.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Tablet::open`], and if no answer comes.
    pub async fn open_file(self) -> Result<DeskPage> {
        let address = self.page.file()?;
        self.open_desk(&address).await
    }

    /// Opens the page that the shop's web server hands out, and waits for its first answer.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Tablet::open`], and if no answer comes.
    pub async fn open_site(self) -> Result<DeskPage> {
        let address = self.page.site("");
        self.open_desk(&address).await
    }

    /// Opens the desk at an address and waits for its first answer.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Tablet::open`], and if no answer comes.
    pub async fn open_desk(self, address: &str) -> Result<DeskPage> {
        let desk = self.open(address).await?;
        desk.job().verdict().read().await?;
        Ok(desk)
    }

    /// Opens any address.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Tablet::start`], and if the address cannot be opened.
    pub async fn open(self, address: &str) -> Result<DeskPage> {
        let desk = self.start().await?;
        desk.session().open(address).await?;
        Ok(desk)
    }

    /// Starts the browser, with nothing in it.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver cannot start it.
    pub async fn start(self) -> Result<DeskPage> {
        let mut wishes = match self.driver.chromium.capabilities() {
            Value::Object(wishes) => wishes,
            _ => Map::new(),
        };
        if let Some(profile) = &self.profile
            && let Some(arguments) = wishes
                .get_mut("goog:chromeOptions")
                .and_then(|options| options.get_mut("args"))
                .and_then(Value::as_array_mut)
        {
            arguments.push(json!(format!("--user-data-dir={}", profile.display())));
        }
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(wishes)
            .connect(&self.driver.address())
            .await
            .context("the driver could not start Chromium; are both of the same version?")?;
        let session = Session::new(client, Engine::Chromium);
        self.apply_to(&session).await?;
        if !self.before.is_empty() {
            let script = json!({ "source": self.before });
            session.devtools("Page.addScriptToEvaluateOnNewDocument", script).await?;
        }
        Ok(DeskPage::new(session))
    }

    /// Makes an open page as large as this tablet, in its colours.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the browser is not Chromium.
    pub async fn apply_to(&self, session: &Session) -> Result<()> {
        let size =
            json!({ "width": self.width, "height": self.height, "deviceScaleFactor": 1, "mobile": false });
        session.devtools("Emulation.setDeviceMetricsOverride", size).await?;
        let scheme = if self.dark { "dark" } else { "light" };
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        session.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await?;
        Ok(())
    }
}
