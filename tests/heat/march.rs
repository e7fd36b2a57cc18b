//! The march has the order it claims, with an inexact Jacobian too, and solves a band of blocks.

use std::ops::Range;
use whitehold::numerics::Lanes;
use whitehold::numerics::rosenbrock::{
    Block, IntegrationError, Jacobian, NODES, StateVector, System, Tolerance, integrate, zeros,
};

/// So loose that no step is refused: every call then takes the same three steps.
const FREE: Tolerance = Tolerance { temperature: 1e9, water: 1e9 };

/// End state after `parts` equal calls of the march with the steps that it takes when nothing holds it back.
fn in_parts(system: &impl System<1>, mut state: StateVector<1>, duration: f64, parts: u32) -> StateVector<1> {
    let each = Lanes::splat(duration / f64::from(parts));
    for _ in 0..parts {
        integrate(system, &mut state, each, FREE, |_| {}).expect("a tame system");
    }
    state
}

/// Order of convergence from the errors of two runs, the second with twice the steps.
fn order(coarse: f64, fine: f64) -> f64 {
    (coarse / fine).log2()
}

/// A body that radiates into the dark: `T' = -k T^4`, so that `T = (T0^-3 + 3 k t)^(-1/3)`.
struct Radiating {
    k: f64,
    /// Share of the true Jacobian that the march is told.
    told: f64,
}

impl System<1> for Radiating {
    fn nodes(&self) -> usize {
        1
    }
    fn wet(&self) -> Range<usize> {
        0..0
    }
    fn rates(&self, state: &StateVector<1>, rates: &mut StateVector<1>) {
        let square = state[0] * state[0];
        rates[0] = square * square * -self.k;
    }
    fn jacobian(&self, state: &StateVector<1>, jacobian: &mut Jacobian<1>) {
        jacobian.diagonal[0].tt = state[0] * state[0] * state[0] * (-4.0 * self.k * self.told);
    }
}

/// Source: exact solution. Rang & Angermann 2005 claim order three for any Jacobian.
#[test]
fn order_three_whatever_the_jacobian() {
    let (start, k, duration) = (500.0_f64, 1e-9, 20.0);
    let exact = (start.powi(-3) + 3.0 * k * duration).powf(-1.0 / 3.0);
    for told in [1.0, 0.6, 0.0] {
        let system = Radiating { k, told };
        let mut state = zeros();
        state[0] = Lanes::splat(start);
        let errors = [8, 16, 32].map(|parts| (in_parts(&system, state, duration, parts)[0][0] - exact).abs());
        let orders = [order(errors[0], errors[1]), order(errors[1], errors[2])];
        assert!(orders.iter().all(|&order| order > 2.7), "told {told}: {orders:?}");
        assert!(errors[2] < 1e-3, "told {told}: {errors:?} K");
    }
}

/// An insulated wall of unit diffusivity and length: half cells at its ends.
struct Wall {
    nodes: usize,
}

impl System<1> for Wall {
    fn nodes(&self) -> usize {
        self.nodes
    }
    fn wet(&self) -> Range<usize> {
        0..0
    }
    fn rates(&self, state: &StateVector<1>, rates: &mut StateVector<1>) {
        let cells = (self.nodes - 1) as f64;
        for i in 0..self.nodes {
            let left = if i > 0 { state[i - 1] } else { state[1] };
            let right = if i + 1 < self.nodes { state[i + 1] } else { state[i - 1] };
            rates[i] = (left + right - state[i] * 2.0) * (cells * cells);
        }
    }
    fn jacobian(&self, _: &StateVector<1>, jacobian: &mut Jacobian<1>) {
        let cells = (self.nodes - 1) as f64;
        for i in 0..self.nodes {
            let outer = i == 0 || i + 1 == self.nodes;
            let to = Lanes::splat(cells * cells * if outer { 2.0 } else { 1.0 });
            jacobian.below[i].tt = if i > 0 { to } else { Lanes::ZERO };
            jacobian.above[i].tt = if i + 1 < self.nodes { to } else { Lanes::ZERO };
            jacobian.diagonal[i].tt = Lanes::splat(-2.0 * cells * cells);
        }
    }
}

