//! The surroundings of a stack: air, emitters and walls of a zone, of the room and of a flash unit.

use crate::dryer::machine::{CoolingStage, DriftCase, Dryer, Emitter, FlashUnit, Zone};
use crate::dryer::stack::{Film, NearInfrared, Stack};
use crate::numerics::Lanes;
use crate::quantity::{ATMOSPHERE, STEFAN_BOLTZMANN};

/// Humidity ratio of room air, kg/kg: 25 °C at 50 % RH is 0.0099 (CoolProp).
const ROOM_HUMIDITY_RATIO: f64 = 0.0099;

/// Surroundings during one stage of the transit, lane by lane.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surroundings<const L: usize> {
    /// Air temperature, K.
    pub air: Lanes<L>,
    /// Heat transfer to the top, W/(m² K).
    pub h_top: Lanes<L>,
    /// Heat transfer to the belt, W/(m² K).
    pub h_bottom: Lanes<L>,
    /// Radiation absorbed by the top, W/m².
    pub source: Lanes<L>,
    /// Radiation transmitted by the film and absorbed by the face of the cloth, W/m².
    pub through: Lanes<L>,
    /// Emission of the top, times T⁴, W/(m² K⁴).
    pub emission: Lanes<L>,
    /// Emission of the belt, times T⁴, W/(m² K⁴); 0 for a pallet.
    pub belt_emission: f64,
    /// Vapour pressure of the air, Pa.
    pub vapour: f64,
}

impl<const L: usize> Surroundings<L> {
    /// No surroundings: nothing exchanges heat.
    pub const NONE: Self = Self {
        air: Lanes::ZERO,
        h_top: Lanes::ZERO,
        h_bottom: Lanes::ZERO,
        source: Lanes::ZERO,
        through: Lanes::ZERO,
        emission: Lanes::ZERO,
        belt_emission: 0.0,
        vapour: 0.0,
    };

    /// Adds an emitter at temperature `panel` (K), within walls as hot as the air; `absorption` counts for a
    /// near-infrared lamp, `bare` is true without a film.
    pub fn with_emitter(
        mut self,
        emitter: Emitter,
        exchange: Lanes<L>,
        panel: Lanes<L>,
        absorption: NearInfrared,
        bare: bool,
    ) -> Self {
        let exchange = if emitter == Emitter::None { Lanes::ZERO } else { exchange };
        let [absorbed, transmitted] = match emitter {
            Emitter::NearInfrared if bare => [absorption.cloth, 0.0],
            Emitter::NearInfrared => [absorption.film, absorption.through * absorption.cloth],
            Emitter::None | Emitter::MidInfrared => [1.0, 0.0],
        };
        // A surface emits as well as it absorbs: without that it could get hotter than the emitter.
        let seen = exchange * absorbed;
        let walls = (-seen + Film::EMISSIVITY).max(Lanes::ZERO) * 0.5;
        self.source = (seen * fourth(panel) + walls * fourth(self.air)) * STEFAN_BOLTZMANN;
        let over_air = (fourth(panel) - fourth(self.air)).max(Lanes::ZERO);
        self.through = exchange * over_air * (transmitted * STEFAN_BOLTZMANN);
        self.emission = (seen + walls) * STEFAN_BOLTZMANN;
        self
    }

    /// Adds walls of a room as warm as its air.
    pub fn with_room_walls(mut self) -> Self {
        self.emission = Lanes::splat(Film::EMISSIVITY * STEFAN_BOLTZMANN);
        self.source = self.emission * fourth(self.air);
        self.belt_emission = 0.5 * STEFAN_BOLTZMANN;
        self
    }
}

/// Vapour pressure of air with `ratio` kg water per kg dry air, Pa. 0.622 = ratio of molar masses.
pub(super) fn vapour_pressure(ratio: f64) -> f64 {
    ratio / (ratio + 0.622) * ATMOSPHERE
}

/// `x^4`.
#[inline]
pub(super) fn fourth<const L: usize>(x: Lanes<L>) -> Lanes<L> {
    let square = x * x;
    square * square
}

/// Surroundings of a stack in a zone of a dryer set to `set` (K).
pub(super) fn zone_surroundings<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    zone: &Zone,
    set: Lanes<L>,
    drifts: &[DriftCase; L],
) -> Surroundings<L> {
    let air = Lanes::from_fn(|lane| set[lane] + zone.air_offset + drifts[lane].air);
    let around = Surroundings {
        air,
        h_top: Lanes::from_fn(|lane| zone.h_top.in_air(air[lane]) * drifts[lane].h),
        h_bottom: Lanes::from_fn(|lane| zone.h_bottom.in_air(air[lane]) * drifts[lane].h),
        belt_emission: 0.5 * STEFAN_BOLTZMANN,
        vapour: vapour_pressure(dryer.humidity_ratio),
        ..Surroundings::NONE
    };
    let exchange = Lanes(drifts.map(|drift| zone.exchange * drift.exchange));
    let offset = zone.panel_offset.unwrap_or(zone.air_offset);
    let panel = Lanes::from_fn(|lane| set[lane] + offset + drifts[lane].panel);
    // Without an emitter its drift means nothing.
    let exchange = if zone.panel_offset.is_some() { exchange } else { Lanes::ZERO };
    around.with_emitter(zone.emitter, exchange, panel, stack.near_infrared, stack.is_bare())
}

/// Surroundings of a stack that cools in the room.
pub(super) fn room_surroundings<const L: usize>(rest: &CoolingStage) -> Surroundings<L> {
    let around = Surroundings {
        air: Lanes::splat(rest.air),
        h_top: Lanes::splat(rest.h_top),
        h_bottom: Lanes::splat(rest.h_bottom),
        vapour: vapour_pressure(ROOM_HUMIDITY_RATIO),
        ..Surroundings::NONE
    };
    if rest.radiates { around.with_room_walls() } else { around }
}

/// Surroundings of a stack under a flash unit.
pub(super) fn flash_surroundings<const L: usize>(stack: &Stack, unit: &FlashUnit) -> Surroundings<L> {
    let around = Surroundings {
        air: Lanes::splat(unit.air),
        h_top: Lanes::splat(unit.h),
        h_bottom: Lanes::splat(unit.h),
        vapour: vapour_pressure(ROOM_HUMIDITY_RATIO),
        ..Surroundings::NONE
    };
    let (exchange, panel) = (Lanes::splat(unit.exchange), Lanes::splat(unit.panel));
    around.with_emitter(unit.emitter, exchange, panel, stack.near_infrared, stack.is_bare())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: humidity ratios of psychrolib 2.5.0 and CoolProp 8.0.0 at 25 °C and 50 % RH, where half the
    /// saturation pressure is 1584.9 Pa; CoolProp counts the gases' pull on each other (0.4 %), which the
    /// ratio of masses leaves out.
    #[test]
    fn humidity_ratio_and_vapour_pressure() {
        for (ratio, expected) in [(0.009_881_04, 1584.6), (0.009_925_74, 1591.6)] {
            let found = vapour_pressure(ratio);
            assert!((found / expected - 1.0).abs() < 5e-4, "{ratio}: {found} Pa for {expected}");
            assert!((found / 1584.9 - 1.0).abs() < 5e-3, "{ratio}: {found} Pa for half of saturation");
        }
    }
}
