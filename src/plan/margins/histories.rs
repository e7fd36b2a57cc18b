//! The histories that a judgement reads: the print and the cloth beside it, in every run that a set point must survive.
//!
//! They know nothing of ink prices, dyes or looks, so that every way with the same films at the same setting shares them.
//! The print decides between ways; the cloth beside it is marched for those that are shown. Cloth that is dried before has
//! been through the same heat already, bare and damp: the cloth beside the print is marched from there, and that part of a
//! piece is the hottest in either case.

use crate::cure::scorch;
use crate::dryer::{Case, DriftCase, History, HistoryError, Stack, TOLERANCE, history};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, DRIFT_CASES, LEFT, cloth_in_room, damp, drift_cases, stack_of};
use crate::plan::window::{PlannedRun, SetPoint};
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

/// What every judgement reads off the cloth.
#[derive(Clone, Copy, Debug)]
pub struct ClothHeat {
    /// Highest temperature of its face, K.
    pub peak: Lanes<DRIFT_CASES>,
    /// Scorch index.
    pub scorch: Lanes<DRIFT_CASES>,
}

impl ClothHeat {
    fn by(history: &History<DRIFT_CASES>) -> Self {
        Self { peak: history.cloth_peak(), scorch: scorch(history, |sample| sample.cloth_face) }
    }
}

/// A print, and the cloth under or beside it, whichever is hotter: beside it is no film to warm and none to shade it.
#[derive(Clone, Debug)]
pub struct RunHistories {
    pub print: Arc<History<DRIFT_CASES>>,
    /// Highest temperature of the film's surface, K.
    pub film_peak: Lanes<DRIFT_CASES>,
    pub cloth: ClothHeat,
}

/// HistoryCache of one cloth, by films and setting.
#[derive(Clone, Debug, Default)]
pub struct HistoryCache {
    /// By thickness and density of white and blocker, set temperature and belt, bit for bit, and whether dried before.
    prints: BTreeMap<([u64; 6], bool), Arc<History<DRIFT_CASES>>>,
    /// By set temperature and belt, and whether dried before.
    beside: BTreeMap<([u64; 2], bool), ClothHeat>,
    /// Passes that dry the bare cloth, by set temperature and belt.
    dryings: BTreeMap<[u64; 2], Option<u32>>,
}

impl HistoryCache {
    /// How many are kept.
    pub fn len(&self) -> usize {
        self.prints.len() + self.beside.len()
    }
    /// Passes in which the bare cloth is dried at a set point; `None` where it takes more than a shop would run.
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
            Entry::Occupied(had) => *had.get(),
            Entry::Vacant(entry) => *entry.insert(passes_to_dry(job, cloth, point)?),
        })
    }

    /// Passes in which a way's cloth is dried before, at most as many as a shop would run; 0 where it is printed as it lies.
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

    /// The print of a way at a set point, marched where it was not yet.
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
            Entry::Occupied(had) => had.get().clone(),
            Entry::Vacant(entry) => {
                entry.insert(Arc::new(simulate(job, &stack, point, job.order.shop.passes)?)).clone()
            }
        })
    }

    /// The whole ride of a way, marched where it was not yet.
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
        let under = ClothHeat::by(&print);
        let beside = match self.beside.entry((dial_bits(point), candidate.dried)) {
            Entry::Occupied(had) => *had.get(),
            Entry::Vacant(entry) => {
                // Damp where it is dried first, and as it lies where it is not.
                let damp = cloth_in_room(job, cloth, stack_of(job, cloth, candidate).film).bare();
                let passes = dryings + job.order.shop.passes.max(1);
                *entry.insert(ClothHeat::by(&simulate(job, &damp, point, passes)?))
            }
        };
        let cloth = ClothHeat { peak: under.peak.max(beside.peak), scorch: under.scorch.max(beside.scorch) };
        Ok(RunHistories { film_peak: print.film_peak(), print, cloth })
    }
}

fn dial_bits(point: &SetPoint) -> [u64; 2] {
    [point.set, point.belt].map(f64::to_bits)
}

fn simulate(
    job: &Job,
    stack: &Stack,
    point: &SetPoint,
    passes: u32,
) -> Result<History<DRIFT_CASES>, HistoryError> {
    let cases = drift_cases(&job.dryer.drift).map(|drift| Case { set: point.set, belt: point.belt, drift });
    history(stack, &job.dryer, &cases, passes, TOLERANCE)
}

/// Most passes in which a shop dries a piece: what is wetter is hung up first. Assumed, 2 to 6.
pub const MOST_DRYINGS: u32 = 4;

/// Passes through the dryer at a set point after which no more water is left in the bare cloth than drying is taken to
/// leave, as it comes out of the heat; `None` where it takes more than a shop would run.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn passes_to_dry(job: &Job, cloth: &Cloth, point: &SetPoint) -> Result<Option<u32>, HistoryError> {
    let bare = damp(job, cloth);
    let case = Case { set: point.set, belt: point.belt, drift: DriftCase::NOMINAL };
    for passes in 1..=MOST_DRYINGS {
        let history = history::<1>(&bare, &job.dryer, &[case], passes, TOLERANCE)?;
        let leaves = history.leaves[0];
        let at_exit = history.samples.iter().rev().find(|sample| sample.time[0] <= leaves);
        if at_exit.is_some_and(|sample| sample.water[0] <= LEFT) {
            return Ok(Some(passes));
        }
    }
    Ok(None)
}
