//! Grey-scale grades: the nominal chips fall on their own grades, and worked cases give what others compute.
use whitehold::optics::{Comparison, GreyStep, Lab, change_grade, staining_grade};
use whitehold::quantity::Problem;

/// One worked case: two colours, weighted difference, grade, step.
type Case = ([f64; 3], [f64; 3], f64, f64, &'static str);

/// Source: nominal ΔE*ab of the chips, ISO 105-A03 (staining), as listed with its tolerances in public code for the
/// AATCC staining scale. A neutral step of that size has to score its own grade.
#[test]
fn a_staining_chip_scores_its_own_grade() {
    let chips = [
        (0.0, "5"),
        (2.2, "4-5"),
        (4.3, "4"),
        (6.0, "3-4"),
        (8.5, "3"),
        (12.0, "2-3"),
        (16.9, "2"),
        (24.0, "1-2"),
        (34.1, "1"),
    ];
    for (darker, expected) in chips {
        let grade = staining_grade(Lab::new(95.0, 0.0, 0.0), Lab::new(95.0 - darker, 0.0, 0.0));
        assert_eq!(grade.step.text(), expected, "{darker}: {grade:?}");
    }
}

/// Source: nominal ΔE*ab of the chips, ISO 105-A02 (change), GOST R ISO 105-A02-99.
#[test]
fn a_change_chip_scores_its_own_grade() {
    let chips = [
        (0.0, "5"),
        (0.8, "4-5"),
        (1.7, "4"),
        (2.5, "3-4"),
        (3.4, "3"),
        (4.8, "2-3"),
        (6.8, "2"),
        (9.6, "1-2"),
        (13.6, "1"),
    ];
    for (lighter, expected) in chips {
        let grade = change_grade(Lab::new(40.0, 0.0, 0.0), Lab::new(40.0 + lighter, 0.0, 0.0));
        assert_eq!(grade.step.text(), expected, "{lighter}: {grade:?}");
    }
}

/// Source: the same chips. A change turns to the next step half way between two chips.
#[test]
fn a_change_turns_to_the_next_step_half_way_between_chips() {
    let chips = [0.0, 0.8, 1.7, 2.5, 3.4, 4.8, 6.8, 9.6, 13.6];
    for pair in chips.windows(2) {
        let middle = 0.5 * (pair[0] + pair[1]);
        let step =
            |away: f64| change_grade(Lab::new(40.0, 0.0, 0.0), Lab::new(40.0 + middle + away, 0.0, 0.0)).step;
        assert!(step(-1e-6) > step(1e-6), "{middle}");
    }
}

/// Source: ISO 105-A04 formula as public implementations quote it, worked separately in Python to six decimals
/// (no worked example of the standard was at hand). Clean Lab, stained Lab, ΔE_GS, grade, step.
#[rustfmt::skip]
const STAINS: [Case; 17] = [
    ([95.0, 0.0, 0.0], [92.8, 0.0, 0.0], 2.2, 4.494, "4-5"),
    ([95.0, 0.0, 0.0], [90.7, 0.0, 0.0], 4.3, 3.985008, "4"),
    ([95.0, 0.0, 0.0], [89.0, 0.0, 0.0], 6.0, 3.501949, "3-4"),
    ([95.0, 0.0, 0.0], [86.5, 0.0, 0.0], 8.5, 2.996904, "3"),
    ([95.0, 0.0, 0.0], [83.0, 0.0, 0.0], 12.0, 2.496885, "2-3"),
    ([95.0, 0.0, 0.0], [78.1, 0.0, 0.0], 16.9, 2.000395, "2"),
    ([95.0, 0.0, 0.0], [71.0, 0.0, 0.0], 24.0, 1.491822, "1-2"),
    ([95.0, 0.0, 0.0], [60.9, 0.0, 0.0], 34.1, 1.0, "1"), // 0.982519 before the clamp to the scale
    ([95.0, -0.5, 2.0], [94.0, 1.5, 1.0], 1.555063, 4.642336, "4-5"),
    ([95.0, -0.5, 2.0], [93.0, 4.0, 0.5], 3.250448, 4.252397, "4-5"),
    ([95.0, -0.5, 2.0], [94.5, -0.3, 4.0], 1.267241, 4.708534, "4-5"),
    ([95.0, -0.5, 2.0], [92.0, 6.0, -1.0], 4.898523, 3.796046, "4"),
    ([95.0, -0.5, 2.0], [90.0, 10.0, -3.0], 8.007108, 3.083522, "3"),
    ([95.0, -0.5, 2.0], [88.0, -1.0, -8.0], 8.211795, 3.046921, "3"),
    ([95.0, -0.5, 2.0], [85.0, 18.0, 5.0], 13.745980, 2.299918, "2-3"),
    ([95.0, -0.5, 2.0], [94.8, -0.4, 2.3], 0.247675, 4.943035, "5"),
    ([95.0, -0.5, 2.0], [70.0, 30.0, 10.0], 27.627214, 1.287738, "1-2"),
];

#[test]
fn stains_worked_separately() {
    for (clean, stained, difference, value, step) in STAINS {
        let grade = staining_grade(clean.into(), stained.into());
        assert!((grade.difference - difference).abs() < 1e-6, "{stained:?}: {grade:?}");
        assert!((grade.value - value).abs() < 1e-6, "{stained:?}: {grade:?}");
        assert_eq!(grade.step.text(), step, "{stained:?}");
    }
}

/// Source: ISO 105-A05 formula as public implementations quote it, worked separately in Python to six decimals.
/// Before, after, ΔE_F, grade by the formula, step by the table. The fourth row crosses 0° of hue.
#[rustfmt::skip]
const CHANGES: [Case; 6] = [
    ([50.0, 30.0, 20.0], [52.0, 27.0, 18.0], 3.165714, 3.137815, "3"),
    ([40.0, 5.0, -40.0], [42.0, 4.0, -36.0], 2.714529, 3.403218, "3-4"),
    ([40.0, 5.0, -40.0], [41.0, 9.0, -38.0], 4.283716, 2.666672, "2-3"),
    ([45.0, 40.0, -2.0], [46.0, 39.0, 3.0], 4.484671, 2.600533, "2-3"),
    ([30.0, -25.0, 10.0], [33.0, -22.0, 12.0], 4.416955, 2.622483, "2-3"),
    ([60.0, 10.0, 60.0], [62.0, 8.0, 54.0], 3.430083, 2.987291, "3"),
];

#[test]
fn changes_worked_separately() {
    for (before, after, difference, value, step) in CHANGES {
        let grade = change_grade(before.into(), after.into());
        assert!((grade.difference - difference).abs() < 1e-6, "{after:?}: {grade:?}");
        assert!((grade.value - value).abs() < 1e-6, "{after:?}: {grade:?}");
        assert_eq!(grade.step.text(), step, "{after:?}");
    }
}

/// Source: ISO 105-A04, limits of the steps for a stain of pure lightness: where the grade is 4.75, 4.25 … 1.25.
#[test]
fn a_stain_turns_to_the_next_step_at_the_limits_of_the_table() {
    let limits = [
        (1.0870, GreyStep::Five, GreyStep::FourToFive),
        (3.2609, GreyStep::FourToFive, GreyStep::Four),
        (5.0566, GreyStep::Four, GreyStep::ThreeToFour),
        (7.1386, GreyStep::ThreeToFour, GreyStep::Three),
        (10.078, GreyStep::Three, GreyStep::TwoToThree),
        (14.227, GreyStep::TwoToThree, GreyStep::Two),
        (20.086, GreyStep::Two, GreyStep::OneToTwo),
        (28.356, GreyStep::OneToTwo, GreyStep::One),
    ];
    for (limit, before, after) in limits {
        let step =
            |darker: f64| staining_grade(Lab::new(95.0, 0.0, 0.0), Lab::new(95.0 - darker, 0.0, 0.0)).step;
        // The step is read off the grade rounded to hundredths: half a hundredth either side, and a little more.
        assert_eq!((step(0.98 * limit), step(1.03 * limit)), (before, after), "{limit}");
    }
}

#[test]
fn a_grade_is_read_in_every_form_that_people_write() {
    let rows = [
        ("5", GreyStep::Five),
        (" 4-5 ", GreyStep::FourToFive),
        ("4/5", GreyStep::FourToFive),
        ("4 – 5", GreyStep::FourToFive),
        ("4.5", GreyStep::FourToFive),
        ("4,5", GreyStep::FourToFive),
        ("3,0", GreyStep::Three),
        ("1-2", GreyStep::OneToTwo),
        ("1", GreyStep::One),
    ];
    for (text, expected) in rows {
        assert_eq!(text.parse::<GreyStep>().ok(), Some(expected), "{text:?}");
    }
    for step in GreyStep::ALL {
        assert_eq!(step.text().parse::<GreyStep>().ok(), Some(step));
    }
}

#[test]
fn any_other_grade_is_refused_by_name() {
    // given, nearest
    let rows = [
        ("5-4", Some("5")),
        ("4-6", Some("4")),
        ("3.7", Some("3-4")),
        ("0", Some("1")),
        ("6", Some("5")),
        ("4-5-", Some("4")),
        ("-4", Some("4")),
        ("", None),
        ("good", None),
        ("NaN", None),
        ("1e0", Some("1")),
    ];
    for (text, near) in rows {
        let Err(error) = text.parse::<GreyStep>() else { panic!("{text:?} was read") };
        assert_eq!((error.field.as_str(), error.value.as_str()), ("grade", text));
        let Problem::Unknown { nearest, accepted } = error.problem else { panic!("{text:?}") };
        assert_eq!(nearest.first().map(String::as_str), near, "{text:?}");
        assert_eq!(accepted.len(), 9, "{text:?}");
    }
}

/// Source: the same formulas; 0.001 /µm of a red dye in 60 µm of white over red cloth, colour-science 0.4.7 at 5 nm:
/// ΔE00 2.19, staining grade 4.76. A pink that a customer sees is still a grade 5, so both are shown.
#[test]
fn a_grade_forgives_the_tint_that_the_difference_shows() {
    let found = Comparison::of(Lab::new(95.392, -0.907, 1.268), Lab::new(94.782, 0.502, 0.651));
    assert!((found.de00 - 2.187).abs() < 2e-3, "{found:?}");
    assert!((found.staining.value - 4.761).abs() < 1e-3, "{found:?}");
    assert_eq!(found.staining.step, GreyStep::Five);
    assert!((found.de_ab - 1.654).abs() < 2e-3, "{found:?}");
}
