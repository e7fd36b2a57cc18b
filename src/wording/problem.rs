//! What is wrong with a field of the form, or with the browser's store, and what to do.

use super::Voice;
use super::language::in_language;
use crate::library::storage_layout::Trouble;
use crate::quantity::FieldError;

impl Voice {
    /// What is wrong with a field, and what to do.
    #[must_use]
    pub fn problem(self, error: &FieldError) -> String {
        in_language!(self.language, problem::problem(&error.problem, &error.value, self))
    }

    /// What is wrong with the store, and what to do.
    #[must_use]
    pub fn trouble(self, trouble: &Trouble) -> String {
        in_language!(self.language, problem::trouble(trouble))
    }
}
