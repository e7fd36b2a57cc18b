//! Reasons, cautions, questions and readings as sentences.

use super::language::in_language;
use super::{Facts, Voice};
use crate::plan::{Code, Reason, Report};

impl Voice {
    /// The sentence of a reason, caution, question or reading.
    #[must_use]
    pub fn reason(self, reason: &Reason) -> String {
        let facts = Facts { values: &reason.values, voice: self };
        in_language!(self.language, reason::reason(reason.code, facts))
    }

    /// The sentence for a bare code, as for a check on the first piece.
    #[must_use]
    pub fn code(self, code: Code) -> String {
        self.reason(&Reason::new(code))
    }
}

/// Writes the text of every reason in the report, in the language and units of `voice`.
pub fn fill(report: &mut Report, voice: impl Into<Voice>) {
    let voice = voice.into();
    let word = |reason: &mut Reason| reason.text = voice.reason(reason);
    for pick in report.picks.iter_mut().chain(report.closed.as_deref_mut()) {
        pick.reasons.iter_mut().for_each(word);
    }
    if let Some(whole) = &mut report.whole {
        word(&mut whole.say);
    }
    if let Some(trade) = &mut report.trade {
        trade.say.iter_mut().for_each(word);
    }
    for rejected in &mut report.rejected {
        rejected.reasons.iter_mut().for_each(word);
    }
    report.to_make_it_possible.iter_mut().for_each(word);
    report.cautions.iter_mut().for_each(word);
    report.understood.iter_mut().chain(report.understood_each.iter_mut().flatten()).for_each(word);
    report.unknowns.iter_mut().for_each(|unknown| word(&mut unknown.ask));
}

/// The first sentence of a text, its lead, and the rest. A text of one sentence has no lead.
#[must_use]
pub fn lead(text: &str) -> (&str, &str) {
    match text.find(". ") {
        Some(at) => (&text[..=at], text[at + 1..].trim_start()),
        None => ("", text),
    }
}
