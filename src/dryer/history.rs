//! How hot each part of the stack gets, and when.

use super::chain::{Chain, Surroundings, vapour_pressure};
use super::lay::{GRID, chain};
use super::{Cooling, Dryer, Flash, Stack, World};
use crate::numerics::Lanes;
use crate::numerics::march::{Accepted, Effort, MarchError, NODES, State, Tolerance, march, zeros};
use crate::textile::moisture;

/// The tolerance of a march: peaks within 0.1 K and fused shares within 0.0015 of the converged march
/// (`tests/history.rs`).
pub const TOLERANCE: Tolerance = Tolerance { temperature: 0.07, border: 1e-4 };

/// One case of a march: a setting and how the run differs from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case {
    /// Set temperature, K.
    pub set: f64,
    /// Belt speed, m/s.
    pub belt: f64,
    /// How the run differs.
    pub world: World,
}

/// State of the stack at one moment, lane by lane. Rates are per second.
#[derive(Clone, Copy, Debug)]
pub struct Sample<const L: usize> {
    /// Time since it entered, s.
    pub time: Lanes<L>,
    /// Film surface, K, and its rate.
    pub film_top: [Lanes<L>; 2],
    /// Film bottom, K, and its rate.
    pub film_bottom: [Lanes<L>; 2],
    /// Face of the printed cloth, K, and its rate.
    pub cloth_face: [Lanes<L>; 2],
    /// Mean of the printed cloth, K, and its rate.
    pub cloth: [Lanes<L>; 2],
    /// Water in the printed cloth, kg/kg.
    pub water: Lanes<L>,
}

/// Temperature and its rate at one place of the stack.
pub type Place<const L: usize> = fn(&Sample<L>) -> [Lanes<L>; 2];

/// Parts of a solver step in which a rate along the history is followed.
const PARTS: u32 = 3;

/// Temperatures and water from the dryer's mouth until the piece is cool.
#[derive(Clone, Debug)]
pub struct History<const L: usize> {
    /// Samples in the order of time; the solver's own steps, between which a cubic with the given rates holds.
    pub samples: Vec<Sample<L>>,
    /// When it leaves the heat for the last time, s.
    pub leaves: Lanes<L>,
    /// What it took to compute.
    pub effort: Effort,
}

impl<const L: usize> History<L> {
    /// Highest temperature of the film's surface, K.
    #[must_use]
    pub fn film_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.film_top[0])
    }

    /// Highest temperature of the film's bottom, K.
    #[must_use]
    pub fn film_bottom_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.film_bottom[0])
    }

    /// Highest temperature of the cloth's face, K.
    #[must_use]
    pub fn cloth_peak(&self) -> Lanes<L> {
        self.peak(|sample| sample.cloth_face[0])
    }

    /// Calls `visit` with the length and the middle temperature of each part of each step.
    pub fn walk(&self, place: Place<L>, mut visit: impl FnMut(Lanes<L>, Lanes<L>)) {
        for pair in self.samples.windows(2) {
            if let [from, to] = pair {
                between(from, to, place, &mut visit);
            }
        }
    }

    fn peak(&self, of: impl Fn(&Sample<L>) -> Lanes<L>) -> Lanes<L> {
        self.samples.iter().map(of).fold(Lanes::ZERO, Lanes::max)
    }
}

/// Calls `visit` with the length and the middle temperature of each part of one step: cubic Hermite in between.
pub fn between<const L: usize>(
    from: &Sample<L>,
    to: &Sample<L>,
    place: Place<L>,
    mut visit: impl FnMut(Lanes<L>, Lanes<L>),
) {
    let length = to.time - from.time;
    if length.largest() <= 0.0 {
        return;
    }
    let ([start, start_rate], [end, end_rate]) = (place(from), place(to));
    let parts = f64::from(PARTS);
    for part in 0..PARTS {
        let at = (f64::from(part) + 0.5) / parts;
        let rest = 1.0 - at;
        let temperature = start * ((1.0 + 2.0 * at) * rest * rest)
            + end * (at * at * (3.0 - 2.0 * at))
            + (start_rate * (at * rest * rest) - end_rate * (at * at * rest)) * length;
        visit(length * (1.0 / parts), temperature);
    }
}

