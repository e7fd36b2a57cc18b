//! A white print over a cloth has the colour that a fine spectral sum gives it, and dye moves it one way only.

use palette::white_point::D65;
use palette::{IntoColor, Srgb};
use proptest::prelude::*;
use whitehold::optics::{
    DyeAbsorption, DyeInFilm, FreshPrint, Lab, Spectrum, WHITE_POINT, WhiteFilm, appearance, cie76, ciede2000,
};

fn white(scattering_per_um: f64, reflectance: f64) -> WhiteFilm {
    WhiteFilm::new(scattering_per_um * 1e6, reflectance).expect("a usual white")
}

/// The red cloth of the table below: 4 % below 600 nm, 59 % above.
fn red_cloth() -> Spectrum {
    Spectrum::of(|wavelength| 0.04 + 0.55 / (1.0 + (-(wavelength - 600.0) / 12.0).exp()))
}

/// Kilograms of dye per m³ for a Kubelka-Munk absorption of `peak` 1/µm at the peak of the band.
fn concentration_of(peak: f64) -> f64 {
    peak * 1e6 / (2.0 * std::f64::consts::LN_10 * 1300.0 / 0.331)
}

/// Source: definition of the white point; the weights carry five decimals.
#[test]
fn a_perfect_white_is_the_white_point() {
    let found = Spectrum::flat(1.0).xyz();
    for (found, expected) in [(found.x, WHITE_POINT.x), (found.y, WHITE_POINT.y), (found.z, WHITE_POINT.z)] {
        assert!((found - expected).abs() < 1e-3, "{found} for {expected}");
    }
}

/// Source: colour-science 0.4.7, the same film at 380 to 780 nm by 5 nm: S 0.20/µm, R∞ 0.90 over a black of 5 %.
/// µm, Lab. The tolerance is that of a 20 nm grid.
#[test]
fn a_white_over_black_is_bluish_while_thin() {
    let rows = [
        (20.0, [91.175, -1.094, -0.807]),
        (40.0, [94.424, -1.069, 0.614]),
        (60.0, [95.366, -1.043, 1.222]),
        (80.0, [95.717, -1.013, 1.511]),
        (120.0, [95.921, -0.970, 1.718]),
    ];
    let white = white(0.20, 0.90);
    for (film, expected) in rows {
        let found = appearance(film * 1e-6, &white, &Spectrum::flat(0.05), None);
        let away = ciede2000(found, expected.into());
        assert!(away < 0.05, "{film} µm: {found:?} for {expected:?}, {away:.3}");
    }
}

/// Source: colour-science 0.4.7 as above, 60 µm over the red cloth: peak and width of the dye's band in nm, its K at
/// the peak in 1/µm, Lab of the stained print, ΔE00 to the clean one (95.392, −0.907, 1.268).
#[rustfmt::skip]
const TINTS: [(f64, f64, f64, [f64; 3], f64); 9] = [
    (520.0, 35.0, 0.0002, [95.264, -0.607,  1.137], 0.447),
    (520.0, 35.0, 0.0005, [95.077, -0.175,  0.947], 1.108),
    (520.0, 35.0, 0.0010, [94.782,  0.502,  0.651], 2.187),
    (520.0, 35.0, 0.0020, [94.238,  1.721,  0.119], 4.077),
    (520.0, 35.0, 0.0050, [92.879,  4.650, -1.149], 8.100),
    (620.0, 40.0, 0.0010, [94.958, -1.890,  0.523], 1.566),
    (620.0, 40.0, 0.0050, [93.587, -4.686, -1.826], 5.656),
    (435.0, 30.0, 0.0010, [95.328, -1.241,  2.371], 1.099),
    (435.0, 30.0, 0.0050, [95.112, -2.184,  5.808], 4.159),
];

#[test]
fn dye_in_the_white_tints_it_as_a_fine_spectrum_says() {
    let print = FreshPrint::new(60e-6, &white(0.20, 0.90), &red_cloth());
    assert!(ciede2000(print.lab(), Lab::new(95.392, -0.907, 1.268)) < 0.05);
    for (peak, width, absorption, lab, difference) in TINTS {
        let dye = DyeAbsorption::band(peak, width);
        let found = print.bleed_difference(&dye, concentration_of(absorption));
        assert!((found - difference).abs() < 0.05, "{peak} nm {absorption}: {found} for {difference}");
        let away = ciede2000(print.stained(&dye, concentration_of(absorption)), lab.into());
        assert!(away < 0.06, "{peak} nm {absorption}: {away}");
    }
}

/// Source: the level at which dye in the top of a white is taken to show, 0.03 kg/m³, stands for a ΔE00 of about 1.1.
/// The range is that of usual whites (S 0.15 to 0.25/µm, R∞ 0.885 to 0.92) and of films of 40 to 80 µm.
#[test]
fn the_visible_level_of_a_red_dye_is_about_one() {
    let red = DyeAbsorption::of_hue(30.0);
    for (scattering, reflectance) in [(0.15, 0.885), (0.20, 0.90), (0.25, 0.92)] {
        for film in [40e-6, 60e-6, 80e-6] {
            let found = FreshPrint::new(film, &white(scattering, reflectance), &red_cloth())
                .bleed_difference(&red, 0.03);
            assert!((0.85..1.6).contains(&found), "{scattering} {reflectance} {film}: {found}");
        }
    }
}

