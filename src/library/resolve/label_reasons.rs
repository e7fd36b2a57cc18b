//! What a label was understood to say, as reasons that `wording` turns into sentences.

use crate::plan::{Code, Reason};
use crate::quantity::Percent;
use crate::textile::label::{LabelNote, LabelReading};

/// The shares of the label, one by one, and what the reader made of the rest.
pub(super) fn shares_read(reading: &LabelReading) -> Vec<Reason> {
    let mut understood = Vec::new();
    for section in std::iter::once(&reading.body).chain(&reading.parts) {
        for (fibre, percent) in &section.shares {
            let reason = Reason::new(Code::ReadShare)
                .word("fibre", kebab(fibre))
                .percent("percent", Percent(*percent))
                .word("section", &section.name);
            understood.push(reason);
        }
    }
    understood.extend(reading.notes.iter().map(note));
    understood
}

fn note(note: &LabelNote) -> Reason {
    let said = |what: &str| Reason::new(Code::LabelNote).word("note", what);
    match note {
        LabelNote::AssumedWhole { fibre } => said("assumed-whole").word("fibre", kebab(fibre)),
        LabelNote::Assumed { word, fibre } => said("assumed").word("words", word).word("fibre", kebab(fibre)),
        LabelNote::Ask { word, fibre, .. } => said("ask").word("words", word).word("fibre", kebab(fibre)),
        LabelNote::ReadAs { word, fibre } => said("read-as").word("words", word).word("fibre", kebab(fibre)),
        LabelNote::AssumedShares { word, shares } => {
            let list: Vec<String> =
                shares.iter().map(|(fibre, share)| format!("{share} % {}", kebab(fibre))).collect();
            said("assumed-shares").word("words", word).word("shares", list.join(", "))
        }
        LabelNote::OtherFibres { percent, section } => {
            said("other-fibres").percent("percent", Percent(*percent)).word("section", section)
        }
        LabelNote::Rounded { sum, section } => {
            said("rounded").percent("percent", Percent(*sum)).word("section", section)
        }
        LabelNote::Dropped { word } => said("dropped").word("words", word),
        LabelNote::Excludes { text } => said("excludes").word("words", text),
        LabelNote::LeftOut { text } => Reason::new(Code::LeftOut).word("words", text),
    }
}

/// The name of an enum's variant as JSON has it.
pub(super) fn kebab<T: serde::Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(word)) => word,
        _ => String::new(),
    }
}
