//! Every margin of a candidate at its set point, over every drift case.

use super::appearance::press_margins;
use super::histories::{ClothHeat, HistoryCache, RunHistories};
use super::late_faults::{LateFaults, stretch_margin};
use super::later_heat::LaterHeat;
use crate::cure::fuse;
use crate::dryer::{History, HistoryError, Stack};
use crate::ink::FilmOpacity;
use crate::numerics::Lanes;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, DRIFT_CASES};
use crate::plan::report::{Margin, Side, Topic, Unit, margin, sorted_insert, tightness};
use crate::plan::window::{PlannedRun, hardest};
use crate::quantity::Band;
use crate::quantity::units::celsius;

/// Margins and temperatures of one candidate, over its drift cases.
#[derive(Clone, Debug)]
pub struct Margins {
    /// Every margin, the tightest first.
    pub each: Vec<Margin>,
    /// Film surface as the piece leaves the heat in the run as planned, °C.
    pub exit_c: f64,
    /// Hottest film in any run, °C.
    pub hottest_film_c: f64,
    /// Hottest cloth in any run, under the print or beside it, °C.
    pub hottest_cloth_c: f64,
    /// Longest time in any run that the film's surface is above the temperature from which plasticised PVC
    /// without stabiliser loses acid, s.
    pub acid_seconds: f64,
}

/// What is known of a candidate before its margins are computed: its run, its look, its tint and its late
/// faults.
#[derive(Clone, Copy, Debug)]
pub struct Measured<'m, 'a> {
    /// The candidate.
    pub candidate: &'m Candidate<'a>,
    /// How it is run.
    pub run: &'m PlannedRun,
    /// What it looks like fresh.
    pub look: &'m FilmOpacity,
    /// Margins of its bleeding, in its middle and along its rim.
    pub tint: &'m [Option<Margin>; 2],
    /// Chances of the late faults that do not depend on the heat.
    pub late: &'m LateFaults,
}

impl Margins {
    /// Computes every margin, over every drift case.
    ///
    /// # Errors
    /// [`HistoryError`] if a run cannot be integrated.
    pub fn of(
        histories: &mut HistoryCache,
        job: &Job,
        cloth: &Cloth,
        measured: Measured<'_, '_>,
    ) -> Result<Self, HistoryError> {
        let Measured { candidate, run, look, tint, late } = measured;
        let runs = histories.of(job, cloth, candidate, run)?;
        let mut margins = heat_margins(job, cloth, candidate, run, &runs);
        margins.extend(press_margins(job, cloth, candidate, look));
        margins.push(stretch_margin(job, cloth, candidate));
        margins.extend(LaterHeat::of(job, cloth).map(|later| later.margin()));
        margins.extend(tint.iter().flatten().cloned().chain(late.margins(job)));
        let mut each = Vec::with_capacity(margins.len());
        for margin in margins {
            sorted_insert(&mut each, margin, |a, b| tightness(a).total_cmp(&tightness(b)));
        }
        Ok(Self {
            each,
            exit_c: exit_temperature(&runs.print),
            hottest_film_c: celsius(runs.film_peak.largest()),
            hottest_cloth_c: celsius(runs.cloth.peak.largest()),
            acid_seconds: seconds_over(&runs.print, job.rules.acid_onset),
        })
    }

    /// The margin of a topic, if it bears on this candidate.
    #[must_use]
    pub fn on(&self, what: Topic) -> Option<&Margin> {
        self.each.iter().find(|margin| margin.what == what)
    }
}

/// Longest time in any run that the film's surface is over `limit` (K), s.
fn seconds_over(history: &History<DRIFT_CASES>, limit: f64) -> f64 {
    let mut over = Lanes::<DRIFT_CASES>::ZERO;
    history.for_each_substep(
        |sample| sample.film_top,
        |seconds, temperature| {
            over += Lanes::from_fn(|lane| if temperature[lane] > limit { seconds[lane] } else { 0.0 });
        },
    );
    over.largest()
}

/// The band of a value over the drift cases, with the run as planned as the likely value.
fn band(lanes: Lanes<DRIFT_CASES>) -> Band {
    Band::around(lanes[0], &lanes.0)
}

/// Margins of what the heat does to film and cloth.
fn heat_margins(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    run: &PlannedRun,
    runs: &RunHistories,
) -> Vec<Margin> {
    let rules = &job.rules;
    let kinetics = hardest(job, candidate.white, run.demands.must_fuse);
    let fused =
        band(fuse(&runs.print, |sample| sample.film_bottom, &kinetics).fused).map(|share| share * 100.0);
    let film = band(runs.film_peak).map(celsius);
    let ClothHeat { peak: cloth_peak, scorch } = runs.cloth;
    let mut margins = vec![
        margin(Topic::Fusion, fused, rules.fused * 100.0, Side::AtLeast, Unit::Percent),
        margin(Topic::FilmHeat, film, celsius(rules.film_heat), Side::AtMost, Unit::Celsius),
    ];
    if cloth.scorches {
        // What is pressed later yellows the same cloth.
        let index = band(scorch + job.yellows_later());
        margins.push(margin(Topic::Scorch, index, rules.scorch, Side::AtMost, Unit::One));
    }
    if let Some(limit) = cloth.shrinks_above {
        let shrink = band((cloth_peak - limit).max(Lanes::ZERO) * (rules.shrink_slope * 100.0));
        margins.push(margin(
            Topic::Shrink,
            shrink,
            rules.shrink_allowed * 100.0,
            Side::AtMost,
            Unit::Percent,
        ));
    }
    if let Some((_, limit)) = cloth.yields() {
        let peak = band(cloth_peak).map(celsius);
        margins.push(margin(Topic::Softening, peak, celsius(limit), Side::AtMost, Unit::Celsius));
    }
    margins
}

/// Film temperature as the piece leaves the heat, °C.
fn exit_temperature(history: &History<DRIFT_CASES>) -> f64 {
    let leaves = history.exit_time[0];
    let at_exit = history.samples.iter().rev().find(|sample| sample.time[0] <= leaves);
    celsius(at_exit.map_or(Stack::ROOM, |sample| sample.film_top[0][0]))
}
