//! How much ink a stroke deposits, and how it lies on the cloth.
//!
//! ```text
//! film of a stroke     f = transfer · V               a plastisol loses nothing on curing: wet = dry
//! at a stencil's edge  f + e (1 − x/E)                e emulsion over mesh, x < E from the edge
//! sunk into the cloth  s(u) = 0.7 u · standing        u from 0 (between the yarns) to 1 (over their crowns)
//! above the cloth      max(f − s, 0.1 f)              summed over the strokes
//! ```
//!
//! A film on cloth is uneven: part of it sinks between yarns and loops, so that the rest is thin over
//! their crowns and thick between them. The depth is taken as spread evenly from zero to seven tenths of
//! the height of nap or loops that is still upright (assumed, no source; it gives two strokes for a dark
//! jersey and one for a pale one, as the trade knows it). After print-flash-print the second stroke lies
//! on a film: it loses ink only to the nap that the first has not laid down ([`standing`]), and none on
//! smooth cloth.
//!
//! Transfer: a study of contact screen printing found that the mesh decides the deposit and that its
//! openings are about half emptied ("Fundamental investigations into screen printing", doctoral thesis,
//! abstract read): 0.4 to 0.7 of V, best taken from a weighed print ([`Weighing`](super::Weighing)).
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

/// Share of the theoretical volume that a stroke leaves on the cloth if the shop has not weighed a print
/// (0.4 to 0.7: the doctoral study above, the rest common practice, no source). High in its range on
/// purpose: the trade knows how often cloth bleeds for films of 90 to 110 µm, and at 0.65 the coarsest
/// mesh of the library (32/cm) deposits 96 µm in two strokes; 43/cm deposits 72 µm and would need a
/// transfer of 0.82 to 1.
pub const USUAL_TRANSFER: f64 = 0.65;

/// Depth to which a stroke sinks over a crown, as a share of the height of nap or loops (0.4 to 1).
/// Assumed.
const SINKING_DEPTH: f64 = 0.7;
/// Least share of a stroke that stays above the cloth (0.05 to 0.2). Assumed.
const LEAST_ABOVE: f64 = 0.1;
/// Distance from a stencil's edge within which it lifts the squeegee, m (1e-3 to 1.5e-3): a line narrower
/// than two or three millimetres prints thicker over its whole width. Common practice, no source.
const EDGE_WIDTH: f64 = 1.25e-3;
/// Number of parts of equal area by which the spread over the face is summed.
const PARTS: usize = 5;

/// Film after `strokes` strokes inside a wide area, m. `transfer` within [`TRANSFER`].
///
/// # Examples
/// ```
/// use whitehold::ink::{DepositedFilm, Mesh, Substrate, USUAL_TRANSFER, deposit};
/// use whitehold::library::starter;
///
/// let library = starter().unwrap();
/// let mesh = Mesh::try_from(&library.meshes[0]).unwrap();
/// let stroke = deposit(&mesh, USUAL_TRANSFER, 1);
///
/// // On a card all of it stays above the surface; a nap of 60 µm takes a part of the first stroke.
/// let on_card = DepositedFilm::new(stroke, 2, &Substrate::SMOOTH);
/// let on_cloth = DepositedFilm::new(stroke, 2, &Substrate { nap: 60e-6, ..Substrate::SMOOTH });
/// assert_eq!(on_card.laid(), on_cloth.laid());
/// assert!(on_cloth.above() < on_card.above());
/// ```
#[must_use]
pub fn deposit(mesh: &Mesh, transfer: f64, strokes: u32) -> f64 {
    transfer * mesh.volume() * f64::from(strokes)
}

/// Film that the stencil adds to each stroke, averaged over a line of this width (m, 0 and up), m.
///
/// Nearly all of `over_mesh` in a fine line, nearly zero in a wide area.
#[must_use]
pub fn stencil_gain(over_mesh: f64, width: f64) -> f64 {
    if width < 2.0 * EDGE_WIDTH {
        over_mesh * (1.0 - width / (4.0 * EDGE_WIDTH))
    } else {
        over_mesh * EDGE_WIDTH / width
    }
}

/// The surface that is printed on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Substrate {
    /// Height of nap or loops, m (0 and up).
    pub nap: f64,
    /// Flashed film on it, m (0 and up).
    pub film: f64,
    /// How well the ink holds fibres down; 1 for the cotton white.
    pub body: f64,
}

impl Substrate {
    /// A surface without nap, such as a card.
    pub const SMOOTH: Self = Self { nap: 0.0, film: 0.0, body: 1.0 };
}

/// A film on cloth: its thickness over parts of the face of equal area, the thickest first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DepositedFilm {
    above: [f64; PARTS],
    laid: f64,
}

impl DepositedFilm {
    /// Strokes of `film` metres each (0 and up) on this substrate, flashed in between.
    #[must_use]
    pub fn new(film: f64, strokes: u32, substrate: &Substrate) -> Self {
        let mut above = [0.0; PARTS];
        for stroke in 0..strokes {
            let upright = standing(substrate.nap, substrate.film + film * f64::from(stroke), substrate.body);
            for (part, i) in above.iter_mut().zip(0..) {
                let crown = (f64::from(i) + 0.5) / PARTS as f64;
                *part += (film - SINKING_DEPTH * crown * upright).max(LEAST_ABOVE * film);
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

    /// The whole deposit, m.
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

/// Ink on one print, kg: area of the design's frame in m², share of it that is printed (0 to 1), film in
/// m, density in kg/m³.
#[must_use]
pub fn ink_per_print(area: f64, coverage: f64, film: f64, density: f64) -> f64 {
    area * coverage * film * density
}
