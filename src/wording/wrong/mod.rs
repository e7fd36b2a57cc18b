//! Words of the screen that says what went wrong: what is seen, causes, what to do next, tests that tell causes apart.

mod en;
mod es;

use super::{Language, Quantity, Voice};
use crate::diagnosis::{Seen, Test, What};

/// A sentence of the screen; chances come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum Fault {
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
    /// A sentence of the screen.
    #[must_use]
    pub fn fault(self, fault: &Fault) -> String {
        match self.language {
            Language::En => en::fault(fault),
            Language::Es => es::fault(fault),
        }
    }

    /// What is seen, as a button.
    #[must_use]
    pub fn seen(self, seen: Seen) -> &'static str {
        match self.language {
            Language::En => en::seen(seen),
            Language::Es => es::seen(seen),
        }
    }

    /// A cause as a sentence, with its numbers.
    #[must_use]
    pub fn cause(self, what: What) -> String {
        let [planned, ran] = self.ends(what);
        match self.language {
            Language::En => en::cause(what, &planned, &ran),
            Language::Es => es::cause(what, &planned, &ran),
        }
    }

    /// What to do about a cause of what is seen.
    #[must_use]
    pub fn remedy(self, what: What, seen: Seen) -> String {
        let [planned, _] = self.ends(what);
        match self.language {
            Language::En => en::remedy(what, seen, &planned),
            Language::Es => es::remedy(what, seen, &planned),
        }
    }

    /// The test that tells a cause from the others.
    #[must_use]
    pub fn test(self, test: Test) -> &'static str {
        match self.language {
            Language::En => en::test(test),
            Language::Es => es::test(test),
        }
    }

    /// Planned and run value of a cause that has them.
    fn ends(self, what: What) -> [String; 2] {
        let (quantity, ends) = match what {
            What::Heat { planned, ran } => (Quantity::Temperature, [planned, ran]),
            What::Belt { planned, ran } => (Quantity::Belt, [planned, ran]),
            What::Film { planned, ran } => (Quantity::Film, [planned, ran]),
            _ => return [String::new(), String::new()],
        };
        ends.map(|value| self.quantity(quantity, value))
    }
}
