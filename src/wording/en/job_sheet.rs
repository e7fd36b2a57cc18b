//! The job sheet.

use crate::library::sheet_code::SheetCodeError;
use crate::wording::JobSheetPhrase;

pub(in crate::wording) fn phrase(phrase: &JobSheetPhrase) -> String {
    use JobSheetPhrase as P;
    match phrase {
        P::Sheet => "Job sheet".into(),
        P::Print => "Print".into(),
        P::OnePage => "One page, A4 or Letter, black only, both units.".into(),
        P::NothingYet => "No answer yet. The sheet prints what the Job screen answers.".into(),
        P::Refused => {
            "This order is refused, so there is nothing to run. The Job screen says what would change it."
                .into()
        }
        P::Photograph => "Photograph a sheet".into(),
        P::OpenPicture => "Open a picture of one".into(),
        P::ReadBack { title } => {
            format!("Read from the sheet: {title}. It is in the form; Undo takes it back.")
        }
        P::Unread(why) => unread(*why).into(),
        P::TooLong => "This order is too long for a code. Take it along as a file from the Library.".into(),
        P::Pieces { pieces, label } => format!("{pieces} pieces, {label}"),
        P::Lot { lot } => format!("lot {lot}"),
        P::Due { day } => format!("due {day}"),
        P::Under { what } => format!("under the print: {what}"),
        P::Hold { other, hold } => format!("{other}, hold ± {hold}"),
        P::Between { other, low, high } => format!("{other}, {low} to {high}"),
        P::ByHand { air, belt } => format!("Set by hand. The best point is {air} and {belt}."),
        P::Heated { passes, length } => format!("{passes}, {length} heated"),
        P::FilmPeak => "Film peaks at".into(),
        P::Underside { other } => format!("{other}, underside, by probe"),
        P::Colours { count: 1, low_cure } => format!("1 colour{}", cure(*low_cure)),
        P::Colours { count, low_cure } => format!("{count} colours{}", cure(*low_cure)),
        P::Limits => "Limits".into(),
        P::LookAgain => "Look again".into(),
        P::TrialDo { pieces, rest, hours, oven, other, mark, days } => format!(
            "{pieces} pieces at the setting above. Keep 1 cool and dark; the other {rest} face to face under a weight, {hours} h at {oven} ({other}), never hotter. Read each against the kept one in daylight. Pass: ΔE00 {mark} or less, or no tint that two people see. Stands for {days} days on a shelf."
        ),
        P::TrialLook { pieces, mark } => format!(
            "{pieces} pieces at the setting above. Look at each in daylight when cool. Pass: ΔE00 {mark} or less, or no tint that two people see."
        ),
        P::Piece => "Piece".into(),
        P::Kept => "kept".into(),
        P::Fresh => "fresh, ΔE00 or seen".into(),
        P::AfterOven => "after the oven".into(),
        P::Pass => "pass".into(),
        P::AllPass { pieces } => format!("All pass: run {pieces}."),
        P::OneTurns => "One turns: stop, note it in the Library, ask again.".into(),
        P::LookAfterOven => "read the trial".into(),
        P::LookBeforeShipping => "look at the two held pieces before they ship".into(),
        P::LookAfter { days } if days == "1" => "the kept piece, a day on".into(),
        P::LookAfter { days } => format!("the kept piece, {days} days on"),
        P::SetBy => "set by".into(),
        P::CheckedBy => "checked by".into(),
        P::DateTime => "date, time".into(),
        P::Measured { dryer, day } => format!("{dryer}, measured {day}"),
        P::NotMeasured { dryer } => format!("{dryer}, never measured"),
        P::Printed { day } => format!("printed {day}"),
        P::CodeTitle => "This order and its setting as a code".into(),
        P::Garment { number, white, dried, setting, verdict } => {
            let dried = if *dried { ", dried first" } else { "" };
            format!("Garment {number}: {white}{dried}, {setting}. {verdict}.")
        }
        P::LimitOf { likely, low, high, limit } => format!("{likely} ({low} to {high}), limit {limit}"),
    }
}

fn cure(low: bool) -> &'static str {
    if low { ", low-cure" } else { "" }
}

fn unread(why: SheetCodeError) -> &'static str {
    match why {
        SheetCodeError::NoPicture => {
            "The browser cannot open this picture. Take it as JPEG or PNG, or photograph the sheet here."
        }
        SheetCodeError::NoCode => {
            "No code is to be seen in this picture. Hold the tablet straight over the square, near enough to fill a third of the picture."
        }
        SheetCodeError::Damaged => {
            "There is a code, and too much of it cannot be read: bent, smeared, in shadow or cut off. Lay the sheet flat in even light and photograph it once more."
        }
        SheetCodeError::NotOurs => {
            "This code is not of a job sheet. Photograph the square at the foot of the sheet."
        }
        SheetCodeError::Newer => {
            "A newer Whitehold printed this sheet. Open the newer page and read it there."
        }
    }
}
