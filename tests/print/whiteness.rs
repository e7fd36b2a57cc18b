//! Whiteness, tint and yellowness are those of the standards, and say where they mean nothing.
use whitehold::optics::{Lab, Validity, Viewing, Xyz, whiteness, yellowness};

/// Source: colour-science 0.4.7, its own tests of `whiteness_CIE2004` (2° observer; the white of these rows is the one
/// of that library, not ours): x, y, Y = 100, W and Tw.
#[test]
fn whiteness_of_the_library_s_published_rows() {
    let viewing = Viewing { white: [0.3139, 0.3311], ..Viewing::D65_TWO };
    let rows = [
        ([0.3139, 0.3311], 100.0, 0.0),
        ([0.3167, 0.3334], 93.85, -1.305),
        ([0.3334, 0.3334], 80.49, -18.005),
        ([0.3500, 0.3334], 67.21, -34.605),
    ];
    for ([x, y], index, tint) in rows {
        let colour = Xyz { x: 100.0 * x / y, y: 100.0, z: 100.0 * (1.0 - x - y) / y };
        let found = whiteness(colour, &viewing);
        assert!((found.index - index).abs() < 1e-9 && (found.tint - tint).abs() < 1e-9, "{x} {y}: {found:?}");
    }
}

/// Source: colour-science 0.4.7, its own tests of `yellowness_ASTME313`, D65/2°.
#[test]
fn yellowness_of_the_library_s_published_rows() {
    for ([x, y, z], expected) in
        [([95.0, 100.0, 105.0], 4.34), ([105.0, 100.0, 95.0], 28.66), ([100.0, 100.0, 100.0], 16.5)]
    {
        let found = yellowness(Xyz { x, y, z }, &Viewing::D65_TWO);
        assert!((found - expected).abs() < 0.005, "{found} for {expected}");
    }
}

/// Source: colour-science 0.4.7 for D65/10° from Lab, white (94.811, 100, 107.304): W, Tw, YI to four decimals; the
/// limits by CIE 15:2004, 40 < W < 5Y − 280 and −4 < Tw < 2.
#[rustfmt::skip]
const WHITES: [([f64; 3], f64, f64, f64, Validity); 11] = [
    ([95.0,    0.0,    0.0],    87.5993, -0.0219,  -0.0006, Validity::Holds),
    ([95.0,   -0.5,    2.0],    78.5097,  0.0559,   3.4408, Validity::Holds),
    ([96.0,   -0.8,    1.0],    85.4685,  0.9123,   1.2939, Validity::Holds),
    ([94.0,   -0.5,    0.5],    82.9502,  0.6178,   0.5827, Validity::Holds),
    ([90.0,    0.0,   -3.0],    90.4998,  1.1536,  -6.1767, Validity::Holds),
    ([95.392, -0.907,  1.268],  82.7690,  0.9949,   1.7292, Validity::Holds),
    ([93.0,    1.5,    4.0],    64.5717, -4.1051,   8.8965, Validity::TooRed),
    ([92.0,    3.0,   -1.0],    85.3952, -4.6646,   0.4017, Validity::TooRed),
    ([96.0,   -5.0,    1.0],    85.3183,  7.7624,  -1.8877, Validity::TooGreen),
    ([97.0,   -1.0,  -14.0],   154.3179,  6.5854, -29.3132, Validity::TooGreen),
    ([70.0,    0.0,    2.0],    29.0260, -0.9898,   4.9249, Validity::NotWhite),
];

#[test]
fn whiteness_of_prints() {
    for (lab, index, tint, yellow, validity) in WHITES {
        let found = Lab::from(lab).whiteness();
        assert!((found.index - index).abs() < 1e-3 && (found.tint - tint).abs() < 1e-3, "{lab:?}: {found:?}");
        assert_eq!(found.validity, validity, "{lab:?}");
        let found = yellowness(Lab::from(lab).into(), &Viewing::D65_TEN);
        assert!((found - yellow).abs() < 1e-3, "{lab:?}: {found}");
    }
}

/// Source: definition: the perfect white has W 100 (to the rounding of the printed chromaticity), Tw 0.
#[test]
fn the_perfect_white_is_100_for_either_observer() {
    let whites = [
        (Viewing::D65_TEN, Xyz { x: 94.811, y: 100.0, z: 107.304 }),
        (Viewing::D65_TWO, Xyz { x: 95.047, y: 100.0, z: 108.883 }),
        (Viewing::C_TEN, Xyz { x: 97.285, y: 100.0, z: 116.145 }),
        (Viewing::C_TWO, Xyz { x: 98.074, y: 100.0, z: 118.232 }),
    ];
    for (viewing, colour) in whites {
        let found = whiteness(colour, &viewing);
        assert!((found.index - 100.0).abs() < 0.2 && found.tint.abs() < 0.1, "{viewing:?}: {found:?}");
        assert!(yellowness(colour, &viewing).abs() < 0.05, "{viewing:?}");
    }
}

#[test]
fn a_sample_that_is_no_white_says_so() {
    // A grey is too dark for its W, black and what is no number have none.
    for (lab, validity) in [
        ([80.0, 0.0, -4.0], Validity::TooDark),
        ([0.0, 0.0, 0.0], Validity::NotWhite),
        ([f64::NAN, 0.0, 0.0], Validity::NotWhite),
        ([38.0, 58.0, 35.0], Validity::NotWhite),
    ] {
        assert_eq!(Lab::from(lab).whiteness().validity, validity, "{lab:?}");
    }
}

/// A blue bleed darkens a white and still raises its W: the reason why no white passes on W alone.
#[test]
fn a_blue_bleed_raises_whiteness() {
    let (clean, bled) = (Lab::new(95.0, -0.5, 2.0), Lab::new(90.0, 0.0, -3.0));
    assert!(bled.lightness < clean.lightness);
    assert!(bled.whiteness().index > clean.whiteness().index + 10.0);
}
