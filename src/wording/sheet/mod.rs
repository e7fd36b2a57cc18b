//! Words of the job sheet: what is printed for the press, and what is said of a code that was read back.

mod en;
mod es;

use super::{Language, Voice};
use crate::library::sheet_code::SheetCodeError;

/// A word or sentence of the job sheet; numbers and names come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum Paper {
    Sheet,
    Print,
    OnePage,
    NothingYet,
    Refused,
    Photograph,
    OpenPicture,
    ReadBack { title: String },
    SheetCodeError(SheetCodeError),
    TooLong,
    Pieces { pieces: String, label: String },
    Lot { lot: String },
    Due { day: String },
    Hold { other: String, hold: String },
    Between { other: String, low: String, high: String },
    ByHand { air: String, belt: String },
    Heated { passes: String, length: String },
    FilmPeak,
    Underside { other: String },
    Colours { count: u32, low_cure: bool },
    Limits,
    LookAgain,
    TrialDo { pieces: u32, rest: u32, hours: String, oven: String, other: String, mark: String, days: String },
    TrialLook { pieces: u32, mark: String },
    Piece,
    Kept,
    Fresh,
    AfterOven,
    Pass,
    AllPass { pieces: String },
    OneTurns,
    LookAfterOven,
    LookBeforeShipping,
    LookAfter { days: String },
    SetBy,
    CheckedBy,
    DateTime,
    Measured { dryer: String, day: String },
    NotMeasured { dryer: String },
    Printed { day: String },
    CodeTitle,
    Garment { number: usize, white: String, dried: bool, setting: String, verdict: String },
    LimitOf { likely: String, low: String, high: String, limit: String },
}

impl Voice {
    /// Words of the job sheet.
    #[must_use]
    pub fn paper(self, paper: &Paper) -> String {
        match self.language {
            Language::En => en::paper(paper),
            Language::Es => es::paper(paper),
        }
    }
}
