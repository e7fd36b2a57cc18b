//! The march has the order it claims, with an inexact Jacobian too, and solves what stands in its border.

use whitehold::numerics::Lanes;
use whitehold::numerics::rosenbrock::{
    IntegrationError, Jacobian, NODES, StateVector, System, Tolerance, integrate, zeros,
};

/// So loose that no step is refused: every call then takes the same three steps.
const FREE: Tolerance = Tolerance { temperature: 1e9, border: 1e9 };

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
    fn borders(&self) -> usize {
        0
    }
    fn rates(&self, state: &StateVector<1>, rates: &mut StateVector<1>) {
        let square = state[0] * state[0];
        rates[0] = square * square * -self.k;
    }
    fn jacobian(&self, state: &StateVector<1>, jacobian: &mut Jacobian<1>) {
        jacobian.diagonal[0] = state[0] * state[0] * state[0] * (-4.0 * self.k * self.told);
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
    fn borders(&self) -> usize {
        0
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
            jacobian.below[i] = if i > 0 { to } else { Lanes::ZERO };
            jacobian.above[i] = if i + 1 < self.nodes { to } else { Lanes::ZERO };
            jacobian.diagonal[i] = Lanes::splat(-2.0 * cells * cells);
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

/// Three nodes and two bordering unknowns with made-up coefficients.
struct Bordered;

const BELOW: [f64; 3] = [0.0, 2.0, 1.0];
const DIAGONAL: [f64; 3] = [-3.0, -5.0, -1.5];
const ABOVE: [f64; 3] = [1.0, 2.0, 0.0];
const DRAW: [[f64; 3]; 2] = [[-1.0, -2.0, 0.0], [0.0, -0.5, -1.5]];
const PULL: [[f64; 3]; 2] = [[0.4, 0.8, 0.0], [0.0, 0.3, 0.9]];
const SLOPE: [f64; 2] = [2.0, 1.0];
const GAIN: [f64; 2] = [-0.7, -1.2];

impl System<1> for Bordered {
    fn nodes(&self) -> usize {
        3
    }
    fn borders(&self) -> usize {
        2
    }
    fn rates(&self, state: &StateVector<1>, rates: &mut StateVector<1>) {
        for i in 0..3 {
            rates[i] = state[i] * DIAGONAL[i];
            if i > 0 {
                rates[i] += state[i - 1] * BELOW[i];
            }
            if i < 2 {
                rates[i] += state[i + 1] * ABOVE[i];
            }
        }
        for k in 0..2 {
            let mut flow = state[NODES + k] * SLOPE[k];
            for i in 0..3 {
                flow += state[i] * PULL[k][i];
            }
            for i in 0..3 {
                rates[i] += flow * DRAW[k][i];
            }
            rates[NODES + k] = flow * GAIN[k];
        }
    }
    fn jacobian(&self, _: &StateVector<1>, jacobian: &mut Jacobian<1>) {
        for i in 0..3 {
            jacobian.below[i] = Lanes::splat(BELOW[i]);
            jacobian.diagonal[i] = Lanes::splat(DIAGONAL[i]);
            jacobian.above[i] = Lanes::splat(ABOVE[i]);
            for k in 0..2 {
                jacobian.border[k].draw[i] = Lanes::splat(DRAW[k][i]);
                jacobian.border[k].pull[i] = Lanes::splat(PULL[k][i]);
            }
        }
        for k in 0..2 {
            jacobian.border[k].slope = Lanes::splat(SLOPE[k]);
            jacobian.border[k].gain = Lanes::splat(GAIN[k]);
        }
    }
}

/// Source: the matrix exponential of the same five unknowns, SciPy 1.17.1 `scipy.linalg.expm`. Three nodes, two
/// bordering unknowns.
#[test]
fn a_border_is_solved_with_its_band() {
    let rows = [
        (
            0.1,
            [6.880_746_938_307, 1.482_490_368_048, -5.036_638_959_743, 1.387_309_000_975, 4.904_556_291_321],
        ),
        (
            0.5,
            [1.408_623_421_892, -0.984_100_606_046, -3.325_885_649_355, 0.569_777_243_371, 4.424_333_093_545],
        ),
        (
            2.0,
            [
                -0.332_544_567_569,
                -0.982_238_864_453,
                -1.794_275_220_998,
                0.477_676_943_920,
                2.652_175_492_995,
            ],
        ),
    ];
    let tight = Tolerance { temperature: 1e-8, border: 1e-8 };
    for (duration, expected) in rows {
        let mut state = zeros();
        for (place, value) in [0, 1, 2, NODES, NODES + 1].into_iter().zip([10.0, 4.0, -6.0, 2.0, 5.0]) {
            state[place] = Lanes::splat(value);
        }
        integrate(&Bordered, &mut state, Lanes::splat(duration), tight, |_| {}).expect("a linear system");
        for (place, expected) in [0, 1, 2, NODES, NODES + 1].into_iter().zip(expected) {
            let found: f64 = state[place][0];
            assert!((found - expected).abs() < 2e-6, "t {duration}, unknown {place}: {found} for {expected}");
        }
    }
}

/// A tolerance that did nothing would leave both runs alike.
#[test]
fn a_tighter_tolerance_costs_more_and_errs_less() {
    let exact = (500.0_f64.powi(-3) + 3.0 * 1e-9 * 20.0).powf(-1.0 / 3.0);
    let run = |temperature: f64| {
        let mut state = zeros();
        state[0] = Lanes::splat(500.0);
        let tolerance = Tolerance { temperature, border: 1.0 };
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
        fn borders(&self) -> usize {
            0
        }
        fn rates(&self, state: &StateVector<L>, rates: &mut StateVector<L>) {
            rates[0] = state[0] * -0.1;
        }
        fn jacobian(&self, _: &StateVector<L>, jacobian: &mut Jacobian<L>) {
            jacobian.diagonal[0] = Lanes::splat(-0.1);
        }
    }
    let durations = [1.0, 5.0, 20.0, 60.0];
    let mut state = zeros();
    state[0] = Lanes::splat(100.0);
    let tight = Tolerance { temperature: 1e-6, border: 1.0 };
    integrate(&Cooling, &mut state, Lanes(durations), tight, |_| {}).expect("a linear system");
    for (lane, duration) in durations.into_iter().enumerate() {
        let exact = 100.0 * (-0.1_f64 * duration).exp();
        assert!((state[0][lane] - exact).abs() < 1e-4, "{duration} s: {} for {exact}", state[0][lane]);
    }
}
