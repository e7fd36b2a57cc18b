//! The mesh decides how much ink lies on the cloth.

use proptest::prelude::*;
use whitehold::ink::{
    DepositedFilm, Mesh, MeshRecord, Substrate, deposit, ink_per_print, smoothed, standing, stencil_gain,
};
use whitehold::quantity::{Problem, Sourced};

fn record(threads_per_cm: f64, thread: f64, thickness: f64) -> MeshRecord {
    let value = |value: f64, unit: &str| Sourced {
        value,
        unit: unit.into(),
        range: [value, value],
        source: "example of the test".into(),
    };
    MeshRecord {
        id: "mesh".into(),
        threads_per_cm: value(threads_per_cm, "1/cm"),
        thread: value(thread, "µm"),
        thickness: value(thickness, "µm"),
        over_mesh: value(20.0, "µm"),
    }
}

fn mesh(threads_per_cm: f64, thread: f64, thickness: f64) -> Mesh {
    Mesh::try_from(&record(threads_per_cm, thread, thickness)).expect("a possible mesh")
}

fn within(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} for {expected}");
}

/// Source: plain-weave geometry worked in Python: threads per cm, thread, opening (µm), open area, theoretical volume
/// in cm³/m² at a thickness of 1.6 and of 2 threads.
#[test]
fn openings_and_volumes_of_a_table() {
    let rows = [
        (32.0, 100.0, 212.50, 0.4624, 73.98, 92.48),
        (43.0, 80.0, 152.56, 0.4303, 55.08, 68.85),
        (48.0, 70.0, 138.33, 0.4409, 49.38, 61.73),
        (61.0, 64.0, 99.93, 0.3716, 38.05, 47.57),
        (77.0, 55.0, 74.87, 0.3324, 29.25, 36.56),
        (90.0, 48.0, 63.11, 0.3226, 24.78, 30.97),
        (120.0, 34.0, 49.33, 0.3505, 19.07, 23.83),
    ];
    for (threads, thread, opening, open_area, stretched, woven) in rows {
        let thin = mesh(threads, thread, 1.6 * thread);
        within(thin.opening() * 1e6, opening, 0.006);
        within(thin.open_area(), open_area, 6e-5);
        within(thin.volume() * 1e6, stretched, 0.006);
        within(mesh(threads, thread, 2.0 * thread).volume() * 1e6, woven, 0.006);
    }
}

/// Source: 1 µm is 1e-6 m, and 1 cm is 1e-2 m.
#[test]
fn a_mesh_is_held_in_metres() {
    let mesh = mesh(43.0, 80.0, 128.0);
    within(mesh.threads_per_m, 4300.0, 1e-9);
    for (found, micrometres) in [(mesh.thread, 80.0), (mesh.thickness, 128.0), (mesh.over_mesh, 20.0)] {
        within(found, micrometres * 1e-6, 1e-15);
    }
}

/// Source: two jobs worked in Python: 30 × 35 cm at 60 % coverage, transfer 0.6, density 1300 kg/m³, 500 prints + 5 %.
#[test]
fn two_jobs_worked_separately() {
    // mesh, strokes, film µm, ink cm³ and g per print, kg for the run
    let rows = [
        (mesh(61.0, 64.0, 102.4), 1, 22.8319, 1.43841, 1.86993),
        (mesh(43.0, 80.0, 128.0), 2, 66.0996, 4.16428, 5.41356),
    ];
    for (mesh, strokes, film, volume, mass) in rows {
        let found = deposit(&mesh, 0.6, strokes);
        within(found * 1e6, film, 6e-5);
        let (area, coverage) = (0.30 * 0.35, 0.60);
        within(area * coverage * found * 1e6, volume, 6e-6);
        let per_print = ink_per_print(area, coverage, found, 1300.0);
        within(per_print * 1e3, mass, 6e-6);
    }
}

/// Source: definition: a litre per 1000 m², or 1 cm³/m², lies 1 µm high.
#[test]
fn a_cubic_centimetre_on_a_square_metre_is_a_micrometre() {
    within(ink_per_print(1.0, 1.0, 1e-6, 1000.0), 1e-3, 1e-15);
}

#[test]
fn an_impossible_mesh_names_the_field_and_the_way_out() {
    // threads per cm, thread µm, thickness µm; the field named, its accepted range in the record's unit
    let rows = [
        (100.0, 100.0, 160.0, "thread", 20.0, 95.0), // the thread fills the pitch
        (110.0, 140.0, 220.0, "thread", 20.0, 86.363_636), // wider than the pitch
        (43.0, 80.0, 60.0, "thickness", 80.0, 1000.0), // thinner than its own thread
        (1.0, 80.0, 128.0, "threads_per_cm", 5.0, 200.0),
    ];
    for (threads, thread, thickness, field, least, most) in rows {
        let error = Mesh::try_from(&record(threads, thread, thickness)).expect_err(field);
        assert_eq!(error.field, field, "{error}");
        let Problem::OutOfRange { min, max, .. } = error.problem else { panic!("{error}") };
        within(min, least, 1e-6);
        within(max, most, 1e-6);
    }
    let error = Mesh::try_from(&record(f64::NAN, 80.0, 128.0)).expect_err("not a number");
    assert_eq!((error.field.as_str(), error.problem), ("threads_per_cm", Problem::NotANumber));
}

