//! One way to print the order, weighed: every margin at its set point, and the chance of a late fault.

use super::bleed::{BleedPath, after_clean_lots, after_lot_test, chance};
use super::candidate::{Candidate, most_shown};
use super::decide::{Stake, Standing, verdict};
use super::window::{Demands, SetPoint};
use super::{Cloth, CureKind, Job, Margin, Side, Topic, Verdict};
use crate::cure::{fuse, scorch};
use crate::dryer::{Case, Film, Flash, History, Stack, TOLERANCE, World, flash, history};
use crate::migration::{Binding, Release, release};
use crate::numerics::march::MarchError;
use crate::numerics::{Lanes, normal};
use crate::optics::{DyeAbsorption, FreshPrint, Spectrum};
use crate::quantity::Band;
use crate::quantity::units::{celsius, kelvin};
use crate::textile::Fibre;

/// Runs that are looked at for every margin.
pub(super) const WORLDS: usize = 8;

/// The runs at a set point, the planned one first, then the corners that the set point must survive.
pub(super) fn worlds(drift: &crate::dryer::Drift) -> [World; WORLDS] {
    let nominal = World::NOMINAL;
    [
        nominal,
        World::cold(drift),
        World::hot(drift),
        World::stopped(drift),
        World { film: 1.0 + drift.film, ..nominal },
        World { film: 1.0 - drift.film, ..nominal },
        // Regain of a room that is 15 points damper or drier than the gauge says.
        World { water: 1.3, ..nominal },
        World { water: 0.75, ..nominal },
    ]
}

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

/// The flash that just dries a film: until its underside has gelled.
///
/// # Errors
/// As the march.
pub fn flash_step(job: &Job, cloth: &Cloth, way: &Candidate<'_>) -> Result<FlashStep, MarchError> {
    let film = match way.base {
        Some(base) => base.film,
        None => way.film / f64::from(way.strokes),
    };
    let film = Film { thickness: film, density: way.white.density };
    let stack = Stack::garment(film, &cloth.fabric, job.order.shop.humidity_percent / 100.0);
    let run = |seconds: f64| flash::<1>(&stack, &Flash::USUAL, Lanes::splat(seconds), TOLERANCE);
    let long = run(25.0)?;
    let trace = crate::cure::trace(&long, |sample| sample.film_bottom, &way.white.kinetics);
    let gelled = trace.iter().zip(&long.samples).find(|(cure, _)| cure.gelled[0] >= job.rules.gelled);
    let seconds = gelled.map_or(25.0, |(_, sample)| sample.time[0].clamp(1.0, 25.0));
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
    /// Its set point.
    pub point: SetPoint,
    /// Its demands on the window.
    pub demands: Demands,
    /// Its flash, if it has one.
    pub flash: Option<FlashStep>,
    /// Every margin.
    pub margins: Vec<Margin>,
    /// Chance that the white turns.
    pub bleeds: f64,
    /// Chance that it ghosts.
    pub ghosts: f64,
    /// Chance that it comes off.
    pub comes_off: f64,
    /// Chance that it cracks.
    pub cracks: f64,
    /// Chance of any late fault.
    pub fail_later: Band,
    /// The verdict on this way.
    pub verdict: Verdict,
    /// Film at the belt end, °C.
    pub exit_c: f64,
    /// Hottest film in any run, °C.
    pub hottest_film_c: f64,
    /// Path of dye through the film up to the day that matters, m².
    pub film_path: f64,
}

/// Which kinetics must fuse: all inks share one heat, and the one that cures hottest sets it.
#[must_use]
pub fn must_fuse(job: &Job, low_cure: bool) -> [bool; 2] {
    let colours = &job.order.print.colours_on_top;
    let ordinary_on_top = colours.count > 0 && colours.cure == CureKind::Ordinary;
    [!low_cure || ordinary_on_top, low_cure]
}

/// The stack of a way.
#[must_use]
pub fn stack_of(job: &Job, cloth: &Cloth, thickness: f64) -> Stack {
    let film = Film { thickness, density: Film::DENSITY };
    let mut stack = Stack::garment(film, &cloth.fabric, job.order.shop.humidity_percent / 100.0);
    stack.added_water = cloth.garment.added_water_percent / 100.0;
    stack
}

/// What binds the dye in a way, and how thick the film is.
#[must_use]
pub fn binding(job: &Job, way: &Candidate<'_>) -> Binding {
    // Reducer cuts what a white can hold: each percent about a twelfth. Common practice, no source.
    let reduced = (1.0 - job.order.print.reducer_percent / 12.0).max(0.0);
    let white = way.film * way.white.density * way.white.dye_capacity * reduced;
    let base = way.base.map_or(0.0, |base| base.film * base.density * base.dye_capacity);
    Binding { capacity: white + base, film: way.total_film() }
}

/// What the print looks like and what dye does to it.
#[must_use]
pub fn looks(cloth: &Cloth, way: &Candidate<'_>) -> Option<(FreshPrint, DyeAbsorption)> {
    let backing = match way.base {
        Some(base) => Spectrum::flat(base.reflectance),
        None => Spectrum::of_cloth(cloth.lab),
    };
    let white = way.white.optics().ok()?;
    let dye = DyeAbsorption::of_hue(super::candidate::travelling_hue(cloth.lab));
    Some((FreshPrint::new(way.film, &white, &backing), dye))
}

