//! Dye spreads through the film as the exact solutions of the handbooks have it, and none is lost.

use proptest::prelude::*;
use whitehold::migration::{AdjacentCloth, CELLS, DyeProfile, DyeStep, FilmLayer};
use whitehold::numerics::Lanes;

const FILM: f64 = 100e-6;

fn bare(film: f64) -> FilmLayer {
    FilmLayer { thickness: film, capacity: 0.0, diffusivity: 1.0 }
}

fn one(value: f64) -> Lanes<1> {
    Lanes::splat(value)
}

/// A face held at `share` of what saturated fibre gives, without resistance of its own.
fn held_at(share: f64) -> AdjacentCloth<1> {
    AdjacentCloth { activity: one(share), carries: one(f64::INFINITY) }
}

/// Vapour so plentiful that the face stands at the cloth's activity.
const NO_RESISTANCE: f64 = 1.0;

/// Marches to `fourier = D t / L²` in `steps` steps that grow as the square of time.
fn march(sheet: &mut DyeProfile<1>, fourier: f64, steps: usize, own: f64, facing: f64) {
    let at = |i: usize| fourier * FILM * FILM * (i as f64 / steps as f64).powi(2);
    for i in 0..steps {
        let path = one(at(i + 1) - at(i));
        sheet.step(&DyeStep { path, arrives: Lanes::ZERO, own: one(own), facing: one(facing) });
    }
}

/// Source: Crank, The Mathematics of Diffusion, plane sheet with both faces held, uptake over final uptake against
/// `D t / L²`; half of it at 0.049183.
#[test]
fn uptake_of_a_sheet_with_both_faces_held() {
    // The first row's dye has crossed two cells of twenty.
    let rows = [(0.01, 0.22568, 5e-3), (0.049183, 0.5, 2e-3), (0.1, 0.69788, 2e-3), (0.2, 0.88740, 1e-3)];
    for (fourier, expected, within) in rows {
        let mut sheet = DyeProfile::clean(bare(FILM), None);
        sheet.own = held_at(0.01);
        sheet.facing = held_at(0.01);
        march(&mut sheet, fourier, 24, NO_RESISTANCE, NO_RESISTANCE);
        let found = sheet.dye()[0] / (0.01 * DyeProfile::<1>::SATURATED * FILM);
        assert!((found - expected).abs() < within, "{fourier}: {found} for {expected}");
    }
}

/// Source: Daynes 1920 and Crank: what has passed through a clean sheet, one face held, the other swept clean; over
/// `L C`. In the long run `D t / L² - 1/6`: the lag is L²/6D.
#[test]
fn what_passes_through_a_sheet_and_its_lag() {
    let rows = [(0.1, 0.007885), (1.0 / 6.0, 0.039045), (0.3, 0.143824), (0.5, 0.334791), (1.0, 0.833344)];
    for (fourier, expected) in rows {
        let mut sheet = DyeProfile::clean(bare(FILM), None);
        sheet.own = held_at(0.01);
        march(&mut sheet, fourier, 24, NO_RESISTANCE, NO_RESISTANCE);
        let found = -sheet.from_facing[0] / (0.01 * DyeProfile::<1>::SATURATED * FILM);
        assert!((found - expected).abs() < 1.5e-3, "{fourier}: {found} for {expected}");
    }
}

/// Source: the cosine series of Crank's closed sheet (2.3) with 400 terms, Python 3.11 and NumPy: dye that entered as
/// a plane from below, its share in the top 30 of 100 µm.
#[test]
fn a_plane_of_dye_spreads_in_a_closed_sheet() {
    let rows = [(0.02, 0.0015508603), (0.08, 0.2632142122), (0.2, 0.7618948516), (0.5, 0.9876530681)];
    for (fourier, expected) in rows {
        let mut sheet = DyeProfile::clean(bare(FILM), None);
        sheet.step(&DyeStep { arrives: one(10e-6), ..DyeStep::NONE });
        march(&mut sheet, fourier, 24, 0.0, 0.0);
        let found = sheet.top()[0] / (10e-6 / FILM);
        assert!((found - expected).abs() < 6e-3, "{fourier}: {found} for {expected}");
    }
}

