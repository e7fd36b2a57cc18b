//! A film of white hides the garment the better the thicker it is.

use whitehold::ink::{DepositedFilm, Mesh, Substrate, contrast_ratio, deposit, opacity};
use whitehold::optics::{Lab, Spectrum, WhiteFilm, cie76};

fn white() -> WhiteFilm {
    WhiteFilm::new(0.20e6, 0.90).expect("a usual white")
}

fn coarse_mesh() -> Mesh {
    Mesh { id: "mesh".into(), threads_per_m: 4300.0, thread: 80e-6, thickness: 128e-6, over_mesh: 20e-6 }
}

/// A jersey's face.
const JERSEY: Substrate = Substrate { nap: 60e-6, film: 0.0, body: 1.0 };

/// Source: colour-science 0.4.7 at 5 nm: luminance over black by luminance over 0.80, S 0.20/µm, R∞ 0.90. The black
/// there reflects 5 %, ours nothing: over black the film is a little darker, by T² 0.05/R0 (0.1 % at 40 µm).
#[test]
fn contrast_ratio_of_a_white() {
    for (film, expected, tolerance) in [
        (20e-6, 0.9111, 1.2e-2),
        (40e-6, 0.9736, 3e-3),
        (60e-6, 0.9901, 1e-3),
        (80e-6, 0.9959, 5e-4),
        (120e-6, 0.9993, 1e-4),
    ] {
        let found = contrast_ratio(&DepositedFilm::flat(film), &white());
        assert!((found - expected).abs() < tolerance && found <= expected, "{film}: {found} for {expected}");
    }
}

#[test]
fn no_film_hides_nothing_and_an_endless_one_everything() {
    let garment = Spectrum::of_cloth(Lab::new(38.0, 58.0, 35.0));
    assert!(contrast_ratio(&DepositedFilm::flat(0.0), &white()).abs() < 1e-12);
    let bare = opacity(&DepositedFilm::flat(0.0), &white(), &garment);
    assert!(cie76(bare.colour, Lab::new(38.0, 58.0, 35.0)) < 0.01, "{bare:?}");
    let deep = opacity(&DepositedFilm::flat(5e-3), &white(), &garment);
    assert!(deep.garment_shows < 1e-6 && deep.contrast_ratio > 1.0 - 1e-9, "{deep:?}");
    assert!(cie76(deep.colour, white().endless()) < 1e-6);
}

/// The thicker the film the less the garment shows, on light and dark, dull and strong colours.
#[test]
fn each_micrometre_hides_more() {
    for lab in
        [[12.0, 2.0, -8.0], [38.0, 58.0, 35.0], [30.0, 20.0, -50.0], [80.0, 0.0, 70.0], [55.0, 0.0, 0.0]]
    {
        let garment = Spectrum::of_cloth(lab.into());
        let film = |micrometres: i32| {
            opacity(&DepositedFilm::flat(f64::from(micrometres) * 1e-6), &white(), &garment)
        };
        for micrometres in 5..200 {
            let (thin, thick) = (film(micrometres), film(micrometres + 1));
            assert!(thick.contrast_ratio > thin.contrast_ratio, "{lab:?} {micrometres}");
            assert!(thick.garment_shows < thin.garment_shows, "{lab:?} {micrometres}");
        }
    }
}

/// Fewest strokes through the coarse mesh with which a jersey of this colour shows no more than `most` (ΔE00).
fn strokes_needed(garment: &Spectrum, most: f64) -> Option<u32> {
    let film = deposit(&coarse_mesh(), 0.65, 1);
    let shows =
        |strokes| opacity(&DepositedFilm::new(film, strokes, &JERSEY), &white(), garment).garment_shows;
    (1..=4).find(|&strokes| shows(strokes) <= most)
}

/// Source: common practice, no source: a dark jersey wants print-flash-print, a pale one hides under a single stroke
/// of a coarse mesh. Limit ΔE00 3, what a customer remarks.
#[test]
fn a_dark_jersey_wants_two_strokes_and_a_pale_one_a_single_one() {
    for (lab, strokes) in [([12.0, 2.0, -8.0], 2), ([38.0, 58.0, 35.0], 2), ([88.0, 1.0, 8.0], 1)] {
        let garment = Spectrum::of_cloth(lab.into());
        assert_eq!(strokes_needed(&garment, 3.0), Some(strokes), "{lab:?}");
    }
}

/// Thin over the crowns and thick between them hides less than the same ink spread evenly: the hiding of a film falls
/// off faster than its thickness.
#[test]
fn an_uneven_film_hides_less_than_an_even_one_of_the_same_ink() {
    let garment = Spectrum::of_cloth(Lab::new(12.0, 2.0, -8.0));
    for (film, nap) in [(25e-6, 30e-6), (40e-6, 60e-6), (50e-6, 250e-6)] {
        let uneven = DepositedFilm::new(film, 2, &Substrate { nap, film: 0.0, body: 1.0 });
        let even = DepositedFilm::flat(uneven.above());
        let shows = |lay: &DepositedFilm| opacity(lay, &white(), &garment).garment_shows;
        assert!(shows(&uneven) > shows(&even), "{film} {nap}: {} {}", shows(&uneven), shows(&even));
        assert!(contrast_ratio(&uneven, &white()) < contrast_ratio(&even, &white()));
    }
}

/// Source: colour-science 0.4.7 at 5 nm, S 0.20/µm, R∞ 0.90: over a black of 5 % a film of 20 µm has b* −0.807, one of
/// 120 µm 1.718. The shift of a thin white is one to blue.
#[test]
fn a_thin_white_over_black_is_bluish_and_a_thick_one_is_not() {
    let black = Spectrum::flat(0.05);
    let look = |micrometres: f64| opacity(&DepositedFilm::flat(micrometres * 1e-6), &white(), &black);
    for (micrometres, b) in [(20.0, -0.807), (40.0, 0.614), (60.0, 1.222), (120.0, 1.718)] {
        assert!((look(micrometres).colour.b - b).abs() < 0.08, "{micrometres} µm: {:?}", look(micrometres));
    }
    assert!(look(20.0).bluish() > 2.0 && look(120.0).bluish() < 0.15);
    assert!(look(20.0).bluish() > look(40.0).bluish() && look(40.0).bluish() > look(60.0).bluish());
}

/// A grey blocker of 0.45 dulls a thin white over it, though it lightens a black cloth; a thicker white lifts it.
#[test]
fn a_grey_blocker_dulls_the_white_over_it() {
    let look = |micrometres: f64, backing: f64| {
        opacity(&DepositedFilm::flat(micrometres * 1e-6), &white(), &Spectrum::flat(backing))
    };
    assert!(look(20.0, 0.45).dull() > 1.0, "{:?}", look(20.0, 0.45));
    assert!(look(20.0, 0.45).dull() < look(20.0, 0.05).dull());
    assert!(look(20.0, 0.45).dull() > look(20.0, 0.90).dull() + 1.0, "a pale cloth would not dull it");
    assert!(look(80.0, 0.45).dull() < 0.15 * look(20.0, 0.45).dull(), "{:?}", look(80.0, 0.45));
}
