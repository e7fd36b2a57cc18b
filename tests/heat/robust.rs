//! Whatever is laid on the belt gets a history of finite temperatures between the wet bulb and what heats.

use proptest::prelude::*;
use whitehold::dryer::{
    Belt, Board, Case, Cooling, DriftCase, DriftRange, Dryer, Emitter, Film, FlashUnit, HeatTransfer,
    HistoryError, NearInfrared, Stack, TOLERANCE, Zone, flash, history,
};
use whitehold::library::{Library, starter};
use whitehold::numerics::Lanes;
use whitehold::quantity::units::kelvin;
use whitehold::quantity::{ATMOSPHERE, Share};
use whitehold::textile::moisture::saturation_pressure;
use whitehold::textile::{Construction, Fabric, Fibre};

/// Wet cloth in bone-dry air of 20 °C falls to its wet bulb, 5.8 °C (from memory); nothing here can be colder, K.
const COLDEST: f64 = 278.0;

fn cloth(library: &Library, first: usize, second: usize, share: f64, made: usize, weight: f64) -> Fabric {
    let mut composition = std::collections::BTreeMap::new();
    *composition.entry(Fibre::ALL[first]).or_insert(0.0) += share;
    *composition.entry(Fibre::ALL[second]).or_insert(0.0) += 1.0 - share;
    library.fabric(&composition, Construction::ALL[made], weight).unwrap()
}

prop_compose! {
    /// A cloth of any two fibres, any construction, any weight that may be printed.
    fn any_cloth()(
        first in 0..Fibre::ALL.len(), second in 0..Fibre::ALL.len(), share in 0.0..=1.0_f64,
        made in 0..Construction::ALL.len(), weight in 20.0..600.0_f64,
    ) -> Fabric {
        thread_local!(static LIBRARY: Library = starter().unwrap());
        LIBRARY.with(|library| cloth(library, first, second, share, made, weight))
    }
}

prop_compose! {
    /// From a smear to two millimetres; bone dry to dripping; on a garment, flat or on a board.
    fn any_stack()(
        front in any_cloth(), back in prop::option::of(any_cloth()), boarded in prop::bool::weighted(0.2),
        // Even on the logarithm: thin films are the stiff ones.
        film in (2e-6_f64.ln()..2e-3_f64.ln()).prop_map(f64::exp), density in 1000.0..1600.0_f64,
        blocker in prop::option::of((2e-6_f64.ln()..5e-4_f64.ln()).prop_map(f64::exp)),
        humidity in 0.0..=1.0_f64, added_water in prop_oneof![Just(0.0), 0.0..=1.0_f64],
        shares in [0.0..=1.0_f64, 0.0..=1.0_f64, 0.0..=1.0_f64],
    ) -> Stack {
        Stack {
            film: Film { thickness: film, density },
            blocker: blocker.map(|thickness| Film { thickness, density }),
            front,
            back: back.filter(|_| !boarded),
            board: boarded.then_some(Board::USUAL),
            gap_conductance: Stack::GAP_CONDUCTANCE,
            humidity: Share(humidity),
            added_water,
            entry_temperature: Stack::ROOM,
            near_infrared: NearInfrared { film: shares[0], through: shares[1] * (1.0 - shares[0]), cloth: shares[2] },
        }
    }
}

fn any_emitter() -> impl Strategy<Value = Emitter> {
    prop_oneof![Just(Emitter::None), Just(Emitter::MidInfrared), Just(Emitter::NearInfrared)]
}

prop_compose! {
    fn any_zone()(
        length in 0.3..3.0_f64, air_offset in -30.0..30.0_f64, h_top in 3.0..150.0_f64, h_bottom in 3.0..80.0_f64,
        panel_offset in prop::option::of(0.0..400.0_f64), exchange in 0.0..0.6_f64, emitter in any_emitter(),
    ) -> Zone {
        let [h_top, h_bottom] = [h_top, h_bottom].map(HeatTransfer::measured);
        Zone { length, air_offset, h_top, h_bottom, panel_offset, exchange, emitter }
    }
}

prop_compose! {
    fn any_dryer()(
        zones in prop::collection::vec(any_zone(), 1..4), heat_capacity in 100.0..3000.0_f64,
        contact in 5.0..200.0_f64, enters in 20.0..150.0_f64, humidity_ratio in 0.0..0.1_f64,
        cooling in prop_oneof![Just(Cooling::Open), Just(Cooling::Fan), Just(Cooling::Stacked)],
    ) -> Dryer {
        Dryer {
            id: "any".into(),
            name: "any".into(),
            zones,
            belt: Belt { heat_capacity, contact, entry_temperature: kelvin(enters), slowest: 0.001, fastest: 1.0 },
            set_low: kelvin(60.0),
            set_high: kelvin(260.0),
            step: 1.0,
            humidity_ratio,
            cooling,
            drift: DriftRange { air: 0.0, panel: 0.0, h: 0.0, exchange: 0.0, film: 0.0, stop: 0.0 },
            measured: false,
        }
    }
}

prop_compose! {
    fn any_world()(
        air in -10.0..10.0_f64, panel in -20.0..20.0_f64, h in 0.6..1.4_f64, exchange in 0.7..1.3_f64,
        film in 0.7..1.3_f64, water in 0.5..1.5_f64, stop in prop_oneof![Just(0.0), 0.0..30.0_f64],
    ) -> DriftCase {
        DriftCase { air, panel, h, exchange, film, water, stop }
    }
}

