//! What cannot be read, or comes too late, leaves the last answer where it is; an error stands beside its field, and one
//! tap mends it.

use super::answered_desk::{Used, order, report};
use whitehold::desk::{Answer, Draft, Effect, Field, Msg, State, Theme, suggestions, update};
use whitehold::quantity::{FieldError, Problem};
use whitehold::wording::Voice;

#[test]
fn bad_input_keeps_the_last_answer_and_stands_beside_its_field() {
    let table = [
        (Field::Pieces, "some", "garments[0].pieces"),
        (Field::Pieces, "0", "garments[0].pieces"),
        (Field::Pieces, "1.5", "garments[0].pieces"),
        (Field::Weight, "4", "garments[0].areal_weight_gsm"),
        (Field::Coverage, "140", "print.coverage_percent"),
        (Field::Coverage, "", "print.coverage_percent"),
        (Field::Label, "  ", "garments[0].label"),
        (Field::FixedSetTemperature, "330", "shop.dryer_fixed"),
        (Field::Passes, "9", "shop.passes"),
    ];
    for (field, text, path) in table {
        let mut used = Used::new();
        used.type_in(field, text);
        assert_eq!(used.text(field), text, "nothing typed is lost");
        assert!(used.state.stale(), "{path}: the answer is marked as older");
        assert_eq!(used.state.order.as_ref(), Some(&order()), "{path}: the answer stays");
        let fields: Vec<String> = used.state.errors_of(field).map(|error| error.field).collect();
        assert_eq!(fields, [path]);
        used.send(Msg::Undo);
        assert!(!used.state.stale() && used.state.errors.is_empty(), "{path}: undo suggestions it");
    }
}

/// After few unreadable touches, and after more than Undo holds (200).
#[test]
fn the_way_back_leads_to_the_answered_order_however_much_was_written() {
    for touches in [1, 3, 250] {
        let mut used = Used::new();
        used.send(Msg::Theme(Theme::Dark));
        for touch in 0..touches {
            let field = if touch % 2 == 0 { Field::Pieces } else { Field::Humidity };
            used.type_in(field, &format!("none{touch}"));
        }
        assert!(used.state.stale(), "{touches} touches");
        used.send(Msg::BackToReadable);
        assert!(!used.state.stale() && used.state.errors.is_empty(), "{touches} touches");
        assert_eq!(used.state.draft.read().as_ref(), Ok(&order()), "{touches} touches");
        assert_eq!(used.state.draft.theme, Theme::Dark, "{touches} touches: no matter of the order");
    }
}

#[test]
fn errors_of_the_answer_stand_beside_their_field_too() {
    let draft = Draft::of(&order(), "", Voice::default());
    let (state, effects) = update(State::new(draft), Msg::Start);
    let Some(Effect::Answer(asked)) = effects.into_iter().next() else { panic!("an order is asked about") };
    let sum = Problem::SumNot100 { sum: 120.0, section: String::new() };
    let error = FieldError::new("garments[0].label", "80% polyester 40% cotton", sum);
    let (state, _) = update(state, Msg::Answered(asked, Err(vec![error])));
    assert_eq!(state.errors_of(Field::Label).count(), 1);
    assert!(state.report.is_none());
}

#[test]
fn a_late_answer_to_an_older_order_is_dropped() {
    let mut used = Used::new();
    let mut older = order();
    older.garments[0].pieces = 7;
    let mut wrong = report();
    wrong.picks.clear();
    used.send(Msg::Answered(Box::new(older), Ok(Box::new(Answer { report: wrong.into(), cloth: None }))));
    assert_eq!(used.state.report.as_deref(), Some(&report()));
}

#[test]
fn three_hundred_and_thirty_degrees_asks_whether_it_is_fahrenheit() {
    let mut used = Used::new();
    used.type_in(Field::FixedSetTemperature, "330");
    let error = used.state.errors_of(Field::FixedSetTemperature).next().expect("330 °C is out of range");
    let ways = suggestions(&error, &used.state.draft, used.state.bound(Field::FixedSetTemperature));
    assert_eq!(ways.len(), 1);
    assert_eq!(ways[0].say.replace('\u{a0}', " "), "330 °F, that is 166 °C");
    used.type_in(Field::FixedSetTemperature, &ways[0].text);
    assert_eq!(used.last().shop.dryer_fixed, Some(166.0));
    used.type_in(Field::FixedSetTemperature, "330 F");
    let fixed = used.last().shop.dryer_fixed.expect("a unit that is typed is believed");
    assert!((fixed - 165.56).abs() < 0.01);
}

#[test]
fn a_label_that_does_not_add_up_is_mended_with_one_tap() {
    let mut used = Used::new();
    used.type_in(Field::Label, "80% polyester 40 % cotton interlock");
    let sum = Problem::SumNot100 { sum: 120.0, section: String::new() };
    let error = FieldError::new("garments[0].label", used.text(Field::Label), sum);
    let ways: Vec<String> =
        suggestions(&error, &used.state.draft, None).into_iter().map(|way| way.text).collect();
    let expected = [
        "60% polyester 40 % cotton interlock",
        "80% polyester 20 % cotton interlock",
        "67% polyester 33 % cotton interlock",
    ];
    assert_eq!(ways, expected);
    let nearest = Problem::Unknown { nearest: vec!["polyester".into()], accepted: Vec::new() };
    used.type_in(Field::Label, "100% polystar");
    let error = FieldError::new("garments[0].label", "polystar", nearest);
    assert_eq!(suggestions(&error, &used.state.draft, None)[0].text, "100% polyester");
}
