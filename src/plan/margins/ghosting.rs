//! Ghosting: a white leaves a pale or dark shadow of itself on the cloth that lies against it.
//!
//! No equation: the frequency of the class on a light cotton shade, times factors for what is known to make
//! it worse. Common practice, no source, and labelled so wherever it is shown.

use crate::ink::White;
use crate::plan::order::{Cloth, Job};
use crate::plan::report::{Ghosting, Margin, Side, Topic, Unit, margin};
use crate::quantity::Band;

/// How many times more often it ghosts in a room over 70 % of humidity, and where garments are stacked hot. 3 to 8 and 1.5 to
/// 4; both together make what four blind estimates say (.25 against .022), and damp is the greater part, since the agents
/// that bleach work in water: common practice, no source.
const DAMP: f64 = 5.5;
const STACKED: f64 = 2.0;

/// How often a white ghosts on this cloth, with the factors of that frequency.
pub fn ghosting(job: &Job, cloth: &Cloth, white: &White) -> Ghosting {
    let shade = if cloth.is_light() && cloth.cellulosic() > 0.3 { 1.0 } else { 0.05 };
    let damp = if job.order.shop.humidity_percent > 70.0 { DAMP } else { 1.0 };
    let stacked = if job.order.use_.stacked_hot { STACKED } else { 1.0 };
    // It shows after days to weeks in the stack: half of it within the first week, all within a month.
    let time = (0.5 + 0.5 * ((job.order.use_.looked_at_after_days - 7.0) / 23.0)).clamp(0.5, 1.0);
    let class = white.ghosting;
    let frequency = (class * shade * damp * stacked * time).min(0.9);
    Ghosting { frequency, class, shade, damp, stacked, time }
}

/// A class frequency (0 to 1) as a margin in %: known within a factor of two at best.
pub fn frequency(job: &Job, what: Topic, chance: f64) -> Margin {
    let value = Band { low: chance / 2.0, likely: chance, high: (chance * 2.0).min(1.0) };
    margin(what, value.map(|share| share * 100.0), job.rules.go * 100.0, Side::AtMost, Unit::Percent)
}
