//! Scripts that run in the page.

use super::DeskPage;
use super::parts;
use crate::browser::drive::patience::until;
use anyhow::{Result, bail};
use serde_json::Value;
use std::time::Duration;

/// What every script can use.
const PRELUDE: &str = include_str!("page.js");

impl DeskPage {
    /// Runs a script that may use whatever `page.js` offers, may wait, and hands back what it returns.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script throws.
    pub async fn run(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        self.session.run(&self.script(script), arguments).await
    }

    /// Starts a script that goes on by itself. What it hands to `report` can be looked at with [`DeskPage::reported`].
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script cannot be started.
    pub async fn start_script(&self, script: &str, arguments: Vec<Value>) -> Result<()> {
        let script = format!(
            "const report = (value) => {{ window.reported = value; }};
             report(null);
             (async () => {{ {script} }})().catch((error) => report(String(error)));"
        );
        self.run(&script, arguments).await.map(drop)
    }

    /// What a started script reported last.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the page is gone.
    pub async fn reported(&self) -> Result<Value> {
        self.session.run("return window.reported", vec![]).await
    }

    /// Waits until a started script has reported this value.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it reports an error instead, or does not come to it in time.
    pub async fn reports(&self, value: &Value, patience: Duration) -> Result<()> {
        let reported = until(format!("the page reports {value}"), patience, async || {
            let reported = self.reported().await?;
            if reported.is_string() && reported != *value {
                bail!("in the page: {reported}");
            }
            Ok((reported == *value).then_some(()))
        });
        reported.await
    }

    pub(super) fn script(&self, body: &str) -> String {
        let parts = parts::of_scripts();
        format!("const PARTS = {parts};\n{PRELUDE}\nreturn (async () => {{ {body} }})();")
    }

    /// What a person would see, for a message.
    pub(super) async fn what_is_seen(&self) -> Result<String> {
        let script = "return [document.body?.innerText, root && Array.from(root.children, (part) => part.innerText).join(' ')]
                .filter(Boolean).join(' | ').slice(0, 400);";
        let seen = self.run(script, vec![]).await?;
        Ok(format!("What is seen: `{}`", seen.as_str().unwrap_or_default().replace('\n', " ")))
    }
}
