//! What lies under the print changes its heat: the back of a garment, nothing, or a board.

use super::common::library;
use whitehold::dryer::{Board, Case, DriftCase, Dryer, Film, Stack, TOLERANCE, history};
use whitehold::ink::CureKinetics;
use whitehold::library::{DryerRun, cure_kinetics};
use whitehold::plan::{Garment, UnderPrint};
use whitehold::quantity::Share;
use whitehold::quantity::units::{celsius, kelvin};
use whitehold::textile::{Construction, Fibre};

/// Peak of the film's underside, °C, and its fused share.
fn peak(stack: &Stack, dryer: &Dryer, set_c: f64, dwell: f64) -> [f64; 2] {
    let belt = dryer.heated_length() / dwell;
    let case = Case { set: kelvin(set_c), belt, drift: DriftCase::NOMINAL };
    let history = history(stack, dryer, &[case], 1, TOLERANCE).expect("it integrates");
    // The ink that the rows below were worked with.
    let class = cure_kinetics(library().kinetics_record("ordinary").expect("an ink"));
    let ink = CureKinetics { half_fused: kelvin(148.0), fusion_time: 6.0, ..class };
    let fused = whitehold::cure::fuse(&history, |sample| sample.film_bottom, &ink).fused[0];
    [celsius(history.film_bottom_peak()[0]), fused]
}

fn dryer(id: &str) -> Dryer {
    Dryer::from_record(library().dryer(id).expect("a dryer")).expect("a sound record")
}

/// Numbers between 0 and 1, the same at every run (a linear congruential generator of Numerical Recipes).
fn draw(state: &mut u32) -> f64 {
    *state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
    f64::from(*state >> 8) / f64::from(1_u32 << 24)
}

/// Random cloths, films and settings of three dryers, with and without a back. Source: an independent solver (cell-centred
/// finite volumes, LSODA at rtol 1e-9) on forty other random stacks: 5.7 K hotter in the median, 34 K at most, 9 K cooler at
/// least, where a belt as hot as the air warms a damp piece through its back.
#[test]
fn without_a_back_the_film_gets_hotter() {
    let fibres = [Fibre::Cotton, Fibre::Polyester, Fibre::Nylon];
    let makes = [Construction::Jersey, Construction::Interlock, Construction::Fleece, Construction::Mesh];
    let dryers = [("long-kiln", 140.0, 220.0), ("gas-galley", 130.0, 210.0), ("short-stove", 380.0, 490.0)]
        .map(|(id, low, high)| (dryer(id), low, high));
    let mut state = 7;
    let mut hotter: Vec<f64> = (0..120)
        .map(|i| {
            let one = |all: usize, state: &mut u32| (draw(state) * all as f64) as usize % all;
            let fibre = fibres[one(fibres.len(), &mut state)];
            let make = makes[one(makes.len(), &mut state)];
            let weight = 80.0 + 320.0 * draw(&mut state);
            let cloth = library().fabric(&[(fibre, 1.0)].into(), make, weight).expect("a fabric");
            let film = Film { thickness: (40.0 + 110.0 * draw(&mut state)) * 1e-6, density: Film::DENSITY };
            let garment = Stack::garment(film, &cloth, Share(0.2 + 0.7 * draw(&mut state)));
            let (dryer, low, high) = &dryers[i % 3];
            let set = low + (high - low) * draw(&mut state);
            let dwell = 20.0 + 90.0 * draw(&mut state);
            let [with, without] = [UnderPrint::BackPanel, UnderPrint::Nothing]
                .map(|under| peak(&under.under(garment.clone()), dryer, set, dwell)[0]);
            without - with
        })
        .collect();
    hotter.sort_by(f64::total_cmp);
    let (least, median, most) = (hotter[0], hotter[60], hotter[119]);
    assert!((3.0..7.0).contains(&median), "median {median:.1} K");
    assert!((20.0..45.0).contains(&most), "most {most:.1} K");
    assert!(least > -15.0, "least {least:.1} K");
}