/// Air that holds more water than the cloth wets it, and warms it past the air by the heat of sorption: wool and cotton
/// bone dry could take up enough for 100 K. True where the cloth is damp enough, even at half its water, not to.
fn only_dries(stack: &Stack, humidity_ratio: f64) -> bool {
    let saturated = saturation_pressure(Lanes::<1>::splat(Stack::ROOM))[0];
    0.4 * stack.humidity.0 * saturated >= humidity_ratio / (humidity_ratio + 0.622) * ATMOSPHERE
}

/// Cases that march side by side: 200 times sixteen are some 3,000 cases, half of them soaked. 10,000 soaked ones ended on
/// 2026-12-01 without running out of time steps, and take minutes.
const ABREAST: usize = 16;

prop_compose! {
    fn any_setting()(set in 60.0..260.0_f64, dwell in (2.0_f64.ln()..600.0_f64.ln()).prop_map(f64::exp), drift in any_world())
        -> (f64, f64, DriftCase)
    {
        (kelvin(set), dwell, drift)
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, max_shrink_iters: 20, ..ProptestConfig::default() })]

    #[test]
    fn histories_stay_between_the_room_and_the_source(
        stack in any_stack(), dryer in any_dryer(), settings in prop::collection::vec(any_setting(), ABREAST),
        passes in 1..3_u32,
    ) {
        let cases: [Case; ABREAST] = std::array::from_fn(|lane| {
            let (set, dwell, drift) = settings[lane];
            Case { set, belt: dryer.heated_length() / dwell, drift }
        });
        let hottest = |case: &Case| {
            let air = dryer.hottest_air(case.set) + case.drift.air;
            let panel = dryer.hottest_panel(case.set).map_or(air, |panel| panel + case.drift.panel);
            air.max(panel).max(dryer.belt.entry_temperature).max(Stack::ROOM)
        };
        let sorption = if only_dries(&stack, dryer.humidity_ratio) { 1.0 } else { 100.0 };
        let history = history(&stack, &dryer, &cases, passes, TOLERANCE)?;
        for (lane, case) in cases.iter().enumerate() {
            let hottest = hottest(case);
            let mut last = 0.0;
            for sample in &history.samples {
                for [temperature, rate] in [sample.film_top, sample.film_bottom, sample.cloth_face, sample.cloth] {
                    let temperature = temperature[lane];
                    prop_assert!(rate[lane].is_finite() && temperature > COLDEST, "{temperature} K");
                    prop_assert!(temperature < hottest + sorption, "{temperature} K, hottest {hottest} K");
                }
                prop_assert!(sample.water[lane].is_finite() && sample.water[lane] >= 0.0);
                prop_assert!(sample.time[lane] >= last);
                last = sample.time[lane];
            }
        }
    }

    /// Whatever is typed: an error that names a field, or a history of finite numbers; never a hang nor a panic.
    #[test]
    fn anything_typed_has_an_answer(
        mut stack in any_stack(), mut dryer in any_dryer(), mut case in any_setting().prop_map(|(set, dwell, drift)| Case { set, belt: 1.8 / dwell, drift }),
        which in 0..20_usize, wild in prop_oneof![
            Just(0.0), Just(-1.0), Just(f64::NAN), Just(f64::INFINITY), Just(-f64::INFINITY), Just(1e-300), Just(1e300),
            -1e3..1e3_f64, -1.0..1.0_f64,
        ],
    ) {
        match which {
            0 => stack.film.thickness = wild,
            1 => stack.film.density = wild,
            2 => stack.front.areal_mass = wild,
            3 => stack.front.thickness = wild,
            4 => stack.front.conductivity = wild,
            5 => stack.front.regain_65 = wild,
            6 => stack.front.heat_capacity = wild,
            7 => stack.gap_conductance = wild,
            8 => stack.humidity = Share(wild),
            9 => stack.added_water = wild,
            10 => stack.entry_temperature = wild,
            11 => dryer.zones[0].length = wild,
            12 => dryer.zones[0].h_top = HeatTransfer::measured(wild),
            13 => dryer.zones[0].exchange = wild,
            14 => dryer.belt.heat_capacity = wild,
            15 => dryer.belt.contact = wild,
            16 => dryer.humidity_ratio = wild,
            17 => case.belt = wild,
            18 => case.set = wild,
            _ => case.drift.stop = wild,
        }
        match history(&stack, &dryer, &[case], 1, TOLERANCE) {
            Ok(history) => {
                for sample in &history.samples {
                    prop_assert!(sample.film_top[0][0].is_finite() && sample.cloth[0][0].is_finite());
                }
            }
            Err(HistoryError::Outside(error)) => prop_assert!(!error.field.is_empty()),
            Err(error) => prop_assert!(false, "{which} {wild}: {error}"),
        }
    }

    #[test]
    fn flashes_stay_between_the_room_and_the_panel(
        stack in any_stack(), panel in 100.0..700.0_f64, exchange in 0.05..0.9_f64, air in 10.0..80.0_f64,
        h in 2.0..40.0_f64, pallet in 10.0..90.0_f64, seconds in 0.5..60.0_f64,
    ) {
        let unit = FlashUnit {
            panel: kelvin(panel),
            exchange,
            emitter: Emitter::MidInfrared,
            air: kelvin(air),
            h,
            pallet: kelvin(pallet),
            pallet_heat_capacity: 2000.0,
        };
        let history = flash(&stack, &unit, Lanes([seconds]), TOLERANCE)?;
        for sample in &history.samples {
            for [temperature, _] in [sample.film_top, sample.film_bottom, sample.cloth_face, sample.cloth] {
                let temperature = temperature[0];
                prop_assert!(temperature > COLDEST && temperature < kelvin(panel) + 1.0, "{temperature} K");
            }
        }
    }
}
