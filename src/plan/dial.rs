//! The dryer's dials at a set point: how they stand, how well they must be held, what water costs.

use super::dried::water;
use super::judge::stack_of;
use super::outlook::Outlook;
use super::window::{Run, SetPoint, Window, room as reach};
use super::{Cloth, Job, Room, Setting};
use crate::cure::fuse;
use crate::dryer::HistoryError;
use crate::dryer::{Case, DriftCase, StackGrid, TOLERANCE, history_on};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::Tolerance;
use crate::quantity::units::celsius;

/// Dwell in which the same film would fuse as well over the same cloth bone dry, s; only where water is worth a word.
pub(super) fn dry_dwell(
    job: &Job,
    cloth: &Cloth,
    outlook: &Outlook<'_>,
) -> Result<Option<f64>, HistoryError> {
    let stack = stack_of(job, cloth, &outlook.way);
    if water(&stack, &cloth.fabric) < 0.045 {
        return Ok(None);
    }
    let dry = DriftCase { water: 0.02, ..DriftCase::NOMINAL };
    let dwell = job.dryer.heated_length() / outlook.run.point.belt;
    let kinetics = outlook.way.white.kinetics;
    // Eight dwells from a third of this one up to it, over dry cloth, the last over the cloth as it is.
    let share = |lane: usize| if lane == 7 { 1.0 } else { 0.35 + 0.09 * lane as f64 };
    let cases: [Case; 8] = std::array::from_fn(|lane| Case {
        set: outlook.run.point.set,
        belt: outlook.run.point.belt / share(lane),
        drift: if lane == 7 { DriftCase::NOMINAL } else { dry },
    });
    // It is told to a few seconds.
    let loose = Tolerance { temperature: 10.0 * TOLERANCE.temperature, border: 10.0 * TOLERANCE.border };
    let history = history_on(StackGrid::rough(&stack), &stack, &job.dryer, &cases, 1, loose)?;
    let Lanes(fused) = fuse(&history, |sample| sample.film_bottom, &kinetics).fused;
    let as_it_is = fused[7];
    let enough = (0..7).find(|&lane| fused[lane] >= as_it_is.min(0.995));
    Ok(enough.map(|lane| share(lane) * dwell))
}

/// Room on each side of the set point in the run as planned.
pub(super) fn room_around(window: &Window, outlook: &Outlook<'_>) -> Room {
    let SetPoint { set, belt, .. } = outlook.run.point;
    let holds = |set: f64, belt: f64| outlook.run.demands.holds(&window.at(Run::Nominal, set, belt));
    let (Some(&low), Some(&high)) = (window.set.first(), window.set.last()) else {
        return Room::NONE;
    };
    let (Some(&slowest), Some(&fastest)) = (window.belt.first(), window.belt.last()) else {
        return Room::NONE;
    };
    Room {
        cooler: reach(|step| holds(set - step, belt), (set - low).max(0.0)),
        hotter: reach(|step| holds(set + step, belt), (high - set).max(0.0)),
        slower: reach(|step| holds(set, belt - step), (belt - slowest).max(0.0)).map(|room| room * 60.0),
        faster: reach(|step| holds(set, belt + step), (fastest - belt).max(0.0)).map(|room| room * 60.0),
    }
}

/// The dryer's dials at a set point, with how well they must be held.
pub(super) fn setting(job: &Job, point: &SetPoint, room: &Room) -> Setting {
    let dryer = &job.dryer;
    let belt = point.belt * 60.0;
    let sides = [room.slower, room.faster].into_iter().flatten();
    // Half the room to the nearer wall, and never looser than a tenth of the belt speed.
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
