//! What a browser complains of, and what it asks the network for.

use super::session::{Engine, Session};
use anyhow::{Result, bail};
use serde_json::{Value, json};

/// Keeps what a page complains of, for WebKitGTK, whose driver cannot be asked. It begins once the page is loaded: what goes
/// wrong before that keeps the desk from opening, which every story sees.
const KEEP_COMPLAINTS: &str = "if (window.complaints) return;
    const complaints = window.complaints = [];
    addEventListener('error', (event) => complaints.push('error: ' + event.message));
    addEventListener('unhandledrejection', (event) => complaints.push('rejection: ' + event.reason));
    document.addEventListener('securitypolicyviolation', (event) => complaints.push('policy: ' + event.blockedURI));
    for (const level of ['error', 'warn', 'assert'])
        console[level] = (...words) => complaints.push(level + ': ' + words.join(' '));";

impl Session {
    /// Begins to keep the complaints of a page that was just loaded.
    pub(super) async fn listen(&self) -> Result<()> {
        if self.engine == Engine::WebKit {
            self.run(KEEP_COMPLAINTS, vec![]).await?;
        }
        Ok(())
    }

    /// Errors, warnings and breaches of the policy that the browser reported since it was last asked.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver hands out no log.
    pub async fn complaints(&self) -> Result<Vec<String>> {
        if self.engine == Engine::WebKit {
            return Ok(serde_json::from_value(
                self.run("return window.complaints.splice(0)", vec![]).await?,
            )?);
        }
        let log = self.log("browser").await?;
        let bad = log.iter().filter(|entry| entry["level"] == "SEVERE" || entry["level"] == "WARNING");
        Ok(bad.map(|entry| entry["message"].as_str().unwrap_or_default().to_owned()).collect())
    }

    /// The addresses that were requested since it was last asked, the page's own first.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver hands out no log.
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

    /// The entries of a log of the browser since it was last read.
    async fn log(&self, kind: &str) -> Result<Vec<Value>> {
        match self.send("se/log", json!({ "type": kind })).await? {
            Value::Array(entries) => Ok(entries),
            other => bail!("the log is no list: {other}"),
        }
    }
}
