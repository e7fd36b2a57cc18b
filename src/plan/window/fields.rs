//! The cells of a window, marched as many at a time as the machine takes side by side.

use super::{NO_DYE, Question, logit};
use crate::cure::{Cure, Scorch};
use crate::dryer::{
    Case, Follow, History, HistoryError, Sample, Stack, TOLERANCE, World, between, forked, history,
};
use crate::ink::CureKinetics;
use crate::migration::{DyedCloth, Release};
use crate::numerics::Lanes;
use crate::numerics::march::Effort;

/// Cases that march side by side.
const SIDE_BY_SIDE: usize = 8;
/// Values of a cell: two fused shares, peaks of film top, film bottom and cloth, scorch, dye; peak and scorch of the cloth
/// beside the print. Which of the two is hotter is asked between the cells, where the larger of both would have a kink.
pub(super) const FIELDS: usize = 9;

/// Values over the grid, row after row from the coolest, as they are interpolated.
#[derive(Clone, Debug)]
pub(super) struct Fields {
    pub cells: Vec<[f64; FIELDS]>,
}

/// What is read off the printed stack on its way.
#[derive(Clone)]
struct Print<'a> {
    kinetics: &'a [CureKinetics; 2],
    dyed: Option<&'a DyedCloth>,
    cures: [Cure<SIDE_BY_SIDE>; 2],
    release: Release<SIDE_BY_SIDE>,
    scorch: Scorch<SIDE_BY_SIDE>,
    /// Film top, film bottom, cloth face, K.
    peaks: [Lanes<SIDE_BY_SIDE>; 3],
}

