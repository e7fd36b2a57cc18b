//! What lies on the belt: a candidate's films on its cloth, as damp as the room and the order say, or dried before.

use super::candidate::Candidate;
use crate::dryer::{Film, NearInfrared, Stack};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::quantity::{Percent, Share};
use crate::textile::{Fabric, moisture};

/// Water left in cloth that has been through the dryer once, or hung over it. From memory: 1 to 3 %.
pub const LEFT: f64 = 0.02;

/// Water beyond that which is worth a pass through the dryer. Chosen.
const WORTH: f64 = 0.01;

/// The cloth under a film, as damp as the room and the order say.
pub fn cloth_in_room(job: &Job, cloth: &Cloth, film: Film) -> Stack {
    let mut stack = Stack::garment(film, &cloth.fabric, Percent(job.order.shop.humidity_percent).share());
    stack.added_water = cloth.garment.added_water_percent / 100.0;
    stack.near_infrared = NearInfrared::on_cloth(cloth.lab.lightness);
    stack
}

/// The stack of a way: its white, the blocker under it, the cloth as damp as the room and the order say, or dried.
#[must_use]
pub fn stack_of(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Stack {
    let film = Film { thickness: candidate.film, density: candidate.white.density };
    let blocker = candidate.blocker.map(|blocker| Film { thickness: blocker.film, density: blocker.density });
    Stack { blocker, ..cloth_of(job, cloth, candidate, film) }
}

/// The cloth of a way under a film.
pub fn cloth_of(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>, film: Film) -> Stack {
    let damp = cloth_in_room(job, cloth, film);
    if candidate.dried { dry(damp, &cloth.fabric) } else { damp }
}

/// Water in a stack's cloth as it lies in the room, as a share of its dry mass.
pub fn water(stack: &Stack, fabric: &Fabric) -> f64 {
    moisture::regain(stack.humidity.0, fabric.regain_65) + stack.added_water
}

/// The cloth of a job as it lies in the room, nothing printed on it.
pub fn damp(job: &Job, cloth: &Cloth) -> Stack {
    cloth_in_room(job, cloth, Film { thickness: 0.0, density: Film::DENSITY })
}

/// True where drying takes something off that is worth a pass.
pub fn is_damp(stack: &Stack, fabric: &Fabric) -> bool {
    water(stack, fabric) > LEFT + WORTH
}

/// The same stack on cloth that was dried before: in balance with what water is left in it. As it is, where drying takes
/// nothing off.
pub fn dry(stack: Stack, fabric: &Fabric) -> Stack {
    if !is_damp(&stack, fabric) {
        return stack;
    }
    let held = Lanes::<1>::splat(fabric.regain_65.max(1e-3));
    let humidity = moisture::balance_humidity(Lanes::splat(LEFT), held)[0].min(stack.humidity.0);
    Stack { humidity: Share(humidity), added_water: 0.0, ..stack }
}
