//! One way to print the order, weighed: every margin at its set point, and the chance of a late fault.

use super::ageing::{Ageing, Worlds, release_elsewhere};
use super::bleed::{BleedPath, chance, lots};
use super::candidate::Candidate;
use super::decide::{Stake, Standing, before_money, verdict};
use super::dried::dry;
use super::evidence::{evidence, lot_test, with_evidence};
use super::late::{LateFaults, stretch_margin};
use super::memory::cloth_in_room;
use super::press::press_margins;
use super::rank;
use super::ride::{Ride, WORLDS};
use super::rim::Rim;
use super::window::{Demands, SetPoint};
use super::{Cloth, CureKind, Job, Margin, Rules, Side, Topic, Verdict};
use crate::cure::fuse;
use crate::dryer::HistoryError;
use crate::dryer::{Film, Flash, History, Stack, TOLERANCE, flash};
use crate::ink::Opacity;
use crate::migration::{DyedCloth, Release, release};
use crate::numerics::Lanes;
use crate::optics::{DyeAbsorption, FreshPrint, GreyStep, Spectrum};
use crate::quantity::Band;
use crate::quantity::units::celsius;

/// A flash between strokes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlashStep {
    /// How long, s.
    pub seconds: f64,
    /// Film at its end, °C.
    pub film_c: f64,
    /// What it does to the dye.
    pub release: Release<1>,
}

/// Shortest flash that a press runs, s. Common practice, no source.
pub(super) const SHORTEST_FLASH: f64 = 1.0;

/// The flash that just dries a film: until its underside has gelled.
///
/// # Errors
/// As the march.
pub fn flash_step(job: &Job, cloth: &Cloth, way: &Candidate<'_>) -> Result<FlashStep, HistoryError> {
    let film = match way.base {
        Some(base) => base.film,
        None => way.film / f64::from(way.strokes),
    };
    let stack = cloth_of(job, cloth, way, Film { thickness: film, density: way.white.density });
    let run = |seconds: f64| flash::<1>(&stack, &Flash::USUAL, Lanes::splat(seconds), TOLERANCE);
    let long = run(25.0)?;
    let trace = crate::cure::trace(&long, |sample| sample.film_bottom, &way.white.kinetics);
    let gelled = trace.iter().zip(&long.samples).find(|(cure, _)| cure.gelled[0] >= job.rules.gelled);
    let seconds = gelled.map_or(25.0, |(_, sample)| sample.time[0].clamp(SHORTEST_FLASH, 25.0));
    let short = run(seconds)?;
    let film_c = celsius(short.film_bottom_peak()[0]);
    let release = cloth.dyed.map_or(Release::NONE, |dyed| release(&short, &dyed));
    Ok(FlashStep { seconds, film_c, release })
}

/// A weighed way.
#[derive(Clone, Debug)]
pub struct Judged<'a> {
    /// The way.
    pub way: Candidate<'a>,
    /// What it looks like fresh.
    pub look: Opacity,
    /// Passes in which its cloth is dried before; 0 where it is printed as it lies.
    pub dryings: u32,
    /// Where it is dried before: the verdict on the best way of the same white that is not.
    pub undried: Option<Verdict>,
    /// Its set point.
    pub point: SetPoint,
    /// Its demands on the window.
    pub demands: Demands,
    /// Its flash, if it has one.
    pub flash: Option<FlashStep>,
    /// Every margin.
    pub margins: Vec<Margin>,
    /// Staining grade of the likely tint, where cloth bleeds; shown beside the colour difference that judges.
    pub grade: Option<GreyStep>,
    /// Chance that the white turns.
    pub bleeds: f64,
    /// Chances of what shows late and no heat moves.
    pub(super) late: LateFaults,
    /// Chance of any late fault.
    pub fail_later: Band,
    /// The verdict on this way.
    pub verdict: Verdict,
    /// Whether it is what rides on the order that made the verdict stricter.
    pub money_adds_care: bool,
    /// Film at the belt end, °C.
    pub exit_c: f64,
    /// Hottest film in any run, °C.
    pub hottest_film_c: f64,
    /// Hottest cloth in any run, under the print or beside it, °C.
    pub hottest_cloth_c: f64,
    /// Longest that the film is over the heat from which plasticised PVC without stabiliser loses acid, s.
    pub acid_seconds: f64,
    /// What bleeds in it; absent where nothing does.
    pub bled: Option<Bled>,
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
fn cloth_of(job: &Job, cloth: &Cloth, way: &Candidate<'_>, film: Film) -> Stack {
    let damp = cloth_in_room(job, cloth, film);
    if way.dried { dry(damp, &cloth.fabric) } else { damp }
}

