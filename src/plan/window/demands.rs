//! What a set point must keep, as plain values and in the form that a window's cells have.

use super::cell::{Cell, larger, logit};
use super::must_fuse::{hardest, must_fuse};
use super::outcome::Outcome;
use super::price::Price;
use crate::ink::{CureKinetics, White};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::textile::moisture;

/// What a set point must keep, for one white on one cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demands {
    /// Which of the window's kinetics must fuse: ordinary, low-cure.
    pub must_fuse: [bool; 2],
    /// Fused share needed at the film's bottom, 0 to 1.
    pub fused: f64,
    /// Highest scorch index that passes; infinite for cloth that does not yellow.
    pub scorch: f64,
    /// Highest film temperature that passes, K.
    pub film: f64,
    /// Highest cloth temperature that passes, K; infinite where the cloth withstands any cure.
    pub cloth: f64,
    /// Whether the cloth has dye that the heat moves: then its amount counts in the choice of a set point.
    pub bleeds: bool,
    /// Price of each e-fold of dwell, beside that of an unusual one: [`HURRY`](Self::HURRY) where the order asks
    /// for speed, else 0.
    pub pace: f64,
    /// What heat, time and the risk of under-cure cost in the choice of a set point.
    pub price: Price,
}

/// Most that the logarithm of a crowding counts: where no setting keeps a limit, how far each is beyond it does
/// not outweigh everything else. Chosen.
const MOST_CROWDING: f64 = 2.0;

impl Demands {
    /// Price of each e-fold of dwell where the order asks for speed: a sixth off the usual dwell. Chosen.
    pub const HURRY: f64 = 2.0;

    /// The demands of a white on a cloth, of an order that does not ask for speed.
    #[must_use]
    pub fn usual(job: &Job, cloth: &Cloth, white: &White) -> Self {
        let (rules, must_fuse) = (&job.rules, must_fuse(job, white.low_cure));
        let shrink = cloth.shrinks_above.map(|limit| limit + rules.shrink_allowed / rules.shrink_slope);
        let soften = cloth.yields().map(|(_, limit)| limit);
        Self {
            must_fuse,
            fused: rules.fused,
            // What a later heat yellows is left to it.
            scorch: if cloth.scorches {
                (rules.scorch - job.yellows_later()).max(1e-6)
            } else {
                f64::INFINITY
            },
            film: rules.film_heat,
            cloth: shrink.into_iter().chain(soften).fold(f64::INFINITY, f64::min),
            bleeds: cloth.dyed.is_some(),
            pace: 0.0,
            price: Price::of(
                &job.dryer,
                &hardest(job, white, must_fuse),
                cloth.fabric.areal_mass,
                moisture::regain(job.order.shop.humidity_percent / 100.0, cloth.fabric.regain_65),
            ),
        }
    }

    /// The same demands for a low-cure ink, the second of `kinetics`, in the place of an ordinary one.
    pub fn for_low_cure(&self, kinetics: &[CureKinetics; 2]) -> Self {
        Self { must_fuse: [false, true], price: self.price.for_ink(&kinetics[1]), ..*self }
    }

    /// Fused share that counts: the least of the inks that must fuse, 0 to 1.
    #[must_use]
    pub fn fused_of(&self, outcome: &Outcome) -> f64 {
        let needed = outcome.fused.iter().zip(self.must_fuse).filter(|(_, must)| *must);
        needed.map(|(fused, _)| *fused).fold(1.0, f64::min)
    }

    /// True if an outcome keeps every demand.
    #[must_use]
    pub fn holds(&self, outcome: &Outcome) -> bool {
        self.fused_of(outcome) >= self.fused
            && outcome.scorch <= self.scorch
            && outcome.film_peak <= self.film
            && outcome.cloth_peak <= self.cloth
    }

    /// All of them as bits, for a cache key; prices follow from the dryer and the inks, which the key holds too.
    pub fn bits(&self) -> [u64; 8] {
        let Self { must_fuse: [ordinary, low], fused, scorch, film, cloth, bleeds, pace, .. } = *self;
        let numbers = [fused, scorch, film, cloth, pace].map(f64::to_bits);
        let [fused, scorch, film, cloth, pace] = numbers;
        [ordinary.into(), low.into(), fused, scorch, film, cloth, bleeds.into(), pace]
    }

    /// The same in the form that cells have.
    pub fn limits(&self) -> CellLimits {
        CellLimits {
            must_fuse: self.must_fuse,
            fused: logit(self.fused),
            scorch: self.scorch.ln(),
            film: self.film,
            cloth: self.cloth,
        }
    }
}

/// Demands as a window's cells keep their values: logit of the fused share, kelvins, logarithm of the scorch
/// index.
#[derive(Clone, Copy, Debug)]
pub struct CellLimits {
    must_fuse: [bool; 2],
    fused: f64,
    scorch: f64,
    film: f64,
    cloth: f64,
}

impl CellLimits {
    /// Logit of the fused share that counts.
    fn fused_of(&self, cell: &Cell) -> f64 {
        let [ordinary, low] = cell.fused();
        match self.must_fuse {
            [true, true] if low < ordinary => low,
            [true, _] => ordinary,
            [false, true] => low,
            [false, false] => f64::INFINITY,
        }
    }

    /// True if a cell keeps every demand.
    pub fn hold(&self, cell: &Cell) -> bool {
        self.hold_cold(cell) && self.hold_hot(cell)
    }

    /// True if a cell is fused: the demand that the cold corner tests.
    pub fn hold_cold(&self, cell: &Cell) -> bool {
        self.fused_of(cell) >= self.fused
    }

    /// True if neither film nor cloth is too hot: the demands that the hot corner tests.
    pub fn hold_hot(&self, cell: &Cell) -> bool {
        cell.scorch() <= self.scorch && cell.film_peak() <= self.film && cell.cloth_peak() <= self.cloth
    }

    /// Logit of the fused share over what is needed.
    pub fn fused_over(&self, cell: &Cell) -> f64 {
        self.fused_of(cell) - self.fused
    }

    /// How near the hot corner of the drift and a belt stop come to their limits, and the risk that the film
    /// does not fuse (by its logarithm): the terms `crowding` and `risk` of the cost in
    /// [`robust`](super::robust::robust).
    pub fn crowding_and_risk(&self, hot: &[Cell; 2], ln_risk: f64) -> f64 {
        let most = |of: fn(&Cell) -> f64| larger(of(&hot[0]), of(&hot[1]));
        let Lanes([risk, film, cloth, scorch]) = Lanes([
            ln_risk,
            ((most(Cell::film_peak) - self.film) / 15.0).min(MOST_CROWDING),
            ((most(Cell::cloth_peak) - self.cloth) / 15.0).min(MOST_CROWDING),
            most(Cell::scorch) - self.scorch,
        ])
        .exp();
        let scorch = if self.scorch.is_finite() {
            Lanes([(3.0 * (scorch - 1.0)).min(MOST_CROWDING)]).exp()[0]
        } else {
            0.0
        };
        risk + film + cloth + scorch
    }
}
