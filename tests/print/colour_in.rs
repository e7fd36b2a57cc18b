//! A colour comes in by name, by swatch or by the numbers of a colour meter, and an impossible one is refused.
use proptest::prelude::*;
use whitehold::library::starter;
use whitehold::optics::{Lab, cie76};
use whitehold::quantity::{FieldError, Problem};

fn refused(text: &str) -> FieldError {
    match Lab::read(text) {
        Err(error) => error,
        Ok(read) => panic!("{text:?} was read as {read:?}"),
    }
}

#[test]
fn numbers_are_read_in_every_form_that_people_type() {
    let red = Lab::new(38.2, 58.0, -35.5);
    for text in [
        "38.2, 58, -35.5",
        "38.2 58 -35.5",
        "38,2; 58; -35,5",
        "38,2 58,0 −35,5",
        "38.2,58,-35.5",
        "38.2/58/-35.5",
        "  L 38.2 a 58 b -35.5 ",
        "L* = 38.2, a* = 58, b* = -35.5",
        "L*=38,2 a*=+58 b*=-35,5",
        "Lab(38.2, 58, -35.5)",
        "CIELAB 38.2 58 -35.5",
        "38.2\t58\t-35.5",
    ] {
        assert_eq!(Lab::read(text).ok().flatten(), Some(red), "{text:?}");
    }
}

#[test]
fn a_word_is_left_for_the_names() {
    let library = starter().expect("the starter library parses");
    for (text, id) in [("azul marino", "navy"), ("Kelly Green", "kelly-green"), ("ROJO", "red")] {
        assert_eq!(Lab::read(text).ok(), Some(None), "{text:?}");
        let found = library.colour(text).map(|colour| colour.id.as_str());
        assert_eq!(found.ok(), Some(id), "{text:?}");
    }
    assert_eq!(Lab::read("red 2").ok(), Some(None), "a number among words is a name");
    assert_eq!(Lab::read("a 58 b 35 L 38").ok(), Some(None), "labels in another order are not guessed at");
}

/// Source: colour-science 0.4.7: sRGB decoded, Bradford to D65/10°, `XYZ_to_Lab`. Its matrix is the exact inverse of
/// the primaries, ours the inverse of the printed four decimals: 0.02 apart at most.
#[test]
fn a_swatch_has_the_colour_it_shows() {
    let rows = [
        ("#b01924", [37.9443, 57.8685, 35.2055]),
        ("#214196", [30.1264, 20.0220, -50.0768]),
        ("#ffe238", [89.8559, -6.2110, 79.7122]),
        ("#009a4c", [55.7330, -52.4342, 31.2919]),
        ("#1C1F2A", [11.9131, 1.8030, -7.8374]),
        ("#777", [50.0344, 0.0044, 0.0020]),
        ("#ffffff", [100.0, 0.0078, 0.0035]),
        ("#010203", [0.5096, -0.1252, -0.4707]),
        ("#000", [0.0, 0.0, 0.0]),
    ];
    for (text, expected) in rows {
        let found = Lab::of_swatch(text).unwrap_or_else(|| panic!("{text} is a swatch"));
        assert!(cie76(found, expected.into()) < 0.02, "{text}: {found:?} for {expected:?}");
        assert_eq!(Lab::read(text).ok().flatten(), Some(found));
    }
}

#[test]
fn what_is_no_colour_is_refused_with_the_forms_that_are() {
    for text in ["#12345", "#ggg", "#", "38, 58", "38 58 35 12", "1..2 3 4", "38,5,58,2,35,1"] {
        let error = refused(text);
        assert_eq!((error.field.as_str(), error.value.as_str()), ("colour", text));
        let Problem::Unknown { accepted, .. } = error.problem else { panic!("{text:?}") };
        assert_eq!(accepted, ["38, 58, 35", "#b01924"], "{text:?}");
    }
    assert_eq!(refused("  ").problem, Problem::Empty);
}

/// Source: whether a reflectance of 0 to 1.3 (a fluorescent surface) can give a colour, solved as
/// a linear programme by scipy 1.17 (HiGHS) over the sixteen wavelengths.
#[rustfmt::skip]
const POSSIBLE: [([f64; 3], bool); 20] = [
    ([27.0, -103.0, -27.0], false),
    ([21.0, -102.0, -74.0], false),
    ([90.0,   78.0,  69.0], false),
    ([79.0,  -80.0, -49.0], false),
    ([67.0,    2.0, -84.0], false),
    ([49.0, -107.0, 113.0], false),
    ([87.0, -107.0,  28.0], true),
    ([90.0,   19.0,  99.0], true),
    ([97.0,  -25.0, 104.0], true),
    ([66.0,   76.0,  64.0], true),
    ([66.0,   48.0, -60.0], true),
    ([77.0, -113.0,  99.0], true),
    ([63.0, -106.0, -25.0], true),
    ([26.0,   10.0, -58.0], true),
    ([63.0,   60.0,  92.0], true),
    ([84.0,    2.0, -22.0], true),
    ([55.0,   -7.0, -41.0], true),
    ([24.0,   34.0, -58.0], true),
    ([62.0,  -68.0, -44.0], true),
    ([27.0,   96.0, -93.0], true),
];

#[test]
fn only_colours_that_a_cloth_can_have_are_let_in() {
    for (lab, fluorescent) in POSSIBLE {
        let lab = Lab::from(lab);
        assert_eq!(lab.check().is_ok(), fluorescent, "{lab:?}");
    }
    for colour in &starter().expect("the starter library parses").colours {
        assert!(Lab::from(colour.lab).check().is_ok(), "{}: {:?}", colour.id, colour.lab);
    }
}

/// Source: the greatest chroma at 1.3 times all light, by the same linear programme.
#[test]
fn a_lab_outside_the_gamut_names_what_is_wrong_and_how_far_it_may_go() {
    // given, unit named, most accepted
    let rows = [
        ("38, 120, 72.1", "C*", 93.9),
        ("20, 60, 103.9", "C*", 39.8),
        ("50, 0, -120", "C*", 86.1),
        ("138, 0, 0", "L*", 100.0),
        ("-1, 0, 0", "L*", 100.0),
        ("38, 58, 350", "a*, b*", 150.0),
        ("38, -158, 35", "a*, b*", 150.0),
    ];
    for (text, named, most) in rows {
        let error = refused(text);
        assert_eq!(error.field, "lab", "{text}");
        let Problem::OutOfRange { max, unit, .. } = error.problem else { panic!("{text}") };
        assert_eq!(unit, named, "{text}");
        assert!((max - most).abs() < 0.15, "{text}: {max} for {most}");
    }
}

proptest! {
    #[test]
    fn a_swatch_survives_the_way_through_lab(red in 0_u8.., green in 0_u8.., blue in 0_u8..) {
        let text = format!("#{red:02x}{green:02x}{blue:02x}");
        let colour = Lab::of_swatch(&text).expect("a swatch");
        prop_assert_eq!(colour.swatch(), text);
        prop_assert!(colour.check().is_ok(), "{:?}", colour);
    }

    #[test]
    fn no_text_panics(text in ".{0,40}") {
        let _ = Lab::read(&text);
    }
}
