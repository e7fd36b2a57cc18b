//! What a shop can ask: an answer to an order, the window and the forecast of one pick, an oven test, a
//! diagnosis.
//!
//! Each query takes an order as people write it, resolves it with the library ([`job`]) and passes it to
//! the plan. Two of them are prepared once and then read at any setting of the dryer: [`pick_window`]
//! with [`report_at`], and [`pick_forecast`] with [`forecast_at`].

use super::resolve::not_solved;
use super::{Library, job};
use crate::diagnosis::{self, Defect, Diagnosis, NotedRun};
use crate::dryer::HistoryError;
use crate::plan::{
    self, BleedForecast, DialSetting, Job, Order, OvenTest, Pick, PickForecast, PickWindow, Report,
    SimulationCache, WindowReport, bounds,
};
use crate::quantity::{FieldError, Problem};

/// Answers an order: the whites that can be printed, the best first, each with its verdict, its recipe
/// and the setting of the dryer.
///
/// # Errors
/// A [`FieldError`] for each field of the order that cannot be used, by its path; [`Problem::NotSolved`]
/// on `order` if the heat cannot be computed. An order that can be read has an answer, if only that
/// nothing can be printed.
///
/// # Examples
/// ```
/// use whitehold::library;
/// use whitehold::plan::{Garment, Order, Shop, Verdict};
///
/// let library = library::starter().unwrap();
/// let mut order = Order {
///     garments: vec![Garment { label: "100% cotton jersey, 180 g/m², black".into(), ..Garment::default() }],
///     shop: Shop { shelf: vec!["chalk".into()], dryer: "long-kiln".into(), ..Shop::default() },
///     ..Order::default()
/// };
/// let report = library::answer(&order, &library).unwrap();
/// assert_eq!(report.verdict, Verdict::Go);
/// assert_eq!(report.picks[0].white, "chalk");
///
/// order.garments[0].label = "60% cotton, 30% polyester".into();
/// let errors = library::answer(&order, &library).unwrap_err();
/// assert_eq!(errors[0].field, "garments[0].label");
/// ```
pub fn answer(order: &Order, library: &Library) -> Result<Report, Vec<FieldError>> {
    answer_with(order, library, &mut SimulationCache::default())
}

/// The same as [`answer`], with the simulations of earlier answers at hand. The answer is the same, bit
/// for bit.
///
/// # Errors
/// A [`FieldError`] for each field of the order that cannot be used; [`Problem::NotSolved`] on `order`.
pub fn answer_with(
    order: &Order,
    library: &Library,
    cache: &mut SimulationCache,
) -> Result<Report, Vec<FieldError>> {
    let mut job = job(order, library)?;
    computed(plan::learn(&mut job, cache).and_then(|()| plan::answer_with(&job, cache)))
}

/// The cure window of one pick of an answer, read at the pick's own setting or at `at`.
///
/// # Errors
/// A [`FieldError`] for each field of the order that cannot be used; one on `pick` if its white is not
/// known or its window is closed; [`Problem::NotSolved`] on `order` if the heat cannot be computed at
/// `at`.
///
/// # Examples
/// ```
/// use whitehold::library;
/// use whitehold::plan::{DialSetting, Garment, Order, Shop};
///
/// let library = library::starter().unwrap();
/// let order = Order {
///     garments: vec![Garment { label: "100% cotton jersey, 180 g/m², black".into(), ..Garment::default() }],
///     shop: Shop { shelf: vec!["chalk".into()], dryer: "long-kiln".into(), ..Shop::default() },
///     ..Order::default()
/// };
/// let pick = &library::answer(&order, &library).unwrap().picks[0];
///
/// // At the setting that was found every margin is kept; 60 K cooler the ink does not cure.
/// let found = library::window(&order, &library, pick, None).unwrap();
/// assert!(found.margins.iter().all(|margin| margin.holds()));
/// let dialled = pick.setting.unwrap().dialled();
/// let cold = DialSetting { set_c: dialled.set_c - 60.0, ..dialled };
/// let cold = library::window(&order, &library, pick, Some(cold)).unwrap();
/// assert!(cold.margins.iter().any(|margin| !margin.holds()));
/// ```
pub fn window(
    order: &Order,
    library: &Library,
    pick: &Pick,
    at: Option<DialSetting>,
) -> Result<WindowReport, Vec<FieldError>> {
    report_at(pick, &pick_window(order, library, pick)?, at)
}

/// The cure window of one pick, computed once and read at any setting with [`report_at`].
///
/// # Errors
/// A [`FieldError`] for each field of the order that cannot be used; one on `pick` if its white is not
/// known or its window is closed; [`Problem::NotSolved`] on `order`.
pub fn pick_window(order: &Order, library: &Library, pick: &Pick) -> Result<PickWindow, Vec<FieldError>> {
    let window = computed(PickWindow::new(job_with(order, library, pick)?, pick.clone()))?;
    window.ok_or_else(|| not_of_this_order(pick))
}