/// What the print looks like and what dye does to it.
#[must_use]
pub fn looks(cloth: &Cloth, way: &Candidate<'_>) -> Option<(FreshPrint, DyeAbsorption)> {
    let backing = way.base.map_or(cloth.spectrum, |base| Spectrum::flat(base.reflectance));
    let white = way.white.optics().ok()?;
    let dye = DyeAbsorption::of_hue(super::candidate::travelling_hue(cloth.lab));
    Some((FreshPrint::new(way.film, &white, &backing), dye))
}

/// Weighs one way at its set point.
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
    let ride = Ride::march(job, cloth, &way, &point)?;
    Ok(judge_ride(job, cloth, way, point, demands, flash, &ride))
}

/// Weighs one way that has been through the dryer.
pub(super) fn judge_ride<'a>(
    job: &Job,
    cloth: &Cloth,
    way: Candidate<'a>,
    point: SetPoint,
    demands: Demands,
    flash: Option<FlashStep>,
    ride: &Ride,
) -> Judged<'a> {
    let rules = &job.rules;
    let history = &ride.print.history;
    let mut margins = heat_margins(job, cloth, &way, &demands, ride);
    let Bleeding { chances: bleeds, margins: bleed, grade, bled } =
        bleeding(job, cloth, &way, flash.as_ref(), history);
    let look = way.look(job, cloth, 1.0);
    let late = LateFaults::of(job, cloth, &way);
    margins.extend(press_margins(job, cloth, &way, &look));
    margins.push(stretch_margin(job, cloth, &way));
    margins.extend(bleed.into_iter().flatten().chain(late.margins(job)));
    let mut ranked = Vec::with_capacity(margins.len());
    for margin in margins {
        rank::insert(&mut ranked, margin, |a, b| tightness(a).total_cmp(&tightness(b)));
    }

    let others = 1.0 - late.any();
    let fail_later = bleeds.map(|bleeds| 1.0 - (1.0 - bleeds.max(rules.lapse)) * others);
    let (verdict, before) = settled(job, cloth, &way, fail_later.likely, point.robust);
    Judged {
        way,
        look,
        dryings: ride.dryings,
        undried: None,
        point,
        demands,
        flash,
        margins: ranked,
        grade,
        bleeds: bleeds.likely,
        late,
        fail_later,
        verdict,
        money_adds_care: verdict > before,
        exit_c: exit_temperature(history),
        hottest_film_c: celsius(ride.print.film_peak.largest()),
        hottest_cloth_c: celsius(ride.print.cloth.peak.max(ride.beside.peak).largest()),
        acid_seconds: seconds_over(history, rules.acid_onset),
        bled,
    }
}

