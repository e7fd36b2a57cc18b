//! What a shop can ask of the library and the plan together: an answer, a window, a forecast, an oven test, a diagnosis.

use super::{Library, job};
use crate::diagnosis::{self, Defect, Diagnosis, NotedRun};
use crate::dryer::HistoryError;
use crate::plan::{
    self, BleedForecast, DialSetting, Job, Order, OvenTest, Pick, PickForecast, PickWindow, Report,
    SimulationCache, WindowReport, bounds,
};
use crate::quantity::{FieldError, Problem};

/// Answers an order from what the library knows.
///
/// # Errors
/// Every field that cannot be used, by its path. An order that can be read always has an answer.
pub fn answer(order: &Order, library: &Library) -> Result<Report, Vec<FieldError>> {
    answer_with(order, library, &mut SimulationCache::default())
}

/// The same with what was marched for earlier answers.
///
/// # Errors
/// As [`answer`].
pub fn answer_with(
    order: &Order,
    library: &Library,
    memory: &mut SimulationCache,
) -> Result<Report, Vec<FieldError>> {
    plan::answer_with(&job(order, library)?, memory).map_err(|error| outside(order, &error))
}

/// The cure window of one pick of an answer, at its own set point or at `at` (set temperature in °C, belt in m/min).
///
/// # Errors
/// As [`pick_window`].
pub fn window(
    order: &Order,
    library: &Library,
    pick: &Pick,
    at: Option<DialSetting>,
) -> Result<WindowReport, Vec<FieldError>> {
    report_at(order, pick, &pick_window(order, library, pick)?, at)
}

/// The cure window of one pick, marched once for any set point.
///
/// # Errors
/// As [`answer`]; a pick whose white is not known.
pub fn pick_window(order: &Order, library: &Library, pick: &Pick) -> Result<PickWindow, Vec<FieldError>> {
    let job = job_with(order, library, pick)?;
    let window = PickWindow::new(job, pick.clone()).map_err(|error| outside(order, &error))?;
    window.ok_or_else(|| not_of_this_order(pick))
}

/// A window's report at a set point.
///
/// # Errors
/// As [`pick_window`].
pub fn report_at(
    order: &Order,
    pick: &Pick,
    window: &PickWindow,
    at: Option<DialSetting>,
) -> Result<WindowReport, Vec<FieldError>> {
    let report = window.report(at).map_err(|error| outside(order, &error))?;
    report.ok_or_else(|| not_of_this_order(pick))
}

/// The forecast of one pick, prepared once for any set point; `None` where its cloth has no dye to give or its window is
/// closed.
///
/// # Errors
/// As [`pick_window`].
pub fn pick_forecast(
    order: &Order,
    library: &Library,
    pick: &Pick,
) -> Result<Option<PickForecast>, Vec<FieldError>> {
    PickForecast::new(job_with(order, library, pick)?, pick.clone()).map_err(|error| outside(order, &error))
}

/// A forecast at a set point (set temperature in °C, belt in m/min), or at the pick's own.
///
/// # Errors
/// As [`pick_window`].
pub fn forecast_at(
    order: &Order,
    forecast: &PickForecast,
    at: Option<DialSetting>,
) -> Result<Option<BleedForecast>, Vec<FieldError>> {
    forecast.report(at).map_err(|error| outside(order, &error))
}

/// What hours in an oven prove of a pick; `None` as in [`pick_forecast`].
///
/// # Errors
/// As [`pick_window`]; hours or heat outside what an oven test may be.
pub fn oven_test(
    order: &Order,
    library: &Library,
    pick: &Pick,
    hours: f64,
    oven_c: f64,
) -> Result<Option<OvenTest>, Vec<FieldError>> {
    bounds::OVEN_HOURS.check(hours).map_err(|error| vec![error])?;
    bounds::OVEN.check(oven_c).map_err(|error| vec![error])?;
    let Some(forecast) = pick_forecast(order, library, pick)? else { return Ok(None) };
    forecast.oven(hours, oven_c).map_err(|error| outside(order, &error))
}

/// The job of an order with the white of a pick, which need not be on the shelf.
fn job_with(order: &Order, library: &Library, pick: &Pick) -> Result<Job, Vec<FieldError>> {
    let mut job = job(order, library)?;
    let mixed = job.mixes.iter().map(|mix| &mix.white);
    if !job.whites.iter().chain(mixed).any(|white| white.id == pick.white) {
        let record = library.white_record(&pick.white).map_err(|error| vec![error])?;
        job.whites.push(library.white(record).map_err(|error| vec![error])?);
    }
    Ok(job)
}

fn not_of_this_order(pick: &Pick) -> Vec<FieldError> {
    vec![FieldError::new("pick", &pick.white, Problem::Contradiction { with: "order".into() })]
}

/// The march could not be finished: a stack or dryer outside the equations, by the weight that was asked.
fn outside(order: &Order, error: &HistoryError) -> Vec<FieldError> {
    let label = order.garments.first().map_or("", |garment| garment.label.as_str());
    vec![FieldError::new("garments[0]", format!("{label}: {error}"), Problem::NotUnderstood)]
}

/// The causes that fit what is seen on a print of an order; `None` where its way has no setting.
///
/// # Errors
/// As [`pick_window`]; a run outside what a dryer can do.
pub fn diagnose(
    order: &Order,
    library: &Library,
    pick: &Pick,
    run: &NotedRun,
    seen: Defect,
) -> Result<Option<Diagnosis>, Vec<FieldError>> {
    let job = job_with(order, library, pick)?;
    diagnosis::diagnose(&job, pick, run, seen).map_err(|error| outside(order, &error))
}
