//! What lies on the belt: a candidate's films on its cloth, with the water of room and order, or dried
//! before.

use super::candidate::Candidate;
use crate::dryer::{Film, NearInfrared, Stack};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::quantity::{Percent, Share};
use crate::textile::{Fabric, moisture};

/// Water left in cloth that went through the dryer once, or hung over it, as a share of its dry mass. From
/// memory: 0.01 to 0.03.
pub const LEFT: f64 = 0.02;

/// Water beyond [`LEFT`] that makes a pass through the dryer worthwhile, as a share of the dry mass. Chosen.
const WORTH: f64 = 0.01;

/// The cloth under a film, with the water of the room's humidity and of the order.
pub fn cloth_in_room(job: &Job, cloth: &Cloth, film: Film) -> Stack {
    let humidity = Percent(job.order.shop.humidity_percent).share();
    let mut stack = cloth.garment.under_print.under(Stack::garment(film, &cloth.fabric, humidity));
    stack.added_water = cloth.garment.added_water_percent / 100.0;
    stack.near_infrared = NearInfrared::on_cloth(cloth.lab.lightness);
    stack
}

/// The stack of a candidate: its white, the blocker under it, and its cloth as it lies or dried before.
#[must_use]
pub fn stack_of(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Stack {
    let film = Film { thickness: candidate.film, density: candidate.white.density };
    let blocker = candidate.blocker.map(|blocker| Film { thickness: blocker.film, density: blocker.density });
    Stack { blocker, ..cloth_of(job, cloth, candidate, film) }
}

/// The cloth of a candidate under a film, as it lies or dried before.
pub fn cloth_of(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>, film: Film) -> Stack {
    let damp = cloth_in_room(job, cloth, film);
    if candidate.dried { dry(damp, &cloth.fabric) } else { damp }
}

/// Water in a stack's cloth as a share of its dry mass: regain at the room's humidity, and added water.
pub fn water(stack: &Stack, fabric: &Fabric) -> f64 {
    moisture::regain(stack.humidity.0, fabric.regain_65) + stack.added_water
}

/// The cloth as it lies in the room, not printed.
pub fn damp(job: &Job, cloth: &Cloth) -> Stack {
    cloth_in_room(job, cloth, Film { thickness: 0.0, density: Film::DENSITY })
}

/// True if drying removes enough water to be worth a pass.
pub fn is_damp(stack: &Stack, fabric: &Fabric) -> bool {
    water(stack, fabric) > LEFT + WORTH
}

/// True if a candidate's cloth comes with added water that drying would remove, and is printed as it lies.
pub fn comes_damp(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> bool {
    let added = !candidate.dried && cloth.garment.added_water_percent > 0.0;
    added && is_damp(&damp(job, cloth), &cloth.fabric)
}

/// True if the cloth holds more water than its fibres can bind, so that it lies between them.
pub fn is_soaked(stack: &Stack, fabric: &Fabric) -> bool {
    water(stack, fabric) > moisture::regain(1.0, fabric.regain_65)
}

/// The same stack on cloth that was dried before, in balance with the water left in it; unchanged if drying
/// is not worth a pass.
pub fn dry(stack: Stack, fabric: &Fabric) -> Stack {
    if !is_damp(&stack, fabric) {
        return stack;
    }
    let held = Lanes::<1>::splat(fabric.regain_65.max(1e-3));
    let humidity = moisture::balance_humidity(Lanes::splat(LEFT), held)[0].min(stack.humidity.0);
    Stack { humidity: Share(humidity), added_water: 0.0, ..stack }
}
