//! The histories that a judgement reads: the print and the cloth beside it, in every run that a set point must survive.
//!
//! They know nothing of ink prices, dyes or looks, so that every way with the same films at the same setting shares them.
//! The print decides between ways; the cloth beside it is marched for those that are shown. Cloth that is dried before has
//! been through the same heat already, bare and damp: the cloth beside the print is marched from there, and that part of a
//! piece is the hottest in either case.

use super::candidate::Candidate;
use super::dried::{MOST_DRYINGS, passes_to_dry};
use super::judge::stack_of;
use super::memory::cloth_in_room;
use super::outlook::{Outlook, Running};
use super::window::SetPoint;
use super::{Cloth, Job};
use crate::cure::scorch;
use crate::dryer::{Case, DriftCase, DriftRange, History, HistoryError, Stack, TOLERANCE, history};
use crate::numerics::Lanes;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

/// Runs that are looked at for every margin.
pub(super) const WORLDS: usize = 8;

/// The runs at a set point, the planned one first, then the corners that the set point must survive.
fn worlds(drift: &DriftRange) -> [DriftCase; WORLDS] {
    let nominal = DriftCase::NOMINAL;
    [
        nominal,
        DriftCase::cold(drift),
        DriftCase::hot(drift),
        DriftCase::stopped(drift),
        DriftCase { film: 1.0 + drift.film, ..nominal },
        DriftCase { film: 1.0 - drift.film, ..nominal },
        // Regain of a room that is 15 points damper or drier than the gauge says.
        DriftCase { water: 1.3, ..nominal },
        DriftCase { water: 0.75, ..nominal },
    ]
}

/// What every judgement reads off the cloth.
#[derive(Clone, Copy, Debug)]
pub(super) struct Singed {
    /// Highest temperature of its face, K.
    pub peak: Lanes<WORLDS>,
    /// Scorch index.
    pub scorch: Lanes<WORLDS>,
}

impl Singed {
    fn by(history: &History<WORLDS>) -> Self {
        Self { peak: history.cloth_peak(), scorch: scorch(history, |sample| sample.cloth_face) }
    }
}

/// A print, and the cloth under or beside it, whichever is hotter: beside it is no film to warm and none to shade it.
#[derive(Clone, Debug)]
pub(super) struct Ride {
    pub print: Arc<History<WORLDS>>,
    /// Highest temperature of the film's surface, K.
    pub film_peak: Lanes<WORLDS>,
    pub cloth: Singed,
}

/// Rides of one cloth, by films and setting.
#[derive(Clone, Debug, Default)]
pub(super) struct Rides {
    /// By thickness and density of white and blocker, set temperature and belt, bit for bit, and whether dried before.
    prints: BTreeMap<([u64; 6], bool), Arc<History<WORLDS>>>,
    /// By set temperature and belt, and whether dried before.
    beside: BTreeMap<([u64; 2], bool), Singed>,
    /// Passes that dry the bare cloth, by set temperature and belt.
    dryings: BTreeMap<[u64; 2], Option<u32>>,
}

impl Rides {
    /// How many are kept.
    pub fn len(&self) -> usize {
        self.prints.len() + self.beside.len()
    }
    /// Passes in which the bare cloth is dried at a set point; `None` where it takes more than a shop would run.
    ///
    /// # Errors
    /// As the march.
    pub fn passes_to_dry(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        point: &SetPoint,
    ) -> Result<Option<u32>, HistoryError> {
        Ok(match self.dryings.entry(dials(point)) {
            Entry::Occupied(had) => *had.get(),
            Entry::Vacant(entry) => *entry.insert(passes_to_dry(job, cloth, point)?),
        })
    }

    /// Passes in which a way's cloth is dried before, at most as many as a shop would run; 0 where it is printed as it lies.
    ///
    /// # Errors
    /// As the march.
    pub fn dryings(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        way: &Candidate<'_>,
        point: &SetPoint,
    ) -> Result<u32, HistoryError> {
        Ok(match way.dried {
            true => self.passes_to_dry(job, cloth, point)?.unwrap_or(MOST_DRYINGS),
            false => 0,
        })
    }

    /// The print of a way at a set point, marched where it was not yet.
    ///
    /// # Errors
    /// As the march.
    pub fn print(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        way: &Candidate<'_>,
        point: &SetPoint,
    ) -> Result<Arc<History<WORLDS>>, HistoryError> {
        let stack = stack_of(job, cloth, way);
        let blocker = stack.blocker.map_or([0.0, 0.0], |film| [film.thickness, film.density]);
        let [a, b, c, d] =
            [stack.film.thickness, stack.film.density, blocker[0], blocker[1]].map(f64::to_bits);
        let [set, belt] = dials(point);
        Ok(match self.prints.entry(([a, b, c, d, set, belt], way.dried)) {
            Entry::Occupied(had) => had.get().clone(),
            Entry::Vacant(entry) => {
                entry.insert(Arc::new(march(job, &stack, point, job.order.shop.passes)?)).clone()
            }
        })
    }

    /// The whole ride of a way, marched where it was not yet.
    ///
    /// # Errors
    /// As the march.
    pub fn of(&mut self, job: &Job, cloth: &Cloth, outlook: &Outlook<'_>) -> Result<Ride, HistoryError> {
        let Outlook { way, run: Running { point, dryings, .. }, .. } = outlook;
        let print = self.print(job, cloth, way, point)?;
        let under = Singed::by(&print);
        let beside = match self.beside.entry((dials(point), way.dried)) {
            Entry::Occupied(had) => *had.get(),
            Entry::Vacant(entry) => {
                // Damp where it is dried first, and as it lies where it is not.
                let damp = cloth_in_room(job, cloth, stack_of(job, cloth, way).film).bare();
                let passes = dryings + job.order.shop.passes.max(1);
                *entry.insert(Singed::by(&march(job, &damp, point, passes)?))
            }
        };
        let cloth = Singed { peak: under.peak.max(beside.peak), scorch: under.scorch.max(beside.scorch) };
        Ok(Ride { film_peak: print.film_peak(), print, cloth })
    }
}

fn dials(point: &SetPoint) -> [u64; 2] {
    [point.set, point.belt].map(f64::to_bits)
}

fn march(job: &Job, stack: &Stack, point: &SetPoint, passes: u32) -> Result<History<WORLDS>, HistoryError> {
    let cases = worlds(&job.dryer.drift).map(|drift| Case { set: point.set, belt: point.belt, drift });
    history(stack, &job.dryer, &cases, passes, TOLERANCE)
}
