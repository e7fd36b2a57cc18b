use super::chain::{Chain, Surroundings, vapour_pressure};
use super::lay::{Grid, chain};
use super::{Case, Dryer, HistoryError, Rest, Sample, Stack, World, Zone};
use crate::numerics::Lanes;
use crate::numerics::march::{Accepted, Effort, NODES, State, Tolerance, march_on, zeros};
use crate::quantity::STEFAN_BOLTZMANN;
use crate::textile::moisture;

/// Moisture of room air, kg/kg: 25 °C at 50 % RH is 0.0099 (CoolProp).
const ROOM_HUMIDITY_RATIO: f64 = 0.0099;

/// Under this, K, films have stopped to fuse (a low-cure white at 90 °C: three parts in ten thousand) and dye to move.
const COOL: f64 = 363.15;
/// How often a cooling piece is looked at, s.
const LOOK: f64 = 12.0;

/// What a cooling tail adds is small, and it need not be followed as closely: so much looser is its tolerance.
const LOOSER: f64 = 4.0;

/// The tolerance behind the dryer's mouth.
pub(super) fn in_cooling(heating: Tolerance) -> Tolerance {
    Tolerance { temperature: heating.temperature * LOOSER, border: heating.border * LOOSER }
}

/// A stack on its way: the equations, where it stands and how long it has been going.
#[derive(Clone, Debug)]
pub(super) struct Journey<const L: usize> {
    pub chain: Chain<L>,
    pub state: State<L>,
    pub clock: Lanes<L>,
    pub effort: Effort,
    pub tolerance: Tolerance,
}

impl<const L: usize> Journey<L> {
    /// A stack as it lies in the room, on something of this heat capacity (J/(m² K)), contact (W/(m² K)) and
    /// temperature (K).
    pub fn start(
        stack: &Stack,
        worlds: &[World; L],
        [heat_capacity, contact, enters]: [f64; 3],
        grid: Grid,
        tolerance: Tolerance,
    ) -> Self {
        let chain = chain(stack, worlds, heat_capacity, contact, grid);
        let mut state = zeros();
        state[..chain.count].fill(Lanes::splat(stack.enters));
        let water = Lanes(worlds.map(|world| world.water));
        for (k, wet) in chain.wet.iter().enumerate() {
            // Each cloth in balance with the room by itself: a lining may hold more than what it lines.
            state[NODES + k] = water * (moisture::regain(stack.humidity, wet.regain_65) + stack.added_water);
        }
        let mut journey = Self { chain, state, clock: Lanes::ZERO, effort: Effort::default(), tolerance };
        journey.lie_on(enters);
        journey
    }

    /// Lies on a fresh piece of belt at this temperature, K.
    pub fn lie_on(&mut self, enters: f64) {
        self.state[self.chain.count - 1] = Lanes::splat(enters);
    }

    /// Goes on for `seconds` amid `around`.
    ///
    /// # Errors
    /// As the march.
    pub fn go(
        &mut self,
        around: Surroundings<L>,
        seconds: Lanes<L>,
        visit: &mut dyn FnMut(Sample<L>),
    ) -> Result<(), HistoryError> {
        self.go_on(around, seconds, None, visit).map(|_| ())
    }

    /// The same, with the step to begin with, as a share of the way; returns the step that would have come next.
    ///
    /// # Errors
    /// As the march.
    pub fn go_on(
        &mut self,
        around: Surroundings<L>,
        seconds: Lanes<L>,
        first: Option<f64>,
        visit: &mut dyn FnMut(Sample<L>),
    ) -> Result<f64, HistoryError> {
        self.chain.surroundings = around;
        let (chain, clock) = (&self.chain, self.clock);
        let mut on_step = |step: &Accepted<'_, L>| {
            visit(chain.sample(clock + seconds * step.passed, step.state, step.rates));
        };
        let (effort, next) = march_on(chain, &mut self.state, seconds, self.tolerance, first, &mut on_step)?;
        self.clock += seconds;
        self.effort.accepted += effort.accepted;
        self.effort.rejected += effort.rejected;
        Ok(next)
    }

    /// Rests one after another.
    ///
    /// # Errors
    /// As the march.
    pub fn rest(&mut self, rests: &[Rest], visit: &mut dyn FnMut(Sample<L>)) -> Result<(), HistoryError> {
        for rest in rests {
            self.go(resting(rest), Lanes::splat(rest.seconds), visit)?;
        }
        Ok(())
    }

    /// The same, ended early where nothing that counts goes on: every lane's film and cloth under [`COOL`].
    ///
    /// # Errors
    /// As the march.
    pub fn rest_until_cool(
        &mut self,
        rests: &[Rest],
        visit: &mut dyn FnMut(Sample<L>),
    ) -> Result<(), HistoryError> {
        for rest in rests {
            let mut left = rest.seconds;
            let mut first = None;
            while left > 0.0 {
                let part = left.min(LOOK);
                let mut hottest = 0.0;
                let next = self.go_on(resting(rest), Lanes::splat(part), first, &mut |sample| {
                    hottest = sample.film_bottom[0].max(sample.cloth_face[0]).largest();
                    visit(sample);
                })?;
                left -= part;
                if hottest < COOL {
                    return Ok(());
                }
                first = Some((next * part / left.clamp(1e-9, LOOK)).min(1.0));
            }
        }
        Ok(())
    }
}

