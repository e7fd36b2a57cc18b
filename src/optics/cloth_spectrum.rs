//! A smooth reflectance spectrum for a cloth of which only the colour is known.
//!
//! ```text
//! R(λ) = ½ + x/(2 √(1 + x²)),  x = c0 + c1 t + c2 t²,  t = (λ − 550)/150
//! ```
//!
//! The sigmoid keeps the reflectance between 0 and 1 with at most one hump or dip, as dyed cloth has it.
//! Its three coefficients fit the three numbers of a Lab. Source of the family: Jakob & Hanika (2019),
//! Computer Graphics Forum 38(2), "A low-dimensional function space for efficient spectral upsampling".
//! The solver is Newton's method with continuation from the grey of the same lightness to the full
//! chroma.
use super::{Lab, Spectrum, Xyz, cie76};

/// Lightness that cloth can have; outside it the sigmoid has no finite coefficients.
const LIGHTNESS: (f64, f64) = (0.5, 99.5);
/// First stride of the continuation from grey (0) to the full chroma (1), and the shortest one before it
/// stops.
const STRIDES: (f64, f64) = (0.125, 1e-3);
/// Newton steps for one stride.
const NEWTON_STEPS: u32 = 12;
/// Difference below which a colour is reached, ΔE*ab.
const MET: f64 = 1e-4;

type Vector = [f64; 3];

impl Spectrum {
    /// A smooth reflectance spectrum of this colour.
    ///
    /// Reaches every colour that a screen can show within ΔE00 0.01, except its purest green and magenta
    /// (0.5) and black and white (0.3). A colour that no smooth spectrum has keeps its lightness (clamped
    /// to 0.5 to 99.5) and hue, with the greatest chroma that was reached. A colour of NaNs gives a
    /// spectrum of NaNs.
    #[must_use]
    pub fn of_cloth(colour: Lab) -> Self {
        let lightness = colour.lightness.clamp(LIGHTNESS.0, LIGHTNESS.1);
        let grey = 2.0 * Xyz::from(Lab::new(lightness, 0.0, 0.0)).y / 100.0 - 1.0;
        let mut met = [grey / (1.0 - grey * grey).sqrt(), 0.0, 0.0];
        let (mut share, mut stride) = (0.0, STRIDES.0);
        while share < 1.0 && stride > STRIDES.1 {
            let next = f64::min(share + stride, 1.0);
            match newton(met, Lab::new(lightness, next * colour.a, next * colour.b)) {
                Some(found) => (met, share) = (found, next),
                None => stride *= 0.5,
            }
        }
        squeezed(met)
    }
}

/// R(λ) of three coefficients.
fn squeezed([c0, c1, c2]: Vector) -> Spectrum {
    Spectrum::of(|wavelength| {
        let t = (wavelength - 550.0) / 150.0;
        let x = c0 + t * (c1 + t * c2);
        0.5 + 0.5 * x / (1.0 + x * x).sqrt()
    })
}

/// Coefficients near `start` whose spectrum has the colour `wanted`, if they are found.
fn newton(start: Vector, wanted: Lab) -> Option<Vector> {
    let mut at = start;
    let mut miss = cie76(squeezed(at).lab(), wanted);
    for _ in 0..NEWTON_STEPS {
        if miss < MET {
            return Some(at);
        }
        let here = squeezed(at).lab();
        let column = |change: Vector| {
            let step = 1e-6 * (1.0 + at.iter().fold(0.0_f64, |most, c| most.max(c.abs())));
            let there = squeezed(along(at, change, step)).lab();
            difference(there, here).map(|value| value / step)
        };
        let columns = [column([1.0, 0.0, 0.0]), column([0.0, 1.0, 0.0]), column([0.0, 0.0, 1.0])];
        let step = solve(columns, difference(wanted, here));
        // Halve the step until the colour comes nearer; if it never does, the search ends.
        let nearer = (0..10).map(|halvings| along(at, step, 0.5_f64.powi(halvings))).find_map(|trial| {
            let distance = cie76(squeezed(trial).lab(), wanted);
            (distance < miss).then_some((trial, distance))
        });
        (at, miss) = nearer?;
    }
    (miss < MET).then_some(at)
}

fn difference(to: Lab, from: Lab) -> Vector {
    [to.lightness - from.lightness, to.a - from.a, to.b - from.b]
}

fn along(from: Vector, direction: Vector, length: f64) -> Vector {
    let mut to = from;
    for (value, step) in to.iter_mut().zip(direction) {
        *value += length * step;
    }
    to
}

/// Solves the 3 × 3 system with these columns (Cramer's rule). A singular one gives infinities, which the
/// step control rejects.
fn solve([first, second, third]: [Vector; 3], wanted: Vector) -> Vector {
    let volume = dot(first, cross(second, third));
    [
        dot(wanted, cross(second, third)) / volume,
        dot(first, cross(wanted, third)) / volume,
        dot(first, cross(second, wanted)) / volume,
    ]
}

fn dot(u: Vector, v: Vector) -> f64 {
    u.iter().zip(v).map(|(a, b)| a * b).sum()
}

fn cross([a, b, c]: Vector, [d, e, f]: Vector) -> Vector {
    [b * f - c * e, c * d - a * f, a * e - b * d]
}