/// Dye released outside the dryer: flashes before it, pressed names after it.
#[must_use]
pub fn release_elsewhere(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    flash: Option<&FlashStep>,
) -> Release<1> {
    let mut sum = Release::NONE;
    if let Some(flash) = flash {
        let flashes = way.strokes - 1 + u32::from(way.base.is_some());
        for _ in 0..flashes {
            sum = sum.and(flash.release);
        }
    }
    if let Some(dyed) = &cloth.dyed {
        for event in &job.order.print.heat_after {
            sum.heat(dyed, Lanes::splat(event.seconds), Lanes::splat(kelvin(event.temp_c)));
        }
    }
    sum
}

/// Path of dye through the film from the dryer to the day that matters, m².
#[must_use]
pub fn film_path<const L: usize>(job: &Job, history: &History<L>) -> f64 {
    let diffusion = &job.rules.film_diffusion;
    let stored = diffusion.at(Lanes::<1>::splat(kelvin(job.order.use_.storage_c)))[0]
        * job.order.use_.looked_at_after_days
        * 86_400.0;
    // Dye enters all through the cure: on average it has half of it to spread.
    0.5 * diffusion.over(history)[0] + stored
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
) -> Result<Judged<'a>, MarchError> {
    let rules = &job.rules;
    let stack = stack_of(job, cloth, way.total_film());
    let cases = worlds(&job.dryer.drift).map(|world| Case { set: point.set, belt: point.belt, world });
    let history = history(&stack, &job.dryer, &cases, job.order.shop.passes, TOLERANCE)?;
    let mut margins = Vec::new();
    let mut add = |what: Topic, value: Band, limit: f64, needed: Side, unit: &str| {
        margins.push(Margin { what, limit, value, needed, unit: unit.into() });
    };
    let band = |lanes: Lanes<WORLDS>| Band::around(lanes[0], &lanes.0);

    // Fusion of the ink that is hardest to fuse.
    let kinetics = if demands.must_fuse[0] { ordinary_of(job, &way) } else { way.white.kinetics };
    let fused = fuse(&history, |sample| sample.film_bottom, &kinetics).fused;
    add(Topic::Fusion, band(fused).map(|share| share * 100.0), rules.fused * 100.0, Side::AtLeast, "%");

    let film_peak = history.film_peak();
    let cloth_peak = history.cloth_peak();
    let to_celsius = |lanes: Lanes<WORLDS>| band(lanes).map(celsius);
    add(Topic::FilmHeat, to_celsius(film_peak), celsius(rules.film_heat), Side::AtMost, "°C");
    if cloth.scorches {
        let index = scorch(&history, |sample| sample.film_top);
        add(Topic::Scorch, band(index), rules.scorch, Side::AtMost, "");
    }
    if let Some(limit) = cloth.shrinks_above {
        let shrink = (cloth_peak - limit).max(Lanes::ZERO) * (rules.shrink_slope * 100.0);
        add(Topic::Shrink, band(shrink), rules.shrink_allowed * 100.0, Side::AtMost, "%");
    }
    if let Some((_, limit)) = cloth.softens {
        add(Topic::Softening, to_celsius(cloth_peak), celsius(limit), Side::AtMost, "°C");
    }

    // Dye.
    let film_path = film_path(job, &history);
    let mut bleeds = Band::exact(0.0);
    if let (Some(dyed), Some((fresh, dye))) = (&cloth.dyed, looks(cloth, &way)) {
        let elsewhere = release_elsewhere(job, cloth, &way, flash.as_ref());
        let here = release(&history, dyed);
        let total = Release {
            vapour: here.vapour + elsewhere.vapour[0],
            theta: here.theta + elsewhere.theta[0],
            surface: here.surface + elsewhere.surface[0],
        };
        let dye_in = dyed.arrives(&total);
        let arrives = (dye_in[0] + dye_in[1] + dye_in[2]) / 3.0;
        let path = BleedPath { fresh: &fresh, dye: &dye, binding: binding(job, &way), path: film_path };
        let critical = path.critical(rules.bleed);
        bleeds =
            Band { low: dye_in[1], likely: arrives, high: dye_in[2] }.map(|dye| chance(dye, critical, rules));
        bleeds = bleeds.map(|p| with_evidence(job, cloth, &way, p));
        add(Topic::Bleed, path.band(arrives, rules), rules.bleed, Side::AtMost, "ΔE00");
    }

    // What is seen at the press.
    let most = most_shown(job.order.print.opacity);
    add(Topic::Opacity, Band::exact(way.shows), most, Side::AtMost, "ΔE00");
    if cloth.fabric.nap > 100e-6 {
        // Nap lies down under a film of about half its height; common practice, no source.
        add(Topic::Matting, Band::exact(way.film * 1e6), cloth.fabric.nap * 0.5e6, Side::AtLeast, "µm");
    }
    let hand = way.total_film() / 100e-6 * way.white.stiffness;
    // A tee's print feels like a board from about twice a usual one on; common practice, no source.
    add(Topic::Hand, Band::exact(hand), 2.2, Side::AtMost, "");

    // What shows later and has no equation: class frequencies, common practice, no source.
    let cracks = {
        let asked = job.order.print.stretch_needed_percent.max(cloth.garment.stretch_percent) / 100.0;
        // A worn print sees about two thirds of what the cloth can give.
        let needed = asked.max(cloth.fabric.stretch * 0.65).max(0.05);
        let stretch =
            Band { low: way.white.stretch * 0.75, likely: way.white.stretch, high: way.white.stretch * 1.33 };
        add(Topic::Stretch, stretch.map(|s| s * 100.0), needed * 100.0, Side::AtLeast, "%");
        normal::cumulative((needed / way.white.stretch).ln() / 0.25)
    };
    let ghosts = {
        let shade = if cloth.is_light() && cloth.cellulosic() > 0.3 { 1.0 } else { 0.05 };
        let damp = if job.order.shop.humidity_percent > 70.0 { 1.6 } else { 1.0 };
        let stacked = if job.order.use_.stacked_hot { 1.6 } else { 1.0 };
        let chance = (way.white.ghosting * shade * damp * stacked).min(0.9);
        if chance > 0.002 {
            add(
                Topic::Ghosting,
                Band { low: chance / 2.0, likely: chance, high: (chance * 2.0).min(1.0) }.map(|p| p * 100.0),
                rules.go * 100.0,
                Side::AtMost,
                "%",
            );
        }
        chance
    };
    let comes_off = {
        let nylon = cloth.share(Fibre::Nylon) > 0.4;
        let coated = cloth
            .garment
            .finish
            .iter()
            .any(|finish| matches!(finish, super::Finish::Coated | super::Finish::WaterRepellent));
        let chance = match (nylon, coated, way.white.holds_on_nylon) {
            (_, true, true) => 0.15,
            (_, true, false) => 0.55,
            (true, false, true) => 0.03,
            (true, false, false) => 0.22,
            (false, false, _) => 0.0,
        };
        if chance > 0.0 {
            add(
                Topic::Adhesion,
                Band { low: chance / 2.0, likely: chance, high: (chance * 2.0).min(1.0) }.map(|p| p * 100.0),
                rules.go * 100.0,
                Side::AtMost,
                "%",
            );
        }
        chance
    };

    let others = (1.0 - ghosts) * (1.0 - comes_off) * (1.0 - cracks);
    let fail_later = bleeds.map(|bleeds| 1.0 - (1.0 - bleeds.max(rules.lapse)) * others);
    let standing = Standing {
        known: cloth.is_everyday() || evidence(job, cloth, &way).next().is_some(),
        robust: point.robust,
        tested: lot_test(job, cloth, &way).is_some(),
    };
    let stake = Stake { pieces: f64::from(cloth.garment.pieces), value: cloth.garment.value_each };
    let verdict = verdict(fail_later.likely, &stake, standing, rules);
    margins.sort_by(|a, b| tightness(a).total_cmp(&tightness(b)));
    Ok(Judged {
        way,
        point,
        demands,
        flash,
        margins,
        bleeds: bleeds.likely,
        ghosts,
        comes_off,
        cracks,
        fail_later,
        verdict,
        exit_c: exit_temperature(&history),
        hottest_film_c: celsius(film_peak.largest()),
        film_path,
    })
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

