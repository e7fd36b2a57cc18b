//! A film of white over a backing reflects what the two-flux equation says.
use proptest::prelude::*;
use whitehold::optics::{
    Cards, DrawDown, Lab, OpticalLayer, Spectrum, WhiteFilm, absorption_ratio, contrast_ratio,
    endless_reflectance,
};
use whitehold::quantity::Problem;

/// dR/dX = S − 2 (K + S) R + S R², marched from the backing up by the classical Runge-Kutta rule.
fn marched(scattering: f64, absorption: f64, thickness: f64, backing: f64) -> f64 {
    let slope = |r: f64| scattering - 2.0 * (absorption + scattering) * r + scattering * r * r;
    let steps = 200 + (2000.0 * (scattering + absorption) * thickness) as u32;
    let step = thickness / f64::from(steps);
    (0..steps).fold(backing, |r, _| {
        let first = slope(r);
        let second = slope(r + 0.5 * step * first);
        let third = slope(r + 0.5 * step * second);
        let fourth = slope(r + step * third);
        r + step / 6.0 * (first + 2.0 * second + 2.0 * third + fourth)
    })
}

fn within(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} for {expected}");
}

/// Source: K/S of R, Kubelka-Munk function, six digits.
#[test]
fn absorption_ratio_of_an_endless_film() {
    let rows = [
        (0.05, 9.025),
        (0.1, 4.05),
        (0.2, 1.6),
        (0.3, 0.816_667),
        (0.4, 0.45),
        (0.5, 0.25),
        (0.6, 0.133_333),
        (0.7, 0.064_285_7),
        (0.8, 0.025),
        (0.85, 0.013_235_3),
        (0.9, 0.005_555_6),
        (0.95, 0.001_315_8),
    ];
    for (reflectance, ratio) in rows {
        within(absorption_ratio(reflectance), ratio, 5e-7);
        within(endless_reflectance(absorption_ratio(reflectance)), reflectance, 1e-12);
    }
}

/// Source: hyperbolic form of Kubelka (1948), JOSA 38:448, worked in Python: R∞, S X, R0, R over 0.80, contrast, T.
#[test]
fn films_of_a_table() {
    let rows = [
        (0.80, 2.0, 0.64172, 0.80000, 0.80215, 0.31028),
        (0.80, 8.0, 0.79199, 0.80000, 0.98999, 0.06057),
        (0.85, 4.0, 0.77054, 0.83781, 0.91970, 0.17960),
        (0.85, 8.0, 0.83172, 0.84679, 0.98220, 0.07939),
        (0.90, 4.0, 0.78725, 0.86616, 0.90890, 0.19109),
        (0.90, 8.0, 0.86285, 0.88667, 0.97314, 0.09603),
        (0.90, 10.0, 0.87704, 0.89145, 0.98383, 0.07331),
        (0.95, 10.0, 0.90095, 0.92226, 0.97689, 0.08626),
    ];
    for (endless, optical_thickness, over_black, over_white, contrast, through) in rows {
        let film = OpticalLayer::new(1.0, absorption_ratio(endless), optical_thickness);
        within(film.reflectance, over_black, 6e-6);
        within(film.over(0.80), over_white, 6e-6);
        within(contrast_ratio(film, 0.80), contrast, 6e-6);
        within(film.transmittance, through, 6e-6);
    }
}

/// Source: the same, ten digits: S and K in 1/µm, X in µm, backing, reflectance.
#[test]
fn films_worked_at_one_wavelength() {
    let rows = [
        (0.2, 0.001, 60.0, 0.05, 0.889_040_228_0),
        (0.2, 0.001, 60.0, 0.80, 0.898_450_073_8),
        (0.2, 0.002, 60.0, 0.00, 0.860_927_516_1),
        (0.2, 0.002, 60.0, 0.80, 0.866_383_068_9),
        (0.2, 0.002, 60.0, 0.05, 0.861_038_420_4),
        (0.2, 0.005, 40.0, 0.30, 0.793_434_169_5),
        (0.1, 0.0005, 30.0, 0.05, 0.744_755_457_0),
        (0.05, 0.01, 20.0, 0.40, 0.502_958_134_8),
    ];
    for (scattering, absorption, thickness, backing, expected) in rows {
        within(OpticalLayer::new(scattering, absorption, thickness).over(backing), expected, 6e-11);
    }
}

