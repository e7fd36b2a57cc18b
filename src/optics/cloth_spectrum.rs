//! A cloth known only by its colour: a smooth reflectance spectrum that has that colour.
//!
//! ```text
//! R(λ) = ½ + x/(2 √(1 + x²)),  x = c0 + c1 t + c2 t²,  t = (λ − 550)/150
//! ```
//!
//! A quadratic squeezed between 0 and 1: never a negative or a more than white reflectance, at most one hump or dip,
//! as dyed cloth has. Three coefficients meet the three numbers of a Lab.
//! Source of the family: Jakob & Hanika (2019), Computer Graphics Forum 38(2), "A low-dimensional function space for
//! efficient spectral upsampling". The solver here is a Newton walk from the grey of the same lightness outwards.
use super::{Lab, Spectrum, Xyz, cie76};

/// Lightness that cloth can have; outside it the squeeze has no finite coefficients.
const LIGHTNESS: (f64, f64) = (0.5, 99.5);
/// First stride of the walk from grey (0) to the full chroma (1), and the shortest before it gives up.
const STRIDES: (f64, f64) = (0.125, 1e-3);
/// Newton steps for one stride.
const NEWTON_STEPS: u32 = 12;
/// Distance at which a colour counts as met, ΔE*ab.
const MET: f64 = 1e-4;

type Vector = [f64; 3];

impl Spectrum {
    /// A smooth reflectance spectrum of this colour.
    ///
    /// Meets every colour that a screen can show: to ΔE00 0.01, but for its purest green and magenta, which are cut
    /// by up to 0.5, and black and white (0.3). A colour no smooth spectrum has keeps its
    /// lightness (cut to 0.5 to 99.5) and hue and gets the greatest chroma that was met. A colour that is not a
    /// number gives a spectrum that is not.
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
        // Half the step until the colour comes nearer; a step that never does ends the search.
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

/// Solves the 3 × 3 system with these columns (Cramer's rule). A singular one gives infinities, which no step survives.
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
