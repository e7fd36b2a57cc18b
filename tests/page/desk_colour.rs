//! The colour field of the form takes a name, a swatch or the numbers of a colour meter.

use whitehold::desk::{ColourConflict, Draft, Field, Msg, State, colour_conflict, update};
use whitehold::library::starter;
use whitehold::optics::Lab;
use whitehold::plan::{Colour, Garment, Order};
use whitehold::quantity::Problem;
use whitehold::wording::{Language, Voice};

fn draft(colour: Colour) -> Draft {
    let garment = Garment { label: "100% cotton jersey".into(), colour, ..Garment::default() };
    let order = Order { garments: vec![garment], ..Order::default() };
    Draft::of(&order, "", Voice::from(Language::En))
}

fn read(draft: &Draft) -> Colour {
    let order = draft.read().expect("readable");
    order.garments.first().expect("a garment").colour.clone()
}

#[test]
fn what_is_typed_becomes_a_name_or_a_lab() {
    let red = Lab::of_swatch("#b01924").map(Into::into);
    for (text, lab) in [
        ("", None),
        ("azul marino", None),
        ("38, 58, 35", Some([38.0, 58.0, 35.0])),
        ("38,5; 58; 35", Some([38.5, 58.0, 35.0])),
        ("#b01924", red),
    ] {
        let mut draft = draft(Colour::default());
        draft.write(Field::Colour, text);
        assert_eq!(read(&draft), Colour { name: text.into(), lab }, "{text:?}");
    }
}

#[test]
fn a_measured_colour_of_an_order_stays_until_its_name_is_changed() {
    let measured = Colour { name: "red".into(), lab: Some([38.0, 58.0, 35.0]) };
    let mut draft = draft(measured.clone());
    assert_eq!(read(&draft), measured);
    draft.write(Field::Colour, "navy");
    assert_eq!(read(&draft), Colour { name: "navy".into(), lab: None });
}

#[test]
fn a_colour_that_cannot_be_is_refused_at_its_field() {
    for (text, unit) in
        [("138, 0, 0", Some("L*")), ("20, 60, 104", Some("C*")), ("#12345", None), ("38, 58", None)]
    {
        let mut draft = draft(Colour::default());
        draft.write(Field::Colour, text);
        let errors = draft.read().expect_err(text);
        let error = errors.first().expect("an error");
        assert_eq!((error.field.as_str(), error.value.as_str()), ("garments[0].colour", text));
        match (&error.problem, unit) {
            (Problem::OutOfRange { unit, .. }, Some(expected)) => assert_eq!(unit, expected, "{text}"),
            (Problem::Unknown { accepted, .. }, None) => assert_eq!(accepted.len(), 2, "{text}"),
            (problem, _) => panic!("{text}: {problem:?}"),
        }
    }
}

/// A meter's file of one sample is the garment's colour at once; of several, one is chosen; a bad file changes nothing
/// and says where it is bad. Undo takes the colour back.
#[test]
fn a_meter_file_colours_the_garment() {
    let colour = |state: &State| read(&state.draft);
    let first = State::new(draft(Colour { name: "red".into(), lab: None }));
    let send = |state: State, msg: Msg| update(state, msg).0;

    let one = send(first.clone(), Msg::Meter("name,L*,a*,b*\nlot 7,38,58,35\n".into()));
    assert_eq!(colour(&one), Colour { name: "lot 7".into(), lab: Some([38.0, 58.0, 35.0]) });
    assert_eq!(colour(&send(one, Msg::Undo)).name, "red");

    let two = send(first.clone(), Msg::Meter("name;L*;a*;b*\nlot 7;38;58;35\nlot 8;37,5;57;34\n".into()));
    assert_eq!(colour(&two).name, "red", "two samples: none is taken unasked");
    let chosen = send(two.clone(), Msg::Sample(1));
    assert_eq!(colour(&chosen), Colour { name: "lot 8".into(), lab: Some([37.5, 57.0, 34.0]) });
    assert_eq!(colour(&send(two, Msg::Sample(2))).name, "red", "no third sample");

    let bad = send(first.clone(), Msg::Meter("name,L*,a*,b*\nlot 7,138,58,35\n".into()));
    assert_eq!(colour(&bad).name, "red");
    assert_eq!(bad.meter.and_then(Result::err).map(|error| (error.line, error.column)), Some((2, 7)));
    assert_eq!(colour(&send(first, Msg::Sample(0))).name, "red", "no file, no sample");
}

/// The colour field wins over the label, and never without a word: another name, or a measured colour that is far from
/// what the label names. One tap takes the label's colour, and Undo takes that back.
#[test]
fn a_label_and_a_colour_field_that_disagree_are_told_apart() {
    let library = starter().expect("the starter library");
    let said = |label: &str, colour: Colour| {
        let mut draft = draft(colour);
        draft.write(Field::Label, label);
        colour_conflict(&draft, &library)
    };
    let named = |name: &str| Colour { name: name.into(), lab: None };
    let lab = |name: &str, lab| Colour { name: name.into(), lab: Some(lab) };
    let clashing =
        |label: &str, chosen: &str| Some(ColourConflict { label: label.into(), chosen: chosen.into() });
    let red = "100% polyester, red";
    assert_eq!(said(red, named("")), None, "the label says it");
    assert_eq!(said(red, named("rojo")), None, "the same colour in Spanish");
    assert_eq!(said(red, named("azul marino")), clashing("red", "navy"));
    assert_eq!(said("100% polyester", named("navy")), None, "the label names none");
    assert_eq!(said(red, named("reddish")), None, "an unknown name is an error of its own");
    assert_eq!(said(red, lab("lot 7", [38.0, 58.0, 35.0])), None, "a red that was measured");
    assert_eq!(said(red, lab("lot 7", [20.0, 5.0, -20.0])), clashing("red", "lot 7"));
    assert_eq!(said(red, lab("", [20.0, 5.0, -20.0])), clashing("red", ""));
    let mut typed = draft(named(""));
    typed.write(Field::Label, red);
    typed.write(Field::Colour, "20; 5; -20");
    assert_eq!(colour_conflict(&typed, &library), clashing("red", "20; 5; -20"));

    let mut draft = draft(lab("navy", [20.0, 5.0, -20.0]));
    draft.write(Field::Label, red);
    let taken = update(State::new(draft), Msg::ColourOfLabel).0;
    assert_eq!((read(&taken.draft), colour_conflict(&taken.draft, &library)), (Colour::default(), None));
    let back = update(taken, Msg::Undo).0;
    assert_eq!(colour_conflict(&back.draft, &library), clashing("red", "navy"));
}
