//! A pick as it was run: its margins at the setting that was really dialled, without the window round it.

use crate::dryer::HistoryError;
use crate::plan::order::Job;
use crate::plan::recipe::{Candidate, flash_of};
use crate::plan::report::{DialSetting, Margin, Pick, Topic};
use crate::plan::verdict::judge;
use crate::plan::window::Demands;

/// What a run does to a print.
#[derive(Clone, Debug, PartialEq)]
pub struct AsRun {
    /// Every margin, the tightest first.
    pub margins: Vec<Margin>,
    /// Chance that the white turns, 0 to 1.
    pub turns: f64,
    /// Chance that it ghosts.
    pub ghosts: f64,
    /// Chance that it comes off nylon or a coating.
    pub comes_off: f64,
    /// Chance that it cracks in wear though it is fused.
    pub cracks: f64,
    /// Film of white, µm.
    pub film_um: f64,
}

impl AsRun {
    /// The margin of a topic, if it bears on this run.
    #[must_use]
    pub fn margin(&self, what: Topic) -> Option<&Margin> {
        self.margins.iter().find(|margin| margin.what == what)
    }
}

/// Weighs a pick at a set temperature (°C) and a belt (m/min); `None` where the job has no such garment or white.
///
/// # Errors
/// [`HistoryError`] where the stack or the run lies outside the equations.
pub fn as_run(job: &Job, pick: &Pick, at: DialSetting) -> Result<Option<AsRun>, HistoryError> {
    let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
    let Some(candidate) = Candidate::of_recipe(job, cloth, &pick.recipe) else { return Ok(None) };
    let demands = Demands::usual(job, cloth, candidate.white);
    let flash = flash_of(job, cloth, &candidate)?;
    let point = at.set_point();
    let judgement = judge(job, cloth, candidate, point, demands, flash)?;
    Ok(Some(AsRun {
        turns: judgement.assessment.bleeds,
        ghosts: judgement.assessment.late.ghosts,
        comes_off: judgement.assessment.late.comes_off,
        cracks: judgement.assessment.late.cracks,
        film_um: judgement.assessment.candidate.film * 1e6,
        margins: judgement.margins.each,
    }))
}