/// Source: S X at which a film reaches a contrast ratio over a card of 0.80, root of the hyperbolic form by scipy 1.17.
#[test]
fn thickness_that_hides() {
    let rows = [
        (0.75, [2.927_714, 4.049_279, 5.580_044, 6.754_976]),
        (0.80, [3.210_141, 4.576_086, 6.500_688, 8.002_535]),
        (0.85, [3.493_847, 5.172_097, 7.667_049, 9.676_547]),
        (0.88, [3.653_620, 5.551_576, 8.514_129, 10.981_749]),
        (0.90, [3.750_344, 5.803_062, 9.142_672, 12.017_379]),
        (0.92, [3.835_452, 6.042_023, 9.810_765, 13.203_833]),
        (0.95, [3.934_019, 6.345_427, 10.808_942, 15.225_892]),
    ];
    for (endless, thicknesses) in rows {
        for (thickness, contrast) in thicknesses.into_iter().zip([0.90, 0.95, 0.98, 0.99]) {
            within(
                contrast_ratio(OpticalLayer::new(1.0, absorption_ratio(endless), thickness), 0.80),
                contrast,
                1e-7,
            );
        }
    }
}

/// Source: limits of the equation: without absorption, without scattering, no film at all.
#[test]
fn limits_of_the_equation() {
    for (optical, backing) in [(0.3, 0.0), (2.0, 0.1), (12.0, 0.5), (400.0, 0.9)] {
        let clear = optical * (1.0 - backing);
        within(OpticalLayer::new(optical, 0.0, 1.0).over(backing), (backing + clear) / (1.0 + clear), 1e-14);
        within(OpticalLayer::new(optical, 1e-13, 1.0).over(backing), (backing + clear) / (1.0 + clear), 1e-9);
        within(OpticalLayer::new(0.0, optical, 1.0).over(backing), backing * (-2.0 * optical).exp(), 1e-14);
        within(OpticalLayer::new(optical, optical, 0.0).over(backing), backing, 1e-14);
    }
}

/// Source: identity of the equation: an endless film of the same ink below changes nothing.
#[test]
fn over_its_own_endless_film_it_shows_no_thickness() {
    for endless in [0.6, 0.8, 0.93] {
        for thickness in [0.01, 1.0, 30.0] {
            within(
                OpticalLayer::new(1.0, absorption_ratio(endless), thickness).over(endless),
                endless,
                1e-13,
            );
        }
    }
}

/// A card with a perfect black.
fn card(white: f64) -> Cards {
    Cards { black: 0.0, white }
}

/// Source: the draw-down worked in Python: a = 1.01, R∞ 0.868225531, S X 12.
#[test]
fn one_draw_down_gives_scattering_and_absorption() {
    let read =
        DrawDown::read(0.860_927_516_1, 0.866_383_068_9, card(0.80), 60e-6).expect("a valid draw-down");
    within(read.scattering * 60e-6, 12.000, 1e-4);
    within(read.absorption / read.scattering, 0.01, 1e-7);
    within(read.endless_reflectance, 0.868_225_531, 1e-7);
}

/// Source: the two-flux equation integrated by scipy 1.17 (DOP853, rtol 1e-12) over cards whose black is not perfect:
/// S and K in 1/µm, X in µm, black and white card, the film's reflectance over each, R∞.
#[test]
fn a_draw_down_over_a_real_card_returns_the_ink() {
    let rows = [
        (0.20, 0.0020, 20.0, 0.008, 0.81, 0.777_731_902_786, 0.851_785_438_560, 0.868_225_531),
        (0.15, 0.0008, 40.0, 0.005, 0.79, 0.838_407_304_401, 0.878_550_076_488, 0.901_916_163),
        (0.10, 0.0040, 30.0, 0.050, 0.85, 0.691_236_758_782, 0.774_317_844_811, 0.754_342_863),
        (0.18, 0.0010, 25.0, 0.012, 0.78, 0.804_059_174_609, 0.865_587_060_221, 0.900_000_000),
    ];
    for (scattering, absorption, film, black, white, over_black, over_white, endless) in rows {
        let read =
            DrawDown::read(over_black, over_white, Cards { black, white }, film * 1e-6).expect("a real film");
        within(read.scattering * 1e-6 / scattering, 1.0, 1e-7);
        within(read.absorption * 1e-6 / absorption, 1.0, 1e-6);
        within(read.endless_reflectance, endless, 1e-8);
        // Taking the black for perfect would read more scattering than there is.
        let careless = DrawDown::read(over_black, over_white, card(white), film * 1e-6).expect("a real film");
        assert!(careless.scattering > read.scattering, "{careless:?}");
    }
}

