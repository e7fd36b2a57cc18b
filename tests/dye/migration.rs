//! Dye leaves, arrives and spreads as the vapour tables and Crank's solutions say.

use proptest::prelude::*;
use whitehold::dryer::{Case, DriftCase, Dryer, Film, History, Stack, TOLERANCE, history};
use whitehold::library::{Library, starter};
use whitehold::migration::{Binding, Dye, DyedCloth, FilmDiffusion, Release, release};
use whitehold::numerics::Lanes;
use whitehold::numerics::normal::complementary_error;
use whitehold::quantity::units::kelvin;
use whitehold::quantity::{GAS_CONSTANT, Share};
use whitehold::textile::{Construction, Fibre};

fn library() -> Library {
    starter().expect("the library")
}

fn dye(id: &str) -> Dye {
    let library = library();
    let record = library.dye(id).expect("a dye of the table");
    Dye {
        vapour: [record.a, record.b, record.c],
        molar_mass: record.molar_mass.value,
        diffusivity_130c: 1e-15,
        diffusion_energy: 163.84e3,
        gate: None,
    }
}

fn polyester(on_fibre: f64) -> DyedCloth {
    DyedCloth { dye: dye("disperse-red-60"), share: 1.0, on_fibre, areal_mass: 0.140, surface: 5e-6 }
}

/// Disperse Red 60 over its melt by the same source (0.0454, 0.849, 4.83, 23.7 Pa; 141.8 kJ/mol), brought to the solid by
/// Clausius and Clapeyron with 38.5 kJ/mol at 458 K, worked in Python 3.11.
#[rustfmt::skip]
const SOLID_RED_60: (&str, [f64; 4], f64) = ("disperse-red-60", [1.146e-2, 4.756e-1, 4.334, 3.276e1], 180.3);

/// Source: Landolt-Börnstein IV/20, as in the open package chemicals 1.5.2 and evaluated by it: vapour pressure at
/// 130, 160, 180 and 200 °C in Pa, heat of vaporisation at 160 °C in kJ/mol.
#[rustfmt::skip]
const VAPOUR: [(&str, [f64; 4], f64); 12] = [
    ("disperse-red-9",     [7.05e-1, 9.13,    4.17e1,  1.68e2],  124.0),
    ("disperse-orange-3",  [2.25e-1, 3.56,    1.83e1,  8.23e1],  133.8),
    ("disperse-orange-11", [2.55e-1, 3.35,    1.54e1,  6.24e1],  124.6),
    ("disperse-red-15",    [1.41e-1, 1.88,    8.73,    3.54e1],  125.2),
    ("disperse-red-11",    [3.77e-2, 7.87e-1, 4.77,    2.48e1],  147.0),
    ("disperse-blue-14",   [1.49e-2, 3.43e-1, 2.20,    1.21e1],  151.8),
    ("disperse-orange-25", [1.19e-2, 2.49e-1, 1.51,    7.90],    147.3),
    ("disperse-violet-1",  [4.85e-3, 1.05e-1, 6.30e-1, 3.20],    147.3),
    ("disperse-red-1",     [3.62e-3, 1.33e-1, 1.13,    8.02],    174.5),
    ("disperse-blue-56",   [3.05e-2, 2.15e-1, 6.85e-1, 1.98],     94.5),
    ("disperse-yellow-54", [1.87e-3, 3.28e-2, 1.79e-1, 8.49e-1], 138.7),
    ("disperse-yellow-3",  [5.26e-1, 4.74,    1.75e1,  5.76e1],  106.4),
];

#[test]
fn vapour_pressures_of_a_table() {
    for (id, pressures, heat) in VAPOUR.into_iter().chain([SOLID_RED_60]) {
        let dye = dye(id);
        let at = |celsius: f64| dye.vapour_pressure(Lanes::<1>::splat(kelvin(celsius)))[0];
        for (celsius, expected) in [130.0, 160.0, 180.0, 200.0].into_iter().zip(pressures) {
            assert!((at(celsius) / expected - 1.0).abs() < 6e-3, "{id} {celsius} °C: {} Pa", at(celsius));
        }
        // Clausius and Clapeyron: the heat is the slope of ln P with -1/T.
        let slope = (at(160.01) / at(159.99)).ln() / (1.0 / kelvin(159.99) - 1.0 / kelvin(160.01));
        let found = slope * GAS_CONSTANT / 1000.0;
        assert!((found - heat).abs() < 0.06, "{id}: {found:.1} kJ/mol for {heat}");
    }
}

