//! A film on wet cloth stays near the boiling point until the water under it has gone.
//!
//! Source of the first table: an independent solver of the same equations on its own grid, 24 cells in the film and 24 in
//! the cloth, LSODA to 1e-9, with its own film thickness, room and inversion of the isotherm; its film faces the cells'
//! own water, so its films on dripping cloth come out some 5 K hotter. Source of the second: `tests/peer/rows.py`.
//! The laws: psychrometry (a wet face stays near the boiling point) and conservation.

use super::common::library;
use proptest::prelude::*;
use whitehold::cure::fuse;
use whitehold::dryer::{Case, DriftCase, Dryer, Film, History, Stack, TOLERANCE, history};
use whitehold::library::cure_kinetics;
use whitehold::quantity::Share;
use whitehold::quantity::units::{celsius, kelvin};
use whitehold::textile::{Construction, Fibre, moisture};

/// A fleece of cotton and polyester under 90 µm of white in a room of 55 % RH.
fn fleece(cotton: f64, weight: f64, added_water: f64) -> Stack {
    made(Construction::Fleece, cotton, weight, added_water)
}

fn made(construction: Construction, cotton: f64, weight: f64, added_water: f64) -> Stack {
    let shares = [(Fibre::Cotton, cotton), (Fibre::Polyester, 1.0 - cotton)];
    let shares = shares.into_iter().filter(|(_, share)| *share > 0.0).collect();
    let cloth = library().fabric(&shares, construction, weight).expect("a cloth");
    let film = Film { thickness: 90e-6, density: Film::DENSITY };
    Stack { added_water, ..Stack::garment(film, &cloth, Share(0.55)) }
}

fn dryer(id: &str) -> Dryer {
    Dryer::from_record(library().dryer(id).expect("a dryer")).expect("a sound record")
}

fn run(stack: &Stack, dryer: &Dryer, set_c: f64, dwell: f64) -> History<1> {
    let case = Case { set: kelvin(set_c), belt: dryer.heated_length() / dwell, drift: DriftCase::NOMINAL };
    history(stack, dryer, &[case], 1, TOLERANCE).expect("a sound stack")
}

fn fused(history: &History<1>, ink: &str) -> f64 {
    let ink = cure_kinetics(library().kinetics_record(ink).expect("a kind of ink"));
    fuse(history, |sample| sample.film_bottom, &ink).fused[0]
}

/// Water of the printed cloth as it leaves, kg/kg.
fn left(history: &History<1>) -> f64 {
    let leaves = history.samples.iter().find(|sample| sample.time[0] >= history.exit_time[0] - 1e-9);
    leaves.expect("it leaves").water[0]
}

/// Cotton share, weight (g/m²), water added (kg/kg), dryer, set °C, dwell s; film peak °C and water left, %.
#[test]
fn films_on_wet_fleece_as_another_solver_finds_them() {
    let rows = [
        (1.0, 320.0, 0.20, "long-kiln", 220.0, 28.0, 145.0, 13.0),
        (1.0, 320.0, 0.30, "long-kiln", 220.0, 29.0, 121.0, 20.0),
        (1.0, 320.0, 0.90, "long-kiln", 220.0, 37.0, 101.0, 77.0),
        (0.8, 280.0, 0.15, "long-kiln", 220.0, 20.0, 143.0, 10.0),
        (0.8, 280.0, 0.90, "long-kiln", 220.0, 34.0, 100.0, 74.0),
        (0.0, 240.0, 0.30, "long-kiln", 218.0, 23.0, 103.0, 12.0),
        (1.0, 320.0, 0.90, "gas-galley", 210.0, 49.0, 103.0, 61.0),
    ];
    for (cotton, weight, water, id, set_c, dwell, peak, water_left) in rows {
        let history = run(&fleece(cotton, weight, water), &dryer(id), set_c, dwell);
        let found = celsius(history.film_bottom_peak()[0]);
        let found_left = 100.0 * left(&history);
        let what = format!("{weight} g/m², {} % water, {id}", 100.0 * water);
        assert!((found - peak).abs() < 7.5, "{what}: film {found:.1} °C for {peak}");
        assert!((found_left - water_left).abs() < 3.5, "{what}: {found_left:.1} % left for {water_left}");
        if peak < 110.0 {
            assert!(fused(&history, "low-cure") < 0.01, "{what}: raw on dripping cloth");
        }
    }
}

