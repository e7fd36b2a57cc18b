//! Gelation and fusion follow a given temperature as the solved equations do.
//!
//! The histories here are made up: holds and straight ramps, on which the equations have known answers.

use proptest::prelude::*;
use whitehold::cure::{
    Cure, equilibrium_fusion, fuse, gelled_at, scorch, scorch_index, scorch_temperature, spare, trace,
};
use whitehold::dryer::{History, HistorySample};
use whitehold::ink::CureKinetics;
use whitehold::library::{cure_kinetics, starter};
use whitehold::numerics::rosenbrock::Effort;
use whitehold::numerics::{Lanes, arrhenius};
use whitehold::quantity::{GAS_CONSTANT, Share, units::kelvin};

/// A history of straight stretches, each to a temperature (K) in some seconds, sampled every `step` seconds.
fn straight(start: f64, stretches: &[(f64, f64)], step: f64) -> History<1> {
    let mut samples = vec![sample(0.0, start, 0.0)];
    let (mut time, mut from) = (0.0, start);
    for &(to, seconds) in stretches {
        let rate = (to - from) / seconds;
        let count = (seconds / step).ceil().max(1.0) as u32;
        // The rate jumps where stretches meet, so each begins with a sample of its own.
        samples.push(sample(time, from, rate));
        for i in 1..=count {
            let passed = seconds * f64::from(i) / f64::from(count);
            samples.push(sample(time + passed, from + rate * passed, rate));
        }
        (time, from) = (time + seconds, to);
    }
    History { samples, exit_time: Lanes::splat(time), effort: Effort::default() }
}

fn sample(time: f64, temperature: f64, rate: f64) -> HistorySample<1> {
    let at = [Lanes::splat(temperature), Lanes::splat(rate)];
    HistorySample {
        time: Lanes::splat(time),
        film_top: at,
        film_bottom: at,
        cloth_face: at,
        cloth: at,
        water: Lanes::ZERO,
        face_water: Lanes::ZERO,
    }
}

fn bottom(sample: &HistorySample<1>) -> [Lanes<1>; 2] {
    sample.film_bottom
}

fn kinetics(id: &str) -> CureKinetics {
    cure_kinetics(starter().unwrap().kinetics_record(id).unwrap())
}

fn cured(history: &History<1>, kinetics: &CureKinetics) -> [f64; 2] {
    let Cure { gelled, fused } = fuse(history, bottom, kinetics);
    [gelled[0], fused[0]]
}

/// A first-order reaction in the place of gelation: `A exp(-E / RT)` with E 120 kJ/mol.
fn first_order(frequency: f64) -> CureKinetics {
    let (reference, energy) = (400.0, 120e3);
    let rate = frequency * (-energy / (GAS_CONSTANT * reference)).exp();
    CureKinetics {
        gel_time: 1.0 / rate,
        gel_reference: reference,
        gel_energy: energy,
        ..kinetics("ordinary")
    }
}

/// Source: exact. `g = 1 − exp(−t/t_g)`: at 90 °C ordinary ink has t_g = 10 s. With g known, fusion at constant
/// temperature is `φ_eq [1 − exp(−k_f (t − t_g g))]`.
#[test]
fn standing_still_has_a_closed_form() {
    let ink = kinetics("ordinary");
    for (celsius, seconds) in
        [(90.0, 5.0), (90.0, 10.0), (90.0, 30.0), (150.0, 20.0), (160.0, 6.0), (170.0, 12.0)]
    {
        let temperature = kelvin(celsius);
        let at = Lanes::<1>::splat(temperature);
        let gel_rate = arrhenius(at, ink.gel_time, ink.gel_reference, ink.gel_energy)[0];
        let fusion_rate = arrhenius(at, ink.fusion_time, ink.fusion_reference, ink.fusion_energy)[0];
        let gelled = 1.0 - (-gel_rate * seconds).exp();
        let balance = 1.0 / (1.0 + (-(temperature - ink.half_fused) / ink.width).exp());
        let fused = balance * (1.0 - (-fusion_rate * (seconds - gelled / gel_rate)).exp());
        let found = cured(&straight(temperature, &[(temperature, seconds)], 0.05), &ink);
        assert!((found[0] - gelled).abs() < 1e-12, "{celsius} °C {seconds} s: gelled {} {gelled}", found[0]);
        assert!((found[1] - fused).abs() < 5e-5, "{celsius} °C {seconds} s: fused {} {fused}", found[1]);
    }
    let [gelled, _] = cured(&straight(kelvin(90.0), &[(kelvin(90.0), 10.0)], 1.0), &ink);
    assert!((gelled - 0.632_120_558_8).abs() < 1e-9, "{gelled}");
}