impl Follow<SIDE_BY_SIDE> for Print<'_> {
    fn step(&mut self, from: &Sample<SIDE_BY_SIDE>, to: &Sample<SIDE_BY_SIDE>) {
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
struct Beside {
    scorch: Scorch<SIDE_BY_SIDE>,
    peak: Lanes<SIDE_BY_SIDE>,
}

impl Follow<SIDE_BY_SIDE> for Beside {
    fn step(&mut self, from: &Sample<SIDE_BY_SIDE>, to: &Sample<SIDE_BY_SIDE>) {
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

/// Computes the fields of three runs.
pub(super) fn fields(
    question: &Question<'_>,
    set: &[f64],
    belt: &[f64],
    runs: [World; 3],
) -> Result<([Fields; 3], Effort), HistoryError> {
    let mut grid = Cells {
        question,
        set,
        belt,
        runs,
        fields: std::array::from_fn(|_| Fields { cells: vec![[0.0; FIELDS]; set.len() * belt.len()] }),
        effort: Effort::default(),
    };
    let bare = question.stack.bare();
    let print = Print {
        kinetics: &question.kinetics,
        dyed: question.dyed,
        cures: [Cure::NONE; 2],
        release: Release::NONE,
        scorch: Scorch::NONE,
        peaks: [Lanes::ZERO; 3],
    };
    let beside = Beside { scorch: Scorch::NONE, peak: Lanes::ZERO };
    let dyed = question.dyed;
    grid.follow(question.stack, &print, |cell, lane, print| {
        let [ordinary, low] = print.cures.map(|cure| logit(cure.fused[lane]));
        let [top, bottom, face] = print.peaks.map(|peak| peak[lane]);
        let dye = dyed.map_or(0.0, |dyed| dyed.arrives(&print.release)[lane]);
        let [_, _, _, _, _, _, _, bare_face, bare_scorch] = *cell;
        let (scorch, dye) = (print.scorch.ln(lane), (dye + NO_DYE).ln());
        *cell = [ordinary, low, top, bottom, face, scorch, dye, bare_face, bare_scorch];
    })?;
    grid.follow(&bare, &beside, |cell, lane, beside| {
        let [.., face, scorch] = cell;
        (*face, *scorch) = (beside.peak[lane], beside.scorch.ln(lane));
    })?;
    Ok((grid.fields, grid.effort))
}

struct Cells<'a> {
    question: &'a Question<'a>,
    set: &'a [f64],
    belt: &'a [f64],
    runs: [World; 3],
    fields: [Fields; 3],
    effort: Effort,
}

impl Cells<'_> {
    /// Follows one stack through every cell and writes what came of it.
    fn follow<F: Follow<SIDE_BY_SIDE>>(
        &mut self,
        stack: &Stack,
        start: &F,
        write: impl Fn(&mut [f64; FIELDS], usize, &F),
    ) -> Result<(), HistoryError> {
        // A second pass starts from where the first one ended, which differs with every dwell.
        if self.question.dryer.zones.len() == 1 && self.question.passes == 1 {
            self.rows(stack, start, write)
        } else {
            self.speeds(stack, start, write)
        }
    }

    /// Rows and runs side by side, every dwell forked off one hot march.
    fn rows<F: Follow<SIDE_BY_SIDE>>(
        &mut self,
        stack: &Stack,
        start: &F,
        write: impl Fn(&mut [f64; FIELDS], usize, &F),
    ) -> Result<(), HistoryError> {
        let length = self.question.dryer.heated_length();
        // The slowest belt is the longest dwell, and the first column.
        let columns = self.belt.len();
        let dwells: Vec<f64> = self.belt.iter().rev().map(|belt| length / belt).collect();
        // The runs of one row dry out at about the same time: side by side they share their small steps.
        let lanes: Vec<Lane> = (0..self.set.len())
            .flat_map(|row| (0..self.runs.len()).map(move |run| Lane { run, row }))
            .collect();
        for lanes in lanes.chunks(SIDE_BY_SIDE) {
            let Some(&last) = lanes.last() else { continue };
            let of = |lane: usize| lanes.get(lane).copied().unwrap_or(last);
            let runs: [(f64, World); SIDE_BY_SIDE] =
                std::array::from_fn(|lane| (self.set[of(lane).row], self.runs[of(lane).run]));
            let fields = &mut self.fields;
            let effort =
                forked(stack, self.question.dryer, &runs, &dwells, TOLERANCE, start, |dwell, end| {
                    for (lane, Lane { run, row }) in lanes.iter().enumerate() {
                        write(&mut fields[*run].cells[row * columns + columns - 1 - dwell], lane, &end);
                    }
                })?;
            self.count(effort);
        }
        Ok(())
    }

    /// Belt speeds of one row side by side.
    fn speeds<F: Follow<SIDE_BY_SIDE>>(
        &mut self,
        stack: &Stack,
        start: &F,
        write: impl Fn(&mut [f64; FIELDS], usize, &F),
    ) -> Result<(), HistoryError> {
        let Question { dryer, passes, .. } = *self.question;
        let columns = self.belt.len();
        for (run, world) in self.runs.into_iter().enumerate() {
            for (row, &set) in self.set.iter().enumerate() {
                for (part, speeds) in self.belt.chunks(SIDE_BY_SIDE).enumerate() {
                    let last = speeds.last().copied().unwrap_or(1.0);
                    let cases: [Case; SIDE_BY_SIDE] = std::array::from_fn(|lane| Case {
                        set,
                        belt: speeds.get(lane).copied().unwrap_or(last),
                        world,
                    });
                    let history = history(stack, dryer, &cases, passes, TOLERANCE)?;
                    let end = followed(&history, start.clone());
                    for lane in 0..speeds.len() {
                        let cell = row * columns + part * SIDE_BY_SIDE + lane;
                        write(&mut self.fields[run].cells[cell], lane, &end);
                    }
                    self.count(history.effort);
                }
            }
        }
        Ok(())
    }

    fn count(&mut self, effort: Effort) {
        self.effort.accepted += effort.accepted * SIDE_BY_SIDE;
        self.effort.rejected += effort.rejected * SIDE_BY_SIDE;
    }
}

fn followed<F: Follow<SIDE_BY_SIDE>>(history: &History<SIDE_BY_SIDE>, mut follower: F) -> F {
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            follower.step(from, to);
        }
    }
    follower
}
