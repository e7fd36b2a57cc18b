//! One way to print the order with every margin at its set point, over every run that it must survive.

use super::candidate::Candidate;
use super::dried::dry;
use super::flash::FlashStep;
use super::late::stretch_margin;
use super::memory::cloth_in_room;
use super::outlook::{DyeHeat, Outlook, Running};
use super::press::press_margins;
use super::rank;
use super::ride::{Ride, Rides, Singed, WORLDS};
use super::window::{Demands, SetPoint};
use super::{Cloth, CureKind, Job, Margin, Side, Topic};
use crate::cure::fuse;
use crate::dryer::{Film, History, HistoryError, Stack};
use crate::numerics::Lanes;
use crate::quantity::Band;
use crate::quantity::units::celsius;
use std::ops::Deref;

/// A way with its outlook and every margin.
#[derive(Clone, Debug)]
pub struct Judged<'a> {
    /// What decides for or against it.
    pub outlook: Outlook<'a>,
    /// Every margin, the tightest first.
    pub margins: Vec<Margin>,
    /// Film at the belt end, °C.
    pub exit_c: f64,
    /// Hottest film in any run, °C.
    pub hottest_film_c: f64,
    /// Hottest cloth in any run, under the print or beside it, °C.
    pub hottest_cloth_c: f64,
    /// Longest that the film is over the heat from which plasticised PVC without stabiliser loses acid, s.
    pub acid_seconds: f64,
}

/// A judged way is its outlook, and more.
impl<'a> Deref for Judged<'a> {
    type Target = Outlook<'a>;

    fn deref(&self) -> &Outlook<'a> {
        &self.outlook
    }
}

/// Which kinetics must fuse: all inks share one heat, and the one that cures hottest sets it.
#[must_use]
pub fn must_fuse(job: &Job, low_cure: bool) -> [bool; 2] {
    let colours = &job.order.print.colours_on_top;
    let ordinary_on_top = colours.count > 0 && colours.cure == CureKind::Ordinary;
    [!low_cure || ordinary_on_top, low_cure]
}

/// The stack of a way: its white, the blocker under it, the cloth as damp as the room and the order say, or dried.
#[must_use]
pub fn stack_of(job: &Job, cloth: &Cloth, way: &Candidate<'_>) -> Stack {
    let film = Film { thickness: way.film, density: way.white.density };
    let blocker = way.base.map(|base| Film { thickness: base.film, density: base.density });
    Stack { blocker, ..cloth_of(job, cloth, way, film) }
}

/// The cloth of a way under a film.
pub(super) fn cloth_of(job: &Job, cloth: &Cloth, way: &Candidate<'_>, film: Film) -> Stack {
    let damp = cloth_in_room(job, cloth, film);
    if way.dried { dry(damp, &cloth.fabric) } else { damp }
}

/// Judges one way as it is run.
///
/// # Errors
/// As the march.
pub fn judge<'a>(
    job: &Job,
    cloth: &Cloth,
    way: Candidate<'a>,
    point: SetPoint,
    demands: Demands,
    flash: Option<FlashStep>,
) -> Result<Judged<'a>, HistoryError> {
    let mut rides = Rides::default();
    let outlook = rides.weigh(job, cloth, way, point, demands, flash)?;
    rides.judge(job, cloth, outlook)
}

impl Rides {
    /// The outlook on one way as it is run.
    ///
    /// # Errors
    /// As the march.
    pub fn weigh<'a>(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        way: Candidate<'a>,
        point: SetPoint,
        demands: Demands,
        flash: Option<FlashStep>,
    ) -> Result<Outlook<'a>, HistoryError> {
        let dryings = self.dryings(job, cloth, &way, &point)?;
        let history = cloth.dyed.map(|_| self.print(job, cloth, &way, &point)).transpose()?;
        let heat = cloth.dyed.as_ref().zip(history.as_deref());
        let heat = heat.map(|(dyed, history)| DyeHeat { dyed, history });
        Ok(Outlook::of(job, cloth, way, Running { point, demands, flash, dryings }, heat))
    }

    /// Every margin of a way, over every run.
    ///
    /// # Errors
    /// As the march.
    pub fn judge<'a>(
        &mut self,
        job: &Job,
        cloth: &Cloth,
        outlook: Outlook<'a>,
    ) -> Result<Judged<'a>, HistoryError> {
        let ride = self.of(job, cloth, &outlook)?;
        let Outlook { way, look, late, .. } = &outlook;
        let mut margins = heat_margins(job, cloth, &outlook, &ride);
        margins.extend(press_margins(job, cloth, way, look));
        margins.push(stretch_margin(job, cloth, way));
        margins.extend(outlook.tint.iter().flatten().cloned().chain(late.margins(job)));
        let mut ranked = Vec::with_capacity(margins.len());
        for margin in margins {
            rank::insert(&mut ranked, margin, |a, b| tightness(a).total_cmp(&tightness(b)));
        }
        Ok(Judged {
            margins: ranked,
            exit_c: exit_temperature(&ride.print),
            hottest_film_c: celsius(ride.film_peak.largest()),
            hottest_cloth_c: celsius(ride.cloth.peak.largest()),
            acid_seconds: seconds_over(&ride.print, job.rules.acid_onset),
            outlook,
        })
    }
}