/// The rows of `tests/peer/rows.py`: its own cloths in its own dryer, on two grids and extrapolated. See there.
mod peer {
    use super::super::reference::{at_dwell, cloth, dryer, fleece, kinetics_of_reference, printed};
    use super::{fuse, left};
    use whitehold::dryer::Stack;
    use whitehold::quantity::units::celsius;
    use whitehold::textile::Fibre;

    /// Cloth, water added (kg/kg), dwell s at 200 °C; film bottom's peak °C, low-cure ink fused, water left %.
    #[test]
    fn films_on_wet_cloth() {
        let cotton = |weight, thickness| cloth(weight, thickness, &[(Fibre::Cotton, 1.0)]);
        let polyester = || cloth(240.0, 1.6, &[(Fibre::Polyester, 1.0)]);
        let rows = [
            ("cotton fleece", cotton(320.0, 2.4), 0.2, 28.0, 136.08, 0.5670, 18.18),
            ("cotton fleece", cotton(320.0, 2.4), 0.9, 37.0, 95.33, 0.0001, 84.38),
            ("80/20 fleece", fleece(280.0, 1.6), 0.3, 40.0, 124.90, 0.1116, 12.57),
            ("polyester", polyester(), 0.3, 23.0, 94.32, 0.0000, 14.99),
            ("cotton jersey", cotton(150.0, 0.6), 0.3, 45.0, 160.38, 0.9954, 0.12),
            ("cotton jersey", cotton(150.0, 0.6), 0.6, 45.0, 109.82, 0.0018, 8.04),
        ];
        let ink = kinetics_of_reference("low-cure");
        for (name, cloth, added_water, dwell, peak, fused, water_left) in rows {
            let stack = Stack { added_water, ..printed(&cloth, 100.0) };
            let history = at_dwell(&stack, &dryer(225.0), 200.0, dwell);
            let found = celsius(history.film_bottom_peak()[0]);
            let found_fused = fuse(&history, |sample| sample.film_bottom, &ink).fused[0];
            let found_left = 100.0 * left(&history);
            assert!((found - peak).abs() < 0.5, "{name}, {added_water}: film {found:.2} °C for {peak}");
            assert!(
                (found_fused - fused).abs() < 0.01,
                "{name}, {added_water}: {found_fused:.4} for {fused}"
            );
            assert!((found_left - water_left).abs() < 0.3, "{name}: {found_left:.2} % left for {water_left}");
        }
    }
}

const MAKES: [Construction; 4] =
    [Construction::Jersey, Construction::Interlock, Construction::Fleece, Construction::Canvas];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Water boils away before its film gets much hotter: 115 °C leaves room for the pressure that drives the vapour out.
    #[test]
    fn no_film_is_hot_while_its_cloth_drips(
        make in 0..4_usize, cotton in 0.0..1.0_f64, weight in 100.0..400.0_f64, water in 0.1..1.2_f64,
        oven in 0..3_usize, hot in 0.3..1.0_f64, dwell in 15.0..120.0_f64,
    ) {
        let dryer = dryer(["long-kiln", "gas-galley", "short-stove"][oven]);
        let set = celsius(dryer.set_low) + hot * (dryer.set_high - dryer.set_low);
        let stack = made(MAKES[make], cotton, weight, water);
        let bound = moisture::regain(1.0, stack.front.regain_65);
        let history = run(&stack, &dryer, set, dwell);
        for sample in history.samples.iter().filter(|sample| sample.face_water[0] > bound + 0.01) {
            let film = celsius(sample.film_bottom[0][0]);
            prop_assert!(film < 115.0, "{film} °C over {} of water, {bound} bound", sample.face_water[0]);
        }
    }

    /// More water never makes a film hotter or fuses it more.
    #[test]
    fn more_water_never_heats_more(
        make in 0..4_usize, cotton in 0.0..1.0_f64, weight in 100.0..350.0_f64, water in 0.0..0.8_f64,
        more in 0.02..0.3_f64, set in 140.0..220.0_f64, dwell in 15.0..90.0_f64,
    ) {
        let kiln = dryer("long-kiln");
        let peak = |weight: f64, water: f64| {
            let history = run(&made(MAKES[make], cotton, weight, water), &kiln, set, dwell);
            (history.film_bottom_peak()[0], fused(&history, "low-cure"))
        };
        let here = peak(weight, water);
        let wetter = peak(weight, water + more);
        prop_assert!(wetter.0 < here.0 + 0.6 && wetter.1 < here.1 + 0.02, "wetter: {wetter:?} for {here:?}");
    }
}
