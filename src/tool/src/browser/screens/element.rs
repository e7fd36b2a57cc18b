//! One part of the page, as a person reads it and touches it.

use super::DeskPage;
use super::parts::Part;
use crate::browser::drive::patience::{PATIENCE, until};
use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use std::path::Path;
use std::time::Duration;

/// A part of the page, looked for anew at every call: it may be drawn only later.
#[derive(Clone, Debug)]
pub struct Element<'a> {
    desk: &'a DeskPage,
    css: &'static str,
    words: String,
    place: i64,
}

impl<'a> Element<'a> {
    pub(super) fn new(desk: &'a DeskPage, part: Part) -> Self {
        Self { desk, css: part.css, words: part.words.to_owned(), place: 0 }
    }

    /// The one among them whose name begins with these words.
    #[must_use]
    pub fn named(mut self, words: &str) -> Self {
        self.words = words.to_owned();
        self
    }

    /// The one at this place among them, from 0; -1 is the last.
    #[must_use]
    pub fn nth(mut self, place: i64) -> Self {
        self.place = place;
        self
    }

    /// Its text as a person reads it who scrolls to all of it; nothing if it is not seen.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn text(&self) -> Result<Option<String>> {
        let script = "const it = find(arguments[0]);
            return it?.checkVisibility() ? laidOut(() => it.innerText.trim()) : null;";
        Ok(self.run(script, vec![]).await?.as_str().map(str::to_owned))
    }

    /// Whether it is seen now.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn is_seen(&self) -> Result<bool> {
        Ok(self.text().await?.is_some())
    }

    /// Waits until it is seen with some text, and reads it.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not seen in time.
    pub async fn read(&self) -> Result<String> {
        let read = until(self.to_string(), PATIENCE, async || {
            Ok(self.text().await?.filter(|text| !text.is_empty()))
        });
        match read.await {
            Ok(text) => Ok(text),
            Err(error) => Err(error.context(self.desk.what_is_seen().await?)),
        }
    }

    /// Waits until its text holds these words.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it does not say so in time; the message holds what it says instead.
    pub async fn says(&self, words: &str) -> Result<()> {
        let said = until(format!("{self} should say `{words}`"), PATIENCE, async || {
            Ok(self.text().await?.filter(|text| text.contains(words)))
        });
        match said.await {
            Ok(_) => Ok(()),
            Err(error) => {
                let text = self.text().await?.unwrap_or_default();
                Err(error.context(format!("it says `{text}`. {}", self.desk.what_is_seen().await?)))
            }
        }
    }

    /// Waits until it is seen, scrolls to it and taps its middle.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not seen in time.
    pub async fn tap(&self) -> Result<()> {
        let (x, y) = self.middle().await?;
        self.desk.session.tap(x, y).await
    }

    /// Where its middle is on the screen, once it has come to rest there.
    async fn middle(&self) -> Result<(f64, f64)> {
        let script = "const it = find(arguments[0]);
            if (!it?.checkVisibility()) return null;
            it.scrollIntoView({ block: 'center' });
            const box = it.getBoundingClientRect();
            return [box.x + box.width / 2, box.y + box.height / 2];";
        let seen = until(format!("{self} cannot be tapped"), PATIENCE, async || {
            // What comes into view is only then laid out, and may move what was scrolled to.
            let before = self.run(script, vec![]).await?;
            tokio::time::sleep(Duration::from_millis(40)).await;
            Ok(self
                .run(script, vec![])
                .await?
                .as_array()
                .filter(|it| Some(*it) == before.as_array())
                .cloned())
        });
        match seen.await.as_deref() {
            Ok([x, y]) => Ok((x.as_f64().context("no x")?, y.as_f64().context("no y")?)),
            Ok(other) => anyhow::bail!("{self} is at {other:?}"),
            Err(error) => anyhow::bail!("{error:#}. {}", self.desk.what_is_seen().await?),
        }
    }

    /// Taps it, selects what is in it and types a text in its place.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Element::tap`].
    pub async fn fill(&self, text: &str) -> Result<()> {
        self.tap().await?;
        self.run("find(arguments[0]).select?.()", vec![]).await?;
        self.desk.session.type_text(text).await
    }

    /// Writes a text into it without the keyboard, as a script of the browser does that fills forms: also an empty one, and
    /// one with letters that no keyboard has.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it does not take the text.
    pub async fn write(&self, text: &str) -> Result<()> {
        let script = "const it = find(arguments[0]); it.closest('details')?.setAttribute('open', ''); write(it, arguments[1]); return it.value;";
        let holds = self.run(script, vec![json!(text)]).await?;
        ensure!(holds == text, "{self} took {holds} for {text}");
        Ok(())
    }

    /// Chooses a file for it.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is no field for files, or the browser is not Chromium.
    pub async fn choose_file(&self, file: &Path) -> Result<()> {
        let expression = self.desk.script(&format!("return find({});", self.part()));
        let expression = format!("(() => {{ {expression} }})()");
        let found = self
            .desk
            .session
            .devtools("Runtime.evaluate", json!({ "expression": expression, "awaitPromise": true }))
            .await?;
        let wish = json!({ "files": [file.display().to_string()], "objectId": found["result"]["objectId"] });
        self.desk.session.devtools("DOM.setFileInputFiles", wish).await.with_context(|| self.to_string())?;
        Ok(())
    }

    /// Opens the fold that it is in.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is in none.
    pub async fn unfold(&self) -> Result<()> {
        self.fold(true).await
    }

    /// Opens or closes the fold that it is in.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is in none.
    pub async fn fold(&self, open: bool) -> Result<()> {
        let script = "const it = (await appears(arguments[0])).closest('details'); it.open = arguments[1];";
        self.run(script, vec![json!(open)]).await?;
        Ok(())
    }

    /// An attribute of it, if it has that.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not there.
    pub async fn attribute(&self, name: &str) -> Result<Option<String>> {
        let value =
            self.run("return find(arguments[0]).getAttribute(arguments[1])", vec![json!(name)]).await?;
        Ok(value.as_str().map(str::to_owned))
    }

    /// Whether it is a button that is pressed down.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not there.
    pub async fn is_pressed(&self) -> Result<bool> {
        Ok(self.attribute("aria-pressed").await?.as_deref() == Some("true"))
    }

    /// How many there are.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn count(&self) -> Result<u64> {
        self.run("return every(arguments[0]).length", vec![]).await?.as_u64().context("no count")
    }

    /// Its box on the screen, scrolled into view: left, top, width, height, CSS pixels.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not there.
    pub async fn bounds(&self) -> Result<[f64; 4]> {
        let script = "const box = find(arguments[0]).getBoundingClientRect();
            return [box.x, box.y, box.width, box.height];";
        Ok(serde_json::from_value(self.run(script, vec![]).await?)?)
    }

    /// Scrolls it into the middle of the screen.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not there.
    pub async fn scroll_to(&self) -> Result<()> {
        self.run("find(arguments[0]).scrollIntoView({ block: 'center' })", vec![]).await?;
        Ok(())
    }

    /// Runs a script whose first argument is this part.
    pub(super) async fn run(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        let mut all = vec![self.part()];
        all.extend(arguments);
        self.desk.run(script, all).await
    }

    fn part(&self) -> Value {
        json!({ "css": self.css, "words": self.words, "place": self.place })
    }
}

impl std::fmt::Display for Element<'_> {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.words.as_str() {
            "" => write!(out, "`{}`", self.css),
            words => write!(out, "`{words}` among `{}`", self.css),
        }
    }
}
