//! The desk as a story sees it: what it shows, what can be tapped, what the browser complains of.

use anyhow::{Context, Result, bail};
use fantoccini::Client;
use fantoccini::wd::WebDriverCompatibleCommand;
use hyper::Method;
use serde_json::{Value, json};
use std::path::Path;
use std::time::{Duration, Instant};
use url::Url;

/// How long a story waits for the page to show something.
const PATIENCE: Duration = Duration::from_secs(15);

/// WasmSource an element of the page, or inside the desk's shadow root.
const FIND: &str = "const root = document.querySelector('whitehold-desk')?.shadowRoot;
    const found = root?.querySelector(arguments[0]) ?? document.querySelector(arguments[0]);";

/// What the page runs in, where a story's hand and ear depend on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium: its driver hands on its own protocol too.
    Chromium,
    /// Firefox, by [`marionette`](super::marionette).
    Firefox,
    /// WebKitGTK: its driver knows no finger and hands out no console.
    WebKit,
}

/// Hears what a page complains of where the driver cannot be asked. It begins once the page is loaded: what goes wrong
/// before that keeps the desk from opening, which every story sees.
const EAR: &str = "if (window.heard) return;
    const heard = window.heard = [];
    addEventListener('error', (event) => heard.push('error: ' + event.message));
    addEventListener('unhandledrejection', (event) => heard.push('rejection: ' + event.reason));
    document.addEventListener('securitypolicyviolation', (event) => heard.push('policy: ' + event.blockedURI));
    for (const level of ['error', 'warn', 'assert']) console[level] = (...said) => heard.push(level + ': ' + said.join(' '));";

/// An open page.
pub struct Desk {
    client: Client,
    engine: Engine,
}

impl Desk {
    /// A Chromium that the driver has just started.
    pub fn new(client: Client) -> Self {
        Self::in_engine(client, Engine::Chromium)
    }

    /// Any browser that its driver has just started.
    pub fn in_engine(client: Client, engine: Engine) -> Self {
        Self { client, engine }
    }

    /// Goes to an address; a part after `#` is a screen of the desk.
    pub async fn goes_to(&self, address: &str) -> Result<()> {
        self.client.goto(address).await.with_context(|| format!("{address} could not be opened"))?;
        self.listens().await
    }

    async fn listens(&self) -> Result<()> {
        if self.engine == Engine::WebKit {
            self.run(EAR, vec![]).await?;
        }
        Ok(())
    }

    /// Runs a script in the page and hands back its value.
    pub async fn run(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        Ok(self.client.execute(script, arguments).await?)
    }

    /// Runs a script that calls its last argument when it is done, and hands back what it was called with.
    pub async fn run_async(&self, script: &str) -> Result<Value> {
        Ok(self.client.execute_async(script, vec![]).await?)
    }

    /// The text of an element that is seen, as a person reads it who scrolls to all of it; nothing if there is none.
    pub async fn text(&self, selector: &str) -> Result<Option<String>> {
        let script = format!(
            "{FIND} if (!found?.checkVisibility()) return null;
            const left = [...found.getRootNode().querySelectorAll('.answer > *, .order > *')];
            for (const part of left) part.style.contentVisibility = 'visible';
            const text = found.innerText.trim();
            for (const part of left) part.style.contentVisibility = '';
            return text;"
        );
        Ok(self.run(&script, vec![json!(selector)]).await?.as_str().map(str::to_owned))
    }

    /// Waits until an element is seen and holds text.
    pub async fn shows(&self, selector: &str) -> Result<String> {
        let start = Instant::now();
        loop {
            match self.text(selector).await? {
                Some(text) if !text.is_empty() => return Ok(text),
                _ if start.elapsed() > PATIENCE => {
                    bail!("{selector} is not seen. {}", self.what_is_seen().await?)
                }
                _ => tokio::time::sleep(Duration::from_millis(50)).await,
            }
        }
    }

