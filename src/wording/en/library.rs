//! English words of the Library screen.

use crate::library::file::FileError;
use crate::wording::{LibraryLabel, LibraryPhrase};

pub(in crate::wording) fn label(label: LibraryLabel) -> &'static str {
    use LibraryLabel as W;
    match label {
        W::Library => "Library",
        W::Search => "Search fabrics, whites, lots",
        W::LookIn => "Look in",
        W::Fabrics => "Fabrics",
        W::Whites => "Whites",
        W::Lots => "Lots",
        W::Dryers => "Dryers, meshes",
        W::Orders => "Orders",
        W::Found => "Found",
        W::NearestFirst => "nearest first",
        W::NewCloth => "New cloth from its label",
        W::ImportFile => "Open a file",
        W::SaveFile => "Save the library as a file",
        W::SaveTables => "As a table for a spreadsheet",
        W::Yours => "yours",
        W::Ships => "built in",
        W::Removed => "taken out",
        W::Differs => "two tablets differ",
        W::WhatItHolds => "What it holds",
        W::WhatBelongs => "What belongs to it",
        W::WhatHappened => "What happened to this record",
        W::NothingHappened => "Nothing yet. It stands as it came with Whitehold.",
        W::BringBack => "Bring back",
        W::TakeOut => "Take out",
        W::PrintOnThis => "Print on this",
        W::OpenThis => "Print again",
        W::KeepCloth => "Keep the cloth of this order",
        W::KeepOrder => "Keep this order",
        W::ShowMore => "Show more",
        W::Close => "Close",
        W::Choose => "Two tablets wrote this without seeing each other. Which holds?",
        W::Made => "Written for the first time.",
        W::Copied => "Copied from the one that comes with Whitehold.",
        W::TakenOut => "Taken out.",
        W::Undone => "Undone since.",
        W::AsItIsNow => "as it is now",
        W::OnAnotherTablet => "on another tablet",
        W::Merge => "Merge",
        W::What => "What",
        W::ThisTablet => "This tablet",
        W::TheFile => "The file",
        W::Keep => "Keep",
        W::LeaveIt => "Leave it",
        W::NothingYet => "Nothing has changed yet. One Undo takes all of it back.",
        W::NothingToMerge => "All of it is here already.",
        W::TableOf => "Table",
        W::Row => "Row",
        W::FixRows => {
            "Nothing comes in while a row is wrong. Mend these rows in the spreadsheet and open the file again."
        }
        W::ApplyTable => "Bring these in",
        W::DraftFound => {
            "An order that was kept by an earlier Whitehold. It goes into the form; Undo takes it back."
        }
        W::OpenDraft => "Open it in the form",
        W::ReadOnly => {
            "A newer Whitehold wrote some of these records. They can be read and saved as a file, not changed. Open the newer page."
        }
        W::Understood => "Understood",
        W::EmptySay => {
            "That is all right. Type what its label says, and Whitehold works from the fibres. The first print will be a trial, because nobody has tried it here."
        }
        W::EmptyLibrary => {
            "Nothing of your own yet. What you keep from an order stands here, with everything that happened to it."
        }
        W::DropHere => "A library, a table of fabrics, whites or trials: drop it here or tap.",
        W::Stays => "stays",
        W::Goes => "goes",
        W::Nothing => "nothing",
        W::Yes => "yes",
        W::No => "no",
        W::NeverSaved => "never saved as a file",
        W::SaveNow => "Save it now",
        W::Edit => "Change",
        W::New => "New",
        W::KeepIt => "Keep it",
        W::NewWhite => "New white from its data sheet",
        W::NewDryer => "New dryer",
        W::NewMesh => "New mesh",
        W::NewTrial => "Note a trial",
        W::NewLot => "New lot",
        W::NewBatch => "New tub",
        W::NewReading => "Note a look",
        W::NewLook => "Look again on a day",
        W::NewCheck => "Check of today",
        W::NewProbeRun => "A probe rode through",
        W::OrderIsKept => "Kept in the library",
        W::Trials => "Trials",
        W::Files => "Take it away, bring it back",
        W::TapOne => "Tap one of them to see what it holds and what happened to it.",
        W::SaveItself => "Keep one file up to date",
        W::SavesItself => "One file is kept up to date",
    }
}

