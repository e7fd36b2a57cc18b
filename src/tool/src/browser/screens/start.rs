//! What the page says when it cannot start.

use super::{DeskPage, Element, parts};
use anyhow::Result;

/// The sections of the static page, of which the one is shown that applies.
#[derive(Clone, Copy, Debug)]
pub struct StartPage<'a>(pub(super) &'a DeskPage);

impl<'a> StartPage<'a> {
    elements! {
        /// All of the page, for pages that are no desk.
        page => BODY;
        /// What the page promises in any case.
        promise => PROMISE;
        /// What is said where scripts are switched off.
        no_scripts => NO_SCRIPT;
        /// The line that a failure left.
        failure_line => FAILURE_LINE;
        /// Starts again.
        start_again => START_AGAIN;
    }

    /// The section that says why, by its id.
    #[must_use]
    pub fn section(self, id: &str) -> Element<'a> {
        self.0.element(match id {
            "no-shadow" => parts::NO_SHADOW,
            "no-wasm" => parts::NO_WASM,
            "damaged" => parts::DAMAGED,
            _ => parts::BROKEN,
        })
    }

    /// The ids of all sections that are shown.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn shown_sections(self) -> Result<Vec<String>> {
        let shown =
            "return every(arguments[0]).filter((section) => !section.hidden).map((section) => section.id)";
        Ok(serde_json::from_value(self.0.element(parts::START_SECTION).run(shown, vec![]).await?)?)
    }
}