/// The report of a window at the pick's own setting or at `at`.
///
/// # Errors
/// A [`FieldError`] on `pick` if it does not belong to the window's order; [`Problem::NotSolved`] on `order`.
pub fn report_at(
    pick: &Pick,
    window: &PickWindow,
    at: Option<DialSetting>,
) -> Result<WindowReport, Vec<FieldError>> {
    computed(window.report(at))?.ok_or_else(|| not_of_this_order(pick))
}

/// The forecast of one pick, prepared once and read at any setting with [`forecast_at`]; `None` if its
/// cloth has no dye to give or its window is closed.
///
/// # Errors
/// A [`FieldError`] for each field of the order that cannot be used; one on `white` if the pick's white
/// is not known; [`Problem::NotSolved`] on `order`.
///
/// # Examples
/// ```
/// use whitehold::library;
/// use whitehold::plan::{Garment, Order, Shop};
///
/// let library = library::starter().unwrap();
/// let order = |label: &str| Order {
///     garments: vec![Garment { label: label.into(), ..Garment::default() }],
///     shop: Shop { shelf: vec!["gannet".into()], dryer: "long-kiln".into(), ..Shop::default() },
///     ..Order::default()
/// };
///
/// let red = order("100% polyester interlock, 145 g/m², red");
/// let pick = &library::answer(&red, &library).unwrap().picks[0];
/// let forecast = library::pick_forecast(&red, &library, pick).unwrap().expect("dyed polyester");
/// let forecast = library::forecast_at(&forecast, None).unwrap().expect("an open window");
/// assert_eq!(forecast.days.first(), Some(&0.0), "from the day of printing on");
/// assert!(forecast.stays_white > 0.8, "a white for polyester blocks this dye");
///
/// let white = order("100% cotton jersey, 180 g/m², white");
/// let pick = &library::answer(&white, &library).unwrap().picks[0];
/// assert!(library::pick_forecast(&white, &library, pick).unwrap().is_none(), "no dye can leave it");
/// ```
pub fn pick_forecast(
    order: &Order,
    library: &Library,
    pick: &Pick,
) -> Result<Option<PickForecast>, Vec<FieldError>> {
    computed(PickForecast::new(job_with(order, library, pick)?, pick.clone()))
}

/// A forecast at the pick's own setting or at `at`; `None` as in [`pick_forecast`].
///
/// # Errors
/// [`Problem::NotSolved`] on `order` if the heat cannot be computed at `at`.
pub fn forecast_at(
    forecast: &PickForecast,
    at: Option<DialSetting>,
) -> Result<Option<BleedForecast>, Vec<FieldError>> {
    computed(forecast.report(at))
}

/// What hours in an oven prove of a pick; `None` as in [`pick_forecast`].
///
/// # Errors
/// A [`FieldError`] on `hours` or `oven_c` outside [`bounds::OVEN_HOURS`] and [`bounds::OVEN`]; the errors of
/// [`pick_forecast`].
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
    computed(forecast.oven(hours, oven_c))
}

/// The causes that fit what is seen on a print of an order; `None` if its recipe has no setting.
///
/// # Errors
/// A [`FieldError`] for each field of the order that cannot be used; [`Problem::NotSolved`] on `order` if
/// the run lies outside what a dryer can do.
pub fn diagnose(
    order: &Order,
    library: &Library,
    pick: &Pick,
    run: &NotedRun,
    seen: Defect,
) -> Result<Option<Diagnosis>, Vec<FieldError>> {
    computed(diagnosis::diagnose(&job_with(order, library, pick)?, pick, run, seen))
}

/// The job of an order with the white of a pick, which need not be on the shelf.
fn job_with(order: &Order, library: &Library, pick: &Pick) -> Result<Job, Vec<FieldError>> {
    let mut job = job(order, library)?;
    let mixed = job.mixes.iter().map(|mix| &mix.white);
    if !job.whites.iter().chain(mixed).any(|white| white.id == pick.white) {
        let record = library.white_record(&pick.white).map_err(|error| vec![error])?;
        job.whites.push(library.white(record).map_err(|error| vec![error])?);
    }
    computed(plan::learn(&mut job, &mut SimulationCache::default()))?;
    Ok(job)
}

fn not_of_this_order(pick: &Pick) -> Vec<FieldError> {
    vec![FieldError::new("pick", &pick.white, Problem::Contradiction { with: "order".into() })]
}

/// What the plan computed, or that it could not.
fn computed<T>(result: Result<T, HistoryError>) -> Result<T, Vec<FieldError>> {
    result.map_err(|error| not_solved("order", &error))
}