/// Marches the stack through every zone of the dryer, `passes` times, cooling in between and after.
///
/// # Errors
/// [`MarchError`] where the stack or the dryer leave the range in which the equations hold.
pub fn history<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
    tolerance: Tolerance,
) -> Result<History<L>, MarchError> {
    history_on(GRID, stack, dryer, cases, passes, tolerance)
}

/// [`history`] with so many nodes of film, front and back cloth.
pub(super) fn history_on<const L: usize>(
    grid: [usize; 3],
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
    tolerance: Tolerance,
) -> Result<History<L>, MarchError> {
    let (mut chain, mut state) = enter(grid, stack, dryer, cases);
    let mut record = Recorder::new(&chain);
    let stages = stages(dryer, cases, passes);
    let mut leaves = Lanes::ZERO;
    for stage in stages {
        if let Some(belt) = stage.belt {
            state[chain.count - 1] = Lanes::splat(belt);
        }
        chain.surroundings = stage.surroundings;
        if stage.cools {
            leaves = record.clock;
        }
        record.stage(&chain, &mut state, stage.duration, tolerance)?;
    }
    Ok(History { samples: record.samples, leaves, effort: record.effort })
}

/// One stage of a journey: surroundings that stay, for a while.
pub(super) struct Stage<const L: usize> {
    pub surroundings: Surroundings<L>,
    pub duration: Lanes<L>,
    /// Temperature of the fresh piece of belt that the stage begins on, K.
    pub belt: Option<f64>,
    /// True behind the dryer's mouth.
    pub cools: bool,
}

/// The stack laid out, and its state as it enters.
pub(super) fn enter<const L: usize>(
    grid: [usize; 3],
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
) -> (Chain<L>, State<L>) {
    let worlds = cases.map(|case| case.world);
    let chain = chain(grid, stack, &worlds, dryer.belt.heat_capacity, dryer.belt.contact);
    let mut state = zeros();
    state[..chain.count].fill(Lanes::splat(stack.enters));
    let water = Lanes(cases.map(|case| case.world.water));
    for (k, wet) in chain.wet.iter().enumerate() {
        // Each cloth in balance with the room by itself: a lining may hold more than what it lines.
        state[NODES + k] = water * (moisture::regain(stack.humidity, wet.regain_65) + stack.added_water);
    }
    (chain, state)
}

/// Every zone and the cooling behind the last, `passes` times.
pub(super) fn stages<const L: usize>(dryer: &Dryer, cases: &[Case; L], passes: u32) -> Vec<Stage<L>> {
    let last_zone = dryer.zones.len().saturating_sub(1);
    let mut stages = Vec::new();
    for _ in 0..passes.max(1) {
        for (z, zone) in dryer.zones.iter().enumerate() {
            let stop = |case: &Case| if z == last_zone { case.world.stop } else { 0.0 };
            let air = Lanes(cases.map(|case| case.set + zone.air_offset + case.world.air));
            let exchange = Lanes(cases.map(|case| zone.exchange * case.world.exchange));
            let (source, emission) = match zone.panel_offset {
                Some(offset) => {
                    let panel = Lanes(cases.map(|case| case.set + offset + case.world.panel));
                    Surroundings::radiation(exchange, panel, air)
                }
                None => Surroundings::radiation(Lanes::ZERO, air, air),
            };
            stages.push(Stage {
                surroundings: Surroundings {
                    air,
                    h_top: Lanes(cases.map(|case| zone.h_top * case.world.h)),
                    h_bottom: Lanes(cases.map(|case| zone.h_bottom * case.world.h)),
                    source,
                    emission,
                    belt_emission: 0.5 * crate::quantity::STEFAN_BOLTZMANN,
                    vapour: vapour_pressure(dryer.humidity_ratio),
                },
                duration: Lanes::from_fn(|lane| zone.length / cases[lane].belt + stop(&cases[lane])),
                belt: (z == 0).then_some(dryer.belt.enters),
                cools: false,
            });
        }
        stages.push(cooling());
    }
    stages
}

