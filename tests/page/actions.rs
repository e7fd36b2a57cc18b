//! What a tap asks for is written in words and read back as the same; anything else is refused.
//!
//! Browser stories, saved pictures and `cargo xtask shots` name actions by these words.

use whitehold::desk::records::{RecordGroup, RoomChange};
use whitehold::desk::{Action, Nudge, Theme};
use whitehold::diagnosis::Defect;
use whitehold::library::log::{Key, Kind};
use whitehold::library::table::RecordTable;
use whitehold::wording::{Language, Units};

#[test]
fn every_action_is_written_in_words_and_read_back() {
    let table = [
        (Action::ShowWindow, "show-window"),
        (Action::ChoosePick("chalk/2x43".into()), "choose-pick:chalk/2x43"),
        (Action::ChoosePick("chalk+tern:40/2x43".into()), "choose-pick:chalk+tern:40/2x43"),
        (Action::TapTradeOff(12), "tap-trade-off:12"),
        (Action::AssumeUndyed, "assume-undyed"),
        (Action::BackToReadable, "back-to-readable"),
        (Action::Defect(Defect::WashesOff), "defect:washes-off"),
        (Action::Room(RoomChange::Shelf("chalk".into())), "shelf:chalk"),
        (Action::Room(RoomChange::Dryer("long-kiln".into())), "dryer:long-kiln"),
        (Action::Room(RoomChange::Mesh("mesh-43".into())), "mesh:mesh-43"),
        (Action::Room(RoomChange::Money("S/".into())), "money:S/"),
        (Action::Room(RoomChange::Money(String::new())), "money:"),
        (Action::Room(RoomChange::Open), "open-print-room"),
        (Action::Room(RoomChange::Demo), "back-to-demo"),
        (Action::Language(Language::Es), "language:es"),
        (Action::Units(Units::Us), "units:us"),
        (Action::Theme(Theme::Device), "theme:device"),
        (Action::Humidity(Nudge::Less), "humidity:less"),
        (Action::Transfer(Some(Nudge::More)), "transfer:more"),
        (Action::Transfer(None), "transfer:prior"),
        (Action::Group(RecordGroup::Whites), "group:whites"),
        (Action::Search("two: words".into()), "search:two: words"),
        (Action::ShowMore, "show-more"),
        (Action::OpenRecord(Key::new(Kind::Batch, "gannet/tub-0")), "open-record:batch gannet/tub-0"),
        (Action::OpenRecord(Key::new(Kind::Order, "two words")), "open-record:order two words"),
        (Action::NewRecord(Kind::FollowUp, Some("trial-12".into())), "new-record:follow-up trial-12"),
        (Action::NewRecord(Kind::White, None), "new-record:white"),
        (Action::EditRecord, "edit-record"),
        (Action::RemoveRecord, "remove-record"),
        (Action::BringBack("t1-7".into()), "bring-back:t1-7"),
        (Action::PutInForm(Key::new(Kind::Fabric, "jersey")), "put-in-form:fabric jersey"),
        (Action::SaveForm, "save-form"),
        (Action::DiscardForm, "discard-form"),
        (Action::NewCloth, "new-cloth"),
        (Action::KeepCloth, "keep-cloth"),
        (Action::KeepOrder, "keep-order"),
        (Action::Resolve(0, 1), "resolve:0 1"),
        (Action::ChooseClaim(2, 0), "choose-claim:2 0"),
        (Action::Import, "import"),
        (Action::DismissImport, "dismiss-import"),
        (Action::SaveLibrary, "save-library"),
        (Action::SaveTable(RecordTable::Trials), "save-table:trials"),
        (Action::AutosaveFile, "autosave-file"),
    ];
    for (action, text) in table {
        assert_eq!(action.to_string(), text);
        assert_eq!(Action::read(text), Some(action), "{text}");
    }
}

#[test]
fn every_kind_is_named_by_its_own_word() {
    for kind in Kind::ALL {
        let action = Action::OpenRecord(Key::new(kind, "it"));
        let text = action.to_string();
        assert!(text.starts_with("open-record:") && text.ends_with(" it"), "{text}");
        assert!(text.chars().all(|it| it.is_ascii_lowercase() || "-: ".contains(it)), "{text}");
        assert_eq!(Action::read(&text), Some(action), "{text}");
    }
}

#[test]
fn other_text_is_refused() {
    let refused = [
        "",
        ":",
        "open",
        "show-window:",
        "show-window:now",
        "Show-Window",
        "open-record:3 gannet/tub-0",
        "open-record:batch",
        "open-record:tub gannet/tub-0",
        "new-record:8",
        "group:3",
        "group:",
        "defect:0",
        "theme:blue",
        "humidity:prior",
        "tap-trade-off:-1",
        "tap-trade-off:one",
        "resolve:0",
        "resolve:0 x",
        "save-table:0",
        "language:de",
    ];
    for text in refused {
        assert_eq!(Action::read(text), None, "{text}");
    }
}
