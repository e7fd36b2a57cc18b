//! The mesh decides how much ink lies on the cloth.
#![allow(clippy::expect_used)] // a helper that cannot build its example should fail loudly

use whitehold::ink::{Mesh, MeshRecord, deposit, ink_for_run, ink_per_print};
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

/// Source: two jobs worked in Python: 30 × 35 cm at 60 % coverage, transfer 0.6, density 1300 kg/m³, 500 prints + 5 %.
#[test]
fn two_jobs_worked_separately() {
    // mesh, strokes, film µm, ink cm³ and g per print, kg for the run
    let rows = [
        (mesh(61.0, 64.0, 102.4), 1, 22.8319, 1.43841, 1.86993, 0.98171),
        (mesh(43.0, 80.0, 128.0), 2, 66.0996, 4.16428, 5.41356, 2.84212),
    ];
    for (mesh, strokes, film, volume, mass, run) in rows {
        let found = deposit(&mesh, 0.6, strokes);
        within(found * 1e6, film, 6e-5);
        let (area, coverage) = (0.30 * 0.35, 0.60);
        within(area * coverage * found * 1e6, volume, 6e-6);
        let per_print = ink_per_print(area, coverage, found, 1300.0);
        within(per_print * 1e3, mass, 6e-6);
        within(ink_for_run(per_print, 500, 0.05), run, 6e-6);
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