/// Source: the same film as 48 cells whose lowest was loaded, by eigenvalues (SciPy 1.17.1 `eigh`), and the cosine
/// series beside it to 1e-6: film 100 µm, D 1e-14 m²/s. Days; top 30 µm over the mean.
#[test]
fn a_shelf_of_days_against_another_solver() {
    let rows = [(0.25, 0.0027), (0.5, 0.0580), (1.0, 0.3019), (2.0, 0.6893), (5.0, 0.9758)];
    for (days, expected) in rows {
        let mut sheet = DyeProfile::clean(bare(FILM), None);
        sheet.step(&DyeStep { arrives: one(10e-6), ..DyeStep::NONE });
        march(&mut sheet, 1e-14 * days * 86_400.0 / (FILM * FILM), 16, 0.0, 0.0);
        let found = sheet.top()[0] / (10e-6 / FILM);
        assert!((found - expected).abs() < 8e-3, "{days} d: {found} for {expected}");
    }
}

/// A white of some capacity over a blocker of more.
fn film(capacity: f64, blocker: f64) -> DyeProfile<2> {
    let white = FilmLayer { thickness: 80e-6, capacity, diffusivity: 1.0 };
    let below = FilmLayer { thickness: 30e-6, capacity: blocker, diffusivity: 0.5 };
    DyeProfile::clean(white, (blocker > 0.0).then_some(below))
}

proptest! {
    /// Mass is kept to 1e-6 of it: what entered by heat and by both faces is in the film, whatever binds it.
    #[test]
    fn dye_is_kept(
        capacity in 0.0..20.0_f64, blocker in -5.0..40.0_f64, arrives in 0.0..400e-6_f64,
        own in 0.0..1e-3_f64, facing in 0.0..1e-3_f64, activity in 0.0..1.0_f64, step in 1e-13..1e-8_f64,
    ) {
        let mut sheet = film(capacity, blocker);
        sheet.own = AdjacentCloth { activity: Lanes::splat(activity), carries: Lanes::splat(500e-6) };
        sheet.facing = AdjacentCloth { activity: Lanes::splat(0.5), carries: Lanes::splat(200e-6) };
        let before = sheet.own.carries[0] + sheet.facing.carries[0];
        let mut heat = 0.0;
        for i in 0..12 {
            let arrives = if i < 6 { arrives / 6.0 } else { 0.0 };
            heat += arrives;
            sheet.step(&DyeStep {
                path: Lanes([step, 3.0 * step]), arrives: Lanes::splat(arrives),
                own: Lanes::splat(own), facing: Lanes::splat(facing),
            });
        }
        for lane in 0..2 {
            let entered = heat + sheet.from_own[lane] + sheet.from_facing[lane];
            let held = sheet.dye()[lane];
            prop_assert!((held - entered).abs() <= 1e-6 * (held + heat).max(1e-9), "{held:e} for {entered:e}");
            prop_assert!(sheet.profile(lane).flatten().all(f64::is_finite));
        }
        let after = sheet.own.carries[0] + sheet.facing.carries[0];
        let came = sheet.from_own[0] + sheet.from_facing[0];
        prop_assert!((before - after - came).abs() <= 1e-6 * before, "{before:e} - {after:e} is not {came:e}");
        prop_assert!(sheet.own.carries[0] >= 0.0 && sheet.facing.carries[0] >= 0.0);
    }

    /// More that binds, a blocker, or less dye: the top is no worse at any time.
    #[test]
    fn what_binds_never_harms(
        capacity in 0.0..8.0_f64, more in 0.0..8.0_f64, arrives in 1e-6..400e-6_f64, path in 1e-11..3e-9_f64,
    ) {
        let top = |capacity: f64, blocker: f64, arrives: f64| {
            let mut sheet = film(capacity, blocker);
            for i in 0..16 {
                let arrives = if i < 8 { arrives / 8.0 } else { 0.0 };
                sheet.step(&DyeStep { path: Lanes::splat(path), arrives: Lanes::splat(arrives), ..DyeStep::NONE });
            }
            sheet.top()[0]
        };
        let here = top(capacity, 0.0, arrives);
        let slack = 1e-6 + 1e-4 * here;
        prop_assert!(top(capacity + more, 0.0, arrives) <= here + slack);
        prop_assert!(top(capacity, 0.5 + more, arrives) <= here + slack);
        prop_assert!(top(capacity, 0.0, arrives * 1.2) >= here - slack);
    }
}

