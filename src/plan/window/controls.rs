//! The dryer's controls at a set point: what to dial, how closely to hold it, what water costs.

use super::grid::Window;
use super::planned_run::PlannedRun;
use super::question::DriftRun;
use super::robust::clearance;
use super::set_point::SetPoint;
use crate::cure::fuse;
use crate::dryer::{Case, DriftCase, HistoryError, StackGrid, TOLERANCE, history_on};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::Tolerance;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, stack_of, water};
use crate::plan::report::{Clearance, Setting};
use crate::quantity::units::celsius;

/// Dwell in which the same film would fuse as well over the same cloth bone dry, s; `None` if the cloth holds
/// too little water to matter, or if no shorter dwell is found.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn dry_dwell(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    point: &SetPoint,
) -> Result<Option<f64>, HistoryError> {
    let stack = stack_of(job, cloth, candidate);
    if water(&stack, &cloth.fabric) < 0.045 {
        return Ok(None);
    }
    let dry = DriftCase { water: 0.02, ..DriftCase::NOMINAL };
    let dwell = job.dryer.heated_length() / point.belt;
    let kinetics = candidate.white.kinetics;
    // Eight dwells from a third of this one up to it, over dry cloth, the last over the cloth as it is.
    let share = |lane: usize| if lane == 7 { 1.0 } else { 0.35 + 0.09 * lane as f64 };
    let cases: [Case; 8] = std::array::from_fn(|lane| Case {
        set: point.set,
        belt: point.belt / share(lane),
        drift: if lane == 7 { DriftCase::NOMINAL } else { dry },
    });
    // The dwell is shown to a few seconds, so a loose tolerance is enough.
    let loose = Tolerance { temperature: 10.0 * TOLERANCE.temperature, water: TOLERANCE.water };
    let history = history_on(StackGrid::rough(&stack), &stack, &job.dryer, &cases, 1, loose)?;
    let Lanes(fused) = fuse(&history, |sample| sample.film_bottom, &kinetics).fused;
    let as_it_is = fused[7];
    let enough = (0..7).find(|&lane| fused[lane] >= as_it_is.min(0.995));
    Ok(enough.map(|lane| share(lane) * dwell))
}

/// Clearance on each side of the set point, in the run as planned.
pub fn clearance_around(window: &Window, run: &PlannedRun) -> Clearance {
    let SetPoint { set, belt, .. } = run.point;
    let holds = |set: f64, belt: f64| run.demands.holds(&window.at(DriftRun::Nominal, set, belt));
    let (Some(&low), Some(&high)) = (window.set.first(), window.set.last()) else {
        return Clearance::NONE;
    };
    let (Some(&slowest), Some(&fastest)) = (window.belt.first(), window.belt.last()) else {
        return Clearance::NONE;
    };
    Clearance {
        cooler: clearance(|step| holds(set - step, belt), (set - low).max(0.0)),
        hotter: clearance(|step| holds(set + step, belt), (high - set).max(0.0)),
        slower: clearance(|step| holds(set, belt - step), (belt - slowest).max(0.0))
            .map(|clearance| clearance * 60.0),
        faster: clearance(|step| holds(set, belt + step), (fastest - belt).max(0.0))
            .map(|clearance| clearance * 60.0),
    }
}

/// The dryer's controls at a set point, with how closely they must be held.
pub fn setting(job: &Job, point: &SetPoint, clearance: &Clearance) -> Setting {
    let dryer = &job.dryer;
    let belt = point.belt * 60.0;
    let sides = [clearance.slower, clearance.faster].into_iter().flatten();
    // Half the clearance to the nearer wall, and never more than a tenth of the belt speed.
    let hold_belt = sides.fold(belt * 0.2, f64::min) * 0.5;
    Setting {
        set_c: celsius(point.set),
        air_c: celsius(dryer.hottest_air(point.set)),
        panel_c: dryer.hottest_panel(point.set).map(celsius),
        belt_m_per_min: belt,
        dwell_s: dryer.heated_length() / point.belt,
        hold_c: dryer.drift.air,
        hold_belt_m_per_min: hold_belt,
    }
}
