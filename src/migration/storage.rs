//! The months after: where a print lies, how warm, and against what.

use super::{Dye, DyeProfile, DyeStep, FilmDiffusion};
use crate::numerics::Lanes;

/// Seconds of a day.
pub const DAY: f64 = 86_400.0;

/// A stay at one place: steady, or swinging over the day between two temperatures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StoragePeriod {
    /// How long, s; infinity for the last.
    pub seconds: f64,
    /// Coolest, K.
    pub low: f64,
    /// Warmest, K.
    pub high: f64,
}

impl StoragePeriod {
    /// At one temperature, K.
    #[must_use]
    pub const fn steady(seconds: f64, temperature: f64) -> Self {
        Self { seconds, low: temperature, high: temperature }
    }

    /// Mean of a rate over the swing: a sine, at eight phases. Rates bend upward, so the warm hours make most of it.
    fn mean(&self, rate: impl Fn(f64) -> f64) -> f64 {
        if self.high - self.low < 1e-9 {
            return rate(self.low);
        }
        let (middle, half) = (0.5 * (self.low + self.high), 0.5 * (self.high - self.low));
        let phase = |i: u32| (f64::from(i) + 0.5) * std::f64::consts::TAU / 8.0;
        (0..8).map(|i| rate(middle + half * phase(i).sin())).sum::<f64>() / 8.0
    }
}

/// A stack that went together while still hot, in stays of a shorter and shorter lead over the room.
///
/// `T = room + (stack - room) exp(-t / 2 h)`. Stack 65 °C (55 to 80), two hours (1 to 5): assumed, from how long a pile
/// of shirts stays warm to the hand.
#[must_use]
pub fn hot_stack(room: f64) -> [StoragePeriod; 5] {
    const STACK: f64 = 338.15;
    const COOLS: f64 = 7200.0;
    std::array::from_fn(|i| {
        let lead = (STACK - room).max(0.0) * (-(i as f64 + 0.5) * 0.6).exp();
        StoragePeriod::steady(0.6 * COOLS, room + lead)
    })
}

/// A container in summer, `seconds` of it: 25 °C at night to 60 °C in the afternoon sun. Assumed; loggers on summer
/// roads read 50 to 65 °C under the roof, from memory.
#[must_use]
pub const fn summer_container(seconds: f64) -> StoragePeriod {
    StoragePeriod { seconds, low: 298.15, high: 333.15 }
}

/// How fast dye moves on the shelf, lane by lane.
#[derive(Clone, Copy, Debug)]
pub struct Storage<const L: usize> {
    /// The dye.
    pub dye: Dye,
    /// How it spreads in the film as it came out of the heat.
    pub diffusion: FilmDiffusion,
    /// How much faster than that in each lane.
    pub film: Lanes<L>,
    /// Share of dyed polyester in the own cloth's face, times what makes this lane's vapour more or less.
    pub own: Lanes<L>,
    /// The same of the facing cloth; 0 where the print lies open.
    pub facing: Lanes<L>,
}

impl<const L: usize> Storage<L> {
    /// Takes the film from one moment to a later one, both in seconds since it was put down, a step for each stay in
    /// between.
    pub fn store(&self, profile: &mut DyeProfile<L>, stays: &[StoragePeriod], from: f64, to: f64) {
        let mut begins = 0.0;
        for stay in stays {
            let ends = begins + stay.seconds;
            let seconds = to.min(ends) - from.max(begins);
            if seconds > 0.0 {
                profile.step(&self.of(stay, seconds));
            }
            begins = ends;
        }
    }

    /// What `seconds` of a stay do.
    #[must_use]
    pub fn of(&self, stay: &StoragePeriod, seconds: f64) -> DyeStep<L> {
        let at = |temperature: f64| Lanes::<1>::splat(temperature);
        let path = stay.mean(|temperature| self.diffusion.at(at(temperature))[0]) * seconds;
        let vapour = stay.mean(|temperature| self.dye.vapour_flux(at(temperature))[0]) * seconds;
        DyeStep {
            path: self.film * path,
            arrives: Lanes::ZERO,
            own: self.own * vapour,
            facing: self.facing * vapour,
        }
    }
}
