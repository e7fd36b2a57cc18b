//! The history of a stack is what another solver finds for the same equations on another grid.
//!
//! Reference: `tests/peer/rows.py`, SciPy 1.17.1 `LSODA` on cell-centred finite volumes (12 cells in the film, 32 in each
//! cloth, relative tolerance 1e-6), with its own saturation pressure (Wagner's equation). What both sides share is the equations and the constants; what the check holds is everything that
//! solves them here: grid, march, water, gelation and fusion.

use proptest::prelude::*;
use whitehold::cure::fuse;
use whitehold::dryer::{
    Belt, Case, Cooling, DriftCase, DriftRange, Dryer, Emitter, Film, HeatTransfer, History, Stack,
    TOLERANCE, Zone, history,
};
use whitehold::ink::CureKinetics;
use whitehold::library::{cure_kinetics, starter};
use whitehold::numerics::Lanes;
use whitehold::numerics::rosenbrock::Tolerance;
use whitehold::quantity::Share;
use whitehold::quantity::units::{celsius, kelvin};
use whitehold::textile::{Construction, Fabric, Fibre};

/// A cloth by its dry weight (g/m²), thickness (mm) and shares, with the values of the reference.
pub(super) fn cloth(weight: f64, thickness: f64, shares: &[(Fibre, f64)]) -> Fabric {
    let (mut volume, mut heat, mut slope, mut regain) = (0.0, 0.0, 0.0, 0.0);
    for &(fibre, share) in shares {
        // density kg/m³, specific heat J/(kg K), its slope, regain at 65 % RH
        let [density, at_25c, rise, regain_65] = match fibre {
            Fibre::Cotton => [1540.0, 1250.0, 3.0, 0.075],
            Fibre::Polyester => [1390.0, 1030.0, 4.0, 0.004],
            Fibre::Nylon => [1140.0, 1450.0, 5.0, 0.041],
            Fibre::Viscose => [1520.0, 1350.0, 3.5, 0.13],
            _ => [1150.0, 1500.0, 3.0, 0.012],
        };
        volume += share * density;
        heat += share * at_25c;
        slope += share * rise;
        regain += share * regain_65;
    }
    let fill = weight / thickness / volume;
    let (fibre, air) = (0.20, 0.031);
    let conductivity = 0.5 * (fill * fibre + (1.0 - fill) * air) + 0.5 / (fill / fibre + (1.0 - fill) / air);
    Fabric {
        composition: shares.iter().copied().collect(),
        construction: Construction::Jersey,
        areal_mass: weight / 1000.0,
        thickness: thickness / 1000.0,
        conductivity,
        heat_capacity: heat,
        heat_capacity_slope: slope,
        regain_65: regain,
        open_area: 0.0,
        nap: 0.0,
        stretch: 0.0,
    }
}

fn cotton() -> Fabric {
    cloth(150.0, 0.6, &[(Fibre::Cotton, 1.0)])
}

fn polyester() -> Fabric {
    cloth(140.0, 0.45, &[(Fibre::Polyester, 1.0)])
}

pub(super) fn fleece(weight: f64, thickness: f64) -> Fabric {
    cloth(weight, thickness, &[(Fibre::Cotton, 0.8), (Fibre::Polyester, 0.2)])
}

/// A garment of this cloth under a film of some µm in a room of 65 % RH.
pub(super) fn printed(cloth: &Fabric, film: f64) -> Stack {
    Stack::garment(Film { thickness: film * 1e-6, density: 1300.0 }, cloth, Share(0.65))
}

/// The dryer of the reference: one zone of 1.8 m whose panel is `panel` kelvin hotter than its air.
pub(super) fn dryer(panel: f64) -> Dryer {
    Dryer {
        id: "reference".into(),
        name: "reference".into(),
        zones: vec![Zone {
            length: 1.8,
            air_offset: 0.0,
            h_top: HeatTransfer::measured(30.0),
            h_bottom: HeatTransfer::measured(15.0),
            panel_offset: Some(panel),
            exchange: 0.15,
            emitter: Emitter::MidInfrared,
        }],
        belt: Belt {
            heat_capacity: 600.0,
            contact: 40.0,
            entry_temperature: kelvin(70.0),
            slowest: 0.01,
            fastest: 0.2,
        },
        set_low: kelvin(110.0),
        set_high: kelvin(220.0),
        step: 1.0,
        humidity_ratio: 0.012,
        cooling: Cooling::Open,
        drift: DriftRange { air: 0.0, panel: 0.0, h: 0.0, exchange: 0.0, film: 0.0, stop: 0.0 },
        measured: false,
    }
}

/// The kinetics of the reference, °C and s: they stay when those that ship are calibrated anew.
pub(super) fn kinetics_of_reference(id: &str) -> CureKinetics {
    let ships = cure_kinetics(starter().expect("the library").kinetics_record(id).expect("a kind of ink"));
    let half_fused = kelvin(if id == "ordinary" { 148.0 } else { 122.0 });
    CureKinetics { half_fused, width: 4.0, fusion_time: 6.0, ..ships }
}

