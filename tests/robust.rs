//! Whatever is laid on the belt gets a history of finite temperatures between the wet bulb and what heats.
#![allow(clippy::unwrap_used)] // a helper that cannot build its example should fail loudly

use proptest::prelude::*;
use whitehold::dryer::{
    Belt, Case, Cooling, Drift, Dryer, Emitter, Film, Flash, NearInfrared, Stack, TOLERANCE, Transfer, World,
    Zone, flash, history,
};
use whitehold::library::{Library, starter};
use whitehold::numerics::Lanes;
use whitehold::quantity::ATMOSPHERE;
use whitehold::quantity::units::kelvin;
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
    /// From a smear to two millimetres; bone dry to dripping; on a garment or flat.
    fn any_stack()(
        front in any_cloth(), back in prop::option::of(any_cloth()),
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
            back,
            gap: Stack::GAP,
            humidity,
            added_water,
            enters: Stack::ROOM,
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
        let [h_top, h_bottom] = [h_top, h_bottom].map(Transfer::measured);
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
            belt: Belt { heat_capacity, contact, enters: kelvin(enters), slowest: 0.001, fastest: 1.0 },
            set_low: kelvin(60.0),
            set_high: kelvin(260.0),
            step: 1.0,
            humidity_ratio,
            cooling,
            drift: Drift { air: 0.0, panel: 0.0, h: 0.0, exchange: 0.0, film: 0.0, stop: 0.0 },
            measured: false,
        }
    }
}

prop_compose! {
    fn any_world()(
        air in -10.0..10.0_f64, panel in -20.0..20.0_f64, h in 0.6..1.4_f64, exchange in 0.7..1.3_f64,
        film in 0.7..1.3_f64, water in 0.5..1.5_f64, stop in prop_oneof![Just(0.0), 0.0..30.0_f64],
    ) -> World {
        World { air, panel, h, exchange, film, water, stop }
    }
}

/// Air that holds more water than the cloth wets it, and warms it past the air by the heat of sorption: wool and cotton
/// bone dry could take up enough for 100 K. True where the cloth is damp enough, even at half its water, not to.
fn only_dries(stack: &Stack, humidity_ratio: f64) -> bool {
    let saturated = saturation_pressure(Lanes::<1>::splat(Stack::ROOM))[0];
    0.4 * stack.humidity * saturated >= humidity_ratio / (humidity_ratio + 0.622) * ATMOSPHERE
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn histories_stay_between_the_room_and_the_source(
        stack in any_stack(), dryer in any_dryer(), set in 60.0..260.0_f64, dwell in 2.0..300.0_f64,
        world in any_world(), passes in 1..3_u32,
    ) {
        let case = Case { set: kelvin(set), belt: dryer.heated_length() / dwell, world };
        let air = dryer.hottest_air(case.set) + world.air;
        let panel = dryer.hottest_panel(case.set).map_or(air, |panel| panel + world.panel);
        let hottest = air.max(panel).max(dryer.belt.enters).max(Stack::ROOM);
        let sorption = if only_dries(&stack, dryer.humidity_ratio) { 1.0 } else { 100.0 };
        // An error would name itself; none is met among these.
        let history = history(&stack, &dryer, &[case], passes, TOLERANCE)?;
        // Of 20,000 such journeys the longest took 358 steps: nothing rattles.
        let steps = history.effort.accepted + history.effort.rejected;
        prop_assert!(steps < 700, "{steps} steps");
        let mut last = 0.0;
        for sample in &history.samples {
            for [temperature, rate] in [sample.film_top, sample.film_bottom, sample.cloth_face, sample.cloth] {
                let temperature = temperature[0];
                prop_assert!(rate.is_finite() && temperature > COLDEST, "{temperature} K");
                prop_assert!(temperature < hottest + sorption, "{temperature} K, hottest {hottest} K");
            }
            prop_assert!(sample.water[0].is_finite() && sample.water[0] >= 0.0);
            prop_assert!(sample.time[0] >= last);
            last = sample.time[0];
        }
    }

    #[test]
    fn flashes_stay_between_the_room_and_the_panel(
        stack in any_stack(), panel in 100.0..700.0_f64, exchange in 0.05..0.9_f64, air in 10.0..80.0_f64,
        h in 2.0..40.0_f64, pallet in 10.0..90.0_f64, seconds in 0.5..60.0_f64,
    ) {
        let unit = Flash {
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
