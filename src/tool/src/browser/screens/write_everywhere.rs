//! Writing into every field of a screen at once, to see what a field does with it.

use super::{DeskPage, parts};
use anyhow::{Context, Result};
use serde_json::json;

/// Which fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// All of the screen.
    Screen,
    /// The form of a record.
    RecordForm,
}

/// What became of a text that was written everywhere.
#[derive(Clone, Debug)]
pub struct Written {
    /// The fields, by their ids.
    pub fields: Vec<String>,
    /// Fields for numbers that hold the text and are not marked as wrong.
    pub unmarked_numbers: Vec<String>,
    /// Elements that only a text taken for markup can have made.
    pub markup: u64,
}

/// Writes a text into every field of a part of the screen, folds opened, and looks at them a quarter of a second later.
const WRITE: &str = "const [text, scope, fold] = arguments;
    for (const part of all(fold)) part.open = true;
    const fields = all('input:not([type=file], [type=range], [type=date]), textarea').filter((it) => it.closest(scope));
    for (const field of fields) {
        write(field, text);
        field.dispatchEvent(new Event('blur'));
    }
    await new Promise((then) => setTimeout(then, 250));
    const unmarked = fields.filter((it) => it.isConnected && ['decimal', 'numeric'].includes(it.inputMode)
        && it.value === text && it.getAttribute('aria-invalid') !== 'true');
    const ids = (list) => list.map((it) => it.id);
    return [ids(fields), ids(unmarked), markup()];";

impl DeskPage {
    /// Writes a text into every field.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn write_everywhere(&self, scope: Scope, text: &str) -> Result<Written> {
        let scope = match scope {
            Scope::Screen => parts::MAIN,
            Scope::RecordForm => parts::FORM,
        };
        let arguments = vec![json!(text), json!(scope.css), json!(parts::FOLD.css)];
        let (fields, unmarked_numbers, markup) = serde_json::from_value(self.run(WRITE, arguments).await?)?;
        Ok(Written { fields, unmarked_numbers, markup })
    }

    /// How many elements there are that only a text taken for markup can have made.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn markup_from_input(&self) -> Result<u64> {
        self.run("return markup()", vec![]).await?.as_u64().context("no count")
    }
}
