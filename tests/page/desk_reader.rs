//! Language, units and theme belong to whoever stands at the desk, not to an order that comes along; and a draft of an
//! earlier version shows what its order held.

use super::common::demo_order;
use whitehold::desk::{Draft, Field, Msg, State, Theme, draft_file, update};
use whitehold::plan::Order;
use whitehold::quantity::Problem;
use whitehold::wording::{Language, Units, Voice};

fn spanish() -> Voice {
    Voice { language: Language::Es, units: Units::Us }
}

/// The order of a file is taken over to the last digit; how it is read stays as it is here.
#[test]
fn a_file_brings_the_order_and_not_its_reader() {
    let (brought, here) = (demo_order("1185"), demo_order("1188"));
    let theirs = State::new(Draft::of(&brought, "theirs", Voice::default()));
    let mut draft = Draft::of(&here, "ours", spanish());
    draft.theme = Theme::Dark;
    let (state, _) = update(State::new(draft), Msg::OpenDraftFile(draft_file::write(&theirs.draft)));
    let draft = &state.draft;
    assert_eq!(draft.read().unwrap(), theirs.draft.read().unwrap());
    assert_eq!(draft.text(Field::Title), "theirs");
    assert_eq!((draft.voice(), draft.theme), (spanish(), Theme::Dark));
    assert_eq!(draft.text(Field::Overhang), "0,2", "its numbers are written as they are read here");
    let (state, _) = update(state, Msg::Undo);
    assert_eq!(state.draft.text(Field::Title), "ours");
}

/// Read as it was before, a draft is not written anew: what was typed stands as typed.
#[test]
fn the_same_reader_changes_nothing() {
    let mut draft = Draft::of(&demo_order("1185"), "an order", Voice::default());
    draft.write(Field::Area, "900.00");
    assert_eq!(draft.clone().read_like(&Draft::default()), draft);
    let there = draft.clone().read_like(&Draft::of(&Order::default(), "", spanish()));
    assert_eq!(there.voice(), spanish());
    assert!((there.read().unwrap().print.area_cm2 - 900.0).abs() < 1e-9);
}

#[test]
fn the_overhang_is_typed_and_held_to_its_range() {
    let mut draft = Draft::of(&demo_order("1185"), "an order", Voice::default());
    assert_eq!(draft.text(Field::Overhang), "0.2");
    draft.write(Field::Overhang, "0,35 mm");
    assert!((draft.read().unwrap().print.overhang_mm - 0.35).abs() < 1e-12);
    for wrong in ["", "-1", "11", "12 in", "wide"] {
        draft.write(Field::Overhang, wrong);
        let errors = draft.read().unwrap_err();
        assert_eq!(errors.len(), 1, "{wrong}");
        assert_eq!(errors[0].field, "print.overhang_mm");
        assert_eq!(matches!(errors[0].problem, Problem::Empty), wrong.is_empty());
    }
    let (state, _) = update(
        State::new(Draft::of(&demo_order("1185"), "x", Voice::default())),
        Msg::Step(Field::Overhang, 2),
    );
    assert_eq!(state.draft.text(Field::Overhang), "0.4");
}

/// A draft that was kept before there was such a field.
#[test]
fn an_earlier_draft_shows_its_overhang() {
    let mut order = demo_order("1185");
    order.print.overhang_mm = 0.45;
    let state = State::new(Draft::of(&order, "an order", Voice::default()));
    let mut kept: serde_json::Value = serde_json::from_str(&draft_file::write(&state.draft)).unwrap();
    let texts = kept["draft"]["texts"].as_object_mut().unwrap();
    assert!(texts.remove("overhang").is_some(), "{texts:?}");
    let draft = draft_file::read(&kept.to_string()).unwrap();
    assert_eq!(draft.text(Field::Overhang), "0.45");
    assert_eq!(draft.read().unwrap(), order);
}
