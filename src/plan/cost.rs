//! What a way costs, and which of two is better.

use super::ageing::ADDITIVE;
use super::candidate::Candidate;
use super::decide::Stake;
use super::gloss::finish_missed;
use super::judge::{Judged, SHORTEST_FLASH};
use super::{Cloth, Job, Priority};
use crate::ink::ink_per_print;

/// Press cycle without the flash, s: index, strokes, loading. Common practice, no source.
const CYCLE: f64 = 5.0;
/// Belt that one garment takes up, m. Common practice, no source.
const GARMENT_LENGTH: f64 = 0.75;
/// What an hour of press, dryer and two people costs, in the shop's money. Invented for the demo.
pub(super) const HOUR: f64 = 60.0;

/// Price of adhesion additive per kilogram, in the shop's money. Invented for the demo.
const ADDITIVE_PRICE: f64 = 60.0;

/// Setting one screen more, min; as `screen-change` in `data/limits.json`.
pub const SCREEN_CHANGE: f64 = 6.0;

/// Rank of two ways: verdict first, then what they cost in money, risk and what the order cares for.
pub(super) fn order(job: &Job, cloth: &Cloth, a: &Judged<'_>, b: &Judged<'_>) -> std::cmp::Ordering {
    // Go and go-with-check are both printed today, a trial is not.
    a.verdict.cmp(&b.verdict).then(burden(job, cloth, a).total_cmp(&burden(job, cloth, b)))
}

/// What a way costs the order: ink, time, risk, and what the order cares for, all in the shop's money.
pub(super) fn burden(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> f64 {
    let (way, rate) = (&judged.way, rate_per_hour(job, judged));
    burden_of(job, cloth, way, judged.look.garment_shows, judged.fail_later.likely, rate)
}

/// The same from what of it is known before a way is judged: how much of the garment shows, the chance of a late fault,
/// prints per hour.
pub(super) fn burden_of(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    shows: f64,
    chance: f64,
    rate: f64,
) -> f64 {
    let pieces = f64::from(cloth.garment.pieces);
    let stake = Stake { pieces, value: cloth.garment.value_each };
    let risk = stake.expected_running(chance);
    let cost = cost_of(job, way, rate) * pieces;
    let hand = way.total_film() / 100e-6 * way.white.stiffness;
    // What a step of hand, of show-through or of standing nap is worth on one piece; common practice, no source.
    let (needed, held) = way.matting(job, cloth);
    let nap = 0.2 * (1.0 - held / needed.max(1e-9)).max(0.0) * pieces;
    let (feel, cover) = (0.15 * hand * pieces, 0.05 * shows * pieces + nap);
    // A finish is asked for by name, so it counts the same whatever else matters most. What one that is missed wholly takes
    // from a piece, in the shop's money: assumed.
    let finish = 0.5 * finish_missed(job, cloth, way) * pieces;
    let rest = match job.order.print.priority {
        Priority::Balanced => risk + cost + feel + cover,
        Priority::StaysWhite | Priority::Durable => 3.0 * risk + cost + 0.3 * (feel + cover),
        Priority::Soft => risk + cost + 8.0 * feel + cover,
        Priority::Opaque => risk + cost + feel + 8.0 * cover,
        Priority::Fast => risk + cost + 2.0 * pieces * HOUR / rate + 0.3 * (feel + cover),
        Priority::Cheap => risk + 3.0 * cost,
    };
    rest + finish
}

fn ink_cost(job: &Job, way: &Candidate<'_>) -> f64 {
    let print = &job.order.print;
    let places = print.locations.len().max(1) as f64;
    let (area, coverage) = (print.area_cm2 * 1e-4 * places, print.coverage_percent / 100.0);
    let base = way
        .base
        .map_or(0.0, |base| ink_per_print(area, coverage, base.film, base.density) * base.price_per_kg);
    let white = way.white;
    let additive = if way.additive { ADDITIVE * ADDITIVE_PRICE } else { 0.0 };
    base + ink_per_print(area, coverage, way.film, white.density) * (white.price_per_kg + additive)
}

pub(super) fn cost_per_print(job: &Job, judged: &Judged<'_>) -> f64 {
    cost_of(job, &judged.way, rate_per_hour(job, judged))
}

/// Ink and machine time of one print at so many prints per hour.
fn cost_of(job: &Job, way: &Candidate<'_>, rate: f64) -> f64 {
    let pieces: f64 = job.order.garments.iter().map(|garment| f64::from(garment.pieces)).sum();
    let smoothing = if way.smoothing { HOUR * SCREEN_CHANGE / 60.0 / pieces.max(1.0) } else { 0.0 };
    ink_cost(job, way) + HOUR / rate + smoothing
}

/// Prints per hour: the slower of the press (its cycle and flashes) and the belt.
pub(super) fn rate_per_hour(job: &Job, judged: &Judged<'_>) -> f64 {
    rate(job, &judged.way, judged.flash.map_or(0.0, |flash| flash.seconds), judged.point.belt)
}

/// Prints per hour that a way comes to at best: the shortest flash and the fastest belt that there are.
pub(super) fn fastest(job: &Job, way: &Candidate<'_>) -> f64 {
    let flashed = way.flashes(job) > 0;
    rate(job, way, if flashed { SHORTEST_FLASH } else { 0.0 }, job.dryer.belt.fastest)
}

pub(super) fn rate(job: &Job, way: &Candidate<'_>, flash: f64, belt: f64) -> f64 {
    let press = (CYCLE + flash) / way.white.pace.max(0.1);
    let belt = GARMENT_LENGTH / belt * f64::from(job.order.shop.passes.max(1));
    3600.0 / press.max(belt)
}