/// Source: exact. `t = -t_g ln(1 - g)`, whatever the time steps: the end of one would be up to 8 s late here. Low-cure ink
/// has t_g = 10 s at 80 °C, ordinary ink at 90 °C.
#[test]
fn when_a_film_has_gelled_does_not_hang_on_the_time_step() {
    let rows = [("ordinary", 90.0, 0.4, 5.108_256_237_7), ("low-cure", 80.0, 0.95, 29.957_322_735_5)];
    for (ink, celsius, share, expected) in rows {
        for step in [0.1, 3.0, 8.0] {
            let history = straight(kelvin(celsius), &[(kelvin(celsius), 40.0)], step);
            let found =
                gelled_at(&history, bottom, &kinetics(ink), Share(share)).expect("hot for long enough");
            assert!((found - expected).abs() < 1e-6, "{ink}, steps of {step} s: {found} s for {expected}");
        }
        let short = straight(kelvin(celsius), &[(kelvin(celsius), expected - 0.1)], 3.0);
        assert_eq!(gelled_at(&short, bottom, &kinetics(ink), Share(share)), None, "{ink}: not hot for long");
    }
}

/// The inks of [`ramps_and_holds_against_a_general_solver`]: half fused at 148 and 122 °C, 6 s.
fn solved_ink(id: &str) -> CureKinetics {
    let half_fused = kelvin(if id == "ordinary" { 148.0 } else { 122.0 });
    CureKinetics { half_fused, fusion_time: 6.0, ..kinetics(id) }
}

/// Source: SciPy 1.17.1 LSODA (rtol 1e-11) on the same two equations. Ink, ramp in K/s from 25 °C, its end in °C, hold
/// in s; gelled and fused at the end of the ramp and after the hold. The steps are about those of a dryer's march.
#[test]
fn ramps_and_holds_against_a_general_solver() {
    let rows = [
        ("ordinary", 5.0, 160.0, 10.0, [1.0, 0.222_246], [1.0, 0.814_633]),
        ("ordinary", 3.0, 150.0, 20.0, [1.0, 0.075_668], [1.0, 0.525_464]),
        ("ordinary", 20.0, 100.0, 8.0, [0.124_014, 0.0], [0.895_244, 0.0]),
        ("low-cure", 5.0, 135.0, 10.0, [1.0, 0.223_684], [1.0, 0.823_096]),
        ("low-cure", 2.0, 120.0, 30.0, [1.0, 0.035_087], [1.0, 0.310_068]),
    ];
    for (ink, ramp, end, hold, at_end, held) in rows {
        let end = kelvin(end);
        let up = (end, (end - 298.15) / ramp);
        let kinetics = solved_ink(ink);
        let found = [
            cured(&straight(298.15, &[up], 0.5), &kinetics),
            cured(&straight(298.15, &[up, (end, hold)], 0.5), &kinetics),
        ];
        for (found, expected) in found.into_iter().zip([at_end, held]) {
            for (found, expected) in found.into_iter().zip(expected) {
                assert!((found - expected).abs() < 5e-4, "{ink} {ramp} K/s: {found} for {expected}");
            }
        }
    }
}

/// Source: the Arrhenius temperature integral, `∫ exp(−E/RT) dT` from 300 to 450 K with E 120 kJ/mol =
/// 1.5579441852451e-13 K, by the exponential integral and by quadrature (SciPy 1.17.1 `exp1`, `quad`). At constant
/// heating rate β, `−ln(1 − g) = A/β` times it.
#[test]
fn heated_steadily_by_the_temperature_integral() {
    let integral = 1.557_944_185_245_1e-13;
    let heating = 10.0 / 60.0;
    for reacted in [0.5_f64, 1.0, 3.0] {
        let frequency = reacted * heating / integral;
        let history = straight(300.0, &[(450.0, 150.0 / heating)], 0.3);
        let [gelled, _] = cured(&history, &first_order(frequency));
        let found = -(1.0 - gelled).ln() * heating / frequency;
        assert!((found / integral - 1.0).abs() < 1e-6, "{found:e} for {integral:e}");
    }
}

