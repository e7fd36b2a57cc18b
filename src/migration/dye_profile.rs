//! Dye in the film, from the cloth side to the surface.
//!
//! A part of the dye is bound where it is, in balance with what is free there (Langmuir), and only free dye moves:
//!
//! ```text
//! q_t = (D c_x)_x            q = c + B c / (c + K)            c free, q all, B capacity, kg/m³
//! at the cloth    -D c_x = heat's dye + V_own (a_own - c / c_sat)
//! at the surface   D c_x =               V_facing (a_facing - c / c_sat)       V = integral of f D_air/gap P M/(R T) dt
//! ```
//!
//! Diffusivity and vapour enter only as integrals over time, so a time step is a step of those integrals: a
//! month on a shelf at 25 °C and an hour in an oven are the same kind of step. Finite volumes; time by the two-stage
//! stiffly accurate method of Alexander (SIAM J. Numer. Anal. 14, 1977, 1006; from memory), fitted to the length of the
//! step (`time_step.rs`). Each stage is solved by Newton's method on a tridiagonal system and then put into its own
//! balance once more, so that dye is kept to rounding whatever Newton has left over. Several cases are computed
//! side by side in lanes; nothing is allocated.

use super::time_step::{implicit_share, time_parts};
use super::{Binding, VISIBLE_DEPTH};
use crate::numerics::Lanes;

/// Cells across the film.
pub const CELLS: usize = 20;
/// Cells of them that a blocker takes, where there is one.
const BLOCKER_CELLS: usize = 6;
/// Resistance of a film to emptying through one face, over its resistance from face to face: (2/pi)², for the profile
/// that empties most slowly, a quarter of a cosine wave.
const QUARTER_WAVE: f64 = 4.0 / (std::f64::consts::PI * std::f64::consts::PI);
/// Newton's steps a stage, at most. The balance after them keeps the dye whatever they leave over.
const NEWTON: u32 = 6;
/// Newton's last step, as a share of the most dye in any cell: each step squares the error. Over the
/// demo's week the top layer is then within 2e-6 of Newton's end in 99 films of 100 and within 1.3e-4 in all; the march in
/// time is farther off.
const LAST_STEP: f64 = 1e-3;

/// A layer of the film.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilmLayer {
    /// Thickness, m.
    pub thickness: f64,
    /// Dye that it can bind, kg/m³.
    pub capacity: f64,
    /// Its diffusivity as a multiple of the white's.
    pub diffusivity: f64,
}

/// A cloth that lies against one face of the film, or the air there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AdjacentCloth<const L: usize> {
    /// Activity of its dye, 0 to 1: dye on fibre over saturation. 0 for air that is renewed.
    pub activity: Lanes<L>,
    /// Dye that its upper yarns still carry at that activity, kg/m². Air takes up without end: infinity.
    pub carries: Lanes<L>,
}

impl<const L: usize> AdjacentCloth<L> {
    /// Clean air, or a face that nothing lies against.
    pub const AIR: Self = Self { activity: Lanes::ZERO, carries: Lanes::splat(f64::INFINITY) };
}

/// One step of the march: what happens within it, as integrals over its time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DyeStep<const L: usize> {
    /// `integral of D dt` of the white, m².
    pub path: Lanes<L>,
    /// Dye that heat drives in from the cloth, kg/m².
    pub arrives: Lanes<L>,
    /// `integral of f D_air/gap P M/(R T) dt` to the own cloth, kg/m² at full activity.
    pub own: Lanes<L>,
    /// The same to the facing cloth or the air.
    pub facing: Lanes<L>,
}

impl<const L: usize> DyeStep<L> {
    /// Nothing happens.
    pub const NONE: Self =
        Self { path: Lanes::ZERO, arrives: Lanes::ZERO, own: Lanes::ZERO, facing: Lanes::ZERO };
}

/// The film with its dye.
#[derive(Clone, Copy, Debug)]
pub struct DyeProfile<const L: usize> {
    width: [f64; CELLS],
    capacity: [f64; CELLS],
    /// Conductance between the middles of a cell and of the one below, per unit of path, 1/m; half a cell at the ends.
    couples: [f64; CELLS + 1],
    free: [Lanes<L>; CELLS],
    held: [Lanes<L>; CELLS],
    /// The cloth below.
    pub own: AdjacentCloth<L>,
    /// The cloth above, or the air.
    pub facing: AdjacentCloth<L>,
    /// Dye that came out of the own cloth on the shelf, kg/m²; below zero where it went back.
    pub from_own: Lanes<L>,
    /// Dye that came out of the facing cloth, kg/m²; below zero where it was lost to it or to the air.
    pub from_facing: Lanes<L>,
}

