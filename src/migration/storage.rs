//! Storage: where a print lies in the months after printing, how warm, and against what.

use super::{Dye, DyeProfile, DyeStep, FilmDiffusion};
use crate::numerics::Lanes;

/// Seconds of a day.
pub const DAY: f64 = 86_400.0;

/// A stay at one place, at one temperature or between two over the day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StoragePeriod {
    /// Its duration, s; infinity for the last.
    pub seconds: f64,
    /// Lowest temperature, K.
    pub low: f64,
    /// Highest temperature, K.
    pub high: f64,
}

impl StoragePeriod {
    /// A stay at one temperature, K.
    #[must_use]
    pub const fn steady(seconds: f64, temperature: f64) -> Self {
        Self { seconds, low: temperature, high: temperature }
    }

    /// Mean of a rate over the day, whose temperature follows a sine: eight phases of it. Rates rise steeply with
    /// temperature, so the warm hours contribute most.
    fn mean(&self, rate: impl Fn(f64) -> f64) -> f64 {
        if self.high - self.low < 1e-9 {
            return rate(self.low);
        }
        let (middle, half) = (0.5 * (self.low + self.high), 0.5 * (self.high - self.low));
        let phase = |i: u32| (f64::from(i) + 0.5) * std::f64::consts::TAU / 8.0;
        (0..8).map(|i| rate(middle + half * phase(i).sin())).sum::<f64>() / 8.0
    }
}

/// A stack of garments put together while hot: five stays, each nearer to the temperature of the room.
///
/// `T = room + (stack - room) exp(-t / 2 h)`. Stack at 65 °C (55 to 80), two hours (1 to 5): assumed, from how long a
/// pile of shirts feels warm.
#[must_use]
pub fn hot_stack(room: f64) -> [StoragePeriod; 5] {
    const STACK: f64 = 338.15;
    const COOLS: f64 = 7200.0;
    std::array::from_fn(|i| {
        let lead = (STACK - room).max(0.0) * (-(i as f64 + 0.5) * 0.6).exp();
        StoragePeriod::steady(0.6 * COOLS, room + lead)
    })
}

/// A container in summer for `seconds`: 25 °C at night to 60 °C in the afternoon sun. Assumed; loggers on summer roads
/// read 50 to 65 °C under the roof, from memory.
#[must_use]
pub const fn summer_container(seconds: f64) -> StoragePeriod {
    StoragePeriod { seconds, low: 298.15, high: 333.15 }
}

/// What dye does on the shelf, lane by lane.
#[derive(Clone, Copy, Debug)]
pub struct Storage<const L: usize> {
    /// The dye.
    pub dye: Dye,
    /// How it spreads in the film as it left the dryer.
    pub diffusion: FilmDiffusion,
    /// Factor on that diffusivity in each lane.
    pub film: Lanes<L>,
    /// Share of dyed polyester in the face of the print's own cloth, times this lane's factor on the vapour.
    pub own: Lanes<L>,
    /// The same for the cloth that lies on the print; 0 if none does.
    pub facing: Lanes<L>,
}

impl<const L: usize> Storage<L> {
    /// Ages the film from one moment to a later one, both in seconds since storage began, with one step for each
    /// stay.
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

    /// The step for `seconds` of a stay.
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
