//! A print's heat as the film of dye sees it: the way that dye could spread, and what the surface could give to the air.
//!
//! Source: the integrals over the temperature history, summed here by the midpoint rule over the cubic between its samples.
//! The rates under the integrals are held to vapour tables and Arrhenius in `migration`.

use super::anchor_table::red_60;
use super::common::library;
use whitehold::cure::fuse;
use whitehold::dryer::{Case, DriftCase, Dryer, Film, History, Stack, TOLERANCE, history};
use whitehold::ink::CureKinetics;
use whitehold::library::cure_kinetics;
use whitehold::migration::{
    DyedCloth, ExposureInputs, ExposureStep, FilmDiffusion, HeatExposure, MOST_IN_A_STEP, Release,
};
use whitehold::numerics::Lanes;
use whitehold::quantity::Share;
use whitehold::quantity::units::kelvin;
use whitehold::textile::{Construction, Fibre};

const FILM: FilmDiffusion = FilmDiffusion { at_25c: 1e-14, energy: 80e3 };

fn cloth() -> DyedCloth {
    DyedCloth { dye: red_60(library()), share: 1.0, on_fibre: 0.02, areal_mass: 0.140, surface: 5e-6 }
}

fn ordinary() -> CureKinetics {
    cure_kinetics(library().kinetics_record("ordinary").expect("kinetics"))
}

/// A printed polyester jersey through the demo's long dryer.
fn printed(set_c: f64, dwell: f64) -> History<1> {
    let fabric =
        library().fabric(&[(Fibre::Polyester, 1.0)].into(), Construction::Jersey, 140.0).expect("a jersey");
    let dryer = Dryer::from_record(library().dryer("long-kiln").expect("a dryer")).expect("a sound dryer");
    let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &fabric, Share(0.65));
    let case = Case { set: kelvin(set_c), belt: dryer.heated_length() / dwell, drift: DriftCase::NOMINAL };
    history(&stack, &dryer, &[case], 1, TOLERANCE).expect("it integrates")
}

fn exposure(history: &History<1>, after: &[[f64; 2]]) -> HeatExposure {
    let (dyed, kinetics) = (cloth(), ordinary());
    let inputs =
        ExposureInputs { dyed: &dyed, diffusion: FILM, kinetics: &kinetics, before: Release::NONE, after };
    inputs.exposure(history)
}

fn flux(temperature: f64) -> f64 {
    cloth().dye.vapour_flux(Lanes::<1>::splat(temperature))[0]
}

fn diffusivity(temperature: f64) -> f64 {
    FILM.at(Lanes::<1>::splat(temperature))[0]
}

/// Temperature at a place of a step, K, on the cubic between its samples; `x` from 0 to 1.
fn cubic([from, rises]: [f64; 2], [to, ends]: [f64; 2], seconds: f64, x: f64) -> f64 {
    let (x2, x3) = (x * x, x * x * x);
    (2.0 * x3 - 3.0 * x2 + 1.0) * from
        + (x3 - 2.0 * x2 + x) * seconds * rises
        + (3.0 * x2 - 2.0 * x3) * to
        + (x3 - x2) * seconds * ends
}

/// The integral of a rate over the temperatures of the film's bottom and of the cloth's face.
fn integral(history: &History<1>, mut rate: impl FnMut(f64, f64, f64) -> f64) -> f64 {
    let mut sum = 0.0;
    for pair in history.samples.windows(2) {
        let seconds = pair[1].time[0] - pair[0].time[0];
        let of = |place: [Lanes<1>; 2]| place.map(|lane| lane[0]);
        for i in 0..40 {
            let at = |from, to| cubic(of(from), of(to), seconds, (f64::from(i) + 0.5) / 40.0);
            let bottom = at(pair[0].film_bottom, pair[1].film_bottom);
            let face = at(pair[0].cloth_face, pair[1].cloth_face);
            sum += rate(seconds / 40.0, bottom, face) * seconds / 40.0;
        }
    }
    sum
}

