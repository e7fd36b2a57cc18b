//! The histories that a judgement reads: the print and the cloth beside it, in every run that a set point must survive.
//!
//! They know nothing of ink prices, dyes or looks, so that every way with the same films at the same setting shares them.
//! The planned run and the corners of its drift go first, because the dye in them decides between ways; the others, and the
//! cloth beside the print, are marched for the ways that are shown. Cloth that is dried before has been through the same
//! heat already, bare and damp: the cloth beside the print is marched from there, and that part of a piece is the hottest
//! in either case.

use super::candidate::Candidate;
use super::dried::{MOST_DRYINGS, passes_to_dry};
use super::judge::stack_of;
use super::memory::cloth_in_room;
use super::outlook::{Outlook, Running};
use super::window::SetPoint;
use super::{Cloth, Job};
use crate::cure::scorch;
use crate::dryer::{Case, Drift, History, HistoryError, Stack, TOLERANCE, World, history};
use crate::numerics::Lanes;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

/// Runs that are looked at for every margin.
pub(super) const WORLDS: usize = 2 * SIDE_BY_SIDE;
/// Runs that are marched side by side.
pub(super) const SIDE_BY_SIDE: usize = 4;

/// The planned run, the corners of its drift, and a stop of the belt.
fn drift(drift: &Drift) -> [World; SIDE_BY_SIDE] {
    [World::NOMINAL, World::cold(drift), World::hot(drift), World::stopped(drift)]
}

/// Runs that differ in the film or in the water of the cloth.
fn laid(drift: &Drift) -> [World; SIDE_BY_SIDE] {
    let nominal = World::NOMINAL;
    [
        World { film: 1.0 + drift.film, ..nominal },
        World { film: 1.0 - drift.film, ..nominal },
        // Regain of a room that is 15 points damper or drier than the gauge says.
        World { water: 1.3, ..nominal },
        World { water: 0.75, ..nominal },
    ]
}

/// Histories of one half of the runs.
type Half = Arc<History<SIDE_BY_SIDE>>;

/// What is read off each half of the runs, the planned one first.
fn over(halves: [&History<SIDE_BY_SIDE>; 2], read: impl Fn(&History<SIDE_BY_SIDE>) -> Lanes<SIDE_BY_SIDE>) -> Lanes<WORLDS> {
    let halves = halves.map(read);
    Lanes::from_fn(|lane| halves[lane / SIDE_BY_SIDE][lane % SIDE_BY_SIDE])
}

/// What every judgement reads off the cloth.
#[derive(Clone, Copy, Debug)]
struct Singed {
    /// Highest temperature of its face, K.
    peak: Lanes<WORLDS>,
    /// Scorch index.
    scorch: Lanes<WORLDS>,
}

impl Singed {
    fn by(halves: [&History<SIDE_BY_SIDE>; 2]) -> Self {
        Self {
            peak: over(halves, History::cloth_peak),
            scorch: over(halves, |history| scorch(history, |sample| sample.cloth_face)),
        }
    }
}

/// A print and the cloth beside it, which has no film to warm and none to shade it.
#[derive(Clone, Debug)]
pub(super) struct Ride {
    /// The print over drift.
    pub drift: Half,
    laid: Half,
    print: Singed,
    beside: Singed,
}

impl Ride {
    /// What is read off the print in every run, the planned one first.
    pub fn over(&self, read: impl Fn(&History<SIDE_BY_SIDE>) -> Lanes<SIDE_BY_SIDE>) -> Lanes<WORLDS> {
        over([&self.drift, &self.laid], read)
    }

    /// Highest temperature of the cloth, under the print or beside it, K.
    pub fn cloth_peak(&self) -> Lanes<WORLDS> {
        self.print.peak.max(self.beside.peak)
    }

    /// Scorch index of the cloth, under the print or beside it.
    pub fn scorch(&self) -> Lanes<WORLDS> {
        self.print.scorch.max(self.beside.scorch)
    }
}

