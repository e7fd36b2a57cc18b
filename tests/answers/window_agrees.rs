//! Between its cells the cure window says what a march of that very setting says.
//!
//! Nothing outside the house can be asked here: the window is a short cut to the marches that `tests/heat/history.rs` holds
//! to another solver.

use super::common::{an_order, library};
use whitehold::cure::{fuse, scorch};
use whitehold::dryer::{Case, DriftCase, Film, History, Stack, TOLERANCE, history};
use whitehold::ink::CureKinetics;
use whitehold::library::{cure_kinetics, job};
use whitehold::migration::release;
use whitehold::numerics::rosenbrock::Effort;
use whitehold::plan::{Detail, DriftRun, Family, Job, Question, Window};
use whitehold::quantity::Share;

/// Numbers between 0 and 1 that look random and are the same every day (Weyl's sequence on the golden ratio).
fn scattered(seed: f64, count: usize) -> impl Iterator<Item = f64> {
    (1..=count).map(move |i| (seed + i as f64 * 0.618_033_988_749_895).fract())
}

/// What is compared, and how far the fine window may be off between its cells, over every stack and run below. Chosen,
/// no source: half a kelvin is less than a dial's step. Bare cloth that was soaked dries from a front, and how hot it gets
/// once the front is through turns on seconds: 4 K off there, a tenth of that on cloth that was dry.
const FINE: [(&str, f64); 7] = [
    ("film peak, K", 0.5),
    ("film bottom peak, K", 0.5),
    ("cloth peak, K", 4.5),
    ("fused share", 0.015),
    ("fused share from 0.85 to 0.97", 0.015),
    ("scorch index, ln", 0.10),
    ("dye, ln", 0.13),
];
/// The same for the coarse window, on which set points are only looked for: each that is found is then judged by marches of
/// its own, so an error here can cost a better setting but never make a wrong verdict. Its rows lie 13 K apart instead of
/// 7.8, its columns twice as far, and it is integrated ten times as loosely. A film that is half fused may be farther off,
/// because it is refused in any case. Chosen, no source.
const COARSE: [f64; 7] = [2.0, 2.0, 4.5, 0.12, 0.06, 0.15, 0.16];
/// Films that a shop lays, from a fine mesh to a coarse one twice over a blocker, kg/m².
const FILMS: [f64; 2] = [0.03, 0.30];

/// Label, film in m, added water in %, dryer.
const STACKS: [(&str, f64, f64, &str); 7] = [
    ("100% cotton jersey 150 gsm red", 100e-6, 0.0, "long-kiln"),
    ("100% cotton jersey 150 gsm red", 100e-6, 20.0, "long-kiln"),
    ("100% polyester jersey 140 gsm red", 80e-6, 0.0, "long-kiln"),
    ("80% cotton 20% polyester fleece 320 gsm red", 150e-6, 0.0, "long-kiln"),
    ("80% cotton 20% polyester fleece 320 gsm red", 150e-6, 0.0, "gas-galley"),
    ("50% cotton 50% polyester jersey 180 gsm red", 60e-6, 0.0, "short-stove"),
    ("100% nylon woven 70 gsm red", 40e-6, 0.0, "short-stove"),
];

/// A print in a dryer, of which a window is asked.
struct Printed {
    name: String,
    job: Job,
    stack: Stack,
    kinetics: [CureKinetics; 2],
}

impl Printed {
    fn all() -> impl Iterator<Item = Self> {
        STACKS.into_iter().map(|(label, film, added_water, dryer)| {
            let order = an_order().label(label).dryer(dryer).build();
            let job = job(&order, library()).expect("a sound order");
            let film = Film { thickness: film, density: 1300.0 };
            let stack = Stack::garment(film, &job.cloths[0].fabric, Share(0.6));
            Self {
                name: format!("{label} in {dryer}, {added_water} % of water"),
                stack: Stack { added_water: added_water / 100.0, ..stack },
                kinetics: ["ordinary", "low-cure"]
                    .map(|id| cure_kinetics(library().kinetics_record(id).expect("kinetics"))),
                job,
            }
        })
    }

    fn window(&self, detail: Detail) -> Window {
        let question = Question {
            stack: &self.stack,
            dryer: &self.job.dryer,
            passes: 1,
            kinetics: self.kinetics,
            dyed: self.job.cloths[0].dyed.as_ref(),
            fixed: None,
            detail,
        };
        let film = self.stack.film;
        match detail {
            Detail::Fine => Window::compute(&question).expect("it integrates"),
            // As an answer asks for it: between the films that were marched.
            Detail::Coarse => Family::compute(&question, FILMS)
                .expect("it integrates")
                .window(film.thickness * film.density),
        }
    }

    fn march(&self, stack: &Stack, set: f64, belt: f64, drift: DriftCase) -> History<1> {
        history(stack, &self.job.dryer, &[Case { set, belt, drift }], 1, TOLERANCE).expect("it integrates")
    }