impl<const L: usize> Chain<L> {
    /// The state read at the places that others ask for.
    pub fn sample(&self, time: Lanes<L>, state: &State<L>, rates: &State<L>) -> Sample<L> {
        let at = |i: usize| [state[i], rates[i]];
        let cloth = self.wet.first().map(|wet| wet.nodes.clone()).unwrap_or_default();
        let mean =
            |values: &State<L>| cloth.clone().fold(Lanes::ZERO, |sum, i| sum + values[i] * self.share[i]);
        Sample {
            time,
            film_top: at(0),
            film_bottom: at(self.film.saturating_sub(1)),
            cloth_face: at(self.film),
            cloth: [mean(state), mean(rates)],
            water: state[NODES].max(Lanes::ZERO),
        }
    }
}

/// A stack at the mouth of a dryer.
pub(super) fn enter<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    grid: Grid,
    tolerance: Tolerance,
) -> Journey<L> {
    let belt = &dryer.belt;
    let under = [belt.heat_capacity, belt.contact, belt.enters];
    Journey::start(stack, &cases.map(|case| case.world), under, grid, tolerance)
}

/// A part of the way on which the surroundings stay.
pub(super) struct Leg<const L: usize> {
    pub around: Surroundings<L>,
    pub seconds: Lanes<L>,
    /// Temperature of the fresh piece of belt that it begins on, K.
    pub belt: Option<f64>,
    /// Whether it lies in the dryer.
    pub heats: bool,
}

/// Every zone and the cooling behind the last, `passes` times.
pub(super) fn legs<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
) -> Vec<Leg<L>> {
    let set = Lanes(cases.map(|case| case.set));
    let worlds = cases.map(|case| case.world);
    let last_zone = dryer.zones.len().saturating_sub(1);
    let mut legs = Vec::new();
    for _ in 0..passes.max(1) {
        for (z, zone) in dryer.zones.iter().enumerate() {
            let stop = |case: &Case| if z == last_zone { case.world.stop } else { 0.0 };
            legs.push(Leg {
                around: in_zone(stack, dryer, zone, set, &worlds),
                seconds: Lanes::from_fn(|lane| zone.length / cases[lane].belt + stop(&cases[lane])),
                belt: (z == 0).then_some(dryer.belt.enters),
                heats: true,
            });
        }
        legs.extend(dryer.cooling.rests().iter().map(|rest| Leg {
            around: resting(rest),
            seconds: Lanes::splat(rest.seconds),
            belt: None,
            heats: false,
        }));
    }
    legs
}

/// What surrounds a stack in a zone set to `set` (K).
pub(super) fn in_zone<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    zone: &Zone,
    set: Lanes<L>,
    worlds: &[World; L],
) -> Surroundings<L> {
    let air = Lanes::from_fn(|lane| set[lane] + zone.air_offset + worlds[lane].air);
    let around = Surroundings {
        air,
        h_top: Lanes::from_fn(|lane| zone.h_top.in_air(air[lane]) * worlds[lane].h),
        h_bottom: Lanes::from_fn(|lane| zone.h_bottom.in_air(air[lane]) * worlds[lane].h),
        belt_emission: 0.5 * STEFAN_BOLTZMANN,
        vapour: vapour_pressure(dryer.humidity_ratio),
        ..Surroundings::NONE
    };
    let exchange = Lanes(worlds.map(|world| zone.exchange * world.exchange));
    let offset = zone.panel_offset.unwrap_or(zone.air_offset);
    let panel = Lanes::from_fn(|lane| set[lane] + offset + worlds[lane].panel);
    // Without a panel there is none to wander.
    let exchange = if zone.panel_offset.is_some() { exchange } else { Lanes::ZERO };
    around.lit(zone.emitter, exchange, panel, stack.near_infrared, stack.is_bare())
}

/// What surrounds a stack at rest in the room.
fn resting<const L: usize>(rest: &Rest) -> Surroundings<L> {
    let around = Surroundings {
        air: Lanes::splat(rest.air),
        h_top: Lanes::splat(rest.h_top),
        h_bottom: Lanes::splat(rest.h_bottom),
        vapour: vapour_pressure(ROOM_HUMIDITY_RATIO),
        ..Surroundings::NONE
    };
    if rest.radiates { around.in_room() } else { around }
}

/// What surrounds a stack under a flash unit.
pub(super) fn under<const L: usize>(stack: &Stack, unit: &super::Flash) -> Surroundings<L> {
    let around = Surroundings {
        air: Lanes::splat(unit.air),
        h_top: Lanes::splat(unit.h),
        h_bottom: Lanes::splat(unit.h),
        vapour: vapour_pressure(ROOM_HUMIDITY_RATIO),
        ..Surroundings::NONE
    };
    let (exchange, panel) = (Lanes::splat(unit.exchange), Lanes::splat(unit.panel));
    around.lit(unit.emitter, exchange, panel, stack.near_infrared, stack.is_bare())
}