/// The history at a set temperature (°C) and dwells (s), side by side.
fn at_dwells<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    set: f64,
    dwells: [f64; L],
    tolerance: Tolerance,
) -> History<L> {
    let cases = dwells.map(|dwell| Case {
        set: kelvin(set),
        belt: dryer.heated_length() / dwell,
        drift: DriftCase::NOMINAL,
    });
    history(stack, dryer, &cases, 1, tolerance).expect("a sound stack")
}

pub(super) fn at_dwell(stack: &Stack, dryer: &Dryer, set: f64, dwell: f64) -> History<1> {
    at_dwells(stack, dryer, set, [dwell], TOLERANCE)
}

fn fused<const L: usize>(history: &History<L>, ink: &CureKinetics) -> Lanes<L> {
    fuse(history, |sample| sample.film_bottom, ink).fused
}

/// Dwell after which 90 % is fused at the film's bottom, s: bisection on the cooled piece.
fn dwell_to_fuse(stack: &Stack, dryer: &Dryer, set: f64, ink: &CureKinetics) -> f64 {
    let (mut low, mut high) = (10.0, 120.0);
    for _ in 0..14 {
        let middle = 0.5 * (low + high);
        if fused(&at_dwell(stack, dryer, set, middle), ink)[0] < 0.90 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

fn close(what: &str, found: f64, expected: f64, share: f64) {
    assert!((found / expected - 1.0).abs() < share, "{what}: {found:.2} for {expected:.2}");
}

/// Source: the reference above. Cloth; dwell to fuse and film peak for ordinary ink in air of 175 °C under a panel of
/// 400 °C, and for low-cure ink in air of 150 °C under 340 °C. s and °C, film 100 µm.
#[test]
fn dwells_and_peaks_of_seven_cloths() {
    use Fibre::{Cotton, Elastane, Nylon, Polyester, Viscose};
    let tri_blend = [(Polyester, 0.5), (Cotton, 0.25), (Viscose, 0.25)];
    let rows = [
        ("cotton jersey", cotton(), [38.21, 172.57], [42.67, 144.41]),
        ("50/50", cloth(150.0, 0.55, &[(Cotton, 0.5), (Polyester, 0.5)]), [31.61, 173.07], [33.94, 145.15]),
        ("polyester", polyester(), [24.95, 173.34], [25.27, 145.54]),
        (
            "nylon and elastane",
            cloth(160.0, 0.5, &[(Nylon, 0.85), (Elastane, 0.15)]),
            [35.85, 171.51],
            [38.02, 143.85],
        ),
        ("tri-blend", cloth(140.0, 0.5, &tri_blend), [33.00, 173.15], [35.90, 145.21]),
        ("fleece 280", fleece(280.0, 1.6), [49.17, 166.84], [54.89, 138.53]),
        ("fleece 400", fleece(400.0, 2.4), [52.79, 163.48], [57.01, 135.98]),
    ];
    let inks = [("ordinary", 175.0, 225.0), ("low-cure", 150.0, 190.0)];
    for (name, cloth, ordinary, low_cure) in rows {
        let stack = printed(&cloth, 100.0);
        for ((ink, set, panel), [dwell, peak]) in inks.into_iter().zip([ordinary, low_cure]) {
            let dryer = dryer(panel);
            let found = dwell_to_fuse(&stack, &dryer, set, &kinetics_of_reference(ink));
            let found_peak = celsius(at_dwell(&stack, &dryer, set, dwell).film_peak()[0]);
            close(name, found, dwell, 0.01);
            assert!((found_peak - peak).abs() < 0.5, "{name} {ink}: peak {found_peak:.2} for {peak}");
        }
    }
}

/// Air alone hotter or cooler: the panel stays as the set temperature puts it.
fn shift_air(zone: &mut Zone, kelvin: f64) {
    zone.air_offset = kelvin;
}

/// Source: the reference above: one garment of cotton jersey, one thing changed. Dwell to fuse ordinary ink, s.
#[test]
fn dwells_with_one_thing_changed() {
    let jersey = || printed(&cotton(), 100.0);
    let zone = |change: fn(&mut Zone)| {
        let mut dryer = dryer(225.0);
        dryer.zones.iter_mut().for_each(change);
        dryer
    };
    let usual = || zone(|_| {});
    let rows = [
        ("bone dry", Stack { humidity: Share(0.02), ..jersey() }, usual(), 26.45),
        ("90 % RH", Stack { humidity: Share(0.90), ..jersey() }, usual(), 47.53),
        ("a fifth of water", Stack { added_water: 0.20, ..jersey() }, usual(), 65.15),
        ("film 40 µm", printed(&cotton(), 40.0), usual(), 34.24),
        ("film 70 µm", printed(&cotton(), 70.0), usual(), 36.22),
        ("film 150 µm", printed(&cotton(), 150.0), usual(), 41.49),
        ("film 250 µm", printed(&cotton(), 250.0), usual(), 47.96),
        ("h 20", jersey(), zone(|zone| zone.h_top = HeatTransfer::measured(20.0)), 42.37),
        ("h 45", jersey(), zone(|zone| zone.h_top = HeatTransfer::measured(45.0)), 33.73),
        ("exchange 0.08", jersey(), zone(|zone| zone.exchange = 0.08), 46.48),
        ("exchange 0.25", jersey(), zone(|zone| zone.exchange = 0.25), 29.94),
        ("air 185 °C", jersey(), zone(|zone| shift_air(zone, 10.0)), 34.16),
        ("air 165 °C", jersey(), zone(|zone| shift_air(zone, -10.0)), 43.26),
        ("no back", Stack { back: None, ..jersey() }, usual(), 28.79),
    ];
    for (what, stack, dryer, dwell) in rows {
        let found = dwell_to_fuse(&stack, &dryer, 175.0, &kinetics_of_reference("ordinary"));
        close(what, found, dwell, 0.01);
    }
}

/// Temperature and rate at one place, at one moment between the samples: the cubic that they stand for.
fn at_time(
    history: &History<1>,
    time: f64,
    place: fn(&whitehold::dryer::HistorySample<1>) -> [Lanes<1>; 2],
) -> f64 {
    let after = history.samples.iter().position(|sample| sample.time[0] >= time).expect("inside the history");
    let (from, to) = (&history.samples[after.max(1) - 1], &history.samples[after.max(1)]);
    let length = to.time[0] - from.time[0];
    let at = if length > 0.0 { (time - from.time[0]) / length } else { 1.0 };
    let ([start, start_rate], [end, end_rate]) = (place(from), place(to));
    let rest = 1.0 - at;
    start[0] * (1.0 + 2.0 * at) * rest * rest
        + end[0] * at * at * (3.0 - 2.0 * at)
        + length * at * rest * (start_rate[0] * rest - end_rate[0] * at)
}

/// Source: the reference on 24, 16 and 10 cells: cotton jersey, 60 s at 175 °C, then 20 s on the open belt end. Time in
/// s; film surface, film bottom and mean of the printed cloth in °C. The reference's outermost film cells lie 2 µm
/// inside the faces, which are nodes here: some 0.1 K.
#[test]
fn temperatures_at_eight_moments() {
    let rows = [
        (5.0, [85.21, 83.00, 68.23]),
        (10.0, [104.97, 102.96, 85.20]),
        (20.0, [133.37, 131.93, 117.69]),
        (30.0, [157.22, 156.23, 146.35]),
        (40.0, [175.12, 174.46, 167.81]),
        (59.99, [191.51, 191.16, 187.28]),
        (65.0, [139.18, 140.57, 150.30]),
        (80.0, [83.52, 84.25, 91.01]),
    ];
    let history = at_dwell(&printed(&cotton(), 100.0), &dryer(225.0), 175.0, 60.0);
    for (time, expected) in rows {
        let found = [
            at_time(&history, time, |sample| sample.film_top),
            at_time(&history, time, |sample| sample.film_bottom),
            at_time(&history, time, |sample| sample.cloth),
        ]
        .map(celsius);
        for (found, expected) in found.into_iter().zip(expected) {
            assert!((found - expected).abs() < 0.5, "{time} s: {found:.2} °C for {expected}");
        }
    }
}

/// A flash dries and does not fuse. Source: the reference on 24, 16 and 10 cells: 150 µm on cotton jersey, 8 s under a
/// panel of 500 °C with exchange 0.5 and air of 40 °C. After 4 and 8 s: film surface and bottom, °C, gelled at the
/// bottom. The gradient through the film is the largest of all cases here.
#[test]
fn a_flash_against_the_reference() {
    let mut unit = dryer(460.0);
    for zone in &mut unit.zones {
        (zone.h_top, zone.h_bottom) = (HeatTransfer::measured(10.0), HeatTransfer::measured(5.0));
        zone.exchange = 0.5;
    }
    unit.belt.entry_temperature = kelvin(40.0);
    let ink = kinetics_of_reference("ordinary");
    for (seconds, expected, gelled) in [(4.0, [98.37, 92.81], 0.0918), (7.99, [135.62, 130.10], 0.9940)] {
        let history = at_dwell(&printed(&cotton(), 150.0), &unit, 40.0, 8.0);
        let found = [
            at_time(&history, seconds, |sample| sample.film_top),
            at_time(&history, seconds, |sample| sample.film_bottom),
        ]
        .map(celsius);
        for (found, expected) in found.into_iter().zip(expected) {
            assert!((found - expected).abs() < 0.5, "{seconds} s: {found:.2} °C for {expected}");
        }
        let trace = whitehold::cure::trace(&history, |sample| sample.film_bottom, &ink);
        let until = history.samples.iter().position(|sample| sample.time[0] >= seconds).expect("inside");
        let [before, after] = [trace[until - 1].gelled[0], trace[until].gelled[0]];
        assert!(before - 0.01 < gelled && gelled < after + 0.01, "{seconds} s: {before} to {after}");
        let end = fuse(&history, |sample| sample.film_bottom, &ink);
        assert!(end.gelled[0] > 0.99 && end.fused[0] < 0.01, "{end:?}");
    }
}

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
