//! The cells of a window, marched as many at a time as the machine takes side by side.
//!
//! The print and the cloth beside it are marched apart: the second is the same for every film on one cloth.

use super::cell::{BESIDE, NO_DYE, PRINTED, logit};
use super::question::{Axes, Detail, Question, RUNS};
use crate::cure::{Cure, Scorch};
use crate::dryer::{
    Case, DriftCase, Dwell, Follower, History, HistoryError, HistorySample, Stack, between, forked,
    history_on,
};
use crate::ink::CureKinetics;
use crate::migration::{DyedCloth, Release};
use crate::numerics::rosenbrock::Effort;
use crate::numerics::{Lanes, interpolation};

/// Cases that march side by side.
const SIDE_BY_SIDE: usize = 8;

/// What is read off the printed stack on its way.
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
        between(
            from,
            to,
            |sample| sample.film_bottom,
            |seconds, temperature| {
                for (cure, kinetics) in self.cures.iter_mut().zip(self.kinetics) {
                    cure.advance(seconds, temperature, kinetics);
                }
                // Hottest a moment after the exit, between two samples.
                self.peaks[1] = self.peaks[1].max(temperature);
            },
        );
        between(
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

/// What is read off the cloth beside the print.
#[derive(Clone)]
struct OnCloth {
    scorch: Scorch<SIDE_BY_SIDE>,
    peak: Lanes<SIDE_BY_SIDE>,
}

impl Follower<SIDE_BY_SIDE> for OnCloth {
    fn step(&mut self, from: &HistorySample<SIDE_BY_SIDE>, to: &HistorySample<SIDE_BY_SIDE>) {
        between(
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

/// One lane of work: which row of which run.
#[derive(Clone, Copy)]
struct Lane {
    run: usize,
    row: usize,
}

/// What the print takes with it, cell by cell in each of the runs.
#[derive(Clone, Debug)]
pub struct PrintCells {
    pub cells: Vec<Vec<[f64; PRINTED]>>,
    pub effort: Effort,
}

impl PrintCells {
    /// Marches the print through every cell in each of `runs`.
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
            Walk { question, axes, runs }.follow(question.stack, &start, &|lane, print| {
                let [ordinary, low] = print.cures.map(|cure| logit(cure.fused[lane]));
                let [top, bottom, face] = print.peaks.map(|peak| peak[lane]);
                let dye = dyed.map_or(0.0, |dyed| dyed.arrives(&print.release)[lane]);
                [ordinary, low, top, bottom, face, print.scorch.ln(lane), (dye + NO_DYE).ln()]
            })?;
        Ok(Self { cells, effort })
    }
}

/// What the cloth beside the print takes with it.
#[derive(Clone, Debug)]
pub struct BareClothCells {
    pub cells: Vec<Vec<[f64; BESIDE]>>,
    pub effort: Effort,
}

impl BareClothCells {
    /// Marches the bare cloth through every cell in each of `runs`; for a first look not through the cold one, whose
    /// cloth is taken to be as hot as planned. Nothing is asked of it but that it is not too hot.
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
        let (mut cells, effort) = Walk { question, axes, runs }
            .follow(&bare, &start, &|lane, beside| [beside.peak[lane], beside.scorch.ln(lane)])?;
        // In the place of the cold run.
        if let [planned, _] = cells.as_slice() {
            cells.insert(1, planned.clone());
        }
        Ok(Self { cells, effort })
    }
}

/// What came of every cell in each run, and what it took.
type Walked<const N: usize> = (Vec<Vec<[f64; N]>>, Effort);

struct Walk<'a> {
    question: &'a Question<'a>,
    axes: &'a Axes,
    runs: &'a [DriftCase],
}

impl Walk<'_> {
    /// Follows one stack through every cell and reads what came of each lane.
    fn follow<F: Follower<SIDE_BY_SIDE>, const N: usize>(
        &self,
        stack: &Stack,
        start: &F,
        read: &dyn Fn(usize, &F) -> [f64; N],
    ) -> Result<Walked<N>, HistoryError> {
        let cells = self.axes.set.len() * self.axes.belt.len();
        let mut walked = (vec![vec![[0.0; N]; cells]; self.runs.len()], Effort::default());
        // A second pass starts from where the first one ended, which differs with every dwell.
        if self.question.dryer.zones.len() == 1 && self.question.passes == 1 {
            self.rows(stack, start, read, &mut walked)?;
        } else {
            self.speeds(stack, start, read, &mut walked)?;
        }
        Ok(walked)
    }

    /// Rows and runs side by side, every dwell forked off one hot march.
    fn rows<F: Follower<SIDE_BY_SIDE>, const N: usize>(
        &self,
        stack: &Stack,
        start: &F,
        read: &dyn Fn(usize, &F) -> [f64; N],
        (cells, total): &mut Walked<N>,
    ) -> Result<(), HistoryError> {
        let (Axes { set, belt, .. }, worlds) = (self.axes, self.runs);
        let length = self.question.dryer.heated_length();
        let grid = self.question.detail.grid(stack);
        // The slowest belt is the longest dwell, and the first column.
        let columns = belt.len();
        let apart = self.question.detail.coolings();
        let dwells: Vec<Dwell> = (0..columns)
            .zip(belt.iter().rev())
            .map(|(i, belt)| Dwell { seconds: length / belt, cools: i % apart == 0 || i + 1 == columns })
            .collect();
        let cooled: Vec<f64> = dwells.iter().filter(|dwell| dwell.cools).map(log_of).collect();
        // The runs of one row dry out at about the same time: side by side they share their small steps.
        let lanes: Vec<Lane> =
            (0..set.len()).flat_map(|row| (0..worlds.len()).map(move |run| Lane { run, row })).collect();
        for lanes in lanes.chunks(SIDE_BY_SIDE) {
            let Some(&last) = lanes.last() else { continue };
            let of = |lane: usize| lanes.get(lane).copied().unwrap_or(last);
            let runs: [(f64, DriftCase); SIDE_BY_SIDE] =
                std::array::from_fn(|lane| (set[of(lane).row], worlds[of(lane).run]));
            // What each cooling adds, lane by lane.
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
                let (from, weights) = interpolation::cubic(&cooled, log_of(at));
                for (Lane { run, row }, adds) in lanes.iter().zip(&adds) {
                    let cell = &mut cells[*run][row * columns + columns - 1 - dwell];
                    for (adds, weight) in adds.iter().skip(from).zip(weights) {
                        for (value, add) in cell.iter_mut().zip(adds) {
                            *value += weight * add;
                        }
                    }
                }
            }
            count(total, effort);
        }
        Ok(())
    }

    /// Belt speeds of one row side by side.
    fn speeds<F: Follower<SIDE_BY_SIDE>, const N: usize>(
        &self,
        stack: &Stack,
        start: &F,
        read: &dyn Fn(usize, &F) -> [f64; N],
        (cells, total): &mut Walked<N>,
    ) -> Result<(), HistoryError> {
        let (Axes { set, belt, .. }, worlds) = (self.axes, self.runs);
        let Question { dryer, passes, .. } = *self.question;
        let columns = belt.len();
        for (run, &drift) in worlds.iter().enumerate() {
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
                    let end = followed(&history, start.clone());
                    for lane in 0..speeds.len() {
                        let cell = row * columns + part * SIDE_BY_SIDE + lane;
                        cells[run][cell] = read(lane, &end);
                    }
                    count(total, history.effort);
                }
            }
        }
        Ok(())
    }
}

fn log_of(dwell: &Dwell) -> f64 {
    dwell.seconds.ln()
}

fn count(total: &mut Effort, effort: Effort) {
    total.accepted += effort.accepted * SIDE_BY_SIDE;
    total.rejected += effort.rejected * SIDE_BY_SIDE;
}

fn followed<F: Follower<SIDE_BY_SIDE>>(history: &History<SIDE_BY_SIDE>, mut follower: F) -> F {
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            follower.step(from, to);
        }
    }
    follower
}