/// Thickness and density of white and blocker, set temperature and belt, bit for bit, and whether dried before.
type Setting = ([u64; 6], bool);

/// Rides of one cloth, by films and setting.
#[derive(Clone, Debug, Default)]
pub(super) struct Rides {
    /// Prints over drift, and where they were judged in the other runs too.
    drift: BTreeMap<Setting, Half>,
    laid: BTreeMap<Setting, (Half, Singed)>,
    /// By set temperature and belt, and whether dried before.
    beside: BTreeMap<([u64; 2], bool), Singed>,
    /// Passes that dry the bare cloth, by set temperature and belt.
    dryings: BTreeMap<[u64; 2], Option<u32>>,
}

impl Rides {
    /// How many are kept.
    pub fn len(&self) -> usize {
        self.drift.len() + self.laid.len()
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

    /// The print over drift, marched where it was not yet: as planned, at the cold and at the hot corner, and with a stop of
    /// the belt.
    ///
    /// # Errors
    /// As the march.
    pub fn drift(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        way: &Candidate<'_>,
        point: &SetPoint,
    ) -> Result<Half, HistoryError> {
        let stack = stack_of(job, cloth, way);
        Ok(match self.drift.entry(setting(&stack, way, point)) {
            Entry::Occupied(had) => had.get().clone(),
            Entry::Vacant(entry) => {
                let half = march(job, &stack, point, drift(&job.dryer.drift), job.order.shop.passes)?;
                entry.insert(Arc::new(half)).clone()
            }
        })
    }

    /// The whole ride of a way, marched where it was not yet.
    ///
    /// # Errors
    /// As the march.
    pub fn of(&mut self, job: &Job, cloth: &Cloth, outlook: &Outlook<'_>) -> Result<Ride, HistoryError> {
        let Outlook { way, run: Running { point, dryings, .. }, .. } = outlook;
        let stack = stack_of(job, cloth, way);
        let passes = job.order.shop.passes;
        let worlds = [drift(&job.dryer.drift), laid(&job.dryer.drift)];
        let over_drift = self.drift(job, cloth, way, point)?;
        let (laid, print) = match self.laid.entry(setting(&stack, way, point)) {
            Entry::Occupied(had) => had.get().clone(),
            Entry::Vacant(entry) => {
                let laid = march(job, &stack, point, worlds[1], passes)?;
                let print = Singed::by([&over_drift, &laid]);
                entry.insert((Arc::new(laid), print)).clone()
            }
        };
        let beside = match self.beside.entry((dials(point), way.dried)) {
            Entry::Occupied(had) => *had.get(),
            Entry::Vacant(entry) => {
                // Damp where it is dried first, and as it lies where it is not.
                let damp = cloth_in_room(job, cloth, stack.film).bare();
                let ride = |worlds| march(job, &damp, point, worlds, dryings + passes.max(1));
                *entry.insert(Singed::by([&ride(worlds[0])?, &ride(worlds[1])?]))
            }
        };
        Ok(Ride { drift: over_drift, laid, print, beside })
    }
}

fn dials(point: &SetPoint) -> [u64; 2] {
    [point.set, point.belt].map(f64::to_bits)
}

fn setting(stack: &Stack, way: &Candidate<'_>, point: &SetPoint) -> Setting {
    let blocker = stack.blocker.map_or([0.0, 0.0], |film| [film.thickness, film.density]);
    let [a, b, c, d] = [stack.film.thickness, stack.film.density, blocker[0], blocker[1]].map(f64::to_bits);
    let [set, belt] = dials(point);
    ([a, b, c, d, set, belt], way.dried)
}

fn march(
    job: &Job,
    stack: &Stack,
    point: &SetPoint,
    worlds: [World; SIDE_BY_SIDE],
    passes: u32,
) -> Result<History<SIDE_BY_SIDE>, HistoryError> {
    let cases = worlds.map(|world| Case { set: point.set, belt: point.belt, world });
    history(stack, &job.dryer, &cases, passes, TOLERANCE)
}