fn evidence<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    way: &'a Candidate<'_>,
) -> impl Iterator<Item = &'a super::Evidence> {
    job.order.evidence.iter().filter(move |seen| {
        seen.white == way.white.id && (seen.about != "lot" || seen.name == cloth.garment.lot)
    })
}

fn lot_test<'a>(job: &'a Job, cloth: &'a Cloth, way: &'a Candidate<'_>) -> Option<&'a super::Evidence> {
    evidence(job, cloth, way).filter(|seen| seen.about == "lot").max_by(|a, b| a.days.total_cmp(&b.days))
}

/// Moves the chance of bleeding by what was seen of this lot, article or white.
fn with_evidence(job: &Job, cloth: &Cloth, way: &Candidate<'_>, before: f64) -> f64 {
    let rules = &job.rules;
    let power = |days: f64| {
        if days >= 7.0 {
            rules.power_weeks
        } else if days >= 1.0 {
            rules.power_hot_hold
        } else {
            rules.power_exit[usize::from(way.white.low_cure)]
        }
    };
    if let Some(seen) = lot_test(job, cloth, way) {
        return after_lot_test(before, seen.turned > 0, power(seen.days), rules.false_alarm);
    }
    let clean = evidence(job, cloth, way).filter(|seen| seen.turned == 0).count() as u32;
    let turned = evidence(job, cloth, way).any(|seen| seen.turned > 0);
    if turned {
        after_lot_test(before, true, rules.power_weeks, rules.false_alarm)
    } else if clean > 0 {
        after_clean_lots(before, clean, rules.power_weeks, rules)
    } else {
        before
    }
}
