//! The cells of a window, simulated as many at a time as the machine computes side by side.
//!
//! The print and the cloth beside it are simulated separately: the second is the same for every film on one
//! cloth.
//!
//! **Decision:** the cloth beside the print is not simulated in the cold run.
//! **Because:** no margin asks for it there.
//! **Measured:** no time recorded; decided 2026-11-29.
//! **Reconsider when:** a margin reads the bare cloth at the cold corner.

use super::cell::{BESIDE, NO_DYE, PRINTED, logit};
use super::question::{Axes, Detail, Question, RUNS};
use crate::cure::{Cure, Scorch};
use crate::dryer::{
    Case, DriftCase, Dwell, Follower, History, HistoryError, HistorySample, Stack, for_each_substep, forked,
    history_on,
};
use crate::ink::CureKinetics;
use crate::migration::{DyedCloth, Release};
use crate::numerics::rosenbrock::Effort;
use crate::numerics::{Lanes, interpolation};

/// Cases that are integrated side by side.
const SIDE_BY_SIDE: usize = 8;

/// What is followed along the history of the printed stack.
#[derive(Clone)]
struct OnPrint<'a> {
    kinetics: &'a [CureKinetics; 2],
    dyed: Option<&'a DyedCloth>,
    cures: [Cure<SIDE_BY_SIDE>; 2],
    release: Release<SIDE_BY_SIDE>,
    scorch: Scorch<SIDE_BY_SIDE>,
    /// Film top, film bottom, cloth face, K.
    peaks: [Lanes<SIDE_BY_SIDE>; 3],
}

impl Follower<SIDE_BY_SIDE> for OnPrint<'_> {
    fn step(&mut self, from: &HistorySample<SIDE_BY_SIDE>, to: &HistorySample<SIDE_BY_SIDE>) {
        for_each_substep(
            from,
            to,
            |sample| sample.film_bottom,
            |seconds, temperature| {
                for (cure, kinetics) in self.cures.iter_mut().zip(self.kinetics) {
                    cure.advance(seconds, temperature, kinetics);
                }
                // The film's bottom is hottest a moment after the exit, between two samples.
                self.peaks[1] = self.peaks[1].max(temperature);
            },
        );
        for_each_substep(
            from,
            to,
            |sample| sample.cloth_face,
            |seconds, temperature| {
                if let Some(dyed) = self.dyed {
                    self.release.heat(dyed, seconds, temperature);
                }
                self.scorch.advance(seconds, temperature);
                self.peaks[2] = self.peaks[2].max(temperature);
            },
        );
        for (peak, [temperature, _]) in
            self.peaks.iter_mut().zip([to.film_top, to.film_bottom, to.cloth_face])
        {
            *peak = peak.max(temperature);
        }
    }
}

/// What is followed along the history of the cloth beside the print.
#[derive(Clone)]
struct OnCloth {
    scorch: Scorch<SIDE_BY_SIDE>,
    peak: Lanes<SIDE_BY_SIDE>,
}

impl Follower<SIDE_BY_SIDE> for OnCloth {
    fn step(&mut self, from: &HistorySample<SIDE_BY_SIDE>, to: &HistorySample<SIDE_BY_SIDE>) {
        for_each_substep(
            from,
            to,
            |sample| sample.cloth_face,
            |seconds, temperature| {
                self.scorch.advance(seconds, temperature);
                self.peak = self.peak.max(temperature);
            },
        );
        self.peak = self.peak.max(to.cloth_face[0]);
    }
}

/// The work of one lane: a row of cells in one of the runs.
#[derive(Clone, Copy)]
struct Lane {
    run: usize,
    row: usize,
}

/// Values of the printed stack, cell by cell in each of the runs.
#[derive(Clone, Debug)]
pub struct PrintCells {
    pub cells: Vec<Vec<[f64; PRINTED]>>,
    pub effort: Effort,
}

