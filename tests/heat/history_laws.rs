//! A history is converged, is the same alone as beside others, and follows the laws of heat.
//!
//! What another solver finds is in `tests/heat/history.rs`; what stands here needs none.

use super::reference::{
    at_dwell, at_dwells, cloth, cotton, dryer, fleece, fused, kinetics_of_reference, polyester, printed,
};
use proptest::prelude::*;
use whitehold::dryer::{Case, DriftCase, Stack, TOLERANCE, history};
use whitehold::numerics::rosenbrock::Tolerance;
use whitehold::quantity::Share;
use whitehold::quantity::units::kelvin;
use whitehold::textile::{Fabric, Fibre};

/// The tolerance that ships against one a hundred times tighter: the promise at [`TOLERANCE`].
#[test]
fn the_shipped_tolerance_is_tight_enough() {
    let damp = Stack { added_water: 0.3, ..printed(&cotton(), 100.0) };
    let dry = Fabric { regain_65: 4e-4, ..polyester() };
    let flat = Stack { back: None, ..printed(&polyester(), 30.0) };
    let rows = [
        ("cotton", printed(&cotton(), 100.0), "ordinary", 175.0),
        ("polyester", printed(&polyester(), 80.0), "low-cure", 150.0),
        ("fleece", printed(&fleece(400.0, 2.4), 150.0), "ordinary", 175.0),
        ("damp cotton", damp, "ordinary", 190.0),
        ("thick film", printed(&cotton(), 400.0), "ordinary", 175.0),
        ("flat thin polyester", flat, "low-cure", 140.0),
        ("cloth that holds no water", Stack { back: None, ..printed(&dry, 5.0) }, "ordinary", 240.0),
    ];
    let tight = Tolerance { temperature: TOLERANCE.temperature / 100.0, water: TOLERANCE.water / 100.0 };
    for (what, stack, ink, set) in rows {
        let dryer = dryer(225.0);
        let dwells = [15.0, 22.0, 30.0, 37.0, 45.0, 60.0, 80.0, 120.0];
        let shipped = at_dwells(&stack, &dryer, set, dwells, TOLERANCE);
        let converged = at_dwells(&stack, &dryer, set, dwells, tight);
        let ink = kinetics_of_reference(ink);
        let peak = (shipped.film_peak() - converged.film_peak()).abs().largest();
        let bottom = (shipped.film_bottom_peak() - converged.film_bottom_peak()).abs().largest();
        let share = (fused(&shipped, &ink) - fused(&converged, &ink)).abs().largest();
        assert!(peak < 0.1 && bottom < 0.1 && share < 0.0015, "{what}: {peak} K, {bottom} K, fused {share}");
    }
}

/// Dwells marched side by side give what each gives alone.
#[test]
fn lanes_give_what_single_marches_give() {
    let dwells = [12.0, 20.0, 31.0, 44.0, 60.0, 75.0, 100.0, 150.0];
    for (stack, ink) in [(printed(&cotton(), 100.0), "ordinary"), (printed(&polyester(), 60.0), "low-cure")] {
        let (dryer, ink) = (dryer(225.0), kinetics_of_reference(ink));
        let together = at_dwells(&stack, &dryer, 170.0, dwells, TOLERANCE);
        for (lane, dwell) in dwells.into_iter().enumerate() {
            let alone = at_dwell(&stack, &dryer, 170.0, dwell);
            let peak = together.film_peak()[lane] - alone.film_peak()[0];
            let share = fused(&together, &ink)[lane] - fused(&alone, &ink)[0];
            assert!(
                (together.exit_time[lane] - dwell).abs() < 1e-9,
                "{dwell} s: {}",
                together.exit_time[lane]
            );
            assert!(peak.abs() < 0.1 && share.abs() < 0.0015, "{dwell} s: {peak} K, fused {share}");
        }
    }
}

