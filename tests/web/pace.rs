//! How long one history takes, microseconds: the same code natively (`whitehold-bench pace`) and in the release wasm in a
//! browser (`cargo xtask bench --only wasm` runs both).

use whitehold::dryer::{Case, Dryer, Film, Stack, TOLERANCE, World, history};
use whitehold::library::Library;
use whitehold::textile::{Construction, Fibre};

/// Histories that are marched for one figure.
const TURNS: usize = 400;
/// Figures that are taken; the fastest counts, because whatever else runs can only slow it down.
const FIGURES: usize = 15;

/// One history marched alone, and one of eight that march side by side, in µs. `now` reads a clock in ms.
pub fn pace(library: &Library, dryer: &Dryer, now: impl Fn() -> f64) -> [f64; 2] {
    let cotton = [(Fibre::Cotton, 1.0)].into();
    let cloth = library.fabric(&cotton, Construction::Jersey, 150.0).unwrap();
    let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &cloth, 0.65);
    let case = |lane: usize| Case { set: 448.15, belt: 1.8 / (34.4 + lane as f64), world: World::NOMINAL };
    let (alone, beside) = ([case(3)], std::array::from_fn::<_, 8, _>(case));
    let fastest = |march: &dyn Fn() -> usize, worlds: f64| {
        let mut fastest = f64::INFINITY;
        for _ in 0..FIGURES {
            let start = now();
            let steps: usize = (0..TURNS).map(|_| march()).sum();
            assert!(steps > TURNS, "nothing was marched");
            fastest = fastest.min((now() - start) * 1e3 / (TURNS as f64 * worlds));
        }
        fastest
    };
    [
        fastest(&|| history(&stack, dryer, &alone, 1, TOLERANCE).unwrap().effort.accepted, 1.0),
        fastest(&|| history(&stack, dryer, &beside, 1, TOLERANCE).unwrap().effort.accepted, 8.0),
    ]
}