/// Both faces of a step, ready for its stages: conductance and what drives it.
struct Faces<const L: usize> {
    conductance: [Lanes<L>; 2],
    driven: [Lanes<L>; 2],
}

/// What an implicit stage found.
struct ImplicitStage<const L: usize> {
    /// Free dye, kg/m³.
    free: [Lanes<L>; CELLS],
    /// What flows into each cell over the whole step, kg/m³.
    flow: [Lanes<L>; CELLS],
    /// What enters by each face over the whole step but for the heat's dye, kg/m².
    entered: [Lanes<L>; 2],
}

impl<const L: usize> DyeProfile<L> {
    /// Dye in film that is in balance with saturated fibre, kg/m³. The partition between film and fibre is taken as 1
    /// (0.3 to 3): assumed.
    pub const SATURATED: f64 = super::DyedCloth::SATURATION * super::DyedCloth::FIBRE_DENSITY;

    /// A clean film: the white, over a blocker where there is one.
    #[must_use]
    pub fn clean(white: FilmLayer, blocker: Option<FilmLayer>) -> Self {
        let below = if blocker.is_some() { BLOCKER_CELLS } else { 0 };
        let layer = |cell: usize| match blocker {
            Some(blocker) if cell < below => (blocker, below),
            _ => (white, CELLS - below),
        };
        let width = std::array::from_fn(|i| {
            let (layer, cells) = layer(i);
            layer.thickness.max(1e-9) / cells as f64
        });
        // Half a cell's resistance per unit of path, m.
        let half = |i: usize| 0.5 * width[i.min(CELLS - 1)] / layer(i).0.diffusivity.max(1e-9);
        let couples = std::array::from_fn(|i| match i {
            0 => 1.0 / half(0),
            CELLS => 1.0 / half(CELLS - 1),
            _ => 1.0 / (half(i - 1) + half(i)),
        });
        Self {
            width,
            capacity: std::array::from_fn(|i| layer(i).0.capacity.max(0.0)),
            couples,
            free: [Lanes::ZERO; CELLS],
            held: [Lanes::ZERO; CELLS],
            own: AdjacentCloth::AIR,
            facing: AdjacentCloth::AIR,
            from_own: Lanes::ZERO,
            from_facing: Lanes::ZERO,
        }
    }

    /// Thickness of the whole film, m.
    #[must_use]
    pub fn thickness(&self) -> f64 {
        self.width.iter().sum()
    }

    /// All dye in the film, free and bound, kg/m².
    #[must_use]
    pub fn dye(&self) -> Lanes<L> {
        self.held.iter().zip(&self.width).fold(Lanes::ZERO, |sum, (held, &width)| sum + *held * width)
    }

