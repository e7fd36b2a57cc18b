//! How lots of one cloth differ in the dye that they bring to a print.
//!
//! Dye comes from two sources that vary apart from each other: what heat frees from the fibre, `H`, and what lies loose
//! on the yarns and comes along with any cure, however cool, `L`. Both are log-normal about what the physics says:
//!
//! ```text
//! A = H exp(s_H z1) + L exp(s_L z2)        z1, z2 standard normal
//! P(A > C) = Phi(-zc) + integral to zc of phi(z2) Phi[(ln H - ln(C - L exp(s_L z2))) / s_H] dz2
//! zc = ln(C / L) / s_L
//! ```
//!
//! Beyond `zc` the loose dye alone is enough. The integral is Gauss and Legendre's with sixteen points, which lie
//! closer towards `zc`; its error is under 4e-5 (`tests/dye/lots.rs`).
//!
//! Prints of this very lot that were looked at weigh the lots (Bayes' theorem): each is one cut through the plane of `z1` and
//! `z2`, beyond which its white turns, and what was seen of it is more likely on one side than on the other. So a test of one
//! white speaks of every other on that lot, the more the nearer their cuts lie:
//!
//! ```text
//! P(A > C | seen) = integral of phi(z2) sum over the pieces of z1 between the cuts, each weighed, over the same without A > C
//! ```
//!
//! **Decision:** two sources, and their spreads are those of a lot's dye and of a tub's binding together.
//! **Because:** with one source a print that sees an eighth of the heat hardly ever turns, and shops see otherwise: no
//! single spread fits low-cure whites and hot dryers at once. Lot and tub cannot be told apart: halving what a white
//! binds acts like doubling the dye.
//! **Measured:** never on a print: both spreads are fitted to `data/anchors.json`, which is common practice (2026-12-01).
//! **Reconsider when:** the same lot is printed with two whites often enough to tell lot from tub.

use crate::migration::{Belief, MOST_SEEN, SeenPrint};
use crate::numerics::root::root;
use crate::numerics::{Lanes, normal};

/// Lots that are aged side by side, in standard deviations from the middle one. 1.2816 encloses eight lots in
/// ten between its two signs, 0.6745 half of them; they are closest where the verdict is made, at chances of
/// one in four to one in two hundred.
pub const LOTS: Lanes<8> = Lanes([-2.326_3, -1.281_6, -0.674_5, 0.0, 0.674_5, 1.281_6, 1.8, 2.6]);

/// The middle lot among [`LOTS`].
pub const MIDDLE: usize = 3;
const _: () = assert!(LOTS.0[MIDDLE] == 0.0);

/// Points and weights of Gauss and Legendre's rule of sixteen points on (-1, 1), the positive half.
const POINTS: Lanes<8> = Lanes([
    0.989_400_934_991_650,
    0.944_575_023_073_233,
    0.865_631_202_387_832,
    0.755_404_408_355_003,
    0.617_876_244_402_644,
    0.458_016_777_657_227,
    0.281_603_550_779_259,
    0.095_012_509_837_637,
]);
const WEIGHTS: Lanes<8> = Lanes([
    0.027_152_459_411_754,
    0.062_253_523_938_648,
    0.095_158_511_682_493,
    0.124_628_971_255_534,
    0.149_595_988_816_577,
    0.169_156_519_395_003,
    0.182_603_415_044_924,
    0.189_450_610_455_069,
]);
/// Loose dye is integrated over this many standard deviations.
const WIDE: f64 = 4.0;

/// The dye of the lots of a cloth, as one print meets it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LotDye {
    /// Dye that heat frees in the middle lot, kg/m².
    pub heat: f64,
    /// Loose dye in the middle lot, kg/m².
    pub loose: f64,
    /// Spread of the first between lots, ln units.
    pub heat_spread: f64,
    /// Spread of the second.
    pub loose_spread: f64,
    /// Prints of this lot that were looked at.
    pub seen: [Option<SeenPrint>; MOST_SEEN],
}

impl LotDye {
    /// Of a cloth whose record gives so much freed and loose dye (kg/m²), by what is believed of its lot.
    #[must_use]
    pub fn new(heat: f64, loose: f64, belief: &Belief) -> Self {
        Self {
            heat: (heat * belief.heat.shift.exp()).max(1e-15),
            loose: (loose * belief.loose.shift.exp()).max(1e-15),
            heat_spread: belief.heat.spread,
            loose_spread: belief.loose.spread,
            seen: belief.seen,
        }
    }

    /// Both sources of the middle lot, kg/m².
    #[must_use]
    pub fn sum(&self) -> f64 {
        self.heat + self.loose
    }

    /// The same lots where heat frees `times` as much.
    #[must_use]
    pub fn heated(&self, times: f64) -> Self {
        Self { heat: self.heat * times, ..*self }
    }

