use super::assembly::chain;
use super::chain::Chain;
use super::surroundings::{Surroundings, room_surroundings, zone_surroundings};
use super::{Case, HistoryError, HistorySample};
use crate::dryer::machine::{CoolingStage, DriftCase, Dryer};
use crate::dryer::stack::{Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{
    AcceptedStep, Effort, NODES, StateVector, Tolerance, integrate_with_step, zeros,
};
use crate::textile::moisture;

/// Temperature below which fusion (of a low-cure white at 90 °C: 0.03 %) and dye transfer have stopped, K.
const COOL: f64 = 363.15;
/// Interval at which a cooling piece is checked for [`COOL`], s.
const LOOK: f64 = 12.0;

/// Factor on the tolerance after the dryer: cooling adds little to fusion and dye transfer.
const LOOSER: f64 = 4.0;

/// Tolerance of water while a cloth holds free water, kg/kg. Chosen: hot dry cloth in the steam of wet cloth holds 1e-4,
/// and where steps may err by more than that, its water never settles and the steps get ever shorter.
const DRIPPING: f64 = 1e-4;

/// The tolerance of the cooling stages.
pub(super) fn cooling_tolerance(heating: Tolerance) -> Tolerance {
    Tolerance { temperature: heating.temperature * LOOSER, water: heating.water }
}

/// A stack in transit: its equations, its state and the time since its entry.
#[derive(Clone, Debug)]
pub(super) struct Transit<const L: usize> {
    pub chain: Chain<L>,
    pub state: StateVector<L>,
    pub clock: Lanes<L>,
    pub effort: Effort,
    pub tolerance: Tolerance,
}

impl<const L: usize> Transit<L> {
    /// A stack in equilibrium with the room, on a belt or pallet of this heat capacity (J/(m² K)), thermal
    /// contact (W/(m² K)) and temperature (K).
    pub fn start(
        stack: &Stack,
        drifts: &[DriftCase; L],
        [heat_capacity, contact, temperature]: [f64; 3],
        grid: StackGrid,
        tolerance: Tolerance,
    ) -> Self {
        let chain = chain(stack, drifts, heat_capacity, contact, grid);
        let mut state = zeros();
        state[..chain.count].fill(Lanes::splat(stack.entry_temperature));
        let water = Lanes(drifts.map(|drift| drift.water));
        for (k, cloth) in [Some(&stack.front), stack.back.as_ref()].into_iter().flatten().enumerate() {
            // Each cloth has its own regain: a lining may hold more water than the shell.
            let held = moisture::regain(stack.humidity.0, cloth.regain_65) + stack.added_water;
            let nodes = if k == 0 {
                chain.cloths.front()
            } else {
                chain.cloths.front().end..chain.cloths.range().end
            };
            for i in nodes {
                state[NODES + i] = water * held;
            }
        }
        let mut transit = Self { chain, state, clock: Lanes::ZERO, effort: Effort::default(), tolerance };
        transit.change_belt(temperature);
        transit
    }

    /// Puts the stack on a new piece of belt at this temperature, K.
    pub fn change_belt(&mut self, temperature: f64) {
        self.state[self.chain.count - 1] = Lanes::splat(temperature);
    }

    /// Advances by `seconds` in the surroundings `around`.
    ///
    /// # Errors
    /// [`HistoryError::Integration`] if the time steps fail.
    pub fn advance(
        &mut self,
        around: Surroundings<L>,
        seconds: Lanes<L>,
        visit: &mut dyn FnMut(HistorySample<L>),
    ) -> Result<(), HistoryError> {
        self.advance_with_step(around, seconds, None, visit).map(|_| ())
    }

    /// Like [`advance`](Self::advance), with the first time step as a share of `seconds`; returns the step
    /// that would have followed.
    ///
    /// # Errors
    /// [`HistoryError::Integration`] if the time steps fail.
    pub fn advance_with_step(
        &mut self,
        around: Surroundings<L>,
        seconds: Lanes<L>,
        first: Option<f64>,
        visit: &mut dyn FnMut(HistorySample<L>),
    ) -> Result<f64, HistoryError> {
        self.chain.surroundings = around;
        let (chain, clock) = (&self.chain, self.clock);
        let mut tolerance = self.tolerance;
        if chain.cloths.drip(&self.state) {
            tolerance.water = tolerance.water.min(DRIPPING);
        }
        let mut on_step = |step: &AcceptedStep<'_, L>| {
            visit(chain.sample(clock + seconds * step.passed, step.state, step.rates));
        };
        let (effort, next) =
            integrate_with_step(chain, &mut self.state, seconds, tolerance, first, &mut on_step)?;
        self.clock += seconds;
        self.effort.accepted += effort.accepted;
        self.effort.rejected += effort.rejected;
        Ok(next)
    }

    /// Runs through cooling stages.
    ///
    /// # Errors
    /// [`HistoryError::Integration`] if the time steps fail.
    pub fn cool(
        &mut self,
        stages: &[CoolingStage],
        visit: &mut dyn FnMut(HistorySample<L>),
    ) -> Result<(), HistoryError> {
        for stage in stages {
            self.advance(room_surroundings(stage), Lanes::splat(stage.seconds), visit)?;
        }
        Ok(())
    }

    /// Like [`cool`](Self::cool), ended as soon as film and cloth of every lane are below [`COOL`].
    ///
    /// # Errors
    /// [`HistoryError::Integration`] if the time steps fail.
    pub fn cool_until_inactive(
        &mut self,
        stages: &[CoolingStage],
        visit: &mut dyn FnMut(HistorySample<L>),
    ) -> Result<(), HistoryError> {
        for stage in stages {
            let mut left = stage.seconds;
            let mut first = None;
            while left > 0.0 {
                let part = left.min(LOOK);
                let mut hottest = 0.0;
                let next = self.advance_with_step(
                    room_surroundings(stage),
                    Lanes::splat(part),
                    first,
                    &mut |sample| {
                        hottest = sample.film_bottom[0].max(sample.cloth_face[0]).largest();
                        visit(sample);
                    },
                )?;
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
    /// The state at the places that a history records.
    pub fn sample(&self, time: Lanes<L>, state: &StateVector<L>, rates: &StateVector<L>) -> HistorySample<L> {
        let at = |i: usize| [state[i], rates[i]];
        let cloth = self.cloths.front();
        let mean =
            |values: &[Lanes<L>]| cloth.clone().fold(Lanes::ZERO, |sum, i| sum + values[i] * self.share[i]);
        HistorySample {
            time,
            film_top: at(0),
            film_bottom: at(self.film.saturating_sub(1)),
            cloth_face: at(self.film),
            cloth: [mean(state), mean(rates)],
            water: mean(&state[NODES..]).max(Lanes::ZERO),
            face_water: state[NODES + self.film].max(Lanes::ZERO),
        }
    }
}

/// A stack at the entry of a dryer.
pub(super) fn at_entry<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    grid: StackGrid,
    tolerance: Tolerance,
) -> Transit<L> {
    let belt = &dryer.belt;
    let under = [belt.heat_capacity, belt.contact, belt.entry_temperature];
    Transit::start(stack, &cases.map(|case| case.drift), under, grid, tolerance)
}

/// A part of the transit with constant surroundings.
pub(super) struct Stage<const L: usize> {
    pub around: Surroundings<L>,
    /// Duration, s.
    pub seconds: Lanes<L>,
    /// Temperature of the belt, K, if the stage begins on a new piece of it.
    pub belt: Option<f64>,
    /// Whether it is a zone of the dryer; otherwise it is cooling.
    pub heats: bool,
}

/// The stages of `passes` passes: every zone, then the cooling.
pub(super) fn stages<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    cases: &[Case; L],
    passes: u32,
) -> Vec<Stage<L>> {
    let set = Lanes(cases.map(|case| case.set));
    let drifts = cases.map(|case| case.drift);
    let last_zone = dryer.zones.len().saturating_sub(1);
    let mut stages = Vec::new();
    for _ in 0..passes.max(1) {
        for (z, zone) in dryer.zones.iter().enumerate() {
            let stop = |case: &Case| if z == last_zone { case.drift.stop } else { 0.0 };
            stages.push(Stage {
                around: zone_surroundings(stack, dryer, zone, set, &drifts),
                seconds: Lanes::from_fn(|lane| zone.length / cases[lane].belt + stop(&cases[lane])),
                belt: (z == 0).then_some(dryer.belt.entry_temperature),
                heats: true,
            });
        }
        stages.extend(dryer.cooling.stages().iter().map(|stage| Stage {
            around: room_surroundings(stage),
            seconds: Lanes::splat(stage.seconds),
            belt: None,
            heats: false,
        }));
    }
    stages
}
