//! Sentences of the Diagnosis screen: what is seen, causes, what to do next, tests that tell causes apart.

use super::language::in_language;
use super::{Quantity, Voice};
use crate::diagnosis::{CauseKind, Defect, DiagnosticTest};

/// A sentence of the Diagnosis screen. Chances come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum DiagnosisPhrase {
    Title,
    WhatIsSeen,
    HowItWasRun,
    LeaveEmpty,
    Causes,
    TapFirst,
    NoPlan,
    MendFirst,
    Compare { planned: String, ran: String },
    Same { planned: String },
    Share { chance: String },
    DoNext,
    TellApart,
    Prior,
}

impl Voice {
    /// What is seen on the print, as the words on its button.
    #[must_use]
    pub fn seen(self, seen: Defect) -> &'static str {
        in_language!(self.language, diagnosis::seen(seen))
    }

    /// A cause as a sentence, with its numbers.
    #[must_use]
    pub fn cause(self, what: CauseKind) -> String {
        let [planned, ran] = self.ends(what);
        in_language!(self.language, diagnosis::cause(what, &planned, &ran))
    }

    /// What to do about a cause of what is seen.
    #[must_use]
    pub fn remedy(self, what: CauseKind, seen: Defect) -> String {
        let [planned, _] = self.ends(what);
        in_language!(self.language, diagnosis::remedy(what, seen, &planned))
    }

    /// The test that tells a cause from the others.
    #[must_use]
    pub fn test(self, test: DiagnosticTest) -> &'static str {
        in_language!(self.language, diagnosis::test(test))
    }

    /// Planned and run value of a cause that has them; two empty texts for any other cause.
    fn ends(self, what: CauseKind) -> [String; 2] {
        let (quantity, ends) = match what {
            CauseKind::Heat { planned, ran } => (Quantity::Temperature, [planned, ran]),
            CauseKind::Belt { planned, ran } => (Quantity::Belt, [planned, ran]),
            CauseKind::Film { planned, ran } => (Quantity::Film, [planned, ran]),
            _ => return [String::new(), String::new()],
        };
        ends.map(|value| self.quantity(quantity, value))
    }
}