    /// Share of lots that bring more than `critical` kg/m², 0 to 1.
    #[must_use]
    pub fn share_over(&self, critical: f64) -> f64 {
        let critical = critical.max(1e-15);
        if self.seen[0].is_some() {
            return self.share_over_after(critical);
        }
        let alone = (critical / self.loose).ln() / self.loose_spread;
        let enough = normal::cumulative(-alone);
        let end = alone.min(WIDE);
        if end <= -WIDE {
            return enough;
        }
        let width = end + WIDE;
        let half = |points: Lanes<8>| {
            let near = points * 0.5 + 0.5;
            let z = near * near * -width + end;
            let left = (-(z * self.loose_spread).exp() * self.loose + critical).max(Lanes::splat(1e-300));
            let freed = normal::cumulative_lanes((-left.ln() + self.heat.ln()) * self.heat_spread.recip());
            let density = (z * z * -0.5).exp() * near * WEIGHTS;
            (0..8).map(|i| (density * freed)[i]).sum::<f64>()
        };
        const ROOT_TWO_PI: f64 = 2.506_628_274_631_000_5;
        let integral = (half(POINTS) + half(-POINTS)) * width / ROOT_TWO_PI;
        (enough + integral).clamp(0.0, 1.0)
    }

    /// The same where prints of this lot were looked at.
    fn share_over_after(&self, critical: f64) -> f64 {
        // Loose dye that is enough by itself, for each film: the integral is taken between these, closest below each.
        let enough = |loose: f64| (-loose.ln() / self.loose_spread).clamp(-WIDE, WIDE);
        let mut ends = [WIDE; MOST_SEEN + 2];
        ends[0] = enough(self.loose / critical);
        for (end, seen) in ends[1..].iter_mut().zip(self.seen.iter().flatten()) {
            *end = enough(seen.loose);
        }
        ends.sort_by(f64::total_cmp);
        let (mut over, mut all, mut from) = (0.0, 0.0, -WIDE);
        for end in ends.into_iter().filter(|end| *end > -WIDE) {
            for (i, sign) in (0..8).flat_map(|i| [(i, 1.0), (i, -1.0)]) {
                let near = 0.5 + 0.5 * sign * POINTS[i];
                let z = end - (end - from) * near * near;
                let weight = (end - from) * near * (-0.5 * z * z).exp() * WEIGHTS[i];
                let [bad, good] = self.weighed(critical, (self.loose_spread * z).exp());
                over += weight * bad;
                all += weight * (bad + good);
            }
            from = end;
        }
        (over / all.max(1e-300)).clamp(0.0, 1.0)
    }

    /// Where loose dye is `times` that of the middle lot: the weight of lots over `critical` kg/m², and of the others.
    fn weighed(&self, critical: f64, times: f64) -> [f64; 2] {
        // Deviation of the freed dye beyond which a film turns.
        let cut = |heat: f64, loose: f64| {
            let left = 1.0 - loose * times;
            if left > 0.0 { (left / heat).ln() / self.heat_spread } else { f64::NEG_INFINITY }
        };
        let own = cut(self.heat / critical, self.loose / critical);
        let cuts = self.seen.map(|seen| seen.map_or(f64::INFINITY, |seen| cut(seen.heat, seen.loose)));
        let mut ends = [own, f64::INFINITY, cuts[0], cuts[1], cuts[2], cuts[3]];
        ends.sort_by(f64::total_cmp);
        let (mut from, mut below) = (f64::NEG_INFINITY, 0.0);
        let mut weights = [0.0; 2];
        for end in ends {
            let until = normal::cumulative(end);
            let likely: f64 = self
                .seen
                .iter()
                .zip(cuts)
                .filter_map(|(seen, cut)| Some((seen.as_ref()?, cut)))
                .map(|(seen, cut)| seen.likely[usize::from(from < cut)])
                .product();
            weights[usize::from(from < own)] += likely * (until - below);
            (from, below) = (end, until);
        }
        weights
    }

    /// Dye of the lot that stands `z` standard deviations from the middle one, -2.6 to 2.6, kg/m²: the share of lots that
    /// bring more is that of a normal variable over `z`.
    #[must_use]
    pub fn at(&self, z: f64) -> f64 {
        let share = normal::cumulative(-z).clamp(1e-9, 1.0 - 1e-9);
        let logit = |share: f64| (share / (1.0 - share)).ln();
        let over = |ln: f64| logit(self.share_over(ln.exp()).clamp(1e-12, 1.0 - 1e-12)) - logit(share);
        // No lot brings less than either source alone, and few more than both where each is rarer than asked.
        let source =
            |z: f64| (self.heat * (self.heat_spread * z).exp(), self.loose * (self.loose_spread * z).exp());
        let wide = if self.seen[0].is_some() { WIDE } else { 0.0 };
        let (heat, loose) = source(z - wide);
        let low = heat.max(loose).ln() - 1e-6;
        let (heat, loose) = source(z + 1.2 + wide);
        root(low, (heat + loose).ln(), 1e-5, over).exp()
    }

    /// Dye of each of [`LOTS`], kg/m².
    #[must_use]
    pub fn lots(&self) -> Lanes<8> {
        LOTS.map(|z| self.at(z))
    }

    /// Chance that a print turns that `critical` kg/m² of dye turn, 0 to 1; `lapse` of all prints fail for reasons that no
    /// model sees.
    #[must_use]
    pub fn chance(&self, critical: f64, lapse: f64) -> f64 {
        lapse + (1.0 - 2.0 * lapse) * self.share_over(critical)
    }
}