/// Source: exact solution on the grid itself, so that only time is measured: `cos(pi x)` decays with
/// `4 (n-1)² sin²(pi / 2(n-1))`. The stiffest mode of 40 nodes is 600 times faster than the one that is watched.
#[test]
fn order_three_on_a_stiff_wall() {
    let system = Wall { nodes: 40 };
    let cells = (system.nodes - 1) as f64;
    let mut start = zeros();
    for i in 0..system.nodes {
        start[i] = Lanes::splat(100.0 * (std::f64::consts::PI * i as f64 / cells).cos());
    }
    let decay = (2.0 * cells * (std::f64::consts::PI / (2.0 * cells)).sin()).powi(2);
    let duration = 0.3;
    let errors = [4, 8, 16].map(|parts| {
        let end = in_parts(&system, start, duration, parts);
        (0..system.nodes)
            .map(|i| (end[i][0] - start[i][0] * (-decay * duration).exp()).abs())
            .fold(0.0, f64::max)
    });
    let orders = [order(errors[0], errors[1]), order(errors[1], errors[2])];
    assert!(orders.iter().all(|&order| order > 2.7), "{orders:?}");
    assert!(errors[2] < 1e-3, "{errors:?} K");
}

/// Five nodes with made-up coefficients, of which three hold water.
struct Blocks;

const NONE: [f64; 4] = [0.0; 4];
const BELOW: [[f64; 4]; 5] =
    [NONE, [1.5, 0.0, 0.0, 0.0], [1.0, 0.4, -0.3, 0.6], [0.8, 0.2, 0.5, 0.4], [0.9, 0.0, 0.0, 0.0]];
const DIAGONAL: [[f64; 4]; 5] = [
    [-2.0, 0.0, 0.0, 0.0],
    [-4.0, 0.5, 0.3, -1.2],
    [-3.0, -0.4, 0.2, -1.5],
    [-2.5, 0.3, -0.6, -0.9],
    [-1.8, 0.0, 0.0, 0.0],
];
const ABOVE: [[f64; 4]; 5] =
    [[1.2, 0.0, 0.0, 0.0], [0.7, -0.5, 0.4, 0.5], [1.1, 0.3, -0.2, 0.7], [0.6, 0.0, 0.3, 0.0], NONE];

fn block([tt, tw, wt, ww]: [f64; 4]) -> Block<1> {
    Block { tt: Lanes::splat(tt), tw: Lanes::splat(tw), wt: Lanes::splat(wt), ww: Lanes::splat(ww) }
}

impl System<1> for Blocks {
    fn nodes(&self) -> usize {
        5
    }
    fn wet(&self) -> Range<usize> {
        1..4
    }
    fn rates(&self, state: &StateVector<1>, rates: &mut StateVector<1>) {
        for i in 0..5_usize {
            let sides = [(i.checked_sub(1), BELOW[i]), (Some(i), DIAGONAL[i]), (Some(i + 1), ABOVE[i])];
            (rates[i], rates[NODES + i]) = (Lanes::ZERO, Lanes::ZERO);
            for (j, [tt, tw, wt, ww]) in sides.into_iter().filter_map(|(j, block)| Some((j?, block))) {
                rates[i] += state[j] * tt + state[NODES + j] * tw;
                rates[NODES + i] += state[j] * wt + state[NODES + j] * ww;
            }
        }
    }
    fn jacobian(&self, _: &StateVector<1>, jacobian: &mut Jacobian<1>) {
        for i in 0..5 {
            jacobian.below[i] = block(BELOW[i]);
            jacobian.diagonal[i] = block(DIAGONAL[i]);
            jacobian.above[i] = block(ABOVE[i]);
        }
    }
}