/// Source: Crank, The Mathematics of Diffusion: what a half-space of concentration C gives off into a perfect sink is
/// the area over its profile, `∫ C erfc(x / 2√Θ) dx = 2C √(Θ/π)`; here summed up by Simpson's rule. The cloth's numbers
/// are assumed (`migration::source`): fibre of 1390 kg/m³ touches the film over a fifth of the print's area, and the film
/// sees 0.35 of the cloth's mass.
#[test]
fn contact_takes_what_a_half_space_gives() {
    let cloth = DyedCloth { surface: 0.0, ..polyester(0.02) };
    let inside = 0.02 * 1390.0;
    for theta in [1e-20_f64, 1e-18, 1e-16] {
        let (cells, depth) = (2000, 12.0 * theta.sqrt());
        let step = depth / f64::from(cells);
        let given: f64 = (0..=cells)
            .map(|i| {
                let weight = match i {
                    _ if i == 0 || i == cells => 1.0,
                    _ if i % 2 == 1 => 4.0,
                    _ => 2.0,
                };
                weight * complementary_error(f64::from(i) * step / (2.0 * theta.sqrt())) * step / 3.0 * inside
            })
            .sum();
        let heated = Release { theta: Lanes::<1>::splat(theta), ..Release::NONE };
        let found = cloth.arrives(&heated)[0];
        // The upper yarns run down by what they have given: e-fold in their whole load.
        let upper = 0.02 * 0.140 * 0.35;
        let expected = upper * (1.0 - (-DyedCloth::CONTACT * given / upper).exp());
        assert!((found / expected - 1.0).abs() < 1e-6, "Θ {theta:e}: {found:e} kg/m² for {expected:e}");
    }
}

/// Transcription check: the same `(D/gap) (P M / R T) a f` worked in Python 3.11 for Disperse Red 60 at 160 °C, 2 % on the
/// fibre of 5 % exp(20000/R (1/403.15 - 1/433.15)) at saturation, polyester alone:
/// 4.5e-6 (433.15/298)^1.75 / 150e-6 · 0.47559 · 0.33133 / (8.314462618 · 433.15) · 0.26460 = 6.6828e-07.
#[test]
fn vapour_crosses_the_gap() {
    let mut found = Release::<1>::NONE;
    found.heat(&polyester(0.02), Lanes::splat(1.0), Lanes::splat(kelvin(160.0)));
    let expected = 6.68286e-07;
    assert!(
        (found.vapour[0] / expected - 1.0).abs() < 1e-3,
        "{:e} kg/(m² s) for {expected:e}",
        found.vapour[0]
    );
}

/// Transcription check, worked in Python 3.11. Below its setting heat a gated fibre has 164 + 86 = 250 kJ/mol, above it
/// the plain 164: `exp(-ΔE/R (1/T - 1/T_set))` at 130 °C for a cloth set at 180 °C, and at 190 °C.
#[test]
fn a_heat_set_fibre_is_closed_below_its_setting_heat() {
    let open = dye("disperse-red-60");
    let gated = Dye { gate: Some(kelvin(180.0)), ..open };
    for (celsius, expected) in [(130.0, 0.058_959), (179.0, 0.950_771), (180.0, 1.0), (190.0, 1.0)] {
        let at = Lanes::<1>::splat(kelvin(celsius));
        let found = gated.diffusivity(at)[0] / open.diffusivity(at)[0];
        assert!((found - expected).abs() < 1e-5, "{celsius}: {found} for {expected}");
    }
}

/// Source: A'P for plasticised PVC 14.6, τ 0, molar mass 331 g/mol, Piringer's form
/// `ln D = A'P - τ/T - 0.135 M^(2/3) + 0.003 M - 10454/T` (as in the open SFPPy and the JRC's guidelines EUR 27529): an
/// upper bound for migration, 5.4e-12 m²/s at 25 °C. At cure heat it passes the limit of the plasticiser as a liquid
/// and bounds nothing.
#[test]
fn dye_in_a_film_stays_under_the_bound_of_food_law_at_room_heat() {
    let (mass, kelvin) = (331.0_f64, 298.15);
    let bound = (14.6 - 0.135 * mass.powf(2.0 / 3.0) + 0.003 * mass - 10_454.0 / kelvin).exp();
    assert!((bound / 5.4e-12 - 1.0).abs() < 0.02, "{bound:e}");
    let library = library();
    let [_, high] = library.limits.film_diffusivity_25c.range;
    // The fastest that is allowed for, and that in a film that has not fused at all.
    for fused in [1.0, 0.0] {
        let film = FilmDiffusion { at_25c: high, energy: 80e3 }.at_fused_share(Share(fused));
        assert!(film.at_25c < bound, "{:e} over {bound:e}", film.at_25c);
    }
}

