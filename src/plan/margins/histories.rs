//! The temperature histories that an assessment reads: of the print and of the cloth beside it, in every
//! drift case.
//!
//! They do not depend on ink prices, dyes or looks, so all candidates with the same films at the same setting
//! share them. The print decides between candidates; the cloth beside it is simulated for those that are
//! shown. Cloth that is dried before has been through the same heat already, bare and damp: the cloth beside
//! the print is simulated from there on, because that part of a piece is the hottest in either case.

use crate::cure::scorch;
use crate::dryer::{Case, DriftCase, History, HistoryError, Stack, TOLERANCE, history};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, DRIFT_CASES, LEFT, cloth_in_room, damp, drift_cases, stack_of};
use crate::plan::window::{PlannedRun, SetPoint};
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

/// Heat of the cloth's face in each drift case.
#[derive(Clone, Copy, Debug)]
pub struct ClothHeat {
    /// Highest temperature of its face, K.
    pub peak: Lanes<DRIFT_CASES>,
    /// Scorch index.
    pub scorch: Lanes<DRIFT_CASES>,
}

impl ClothHeat {
    /// Of the cloth in a history.
    fn of(history: &History<DRIFT_CASES>) -> Self {
        Self { peak: history.cloth_peak(), scorch: scorch(history, |sample| sample.cloth_face) }
    }
}

/// The history of a print, and the heat of the cloth under or beside it, whichever is hotter: bare cloth has
/// no film to warm and none to shade it.
#[derive(Clone, Debug)]
pub struct RunHistories {
    /// History of the printed stack.
    pub print: Arc<History<DRIFT_CASES>>,
    /// Highest temperature of the film's surface, K.
    pub film_peak: Lanes<DRIFT_CASES>,
    /// Heat of the hotter cloth.
    pub cloth: ClothHeat,
}

/// Temperature histories of one cloth, by films and setting.
#[derive(Clone, Debug, Default)]
pub struct HistoryCache {
    /// By thickness and density of white and blocker, set temperature and belt as bits, and whether the cloth
    /// is dried before.
    prints: BTreeMap<([u64; 6], bool), Arc<History<DRIFT_CASES>>>,
    /// By set temperature and belt as bits, and whether the cloth is dried before.
    beside: BTreeMap<([u64; 2], bool), ClothHeat>,
    /// Passes that dry the bare cloth, by set temperature and belt as bits.
    dryings: BTreeMap<[u64; 2], Option<u32>>,
}

impl HistoryCache {
    /// Number of histories in the cache.
    pub fn len(&self) -> usize {
        self.prints.len() + self.beside.len()
    }

    /// Passes in which the bare cloth is dried at a set point; `None` if it takes more than [`MOST_DRYINGS`].
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn passes_to_dry(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        point: &SetPoint,
    ) -> Result<Option<u32>, HistoryError> {
        Ok(match self.dryings.entry(dial_bits(point)) {
            Entry::Occupied(kept) => *kept.get(),
            Entry::Vacant(entry) => *entry.insert(passes_to_dry(job, cloth, point)?),
        })
    }

    /// Passes in which a candidate's cloth is dried before, [`MOST_DRYINGS`] at most; 0 if it is printed as
    /// it lies.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn dryings(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        candidate: &Candidate<'_>,
        point: &SetPoint,
    ) -> Result<u32, HistoryError> {
        Ok(match candidate.dried {
            true => self.passes_to_dry(job, cloth, point)?.unwrap_or(MOST_DRYINGS),
            false => 0,
        })
    }

    /// The history of a candidate's print at a set point, simulated if it is not in the cache.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn print(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        candidate: &Candidate<'_>,
        point: &SetPoint,
    ) -> Result<Arc<History<DRIFT_CASES>>, HistoryError> {
        let stack = stack_of(job, cloth, candidate);
        let blocker = stack.blocker.map_or([0.0, 0.0], |film| [film.thickness, film.density]);
        let [a, b, c, d] =
            [stack.film.thickness, stack.film.density, blocker[0], blocker[1]].map(f64::to_bits);
        let [set, belt] = dial_bits(point);
        Ok(match self.prints.entry(([a, b, c, d, set, belt], candidate.dried)) {
            Entry::Occupied(kept) => kept.get().clone(),
            Entry::Vacant(entry) => {
                entry.insert(Arc::new(simulate(job, &stack, point, job.order.shop.passes)?)).clone()
            }
        })
    }

    /// The histories of a candidate's print and of the cloth beside it, simulated if they are not in the
    /// cache.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn of(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        candidate: &Candidate<'_>,
        run: &PlannedRun,
    ) -> Result<RunHistories, HistoryError> {
        let PlannedRun { point, dryings, .. } = run;
        let print = self.print(job, cloth, candidate, point)?;
        let under = ClothHeat::of(&print);
        let beside = match self.beside.entry((dial_bits(point), candidate.dried)) {
            Entry::Occupied(kept) => *kept.get(),
            Entry::Vacant(entry) => {
                // Cloth that is dried before enters damp, other cloth as it lies in the room.
                let damp = cloth_in_room(job, cloth, stack_of(job, cloth, candidate).film).bare();
                let passes = dryings + job.order.shop.passes.max(1);
                *entry.insert(ClothHeat::of(&simulate(job, &damp, point, passes)?))
            }
        };
        let cloth = ClothHeat { peak: under.peak.max(beside.peak), scorch: under.scorch.max(beside.scorch) };
        Ok(RunHistories { film_peak: print.film_peak(), print, cloth })
    }
}

/// Set temperature and belt as bits, for a cache key.
fn dial_bits(point: &SetPoint) -> [u64; 2] {
    [point.set, point.belt].map(f64::to_bits)
}

/// Simulates a stack at a set point in every drift case.
fn simulate(
    job: &Job,
    stack: &Stack,
    point: &SetPoint,
    passes: u32,
) -> Result<History<DRIFT_CASES>, HistoryError> {
    let cases = drift_cases(&job.dryer.drift).map(|drift| Case { set: point.set, belt: point.belt, drift });
    history(stack, &job.dryer, &cases, passes, TOLERANCE)
}

/// Most passes in which a shop dries a piece: wetter pieces are hung up first. Assumed, 2 to 6.
pub const MOST_DRYINGS: u32 = 4;

/// Passes through the dryer at a set point after which the bare cloth holds no more water than [`LEFT`] as it
/// leaves the heat; `None` if it takes more than [`MOST_DRYINGS`].
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn passes_to_dry(job: &Job, cloth: &Cloth, point: &SetPoint) -> Result<Option<u32>, HistoryError> {
    let bare = damp(job, cloth);
    let case = Case { set: point.set, belt: point.belt, drift: DriftCase::NOMINAL };
    for passes in 1..=MOST_DRYINGS {
        let history = history::<1>(&bare, &job.dryer, &[case], passes, TOLERANCE)?;
        let leaves = history.exit_time[0];
        let at_exit = history.samples.iter().rev().find(|sample| sample.time[0] <= leaves);
        if at_exit.is_some_and(|sample| sample.water[0] <= LEFT) {
            return Ok(Some(passes));
        }
    }
    Ok(None)
}
