//! Heat by conduction, convection and radiation comes out of the dryer's own equations as in the handbook.
//!
//! Every wall is a [`Chain`] without water or belt, so that the equations and the integrator of the product are what is
//! held to the handbook. 'From the open companion' means: inputs and answers as
//! printed in the volunteers' companion to Incropera, DeWitt, Bergman & Lavine, Fundamentals of Heat and Mass
//! Transfer, 6th edition (FOSSEE/Python-Textbook-Companions, commit 206d035), read there and not in the book.
//! 'Book answer from memory' where the companion errs or is silent. 'Exact' answers are evaluated to all digits.

use super::chain::Chain;
use super::surroundings::Surroundings;
use super::water::WetCloths;
use crate::numerics::Lanes;
use crate::numerics::normal::complementary_error;
use crate::numerics::rosenbrock::{NODES, Tolerance, integrate, zeros};
use crate::quantity::STEFAN_BOLTZMANN;

const TIGHT: Tolerance = Tolerance { temperature: 1e-5, water: 1.0 };

/// What the face of a wall is exposed to; its other face is insulated.
#[derive(Clone, Copy)]
struct Face {
    h: f64,
    air: f64,
    emissivity: f64,
    surroundings: f64,
    /// Heat put in from outside, W/m².
    source: f64,
}

impl Face {
    fn convection(h: f64, air: f64) -> Self {
        Self { h, air, emissivity: 0.0, surroundings: 0.0, source: 0.0 }
    }

    fn flux(source: f64) -> Self {
        Self { source, ..Self::convection(0.0, 0.0) }
    }
}

/// A plane wall whose first node lies on the exposed face, half cells at both faces; one node is a lump.
#[derive(Clone, Copy)]
struct Wall {
    nodes: usize,
    thickness: f64,
    conductivity: f64,
    /// Density times specific heat, J/(m³ K).
    heat: f64,
    face: Face,
}

impl Wall {
    fn lump(heat_per_area: f64, face: Face) -> Self {
        Self { nodes: 1, thickness: 1.0, conductivity: 1.0, heat: heat_per_area, face }
    }

    /// The wall as the dryer's own chain of nodes: no water, no belt, heat capacities that do not change.
    fn chain(&self) -> Chain<1> {
        let cells = (self.nodes - 1).max(1) as f64;
        let whole = self.heat * self.thickness / cells;
        let capacity = |node: usize| match self.nodes {
            1 => whole,
            nodes if node == 0 || node + 1 == nodes => 0.5 * whole,
            _ => whole,
        };
        let Face { h, air, emissivity, surroundings, source } = self.face;
        let emission = emissivity * STEFAN_BOLTZMANN;
        Chain {
            count: self.nodes,
            film: 0,
            capacity: (0..self.nodes).map(|node| Lanes::splat(capacity(node))).collect(),
            capacity_slope: vec![0.0; self.nodes],
            conductance: vec![Lanes::splat(self.conductivity * cells / self.thickness); self.nodes - 1],
            share: vec![0.0; self.nodes],
            cloths: WetCloths::default(),
            surroundings: Surroundings {
                air: Lanes::splat(air),
                h_top: Lanes::splat(h),
                source: Lanes::splat(source + emission * surroundings.powi(4)),
                emission: Lanes::splat(emission),
                ..Surroundings::NONE
            },
        }
    }

    /// Temperatures after `seconds`, from an even `start`, the exposed face first.
    fn after(&self, start: f64, seconds: f64) -> Vec<f64> {
        let mut state = zeros();
        state[..NODES].fill(Lanes::splat(start));
        integrate(&self.chain(), &mut state, Lanes::splat(seconds), TIGHT, |_| {}).expect("a sound wall");
        state[..self.nodes].iter().map(|lane| lane[0]).collect()
    }

    /// When the face passes `wanted`, s, by bisection on its computed temperature.
    fn time_to(&self, start: f64, wanted: f64, most: f64) -> f64 {
        let (mut low, mut high) = (0.0, most);
        for _ in 0..40 {
            let middle = 0.5 * (low + high);
            let passed = (self.after(start, middle)[0] - wanted) * (wanted - start) > 0.0;
            if passed { high = middle } else { low = middle }
        }
        0.5 * (low + high)
    }
}

fn within(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{what}: {found} for {expected} ± {tolerance}");
}