/// Source: Kissinger, first order, E 120 kJ/mol, A 1e13 /s, 10 K/min: the rate peaks at 421.5638 K (root of
/// `E β / R T² = A exp(−E/RT)`, SciPy 1.17.1 `brentq`) with 0.61178 converted.
#[test]
fn heated_steadily_the_rate_peaks_where_kissinger_says() {
    let heating = 10.0 / 60.0;
    let kinetics = first_order(1e13);
    let history = straight(300.0, &[(460.0, 160.0 / heating)], 0.6);
    let gelled: Vec<f64> = trace(&history, bottom, &kinetics).iter().map(|cure| cure.gelled[0]).collect();
    let temperature = |i: usize| history.samples[i].film_bottom[0][0];
    let rate = |i: usize| gelled[i] - gelled[i - 1];
    let top = (2..gelled.len()).max_by(|&a, &b| rate(a).total_cmp(&rate(b))).unwrap();
    // Parabola through the three highest rates; each belongs to the middle of its step of 0.1 K.
    let (before, at, after) = (rate(top - 1), rate(top), rate(top + 1));
    let shift = 0.5 * (before - after) / (before - 2.0 * at + after);
    let peak = temperature(top) - 0.05 + 0.1 * shift;
    assert!((peak - 421.5638).abs() < 2e-3, "peak at {peak} K");
    let there = gelled[top - 1] + (peak - temperature(top - 1)) / 0.1 * rate(top);
    assert!((there - 0.611_78).abs() < 2e-4, "{there} converted");
}

/// Source: the thermal-death time of food science: z = 10 K at 121.1 °C is E = ln 10 R T² / z = 297.57 kJ/mol.
#[test]
fn an_activation_energy_is_a_z_value() {
    let rate = |kelvin: f64| arrhenius(Lanes::<1>::splat(kelvin), 1.0, 394.25, 297_572.8)[0];
    let slope = (rate(394.25 + 0.01) / rate(394.25 - 0.01)).ln() / 0.02;
    assert!((std::f64::consts::LN_10 / slope - 10.0).abs() < 1e-5, "z {}", std::f64::consts::LN_10 / slope);
}

/// By the rate: a tenth of the time needs the tenfold rate, and the temperature of an index is where it is reached.
#[test]
fn a_scorch_index_has_its_temperature() {
    for index in [0.02, 0.3, 1.0, 4.0] {
        for seconds in [2.0, 15.0, 90.0, 900.0] {
            let found = scorch_temperature(index, seconds);
            let back = scorch_index(found, seconds);
            assert!((back / index - 1.0).abs() < 1e-9, "{index} in {seconds} s: {back} at {found} K");
        }
    }
    assert!(scorch_temperature(1e30, 1e-30).is_infinite());
}

/// Source: the stated anchor (one minute at 200 °C shows; an assumption) and the Arrhenius factor of E 130 kJ/mol over
/// it, Python 3.11: °C, seconds, index.
#[test]
fn scorch_adds_up() {
    let rows = [(200.0, 60.0, 1.0), (200.0, 30.0, 0.5), (180.0, 60.0, 0.232_591_2), (220.0, 60.0, 3.819_709)];
    for (celsius, seconds, expected) in rows {
        let temperature = kelvin(celsius);
        let found = scorch(&straight(temperature, &[(temperature, seconds)], 2.0), bottom)[0];
        assert!((found / expected - 1.0).abs() < 1e-5, "{celsius} °C {seconds} s: {found} for {expected}");
    }
}

/// Source: exact. Held for an hour, an ink is fused as far as its balance: by 0.9 from `T_50 + s ln 9` on.
#[test]
fn kelvins_to_spare_have_a_closed_form() {
    for (ink, celsius) in [("ordinary", 152.0), ("ordinary", 160.0), ("ordinary", 175.0), ("low-cure", 140.0)]
    {
        let kinetics = kinetics(ink);
        let held = kelvin(celsius);
        let expected = held - (kinetics.half_fused + kinetics.width * 9.0_f64.ln());
        let found = spare(&straight(held, &[(held, 3600.0)], 5.0), bottom, &kinetics, Share(0.9))[0];
        assert!((found - expected).abs() < 0.02, "{ink} {celsius} °C: {found} K to spare, {expected}");
    }
}

