//! From the dye that arrives to the chance that the white turns.
//!
//! ```text
//! dye that arrives -> less what the white binds -> spread to the top by the day that matters -> colour difference
//! ```
//!
//! Lots differ ([`LotDye`](super::LotDye)). The print fails in those lots whose dye passes the critical amount, the one that
//! makes the colour difference equal its limit; and a small share fails for reasons that no model sees:
//!
//! ```text
//! P = e + (1 - 2 e) P(A > A_critical)
//! ```
//!
//! So one mechanism gives the band that is shown and the chance that decides. Physics gives the ratios; the
//! level (what a white binds) is fitted to frequencies of `data/anchors.json`, which are common practice, not
//! measured: `tests/dye/anchors.rs`.
//!
//! **Decision:** physics gives the ratios, the trade's frequencies give the level.
//! **Because:** no measurement of what a white binds was found.
//! **Measured:** never on a print: `data/anchors.json` is common practice, and says so (2026-11-25).
//! **Reconsider when:** a shop or a laboratory measures the dye that a white takes up.

use super::lots::MIDDLE;
use super::reach::Reach;
use crate::numerics::Lanes;
use crate::numerics::root::root;
use crate::optics::{DyeAbsorption, FreshPrint, Grade, staining_grade};
use crate::quantity::Band;

/// A white print and the dye that reaches its top: from dye that arrives to colour.
#[derive(Clone, Debug)]
pub struct BleedPath<'a> {
    /// The print as it left the press.
    pub fresh: &'a FreshPrint,
    /// Absorption of the travelling dye.
    pub dye: &'a DyeAbsorption,
    /// How much of it reaches the top by the day that matters.
    pub reach: Reach,
}

/// Most dye in a top layer that is evaluated, kg/m³: beyond it the print is no longer a white.
pub const MOST: f64 = 3.0;

/// Dye in the top layer at which the colour difference reaches `limit`, kg/m³; [`MOST`] if it never does. The
/// curve rises and is concave, so that regula falsi (Illinois variant) needs a few steps.
#[must_use]
pub fn visible(fresh: &FreshPrint, dye: &DyeAbsorption, limit: f64) -> f64 {
    root(0.0, MOST, 1e-7 * limit, |top| fresh.bleed_difference(dye, top) - limit)
}

impl BleedPath<'_> {
    /// Staining grade of the white for `arrived` kg/m² of dye, as a customer may write it into an order. It
    /// forgives a tint that [`Self::difference`] shows.
    #[must_use]
    pub fn grade(&self, arrived: f64) -> Grade {
        let top = self.reach.top(arrived).min(MOST);
        staining_grade(self.fresh.lab(), self.fresh.stained(self.dye, top))
    }

    /// Colour difference of the white for `arrived` kg/m² of dye, ΔE00.
    #[must_use]
    pub fn difference(&self, arrived: f64) -> f64 {
        self.fresh.bleed_difference(self.dye, self.reach.top(arrived).min(MOST))
    }

    /// Dye at which the colour difference reaches `limit`, kg/m².
    #[must_use]
    pub fn critical(&self, limit: f64) -> f64 {
        self.reach.arrives_for(visible(self.fresh, self.dye, limit))
    }

    /// Colour difference as a band over lots that encloses eight in ten.
    #[must_use]
    pub fn band(&self, lots: &Lanes<8>) -> Band {
        Band { low: lots[1], likely: lots[MIDDLE], high: lots[5] }.map(|dye| self.difference(dye))
    }
}

/// Chance after a test of this very lot and setting in which some (`turned`) or none of the pieces turned.
#[must_use]
pub fn after_lot_test(before: f64, turned: bool, power: f64, false_alarm: f64) -> f64 {
    if turned { after(before, power, false_alarm) } else { after(before, 1.0 - power, 1.0 - false_alarm) }
}

/// Bayes' theorem: the chance after an observation that has probability `fails` in a lot that fails and
/// `holds` in one that holds.
fn after(before: f64, fails: f64, holds: f64) -> f64 {
    before * fails / (before * fails + (1.0 - before) * holds)
}