/// Source: Incropera 6e example 1.7, p. 30, from the open companion: 104 °C. A coating under an infrared lamp of
/// 2000 W/m², absorptivity 0.8, emissivity 0.5, h 15, air 20 °C, surroundings 30 °C (K = °C + 273); and the h that
/// keeps it at 50 °C: 51.0.
#[test]
fn a_coating_under_a_lamp() {
    let lamp = |h: f64| Face { h, air: 293.0, emissivity: 0.5, surroundings: 303.0, source: 1600.0 };
    for (h, expected, tolerance) in [(15.0, 104.0, 0.5), (51.013, 50.0, 0.01)] {
        let settled = Wall::lump(1000.0, lamp(h)).after(293.0, 5000.0)[0] - 273.0;
        within("lamp", settled, expected, tolerance);
    }
}

/// Source: Incropera 6e examples 5.1, p. 261 (from the open companion: 5.2 s, exact 5.166) and 5.2, p. 265 (book
/// answer from memory: 218.7 °C, 4.9 s to within 1 K of it; SciPy 1.17.1 `solve_ivp`: 4.994). A thermocouple ball
/// of 0.706 mm: h 400, c 400, ρ 8500; K = °C + 273.
#[test]
fn a_thermocouple_in_hot_gas() {
    let per_area = 8500.0 * 400.0 * 7.06e-4 / 6.0;
    let gas = Face::convection(400.0, 473.0);
    within("gas alone", Wall::lump(per_area, gas).time_to(298.0, 472.0, 20.0), 5.166, 0.05);

    let hot_walls = Wall::lump(per_area, Face { emissivity: 0.9, surroundings: 673.0, ..gas });
    let settled = hot_walls.after(298.0, 60.0)[0];
    within("settles at", settled - 273.0, 218.7, 0.05);
    within("within 1 K", hot_walls.time_to(298.0, settled - 1.0, 20.0), 4.994, 0.05);
}

/// Source: Incropera 6e example 5.3, p. 267: a coated aluminium panel of 3 mm in a curing oven of 175 °C reaches
/// 150 °C after 123 to 124 s, leaves 300 s later and may be touched (37 °C) at 987 to 989 s. Lower values from the
/// open companion, upper ones book answers from memory; SciPy 1.17.1: 123.08, 423.08, 986.3.
#[test]
fn a_coated_panel_cured_in_an_oven() {
    let per_area = 2770.0 * 875.0 * 0.0015;
    let exposed = |h: f64, to: f64| {
        Wall::lump(per_area, Face { h, air: to, emissivity: 0.8, surroundings: to, source: 0.0 })
    };
    let oven = exposed(40.0, 448.0);
    let cured_from = oven.time_to(298.0, 423.0, 1000.0);
    within("at 150 °C", cured_from, 123.5, 2.0);
    let leaves = cured_from + 300.0;
    within("leaves", leaves, 423.5, 2.0);
    let hot = oven.after(298.0, leaves)[0];
    let touched = leaves + exposed(10.0, 298.0).time_to(hot, 310.0, 3000.0);
    within("touched", touched, 988.0, 2.0);
}