/// No source, no change: a stack at room temperature in balance with the air of a cold dryer stays as it is.
#[test]
fn nothing_changes_without_a_source() {
    let mut cold = dryer(0.0);
    cold.zones.iter_mut().for_each(|zone| zone.panel_offset = None);
    cold.belt.entry_temperature = Stack::ROOM;
    cold.humidity_ratio = 0.0099;
    // 9.9 g/kg is 1587.5 Pa, of 3169.7 Pa at saturation (IAPWS-IF97 at 25 °C).
    let stack = Stack { humidity: Share(1587.457 / 3169.747), ..printed(&cotton(), 100.0) };
    let history = at_dwell(&stack, &cold, 25.0, 60.0);
    let first = history.samples.first().expect("a start").water[0];
    for sample in &history.samples {
        for [temperature, _] in [sample.film_top, sample.film_bottom, sample.cloth_face, sample.cloth] {
            assert!((temperature[0] - Stack::ROOM).abs() < 1e-3, "{} K", temperature[0]);
        }
        assert!((sample.water[0] - first).abs() < 1e-6, "{} for {first}", sample.water[0]);
    }
    // And it is the balance that keeps it: the same stack in drier air cools as it dries.
    cold.humidity_ratio = 0.003;
    let drying = at_dwell(&stack, &cold, 25.0, 60.0);
    assert!(drying.samples.iter().any(|sample| sample.cloth[0][0] < Stack::ROOM - 1.0));
}

/// Twice through the dryer is hotter for longer, and the belt is warm again at each entry.
#[test]
fn a_second_pass_fuses_more() {
    let (stack, dryer, ink) = (printed(&cotton(), 100.0), dryer(225.0), kinetics_of_reference("ordinary"));
    let case = [Case { set: kelvin(165.0), belt: 1.8 / 35.0, drift: DriftCase::NOMINAL }];
    let run = |passes: u32| history(&stack, &dryer, &case, passes, TOLERANCE).expect("a sound stack");
    let [once, twice] = [run(1), run(2)];
    assert!(fused(&twice, &ink)[0] > fused(&once, &ink)[0] + 0.1);
    assert!((twice.exit_time[0] - 2.0 * 35.0 - 60.0).abs() < 1e-9, "leaves after {}", twice.exit_time[0]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Longer and hotter heat more; heavier, wetter and thicker heat less.
    #[test]
    fn peaks_follow_the_laws(
        weight in 60.0..400.0_f64, film in 20.0..250.0_f64, humidity in 0.05..0.9_f64,
        set in 130.0..200.0_f64, dwell in 10.0..90.0_f64, more in 1.05..1.5_f64, polyester in 0.0..1.0_f64,
    ) {
        let made = |weight: f64| {
            let shares = [(Fibre::Cotton, 1.0 - polyester), (Fibre::Polyester, polyester)];
            // The thickness stays: only the mass is to change.
            let mut cloth = cloth(200.0, 0.8, &shares);
            cloth.areal_mass = weight / 1000.0;
            cloth
        };
        let dryer = dryer(225.0);
        let ink = kinetics_of_reference("ordinary");
        let run = |weight: f64, film: f64, humidity: f64, set: f64, dwell: f64| {
            let stack = Stack { humidity: Share(humidity), ..printed(&made(weight), film) };
            let history = at_dwell(&stack, &dryer, set, dwell);
            (history.film_bottom_peak()[0], fused(&history, &ink)[0])
        };
        let here = run(weight, film, humidity, set, dwell);
        for hotter in [run(weight, film, humidity, set * more.min(1.1), dwell), run(weight, film, humidity, set, dwell * more)] {
            prop_assert!(hotter.0 > here.0 && hotter.1 >= here.1 - 1e-3, "{hotter:?} not over {here:?}");
        }
        let heavier = run(weight * more, film, humidity, set, dwell);
        let thicker = run(weight, film * more, humidity, set, dwell);
        let wetter = run(weight, film, (humidity * more).min(0.98), set, dwell);
        for cooler in [heavier, thicker, wetter] {
            prop_assert!(cooler.0 < here.0 + 0.1, "{cooler:?} not under {here:?}");
        }
    }
}