/// Source: geometry of the model by hand: emulsion 20 µm over the mesh, edge 1.25 mm. In a hairline as good as all of
/// it, at twice the edge half of it, in a wide block its two edges over the width.
#[test]
fn a_stencil_thickens_fine_lines_and_hardly_a_block() {
    for (width_mm, gain) in [(0.0, 20.0), (1.0, 16.0), (2.5, 10.0), (5.0, 5.0), (50.0, 0.5), (250.0, 0.1)] {
        within(stencil_gain(20e-6, width_mm * 1e-3) * 1e6, gain, 1e-9);
    }
}

/// What nap and loops took of a film, mean, m.
fn sunk(film: &DepositedFilm) -> f64 {
    film.laid() - film.above()
}

/// Source: the model by hand, parts at a tenth, three, five, seven and nine tenths of the way to the crowns. A nap of
/// 60 µm under strokes of 30 µm sinks 4.2, 12.6, 21, 29.4 and 37.8 µm, never more than to a tenth of the stroke; the
/// first stroke lays all of it down, so the second loses nothing.
#[test]
fn the_second_stroke_lies_on_a_film_and_not_on_cloth() {
    let bed = Substrate { nap: 60e-6, film: 0.0, body: 1.0 };
    let one = DepositedFilm::new(30e-6, 1, &bed);
    let two = DepositedFilm::new(30e-6, 2, &bed);
    for (lay, expected) in [(&one, [25.8, 17.4, 9.0, 3.0, 3.0]), (&two, [55.8, 47.4, 39.0, 33.0, 33.0])] {
        for (part, expected) in lay.parts().iter().zip(expected) {
            within(part * 1e6, expected, 1e-9);
        }
    }
    within(sunk(&one) * 1e6, 18.36, 1e-9);
    within(sunk(&two) * 1e6, 18.36, 1e-9);
    within(two.laid() * 1e6, 60.0, 1e-9);
    // One thick stroke of the same ink loses as much nap to the cloth but lies less evenly than two.
    let thick = DepositedFilm::new(60e-6, 1, &bed);
    within(sunk(&thick) * 1e6, 21.0, 1e-9);
}

/// The higher the nap that still stands, the more it takes: a loop cloth from the second stroke, too, a smoothed or a
/// blocked one not.
#[test]
fn what_still_stands_takes_from_the_next_stroke() {
    let fleece = Substrate { nap: 250e-6, film: 0.0, body: 1.0 };
    let blocked = Substrate { film: 150e-6, ..fleece };
    let pressed = Substrate { nap: smoothed(fleece.nap), ..fleece };
    let taken = |bed: &Substrate| sunk(&DepositedFilm::new(45e-6, 2, bed));
    within(standing(fleece.nap, 45e-6, 1.0) * 1e6, 160.0, 1e-9);
    assert!(taken(&fleece) > 1.5 * sunk(&DepositedFilm::new(45e-6, 1, &fleece)));
    assert!(taken(&pressed) < 0.6 * taken(&fleece));
    within(taken(&blocked), 0.0, 1e-12);
    assert!(taken(&Substrate { body: 1.3, ..fleece }) < taken(&fleece), "a heavy-bodied ink stays up");
}

#[test]
fn a_smooth_bed_takes_nothing() {
    let lay = DepositedFilm::new(30e-6, 3, &Substrate::SMOOTH);
    assert!(lay.parts().iter().all(|part| (part - 90e-6).abs() < 1e-12) && sunk(&lay).abs() < 1e-12);
    assert!(DepositedFilm::new(30e-6, 0, &Substrate::SMOOTH).above().abs() < 1e-18);
    assert_eq!(DepositedFilm::flat(50e-6).parts(), DepositedFilm::new(50e-6, 1, &Substrate::SMOOTH).parts());
}

proptest! {
    /// No ink is lost or made: what lies above and what has sunk is what was laid; more strokes never lie thinner.
    #[test]
    fn ink_is_neither_lost_nor_made(
        film in 5e-6..80e-6, strokes in 1_u32..4, nap in 0.0..400e-6, below in 0.0..60e-6, body in 0.5..1.5,
    ) {
        let bed = Substrate { nap, film: below, body };
        let lay = DepositedFilm::new(film, strokes, &bed);
        prop_assert!((lay.laid() - film * f64::from(strokes)).abs() < 1e-12);
        prop_assert!(sunk(&lay) >= -1e-15 && lay.parts().iter().all(|part| *part > 0.0));
        let more = DepositedFilm::new(film, strokes + 1, &bed);
        for (thin, thick) in lay.parts().iter().zip(more.parts()) {
            prop_assert!(thick > thin);
        }
        // Five parts stand for the whole spread: the mean is that of the integral where nothing is cut off.
        let sinks = 0.35 * nap;
        if 0.7 * nap < 0.9 * film {
            let one = DepositedFilm::new(film, 1, &Substrate { film: 0.0, ..bed });
            prop_assert!((sunk(&one) - sinks).abs() < 1e-12);
        }
    }
}
