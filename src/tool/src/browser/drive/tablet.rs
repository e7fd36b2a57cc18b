//! A tablet as a story describes it: its size, how it is held, its colours, what its browser lacks.

use crate::browser::drive::built_page::BuiltPage;
use crate::browser::drive::chromedriver::ChromeDriver;
use crate::browser::drive::session::Desk;
use anyhow::{Context, Result};
use fantoccini::ClientBuilder;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::json;
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
    pub fn new(driver: &'a ChromeDriver, page: &'a BuiltPage) -> Self {
        Self { driver, page, width: 1280, height: 800, dark: false, before: String::new(), profile: None }
    }

    /// Held upright.
    pub fn upright(self) -> Self {
        self.sized(800, 1280)
    }

    /// Of another size, in CSS pixels.
    pub fn sized(mut self, width: u32, height: u32) -> Self {
        (self.width, self.height) = (width, height);
        self
    }

    /// Set to dark colours.
    pub fn dark(mut self) -> Self {
        self.dark = true;
        self
    }

    /// With a browser that lacks something: the script takes it away before the page begins.
    pub fn without(mut self, script: &str) -> Self {
        self.before += script;
        self
    }

    /// With a browser that remembers in this folder, as one that is started again does.
    pub fn remembering(mut self, profile: &Path) -> Self {
        self.profile = Some(profile.to_owned());
        self
    }

    /// Opens the one file, as from a stick.
    pub async fn opens_the_file(self) -> Result<Desk> {
        let address = self.page.file()?;
        self.opens(&address).await
    }

    /// Opens the page that the shop's web server hands out.
    pub async fn opens_the_site(self) -> Result<Desk> {
        let address = self.page.site("");
        self.opens(&address).await
    }

    /// Opens any address.
    pub async fn opens(self, address: &str) -> Result<Desk> {
        let desk = self.is_switched_on().await?;
        desk.goes_to(address).await?;
        Ok(desk)
    }

    /// Starts the browser, with nothing in it.
    pub async fn is_switched_on(self) -> Result<Desk> {
        let mut wishes = match self.driver.chromium.capabilities() {
            serde_json::Value::Object(wishes) => wishes,
            _ => serde_json::Map::new(),
        };
        if let Some(profile) = &self.profile
            && let Some(arguments) = wishes
                .get_mut("goog:chromeOptions")
                .and_then(|options| options.get_mut("args"))
                .and_then(serde_json::Value::as_array_mut)
        {
            arguments.push(json!(format!("--user-data-dir={}", profile.display())));
        }
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(wishes)
            .connect(&self.driver.address())
            .await
            .context("the driver could not start Chromium; are both of the same version?")?;
        let desk = Desk::new(client);
        self.is_held_to(&desk).await?;
        if !self.before.is_empty() {
            desk.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": self.before })).await?;
        }
        Ok(desk)
    }

    /// Makes an open page as large as this tablet, in its colours.
    pub async fn is_held_to(&self, desk: &Desk) -> Result<()> {
        let size =
            json!({ "width": self.width, "height": self.height, "deviceScaleFactor": 1, "mobile": false });
        desk.devtools("Emulation.setDeviceMetricsOverride", size).await?;
        let scheme = if self.dark { "dark" } else { "light" };
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        desk.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await?;
        Ok(())
    }
}
