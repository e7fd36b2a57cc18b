//! Simulations that are kept from one answer to the next.
//!
//! When the run, the priority or the customer of an order changes, the next answer is about the same cloth in
//! the same dryer: its windows and histories still hold. They are kept with everything that they were
//! computed from and used again only if none of that has changed, so that an answer is the same with a cache
//! and without (`tests/answers/memory.rs`).
//!
//! **Decision:** windows of a day's orders are kept, and temperature histories of the last two. The key holds
//! everything that a simulation reads.
//! **Because:** a library that changes then needs no invalidation.
//! **Measured:** `tests/answers/memory.rs`: answers are the same bit for bit (2026-11-28); the time saved is
//! not recorded here.
//! **Reconsider when:** a simulation reads something outside its key, or memory on a tablet runs short.

use super::heat_estimate::WindowHeat;
use crate::dryer::{Dryer, Film, Stack};
use crate::migration::DyedCloth;
use crate::plan::margins::HistoryCache;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::cloth_in_room;
use crate::plan::window::{Family, SetPoint, Window};
use std::collections::BTreeMap;

/// Cloths whose windows are kept, some 200 kB each: more than a day's orders. Chosen.
const CLOTHS: usize = 24;
/// Latest cloths whose histories are kept too: of the order on the screen, and the one before. Chosen.
const RECENT_CLOTHS: usize = 2;
/// Histories that are kept for one cloth, some 64 kB each: a whole shelf takes about 60. Chosen.
const MOST_HISTORIES: usize = 96;

/// Everything that a simulation of one cloth depends on, except film and setting.
#[derive(Clone, Debug, PartialEq)]
struct SimulationInputs {
    bare: Stack,
    dyed: Option<DyedCloth>,
    dryer: Dryer,
    passes: u32,
    fixed: Option<f64>,
    /// The lightest and the heaviest film, kg/m².
    films: [f64; 2],
}

/// A set point with what its window says of it.
#[derive(Clone, Copy, Debug)]
pub struct PlannedPoint {
    pub point: SetPoint,
    /// Dye that the heat brings there, as a mean over drift, kg/m².
    pub dye: f64,
    pub heat: WindowHeat,
}

/// The simulations of one cloth.
#[derive(Clone, Debug, Default)]
pub struct ClothSimulations {
    pub families: BTreeMap<FusionKey, Family>,
    pub windows: BTreeMap<(FusionKey, u32), Window>,
    pub points: BTreeMap<SetPointKey, Option<PlannedPoint>>,
    pub histories: HistoryCache,
}

/// Simulations that are kept from one answer to the next, the latest cloth last.
#[derive(Clone, Debug, Default)]
pub struct SimulationCache {
    cloths: Vec<(SimulationInputs, ClothSimulations)>,
}

impl SimulationCache {
    /// Takes out the simulations of a cloth; [`Self::keep`] puts them back.
    pub fn take(&mut self, job: &Job, cloth: &Cloth, films: [f64; 2]) -> ClothSimulations {
        let inputs = inputs(job, cloth, films);
        let place = self.cloths.iter().position(|(kept, _)| *kept == inputs);
        place.map(|at| self.cloths.remove(at).1).unwrap_or_default()
    }

    /// Keeps the simulations of a cloth.
    pub fn keep(&mut self, job: &Job, cloth: &Cloth, films: [f64; 2], mut simulations: ClothSimulations) {
        if simulations.histories.len() > MOST_HISTORIES {
            simulations.histories = HistoryCache::default();
        }
        if self.cloths.len() >= CLOTHS {
            self.cloths.remove(0);
        }
        self.cloths.push((inputs(job, cloth, films), simulations));
        let older = self.cloths.len().saturating_sub(RECENT_CLOTHS);
        for (_, simulations) in &mut self.cloths[..older] {
            // Drop histories and windows only: a window is interpolated again from its family, and set points
            // stay known.
            simulations.histories = HistoryCache::default();
            simulations.windows.clear();
        }
    }
}

fn inputs(job: &Job, cloth: &Cloth, films: [f64; 2]) -> SimulationInputs {
    SimulationInputs {
        bare: cloth_in_room(job, cloth, Film { thickness: 0.0, density: 0.0 }),
        dyed: cloth.dyed,
        dryer: job.dryer.clone(),
        passes: job.order.shop.passes,
        fixed: job.order.shop.dryer_fixed,
        films,
    }
}

/// Fusion kinetics of two inks as bits, and whether the cloth is dried before. Whites fuse alike unless their
/// own prints were tested.
pub type FusionKey = ([[u64; 5]; 2], bool);

/// Everything that a set point depends on: fusion kinetics, mass of the film, and demands, as bits.
pub type SetPointKey = ((FusionKey, u32), [u64; 8]);