/// Source: SciPy 1.17.1 LSODA (`tests/peer/history.py`) on 32 cells a layer, the same three stacks: cotton jersey of 180
/// g/m², 70 µm of film, room of 55 %, 50 s in the Long Kiln at 165 °C; peak of the film's underside in °C, fused share.
#[test]
fn three_things_under_a_print_against_another_solver() {
    let cloth =
        library().fabric(&[(Fibre::Cotton, 1.0)].into(), Construction::Jersey, 180.0).expect("a jersey");
    let film = Film { thickness: 70e-6, density: Film::DENSITY };
    let garment = Stack::garment(film, &cloth, Share(0.55));
    let rows = [
        (UnderPrint::BackPanel, [175.11, 0.9901]),
        (UnderPrint::Nothing, [182.55, 0.9998]),
        (UnderPrint::Board, [154.72, 0.4467]),
    ];
    for (under, expected) in rows {
        let found = peak(&under.under(garment.clone()), &dryer("long-kiln"), 165.0, 50.0);
        assert!((found[0] - expected[0]).abs() < 0.1, "{under:?}: {found:?} for {expected:?}");
        assert!((found[1] - expected[1]).abs() < 0.005, "{under:?}: {found:?} for {expected:?}");
    }
}

/// A board holds water back, and what it takes to dry the cloth is not missing: on a board a damp print leaves the heat
/// wetter than over a back, and less fused than a dry one. Common practice, no source.
#[test]
fn a_board_holds_water_back() {
    let cloth =
        library().fabric(&[(Fibre::Cotton, 1.0)].into(), Construction::Jersey, 180.0).expect("a jersey");
    let film = Film { thickness: 70e-6, density: Film::DENSITY };
    let damp = Stack { added_water: 0.3, ..Stack::garment(film, &cloth, Share(0.65)) };
    let long_kiln = dryer("long-kiln");
    let left = |stack: &Stack| {
        let belt = long_kiln.heated_length() / 60.0;
        let case = Case { set: kelvin(165.0), belt, drift: DriftCase::NOMINAL };
        let history = history(stack, &long_kiln, &[case], 1, TOLERANCE).expect("it integrates");
        history.samples.iter().rev().find(|sample| sample.time[0] <= 40.0).expect("samples").water[0]
    };
    let [back, board] =
        [UnderPrint::BackPanel, UnderPrint::Board].map(|under| left(&under.under(damp.clone())));
    assert!(board > back + 0.02 && board < 0.36, "after 40 s: {board:.3} on a board, {back:.3} over a back");
    let dry = Stack { added_water: 0.0, ..damp.clone() };
    let [damp, dry] =
        [damp, dry].map(|stack| peak(&UnderPrint::Board.under(stack), &long_kiln, 185.0, 60.0)[0]);
    assert!(damp < dry - 5.0, "{damp:.1} °C damp, {dry:.1} °C dry");
}

/// The call of the JS package takes the field, too.
#[test]
fn a_temperature_history_takes_the_field() {
    let hottest = |under_print: UnderPrint| {
        let garment =
            Garment { label: "100% cotton jersey 180 gsm".into(), under_print, ..Garment::default() };
        let run = DryerRun {
            dryer: "long-kiln".into(),
            garment,
            film_um: 70.0,
            set_c: 165.0,
            belt_m_per_min: 2.16,
            ..DryerRun::default()
        };
        let curve = run.curve(library()).expect("a sound run");
        curve.film_bottom_c.iter().copied().fold(0.0, f64::max)
    };
    let [back, nothing, board] = UnderPrint::ALL.map(hottest);
    assert!(nothing > back + 3.0 && board < back - 3.0, "{back} {nothing} {board}");
}

/// The figures of the board lie inside the ranges that their source gives; that of vapour is assumed.
#[test]
fn a_board_is_cardboard() {
    let rows = [
        ("density", Board::DENSITY, 480.0..860.0),
        ("conductivity", Board::CONDUCTIVITY, 0.06..0.17),
        ("heat capacity", Board::HEAT_CAPACITY, 1340.0..1400.0),
        ("resistance to vapour", Board::VAPOUR_RESISTANCE, 5.0..50.0),
        ("thickness", Board::USUAL.thickness, 1e-3..3e-3),
    ];
    for (name, value, range) in rows {
        assert!(range.contains(&value), "{name}: {value} outside {range:?}");
    }
}