/// Roots of `z tan z = Bi` in rising order and the coefficients of the plane-wall series.
fn eigenvalues(biot: f64) -> Vec<(f64, f64)> {
    use std::f64::consts::PI;
    (0..30)
        .map(|n| {
            let (mut low, mut high) = (f64::from(n) * PI, (f64::from(n) + 0.5) * PI);
            for _ in 0..80 {
                let middle = 0.5 * (low + high);
                // z sin z - Bi cos z carries the sign of the n-th branch.
                let sign = if n % 2 == 0 { 1.0 } else { -1.0 };
                if sign * (middle * middle.sin() - biot * middle.cos()) < 0.0 {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            let z = 0.5 * (low + high);
            (z, 4.0 * z.sin() / (2.0 * z + (2.0 * z).sin()))
        })
        .collect()
}

/// Excess over the gas, 1 at the start, at `place` (0 insulated middle, 1 face): the exact series.
fn series(biot: f64, fourier: f64, place: f64) -> f64 {
    eigenvalues(biot).iter().map(|(z, c)| c * (-z * z * fourier).exp() * (z * place).cos()).sum()
}

/// Source: Çengel, Heat Transfer, table 4-2 (read; also Incropera table 5.1): first root and coefficient by Biot
/// number. Proves the series that the walls below are held to.
#[test]
fn first_roots_of_a_table() {
    let rows = [
        (0.01, 0.0998, 1.0017),
        (0.1, 0.3111, 1.0161),
        (0.5, 0.6533, 1.0701),
        (1.0, 0.8603, 1.1191),
        (2.0, 1.0769, 1.1785),
        (5.0, 1.3138, 1.2402),
        (10.0, 1.4289, 1.2620),
    ];
    for (biot, root, coefficient) in rows {
        let [(z, c), ..] = eigenvalues(biot)[..] else { panic!("no roots") };
        within("root", z, root, 5e-5);
        within("coefficient", c, coefficient, 5e-5);
    }
}

/// The pipe wall of example 5.4: L 0.04, k 63.9, ρ 7832, c 434, h 500, from −20 °C in oil of 60 °C.
fn pipe_wall(nodes: usize) -> Wall {
    Wall {
        nodes,
        thickness: 0.04,
        conductivity: 63.9,
        heat: 7832.0 * 434.0,
        face: Face::convection(500.0, 60.0),
    }
}

fn pipe_series(seconds: f64, place: f64) -> f64 {
    let fourier = 63.9 / (7832.0 * 434.0) * seconds / (0.04 * 0.04);
    60.0 - 80.0 * series(500.0 * 0.04 / 63.9, fourier, place)
}

/// Source: Incropera 6e example 5.4, p. 278, from the open companion: after 8 min 42.9 °C at the insulated side (one
/// term, rounded table values) and 45.4 °C at the face (exact 45.364); and the exact series at four times.
#[test]
fn a_plane_wall_against_its_series() {
    let end = pipe_wall(21).after(-20.0, 480.0);
    within("book, inner", end[20], 42.9, 0.2);
    within("book, face", end[0], 45.4, 0.2);
    for seconds in [60.0, 120.0, 240.0, 480.0] {
        let found = pipe_wall(21).after(-20.0, seconds);
        for (node, place) in [(20, 0.0), (10, 0.5), (0, 1.0)] {
            within("series", found[node], pipe_series(seconds, place), 0.05);
        }
    }
}

/// Source: the exact series; half cells at the faces make the grid of second order.
#[test]
fn order_two_in_space() {
    let errors = [3, 5, 9, 17].map(|nodes| {
        let found = pipe_wall(nodes).after(-20.0, 60.0);
        (found[0] - pipe_series(60.0, 1.0)).abs()
    });
    for pair in errors.windows(2) {
        let order = (pair[0] / pair[1]).log2();
        assert!((1.9..2.1).contains(&order), "order {order} from {errors:?}");
    }
}

/// Source: exact, `erfc a − exp(2ab + b²) erfc(a + b)` with a = x / 2√(αt), b = h√(αt)/k; the figures by SciPy
/// 1.17.1 `erfc`. A wall of unit conductivity and heat, six diffusion lengths deep, after unit time.
#[test]
fn convection_on_a_thick_wall() {
    let rows = [
        (0.0, 0.1, 0.103_543),
        (0.0, 0.5, 0.384_310),
        (0.0, 1.0, 0.572_416),
        (0.5, 0.5, 0.146_498),
        (0.5, 1.0, 0.229_049),
        (1.0, 1.0, 0.063_344),
    ];
    for (a, b, expected) in rows {
        let closed = complementary_error(a) - (2.0 * a * b + b * b).exp() * complementary_error(a + b);
        within("closed form", closed, expected, 1e-6);
        let wall = Wall {
            nodes: 48,
            thickness: 5.875,
            conductivity: 1.0,
            heat: 1.0,
            face: Face::convection(b, 1.0),
        };
        let node = (2.0 * a / 0.125) as usize;
        within("computed", wall.after(0.0, 1.0)[node], expected, 1e-3);
    }
}

/// Source: Incropera 6e example 5.10, p. 311: copper under 300 kW/m² for 120 s: 120.0 °C at the face (book answer from
/// memory: the companion prints a variable before it is set; exact 120.027) and 45.4 °C at 150 mm (from the open
/// companion; exact 45.406).
#[test]
fn a_thick_copper_block_under_a_flux() {
    let block =
        Wall { nodes: 41, thickness: 0.6, conductivity: 401.0, heat: 401.0 / 117e-6, face: Face::flux(3e5) };
    let found = block.after(20.0, 120.0);
    within("face", found[0], 120.0, 0.3);
    within("150 mm", found[10], 45.4, 0.3);
}

/// Source: Incropera 6e example 5.6, p. 288 (book answer from memory: 0.68 m; the companion's 0.92 m uses erfc where
/// the inverse of erf is needed; exact 0.6766). Soil from 20 °C under a surface of −15 °C: where it freezes after 60 d.
/// A very large h stands for the given surface temperature.
#[test]
fn how_deep_the_soil_freezes() {
    let soil = Wall {
        nodes: 46,
        thickness: 4.5,
        conductivity: 0.52,
        heat: 2050.0 * 1840.0,
        face: Face::convection(1e5, -15.0),
    };
    let found = soil.after(20.0, 60.0 * 86_400.0);
    let below = found.windows(2).position(|pair| pair[0] < 0.0 && pair[1] >= 0.0).expect("freezes");
    let depth = 0.1 * (below as f64 - found[below] / (found[below + 1] - found[below]));
    within("depth", depth, 0.68, 0.005);
}