    /// Each cell of one lane, from the cloth up: height of its middle over the cloth, m, and its free and bound dye,
    /// kg/m³.
    pub fn profile(&self, lane: usize) -> impl Iterator<Item = [f64; 3]> + '_ {
        let mut above = 0.0;
        self.width.iter().zip(self.free.iter().zip(&self.held)).map(move |(&width, (free, held))| {
            above += width;
            let free = free[lane].max(0.0);
            [above - 0.5 * width, free, (held[lane] - free).max(0.0)]
        })
    }

    /// Free dye in the film, kg/m².
    #[must_use]
    pub fn free(&self) -> Lanes<L> {
        self.free.iter().zip(&self.width).fold(Lanes::ZERO, |sum, (free, &width)| sum + *free * width)
    }

    /// Mean free dye in the top [`VISIBLE_DEPTH`], or in the whole of a thinner film, kg/m³. Bound dye has been taken
    /// up by what binds it and is not seen: assumed.
    #[must_use]
    pub fn top(&self) -> Lanes<L> {
        let depth = VISIBLE_DEPTH.min(self.thickness());
        let (mut sum, mut left) = (Lanes::ZERO, depth);
        for (free, &width) in self.free.iter().zip(&self.width).rev() {
            let taken = width.min(left);
            sum += *free * taken;
            left -= taken;
        }
        (sum * (1.0 / depth)).max(Lanes::ZERO)
    }

    /// Loads the film evenly with free dye in balance, kg/m³: a start for those who compare.
    pub fn load(&mut self, free: impl Fn(usize) -> Lanes<L>) {
        for (i, cell) in self.free.iter_mut().enumerate() {
            *cell = free(i);
            self.held[i] = *cell + bound(*cell, self.capacity[i]);
        }
    }

    /// One step, in parts of equal length where it could empty the film.
    pub fn step(&mut self, step: &DyeStep<L>) {
        let emptied = self.emptied(step);
        let parts = time_parts(emptied);
        let share = 1.0 / f64::from(parts);
        let part = DyeStep {
            path: step.path * share,
            arrives: step.arrives * share,
            own: step.own * share,
            facing: step.facing * share,
        };
        let implicit = implicit_share(emptied * share);
        for _ in 0..parts {
            self.advance(&part, implicit);
        }
    }

    /// How often a step could empty the film through its faces: the decay exponent of the profile that empties most
    /// slowly, if nothing were bound and nothing came.
    fn emptied(&self, step: &DyeStep<L>) -> Lanes<L> {
        // Resistance of the film to emptying, per unit of path, m.
        let resists = self.couples.iter().map(|couple| 1.0 / couple).sum::<f64>() * QUARTER_WAVE;
        let inside = step.path * (1.0 / resists);
        let through = |vapour: Lanes<L>| {
            let outside = vapour * (1.0 / Self::SATURATED);
            outside * inside / (outside + inside).max(Lanes::splat(1e-300))
        };
        (through(step.own) + through(step.facing)) * (1.0 / self.thickness())
    }

    /// A part of a step.
    fn advance(&mut self, step: &DyeStep<L>, implicit: Lanes<L>) {
        let faces = self.faces(step);
        let explicit = -implicit + 1.0;
        let first = self.stage(step, &faces, implicit, &self.held, self.free);
        // The second stage starts from what the first one's rate has brought.
        let mut from = self.held;
        for (cell, flow) in from.iter_mut().zip(&first.flow) {
            *cell += *flow * explicit;
        }
        let second = self.stage(step, &faces, implicit, &from, first.free);
        for i in 0..CELLS {
            self.held[i] = from[i] + second.flow[i] * implicit;
            self.free[i] = unbound(self.held[i], self.capacity[i]);
        }
        let came = |side: usize| first.entered[side] * explicit + second.entered[side] * implicit;
        let (own, facing) = (came(0), came(1));
        self.from_own += own;
        self.from_facing += facing;
        self.own.gives(own);
        self.facing.gives(facing);
    }

    /// What lies beside the film, through the resistance of half a cell. What the yarns carry runs down within the
    /// step as well, in the form that never overdraws.
    fn faces(&self, step: &DyeStep<L>) -> Faces<L> {
        let face = |vapour: Lanes<L>, adjacent: &AdjacentCloth<L>, couple: f64| {
            let drained = adjacent.activity * vapour / adjacent.carries.max(Lanes::splat(1e-30)) + 1.0;
            let outside = vapour / drained * (1.0 / Self::SATURATED);
            let inside = step.path * couple;
            // Nothing may move inside: then nothing crosses the face either.
            let conductance = outside * inside / (outside + inside).max(Lanes::splat(1e-300));
            (conductance, conductance * adjacent.activity * Self::SATURATED)
        };
        let (below, driven_below) = face(step.own, &self.own, self.couples[0]);
        let (above, driven_above) = face(step.facing, &self.facing, self.couples[CELLS]);
        Faces { conductance: [below, above], driven: [driven_below, driven_above] }
    }

    /// One implicit stage from `from`.
    fn stage(
        &self,
        step: &DyeStep<L>,
        faces: &Faces<L>,
        implicit: Lanes<L>,
        from: &[Lanes<L>; CELLS],
        mut free: [Lanes<L>; CELLS],
    ) -> ImplicitStage<L> {
        let mut flow = self.flow(step, faces, &free);
        for _ in 0..NEWTON {
            // Thomas's elimination of (q'(c) - g L) d = from + g L(c) - q(c), g the implicit share.
            let mut above = [Lanes::ZERO; CELLS];
            let mut change = [Lanes::ZERO; CELLS];
            for i in 0..CELLS {
                let per = implicit * (1.0 / self.width[i]);
                let below_g = if i == 0 { faces.conductance[0] } else { step.path * self.couples[i] };
                let above_g =
                    if i + 1 == CELLS { faces.conductance[1] } else { step.path * self.couples[i + 1] };
                let rest = from[i] + flow[i] * implicit - free[i] - bound(free[i], self.capacity[i]);
                let diagonal = slope(free[i], self.capacity[i]) + (below_g + above_g) * per;
                if i == 0 {
                    let pivot = diagonal.recip();
                    above[i] = above_g * per * pivot;
                    change[i] = rest * pivot;
                } else {
                    let lower = below_g * per;
                    let pivot = (diagonal - lower * above[i - 1]).recip();
                    above[i] = above_g * per * pivot;
                    change[i] = (rest + lower * change[i - 1]) * pivot;
                }
            }
            let mut moved = Lanes::ZERO;
            let mut scale = Lanes::splat(1e-9);
            for i in (0..CELLS).rev() {
                if i + 1 < CELLS {
                    let carried = above[i] * change[i + 1];
                    change[i] += carried;
                }
                // The balance is concave: from above, a tangent may shoot past zero, where there is no dye.
                let next = (free[i] + change[i]).max(free[i] * 0.02);
                moved = moved.max((next - free[i]).abs());
                scale = scale.max(next);
                free[i] = next;
            }
            flow = self.flow(step, faces, &free);
            if (moved / scale).largest() < LAST_STEP {
                break;
            }
        }
        let entered = [
            faces.driven[0] - faces.conductance[0] * free[0],
            faces.driven[1] - faces.conductance[1] * free[CELLS - 1],
        ];
        ImplicitStage { free, flow, entered }
    }

    /// What flows into each cell over the whole step, kg/m³.
    fn flow(&self, step: &DyeStep<L>, faces: &Faces<L>, free: &[Lanes<L>; CELLS]) -> [Lanes<L>; CELLS] {
        let mut into = step.arrives + faces.driven[0] - faces.conductance[0] * free[0];
        let mut flow = [Lanes::ZERO; CELLS];
        for i in 0..CELLS {
            let out = if i + 1 == CELLS {
                faces.conductance[1] * free[i] - faces.driven[1]
            } else {
                (free[i] - free[i + 1]) * step.path * self.couples[i + 1]
            };
            flow[i] = (into - out) * (1.0 / self.width[i]);
            into = out;
        }
        flow
    }
}

