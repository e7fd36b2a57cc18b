//! Between its cells the cure window says what a march of that very setting says.
//!
//! Nothing outside the house can be asked here: the window is a short cut to the marches that `tests/heat/history.rs` holds
//! to another solver.

use whitehold::cure::{fuse, scorch};
use whitehold::dryer::{Case, DriftCase, Film, Stack, TOLERANCE, history};
use whitehold::library::{cure_kinetics, job, starter};
use whitehold::migration::release;
use whitehold::numerics::rosenbrock::Effort;
use whitehold::plan::{Detail, DriftRun, Family, Question, Window};
use whitehold::plan::{Garment, Order, Shop};
use whitehold::quantity::Share;

/// Numbers between 0 and 1 that look random and are the same every day (Weyl's sequence on the golden ratio).
fn scattered(seed: f64, count: usize) -> impl Iterator<Item = f64> {
    (1..=count).map(move |i| (seed + i as f64 * 0.618_033_988_749_895).fract())
}

/// How far the fine window may be off between its cells, over every stack and run below.
const ALLOWED: [(&str, f64); 7] = [
    ("film peak, K", 0.5),
    ("film bottom peak, K", 0.5),
    ("cloth peak, K", 0.5),
    ("fused share", 0.01),
    ("fused share from 0.85 to 0.97", 0.01),
    ("scorch index, ln", 0.03),
    ("dye, ln", 0.03),
];
/// Films that a shop lays, from a fine mesh to a coarse one twice over a blocker, kg/m².
const FILMS: [f64; 2] = [0.03, 0.30];
/// The same for the coarse one, on which set points are looked for; each that is found is then judged by marches of its
/// own. A film that is half fused may be farther off: it is refused in any case.
const ALLOWED_COARSE: [f64; 7] = [2.0, 2.0, 3.0, 0.12, 0.06, 0.10, 0.10];

/// Marches that a window of one run of the print is worth: its steps over those of one march in the middle of it. Half of
/// the window's stacks are bare cloth, and there are three runs.
fn solves(question: &Question<'_>, window: &Window) -> f64 {
    let middle = [window.set[window.set.len() / 2], window.belt[window.belt.len() / 2]];
    let case = Case { set: middle[0], belt: middle[1], drift: DriftCase::NOMINAL };
    let single = history(question.stack, question.dryer, &[case], 1, TOLERANCE).unwrap().effort;
    let steps = |effort: Effort| (effort.accepted + effort.rejected) as f64;
    steps(window.effort) / 6.0 / steps(single)
}

