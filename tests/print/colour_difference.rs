//! CIELAB and the distance between two colours are those of the published tables.
use proptest::prelude::*;
use whitehold::optics::{Lab, Xyz, cie76, ciede2000, cmc};

/// Source: Sharma, Wu & Dalal (2005), Color Research and Application 30(1):21-30, Table 1, all 34 pairs, as kept in
/// the tests of colour-science 0.4.7. Printed to four decimals, hence the tolerance of half of the last.
#[rustfmt::skip]
const SHARMA: [([f64; 3], [f64; 3], f64); 34] = [
    ([50.0, 2.6772, -79.7751], [50.0, 0.0, -82.7485], 2.0425),
    ([50.0, 3.1571, -77.2803], [50.0, 0.0, -82.7485], 2.8615),
    ([50.0, 2.8361, -74.02], [50.0, 0.0, -82.7485], 3.4412),
    ([50.0, -1.3802, -84.2814], [50.0, 0.0, -82.7485], 1.0000),
    ([50.0, -1.1848, -84.8006], [50.0, 0.0, -82.7485], 1.0000),
    ([50.0, -0.9009, -85.5211], [50.0, 0.0, -82.7485], 1.0000),
    ([50.0, 0.0, 0.0], [50.0, -1.0, 2.0], 2.3669),
    ([50.0, -1.0, 2.0], [50.0, 0.0, 0.0], 2.3669),
    ([50.0, 2.49, -0.001], [50.0, -2.49, 0.0009], 7.1792),
    ([50.0, 2.49, -0.001], [50.0, -2.49, 0.001], 7.1792),
    ([50.0, 2.49, -0.001], [50.0, -2.49, 0.0011], 7.2195),
    ([50.0, 2.49, -0.001], [50.0, -2.49, 0.0012], 7.2195),
    ([50.0, -0.001, 2.49], [50.0, 0.0009, -2.49], 4.8045),
    ([50.0, -0.001, 2.49], [50.0, 0.001, -2.49], 4.8045),
    ([50.0, -0.001, 2.49], [50.0, 0.0011, -2.49], 4.7461),
    ([50.0, 2.5, 0.0], [50.0, 0.0, -2.5], 4.3065),
    ([50.0, 2.5, 0.0], [73.0, 25.0, -18.0], 27.1492),
    ([50.0, 2.5, 0.0], [61.0, -5.0, 29.0], 22.8977),
    ([50.0, 2.5, 0.0], [56.0, -27.0, -3.0], 31.9030),
    ([50.0, 2.5, 0.0], [58.0, 24.0, 15.0], 19.4535),
    ([50.0, 2.5, 0.0], [50.0, 3.1736, 0.5854], 1.0000),
    ([50.0, 2.5, 0.0], [50.0, 3.2972, 0.0], 1.0000),
    ([50.0, 2.5, 0.0], [50.0, 1.8634, 0.5757], 1.0000),
    ([50.0, 2.5, 0.0], [50.0, 3.2592, 0.335], 1.0000),
    ([60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644),
    ([63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.2630),
    ([61.2901, 3.7196, -5.3901], [61.4292, 2.248, -4.962], 1.8731),
    ([35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645),
    ([22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373),
    ([36.4612, 47.858, 18.3852], [36.2715, 50.5065, 21.2231], 1.4146),
    ([90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441),
    ([90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381),
    ([6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377),
    ([2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082),
];

#[test]
fn every_pair_of_sharma_wu_and_dalal() {
    for (number, (one, other, expected)) in SHARMA.iter().enumerate() {
        let (one, other) = ((*one).into(), (*other).into());
        for found in [ciede2000(one, other), ciede2000(other, one), by_the_paper(one, other)] {
            assert!((found - expected).abs() <= 5e-5, "pair {}: {found} for {expected}", number + 1);
        }
    }
}

/// Source: colour-science 0.4.7, `delta_E_CMC` with l = 2, c = 1 and with l = c = 1; six decimals. Reference first.
/// The rows cross both branches of the lightness (L* 16) and of the hue (164° and 345°).
#[rustfmt::skip]
const CMC: [([f64; 3], [f64; 3], f64, f64); 10] = [
    ([50.0, 2.6772, -79.7751], [50.0, 0.0, -82.7485], 1.738736, 1.738736),
    ([50.0, 2.5, 0.0], [73.0, 25.0, -18.0], 37.923276, 42.108755),
    ([60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.420486, 1.428230),
    ([22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 3.060441, 3.086955),
    ([6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.952801, 1.803172),
    ([95.0, -0.5, 2.0], [93.0, 4.0, 0.5], 6.403174, 6.513003),
    ([38.0, 58.0, 35.0], [40.0, 55.0, 33.0], 1.635993, 2.475964),
    ([45.0, -30.0, -1.0], [46.0, -28.0, 2.0], 2.267041, 2.418604),
    ([50.0, 0.0, 0.0], [52.0, 0.0, 0.0], 0.918853, 1.837706),
    ([40.0, -20.0, -12.0], [42.0, -22.0, -9.0], 2.889261, 3.405600),
];

#[test]
fn cmc_of_pairs_worked_by_a_library() {
    for (reference, other, textile, even) in CMC {
        for (lightness, expected) in [(2.0, textile), (1.0, even)] {
            let found = cmc(reference.into(), other.into(), lightness, 1.0);
            assert!((found - expected).abs() < 1e-6, "{reference:?} {other:?}: {found} for {expected}");
        }
    }
}

/// Source: colour-science 0.4.7 for D65/10°, white (94.811, 100, 107.304); five decimals. The last row lies below the
/// knee of the cube root.
#[test]
fn cielab_of_tristimulus_values() {
    let rows = [
        ([84.2, 88.6, 92.1], [95.41301, 0.37598, 2.02242]),
        ([20.0, 18.0, 5.0], [49.49611, 15.33088, 40.95490]),
        ([0.4, 0.5, 0.6], [4.51648, -3.04115, -0.92135]),
    ];
    for ([x, y, z], expected) in rows {
        let found: [f64; 3] = Lab::from(Xyz { x, y, z }).into();
        for (found, expected) in found.iter().zip(expected) {
            assert!((found - expected).abs() < 6e-6, "{found} for {expected}");
        }
        let back = Xyz::from(Lab::from(expected));
        assert!((back.x - x).abs().max((back.y - y).abs()).max((back.z - z).abs()) < 1e-4, "{back:?}");
    }
}

/// Source: colour-science 0.4.7, `Lab_to_XYZ`, then `XYZ_to_sRGB` with the Bradford adaptation, clipped to 0..1 and
/// rounded to eight bits. Rows with a channel out of range test the clipping.
#[test]
fn swatches_of_cloth_colours() {
    let rows = [
        ([50.0, 0.0, 0.0], "#777777"),
        ([38.0, 58.0, 35.0], "#b01924"),
        ([30.0, 20.0, -50.0], "#214196"),
        ([90.0, -5.0, 80.0], "#ffe238"),
        ([55.0, -60.0, 30.0], "#009a4c"),
        ([12.0, 2.0, -8.0], "#1c1f2a"),
        ([95.0, -0.9, 1.3], "#f0f1ee"),
        ([70.0, 60.0, 60.0], "#ff763f"),
        ([100.0, 0.0, 0.0], "#ffffff"),
        ([0.0, 0.0, 0.0], "#000000"),
        ([45.0, 75.0, -60.0], "#ae1fd1"),
        ([f64::NAN, 0.0, 0.0], "#000000"),
    ];
    for (lab, expected) in rows {
        assert_eq!(Lab::from(lab).swatch(), expected, "{lab:?}");
    }
}

fn any_colour() -> impl Strategy<Value = Lab> {
    (0.0..100.0, -110.0..110.0, -110.0..110.0).prop_map(|(lightness, a, b)| Lab::new(lightness, a, b))
}

proptest! {
    #[test]
    fn a_colour_is_no_distance_from_itself(colour in any_colour()) {
        prop_assert!(ciede2000(colour, colour).abs() < 1e-12);
        prop_assert!(cie76(colour, colour).abs() < 1e-12);
    }

    #[test]
    fn the_way_back_is_as_far(one in any_colour(), other in any_colour()) {
        prop_assert!((ciede2000(one, other) - ciede2000(other, one)).abs() < 1e-9);
    }

    #[test]
    fn lab_survives_the_way_through_tristimulus_values(colour in any_colour()) {
        prop_assert!(cie76(colour, Xyz::from(colour).into()) < 1e-9);
    }

    /// Source: the formula as the paper prints it, written down separately below. The crate that computes ΔE00 takes
    /// another mean hue where two hues lie across 0° (always half a turn up), which moves it by up to 2e-4.
    #[test]
    fn the_formula_of_the_paper_agrees(one in any_colour(), other in any_colour()) {
        let (found, expected) = (ciede2000(one, other), by_the_paper(one, other));
        prop_assert!((found - expected).abs() < 5e-4, "{found} for {expected}");
    }

    #[test]
    fn cmc_is_no_distance_to_itself_and_grows_straight_away_from_it(
        colour in any_colour(), turn in 0.0..360.0_f64, tilt in -1.0..1.0_f64,
    ) {
        prop_assert!(cmc(colour, colour, 2.0, 1.0) < 1e-9);
        let away = |step: f64| {
            let (sin, cos) = turn.to_radians().sin_cos();
            let other = Lab::new(colour.lightness + step * tilt, colour.a + step * cos, colour.b + step * sin);
            cmc(colour, other, 2.0, 1.0)
        };
        prop_assert!(away(0.5) < away(1.0) && away(1.0) < away(2.0));
    }
}

/// ΔE00 in the order in which Sharma, Wu & Dalal (2005) print it, hues in degrees. Hues that lie opposite each other
/// to within a billionth count as on one side: the last bit of the arc tangent must not decide pair 14.
fn by_the_paper(one: Lab, other: Lab) -> f64 {
    let weight = |chroma: f64| (chroma.powi(7) / (chroma.powi(7) + 25.0_f64.powi(7))).sqrt();
    let g = 0.5 * (1.0 - weight(0.5 * (one.chroma() + other.chroma())));
    let [(c1, h1), (c2, h2)] = [one, other].map(|colour| {
        let a = (1.0 + g) * colour.a;
        (a.hypot(colour.b), Lab::new(0.0, a, colour.b).hue())
    });
    let grey = c1 * c2 == 0.0;
    let near = (h2 - h1).abs() <= 180.0 + 1e-9;
    let hue_step = match h2 - h1 {
        _ if grey => 0.0,
        step if near => step,
        step if step > 0.0 => step - 360.0,
        step => step + 360.0,
    };
    let mean_hue = match h1 + h2 {
        sum if grey => sum,
        sum if near => 0.5 * sum,
        sum if sum < 360.0 => 0.5 * (sum + 360.0),
        sum => 0.5 * (sum - 360.0),
    };
    let (mean_lightness, mean_chroma) = (0.5 * (one.lightness + other.lightness), 0.5 * (c1 + c2));
    let sin = |degrees: f64| degrees.to_radians().sin();
    let cos = |degrees: f64| degrees.to_radians().cos();
    let t = 1.0 - 0.17 * cos(mean_hue - 30.0) + 0.24 * cos(2.0 * mean_hue) + 0.32 * cos(3.0 * mean_hue + 6.0)
        - 0.20 * cos(4.0 * mean_hue - 63.0);
    let turn = 30.0 * (-((mean_hue - 275.0) / 25.0).powi(2)).exp();
    let rotation = -sin(2.0 * turn) * 2.0 * weight(mean_chroma);
    let middle = (mean_lightness - 50.0).powi(2);
    let lightness = (other.lightness - one.lightness) / (1.0 + 0.015 * middle / (20.0 + middle).sqrt());
    let chroma = (c2 - c1) / (1.0 + 0.045 * mean_chroma);
    let hue = 2.0 * (c1 * c2).sqrt() * sin(0.5 * hue_step) / (1.0 + 0.015 * mean_chroma * t);
    (lightness.powi(2) + chroma.powi(2) + hue.powi(2) + rotation * chroma * hue).max(0.0).sqrt()
}
