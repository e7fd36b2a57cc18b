//! A probe run fixes a dryer, and two tested prints an ink, as far as they can and no further.

use proptest::prelude::*;
use whitehold::cure::{PrintTestOutcome, estimate_kinetics};
use whitehold::dryer::{
    Case, DriftCase, Dryer, DryerCalibration, Film, History, HistoryError, HistorySample, Stack, TOLERANCE,
    TemperatureReading, calibrate, history,
};
use whitehold::ink::CureKinetics;
use whitehold::library::{cure_kinetics, starter};
use whitehold::numerics::Lanes;
use whitehold::numerics::rosenbrock::Effort;
use whitehold::quantity::Share;
use whitehold::quantity::units::kelvin;
use whitehold::textile::{Construction, Fibre};

fn kiln() -> Dryer {
    Dryer::from_record(starter().unwrap().dryer("long-kiln").unwrap()).unwrap()
}

fn tee() -> Stack {
    let cloth =
        starter().unwrap().fabric(&[(Fibre::Cotton, 1.0)].into(), Construction::Jersey, 160.0).unwrap();
    Stack::garment(Film { thickness: 80e-6, density: 1300.0 }, &cloth, Share(0.55))
}

/// Readings of a probe under the film in the dryer as it truly is, every 3 s, each off by what `noise` says.
fn run(truth: DriftCase, noise: impl Fn(usize) -> f64) -> Vec<TemperatureReading> {
    let case = Case { set: kelvin(165.0), belt: 1.8 / 45.0, drift: truth };
    let history = history(&tee(), &kiln(), &[case], 1, TOLERANCE).unwrap();
    let read = |i: usize| {
        let seconds = 3.0 * (i + 1) as f64;
        let there = history.at(|sample| sample.film_bottom, seconds).unwrap()[0];
        TemperatureReading { seconds, temperature: there + noise(i) }
    };
    (0..20).map(read).collect()
}

fn fitted(readings: &[TemperatureReading]) -> Result<DryerCalibration, HistoryError> {
    calibrate(&tee(), &kiln(), kelvin(165.0), 1.8 / 45.0, |sample| sample.film_bottom, readings)
}

/// The dryer with its zones as the probe found them.
fn corrected(found: &DryerCalibration) -> Dryer {
    let mut dryer = kiln();
    for zone in &mut dryer.zones {
        zone.air_offset += found.air.likely;
        for transfer in [&mut zone.h_top, &mut zone.h_bottom] {
            transfer.value *= found.h.likely;
            transfer.slope *= found.h.likely;
        }
        zone.exchange = (zone.exchange * found.exchange.likely).min(0.9);
    }
    dryer
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// What the dryer truly does comes out, with noise of a probe, and the dryer so corrected runs as the true one.
    #[test]
    fn a_probe_run_finds_the_dryer(air in -8.0..8.0_f64, h in 0.75..1.3_f64, exchange in 0.75..1.3_f64, seed in 0..50_usize) {
        let truth = DriftCase { air, h, exchange, ..DriftCase::NOMINAL };
        let noise = |i: usize| 2.0 * (((seed * 31 + i * 17) as f64 * 0.618_034).fract() - 0.5);
        let found = fitted(&run(truth, noise))?;
        prop_assert!(found.believable && found.misfit < 2.0, "{found:?}");
        // The three pull the same way for much of the run: each alone is loose, the film they give is not.
        let case = |drift: DriftCase| Case { set: kelvin(172.0), belt: 1.8 / 35.0, drift };
        let of = |dryer: &Dryer, drift: DriftCase| {
            history(&tee(), dryer, &[case(drift)], 1, TOLERANCE).map(|history| history.film_bottom_peak()[0])
        };
        let (learnt, true_peak) = (of(&corrected(&found), DriftCase::NOMINAL)?, of(&kiln(), truth)?);
        prop_assert!((learnt - true_peak).abs() < 2.5, "{learnt} K for {true_peak} K, {found:?}");
        let before = of(&kiln(), DriftCase::NOMINAL)?;
        prop_assert!((learnt - true_peak).abs() < (before - true_peak).abs() + 1.5);
    }
}

/// More readings, narrower bands; and a probe that was never in this dryer is not believed.
#[test]
fn bands_and_belief() {
    let truth = DriftCase { h: 1.2, ..DriftCase::NOMINAL };
    let readings = run(truth, |_| 0.0);
    let width = |readings: &[TemperatureReading]| {
        let found = fitted(readings).unwrap();
        [found.air, found.h, found.exchange].map(|band| band.high - band.low)
    };
    let (few, all) = (width(&readings[..6]), width(&readings));
    for (few, all) in few.into_iter().zip(all) {
        assert!(all < few, "{all} not under {few}");
    }
    let absurd: Vec<TemperatureReading> =
        readings.iter().map(|r| TemperatureReading { temperature: 330.0, ..*r }).collect();
    assert!(!fitted(&absurd).unwrap().believable);
}

