//! What becomes of a way weeks later: whether it bleeds, whether anything else shows late, and the verdict on it.
//!
//! It is all that decides between two ways, and it hangs on the print alone, and on no heat at all where the cloth has no
//! dye. So a search weighs ways by it; every margin is read for the ways that are shown ([`super::judge`]), with the cloth
//! beside the print.

use super::ageing::{Ageing, Worlds, release_elsewhere};
use super::bleed::{BleedPath, chance, lots};
use super::candidate::Candidate;
use super::decide::{Stake, Standing, before_money, verdict};
use super::evidence::{evidence, lot_test, with_evidence};
use super::flash::FlashStep;
use super::judge::margin;
use super::late::LateFaults;
use super::ride::WORLDS;
use super::rim::Rim;
use super::window::{Demands, SetPoint};
use super::{Cloth, Job, Margin, Rules, Side, Topic, Verdict};
use crate::dryer::History;
use crate::ink::FilmOpacity;
use crate::migration::{DyedCloth, Release, release};
use crate::numerics::Lanes;
use crate::optics::{DyeAbsorption, FreshPrint, GreyStep, Spectrum};
use crate::quantity::Band;

/// How a way is run.
#[derive(Clone, Copy, Debug)]
pub struct Running {
    /// Its set point.
    pub point: SetPoint,
    /// Its demands on the window.
    pub demands: Demands,
    /// Its flash, if it has one.
    pub flash: Option<FlashStep>,
    /// Passes in which its cloth is dried before; 0 where it is printed as it lies.
    pub dryings: u32,
}

/// Dye of a cloth, and what moves it: the run as planned, then the cold and the hot corner of the drift.
#[derive(Clone, Copy, Debug)]
pub struct DyeHeat<'h> {
    /// The dye.
    pub dyed: &'h DyedCloth,
    /// The heat.
    pub history: &'h History<WORLDS>,
}

/// A way with what decides for or against it.
#[derive(Clone, Debug)]
pub struct Outlook<'a> {
    /// The way.
    pub way: Candidate<'a>,
    /// How it is run.
    pub run: Running,
    /// What it looks like fresh.
    pub look: FilmOpacity,
    /// Where it is dried before: the verdict on the best way of the same white that is not.
    pub undried: Option<Verdict>,
    /// Margins of its bleeding, in its middle and along its rim.
    pub(super) tint: [Option<Margin>; 2],
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
    /// What bleeds in it; absent where nothing does.
    pub bled: Option<Bled>,
}

impl<'a> Outlook<'a> {
    /// The outlook on a way, with the heat that moves the dye of its cloth; none where it has none.
    #[must_use]
    pub fn of(job: &Job, cloth: &Cloth, way: Candidate<'a>, run: Running, heat: Option<DyeHeat<'_>>) -> Self {
        let Bleeding { chances, tint, grade, bled } = bleeding(job, cloth, &way, run.flash.as_ref(), heat);
        let late = LateFaults::of(job, cloth, &way);
        let others = 1.0 - late.any();
        let fail_later = chances.map(|bleeds| 1.0 - (1.0 - bleeds.max(job.rules.lapse)) * others);
        let (verdict, before) = settled(job, cloth, &way, fail_later.likely, run.point.robust);
        Self {
            look: way.look(job, cloth, 1.0),
            way,
            run,
            undried: None,
            tint,
            grade,
            bleeds: chances.likely,
            late,
            fail_later,
            verdict,
            money_adds_care: verdict > before,
            bled,
        }
    }
}

// What the print looks like and what dye does to it.
#[must_use]
pub fn looks(cloth: &Cloth, way: &Candidate<'_>) -> Option<(FreshPrint, DyeAbsorption)> {
    let backing = way.base.map_or(cloth.spectrum, |base| Spectrum::flat(base.reflectance));
    let white = way.white.optics().ok()?;
    let dye = DyeAbsorption::of_hue(super::candidate::travelling_hue(cloth.lab));
    Some((FreshPrint::new(way.film, &white, &backing), dye))
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
    tint: [Option<Margin>; 2],
    grade: Option<GreyStep>,
    bled: Option<Bled>,
}

/// Chance that the white turns, over drift, and its margin.
fn bleeding(
    job: &Job,
    cloth: &Cloth,
    way: &Candidate<'_>,
    flash: Option<&FlashStep>,
    heat: Option<DyeHeat<'_>>,
) -> Bleeding {
    let (Some(DyeHeat { dyed, history }), Some((fresh, dye))) = (heat, looks(cloth, way)) else {
        return Bleeding { chances: Band::exact(0.0), tint: [None, None], grade: None, bled: None };
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
        tint: [
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
