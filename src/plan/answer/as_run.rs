//! A pick as it was run: its margins at the setting that was really dialled, without the window round it.

use crate::dryer::HistoryError;
use crate::plan::order::Job;
use crate::plan::recipe::{Candidate, flash_of};
use crate::plan::report::{DialSetting, Margin, Pick, Topic};
use crate::plan::verdict::judge;
use crate::plan::window::Demands;

/// Margins and chances of a pick as it was run.
#[derive(Clone, Debug, PartialEq)]
pub struct AsRun {
    /// Every margin, the tightest first.
    pub margins: Vec<Margin>,
    /// Chance that the white turns, 0 to 1.
    pub turns: f64,
    /// Chance that it ghosts, 0 to 1.
    pub ghosts: f64,
    /// Chance that it comes off nylon or a coating, 0 to 1.
    pub comes_off: f64,
    /// Chance that it cracks in wear though it is fused, 0 to 1.
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

/// Assesses a pick at a dialled setting; `None` if the job lacks its garment, or an ink or mesh of its
/// recipe.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
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