/// A meter reads Lab: the luminance of a white's draw-down stands for its reflectance at 550 nm. The white comes back
/// to within 4 % in scattering and 0.005 in reflectance, and its print to within ΔE00 0.2.
#[test]
fn a_draw_down_read_as_luminance_returns_the_white() {
    let red = Spectrum::of_cloth(Lab::new(38.0, 58.0, 35.0));
    for (scattering, reflectance, film) in
        [(0.20e6, 0.90, 30e-6), (0.13e6, 0.88, 40e-6), (0.25e6, 0.93, 25e-6)]
    {
        let white = WhiteFilm::new(scattering, reflectance).expect("a usual white");
        let luminance = |card: f64| white.over(film, &Spectrum::flat(card)).xyz().y / 100.0;
        let cards = Cards { black: 0.01, white: 0.80 };
        let read =
            DrawDown::read(luminance(cards.black), luminance(cards.white), cards, film).expect("a film");
        within(read.scattering / scattering, 1.0, 0.04);
        within(read.endless_reflectance, reflectance, 0.005);
        let again = read.white_film().expect("a usual white");
        let away = whitehold::optics::ciede2000(again.over(50e-6, &red).lab(), white.over(50e-6, &red).lab());
        assert!(away < 0.2, "{read:?}: {away}");
    }
}

#[test]
fn a_draw_down_that_cannot_be_right_is_an_error() {
    // over black, over white, black card, white card, film in m, field named
    let rows = [
        (0.80, 0.75, 0.0, 0.80, 60e-6, "over_white"), // darker over white
        (0.80, 0.80, 0.0, 0.80, 60e-6, "over_white"), // hides completely
        (0.50, 0.95, 0.0, 0.80, 60e-6, "over_white"), // lighter than without absorption
        (0.0, 0.5, 0.0, 0.80, 60e-6, "over_black"),
        (0.05, 0.5, 0.06, 0.80, 60e-6, "over_black"), // darker than the bare card
        (86.0, 87.0, 0.0, 0.80, 60e-6, "over_black"), // percent for a fraction
        (0.5, 0.6, 0.80, 0.80, 60e-6, "black_card"),  // halves mixed up
        (0.5, 0.6, 0.01, 0.01, 60e-6, "white_card"),
        (0.5, 0.6, 0.0, 80.0, 60e-6, "white_card"),
        (0.5, 0.6, 0.0, 0.8, 60.0, "film_um"), // µm for m
        (f64::NAN, 0.6, 0.0, 0.8, 60e-6, "over_black"),
    ];
    for (over_black, over_white, black, white, film, field) in rows {
        let error = DrawDown::read(over_black, over_white, Cards { black, white }, film).expect_err(field);
        assert_eq!(error.field, field, "{error}");
    }
    let error = DrawDown::read(0.80, 0.75, card(0.80), 60e-6).expect_err("darker over white");
    assert!(matches!(error.problem, Problem::OutOfRange { min, .. } if min > 0.80), "{error}");
}

proptest! {
    /// Source: direct integration of the two-flux equation.
    #[test]
    fn the_march_through_the_film_agrees(
        scattering in 0.0..0.4, absorption in 0.0..0.1, thickness in 0.0..120.0, backing in 0.0..0.95,
    ) {
        let found = OpticalLayer::new(scattering, absorption, thickness).over(backing);
        let expected = marched(scattering, absorption, thickness, backing);
        prop_assert!((found - expected).abs() < 1e-10, "{found} for {expected}");
    }

    /// Source: Kubelka (1954), JOSA 44:330: a film cut in two is the same film.
    #[test]
    fn two_layers_add_up(
        scattering in 0.01..0.4, absorption in 0.0..0.1, upper in 0.0..60.0, lower in 0.0..60.0, backing in 0.0..0.95,
    ) {
        let (upper_half, lower_half) =
            (OpticalLayer::new(scattering, absorption, upper), OpticalLayer::new(scattering, absorption, lower));
        let whole = OpticalLayer::new(scattering, absorption, upper + lower);
        let added = upper_half.on(lower_half);
        prop_assert!((added.reflectance - whole.reflectance).abs() < 1e-12);
        prop_assert!((added.transmittance - whole.transmittance).abs() < 1e-12);
        prop_assert!((upper_half.over(lower_half.over(backing)) - whole.over(backing)).abs() < 1e-12);
    }

    #[test]
    fn a_draw_down_returns_the_ink_it_was_made_of(
        scattering in 3e4..4e5, endless in 0.6..0.97, optical in 0.5..6.0, black in 0.0..0.1, white in 0.75..0.9,
    ) {
        let film = optical / scattering;
        let layer = OpticalLayer::new(scattering, scattering * absorption_ratio(endless), film);
        let (over_black, over_white) = (layer.over(black), layer.over(white));
        let cards = Cards { black, white };
        let read = DrawDown::read(over_black, over_white, cards, film).expect("made from a real film");
        prop_assert!((read.scattering / scattering - 1.0).abs() < 1e-6, "{read:?}");
        prop_assert!((read.endless_reflectance - endless).abs() < 1e-6, "{read:?}");
    }
}