fn plural(count: &str, one: &str, many: &str) -> String {
    format!("{count} {}", if count == "1" { one } else { many })
}

fn days(days: i64) -> String {
    match days {
        0 => "today".into(),
        1 => "yesterday".into(),
        days => format!("{days} days ago"),
    }
}

pub(in crate::wording) fn phrase(phrase: &LibraryPhrase) -> String {
    use LibraryPhrase as T;
    match phrase {
        T::Records { count } => format!("{} on this tablet", plural(count, "record", "records")),
        T::SavedDaysAgo { days: ago } => format!("last file {}", days(*ago)),
        T::Unsaved { changes } => format!("{} since", plural(changes, "change", "changes")),
        T::Reminder { changes, days: None } => {
            format!(
                "{} in no file yet. A browser may clear a page's storage; a file is yours.",
                plural(changes, "change is", "changes are")
            )
        }
        T::Reminder { changes, days: Some(ago) } => format!(
            "{} since the last file, {}. A browser may clear a page's storage; a file is yours.",
            plural(changes, "change", "changes"),
            days(*ago)
        ),
        T::OfTotal { found, total } => format!("{found} of {total}"),
        T::LookFor { word, count } => format!("Look for “{word}” ({count})"),
        T::NoneCalled { asked } => format!("Nothing called “{asked}”"),
        T::LotsHere { lots: 1 } => "1 lot".into(),
        T::LotsHere { lots } => format!("{lots} lots"),
        T::Weight { gsm } => gsm.clone(),
        T::Changed { what, before, after } => format!("{what}: {before} → {after}."),
        T::MoreChanges { count } => format!("And {count} more."),
        T::FromFile { name } => format!("from {name}"),
        T::MergeFrom { name, saved } => format!("{name}, saved {saved}"),
        T::Same { count } => format!("{count} the same"),
        T::New { count } => format!("{count} new: come in"),
        T::Newer { count } => format!("{count} changed there"),
        T::ToChoose { count } => format!("{count} differ: you choose"),
        T::Lost { count } => format!("{count} lost"),
        T::MergeNow { count } => format!("Merge {}", plural(count, "change", "changes")),
        T::TableRows { added, changed, unchanged, wrong } => {
            format!(
                "{added} new, {changed} changed, {unchanged} the same, {} wrong",
                plural(wrong, "row", "rows")
            )
        }
        T::InRow { line, column } => format!("Row {line}, {column}"),
        T::NewerFile { name, records } => format!(
            "{name} was written by a newer Whitehold. {} in it can be read here, none can be taken. Open it with the newer page.",
            plural(records, "record", "records")
        ),
        T::Refused { name } => format!("{name} was not taken"),
        T::Unreadable { count } => {
            format!("{count} kept lines cannot be read by this version. They stay where they are.")
        }
        T::ApplyRows { count } => format!("Bring in {}", plural(count, "record", "records")),
    }
}

pub(in crate::wording) fn file_error(error: &FileError) -> String {
    match error {
        FileError::NotOurs => "It is no library and no table of fabrics, whites or trials. Nothing has changed.".into(),
        FileError::Cut { lines } => format!("It was cut off after line {lines}. Nothing has changed. Save it again where it came from."),
        FileError::Damaged { line: None } => "Something in it was changed or damaged: its checksum does not fit. Nothing has changed. Save it again where it came from.".into(),
        FileError::Damaged { line: Some(line) } => format!("It is damaged from line {line} on. Nothing has changed. Save it again where it came from."),
        FileError::Count { said, found } => format!("It should hold {said} entries and holds {found}. Nothing has changed. Save it again where it came from."),
        FileError::Line { line, .. } => format!("Line {line} is no entry of ours. Nothing has changed."),
        FileError::Twice { id } => format!("Entry {id} stands in it twice. Nothing has changed."),
        FileError::Differs { id } => format!("Entry {id} says something else there than here: one of the two was altered by hand. Nothing has changed."),
    }
}