/// Exact: of what a film is fused by itself it has nothing to spare. The search begins at the answer here, and stays there.
#[test]
fn a_film_has_nothing_to_spare_of_its_own_fusion() {
    for (ink, celsius) in [("ordinary", 148.0), ("ordinary", 157.0), ("ordinary", 165.0), ("low-cure", 130.0)]
    {
        let kinetics = kinetics(ink);
        let history = straight(298.15, &[(kelvin(celsius), 50.0), (298.15, 50.0)], 1.0);
        let [_, fused] = cured(&history, &kinetics);
        assert!((0.01..0.99).contains(&fused), "{ink} {celsius} °C: {fused}");
        let found = spare(&history, bottom, &kinetics, Share(fused))[0];
        assert!(found.abs() < 1e-6, "{ink} {celsius} °C: {found} K to spare");
    }
}

proptest! {
    /// As many kelvins colder as it has to spare, a film is fused by just what it needs.
    #[test]
    fn without_what_it_can_spare_a_film_just_fuses(
        top in 145.0..200.0_f64, up in 10.0..60.0_f64, down in 10.0..60.0_f64, needed in 0.7..0.95_f64,
    ) {
        let ink = kinetics("ordinary");
        let shifted = |colder: f64| {
            let [from, top] = [298.15 - colder, kelvin(top) - colder];
            straight(from, &[(top, up), (from, down)], 1.0)
        };
        let spare = spare(&shifted(0.0), bottom, &ink, Share(needed))[0];
        prop_assume!((-35.0..35.0).contains(&spare));
        let [_, fused] = cured(&shifted(spare), &ink);
        prop_assert!((fused - needed).abs() < 0.01, "{fused} for {needed}, {spare} K to spare");
    }

    /// Fusion is limited by temperature: no dwell takes it past the balance at the hottest it has been; and neither
    /// share ever falls or leaves 0 to 1.
    #[test]
    fn fusion_never_passes_its_balance(
        stretches in prop::collection::vec((290.0..520.0_f64, 0.5..80.0_f64), 1..6),
        low_cure in any::<bool>(),
    ) {
        let kinetics = kinetics(if low_cure { "low-cure" } else { "ordinary" });
        let history = straight(298.15, &stretches, 1.0);
        let hottest = stretches.iter().map(|stretch| stretch.0).fold(298.15, f64::max);
        let balance = equilibrium_fusion(Lanes::<1>::splat(hottest), &kinetics)[0];
        let mut last = [0.0; 2];
        for cure in trace(&history, bottom, &kinetics) {
            let now = [cure.gelled[0], cure.fused[0]];
            prop_assert!(now[0] >= last[0] && now[1] >= last[1], "{now:?} after {last:?}");
            prop_assert!(now[0] <= 1.0 && now[1] <= balance + 1e-12, "{now:?}, balance {balance}");
            last = now;
        }
        let end = cured(&history, &kinetics);
        prop_assert!((end[0] - last[0]).abs() < 1e-15 && (end[1] - last[1]).abs() < 1e-15, "{end:?} for {last:?}");
    }

    /// Longer and hotter both fuse more.
    #[test]
    fn longer_and_hotter_fuse_more(
        celsius in 100.0..200.0_f64, seconds in 1.0..60.0_f64, hotter in 0.5..20.0_f64, longer in 0.5..20.0_f64,
    ) {
        let ink = kinetics("ordinary");
        let held = |celsius: f64, seconds: f64| {
            cured(&straight(kelvin(celsius), &[(kelvin(celsius), seconds)], 0.5), &ink)
        };
        let here = held(celsius, seconds);
        for more in [held(celsius + hotter, seconds), held(celsius, seconds + longer)] {
            prop_assert!(more[0] >= here[0] - 1e-12 && more[1] >= here[1] - 1e-4, "{more:?} under {here:?}");
        }
    }
}