impl<const L: usize> AdjacentCloth<L> {
    /// Takes `dye` (kg/m²) out of the yarns: their activity falls with what they carry.
    fn gives(&mut self, dye: Lanes<L>) {
        let left = (self.carries - dye).max(Lanes::ZERO);
        self.activity = Lanes::from_fn(|lane| {
            let full = self.carries[lane];
            let share = if full.is_finite() && full > 0.0 { left[lane] / full } else { 1.0 };
            self.activity[lane] * share
        });
        self.carries = left;
    }
}

/// Dye bound beside `free`, kg/m³. Goes on straight below zero, where only a solver's last digit lies.
#[inline(always)]
fn bound<const L: usize>(free: Lanes<L>, capacity: f64) -> Lanes<L> {
    free / (free.max(Lanes::ZERO) + Binding::HALF_BOUND) * capacity
}

/// Slope of all dye with free dye.
#[inline(always)]
fn slope<const L: usize>(free: Lanes<L>, capacity: f64) -> Lanes<L> {
    let held = (free.max(Lanes::ZERO) + Binding::HALF_BOUND).recip();
    held * held * (capacity * Binding::HALF_BOUND) + 1.0
}

/// Free dye of `held` in all, kg/m³: the positive root of Langmuir's balance, in the form that does not cancel.
#[inline(always)]
fn unbound<const L: usize>(held: Lanes<L>, capacity: f64) -> Lanes<L> {
    let half = Binding::HALF_BOUND;
    let positive = held.max(Lanes::ZERO);
    let b = -positive + (half + capacity);
    let root = (b * b + positive * (4.0 * half)).sqrt();
    // Where b < 0 the sum would cancel, where b > 0 the difference; one of the two is always safe.
    Lanes::from_fn(|lane| {
        if held[lane] <= 0.0 {
            held[lane] / (1.0 + capacity / half)
        } else if b[lane] > 0.0 {
            2.0 * half * positive[lane] / (b[lane] + root[lane])
        } else {
            0.5 * (root[lane] - b[lane])
        }
    })
}
