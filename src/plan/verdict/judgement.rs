//! A candidate assessed and measured: what a report says of it is read from here.

use super::assessment::Assessment;
use crate::dryer::HistoryError;
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

/// Assesses one candidate as it is run.
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
    let run = PlannedRun { point, demands, flash, dryings };
    let runs = histories.of(job, cloth, &candidate, &run)?;
    Ok(Assessment::of(job, cloth, candidate, run, &runs))
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