impl PrintCells {
    /// Simulates the printed stack in every cell, in each of `runs`.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn compute(question: &Question<'_>, axes: &Axes, runs: &[DriftCase]) -> Result<Self, HistoryError> {
        let start = OnPrint {
            kinetics: &question.kinetics,
            dyed: question.dyed,
            cures: [Cure::NONE; 2],
            release: Release::NONE,
            scorch: Scorch::NONE,
            peaks: [Lanes::ZERO; 3],
        };
        let dyed = question.dyed;
        let (cells, effort) =
            GridSimulation { question, axes, runs }.follow(question.stack, &start, &|lane, print| {
                let [ordinary, low] = print.cures.map(|cure| logit(cure.fused[lane]));
                let [top, bottom, face] = print.peaks.map(|peak| peak[lane]);
                let dye = dyed.map_or(0.0, |dyed| dyed.arrives(&print.release)[lane]);
                [ordinary, low, top, bottom, face, print.scorch.ln(lane), (dye + NO_DYE).ln()]
            })?;
        Ok(Self { cells, effort })
    }
}

/// Values of the cloth beside the print, cell by cell in each of the runs.
#[derive(Clone, Debug)]
pub struct BareClothCells {
    pub cells: Vec<Vec<[f64; BESIDE]>>,
    pub effort: Effort,
}

impl BareClothCells {
    /// Simulates the bare cloth in every cell, in each of `runs`. A coarse window skips the cold run and
    /// takes its cloth to be as hot as planned: the only demand on bare cloth is that it is not too hot.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn compute(
        question: &Question<'_>,
        axes: &Axes,
        runs: &[DriftCase; RUNS],
    ) -> Result<Self, HistoryError> {
        let start = OnCloth { scorch: Scorch::NONE, peak: Lanes::ZERO };
        let bare = question.stack.bare();
        let [nominal, _, hot] = *runs;
        let first_look = [nominal, hot];
        let runs = match question.detail {
            Detail::Coarse => &first_look[..],
            Detail::Fine => &runs[..],
        };
        let (mut cells, effort) =
            GridSimulation { question, axes, runs }
                .follow(&bare, &start, &|lane, beside| [beside.peak[lane], beside.scorch.ln(lane)])?;
        // The planned run serves as the cold one.
        if let [planned, _] = cells.as_slice() {
            cells.insert(1, planned.clone());
        }
        Ok(Self { cells, effort })
    }
}

/// Values of every cell in each run, and the effort of their integration.
type GridValues<const N: usize> = (Vec<Vec<[f64; N]>>, Effort);

/// The simulation of one stack over the axes of a window, in each of the runs.
struct GridSimulation<'a> {
    question: &'a Question<'a>,
    axes: &'a Axes,
    runs: &'a [DriftCase],
}

