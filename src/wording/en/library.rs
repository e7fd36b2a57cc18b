//! The Library screen.

use crate::library::file::FileError;
use crate::wording::{LibraryLabel, LibraryPhrase};

pub(in crate::wording) fn label(label: LibraryLabel) -> &'static str {
    use LibraryLabel as L;
    match label {
        L::Library => "Library",
        L::Search => "Search fabrics, whites, lots",
        L::Fabrics => "Fabrics",
        L::Whites => "Whites",
        L::Lots => "Lots",
        L::Dryers => "Dryers, meshes",
        L::Orders => "Orders",
        L::Found => "Found",
        L::NearestFirst => "nearest first",
        L::NewCloth => "New cloth from its label",
        L::ImportFile => "Open a file",
        L::SaveFile => "Save the library as a file",
        L::SaveTables => "As a table for a spreadsheet",
        L::Yours => "yours",
        L::Ships => "built in",
        L::Removed => "taken out",
        L::Differs => "two tablets differ",
        L::WhatBelongs => "What belongs to it",
        L::WhatHappened => "What happened to this record",
        L::NothingHappened => "Nothing yet. It stands as it came with Whitehold.",
        L::BringBack => "Bring back",
        L::TakeOut => "Take out",
        L::PrintOnThis => "Print on this",
        L::OpenThis => "Print again",
        L::KeepCloth => "Keep the cloth of this order",
        L::KeepOrder => "Keep this order",
        L::ShowMore => "Show more",
        L::Choose => "Two tablets wrote this without seeing each other. Which holds?",
        L::Made => "Written for the first time.",
        L::Copied => "Copied from the one that comes with Whitehold.",
        L::TakenOut => "Taken out.",
        L::Undone => "Undone since.",
        L::AsItIsNow => "as it is now",
        L::OnAnotherTablet => "on another tablet",
        L::Merge => "Merge",
        L::ThisTablet => "This tablet",
        L::TheFile => "The file",
        L::LeaveIt => "Leave it",
        L::NothingYet => "Nothing has changed yet. One Undo takes all of it back.",
        L::NothingToMerge => "All of it is here already.",
        L::TableOf => "Table",
        L::FixRows => {
            "Nothing comes in while a row is wrong. Mend these rows in the spreadsheet and open the file again."
        }
        L::DraftFound => {
            "An order that was kept by an earlier Whitehold. It goes into the form; Undo takes it back."
        }
        L::OpenDraft => "Open it in the form",
        L::ReadOnly => {
            "A newer Whitehold wrote some of these records. They can be read and saved as a file, not changed. Open the newer page."
        }
        L::Understood => "Understood",
        L::EmptySay => {
            "That is all right. Type what its label says, and Whitehold works from the fibres. The first print will be a trial, because nobody has tried it here."
        }
        L::EmptyLibrary => {
            "Nothing of your own yet. What you keep from an order stands here, with everything that happened to it."
        }
        L::DropHere => "A library, a table of fabrics, whites or trials: drop it here or tap.",
        L::Stays => "stays",
        L::Goes => "goes",
        L::Nothing => "nothing",
        L::Yes => "yes",
        L::No => "no",
        L::NeverSaved => "never saved as a file",
        L::SaveNow => "Save it now",
        L::Edit => "Change",
        L::New => "New",
        L::KeepIt => "Keep it",
        L::NewWhite => "New white from its data sheet",
        L::NewDryer => "New dryer",
        L::NewMesh => "New mesh",
        L::NewTrial => "Note a trial",
        L::NewLot => "New lot",
        L::NewBatch => "New tub",
        L::NewReading => "Note a look",
        L::NewLook => "Look again on a day",
        L::NewCheck => "Check of today",
        L::NewProbeRun => "A probe rode through",
        L::OrderIsKept => "Kept in the library",
        L::Trials => "Trials",
        L::Files => "Take it away, bring it back",
        L::TapOne => "Tap one of them to see what it holds and what happened to it.",
        L::SaveItself => "Keep one file up to date",
        L::SavesItself => "One file is kept up to date",
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
    use LibraryPhrase as P;
    match phrase {
        P::Records { count } => format!("{} on this tablet", plural(count, "record", "records")),
        P::SavedDaysAgo { days: ago } => format!("last file {}", days(*ago)),
        P::Reminder { changes, days: None } => {
            format!(
                "{} in no file yet. A browser may clear a page's storage; a file is yours.",
                plural(changes, "change is", "changes are")
            )
        }
        P::Reminder { changes, days: Some(ago) } => format!(
            "{} since the last file, {}. A browser may clear a page's storage; a file is yours.",
            plural(changes, "change", "changes"),
            days(*ago)
        ),
        P::OfTotal { found, total } => format!("{found} of {total}"),
        P::LookFor { word, count } => format!("Look for “{word}” ({count})"),
        P::NoneCalled { asked } => format!("Nothing called “{asked}”"),
        P::LotsHere { lots: 1 } => "1 lot".into(),
        P::LotsHere { lots } => format!("{lots} lots"),
        P::Changed { what, before, after } => format!("{what}: {before} → {after}."),
        P::MoreChanges { count } => format!("And {count} more."),
        P::FromFile { name } => format!("from {name}"),
        P::MergeFrom { name, saved } => format!("{name}, saved {saved}"),
        P::Same { count } => format!("{count} the same"),
        P::New { count } => format!("{count} new: come in"),
        P::Newer { count } => format!("{count} changed there"),
        P::ToChoose { count } => format!("{count} differ: you choose"),
        P::Lost { count } => format!("{count} lost"),
        P::MergeNow { count } => format!("Merge {}", plural(count, "change", "changes")),
        P::TableRows { added, changed, unchanged, wrong } => {
            format!(
                "{added} new, {changed} changed, {unchanged} the same, {} wrong",
                plural(wrong, "row", "rows")
            )
        }
        P::InRow { line, column } => format!("Row {line}, {column}"),
        P::NewerFile { name, records } => format!(
            "{name} was written by a newer Whitehold. {} in it can be read here, none can be taken. Open it with the newer page.",
            plural(records, "record", "records")
        ),
        P::Refused { name } => format!("{name} was not taken"),
        P::Unreadable { count } => {
            format!("{count} kept lines cannot be read by this version. They stay where they are.")
        }
        P::ApplyRows { count } => format!("Bring in {}", plural(count, "record", "records")),
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
