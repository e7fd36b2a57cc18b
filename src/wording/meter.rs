//! What is wrong in a colour meter's file, and what its reader had to decide.

use super::Voice;
use super::language::in_language;
use crate::optics::meter::{MeterError, MeterNote};

impl Voice {
    /// Where a file cannot be read, why, and what to do.
    #[must_use]
    pub fn meter_problem(self, error: &MeterError) -> String {
        in_language!(self.language, meter::error(error, self))
    }

    /// What the reader of a meter's file had to decide.
    #[must_use]
    pub fn meter_note(self, note: MeterNote) -> &'static str {
        in_language!(self.language, meter::note(note))
    }
}