/// Source: the matrix exponential of the same eight unknowns, SciPy 1.17.1 `scipy.linalg.expm`: five temperatures, then
/// the water of the three wet nodes.
#[test]
fn a_band_of_blocks_is_solved() {
    let rows = [
        (
            0.1,
            [
                8.596_993_765_253,
                3.566_827_920_226,
                -3.992_484_897_233,
                1.408_889_932_771,
                4.314_236_813_568,
                0.822_174_017_051,
                0.122_275_856_401,
                -2.014_821_499_804,
            ],
        ),
        (
            0.5,
            [
                4.814_273_624_823,
                2.437_574_384_695,
                -0.375_713_819_688,
                0.523_689_338_483,
                2.303_696_422_393,
                0.522_060_075_736,
                -0.607_060_327_165,
                -1.579_719_577_697,
            ],
        ),
        (
            2.0,
            [
                0.769_226_859_081,
                0.575_754_218_600,
                0.395_908_981_259,
                0.170_132_903_270,
                0.266_712_301_768,
                0.246_774_038_356,
                -0.365_974_220_698,
                -0.360_375_649_225,
            ],
        ),
    ];
    let places = [0, 1, 2, 3, 4, NODES + 1, NODES + 2, NODES + 3];
    let tight = Tolerance { temperature: 1e-8, water: 1e-8 };
    for (duration, expected) in rows {
        let mut state = zeros();
        for (place, value) in places.into_iter().zip([10.0, 4.0, -6.0, 2.0, 5.0, 1.0, 0.5, -2.0]) {
            state[place] = Lanes::splat(value);
        }
        let effort =
            integrate(&Blocks, &mut state, Lanes::splat(duration), tight, |_| {}).expect("a linear system");
        for (place, expected) in places.into_iter().zip(expected) {
            let found: f64 = state[place][0];
            assert!((found - expected).abs() < 2e-6, "t {duration}, unknown {place}: {found} for {expected}");
        }
        // With a Jacobian that is solved wrongly, steps must be much smaller.
        assert!(effort.accepted < 2_000, "{effort:?}");
    }
}

/// A tolerance that did nothing would leave both runs alike.
#[test]
fn a_tighter_tolerance_costs_more_and_errs_less() {
    let exact = (500.0_f64.powi(-3) + 3.0 * 1e-9 * 20.0).powf(-1.0 / 3.0);
    let run = |temperature: f64| {
        let mut state = zeros();
        state[0] = Lanes::splat(500.0);
        let tolerance = Tolerance { temperature, water: 1.0 };
        let effort =
            integrate(&Radiating { k: 1e-9, told: 1.0 }, &mut state, Lanes::splat(20.0), tolerance, |_| {})
                .expect("a tame system");
        (effort.accepted, (state[0][0] - exact).abs())
    };
    let [(few, coarse), (many, fine)] = [run(0.1), run(1e-5)];
    assert!(few < many && fine < coarse && coarse < 0.1 && fine < 1e-4, "{few} {coarse} {many} {fine}");
}

/// Rates that are not numbers end in a typed error, never in a panic or an endless loop.
#[test]
fn what_cannot_be_marched_says_so() {
    let mut state = zeros();
    state[0] = Lanes::splat(f64::NAN);
    let ended = integrate(&Radiating { k: 1e-9, told: 1.0 }, &mut state, Lanes::splat(20.0), FREE, |_| {});
    assert_eq!(ended, Err(IntegrationError::NotFinite));
}

/// Lanes of different durations give what each gives alone.
#[test]
fn lanes_share_the_steps_and_keep_their_own_time() {
    struct Cooling;
    impl<const L: usize> System<L> for Cooling {
        fn nodes(&self) -> usize {
            1
        }
        fn wet(&self) -> Range<usize> {
            0..0
        }
        fn rates(&self, state: &StateVector<L>, rates: &mut StateVector<L>) {
            rates[0] = state[0] * -0.1;
        }
        fn jacobian(&self, _: &StateVector<L>, jacobian: &mut Jacobian<L>) {
            jacobian.diagonal[0].tt = Lanes::splat(-0.1);
        }
    }
    let durations = [1.0, 5.0, 20.0, 60.0];
    let mut state = zeros();
    state[0] = Lanes::splat(100.0);
    let tight = Tolerance { temperature: 1e-6, water: 1.0 };
    integrate(&Cooling, &mut state, Lanes(durations), tight, |_| {}).expect("a linear system");
    for (lane, duration) in durations.into_iter().enumerate() {
        let exact = 100.0 * (-0.1_f64 * duration).exp();
        assert!((state[0][lane] - exact).abs() < 1e-4, "{duration} s: {} for {exact}", state[0][lane]);
    }
}
