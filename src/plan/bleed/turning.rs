//! Whether the white of a print turns by the day that matters: the dye that heat drives in against what the
//! film can take.

use super::ageing::{Ageing, AgeingCases, release_elsewhere};
use super::chance::BleedPath;
use super::lots::{LotDye, MIDDLE};
use super::rim::Rim;
use crate::dryer::History;
use crate::migration::{DyedCloth, Release, release};
use crate::numerics::Lanes;
use crate::optics::{DyeAbsorption, FreshPrint, GreyStep, Spectrum};
use crate::plan::order::{Cloth, Job, Rules};
use crate::plan::recipe::{Candidate, DRIFT_CASES, FlashStep, travelling_hue};
use crate::plan::report::{Margin, Side, Topic, Unit, margin};
use crate::quantity::Band;

/// The dye of a cloth, and the heat that moves it.
#[derive(Clone, Copy, Debug)]
pub struct DyeHeat<'h> {
    /// The dye.
    pub dyed: &'h DyedCloth,
    /// Temperature histories of the print: as planned, the cold and the hot corner of the drift, then the
    /// other drift cases.
    pub history: &'h History<DRIFT_CASES>,
}

/// The fresh print, and the absorption of the dye that travels; `None` if the white's optical constants are
/// not valid.
#[must_use]
pub fn fresh_and_dye(cloth: &Cloth, candidate: &Candidate<'_>) -> Option<(FreshPrint, DyeAbsorption)> {
    let backing = candidate.blocker.map_or(cloth.spectrum, |blocker| Spectrum::flat(blocker.reflectance));
    let white = candidate.white.optics().ok()?;
    let dye = DyeAbsorption::of_hue(travelling_hue(cloth.lab));
    Some((FreshPrint::new(candidate.film, &white, &backing), dye))
}

/// A film that bleeds, with all that its forecast needs.
#[derive(Clone, Debug)]
pub struct Bled {
    /// The film, ready to be aged.
    pub ageing: Ageing,
    /// The rim where the white extends beyond its blocker; absent without one.
    pub rim: Option<Rim>,
    /// Dye of the lots as it comes to the print: at the cold corner, over drift, at the hot corner.
    pub dye: [LotDye; 3],
    /// Dye of each lot over drift, kg/m².
    pub lots: Lanes<8>,
    /// Dye that turns it, in its middle or along its rim, kg/m².
    pub critical: f64,
    /// The rules.
    pub rules: Rules,
}

/// Chances and margins of a candidate's bleeding, in its middle and along its rim.
pub struct Bleeding {
    /// Chance that the white turns: at the cold corner, over drift, at the hot corner.
    pub chances: Band,
    /// Margins of the colour difference, in the middle and along the rim.
    pub tint: [Option<Margin>; 2],
    /// Staining grade of the likely tint.
    pub grade: Option<GreyStep>,
    /// The film that bleeds; absent where nothing does.
    pub bled: Option<Bled>,
}

/// Chance that the white turns, over drift, with its margins. 0 for cloth without dye (`heat` is `None`).
pub fn bleeding(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    flash: Option<&FlashStep>,
    heat: Option<DyeHeat<'_>>,
) -> Bleeding {
    let (Some(DyeHeat { dyed, history }), Some((fresh, dye))) = (heat, fresh_and_dye(cloth, candidate))
    else {
        return Bleeding { chances: Band::exact(0.0), tint: [None, None], grade: None, bled: None };
    };
    let rules = job.rules;
    let arrives = arrives(job, cloth, dyed, candidate, flash, history);
    let lots = arrives[1].lots();
    let ageing = Ageing::new(job, dyed, candidate, flash, history);
    let cases = AgeingCases::lots(lots, lots[MIDDLE]);
    let path = BleedPath { fresh: &fresh, dye: &dye, reach: ageing.reach(&cases) };
    let rim = Rim::new(job, cloth, candidate, &ageing);
    let at_rim = rim.as_ref().map(|rim| rim.critical_and_band(&dye, &cases, &rules));
    let critical = at_rim.iter().map(|(critical, _)| *critical).fold(path.critical(rules.bleed), f64::min);
    let [low, likely, high] = arrives.map(|dye| dye.chance(critical, rules.lapse));
    let chances = Band { low, likely, high };
    let band = path.band(&lots);
    Bleeding {
        chances,
        tint: [
            Some(margin(Topic::Bleed, band, rules.bleed, Side::AtMost, Unit::ColourDifference)),
            at_rim
                .map(|(_, band)| margin(Topic::Rim, band, rules.bleed, Side::AtMost, Unit::ColourDifference)),
        ],
        grade: Some(path.grade(lots[MIDDLE]).step),
        bled: Some(Bled { ageing, rim, dye: arrives, lots, critical, rules }),
    }
}

/// Dye that comes to the film: at the cold corner, as the mean of the run as planned and both corners, and at the hot
/// corner.
fn arrives(
    job: &Job,
    cloth: &Cloth,
    dyed: &DyedCloth,
    candidate: &Candidate<'_>,
    flash: Option<&FlashStep>,
    history: &History<DRIFT_CASES>,
) -> [LotDye; 3] {
    let elsewhere = release_elsewhere(job, dyed, candidate, flash);
    let here = release(history, dyed);
    let total = Release {
        vapour: here.vapour + elsewhere.vapour[0],
        theta: here.theta + elsewhere.theta[0],
        surface: here.surface + elsewhere.surface[0],
    };
    let sources = dyed.sources(&total);
    let corner = |of: &dyn Fn(&Lanes<DRIFT_CASES>) -> f64| {
        LotDye::new(of(&sources[0]), of(&sources[1]), &cloth.belief)
    };
    [corner(&|dye| dye[1]), corner(&|dye| (dye[0] + dye[1] + dye[2]) / 3.0), corner(&|dye| dye[2])]
}