impl GridSimulation<'_> {
    /// Simulates one stack in every cell and reads the values of each lane.
    fn follow<F: Follower<SIDE_BY_SIDE>, const N: usize>(
        &self,
        stack: &Stack,
        start: &F,
        read: &dyn Fn(usize, &F) -> [f64; N],
    ) -> Result<GridValues<N>, HistoryError> {
        let cells = self.axes.set.len() * self.axes.belt.len();
        let mut values = (vec![vec![[0.0; N]; cells]; self.runs.len()], Effort::default());
        // A second zone or pass starts from the state at the end of the first, which differs with every
        // dwell.
        if self.question.dryer.zones.len() == 1 && self.question.passes == 1 {
            self.rows(stack, start, read, &mut values)?;
        } else {
            self.speeds(stack, start, read, &mut values)?;
        }
        Ok(values)
    }

    /// Rows and runs side by side; every dwell forks off one history in the heat.
    fn rows<F: Follower<SIDE_BY_SIDE>, const N: usize>(
        &self,
        stack: &Stack,
        start: &F,
        read: &dyn Fn(usize, &F) -> [f64; N],
        (cells, total): &mut GridValues<N>,
    ) -> Result<(), HistoryError> {
        let (Axes { set, belt, .. }, drift_cases) = (self.axes, self.runs);
        let length = self.question.dryer.heated_length();
        let grid = self.question.detail.grid(stack);
        // The slowest belt is the longest dwell, and the first column.
        let columns = belt.len();
        let apart = self.question.detail.coolings();
        let dwells: Vec<Dwell> = (0..columns)
            .zip(belt.iter().rev())
            .map(|(i, belt)| Dwell { seconds: length / belt, cools: i % apart == 0 || i + 1 == columns })
            .collect();
        let cooled: Vec<f64> = dwells.iter().filter(|dwell| dwell.cools).map(ln_dwell).collect();
        // The runs of one row dry out at about the same time: side by side they share their small time steps.
        let lanes: Vec<Lane> =
            (0..set.len()).flat_map(|row| (0..drift_cases.len()).map(move |run| Lane { run, row })).collect();
        for lanes in lanes.chunks(SIDE_BY_SIDE) {
            let Some(&last) = lanes.last() else { continue };
            let of = |lane: usize| lanes.get(lane).copied().unwrap_or(last);
            let runs: [(f64, DriftCase); SIDE_BY_SIDE] =
                std::array::from_fn(|lane| (set[of(lane).row], drift_cases[of(lane).run]));
            // What cooling after the exit adds, lane by lane.
            let mut adds: Vec<Vec<[f64; N]>> = vec![Vec::with_capacity(cooled.len()); lanes.len()];
            let effort = forked(
                grid,
                stack,
                self.question.dryer,
                &runs,
                &dwells,
                self.question.detail.tolerance(),
                start,
                |dwell, hot, cold| {
                    for (lane, (Lane { run, row }, adds)) in lanes.iter().zip(&mut adds).enumerate() {
                        let leaves = read(lane, hot);
                        cells[*run][row * columns + columns - 1 - dwell] = leaves;
                        adds.extend(cold.map(|cold| {
                            let ends = read(lane, cold);
                            std::array::from_fn(|i| ends[i] - leaves[i])
                        }));
                    }
                },
            )?;
            for (dwell, at) in dwells.iter().enumerate() {
                let (from, weights) = interpolation::cubic(&cooled, ln_dwell(at));
                for (Lane { run, row }, adds) in lanes.iter().zip(&adds) {
                    let cell = &mut cells[*run][row * columns + columns - 1 - dwell];
                    for (adds, weight) in adds.iter().skip(from).zip(weights) {
                        for (value, add) in cell.iter_mut().zip(adds) {
                            *value += weight * add;
                        }
                    }
                }
            }
            add_effort(total, effort);
        }
        Ok(())
    }

    /// Belt speeds of one row side by side.
    fn speeds<F: Follower<SIDE_BY_SIDE>, const N: usize>(
        &self,
        stack: &Stack,
        start: &F,
        read: &dyn Fn(usize, &F) -> [f64; N],
        (cells, total): &mut GridValues<N>,
    ) -> Result<(), HistoryError> {
        let (Axes { set, belt, .. }, drift_cases) = (self.axes, self.runs);
        let Question { dryer, passes, .. } = *self.question;
        let columns = belt.len();
        for (run, &drift) in drift_cases.iter().enumerate() {
            for (row, &set) in set.iter().enumerate() {
                for (part, speeds) in belt.chunks(SIDE_BY_SIDE).enumerate() {
                    let last = speeds.last().copied().unwrap_or(1.0);
                    let cases: [Case; SIDE_BY_SIDE] = std::array::from_fn(|lane| Case {
                        set,
                        belt: speeds.get(lane).copied().unwrap_or(last),
                        drift,
                    });
                    let history = history_on(
                        self.question.detail.grid(stack),
                        stack,
                        dryer,
                        &cases,
                        passes,
                        self.question.detail.tolerance(),
                    )?;
                    let end = follow_to_end(&history, start.clone());
                    for lane in 0..speeds.len() {
                        let cell = row * columns + part * SIDE_BY_SIDE + lane;
                        cells[run][cell] = read(lane, &end);
                    }
                    add_effort(total, history.effort);
                }
            }
        }
        Ok(())
    }
}

/// Logarithm of a dwell, s.
fn ln_dwell(dwell: &Dwell) -> f64 {
    dwell.seconds.ln()
}

/// Adds the effort of all lanes to a total.
fn add_effort(total: &mut Effort, effort: Effort) {
    total.accepted += effort.accepted * SIDE_BY_SIDE;
    total.rejected += effort.rejected * SIDE_BY_SIDE;
}

/// The follower after all of a history.
fn follow_to_end<F: Follower<SIDE_BY_SIDE>>(history: &History<SIDE_BY_SIDE>, mut follower: F) -> F {
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            follower.step(from, to);
        }
    }
    follower
}