/// Longest time in any run that the film's surface is over `limit` (K), s.
fn seconds_over(history: &History<WORLDS>, limit: f64) -> f64 {
    let mut over = Lanes::<WORLDS>::ZERO;
    history.walk(
        |sample| sample.film_top,
        |seconds, temperature| {
            over += Lanes::from_fn(|lane| if temperature[lane] > limit { seconds[lane] } else { 0.0 });
        },
    );
    over.largest()
}

pub(super) fn margin(what: Topic, value: Band, limit: f64, needed: Side, unit: &str) -> Margin {
    Margin { what, limit, value, needed, unit: unit.into() }
}

/// The band of a value over the runs, the planned one being the likely.
fn band(lanes: Lanes<WORLDS>) -> Band {
    Band::around(lanes[0], &lanes.0)
}

/// What the heat does to film and cloth.
fn heat_margins(job: &Job, cloth: &Cloth, outlook: &Outlook<'_>, ride: &Ride) -> Vec<Margin> {
    let (rules, way) = (&job.rules, &outlook.way);
    // The ink that is hardest to fuse sets the heat.
    let ordinary = outlook.run.demands.must_fuse[0];
    let kinetics = if ordinary { ordinary_of(job, way) } else { way.white.kinetics };
    let fused =
        band(fuse(&ride.print, |sample| sample.film_bottom, &kinetics).fused).map(|share| share * 100.0);
    let film = band(ride.film_peak).map(celsius);
    let Singed { peak: cloth_peak, scorch } = ride.cloth;
    let mut margins = vec![
        margin(Topic::Fusion, fused, rules.fused * 100.0, Side::AtLeast, "%"),
        margin(Topic::FilmHeat, film, celsius(rules.film_heat), Side::AtMost, "°C"),
    ];
    if cloth.scorches {
        let index = band(scorch);
        margins.push(margin(Topic::Scorch, index, rules.scorch, Side::AtMost, ""));
    }
    if let Some(limit) = cloth.shrinks_above {
        let shrink = band((cloth_peak - limit).max(Lanes::ZERO) * (rules.shrink_slope * 100.0));
        margins.push(margin(Topic::Shrink, shrink, rules.shrink_allowed * 100.0, Side::AtMost, "%"));
    }
    if let Some((_, limit)) = cloth.yields() {
        let peak = band(cloth_peak).map(celsius);
        margins.push(margin(Topic::Softening, peak, celsius(limit), Side::AtMost, "°C"));
    }
    margins
}

/// Film temperature as the piece leaves the heat, °C.
fn exit_temperature(history: &History<WORLDS>) -> f64 {
    let leaves = history.leaves[0];
    let at_exit = history.samples.iter().rev().find(|sample| sample.time[0] <= leaves);
    celsius(at_exit.map_or(Stack::ROOM, |sample| sample.film_top[0][0]))
}

/// Kinetics of the ordinary ink that shares the heat: that of the white itself, or of any ordinary white known here.
fn ordinary_of(job: &Job, way: &Candidate<'_>) -> crate::ink::CureKinetics {
    if !way.white.low_cure {
        return way.white.kinetics;
    }
    let ordinary = job.whites.iter().chain(&job.market).find(|white| !white.low_cure);
    ordinary.map_or(way.white.kinetics, |white| white.kinetics)
}

/// How near a margin is to its limit: 0 at the limit, negative beyond, in units of the limit.
#[must_use]
pub fn tightness(margin: &Margin) -> f64 {
    let scale = margin.limit.abs().max(1e-9);
    match margin.needed {
        Side::AtLeast => (margin.value.low - margin.limit) / scale,
        Side::AtMost => (margin.limit - margin.value.high) / scale,
    }
}
