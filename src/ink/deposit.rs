//! What a stroke lays down, and where it lies.
//!
//! ```text
//! film of a stroke     f = transfer · V               a plastisol loses nothing on curing: wet = dry
//! at a stencil's edge  f + e (1 − x/E)                e emulsion over mesh, x < E from the edge
//! sunk into the cloth  s(u) = 0.7 u · standing        u from 0 (between the yarns) to 1 (over their crowns)
//! above the cloth      max(f − s, 0.1 f)              summed over the strokes
//! ```
//!
//! A film on cloth is no flat sheet: part of it sinks between yarns and loops, so what stays above lies thin over the
//! crowns and thick between them. How deep it sinks is taken as spread evenly from nothing to seven tenths of the
//! height of nap or loops that still stands (assumed, no source; with it a dark jersey wants two strokes and a pale
//! one a single one, as the trade knows it). After print-flash-print the second stroke lies on a film, not on cloth:
//! it loses only to what the first has not laid down ([`standing`]), on a smooth cloth nothing.
//!
//! Transfer: a study of contact screen printing found the mesh to decide the deposit and its openings to be about half
//! filled ("Fundamental investigations into screen printing", doctoral thesis, abstract read): 0.4 to 0.7 of V, best
//! taken from a weighed print ([`Weighing`](super::Weighing)).
//!
//! **Decision:** a film sinks into nap and loops as a spread over the face, not by one depth.
//! **Because:** only so do two strokes with a flash between them cover better than one stroke of twice the
//! ink.
//! **Measured:** the anchors speak of films of 90 to 110 µm, which is 32/cm laid twice at the prior of the
//! transfer (`tests/dye/anchor_film.rs`, by 2026-11-25; computed, not measured on a press).
//! **Reconsider when:** weighed prints of several shops give a transfer other than that prior.
use super::{Mesh, matting::standing};
use crate::quantity::Bound;

/// Share of the theoretical volume that a stroke leaves on the cloth.
pub const TRANSFER: Bound = Bound { field: "transfer", min: 0.1, max: 1.5, unit: "" };

/// Share of the theoretical volume that a stroke leaves on the cloth where the shop has not weighed a print (0.4 to 0.7:
/// the doctoral study above, the rest common practice, no source). High in its range on purpose: how often cloth bleeds is
/// known at a film of 90 to 110 µm, and at 0.65 the coarsest mesh of the library (32/cm), printed, flashed and printed
/// again, lays 96 µm; 43/cm lays 72 µm and would need 0.82 to 1.
pub const USUAL_TRANSFER: f64 = 0.65;

/// Depth to which a stroke sinks over a crown, as a share of the height of nap or loops (0.4 to 1). Assumed.
const SINKS: f64 = 0.7;
/// Least of a stroke that stays above the cloth (0.05 to 0.2). Assumed.
const STAYS: f64 = 0.1;
/// Width beside a stencil's edge in which it holds the squeegee up, m (1e-3 to 1.5e-3): a line of under two or three
/// millimetres prints thicker all over. Common practice, no source.
const EDGE: f64 = 1.25e-3;
/// Parts of the face, equal in area, by which the spread is summed.
const PARTS: usize = 5;

/// Film after `strokes` strokes inside a wide area, m. `transfer` within [`TRANSFER`].
#[must_use]
pub fn deposit(mesh: &Mesh, transfer: f64, strokes: u32) -> f64 {
    transfer * mesh.volume() * f64::from(strokes)
}

/// What the stencil adds to each stroke, mean over a line of this width (m, 0 and up), m.
///
/// As good as the whole of `over_mesh` in a fine line, nothing to speak of in a wide area.
#[must_use]
pub fn stencil_gain(over_mesh: f64, width: f64) -> f64 {
    if width < 2.0 * EDGE { over_mesh * (1.0 - width / (4.0 * EDGE)) } else { over_mesh * EDGE / width }
}

/// What the strokes fall on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Substrate {
    /// Height of nap or loops, m (0 and up).
    pub nap: f64,
    /// Flashed film that lies there already, m (0 and up).
    pub film: f64,
    /// How well the ink holds fibres down, the cotton white = 1.
    pub body: f64,
}

impl Substrate {
    /// A face without nap, a card or a flashed film.
    pub const SMOOTH: Self = Self { nap: 0.0, film: 0.0, body: 1.0 };
}

/// A film on cloth: how thick it lies over equal parts of the face, thickest first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DepositedFilm {
    above: [f64; PARTS],
    laid: f64,
}

impl DepositedFilm {
    /// Strokes of `film` metres each (0 and up) on this bed, flashed between.
    #[must_use]
    pub fn new(film: f64, strokes: u32, bed: &Substrate) -> Self {
        let mut above = [0.0; PARTS];
        for stroke in 0..strokes {
            let stands = standing(bed.nap, bed.film + film * f64::from(stroke), bed.body);
            for (part, i) in above.iter_mut().zip(0..) {
                let crown = (f64::from(i) + 0.5) / PARTS as f64;
                *part += (film - SINKS * crown * stands).max(STAYS * film);
            }
        }
        Self { above, laid: film * f64::from(strokes) }
    }

    /// The same film everywhere, m.
    #[must_use]
    pub fn flat(film: f64) -> Self {
        Self { above: [film; PARTS], laid: film }
    }

    /// Thickness above each part of the face, m; the parts are equal in area.
    #[must_use]
    pub fn parts(&self) -> &[f64] {
        &self.above
    }

    /// Everything that was laid down, m.
    #[must_use]
    pub fn laid(&self) -> f64 {
        self.laid
    }

    /// Mean thickness above the cloth, m.
    #[must_use]
    pub fn above(&self) -> f64 {
        self.above.iter().sum::<f64>() / PARTS as f64
    }
}

/// Ink on one print, kg: area of the design's frame in m², share of it that is printed (0 to 1), film in m, density
/// in kg/m³.
#[must_use]
pub fn ink_per_print(area: f64, coverage: f64, film: f64, density: f64) -> f64 {
    area * coverage * film * density
}
