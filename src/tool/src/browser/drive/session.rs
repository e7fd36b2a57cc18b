//! One browser as WebDriver drives it: its tabs, its scripts, a finger and a keyboard.

use anyhow::{Context, Result, bail};
use fantoccini::Client;
use fantoccini::wd::WebDriverCompatibleCommand;
use hyper::Method;
use serde_json::{Value, json};
use std::time::Duration;
use url::Url;

/// The browser engine, where touch, typing and the console depend on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium: its driver hands on its own protocol too.
    Chromium,
    /// Firefox, by [`marionette`](super::marionette).
    Firefox,
    /// WebKitGTK: its driver knows no touch and hands out no console.
    WebKit,
}

/// A browser that its driver has started, with one or more tabs.
pub struct Session {
    client: Client,
    pub(super) engine: Engine,
}

impl Session {
    /// A browser that its driver has just started.
    #[must_use]
    pub fn new(client: Client, engine: Engine) -> Self {
        Self { client, engine }
    }

    /// Opens an address in this tab.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the browser cannot open it.
    pub async fn open(&self, address: &str) -> Result<()> {
        self.client.goto(address).await.with_context(|| format!("{address} could not be opened"))?;
        self.listen().await
    }

    /// Loads the page again.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn reload(&self) -> Result<()> {
        self.client.refresh().await?;
        self.listen().await
    }

    /// Opens another tab beside this one and turns to it.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Session::open`].
    pub async fn open_tab(&self, address: &str) -> Result<()> {
        let tab = self.client.new_window(true).await?;
        self.client.switch_to_window(tab.handle).await?;
        self.open(address).await
    }

    /// Turns to the tab of this number, from 0, in the order in which they were opened.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no such tab.
    pub async fn turn_to_tab(&self, number: usize) -> Result<()> {
        let tab = self.client.windows().await?.into_iter().nth(number).context("there is no such tab")?;
        Ok(self.client.switch_to_window(tab).await?)
    }

    /// Turns to the page inside the first frame of this one.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the page has no frame.
    pub async fn enter_frame(&self) -> Result<()> {
        Ok(self.client.enter_frame(0).await?)
    }

    /// Runs a script in the page and hands back what it returns; a promise is waited for.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script throws.
    pub async fn run(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        Ok(self.client.execute(script, arguments).await?)
    }

    /// Makes the window this large; the page is smaller by the window's frame.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn size_window(&self, width: u32, height: u32) -> Result<()> {
        // The client's own command takes no answer with a place left of the screen, and WebKitGTK may put its window there.
        self.send("window/rect", json!({ "width": width, "height": height })).await?;
        Ok(())
    }

    /// Taps a place of the page, CSS pixels from its upper left corner, with a finger (WebKitGTK: with a mouse).
    ///
    /// # Errors
    /// [`anyhow::Error`] if the place is outside the window.
    pub async fn tap(&self, x: f64, y: f64) -> Result<()> {
        let pointer = if self.engine == Engine::WebKit { "mouse" } else { "touch" };
        let actions = json!([
            { "type": "pointerMove", "duration": 0, "x": x.floor(), "y": y.floor() },
            { "type": "pointerDown", "button": 0 },
            { "type": "pointerUp", "button": 0 }
        ]);
        let hand = json!({ "type": "pointer", "id": "hand", "parameters": { "pointerType": pointer }, "actions": actions });
        self.send("actions", json!({ "actions": [hand] })).await?;
        Ok(())
    }

    /// Types into whatever has the focus.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn type_text(&self, text: &str) -> Result<()> {
        if self.engine == Engine::Chromium {
            self.devtools("Input.insertText", json!({ "text": text })).await?;
            return Ok(());
        }
        let keys = text.chars().flat_map(|key| {
            ["keyDown", "keyUp"].map(|kind| json!({ "type": kind, "value": key.to_string() }))
        });
        let hand = json!({ "type": "key", "id": "keys", "actions": keys.collect::<Vec<_>>() });
        self.send("actions", json!({ "actions": [hand] })).await?;
        Ok(())
    }

    /// What is on the screen, as a PNG.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn screenshot(&self) -> Result<Vec<u8>> {
        Ok(self.client.screenshot().await?)
    }

    /// Ends the browser's program at once, as a power cut does. Only the driver's own browser is ended, by its process id.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver does not name the process, or it cannot be ended.
    pub async fn kill(self) -> Result<()> {
        let process = self
            .client
            .capabilities()
            .and_then(|capabilities| capabilities.get("goog:processID"))
            .and_then(Value::as_u64)
            .context("the driver does not say which program the browser is")?;
        let (killer, options): (_, &[&str]) =
            if cfg!(windows) { ("taskkill", &["/F", "/PID"]) } else { ("kill", &["-KILL"]) };
        let killed = std::process::Command::new(killer).args(options).arg(process.to_string()).output()?;
        if !killed.status.success() {
            bail!("the browser {process} could not be ended");
        }
        // The driver has nothing left to close and says so.
        let _ = tokio::time::timeout(Duration::from_secs(5), self.client.close()).await;
        Ok(())
    }

    /// Closes the browser.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn close(self) -> Result<()> {
        Ok(self.client.close().await?)
    }

    /// A command of Chromium's own protocol, for what WebDriver cannot do.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the browser is another, or refuses.
    pub async fn devtools(&self, command: &str, parameters: Value) -> Result<Value> {
        self.send("goog/cdp/execute", json!({ "cmd": command, "params": parameters })).await
    }

    pub(super) async fn send(&self, endpoint: &'static str, body: Value) -> Result<Value> {
        Ok(self.client.issue_cmd(Extension { endpoint, body }).await?)
    }
}

/// A command of WebDriver as it is sent, or one that a driver adds to it.
#[derive(Debug)]
struct Extension {
    endpoint: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Extension {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, url::ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.endpoint))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}
