//! What becomes of a way weeks later: whether it bleeds, whether anything else shows late, and the verdict on it.
//!
//! It is all that decides between two ways, and it hangs on the print alone, and on no heat at all where the cloth has no
//! dye. So a search weighs ways by it; every margin is read for the ways that are shown ([`super::judge`]), with the cloth
//! beside the print.

use super::rule::{Stake, Standing, before_money, verdict};
use crate::ink::FilmOpacity;
use crate::optics::GreyStep;
use crate::plan::bleed::{Bled, Bleeding, DyeHeat, bleeding, evidence, lot_test};
use crate::plan::margins::LateFaults;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::Candidate;
use crate::plan::report::{Margin, Verdict};
use crate::plan::window::PlannedRun;
use crate::quantity::Band;

/// A way with what decides for or against it.
#[derive(Clone, Debug)]
pub struct Assessment<'a> {
    /// The way.
    pub candidate: Candidate<'a>,
    /// How it is run.
    pub run: PlannedRun,
    /// What it looks like fresh.
    pub look: FilmOpacity,
    /// Where it is dried before: the verdict on the best way of the same white that is not.
    pub undried: Option<Verdict>,
    /// Margins of its bleeding, in its middle and along its rim.
    pub tint: [Option<Margin>; 2],
    /// Staining grade of the likely tint, where cloth bleeds; shown beside the colour difference that judges.
    pub grade: Option<GreyStep>,
    /// Chance that the white turns.
    pub bleeds: f64,
    /// Chances of what shows late and no heat moves.
    pub late: LateFaults,
    /// Chance of any late fault.
    pub fail_later: Band,
    /// The verdict on this way.
    pub verdict: Verdict,
    /// Whether what is at stake made the verdict stricter.
    pub money_adds_care: bool,
    /// What bleeds in it; absent where nothing does.
    pub bled: Option<Bled>,
}

impl<'a> Assessment<'a> {
    /// The assessment on a way, with the heat that moves the dye of its cloth; none where it has none.
    #[must_use]
    pub fn of(
        job: &Job,
        cloth: &Cloth,
        candidate: Candidate<'a>,
        run: PlannedRun,
        heat: Option<DyeHeat<'_>>,
    ) -> Self {
        let Bleeding { chances, tint, grade, bled } =
            bleeding(job, cloth, &candidate, run.flash.as_ref(), heat);
        let late = LateFaults::of(job, cloth, &candidate);
        let others = 1.0 - late.any();
        let fail_later = chances.map(|bleeds| 1.0 - (1.0 - bleeds.max(job.rules.lapse)) * others);
        let (verdict, before) = settled(job, cloth, &candidate, fail_later.likely, run.point.robust);
        Self {
            look: candidate.look(job, cloth, 1.0),
            candidate,
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

/// The verdict for a chance of a late fault on this way, and what it is before money has its say.
pub fn settled(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    chance: f64,
    robust: bool,
) -> (Verdict, Verdict) {
    let standing = Standing {
        known: cloth.is_everyday() || evidence(job, cloth, candidate).next().is_some(),
        robust,
        tested: lot_test(job, cloth, candidate).is_some(),
    };
    let stake = Stake { pieces: f64::from(cloth.garment.pieces), value: cloth.garment.value_each };
    (verdict(chance, &stake, standing, &job.rules), before_money(chance, standing, &job.rules))
}
