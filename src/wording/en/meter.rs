//! Problems and decisions in reading a colour meter's file.

use crate::optics::meter::{MeterError, MeterNote, MeterProblem};
use crate::wording::{Quantity, Voice};

pub(in crate::wording) fn error(error: &MeterError, voice: Voice) -> String {
    let MeterError { line, column, .. } = error;
    format!("Line {line}, column {column}. {}", problem(error, voice))
}

fn problem(error: &MeterError, voice: Voice) -> String {
    use MeterProblem as P;
    let nm = |value: f64| voice.bare(Quantity::Plain, value);
    match &error.problem {
        P::NoColours => {
            "No colours here. A column must be headed L*, a*, b*, or wavelengths like 380 … 730.".into()
        }
        P::NoSamples => "Headings, but no sample under them. Measure, then save again.".into(),
        P::Ragged { expected, found } => {
            format!("{found} fields, but {expected} headings. Save the file again from the meter.")
        }
        P::Missing { heading } => format!("{heading} is empty. Measure this sample again."),
        P::Value { heading, problem } => {
            format!("{heading}: {}", super::problem::problem(problem, &error.value, voice))
        }
        P::Count { keyword, stated, found } => {
            format!("{keyword} says {stated}, the file holds {found}: it may be cut short. Save it again.")
        }
        P::Unfinished { keyword } => format!("{keyword} is missing: the file is cut short. Save it again."),
        P::OpenQuote => "A quotation mark is not closed on this line. Close it.".into(),
        P::Twice { heading } => format!("{heading} stands twice. Keep one."),
        P::UnevenWavelengths => "The wavelengths do not rise in equal steps of 20 nm or less.".into(),
        P::ShortSpectrum { from, to } => {
            format!(
                "The spectrum runs from {} to {} nm. It must reach from 400 to 700 nm.",
                nm(*from),
                nm(*to)
            )
        }
        P::TooLong { max } => format!("Too long. {} MB are read.", max / 1_000_000),
    }
}

pub(in crate::wording) fn note(note: MeterNote) -> &'static str {
    match note {
        MeterNote::OtherViewing => {
            "These Lab are for another light or observer. Compare them only with each other."
        }
        MeterNote::ViewingNotStated => "Light and observer are not stated. Taken as D65 and 10°.",
        MeterNote::FromSpectra => "Lab computed from the spectra, for D65 and 10°.",
        MeterNote::TakenAsPercent => "Reflectances read as percent.",
        MeterNote::TakenAsFraction => "Reflectances read as fractions of 1.",
    }
}
