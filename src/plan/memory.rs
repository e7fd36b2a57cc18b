//! What was marched for earlier answers.
//!
//! Who changes the run, the priority or the customer of an order asks again about the same cloth in the same dryer: its
//! windows and rides still hold. They are kept with all that they were marched from, and serve again only where nothing of
//! that has changed, so that an answer is the same with a memory and without (`tests/answers/memory.rs`).

use super::bench::{Fuses, Setting};
use super::ride::Rides;
use super::window::{Family, SetPoint, Window};
use super::{Cloth, Job};
use crate::dryer::{Dryer, Film, NearInfrared, Stack};
use crate::migration::DyedCloth;
use std::collections::BTreeMap;

/// Cloths whose windows are remembered, some 200 kB each: more than a day's orders. Chosen.
const CLOTHS: usize = 24;
/// Cloths of them whose rides are remembered too: the order on the screen, and the one before. Chosen.
const RIDDEN: usize = 2;
/// Rides that one cloth may keep, some 64 kB each: a whole shelf takes about 60. Chosen.
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
pub(super) struct Marched {
    pub families: BTreeMap<Fuses, Family>,
    pub windows: BTreeMap<(Fuses, u32), Window>,
    pub points: BTreeMap<Setting, Option<(SetPoint, f64)>>,
    pub rides: Rides,
}

/// What was marched for earlier answers, the latest last.
#[derive(Clone, Debug, Default)]
pub struct Memory {
    cloths: Vec<(Heat, Marched)>,
}

impl Memory {
    /// Hands out what is known of a cloth, to be kept again after.
    pub(super) fn take(&mut self, job: &Job, cloth: &Cloth, films: [f64; 2]) -> Marched {
        let heat = heat(job, cloth, films);
        let had = self.cloths.iter().position(|(had, _)| *had == heat);
        had.map(|at| self.cloths.remove(at).1).unwrap_or_default()
    }

    /// Keeps what was marched of a cloth.
    pub(super) fn keep(&mut self, job: &Job, cloth: &Cloth, films: [f64; 2], mut marched: Marched) {
        if marched.rides.len() > RIDES {
            marched.rides = Rides::default();
        }
        if self.cloths.len() >= CLOTHS {
            self.cloths.remove(0);
        }
        self.cloths.push((heat(job, cloth, films), marched));
        let older = self.cloths.len().saturating_sub(RIDDEN);
        for (_, marched) in &mut self.cloths[..older] {
            // A window comes out of its family again, and a set point is known.
            marched.rides = Rides::default();
            marched.windows.clear();
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

/// The cloth under a film, as damp as the room and the order say.
pub(super) fn cloth_in_room(job: &Job, cloth: &Cloth, film: Film) -> Stack {
    let mut stack = Stack::garment(film, &cloth.fabric, job.order.shop.humidity_percent / 100.0);
    stack.added_water = cloth.garment.added_water_percent / 100.0;
    stack.near_infrared = NearInfrared::on_cloth(cloth.lab.lightness);
    stack
}