    /// Waits until an element is seen whose text holds these words.
    pub async fn says(&self, selector: &str, words: &str) -> Result<()> {
        let start = Instant::now();
        loop {
            let text = self.text(selector).await?.unwrap_or_default();
            if text.contains(words) {
                return Ok(());
            }
            if start.elapsed() > PATIENCE {
                bail!("{selector} should say `{words}`, and says `{text}`. {}", self.what_is_seen().await?);
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }

    /// Waits until everything is acknowledged by the disk.
    pub async fn is_saved(&self) -> Result<()> {
        let saved = format!("{FIND} return found?.dataset.saved;");
        let start = Instant::now();
        while self.run(&saved, vec![json!(".desk")]).await? != "true" {
            if start.elapsed() > PATIENCE {
                bail!("it is not saved. {}", self.what_is_seen().await?);
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(())
    }

    /// Waits until the desk is drawn and stays as it is for a moment.
    pub async fn settles(&self) -> Result<()> {
        let script =
            "const done = arguments[0]; const root = document.querySelector('whitehold-desk')?.shadowRoot;
            if (!root) return setTimeout(done, 500);
            let calm = setTimeout(done, 400);
            new MutationObserver(() => { clearTimeout(calm); calm = setTimeout(done, 400); })
                .observe(root, { subtree: true, childList: true, attributes: true, characterData: true });
            setTimeout(done, 8000);";
        self.client.execute_async(script, vec![]).await?;
        Ok(())
    }

    /// Taps an element, as a finger does.
    pub async fn taps(&self, selector: &str) -> Result<()> {
        let script = format!(
            "{FIND} if (!found?.checkVisibility()) return null; found.scrollIntoView({{ block: 'center' }});
            const box = found.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2];"
        );
        // What comes into view is only then laid out, and may move what was scrolled to.
        let mut place = self.run(&script, vec![json!(selector)]).await?;
        for _ in 0..20 {
            tokio::time::sleep(Duration::from_millis(40)).await;
            let before = std::mem::replace(&mut place, self.run(&script, vec![json!(selector)]).await?);
            if before == place {
                break;
            }
        }
        let (Some(x), Some(y)) = (place[0].as_f64(), place[1].as_f64()) else {
            bail!("{selector} cannot be tapped: it is not seen. {}", self.what_is_seen().await?);
        };
        let pointer = if self.engine == Engine::WebKit { "mouse" } else { "touch" };
        let acts = json!([
            { "type": "pointerMove", "duration": 0, "x": x.floor(), "y": y.floor() },
            { "type": "pointerDown", "button": 0 },
            { "type": "pointerUp", "button": 0 }
        ]);
        let hand = json!({ "type": "pointer", "id": "hand", "parameters": { "pointerType": pointer }, "actions": acts });
        self.send("actions", json!({ "actions": [hand] })).await?;
        Ok(())
    }

    /// Taps a field, empties it and types into it.
    pub async fn types(&self, selector: &str, text: &str) -> Result<()> {
        self.taps(selector).await?;
        self.run(&format!("{FIND} found.select?.();"), vec![json!(selector)]).await?;
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

    /// Fails when the browser reported an error or a breach of the policy since the page opened.
    pub async fn has_no_complaints(&self) -> Result<()> {
        let complaints: Vec<String> = if self.engine == Engine::WebKit {
            serde_json::from_value(self.run("return window.heard.splice(0)", vec![]).await?)?
        } else {
            let log = self.log("browser").await?;
            let bad = log.iter().filter(|entry| entry["level"] == "SEVERE" || entry["level"] == "WARNING");
            bad.map(|entry| entry["message"].as_str().unwrap_or_default().to_owned()).collect()
        };
        if complaints.is_empty() {
            return Ok(());
        }
        bail!("the browser complains:\n    {}", complaints.join("\n    "))
    }

    /// The addresses that were asked for since the page opened, the page's own first.
    pub async fn requests(&self) -> Result<Vec<String>> {
        let mut addresses = Vec::new();
        for entry in self.log("performance").await? {
            let message: Value = serde_json::from_str(entry["message"].as_str().unwrap_or_default())?;
            let event = &message["message"];
            if matches!(
                event["method"].as_str(),
                Some(
                    "Network.requestWillBeSent" | "Network.webSocketCreated" | "Network.webTransportCreated"
                )
            ) {
                let address = event["params"]["request"]["url"].as_str().or(event["params"]["url"].as_str());
                addresses.push(address.unwrap_or("unknown").to_owned());
            }
        }
        addresses.retain(|address| !address.starts_with("data:") && !address.starts_with("blob:"));
        Ok(addresses)
    }

    /// Takes a picture of what is on the screen.
    pub async fn picture(&self, path: &Path) -> Result<()> {
        crate::host::workspace::write(path, self.photograph().await?)
    }

    /// What is on the screen, as a PNG.
    pub async fn photograph(&self) -> Result<Vec<u8>> {
        Ok(self.client.screenshot().await?)
    }

    /// Opens another tab beside this one and turns to it.
    pub async fn opens_tab(&self, address: &str) -> Result<()> {
        let tab = self.client.new_window(true).await?;
        self.client.switch_to_window(tab.handle).await?;
        self.goes_to(address).await
    }

    /// Turns to the tab of this number, from 0, in the order in which they were opened.
    pub async fn turns_to(&self, number: usize) -> Result<()> {
        let tab = self.client.windows().await?.into_iter().nth(number).context("there is no such tab")?;
        Ok(self.client.switch_to_window(tab).await?)
    }

    /// Runs a script that ends by calling its last argument.
    pub async fn awaits(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        Ok(self.client.execute_async(script, arguments).await?)
    }

    /// Loads the page again.
    pub async fn reloads(&self) -> Result<()> {
        self.client.refresh().await?;
        self.listens().await
    }

    /// Ends the browser's program at once, as a power cut of the tablet does for it. Only the driver's own browser
    /// is meant, by the number it started with.
    pub async fn is_killed(self) -> Result<()> {
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
    pub async fn is_closed(self) -> Result<()> {
        Ok(self.client.close().await?)
    }

    /// A command of Chromium's own protocol, for what WebDriver cannot do.
    pub async fn devtools(&self, command: &str, parameters: Value) -> Result<Value> {
        self.send("goog/cdp/execute", json!({ "cmd": command, "params": parameters })).await
    }

    /// The entries of a log of the browser since it was last read.
    async fn log(&self, kind: &str) -> Result<Vec<Value>> {
        match self.send("se/log", json!({ "type": kind })).await? {
            Value::Array(entries) => Ok(entries),
            other => bail!("the log is no list: {other}"),
        }
    }

    async fn send(&self, endpoint: &'static str, body: Value) -> Result<Value> {
        Ok(self.client.issue_cmd(Extension { endpoint, body }).await?)
    }

    /// What a person would see, for a message.
    async fn what_is_seen(&self) -> Result<String> {
        let script = "const root = document.querySelector('whitehold-desk')?.shadowRoot;
            return [document.body?.innerText, root && Array.from(root.children, (part) => part.innerText).join(' ')]
                .filter(Boolean).join(' | ').slice(0, 400);";
        let seen = self.run(script, vec![]).await?;
        Ok(format!("What is seen: `{}`", seen.as_str().unwrap_or_default().replace('\n', " ")))
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
