//! The rim: white that extends beyond its blocker lies on bare cloth and bleeds along the edge.
//!
//! It is the same film without a blocker under it, aged like the rest; thicker where the rim is narrow,
//! because the screen rides on the blocker and ink fills the step beside it. How much of its tint is seen
//! depends on its width, because an eye mixes colours that lie close together. A line of width `w`, seen
//! through a blur `exp(-(x/s)²)`, keeps at its middle the share
//!
//! ```text
//! seen = erf(w / 2 s)
//! ```
//!
//! of its colour difference. A print turns by the day that matters if its middle or its rim does; one lot's
//! dye drives both, so the lesser of the two critical amounts decides.
//!
//! **Decision:** the rim is judged with the print it belongs to, by the lesser critical amount.
//! **Because:** one lot's dye drives both.
//! **Measured:** nothing: how much of so narrow a line an eye sees, and that ink fills the blocker's step,
//! are assumed (2026-11-25).
//! **Reconsider when:** a measured print with a rim tells either of the two.

use super::ageing::{AGEING_CASES, Ageing, AgeingCases};
use super::chance::{BleedPath, visible};
use super::reach::Reach;
use crate::numerics::normal::complementary_error;
use crate::optics::{DyeAbsorption, FreshPrint};
use crate::plan::order::{Cloth, Job, Rules};
use crate::plan::recipe::Candidate;
use crate::quantity::Band;

/// Blur of an eye for red against green at arm's length, m: 0.0392 degrees at 0.6 m. The angle is the narrow
/// part of that channel in S-CIELAB (Zhang and Wandell 1997), from memory; its wide part, which would hide
/// more, is left out. 0.3 to 0.7 mm between 0.4 and 1 m; the distance is assumed.
const BLUR: f64 = 0.41e-3;

/// Width over which a screen that rides on the blocker spans its step, m: up to there ink fills the step, the
/// less the further out. Some three threads of a white's mesh; 0.2 to 1 mm, assumed.
const BRIDGED: f64 = 0.5e-3;

/// White beyond its blocker.
#[derive(Clone, Debug)]
pub struct Rim {
    /// The film there, ready to be aged.
    pub ageing: Ageing,
    /// What it looks like when fresh.
    pub fresh: FreshPrint,
    /// How wide it is, m.
    pub width: f64,
    /// Share of its colour difference that an eye sees, 0 to 1.
    pub seen: f64,
}

/// Share of a line's colour difference that an eye sees at this width (m), 0 to 1.
#[must_use]
pub fn seen(width: f64) -> f64 {
    1.0 - complementary_error(width.max(0.0) / (2.0 * BLUR))
}

/// Share of the blocker's step that ink fills, as a mean over the width of the rim (m), 0 to 1.
fn filled(width: f64) -> f64 {
    if width < BRIDGED { 1.0 - 0.5 * width / BRIDGED } else { 0.5 * BRIDGED / width }
}

impl Rim {
    /// The rim of a candidate; `None` without a blocker or an overhang, or if the white's optical constants
    /// are not valid.
    pub fn new(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>, ageing: &Ageing) -> Option<Self> {
        let width = job.order.print.overhang_mm * 1e-3;
        if width <= 0.0 {
            return None;
        }
        let white = candidate.white.optics().ok()?;
        let filled = filled(width);
        let film = candidate.film + filled * candidate.blocker?.film;
        let fresh = FreshPrint::new(film, &white, &cloth.spectrum);
        Some(Self { ageing: ageing.rim(filled)?, fresh, width, seen: seen(width) })
    }

    /// Dye in the top layer at which the rim is seen to differ by `limit`, kg/m³.
    #[must_use]
    pub fn visible(&self, dye: &DyeAbsorption, limit: f64) -> f64 {
        visible(&self.fresh, dye, limit / self.seen.max(1e-3))
    }

    /// Dye that must arrive for the rim to be seen to differ by `limit`, kg/m².
    #[must_use]
    pub fn critical(&self, dye: &DyeAbsorption, limit: f64, reach: &Reach) -> f64 {
        reach.arrives_for(self.visible(dye, limit))
    }

    /// Dye that must arrive for the rim to reach the limit of the rules (kg/m²), and the colour difference
    /// that an eye sees, ΔE00 as a band over lots.
    pub fn critical_and_band(
        &self,
        dye: &DyeAbsorption,
        cases: &AgeingCases<AGEING_CASES>,
        rules: &Rules,
    ) -> (f64, Band) {
        let path = BleedPath { fresh: &self.fresh, dye, reach: self.ageing.reach(cases) };
        let band = path.band(&cases.arrives).map(|shift| shift * self.seen);
        (self.critical(dye, rules.bleed, &path.reach), band)
    }
}