/// Source: Kubelka-Munk absorption is twice the Beer-Lambert one: at 0.03 kg/m³ the endless film of K/S 0.007 and
/// S 0.15/µm loses 0.024 of its reflectance at the peak of the dye.
#[test]
fn reflectance_lost_at_the_peak_of_the_dye() {
    let at_520 = DyeAbsorption::band(520.0, 35.0).spectrum().0[6];
    let endless = |ratio: f64| whitehold::optics::endless_reflectance(ratio);
    let lost = endless(0.007) - endless(0.007 + 0.03 * at_520 / 0.15e6);
    assert!((lost - 0.024).abs() < 5e-4, "{lost}");
}

/// Source: the sRGB cube in steps of an eighth, through the crate `palette` to CIELAB. Every screen colour has to be
/// met; cloth darker than L* 0.5 is taken for L* 0.5.
#[test]
fn a_cloth_spectrum_has_the_colour_it_was_made_for() {
    for code in 0..729 {
        let channel = |index: u32| f64::from(index % 9) / 8.0;
        let colour: palette::Lab<D65, f64> =
            Srgb::new(channel(code), channel(code / 9), channel(code / 81)).into_linear().into_color();
        let wanted = Lab::new(colour.l, colour.a, colour.b);
        let cloth = Spectrum::of_cloth(wanted);
        assert!(cloth.0.iter().all(|r| (0.0..=1.0).contains(r)), "{wanted:?}: {cloth:?}");
        let away = ciede2000(cloth.lab(), wanted);
        assert!(away < 0.5, "{wanted:?}: {away}");
    }
}

/// A colour beyond every spectrum keeps its lightness and hue, and something that is no colour does no harm.
#[test]
fn an_impossible_cloth_colour_is_cut_to_a_possible_one() {
    for wanted in [Lab::new(20.0, 120.0, 100.0), Lab::new(90.0, 100.0, -100.0), Lab::new(50.0, -140.0, 0.0)] {
        let met = Spectrum::of_cloth(wanted).lab();
        assert!((met.lightness - wanted.lightness).abs() < 0.01, "{met:?}");
        assert!((met.hue() - wanted.hue()).abs() < 0.1, "{met:?}");
        assert!(met.chroma() > 20.0 && met.chroma() < wanted.chroma(), "{met:?}");
    }
    for odd in [Lab::new(-10.0, 0.0, 0.0), Lab::new(150.0, 0.0, 0.0)] {
        assert!(Spectrum::of_cloth(odd).0.iter().all(|r| (0.0..=1.0).contains(r)));
    }
    assert!(Spectrum::of_cloth(Lab::new(f64::NAN, 0.0, 0.0)).lab().lightness.is_nan());
}

/// The dye of a hue tints a white towards that hue, and nothing jumps on the way round.
#[test]
fn dyes_go_round_the_hues_without_a_jump() {
    let print = FreshPrint::new(80e-6, &white(0.2, 0.9), &Spectrum::flat(0.9));
    let tint = |hue: f64| print.stained(&DyeAbsorption::of_hue(hue), 0.3);
    for tenth in 0..3600 {
        let hue = f64::from(tenth) / 10.0;
        let next = tint(hue + 0.1);
        assert!(cie76(tint(hue), next) < 0.15, "{hue}: {:?} {next:?}", tint(hue));
        let shift = Lab::new(0.0, next.a - print.lab().a, next.b - print.lab().b).hue();
        let away = (shift - hue + 540.0).rem_euclid(360.0) - 180.0;
        assert!(away.abs() < 75.0, "dye of hue {hue} tints towards {shift}");
    }
    assert!(cie76(tint(400.0), tint(40.0)) < 1e-9 && cie76(tint(-85.0), tint(275.0)) < 1e-9);
}

#[test]
fn a_white_that_cannot_be_is_an_error() {
    for (scattering, reflectance, field) in [
        (0.2, 0.9, "scattering"),
        (0.2e6, 90.0, "reflectance"),
        (0.2e6, f64::NAN, "reflectance"),
        (-1.0, 0.9, "scattering"),
    ] {
        assert_eq!(WhiteFilm::new(scattering, reflectance).expect_err(field).field, field);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// More dye is a greater difference, from nothing up to a ΔE00 of 6, and stays beyond 6 up to a hundred times the
    /// visible level. Past 7 or so CIEDE2000 itself may step back: where the tint comes to lie opposite the tint of the
    /// fresh white, its mean hue turns by half a circle at once (Sharma, Wu & Dalal 2005, on its discontinuities).
    #[test]
    fn more_dye_is_more_difference(
        scattering in 0.08..0.3, reflectance in 0.82..0.95, film in 20e-6..200e-6, hue in 0.0..360.0,
        cloth in (5.0..95.0, -60.0..60.0, -60.0..60.0),
    ) {
        let cloth = Spectrum::of_cloth(Lab::new(cloth.0, cloth.1, cloth.2));
        let print = FreshPrint::new(film, &white(scattering, reflectance), &cloth);
        let dye = DyeAbsorption::of_hue(hue);
        prop_assert!(print.bleed_difference(&dye, 0.0).abs() < 1e-12);
        let mut before = 0.0_f64;
        for step in 1..=100 {
            let concentration = 3.0 * (f64::from(step) / 100.0).powi(2);
            let now = print.bleed_difference(&dye, concentration);
            prop_assert!(now > before.min(6.0), "{concentration} kg/m³: {now} after {before}");
            before = now;
        }
    }

    #[test]
    fn dye_for_no_dye_changes_nothing(film in 0.0..200e-6, hue in 0.0..360.0) {
        let dye = DyeInFilm { absorption: DyeAbsorption::of_hue(hue), concentration: 0.0 };
        let white = white(0.2, 0.9);
        let clean = appearance(film, &white, &red_cloth(), None);
        prop_assert!(cie76(clean, appearance(film, &white, &red_cloth(), Some(&dye))) < 1e-12);
    }
}
