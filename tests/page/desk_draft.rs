//! What was typed is plain data that is kept, taken away as a file and found again, and every change to it can be taken
//! back.

use super::answered_desk::{Used, order};
use std::collections::BTreeMap;
use whitehold::desk::{Choice, Draft, Field, Keeping, Msg, Screen, State, Theme, draft_file};
use whitehold::library::storage_layout::Trouble;
use whitehold::plan::{DialSetting, Garment, Order, Priority};
use whitehold::wording::Voice;

#[test]
fn every_change_can_be_taken_back_and_done_again() {
    let changes = [
        Msg::Type(Field::Label, "100% cotton".into()),
        Msg::Type(Field::Pieces, "not a number".into()),
        Msg::Step(Field::Pieces, 1),
        Msg::Choose(Choice::Priority(Priority::Soft)),
        Msg::Choose(Choice::Dyed(Some(false))),
        Msg::Choose(Choice::Shelf("gannet".into(), true)),
        Msg::AddGarment,
        Msg::Open(Box::new(Order { garments: vec![Garment::default()], ..order() }), "Other".into()),
        Msg::Blank,
        Msg::Units,
        Msg::Language,
        Msg::Theme(Theme::Dark),
        Msg::Use("tern/2x43".into()),
        Msg::Point(DialSetting { set_c: 170.0, belt_m_per_min: 3.0 }),
    ];
    for change in changes {
        let mut used = Used::new();
        used.send(Msg::Show(Screen::Window));
        let before = used.state.draft.clone();
        used.send(change.clone());
        let after = used.state.draft.clone();
        assert_ne!(before, after, "{change:?} changes something");
        used.send(Msg::Undo);
        assert_eq!(used.state.draft, before, "{change:?} is taken back");
        used.send(Msg::Redo);
        assert_eq!(used.state.draft, after, "{change:?} is done again");
    }
}

#[test]
fn typing_is_one_step_of_undo_until_the_field_is_left() {
    let mut used = Used::new();
    for text in ["1", "12", "120"] {
        used.send(Msg::Type(Field::Pieces, text.into()));
    }
    used.send(Msg::Type(Field::Lot, "A".into()));
    used.send(Msg::Undo).send(Msg::Undo);
    assert_eq!(used.text(Field::Pieces), "144");
    assert!(used.state.undo.is_empty());
}

#[test]
fn the_draft_is_kept_as_typed_and_read_back() {
    let mut used = Used::new();
    used.type_in(Field::Pieces, "a dozen").send(Msg::Units);
    assert_eq!(used.state.keeping, Keeping::Kept);
    let text = draft_file::write(&used.state.draft);
    assert_eq!(draft_file::read(&text), Some(used.state.draft.clone()));
    for broken in ["", "{", r#"{"version":2,"draft":{}}"#, r#"{"version":1,"draft":{}}"#] {
        assert_eq!(draft_file::read(broken), None, "{broken}");
    }
}

/// A store that fails takes nothing away: what stands on the page is said not to be kept, goes out as a file, and
/// comes back from it.
#[test]
fn what_cannot_be_kept_can_be_taken_away() {
    let mut used = Used::new();
    used.store = Err(Trouble::Full);
    used.type_in(Field::Pieces, "2304");
    assert_eq!((used.state.keeping, &used.state.trouble), (Keeping::NotKept, &Some(Trouble::Full)));
    let file = draft_file::write(&used.state.draft);

    let mut other = Used::new();
    other.send(Msg::Trouble(Trouble::Wiped)).send(Msg::OpenDraftFile(file));
    assert_eq!(other.state.draft, used.state.draft);
    assert_eq!((other.state.keeping, &other.state.trouble), (Keeping::Kept, &None));
    other.send(Msg::Undo);
    assert_ne!(other.state.draft, used.state.draft, "one Undo takes it back");

    let before = other.state.draft.clone();
    for foreign in ["", "{}", "fabric,lot\njersey,1", "\u{0}"] {
        other.send(Msg::OpenDraftFile(foreign.into()));
        assert_eq!(
            (&other.state.draft, &other.state.trouble),
            (&before, &Some(Trouble::NotOurs)),
            "{foreign}"
        );
    }

    used.store = Ok(());
    used.type_in(Field::Pieces, "2305");
    assert_eq!((used.state.keeping, &used.state.trouble), (Keeping::Kept, &None));
}

#[test]
fn that_the_browser_deleted_something_is_said_until_it_is_read() {
    let mut used = Used::new();
    used.send(Msg::Trouble(Trouble::Wiped)).type_in(Field::Pieces, "5");
    assert_eq!((used.state.keeping, &used.state.trouble), (Keeping::Kept, &Some(Trouble::Wiped)));
    used.send(Msg::DismissTrouble);
    assert_eq!(used.state.trouble, None);
}

#[test]
fn the_whole_state_is_plain_data() {
    let mut used = Used::new();
    used.send(Msg::Show(Screen::Window)).type_in(Field::SetTemperature, "hot");
    let text = serde_json::to_string(&used.state).expect("plain data");
    assert_eq!(serde_json::from_str::<State>(&text).expect("the same"), used.state);
}

#[test]
fn addresses_name_screens() {
    let table = BTreeMap::from([
        ("#job", Some(Screen::Job)),
        ("#window", Some(Screen::Window)),
        ("#forecast", Some(Screen::Forecast)),
        ("#shop", Some(Screen::PrintRoom)),
        ("#wrong", Some(Screen::Diagnosis)),
        ("#sheet", Some(Screen::JobSheet)),
        ("#settings", Some(Screen::Settings)),
        ("#nowhere", None),
    ]);
    for (hash, screen) in table {
        assert_eq!(Screen::of_hash(hash), screen);
    }
}

/// A draft that fits on a full disk does not hide that a record did not; when that is stored too, the trouble is over.
#[test]
fn a_kept_draft_does_not_hide_an_unstored_record() {
    let mut used = Used::new();
    used.state.storing = 1;
    used.send(Msg::LogAppended(1, Err(Trouble::Full)));
    used.type_in(Field::Lot, "HL-1");
    assert_eq!((used.state.keeping, used.state.trouble.clone()), (Keeping::Kept, Some(Trouble::Full)));
    used.send(Msg::LogAppended(1, Ok(())));
    assert_eq!(used.state.trouble, None);
}

/// A store that opens late: what was typed meanwhile stays, and the draft kept before is where Undo ends.
#[test]
fn a_draft_found_late_takes_nothing_away() {
    let kept = || Box::new(Draft::of(&order(), "kept before", Voice::default()));
    let mut untouched = Used::new();
    untouched.send(Msg::DraftFound(kept()));
    assert_eq!(untouched.text(Field::Title), "kept before");

    let mut typed = Used::new();
    typed.type_in(Field::Title, "typed early").send(Msg::DraftFound(kept()));
    assert_eq!(typed.text(Field::Title), "typed early");
    typed.send(Msg::Undo).send(Msg::Undo);
    assert_eq!(typed.text(Field::Title), "kept before");
    typed.send(Msg::Redo).send(Msg::Redo);
    assert_eq!(typed.text(Field::Title), "typed early");
}