/// Transcription check: Arrhenius' factors for 89 kJ/mol, that of a plasticiser in PVC (Ekelund et al., abstract), worked
/// in Python 3.11: how much faster than at 25 °C. A day at 80 °C is most of a year.
#[test]
fn warmer_shelves_run_faster() {
    let film = FilmDiffusion { at_25c: 1e-14, energy: 89e3 };
    for (celsius, expected) in [(40.0, 5.583_011_6), (60.0, 43.458_437_6), (80.0, 268.124_259_9)] {
        let found = film.at(Lanes::<1>::splat(kelvin(celsius)))[0] / 1e-14;
        assert!((found / expected - 1.0).abs() < 1e-7, "{celsius} °C: {found} for {expected}");
    }
}

/// The history of a printed polyester jersey of the starter library on its long dryer.
fn journey(set: f64, dwell: f64) -> History<1> {
    let library = library();
    let cloth = library
        .fabric(&[(Fibre::Polyester, 1.0)].into(), Construction::Jersey, 140.0)
        .expect("a polyester jersey");
    let dryer = Dryer::from_record(library.dryer("long-kiln").expect("a dryer")).expect("a sound dryer");
    let case = Case { set: kelvin(set), belt: dryer.heated_length() / dwell, drift: DriftCase::NOMINAL };
    let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &cloth, Share(0.65));
    history(&stack, &dryer, &[case], 1, TOLERANCE).expect("a sound stack")
}

proptest! {
    /// Mass is kept: no more arrives than the upper yarns carry and lies loose, however long the heat.
    #[test]
    fn no_more_dye_arrives_than_there_is(
        celsius in 80.0..230.0_f64, seconds in 0.1..1e5_f64, on_fibre in 1e-4..0.08_f64, share in 0.01..1.0_f64,
    ) {
        let cloth = DyedCloth { share, ..polyester(on_fibre) };
        let mut heated = Release::<1>::NONE;
        heated.heat(&cloth, Lanes::splat(seconds), Lanes::splat(kelvin(celsius)));
        let found = cloth.arrives(&heated)[0];
        let carried = on_fibre * share * cloth.areal_mass * DyedCloth::UPPER_YARNS + cloth.surface;
        prop_assert!(found > 0.0 && found <= carried * (1.0 + 1e-12), "{found:e} of {carried:e}");
    }

    /// Heat events add up, in any order.
    #[test]
    fn heat_adds_up(first in 100.0..200.0_f64, second in 100.0..200.0_f64, seconds in 1.0..100.0_f64) {
        let cloth = polyester(0.02);
        let one = |celsius: f64| {
            let mut heated = Release::<1>::NONE;
            heated.heat(&cloth, Lanes::splat(seconds), Lanes::splat(kelvin(celsius)));
            heated
        };
        let both = cloth.arrives(&one(first).and(one(second)))[0];
        prop_assert!((both / cloth.arrives(&one(second).and(one(first)))[0] - 1.0).abs() < 1e-12);
        prop_assert!(both > cloth.arrives(&one(first))[0] && both > cloth.arrives(&one(second))[0]);
    }

    /// Free and bound dye make what arrived, and bound stands to free as Langmuir's isotherm has it
    /// (Langmuir 1918, J. Am. Chem. Soc. 40, 1361: bound / capacity = c / (c + K); from memory).
    #[test]
    fn free_and_bound_dye_are_in_balance(
        capacity in 0.0..2e-3_f64, arrived in 0.0..2e-3_f64, film in 20e-6..300e-6_f64,
    ) {
        let free = Binding { capacity, film }.free(arrived);
        let bound = capacity * free / (free + Binding::HALF_BOUND);
        prop_assert!(free >= 0.0);
        prop_assert!((free * film + bound - arrived).abs() <= 1e-12 + 1e-9 * arrived, "{free} {bound} {arrived}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Longer and hotter both bring more dye, in the dryer too.
    #[test]
    fn longer_and_hotter_bring_more_dye(
        set in 120.0..200.0_f64, dwell in 15.0..80.0_f64, hotter in 2.0..20.0_f64, longer in 1.05..1.5_f64,
    ) {
        let cloth = polyester(0.02);
        let of = |history: &History<1>| cloth.arrives(&release(history, &cloth))[0];
        let here = of(&journey(set, dwell));
        for more in [journey(set + hotter, dwell), journey(set, dwell * longer)] {
            let more = of(&more);
            prop_assert!(more > here, "{more:?} not over {here:?}");
        }
    }
}
