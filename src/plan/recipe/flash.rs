//! The flash between strokes: as long as a film needs to gel, and what it does to the dye.

use super::candidate::Candidate;
use super::stack::cloth_of;
use crate::dryer::{Film, FlashUnit, HistoryError, TOLERANCE, flash};
use crate::migration::{Release, release};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::quantity::units::celsius;

/// A flash between strokes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlashStep {
    /// How long, s.
    pub seconds: f64,
    /// Film at its end, °C.
    pub film_c: f64,
    /// What it does to the dye.
    pub release: Release<1>,
}

/// Shortest flash that a press runs, s. Common practice, no source.
pub const SHORTEST_FLASH: f64 = 1.0;

/// The flash that just dries a film: until its underside has gelled.
///
/// # Errors
/// As the march.
pub fn flash_step(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Result<FlashStep, HistoryError> {
    let film = match candidate.blocker {
        Some(blocker) => blocker.film,
        None => candidate.film / f64::from(candidate.strokes),
    };
    let stack = cloth_of(job, cloth, candidate, Film { thickness: film, density: candidate.white.density });
    let run = |seconds: f64| flash::<1>(&stack, &FlashUnit::USUAL, Lanes::splat(seconds), TOLERANCE);
    let long = run(25.0)?;
    let trace = crate::cure::trace(&long, |sample| sample.film_bottom, &candidate.white.kinetics);
    let gelled = trace.iter().zip(&long.samples).find(|(cure, _)| cure.gelled[0] >= job.rules.gelled);
    let seconds = gelled.map_or(25.0, |(_, sample)| sample.time[0].clamp(SHORTEST_FLASH, 25.0));
    let short = run(seconds)?;
    let film_c = celsius(short.film_bottom_peak()[0]);
    let release = cloth.dyed.map_or(Release::NONE, |dyed| release(&short, &dyed));
    Ok(FlashStep { seconds, film_c, release })
}
