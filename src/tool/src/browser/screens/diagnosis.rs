//! What went wrong with a print.

use super::{DeskPage, Element, parts};

/// What went wrong with a print.
#[derive(Clone, Copy, Debug)]
pub struct DiagnosisPage<'a>(pub(super) &'a DeskPage);

impl<'a> DiagnosisPage<'a> {
    elements! {
        /// What can be seen on a print, one button each.
        seen => SEEN_CHOICE;
        /// The causes, or what is needed to name them.
        says => CAUSES;
        /// The causes, the likeliest first.
        causes => CAUSE;
        /// How often it shows as planned and as run.
        compared => COMPARED;
        /// The temperature that the dryer was set to.
        run_temperature => RUN_TEMPERATURE;
        /// What is wrong with that.
        run_temperature_error => RUN_TEMPERATURE_ERROR;
        /// The belt speed that was run.
        run_belt => RUN_BELT;
    }

    /// The white that has turned, the first of what can be seen.
    #[must_use]
    pub fn white_turned(self) -> Element<'a> {
        self.0.element(parts::SEEN_CHOICE)
    }
}