/// What the surface could give to the air counts by the share of their dye that the upper yarns still hold.
#[test]
fn what_the_air_could_take_is_the_integral_over_the_history() {
    for (set_c, dwell) in [(160.0, 30.0), (165.0, 40.0), (180.0, 60.0), (216.0, 66.0), (220.0, 140.0)] {
        let history = printed(set_c, dwell);
        let found: f64 = exposure(&history, &[]).steps.iter().map(|step| step.lost).sum();
        let (cloth, mut released) = (cloth(), Release::<1>::NONE);
        let expected = integral(&history, |seconds, bottom, face| {
            released.heat(&cloth, Lanes::splat(seconds), Lanes::splat(face));
            flux(bottom) * cloth.adjacent::<1>(&released).carries[0] / cloth.upper_yarns()
        });
        assert!((found / expected - 1.0).abs() < 0.015, "{set_c} °C, {dwell} s: {found:e} for {expected:e}");
    }
}

/// A step that carries much of the whole takes more dye out of the film than it holds.
#[test]
fn no_step_carries_over_a_tenth() {
    for (set_c, dwell) in [(112.0, 12.0), (165.0, 40.0), (216.0, 66.0), (220.0, 140.0)] {
        for after in [&[][..], &[[kelvin(190.0), 120.0]]] {
            let steps = exposure(&printed(set_c, dwell), after).steps;
            let parts: [fn(&ExposureStep) -> f64; 2] = [|step| step.path, |step| step.lost];
            for part in parts {
                let whole: f64 = steps.iter().map(part).sum();
                let most = steps.iter().map(part).fold(0.0, f64::max);
                assert!(
                    most <= (MOST_IN_A_STEP + 1e-9) * whole,
                    "{set_c} °C, {dwell} s: {most:e} of {whole:e}"
                );
            }
            assert!(steps.len() <= 26, "{set_c} °C, {dwell} s: {} steps", steps.len());
        }
    }
}

/// Dye spreads ten times as fast in a film that has not fused: the way lies between that of a fused film and ten times that,
/// and nearer to the fused one where the film is long fused.
#[test]
fn the_way_lies_between_that_of_a_fused_and_of_a_raw_film() {
    for (set_c, dwell) in [(160.0, 30.0), (165.0, 40.0), (180.0, 60.0)] {
        let history = printed(set_c, dwell);
        let found: f64 = exposure(&history, &[]).steps.iter().map(|step| step.path).sum();
        let fused = integral(&history, |_, bottom, _| diffusivity(bottom));
        assert!(found > fused && found < 10.0 * fused, "{set_c} °C, {dwell} s: {found:e} for {fused:e}");
    }
}

/// A press that comes later adds its own way and its dye; it lies on the print, so nothing escapes; the shares make one.
#[test]
fn a_press_adds_what_it_does() {
    let history = printed(165.0, 40.0);
    let (temperature, seconds) = (kelvin(155.0), 15.0);
    let [plain, pressed] = [&[][..], &[[temperature, seconds]]].map(|after| exposure(&history, after).steps);
    let sum = |steps: &[ExposureStep], part: fn(&ExposureStep) -> f64| steps.iter().map(part).sum::<f64>();
    let fused = fuse(&history, |sample| sample.film_bottom, &ordinary()).fused[0];
    let way = diffusivity(temperature) * seconds * (1.0 + 9.0 * (1.0 - fused));
    let rows = [
        ("way", sum(&pressed, |step| step.path) - sum(&plain, |step| step.path), way),
        ("loss", sum(&pressed, |step| step.lost), sum(&plain, |step| step.lost)),
        ("shares", sum(&pressed, |step| step.share), 1.0),
    ];
    for (what, found, expected) in rows {
        assert!((found / expected - 1.0).abs() < 1e-6, "{what}: {found:e} for {expected:e}");
    }
    let last = pressed.last().expect("a step");
    assert!(last.share > 0.01 && last.path > 0.5 * way, "the press comes last: {last:?}");
}
