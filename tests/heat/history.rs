//! The history of a stack is what another solver finds for the same equations on another grid.
//!
//! Reference: `tests/peer/rows.py`, SciPy 1.17.1 `LSODA` on cell-centred finite volumes (12 cells in the film, 32 in each
//! cloth, relative tolerance 1e-6), with its own saturation pressure (Wagner's equation). What both sides share is the
//! equations and the constants; what the check holds is everything that solves them here: grid, march, water, gelation
//! and fusion.

use super::reference::{
    at_dwell, cloth, cotton, dryer, fleece, fused, kinetics_of_reference, polyester, printed,
};
use whitehold::cure::fuse;
use whitehold::dryer::{Dryer, HeatTransfer, History, Stack, Zone};
use whitehold::ink::CureKinetics;
use whitehold::numerics::Lanes;
use whitehold::quantity::Share;
use whitehold::quantity::units::{celsius, kelvin};
use whitehold::textile::Fibre;

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