/// Seven stacks in three dryers, each at 300 settings in turn through the three runs.
#[test]
fn settings_between_the_cells() {
    let library = starter().unwrap();
    let rows = [
        ("100% cotton jersey 150 gsm red", 100e-6, 0.0, "long-kiln"),
        ("100% cotton jersey 150 gsm red", 100e-6, 20.0, "long-kiln"),
        ("100% polyester jersey 140 gsm red", 80e-6, 0.0, "long-kiln"),
        ("80% cotton 20% polyester fleece 320 gsm red", 150e-6, 0.0, "long-kiln"),
        ("80% cotton 20% polyester fleece 320 gsm red", 150e-6, 0.0, "gas-galley"),
        ("50% cotton 50% polyester jersey 180 gsm red", 60e-6, 0.0, "short-stove"),
        ("100% nylon woven 70 gsm red", 40e-6, 0.0, "short-stove"),
    ];
    for (label, film, added_water, dryer) in rows {
        for (detail, allowed) in
            [(Detail::Fine, ALLOWED.map(|(_, most)| most)), (Detail::Coarse, ALLOWED_COARSE)]
        {
            let order = Order {
                garments: vec![Garment { label: label.into(), ..Garment::default() }],
                shop: Shop { dryer: dryer.into(), ..Shop::default() },
                ..Order::default()
            };
            let job = job(&order, &library).unwrap();
            let cloth = &job.cloths[0];
            let kinetics =
                ["ordinary", "low-cure"].map(|id| cure_kinetics(library.kinetics_record(id).unwrap()));
            let film = Film { thickness: film, density: 1300.0 };
            let stack =
                Stack { added_water: added_water / 100.0, ..Stack::garment(film, &cloth.fabric, Share(0.6)) };
            let question = Question {
                stack: &stack,
                dryer: &job.dryer,
                passes: 1,
                kinetics,
                dyed: cloth.dyed.as_ref(),
                fixed: None,
                detail,
            };
            let window = match detail {
                Detail::Fine => Window::compute(&question).unwrap(),
                // As an answer asks for it: between the films that were marched.
                Detail::Coarse => Family::compute(&question, FILMS)
                    .unwrap()
                    .window(stack.film.thickness * stack.film.density),
            };
            let (first, last) = (window.belt[0], window.belt[window.belt.len() - 1]);
            let drift = &job.dryer.drift;
            let runs = [
                (DriftRun::Nominal, DriftCase::NOMINAL),
                (DriftRun::Cold, DriftCase::cold(drift)),
                (DriftRun::Hot, DriftCase::hot(drift)),
            ];
            let mut worst = [0.0_f64; 7];
            let settings = scattered(0.1, 300).zip(scattered(0.7, 300).map(|x| (x * 7.31).fract()));
            for ((row, column), (run, drift)) in settings.zip(runs.into_iter().cycle()) {
                let set = job.dryer.set_low + (job.dryer.set_high - job.dryer.set_low) * row;
                let belt = first * (last / first).powf(column);
                let found = window.at(run, set, belt);
                let march = |stack: &Stack| {
                    history(stack, &job.dryer, &[Case { set, belt, drift }], 1, TOLERANCE).unwrap()
                };
                let (single, beside) = (march(&stack), march(&stack.bare()));
                let fused = kinetics.map(|ink| fuse(&single, |sample| sample.film_bottom, &ink).fused[0]);
                let dye = cloth.dyed.as_ref().map_or(0.0, |dyed| dyed.arrives(&release(&single, dyed))[0]);
                let [under, bare] =
                    [&single, &beside].map(|history| scorch(history, |sample| sample.cloth_face)[0]);
                let scorched = under.max(bare);
                let fused_off = |counts: fn(f64) -> bool| {
                    let pairs = found.fused.iter().zip(fused).filter(|pair| counts(pair.1));
                    pairs.map(|(found, fused)| (found - fused).abs()).fold(0.0, f64::max)
                };
                let cloth_peak = single.cloth_peak()[0].max(beside.cloth_peak()[0]);
                // A first look takes the cloth beside a cold run's print to be as hot as planned.
                let safe = (detail, run) == (Detail::Coarse, DriftRun::Cold);
                let one_sided = |over: f64| if safe { (-over).max(0.0) } else { over.abs() };
                let off = [
                    (found.film_peak - single.film_peak()[0]).abs(),
                    (found.bottom_peak - single.film_bottom_peak()[0]).abs(),
                    one_sided(found.cloth_peak - cloth_peak),
                    fused_off(|_| true),
                    fused_off(|share| (0.85..0.97).contains(&share)),
                    if scorched > 0.01 { one_sided((found.scorch / scorched).ln()) } else { 0.0 },
                    if fused[1] > 0.5 && dye > 1e-8 { (found.dye / dye).ln().abs() } else { 0.0 },
                ];
                for (worst, off) in worst.iter_mut().zip(off) {
                    *worst = worst.max(off);
                }
            }
            let solves = solves(&question, &window);
            println!("{label} in {dryer}, {detail:?}: {worst:.4?}, {solves:.0} solves a run");
            // Several zones cannot share a hot march.
            let shared = job.dryer.zones.len() == 1;
            let most = if detail == Detail::Fine { 200.0 } else { 80.0 };
            assert!(!shared || solves < most, "{label} in {dryer}, {detail:?}: {solves:.0} solves a run");
            for (((what, _), allowed), worst) in ALLOWED.into_iter().zip(allowed).zip(worst) {
                assert!(worst < allowed, "{label}, {detail:?}: {what} {worst:.4} off, {allowed} allowed");
            }
        }
    }
}
