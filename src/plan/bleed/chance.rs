//! From the dye that arrives to the chance that the white turns.
//!
//! ```text
//! dye that arrives -> less what the white binds -> spread to the top by the day that matters -> colour difference
//! ```
//!
//! Lots differ: the dye that arrives is log-normal about what the physics says, with the spread that fits the
//! trade's frequencies. The print fails in those lots whose dye passes the critical amount, the one that
//! makes the colour difference equal its limit; and a small share fails for reasons that no model sees:
//!
//! ```text
//! P = e + (1 - 2 e) Phi[(ln A - ln A_critical) / sigma]
//! ```
//!
//! `sigma` is the spread of fabric-lot release and ink-tub binding together. They cannot be told apart: below
//! saturation, halving the ink's capacity acts like doubling the dye released, and the fitted frequencies
//! contain both. This is why the chance rises slowly with the heat while the likely colour difference stays
//! at 0 and then jumps: the white of the middle lot is saturated, and nothing else has changed.
//!
//! So one mechanism gives the band that is shown and the chance that decides. Physics gives the ratios; the
//! level (what a white binds) is fitted to frequencies of `data/anchors.json`, which are common practice, not
//! measured: `tests/dye/anchors.rs`.
//!
//! **Decision:** physics gives the ratios, the trade's frequencies give the level.
//! **Because:** no measurement of what a white binds was found.
//! **Measured:** never on a print: `data/anchors.json` is common practice, and says so (2026-11-25).
//! **Reconsider when:** a shop or a laboratory measures the dye that a white takes up.

use super::reach::Reach;
use crate::numerics::{Lanes, normal};
use crate::optics::{DyeAbsorption, FreshPrint, Grade, staining_grade};
use crate::plan::order::Rules;
use crate::quantity::Band;

/// Lots that are aged side by side, in standard deviations from the middle one. 1.2816 encloses eight lots in
/// ten between its two signs, 0.6745 half of them; they are closest where the verdict is made, at chances of
/// one in four to one in two hundred.
pub const LOTS: Lanes<8> = Lanes([-2.326_3, -1.281_6, -0.674_5, 0.0, 0.674_5, 1.281_6, 1.8, 2.6]);

/// Dye that travels in each of the eight lots that are aged side by side, as a multiple of the middle one's.
#[must_use]
pub fn lots(rules: &Rules) -> Lanes<8> {
    (LOTS * rules.lot_spread).exp()
}

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
    let over = |top: f64| fresh.bleed_difference(dye, top) - limit;
    let [mut low, mut high] = [0.0, MOST].map(|top| (top, over(top)));
    if low.1 >= 0.0 || high.1 <= 0.0 {
        return if high.1 <= 0.0 { MOST } else { 0.0 };
    }
    let mut fell_short = None;
    for _ in 0..60 {
        let top = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
        let found = over(top);
        if found.abs() < 1e-7 * limit || high.0 - low.0 < 1e-9 {
            return top;
        }
        let short = found < 0.0;
        // Illinois variant: an end that is kept twice counts half.
        let weight = if fell_short == Some(short) { 0.5 } else { 1.0 };
        if short {
            (low, high.1) = ((top, found), weight * high.1);
        } else {
            (high, low.1) = ((top, found), weight * low.1);
        }
        fell_short = Some(short);
    }
    0.5 * (low.0 + high.0)
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

    /// Colour difference as a band over lots, for `arrived` kg/m² in the middle lot.
    #[must_use]
    pub fn band(&self, arrived: f64, rules: &Rules) -> Band {
        // Encloses eight lots in ten.
        let spread = (LOTS[5] * rules.lot_spread).exp();
        Band { low: arrived / spread, likely: arrived, high: arrived * spread }
            .map(|dye| self.difference(dye))
    }
}

/// Chance that a lot's dye exceeds what the white can take, 0 to 1: `arrived` in the middle lot against
/// `critical`, kg/m².
#[must_use]
pub fn chance(arrived: f64, critical: f64, rules: &Rules) -> f64 {
    let share = normal::cumulative((arrived.max(1e-12) / critical.max(1e-12)).ln() / rules.lot_spread);
    rules.lapse + (1.0 - 2.0 * rules.lapse) * share
}

/// Chance for the next print of this lot after `clean` tests of this same lot, or for the next lot after that
/// many clean lots of the article, when a test shows a fault that is there with chance `power`.
///
/// Half of the variance lies between articles and half between the lots of one (assumed); the integral over
/// the article is done on 81 points.
#[must_use]
pub fn after_clean_lots(before: f64, clean: u32, power: f64, rules: &Rules) -> f64 {
    let lapse = rules.lapse;
    let inner = ((before - lapse) / (1.0 - 2.0 * lapse)).clamp(1e-6, 1.0 - 1e-6);
    let middle = normal::quantile(inner) * rules.lot_spread;
    let half = rules.lot_spread * std::f64::consts::FRAC_1_SQRT_2;
    let (mut weight_sum, mut fail_sum) = (0.0, 0.0);
    for i in -40..=40 {
        let z = f64::from(i) * 0.1;
        let fails = lapse + (1.0 - 2.0 * lapse) * normal::cumulative((middle + z * half) / half);
        let seen_clean = (1.0 - power * fails).powi(clean.min(1000) as i32);
        let weight = (-0.5 * z * z).exp() * seen_clean;
        weight_sum += weight;
        fail_sum += weight * fails;
    }
    (fail_sum / weight_sum).clamp(0.0, 1.0)
}

/// Chance after a test of this very lot and setting in which some (`turned`) or none of the pieces turned.
#[must_use]
pub fn after_lot_test(before: f64, turned: bool, power: f64, false_alarm: f64) -> f64 {
    if turned { after(before, power, false_alarm) } else { after(before, 1.0 - power, 1.0 - false_alarm) }
}

/// The same, by how many pieces turned. One piece of several may have been soiled; if a second turns too, the
/// lot is bad.
#[must_use]
pub fn after_lot_pieces(before: f64, [turned, pieces]: [u32; 2], power: f64, rules: &Rules) -> f64 {
    let [bad, good] = rules.second_piece;
    match turned {
        1 if pieces >= 3 => after(before, power * (1.0 - bad), rules.false_alarm * (1.0 - good)),
        2.. if pieces >= 3 => after(before, power * bad, rules.false_alarm * good),
        _ => after_lot_test(before, turned > 0, power, rules.false_alarm),
    }
}

/// Bayes' theorem: the chance after an observation that has probability `fails` in a lot that fails and
/// `holds` in one that holds.
fn after(before: f64, fails: f64, holds: f64) -> f64 {
    before * fails / (before * fails + (1.0 - before) * holds)
}