proptest! {
    /// Thicker film, later break-through and less at the end. Where nothing binds, the top never clears by itself either;
    /// where something does it may, for uneven dye leaves more of itself free than the same dye spread evenly.
    #[test]
    fn a_thicker_film_breaks_through_later(
        film in 40e-6..250e-6_f64, thicker in 1.1..2.0_f64, arrives in 1e-6..300e-6_f64,
        capacity in prop_oneof![Just(0.0), 0.0..6.0_f64],
    ) {
        let tops = |film: f64| {
            let mut sheet = DyeProfile::<1>::clean(FilmLayer { capacity, ..bare(film) }, None);
            sheet.step(&DyeStep { arrives: one(arrives), path: one(1e-10), ..DyeStep::NONE });
            std::array::from_fn::<f64, 10, _>(|i| {
                sheet.step(&DyeStep { path: one(2e-11 * 1.9_f64.powi(i as i32)), ..DyeStep::NONE });
                sheet.top()[0]
            })
        };
        let (here, there) = (tops(film), tops(film * thicker));
        for (i, (here, there)) in here.iter().zip(&there).enumerate() {
            prop_assert!(*there <= here + 1e-6 + 3e-3 * here, "step {i}: {there} over {here}");
        }
        // Steps of twice the film's own time may swing by five thousandths about its end.
        for pair in here.windows(2).filter(|_| capacity == 0.0) {
            prop_assert!(pair[1] >= pair[0] * (1.0 - 5e-3) - 1e-6, "{here:?}");
        }
    }
}

/// In balance with nothing moving, nothing moves.
#[test]
fn an_even_film_stays_even() {
    let mut sheet: DyeProfile<1> = DyeProfile::clean(FilmLayer { capacity: 3.0, ..bare(FILM) }, None);
    sheet.load(|_| one(0.04));
    march(&mut sheet, 3.0, 10, 0.0, 0.0);
    assert_eq!(sheet.profile(0).filter(|[_, free, _]| (free - 0.04).abs() < 1e-9).count(), CELLS);
}

/// Source: the same equations as a method of lines, 400 cells, by SciPy's BDF to 1e-8 (`tests/peer/sheet.py`): film, capacity
/// (kg/m³), dye (kg/m²) that enters from below at an even pace while the path grows to 1e-9 m²; top 30 µm then and after
/// further paths of 2e-10, 1e-9, 5e-9 and 2e-8 m². Saturable binding has no exact solution to hold it to.
#[test]
fn a_saturable_film_against_another_solver() {
    let rows = [
        (100e-6, 4.0, 250e-6, [0.0, 0.0, 0.0, 0.00085, 0.01075]),
        (100e-6, 4.0, 450e-6, [0.0, 0.0, 0.00650, 0.33954, 0.62419]),
        (60e-6, 1.0, 80e-6, [0.08326, 0.15982, 0.27733, 0.38296, 0.38297]),
        (100e-6, 0.0, 50e-6, [0.06336, 0.10662, 0.29908, 0.49608, 0.50000]),
    ];
    for (film, capacity, arrives, tops) in rows {
        let mut sheet = DyeProfile::<1>::clean(FilmLayer { capacity, ..bare(film) }, None);
        for _ in 0..10 {
            sheet.step(&DyeStep { path: one(1e-10), arrives: one(arrives / 10.0), ..DyeStep::NONE });
        }
        let mut had = 0.0;
        for (path, expected) in [0.0, 2e-10, 1e-9, 5e-9, 2e-8].into_iter().zip(tops) {
            for _ in 0..4 {
                sheet.step(&DyeStep { path: one((path - had) / 4.0), ..DyeStep::NONE });
            }
            had = path;
            let found = sheet.top()[0];
            assert!(
                (found - expected).abs() < 6e-3 + 0.02 * expected,
                "{film} {path}: {found} for {expected}"
            );
        }
    }
}
