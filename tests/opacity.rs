//! A film of white hides the garment the better the thicker it is.
#![allow(clippy::expect_used)] // a helper that cannot build its example should fail loudly

use whitehold::ink::{Mesh, contrast_ratio, deposit, opacity, strokes_needed};
use whitehold::optics::{Lab, Spectrum, WhiteFilm, cie76, ciede2000};

fn white() -> WhiteFilm {
    WhiteFilm::new(0.20e6, 0.90).expect("a usual white")
}

fn coarse_mesh() -> Mesh {
    Mesh { id: "mesh".into(), threads_per_m: 4300.0, thread: 80e-6, thickness: 128e-6 }
}

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
        let found = contrast_ratio(film, &white());
        assert!((found - expected).abs() < tolerance && found <= expected, "{film}: {found} for {expected}");
    }
}

#[test]
fn no_film_hides_nothing_and_an_endless_one_everything() {
    let garment = Spectrum::of_cloth(Lab::new(38.0, 58.0, 35.0));
    assert!(contrast_ratio(0.0, &white()).abs() < 1e-12);
    let bare = opacity(0.0, &white(), &garment);
    assert!(cie76(bare.colour, Lab::new(38.0, 58.0, 35.0)) < 0.01, "{bare:?}");
    let deep = opacity(5e-3, &white(), &garment);
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
        let film = |micrometres: i32| opacity(f64::from(micrometres) * 1e-6, &white(), &garment);
        for micrometres in 5..200 {
            let (thin, thick) = (film(micrometres), film(micrometres + 1));
            assert!(thick.contrast_ratio > thin.contrast_ratio, "{lab:?} {micrometres}");
            assert!(thick.garment_shows < thin.garment_shows, "{lab:?} {micrometres}");
        }
    }
}

#[test]
fn strokes_are_the_fewest_that_hide() {
    let garment = Spectrum::of_cloth(Lab::new(12.0, 2.0, -8.0));
    let shows = |strokes| opacity(deposit(&coarse_mesh(), 0.6, strokes), &white(), &garment).garment_shows;
    let needed = |limit, most| strokes_needed(&coarse_mesh(), 0.6, &white(), &garment, limit, most);
    let limit = 0.5 * (shows(1) + shows(2));
    assert_eq!(needed(limit, 4), Some(2));
    assert_eq!(needed(limit, 1), None);
    assert_eq!(needed(shows(1) + 0.01, 4), Some(1));
    assert_eq!(needed(-1.0, 4), None);
    assert!(ciede2000(white().endless(), garment.lab()) > shows(1));
}