/// Marches a film on a pallet under a flash unit for `seconds`, then until it is cool.
///
/// # Errors
/// As [`history`].
pub fn flash<const L: usize>(
    stack: &Stack,
    unit: &Flash,
    seconds: Lanes<L>,
    tolerance: Tolerance,
) -> Result<History<L>, MarchError> {
    let mut flat = stack.clone();
    flat.back = None;
    let mut chain = chain(GRID, &flat, &[World::NOMINAL; L], unit.pallet_heat_capacity, stack.gap);
    let mut state = zeros();
    state[..chain.count].fill(Lanes::splat(stack.enters));
    state[chain.count - 1] = Lanes::splat(unit.pallet);
    for (k, wet) in chain.wet.iter().enumerate() {
        let regain = moisture::regain(stack.humidity, wet.regain_65) + stack.added_water;
        state[NODES + k] = Lanes::splat(regain);
    }
    let air = Lanes::splat(unit.air);
    let (source, emission) =
        Surroundings::radiation(Lanes::splat(unit.exchange), Lanes::splat(unit.panel), air);
    chain.surroundings = Surroundings {
        air,
        h_top: Lanes::splat(unit.h),
        h_bottom: Lanes::splat(unit.h),
        source,
        emission,
        belt_emission: 0.0,
        vapour: vapour_pressure(ROOM_HUMIDITY_RATIO),
    };
    let mut record = Recorder::new(&chain);
    record.stage(&chain, &mut state, seconds, tolerance)?;
    let leaves = record.clock;
    let cooling = cooling();
    chain.surroundings = cooling.surroundings;
    record.stage(&chain, &mut state, cooling.duration, tolerance)?;
    Ok(History { samples: record.samples, leaves, effort: record.effort })
}

/// Moisture of room air, kg/kg: 25 °C at 50 % RH is 0.0099 (CoolProp).
const ROOM_HUMIDITY_RATIO: f64 = 0.0099;

/// The open belt end.
fn cooling<const L: usize>() -> Stage<L> {
    let cooling = Cooling::OPEN;
    let air = Lanes::splat(cooling.air);
    let (source, emission) = Surroundings::room(air);
    Stage {
        surroundings: Surroundings {
            air,
            h_top: Lanes::splat(cooling.h_top),
            h_bottom: Lanes::splat(cooling.h_bottom),
            source,
            emission,
            belt_emission: 0.5 * crate::quantity::STEFAN_BOLTZMANN,
            vapour: vapour_pressure(ROOM_HUMIDITY_RATIO),
        },
        duration: Lanes::splat(cooling.seconds),
        belt: None,
        cools: true,
    }
}

/// Keeps the samples of the stages one after another.
struct Recorder<const L: usize> {
    samples: Vec<Sample<L>>,
    clock: Lanes<L>,
    effort: Effort,
    film: usize,
}

impl<const L: usize> Recorder<L> {
    fn new(chain: &Chain<L>) -> Self {
        // Room for the usual journey, so that the march itself does not allocate.
        Self {
            samples: Vec::with_capacity(192),
            clock: Lanes::ZERO,
            effort: Effort::default(),
            film: chain.film,
        }
    }

    fn stage(
        &mut self,
        chain: &Chain<L>,
        state: &mut State<L>,
        duration: Lanes<L>,
        tolerance: Tolerance,
    ) -> Result<(), MarchError> {
        let started = self.clock;
        let cloth = chain.wet.first().map(|wet| wet.nodes.clone()).unwrap_or_default();
        let effort = march(chain, state, duration, tolerance, |step: &Accepted<'_, L>| {
            let at = |i: usize| [step.state[i], step.rates[i]];
            let mean = |values: &[Lanes<L>]| {
                cloth.clone().fold(Lanes::ZERO, |sum, i| sum + values[i] * chain.share[i])
            };
            self.samples.push(Sample {
                time: started + duration * step.passed,
                film_top: at(0),
                film_bottom: at(self.film - 1),
                cloth_face: at(self.film),
                cloth: [mean(step.state), mean(step.rates)],
                water: step.state[NODES].max(Lanes::ZERO),
            });
        })?;
        self.clock += duration;
        self.effort.accepted += effort.accepted;
        self.effort.rejected += effort.rejected;
        Ok(())
    }
}
