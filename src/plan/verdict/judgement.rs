//! A candidate assessed and measured: what a report says of it is read from here.

use super::assessment::Assessment;
use crate::dryer::HistoryError;
use crate::plan::bleed::DyeHeat;
use crate::plan::margins::{HistoryCache, Margins, Measured};
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, FlashStep};
use crate::plan::window::{Demands, PlannedRun, SetPoint};

/// A candidate's assessment with every margin.
#[derive(Clone, Debug)]
pub struct Judgement<'a> {
    /// What decides for or against it.
    pub assessment: Assessment<'a>,
    /// Every margin, and the heat of its film and cloth.
    pub margins: Margins,
}

/// Assesses and measures one candidate as it is run, without a cache.
///
/// # Errors
/// [`HistoryError`] if a run cannot be integrated.
pub fn judge<'a>(
    job: &Job,
    cloth: &Cloth,
    candidate: Candidate<'a>,
    point: SetPoint,
    demands: Demands,
    flash: Option<FlashStep>,
) -> Result<Judgement<'a>, HistoryError> {
    let mut histories = HistoryCache::default();
    let assessment = assess(&mut histories, job, cloth, candidate, point, demands, flash)?;
    judgement(&mut histories, job, cloth, assessment)
}

/// Assesses one candidate as it is run. The print is simulated only where the cloth has dye to move.
///
/// # Errors
/// [`HistoryError`] if a run cannot be integrated.
pub fn assess<'a>(
    histories: &mut HistoryCache,
    job: &Job,
    cloth: &Cloth,
    candidate: Candidate<'a>,
    point: SetPoint,
    demands: Demands,
    flash: Option<FlashStep>,
) -> Result<Assessment<'a>, HistoryError> {
    let dryings = histories.dryings(job, cloth, &candidate, &point)?;
    let history = cloth.dyed.map(|_| histories.print(job, cloth, &candidate, &point)).transpose()?;
    let heat = cloth.dyed.as_ref().zip(history.as_deref());
    let heat = heat.map(|(dyed, history)| DyeHeat { dyed, history });
    Ok(Assessment::of(job, cloth, candidate, PlannedRun { point, demands, flash, dryings }, heat))
}

/// Adds every margin, over every run, to an assessment.
///
/// # Errors
/// [`HistoryError`] if a run cannot be integrated.
pub fn judgement<'a>(
    histories: &mut HistoryCache,
    job: &Job,
    cloth: &Cloth,
    assessment: Assessment<'a>,
) -> Result<Judgement<'a>, HistoryError> {
    let Assessment { candidate, run, look, tint, late, .. } = &assessment;
    let measured = Measured { candidate, run, look, tint, late };
    let margins = Margins::of(histories, job, cloth, measured)?;
    Ok(Judgement { assessment, margins })
}
