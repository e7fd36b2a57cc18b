//! What was marched for earlier answers.
//!
//! Who changes the run, the priority or the customer of an order asks again about the same cloth in the same dryer: its
//! windows and histories still hold. They are kept with all that they were marched from, and serve again only where nothing of
//! that has changed, so that an answer is the same with a cache and without (`tests/answers/memory.rs`).

use crate::dryer::{Dryer, Film, Stack};
use crate::migration::DyedCloth;
use crate::plan::margins::HistoryCache;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::cloth_in_room;
use crate::plan::window::{Family, SetPoint, Window};
use std::collections::BTreeMap;

/// Cloths whose windows are remembered, some 200 kB each: more than a day's orders. Chosen.
const CLOTHS: usize = 24;
/// Cloths of them whose histories are remembered too: the order on the screen, and the one before. Chosen.
const RIDDEN: usize = 2;
/// HistoryCache that one cloth may keep, some 64 kB each: a whole shelf takes about 60. Chosen.
const RIDES: usize = 96;

/// All that a march of one cloth reads but for its film and setting.
#[derive(Clone, Debug, PartialEq)]
struct Heat {
    bare: Stack,
    dyed: Option<DyedCloth>,
    dryer: Dryer,
    passes: u32,
    fixed: Option<f64>,
    films: [f64; 2],
}

/// What was marched of one cloth.
#[derive(Clone, Debug, Default)]
pub struct ClothSimulations {
    pub families: BTreeMap<FusionKey, Family>,
    pub windows: BTreeMap<(FusionKey, u32), Window>,
    pub points: BTreeMap<SetPointKey, Option<(SetPoint, f64)>>,
    pub histories: HistoryCache,
}

/// What was marched for earlier answers, the latest last.
#[derive(Clone, Debug, Default)]
pub struct SimulationCache {
    cloths: Vec<(Heat, ClothSimulations)>,
}

impl SimulationCache {
    /// Hands out what is known of a cloth, to be kept again after.
    pub fn take(&mut self, job: &Job, cloth: &Cloth, films: [f64; 2]) -> ClothSimulations {
        let heat = heat(job, cloth, films);
        let had = self.cloths.iter().position(|(had, _)| *had == heat);
        had.map(|at| self.cloths.remove(at).1).unwrap_or_default()
    }

    /// Keeps what was marched of a cloth.
    pub fn keep(&mut self, job: &Job, cloth: &Cloth, films: [f64; 2], mut simulations: ClothSimulations) {
        if simulations.histories.len() > RIDES {
            simulations.histories = HistoryCache::default();
        }
        if self.cloths.len() >= CLOTHS {
            self.cloths.remove(0);
        }
        self.cloths.push((heat(job, cloth, films), simulations));
        let older = self.cloths.len().saturating_sub(RIDDEN);
        for (_, simulations) in &mut self.cloths[..older] {
            // A window comes out of its family again, and a set point is known.
            simulations.histories = HistoryCache::default();
            simulations.windows.clear();
        }
    }
}

fn heat(job: &Job, cloth: &Cloth, films: [f64; 2]) -> Heat {
    Heat {
        bare: cloth_in_room(job, cloth, Film { thickness: 0.0, density: 0.0 }),
        dyed: cloth.dyed,
        dryer: job.dryer.clone(),
        passes: job.order.shop.passes,
        fixed: job.order.shop.dryer_fixed,
        films,
    }
}

/// How two inks fuse, bit for bit, and whether on dried cloth: whites fuse alike unless their own prints were tested.
pub type FusionKey = ([[u64; 5]; 2], bool);

/// What a set point hangs on: how the inks fuse, the film's mass, and the demands, bit for bit.
pub type SetPointKey = ((FusionKey, u32), [u64; 8]);
