//! A print weighed before and after gives the press its own transfer, with its uncertainty.

use whitehold::ink::{MeasuredValue, Mesh, Weighing, deposit};
use whitehold::quantity::Problem;

fn mesh(threads_per_cm: f64, thread_um: f64, thickness_um: f64, over_mesh_um: f64) -> Mesh {
    Mesh {
        id: "mesh".into(),
        threads_per_m: 100.0 * threads_per_cm,
        thread: thread_um * 1e-6,
        thickness: thickness_um * 1e-6,
        over_mesh: over_mesh_um * 1e-6,
    }
}

fn reading(value: f64, plus_minus: f64) -> MeasuredValue {
    MeasuredValue { value, plus_minus }
}

fn one_print() -> Weighing {
    Weighing {
        weights_g: vec![[152.10, 154.02], [151.83, 153.70], [153.02, 154.97]],
        balance_g: 0.01,
        area_cm2: reading(400.0, 4.0),
        width_mm: 200.0,
        density: reading(1300.0, 50.0),
        strokes: 1,
    }
}

/// Source: the package `uncertainties` 3.2 for Python (first-order propagation); a Monte Carlo run of two million draws
/// by numpy agrees to 1e-4 in both figures. Transfer, standard uncertainty.
#[test]
fn transfer_and_its_uncertainty_are_those_of_a_library() {
    let rows = [
        (one_print(), mesh(43.0, 80.0, 128.0, 20.0), 0.665_720_2, 0.017_447_0),
        (
            Weighing {
                weights_g: vec![[152.10, 158.40], [151.83, 158.02]],
                balance_g: 0.1,
                area_cm2: reading(625.0, 10.0),
                width_mm: 250.0,
                density: reading(1350.0, 25.0),
                strokes: 2,
            },
            mesh(32.0, 100.0, 160.0, 20.0),
            0.498_856_6,
            0.009_534_0,
        ),
        (
            Weighing {
                weights_g: vec![[20.0, 20.62]],
                balance_g: 0.005,
                area_cm2: reading(100.0, 2.0),
                width_mm: 100.0,
                ..one_print()
            },
            mesh(32.0, 100.0, 160.0, 40.0),
            0.637_871_8,
            0.016_796_9,
        ),
    ];
    for (weighing, mesh, value, uncertainty) in rows {
        let found = weighing.transfer(&mesh).expect("a possible print");
        assert!((found.value - value).abs() < 1e-6, "{found:?} for {value}");
        assert!((found.standard_uncertainty - uncertainty).abs() < 1e-6, "{found:?} for {uncertainty}");
        let band = found.band();
        assert!(band.low < found.value && found.value < band.high, "{band:?}");
        // One case in ten lies beyond either end: 1.2816 standard deviations of a normal distribution.
        assert!((band.high - found.value - 1.2816 * found.standard_uncertainty).abs() < 1e-12);
    }
}

/// Source: a job worked in Python: 630 cm² through 61/cm at transfer 0.6 and 1300 kg/m³ weighs 1.86993 g.
#[test]
fn the_mass_of_a_worked_job_gives_its_transfer_back() {
    let exact = Weighing {
        weights_g: vec![[150.0, 151.869_93]],
        area_cm2: reading(630.0, 0.0),
        density: reading(1300.0, 0.0),
        ..one_print()
    };
    let mesh = mesh(61.0, 64.0, 102.4, 0.0);
    let found = exact.transfer(&mesh).expect("a possible print");
    assert!((found.value - 0.6).abs() < 1e-5, "{found:?}");
    assert!((deposit(&mesh, found.value, 1) * 1e6 - 22.832).abs() < 1e-3);
    // The balance alone: two readings of ± 10 mg, each 10/√3 mg, on 1870 mg.
    assert!(
        (found.standard_uncertainty / found.value - 10.0 * (2.0_f64 / 3.0).sqrt() / 1869.93).abs() < 1e-6
    );
}

#[test]
fn more_prints_and_a_finer_balance_narrow_it() {
    let mesh = mesh(43.0, 80.0, 128.0, 20.0);
    let off = |weighing: &Weighing| weighing.transfer(&mesh).expect("a possible print").standard_uncertainty;
    let single = Weighing { weights_g: vec![[152.0, 153.9]], balance_g: 0.1, ..one_print() };
    let many = Weighing { weights_g: vec![[152.0, 153.9]; 10], ..single.clone() };
    let fine = Weighing { balance_g: 0.001, ..single.clone() };
    assert!(off(&many) < 0.7 * off(&single) && off(&fine) < 0.7 * off(&single));
    let rough = Weighing { area_cm2: reading(400.0, 40.0), ..one_print() };
    assert!(off(&rough) > 2.0 * off(&one_print()));
}

#[test]
fn what_cannot_have_been_weighed_is_refused_by_name() {
    let mesh = mesh(43.0, 80.0, 128.0, 20.0);
    let with = |change: fn(&mut Weighing)| {
        let mut weighing = one_print();
        change(&mut weighing);
        weighing
    };
    let rows = [
        (with(|w| w.weights_g.clear()), "weights_g"),
        (with(|w| w.weights_g[1] = [153.0, 151.0]), "weights_g[1]"), // lighter after the print
        (with(|w| w.weights_g[2] = [153.0, 153.0]), "weights_g[2]"),
        (with(|w| w.weights_g[0] = [f64::NAN, 153.0]), "weights_g[0]"),
        (with(|w| w.weights_g[0] = [0.0, 1.0]), "weights_g[0]"),
        (with(|w| w.balance_g = 0.0), "balance_g"),
        (with(|w| w.area_cm2.value = 0.04), "area_cm2"), // m² for cm²
        (with(|w| w.area_cm2.plus_minus = 300.0), "area_cm2"),
        (with(|w| w.density.value = 1.3), "density"), // g/cm³ for kg/m³
        (with(|w| w.density.plus_minus = -1.0), "density"),
        (with(|w| w.width_mm = 1.0), "width_mm"),
        (with(|w| w.strokes = 0), "strokes"),
        (with(|w| w.area_cm2 = reading(40.0, 1.0)), "transfer"), // a tenth of the area: ten times the film
        (with(|w| w.weights_g = vec![[150.0, 150.05]]), "transfer"),
    ];
    for (weighing, field) in rows {
        let error = weighing.transfer(&mesh).expect_err(field);
        assert_eq!(error.field, field, "{error}");
    }
    let error = with(|w| w.weights_g[1] = [153.0, 151.0]).transfer(&mesh).expect_err("lighter");
    assert!(matches!(error.problem, Problem::OutOfRange { min, .. } if min > 153.0), "{error}");
}