/// Readings that cannot be: refused by name.
#[test]
fn readings_that_cannot_be() {
    let good = run(DriftCase::NOMINAL, |_| 0.0);
    let with = |i: usize, reading: TemperatureReading| {
        let mut bad = good.clone();
        bad[i] = reading;
        bad
    };
    let rows = [
        ("readings", good[..3].to_vec()),
        // All of them long after the piece is cool.
        ("readings", good.iter().map(|r| TemperatureReading { seconds: r.seconds + 1000.0, ..*r }).collect()),
        ("readings[2].temperature", with(2, TemperatureReading { seconds: 9.0, temperature: f64::NAN })),
        ("readings[2].temperature", with(2, TemperatureReading { seconds: 9.0, temperature: 60.0 })),
        ("readings[4].seconds", with(4, TemperatureReading { seconds: 3.0, temperature: 350.0 })),
        ("readings[0].seconds", with(0, TemperatureReading { seconds: -3.0, temperature: 350.0 })),
    ];
    for (field, readings) in rows {
        match fitted(&readings) {
            Err(HistoryError::Outside(error)) => assert_eq!(error.field, field),
            other => panic!("{field}: {other:?}"),
        }
    }
}

/// A film held so long at one temperature that it is fused as far as that temperature lets it.
fn held(celsius: f64) -> History<1> {
    let still = [Lanes::splat(kelvin(celsius)), Lanes::ZERO];
    let sample = |time: f64| HistorySample {
        time: Lanes::splat(time),
        film_top: still,
        film_bottom: still,
        cloth_face: still,
        cloth: still,
        water: Lanes::ZERO,
        face_water: Lanes::ZERO,
    };
    let samples = (0..60).map(|i| sample(200.0 * f64::from(i))).collect();
    History { samples, exit_time: Lanes::splat(11_800.0), effort: Effort::default() }
}

/// An ordinary ink that is half fused at 148 °C, 6 s at 160 °C: the class of the rows below.
fn ordinary() -> CureKinetics {
    let class = cure_kinetics(starter().unwrap().kinetics_record("ordinary").unwrap());
    CureKinetics { half_fused: kelvin(148.0), fusion_time: 6.0, ..class }
}

/// Source: the same posterior integrated by SciPy 1.17.1 (`integrate.quad`, quantiles by `optimize.brentq`). Prints held
/// until time no longer counts, so that only the temperature of half fusion is learnt: °C and what was seen; mean, 10 % and
/// 90 % against the class, K; how expected it was.
#[test]
fn half_fusion_learnt_from_long_holds() {
    use PrintTestOutcome::{Edge, Fails, Holds};
    type Row = (&'static [(f64, PrintTestOutcome)], [f64; 3], f64);
    let rows: [Row; 3] = [
        (&[(158.0, Holds)], [-2.7419, -7.7991, 1.9794], 0.57905),
        (&[(152.0, Fails), (160.0, Holds)], [-0.4669, -4.5461, 3.6054], 0.49491),
        (&[(150.0, Holds), (155.0, Edge)], [-4.0819, -7.2994, -0.9295], 0.05303),
    ];
    let class = ordinary();
    assert!((class.half_fused - kelvin(148.0)).abs() < 1e-9 && (class.width - 4.0).abs() < 1e-9);
    for (prints, [mean, low, high], expected) in rows {
        let prints: Vec<_> = prints.iter().map(|&(celsius, seen)| (held(celsius), seen)).collect();
        let learnt = estimate_kinetics(&class, Share(0.9), &prints);
        let found = learnt.half_fused.map(|half| half - class.half_fused);
        assert!((found.likely - mean).abs() < 0.05, "mean {} for {mean}", found.likely);
        // Quantiles are read off the grid of 0.75 K.
        assert!(
            (found.low - low).abs() < 0.8 && (found.high - high).abs() < 0.8,
            "{found:?} for {low} to {high}"
        );
        assert!((learnt.expected.0 / expected - 1.0).abs() < 0.02, "{} for {expected}", learnt.expected.0);
    }
}

/// An ink that held cool is a cooler ink, one that failed hot a hotter or slower one, and no print moves nothing.
#[test]
fn prints_move_the_ink_their_way() {
    let class = ordinary();
    let printed = |set: f64, dwell: f64| {
        let case = Case { set: kelvin(set), belt: 1.8 / dwell, drift: DriftCase::NOMINAL };
        history(&tee(), &kiln(), &[case], 1, TOLERANCE).unwrap()
    };
    let held = estimate_kinetics(&class, Share(0.9), &[(printed(140.0, 40.0), PrintTestOutcome::Holds)]);
    let failed = estimate_kinetics(&class, Share(0.9), &[(printed(175.0, 45.0), PrintTestOutcome::Fails)]);
    let none = estimate_kinetics(&class, Share(0.9), &[]);
    assert!(held.half_fused.likely < none.half_fused.likely - 1.0, "{held:?}");
    assert!(
        failed.half_fused.likely > none.half_fused.likely
            || failed.fusion_time.likely > none.fusion_time.likely
    );
    assert!(
        (none.half_fused.likely - class.half_fused).abs() < 1e-9 && (none.expected.0 - 1.0).abs() < 1e-12
    );
    // Both at once: the hot one failed though the cool one held. Hardly to be expected of any ink.
    let odd = estimate_kinetics(
        &class,
        Share(0.9),
        &[(printed(140.0, 40.0), PrintTestOutcome::Holds), (printed(175.0, 45.0), PrintTestOutcome::Fails)],
    );
    assert!(odd.expected.0 < 0.01, "{}", odd.expected.0);
}
