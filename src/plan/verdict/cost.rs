//! What a candidate costs, and which of two is better.

use super::assessment::Assessment;
use super::rule::Stake;
use super::usual::unusual;
use crate::ink::ink_per_print;
use crate::plan::bleed::ADDITIVE;
use crate::plan::margins::finish_missed;
use crate::plan::order::{Cloth, Job, Priority};
use crate::plan::recipe::{Candidate, SHORTEST_FLASH};

/// Press cycle without the flash, s: index, strokes, loading. Common practice, no source.
const CYCLE: f64 = 5.0;
/// Belt that one garment takes up, m. Common practice, no source.
const GARMENT_LENGTH: f64 = 0.75;
/// What an hour of press, dryer and two people costs, in the shop's money. Invented for the demo.
pub const HOUR: f64 = 60.0;

/// Price of adhesion additive per kilogram, in the shop's money. Invented for the demo.
const ADDITIVE_PRICE: f64 = 60.0;

/// Time of one person to lay a bare piece on the belt and take it off again, s. 4 to 12, assumed.
const HANDLING: f64 = 6.0;
/// What an hour of that person costs, in the shop's money; a part of [`HOUR`]. Invented for the demo.
const HANDS: f64 = 18.0;

/// How fast a candidate runs.
#[derive(Clone, Copy, Debug)]
pub struct Pace {
    /// Prints per hour.
    pub per_hour: f64,
    /// Passes in which the cloth of each piece is dried before.
    pub dryings: u32,
}

/// Order of two candidates: by verdict first, then by burden.
pub fn order(job: &Job, cloth: &Cloth, a: &Assessment<'_>, b: &Assessment<'_>) -> std::cmp::Ordering {
    // The verdict comes first: what can run today goes before a trial, whatever it costs.
    a.verdict.cmp(&b.verdict).then(burden(job, cloth, a).total_cmp(&burden(job, cloth, b)))
}

/// The burden of a candidate: ink, time, risk, and what the order cares for, all in the shop's money.
pub fn burden(job: &Job, cloth: &Cloth, assessment: &Assessment<'_>) -> f64 {
    let pace = pace_of(job, assessment);
    burden_of(
        job,
        cloth,
        &assessment.candidate,
        assessment.look.garment_shows,
        assessment.fail_later.likely,
        pace,
    )
}

/// The burden from what is known before a candidate is assessed: how much of the garment shows (ΔE00), the
/// chance of a late fault (0 to 1), and how fast it runs.
pub fn burden_of(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    shows: f64,
    chance: f64,
    pace: Pace,
) -> f64 {
    let pieces = f64::from(cloth.garment.pieces);
    let stake = Stake { pieces, value: cloth.garment.value_each };
    let risk = stake.expected_running(chance);
    let unusual = stake.loss() * unusual(job, cloth, candidate);
    let cost = cost_of(job, candidate, pace) * pieces;
    let hand = candidate.total_film() / 100e-6 * candidate.white.stiffness;
    // Worth on one piece of a step of hand, of show-through and of standing nap; common practice, no source.
    let (needed, held) = candidate.matting(job, cloth);
    let nap = 0.2 * (1.0 - held / needed.max(1e-9)).max(0.0) * pieces;
    let (feel, cover) = (0.15 * hand * pieces, 0.05 * shows * pieces + nap);
    // A finish is asked for by name, so it counts the same whatever the priority. The loss on one piece whose
    // finish is missed altogether, in the shop's money: assumed.
    let finish = 0.5 * finish_missed(job, cloth, candidate) * pieces;
    let rest = match job.order.print.priority {
        Priority::Balanced => risk + cost + feel + cover,
        Priority::StaysWhite | Priority::Durable => 3.0 * risk + cost + 0.3 * (feel + cover),
        Priority::Soft => risk + cost + 8.0 * feel + cover,
        Priority::Opaque => risk + cost + feel + 8.0 * cover,
        Priority::Fast => risk + cost + 2.0 * pieces * HOUR / pace.per_hour + 0.3 * (feel + cover),
        Priority::Cheap => risk + 3.0 * cost,
    };
    rest + finish + unusual
}

/// Ink of one print, in the shop's money.
fn ink_cost(job: &Job, candidate: &Candidate<'_>) -> f64 {
    let print = &job.order.print;
    let places = print.locations.len().max(1) as f64;
    let (area, coverage) = (print.area_cm2 * 1e-4 * places, print.coverage_percent / 100.0);
    let blocker = candidate.blocker.map_or(0.0, |blocker| {
        ink_per_print(area, coverage, blocker.film, blocker.density) * blocker.price_per_kg
    });
    let white = candidate.white;
    let additive = if candidate.additive { ADDITIVE * ADDITIVE_PRICE } else { 0.0 };
    blocker + ink_per_print(area, coverage, candidate.film, white.density) * (white.price_per_kg + additive)
}

/// Ink, machine time and drying of one print, in the shop's money.
pub fn cost_per_print(job: &Job, assessment: &Assessment<'_>) -> f64 {
    cost_of(job, &assessment.candidate, pace_of(job, assessment))
}

/// Ink, machine time and the labour of drying before, of one print, in the shop's money.
fn cost_of(job: &Job, candidate: &Candidate<'_>, pace: Pace) -> f64 {
    let pieces: f64 = job.order.garments.iter().map(|garment| f64::from(garment.pieces)).sum();
    let screens = f64::from(u8::from(candidate.smoothing) + u8::from(candidate.blocker.is_some()));
    let set_up = screens * HOUR * job.rules.screen_change / 60.0 / pieces.max(1.0);
    let drying = f64::from(pace.dryings) * HANDLING / 3600.0 * HANDS;
    ink_cost(job, candidate) + HOUR / pace.per_hour + set_up + drying
}

/// Prints per hour: the slower of the press (its cycle and flashes) and the belt.
pub fn rate_per_hour(job: &Job, assessment: &Assessment<'_>) -> f64 {
    pace_of(job, assessment).per_hour
}

/// How fast an assessed candidate runs.
fn pace_of(job: &Job, assessment: &Assessment<'_>) -> Pace {
    let flash = assessment.run.flash.map_or(0.0, |flash| flash.seconds);
    pace(job, &assessment.candidate, flash, assessment.run.point.belt, assessment.run.dryings)
}

/// How fast a candidate runs at best: with the shortest flash, the fastest belt, and dried before in one
/// pass.
pub fn fastest(job: &Job, candidate: &Candidate<'_>) -> Pace {
    let flash = if candidate.flashes(job) > 0 { SHORTEST_FLASH } else { 0.0 };
    pace(job, candidate, flash, job.dryer.belt.fastest, u32::from(candidate.dried))
}

/// How fast a candidate runs with a flash (s), a belt (m/s), and so many passes to dry its cloth: every pass
/// takes its place on the belt.
pub fn pace(job: &Job, candidate: &Candidate<'_>, flash: f64, belt: f64, dryings: u32) -> Pace {
    let press = (CYCLE + flash) / candidate.white.pace.max(0.1);
    let belt = GARMENT_LENGTH / belt * f64::from(job.order.shop.passes.max(1) + dryings);
    Pace { per_hour: 3600.0 / press.max(belt), dryings }
}