    /// 300 settings between the window's cells, in turn through the three runs: set K, belt m/s, run, drift.
    fn settings(&self, window: &Window) -> Vec<(f64, f64, DriftRun, DriftCase)> {
        let dryer = &self.job.dryer;
        let runs = [
            (DriftRun::Nominal, DriftCase::NOMINAL),
            (DriftRun::Cold, DriftCase::cold(&dryer.drift)),
            (DriftRun::Hot, DriftCase::hot(&dryer.drift)),
        ];
        let (first, last) = (window.belt[0], window.belt[window.belt.len() - 1]);
        let places = scattered(0.1, 300).zip(scattered(0.7, 300).map(|x| (x * 7.31).fract()));
        let at = |((row, column), (run, drift))| {
            let set = dryer.set_low + (dryer.set_high - dryer.set_low) * row;
            (set, first * (last / first).powf(column), run, drift)
        };
        places.zip(runs.into_iter().cycle()).map(at).collect()
    }

    /// How far a window is off at one setting: the columns of [`FINE`].
    fn off(
        &self,
        window: &Window,
        (set, belt, run, drift): (f64, f64, DriftRun, DriftCase),
        one_sided: bool,
    ) -> [f64; 7] {
        let found = window.at(run, set, belt);
        let single = self.march(&self.stack, set, belt, drift);
        let beside = self.march(&self.stack.bare(), set, belt, drift);
        let fused = self.kinetics.map(|ink| fuse(&single, |sample| sample.film_bottom, &ink).fused[0]);
        let dyed = self.job.cloths[0].dyed.as_ref();
        let dye = dyed.map_or(0.0, |dyed| dyed.arrives(&release(&single, dyed))[0]);
        let scorched = [&single, &beside]
            .map(|history| scorch(history, |sample| sample.cloth_face)[0])
            .into_iter()
            .fold(0.0, f64::max);
        let cloth_peak = single.cloth_peak()[0].max(beside.cloth_peak()[0]);
        let fused_off = |counts: fn(f64) -> bool| {
            let pairs = found.fused.iter().zip(fused).filter(|pair| counts(pair.1));
            pairs.map(|(found, fused)| (found - fused).abs()).fold(0.0, f64::max)
        };
        let over = |over: f64| if one_sided { (-over).max(0.0) } else { over.abs() };
        [
            (found.film_peak - single.film_peak()[0]).abs(),
            (found.bottom_peak - single.film_bottom_peak()[0]).abs(),
            over(found.cloth_peak - cloth_peak),
            fused_off(|_| true),
            fused_off(|share| (0.85..0.97).contains(&share)),
            if scorched > 0.01 { over((found.scorch / scorched).ln()) } else { 0.0 },
            if fused[1] > 0.5 && dye > 1e-8 { (found.dye / dye).ln().abs() } else { 0.0 },
        ]
    }

    /// Whether the largest difference of each column is within what is allowed.
    fn holds(&self, detail: Detail, allowed: [f64; 7]) {
        let window = self.window(detail);
        let mut worst = [0.0_f64; 7];
        for setting in self.settings(&window) {
            // A first look takes the cloth beside a cold run's print to be as hot as planned: it may be over, never under.
            let one_sided = (detail, setting.2) == (Detail::Coarse, DriftRun::Cold);
            let off = self.off(&window, setting, one_sided);
            worst = std::array::from_fn(|column| worst[column].max(off[column]));
        }
        for (((what, _), allowed), worst) in FINE.into_iter().zip(allowed).zip(worst) {
            assert!(worst < allowed, "{}, {detail:?}: {what} {worst:.4} off, {allowed} allowed", self.name);
        }
    }

    /// Marches that a window of one run of the print is worth: its steps over those of one march in the middle of it. Half
    /// of the window's stacks are bare cloth, and there are three runs.
    fn solves(&self, window: &Window) -> f64 {
        let (set, belt) = (window.set[window.set.len() / 2], window.belt[window.belt.len() / 2]);
        let single = self.march(&self.stack, set, belt, DriftCase::NOMINAL).effort;
        let steps = |effort: Effort| (effort.accepted + effort.rejected) as f64;
        steps(window.effort) / 6.0 / steps(single)
    }
}

#[test]
fn a_fine_window_agrees_between_its_cells() {
    for case in Printed::all() {
        case.holds(Detail::Fine, FINE.map(|(_, most)| most));
    }
}

#[test]
fn a_coarse_window_agrees_as_far_as_a_first_look_needs() {
    for case in Printed::all() {
        case.holds(Detail::Coarse, COARSE);
    }
}

/// The dwells of a dryer with one zone share their marches, those of several zones cannot. The limits are chosen: they
/// notice a window that costs more than it did.
#[test]
fn a_window_of_one_zone_shares_its_marches() {
    let mut compared = 0;
    for case in Printed::all().filter(|case| case.job.dryer.zones.len() == 1) {
        for (detail, most) in [(Detail::Fine, 260.0), (Detail::Coarse, 100.0)] {
            let window = case.window(detail);
            let solves = case.solves(&window);
            assert!(solves < most, "{}, {detail:?}: {solves:.0} solves a run", case.name);
            compared += 1;
        }
    }
    assert!(compared > 0, "no dryer with one zone");
}
