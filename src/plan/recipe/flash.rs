//! The flash between strokes: how long a film needs to gel, and the dye that this releases.

use super::candidate::Candidate;
use super::stack::cloth_of;
use crate::cure::gelled_at;
use crate::dryer::{Film, FlashUnit, HistoryError, TOLERANCE, flash};
use crate::migration::{Release, release};
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::quantity::Share;
use crate::quantity::units::celsius;

/// A flash between strokes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlashStep {
    /// How long, s.
    pub seconds: f64,
    /// Temperature of the film's surface at its end, °C.
    pub film_c: f64,
    /// Dye that it releases.
    pub release: Release<1>,
}

/// Shortest flash that a press runs, s. Common practice, no source.
pub const SHORTEST_FLASH: f64 = 1.0;

/// Longest flash that is considered, s. Common practice, no source: 3 to 8 s are usual.
const LONGEST_FLASH: f64 = 25.0;

/// The shortest flash that dries a film: until its underside has gelled, [`LONGEST_FLASH`] at most.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn flash_step(job: &Job, cloth: &Cloth, candidate: &Candidate<'_>) -> Result<FlashStep, HistoryError> {
    let film = match candidate.blocker {
        Some(blocker) => blocker.film,
        None => candidate.film / f64::from(candidate.strokes),
    };
    let stack = cloth_of(job, cloth, candidate, Film { thickness: film, density: candidate.white.density });
    let run = |seconds: f64| flash::<1>(&stack, &FlashUnit::USUAL, Lanes::splat(seconds), TOLERANCE);
    let long = run(LONGEST_FLASH)?;
    let (kinetics, gelled) = (&candidate.white.kinetics, Share(job.rules.gelled));
    let seconds = gelled_at(&long, |sample| sample.film_bottom, kinetics, gelled).unwrap_or(LONGEST_FLASH);
    let seconds = seconds.clamp(SHORTEST_FLASH, LONGEST_FLASH);
    let short = run(seconds)?;
    let film_c = celsius(short.film_peak()[0]);
    let release = cloth.dyed.map_or(Release::NONE, |dyed| release(&short, &dyed));
    Ok(FlashStep { seconds, film_c, release })
}

/// The flash of a candidate; `None` if none of its films is flashed.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn flash_of(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
) -> Result<Option<FlashStep>, HistoryError> {
    let flashed = candidate.flashes(job) > 0;
    flashed.then(|| flash_step(job, cloth, candidate)).transpose()
}
