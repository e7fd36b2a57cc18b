//! The cure window of one pick, ready to be drawn.

use crate::cure::{Cure, trace};
use crate::dryer::{Case, DriftCase, History, HistoryError, TOLERANCE, history};
use crate::numerics::Lanes;
use crate::plan::bleed::{AGEING_CASES, AgeingCases, BleedPath, Reach, fresh_and_dye, release_elsewhere};
use crate::plan::order::{Cloth, Job, kinetics};
use crate::plan::recipe::{Candidate, FlashStep, flash_of, stack_of};
use crate::plan::report::{Curve, DialSetting, Drift, Pick, Setting, Side, Topic, Unit, Wall, WindowReport};
use crate::plan::verdict::{Judgement, judge};
use crate::plan::window::{
    Demands, Detail, DriftRun, Question, SetPoint, Window, clearance_around, robust, setting,
};
use crate::quantity::units::{celsius, kelvin};

/// Cells of the map that is drawn. The window's own grid is coarser; local cubics fill it.
const ROWS: usize = 41;
const COLUMNS: usize = 49;

/// The cure window of one pick, kept so that a set point can be dragged through it: its histories are
/// simulated once, and a report at another set point costs one simulation more.
#[derive(Clone, Debug)]
pub struct PickWindow {
    job: Job,
    pick: Pick,
    window: Window,
    flash: Option<FlashStep>,
    walls: Vec<Wall>,
}

impl PickWindow {
    /// Simulates the window of a pick; `None` if the job lacks its garment, or an ink or mesh of its recipe.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn new(job: Job, pick: Pick) -> Result<Option<Self>, HistoryError> {
        let (window, flash, walls) = {
            let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
            let Some(candidate) = Candidate::of_recipe(&job, cloth, &pick.recipe) else { return Ok(None) };
            let stack = stack_of(&job, cloth, &candidate);
            let window = Window::compute(&Question {
                stack: &stack,
                dryer: &job.dryer,
                passes: job.order.shop.passes,
                kinetics: kinetics(&job, candidate.white),
                dyed: cloth.dyed.as_ref(),
                fixed: job.order.shop.dryer_fixed.map(kelvin),
                detail: Detail::Fine,
            })?;
            let flash = flash_of(&job, cloth, &candidate)?;
            // The walls are those at the pick's own set point; they do not move as it is dragged.
            let demands = Demands::usual(&job, cloth, candidate.white);
            let point = pick.setting.as_ref().map_or_else(|| window.middle(), set_point);
            let judgement = judge(&job, cloth, candidate, point, demands, flash)?;
            let walls = walls(&job, cloth, &window, &judgement);
            (window, flash, walls)
        };
        Ok(Some(Self { job, pick, window, flash, walls }))
    }

    /// The window with its set point, the pick's own or `at`; `None` as in [`PickWindow::new`].
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn report(&self, at: Option<DialSetting>) -> Result<Option<WindowReport>, HistoryError> {
        let Self { job, pick, window, flash, walls } = self;
        let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
        let Some(candidate) = Candidate::of_recipe(job, cloth, &pick.recipe) else { return Ok(None) };
        let demands = Demands::usual(job, cloth, candidate.white);
        let fixed = job.order.shop.dryer_fixed.map(kelvin);
        let point = match (at, &pick.setting) {
            (Some(at), _) => Some(at.set_point()),
            (None, Some(setting)) => Some(set_point(setting)),
            (None, None) => robust(window, &job.dryer, &demands, fixed),
        };
        let judgement =
            judge(job, cloth, candidate, point.unwrap_or_else(|| window.middle()), demands, *flash)?;
        let clearance = clearance_around(window, &judgement.assessment.run);
        let drift = &job.dryer.drift;
        Ok(Some(WindowReport {
            set_c: axis(&window.set).map(celsius).collect(),
            belt_m_per_min: axis_of(&window.belt, COLUMNS).map(|belt| belt * 60.0).collect(),
            walls: walls.clone(),
            setting: point.map(|point| setting(job, &point, &clearance)),
            // Drift of heat transfer acts like drift of the belt: the same share of the dwell.
            drift: Drift {
                set_k: drift.air,
                belt_m_per_min: judgement.assessment.run.point.belt * 60.0 * drift.h,
            },
            room: clearance,
            curve: curve(job, cloth, &judgement)?,
            fail_later: judgement.assessment.fail_later,
            verdict: judgement.assessment.verdict,
            margins: judgement.margins.each,
        }))
    }
}

/// The set point of a pick.
fn set_point(setting: &Setting) -> SetPoint {
    setting.dialled().set_point()
}

fn axis(points: &[f64]) -> impl Iterator<Item = f64> + use<> {
    axis_of(points, ROWS)
}

/// Even steps from the first to the last point.
fn axis_of(points: &[f64], count: usize) -> impl Iterator<Item = f64> + use<> {
    let low = points.first().copied().unwrap_or(0.0);
    let high = points.last().copied().unwrap_or(1.0);
    (0..count).map(move |i| low + (high - low) * i as f64 / (count - 1) as f64)
}