/// The verdict for a chance of a late fault on this way, and what it is before money has its say.
pub(super) fn settled(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    chance: f64,
    robust: bool,
) -> (Verdict, Verdict) {
    let standing = Standing {
        known: cloth.is_everyday() || evidence(job, cloth, way).next().is_some(),
        robust,
        tested: lot_test(job, cloth, way).is_some(),
    };
    let stake = Stake { pieces: f64::from(cloth.garment.pieces), value: cloth.garment.value_each };
    (verdict(chance, &stake, standing, &job.rules), before_money(chance, standing, &job.rules))
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
fn heat_margins(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    demands: &Demands,
    ride: &Ride,
) -> Vec<Margin> {
    let rules = &job.rules;
    // The ink that is hardest to fuse sets the heat.
    let kinetics = if demands.must_fuse[0] { ordinary_of(job, way) } else { way.white.kinetics };
    let fused = band(fuse(&ride.print.history, |sample| sample.film_bottom, &kinetics).fused)
        .map(|share| share * 100.0);
    let film = band(ride.print.film_peak).map(celsius);
    let (under, beside) = (ride.print.cloth, ride.beside);
    let cloth_peak = under.peak.max(beside.peak);
    let mut margins = vec![
        margin(Topic::Fusion, fused, rules.fused * 100.0, Side::AtLeast, "%"),
        margin(Topic::FilmHeat, film, celsius(rules.film_heat), Side::AtMost, "°C"),
    ];
    if cloth.scorches {
        let index = band(under.scorch.max(beside.scorch));
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

/// A film that bleeds, with all that its forecast needs.
#[derive(Clone, Debug)]
pub struct Bled {
    /// The film with its heat and its shelf.
    pub ageing: Ageing,
    /// Where it stands over its blocker; absent without one.
    pub rim: Option<Rim>,
    /// Dye that heat drives into it in the middle lot, kg/m²: at the cold corner, over drift, at the hot corner.
    pub arrives: Band,
    /// Dye that turns it, in its middle or along its rim, kg/m².
    pub critical: f64,
    /// The rule, its lots as far apart as what is known of this cloth leaves them.
    pub rules: Rules,
}

/// What is said of a way's bleeding, in its middle and along its rim.
struct Bleeding {
    chances: Band,
    margins: [Option<Margin>; 2],
    grade: Option<GreyStep>,
    bled: Option<Bled>,
}

/// Chance that the white turns, over drift, and its margin.
fn bleeding(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    flash: Option<&FlashStep>,
    history: &History<WORLDS>,
) -> Bleeding {
    let (Some(dyed), Some((fresh, dye))) = (&cloth.dyed, looks(cloth, way)) else {
        return Bleeding { chances: Band::exact(0.0), margins: [None, None], grade: None, bled: None };
    };
    let rules = Rules { lot_spread: cloth.belief.spread, ..job.rules };
    let arrives = arrives(job, cloth, dyed, way, flash, history);
    let ageing = Ageing::new(job, dyed, way, flash, history);
    let worlds = Worlds::lots(arrives.likely, lots(&rules));
    let path = BleedPath { fresh: &fresh, dye: &dye, reach: ageing.reach(&worlds) };
    let rim = Rim::new(job, cloth, way, &ageing);
    let at_rim = rim.as_ref().map(|rim| rim.weighed(&dye, &worlds, arrives.likely, &rules));
    let critical = at_rim.iter().map(|(critical, _)| *critical).fold(path.critical(rules.bleed), f64::min);
    let chances = arrives.map(|dye| with_evidence(job, cloth, way, &rules, chance(dye, critical, &rules)));
    let band = path.band(arrives.likely, &rules);
    Bleeding {
        chances,
        margins: [
            Some(margin(Topic::Bleed, band, rules.bleed, Side::AtMost, "ΔE00")),
            at_rim.map(|(_, band)| margin(Topic::Rim, band, rules.bleed, Side::AtMost, "ΔE00")),
        ],
        grade: Some(path.grade(arrives.likely).step),
        bled: Some(Bled { ageing, rim, arrives, critical, rules }),
    }
}

/// Dye that heat drives into the film, kg/m²: at the cold corner, as the mean of the run as planned and both corners,
/// and at the hot corner.
fn arrives(
    job: &Job,
    cloth: &Cloth,
    dyed: &DyedCloth,
    way: &Candidate<'_>,
    flash: Option<&FlashStep>,
    history: &History<WORLDS>,
) -> Band {
    let elsewhere = release_elsewhere(job, dyed, way, flash);
    let here = release(history, dyed);
    let total = Release {
        vapour: here.vapour + elsewhere.vapour[0],
        theta: here.theta + elsewhere.theta[0],
        surface: here.surface + elsewhere.surface[0],
    };
    let Lanes([planned, cold, hot, ..]) = dyed.arrives(&total) * cloth.belief.shift.exp();
    Band { low: cold, likely: (planned + cold + hot) / 3.0, high: hot }
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