/// The limits that are drawn on the map, over the run as planned.
fn walls(job: &Job, cloth: &Cloth, window: &Window, judgement: &Judgement<'_>) -> Vec<Wall> {
    let rules = &job.rules;
    let demands = &judgement.assessment.run.demands;
    let mut cells = Vec::with_capacity(ROWS * COLUMNS);
    for set in axis(&window.set) {
        for belt in axis_of(&window.belt, COLUMNS) {
            cells.push(window.at(DriftRun::Nominal, set, belt));
        }
    }
    let mut walls = vec![Wall {
        what: Topic::Fusion,
        values: cells.iter().map(|cell| demands.fused_of(cell) * 100.0).collect(),
        limit: rules.fused * 100.0,
        needed: Side::AtLeast,
        unit: Unit::Percent,
    }];
    let mut heat = |what: Topic, values: Vec<f64>, limit: f64, unit: Unit| {
        walls.push(Wall { what, values, limit, needed: Side::AtMost, unit });
    };
    if let Some((dye_in, reach)) = bleed_of(job, cloth, judgement) {
        let Some((fresh, dye)) = fresh_and_dye(cloth, &judgement.assessment.candidate) else { return walls };
        let path = BleedPath { fresh: &fresh, dye: &dye, reach };
        let values = cells.iter().map(|cell| path.difference(cell.dye + dye_in)).collect();
        heat(Topic::Bleed, values, rules.bleed, Unit::ColourDifference);
    }
    if demands.scorch.is_finite() {
        heat(Topic::Scorch, cells.iter().map(|cell| cell.scorch).collect(), rules.scorch, Unit::One);
    }
    if demands.cloth.is_finite() {
        let what = if cloth.shrinks_above.is_some() { Topic::Shrink } else { Topic::Softening };
        heat(
            what,
            cells.iter().map(|cell| celsius(cell.cloth_peak)).collect(),
            celsius(demands.cloth),
            Unit::Celsius,
        );
    }
    heat(
        Topic::FilmHeat,
        cells.iter().map(|cell| celsius(cell.film_peak)).collect(),
        celsius(rules.film_heat),
        Unit::Celsius,
    );
    walls
}

/// Dye released outside the dryer, kg/m², and how much of any amount reaches the top, for amounts from next
/// to none to what no white takes; `None` if nothing bleeds.
fn bleed_of(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Option<(f64, Reach)> {
    let (dyed, ageing) = (cloth.dyed.as_ref()?, &judgement.assessment.bled.as_ref()?.ageing);
    let elsewhere = release_elsewhere(
        job,
        dyed,
        &judgement.assessment.candidate,
        judgement.assessment.run.flash.as_ref(),
    );
    let amounts = Lanes::<AGEING_CASES>([0.5e-6, 5e-6, 20e-6, 60e-6, 150e-6, 400e-6, 800e-6, 1600e-6]);
    let one = Lanes::splat(1.0);
    let reach =
        ageing.reach(&AgeingCases { arrives: amounts, film: one, heat_film: one, own: one, facing: one });
    Some((dyed.arrives(&elsewhere)[0], reach))
}

/// Temperatures and fusion over time at the set point, in the run as planned.
fn curve(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Result<Curve, HistoryError> {
    let stack = stack_of(job, cloth, &judgement.assessment.candidate);
    let case = Case {
        set: judgement.assessment.run.point.set,
        belt: judgement.assessment.run.point.belt,
        drift: DriftCase::NOMINAL,
    };
    let history = history::<1>(&stack, &job.dryer, &[case], job.order.shop.passes, TOLERANCE)?;
    let kinetics = if judgement.assessment.run.demands.must_fuse[0] {
        kinetics(job, judgement.assessment.candidate.white)[0]
    } else {
        judgement.assessment.candidate.white.kinetics
    };
    Ok(Curve::of(&history, &trace(&history, |sample| sample.film_bottom, &kinetics)))
}

impl Curve {
    /// The curve of a history, with the fusion along it.
    pub fn of(history: &History<1>, fused: &[Cure<1>]) -> Self {
        let take = |of: fn(&crate::dryer::HistorySample<1>) -> Lanes<1>| {
            history.samples.iter().map(|sample| of(sample)[0]).collect::<Vec<f64>>()
        };
        let in_celsius = |values: Vec<f64>| values.into_iter().map(celsius).collect();
        Self {
            seconds: take(|sample| sample.time),
            film_top_c: in_celsius(take(|sample| sample.film_top[0])),
            film_bottom_c: in_celsius(take(|sample| sample.film_bottom[0])),
            cloth_c: in_celsius(take(|sample| sample.cloth[0])),
            fused: fused.iter().map(|cure| cure.fused[0]).collect(),
            water_percent: take(|sample| sample.water * 100.0),
            leaves_s: history.exit_time[0],
        }
    }
}
