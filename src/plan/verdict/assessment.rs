//! What becomes of a candidate weeks later: whether it bleeds, whether anything else shows late, and the
//! verdict on it.
//!
//! This is all that decides between two candidates, so a search compares candidates by it; every margin is
//! computed for those that are shown ([`judge`](super::judgement::judge)).
//!
//! **Decision:** what decides is read from the print and the cloth beside it, in all eight cases of drift at
//! once.
//! **Because:** a setting is judged alike wherever it comes from; candidates at one setting share the cloth
//! beside the print.
//! **Measured:** four cases first and four for what is shown saved a tenth over a whole shelf, and made the
//! cold first answer 7 % slower, since the browser compiles a second copy of the integrator (six pairs,
//! 2026-11-29, machine not recorded).
//! **Reconsider when:** browsers keep compiled wasm between starts, or the lanes get wider.

use super::rule::{Stake, Standing, before_money, verdict};
use crate::ink::FilmOpacity;
use crate::optics::GreyStep;
use crate::plan::bleed::{Bled, Bleeding, DyeHeat, bleeding, followed, is_about};
use crate::plan::margins::{HeatStanding, LateFaults, LaterHeat, RunHistories, UnderCure};
use crate::plan::order::{Cloth, Evidence, EvidenceSubject, Job};
use crate::plan::recipe::{Candidate, comes_damp, is_vouched};
use crate::plan::report::{Margin, Verdict};
use crate::plan::window::{PlannedRun, hardest};
use crate::quantity::Band;

/// A candidate with what decides for or against it.
#[derive(Clone, Debug)]
pub struct Assessment<'a> {
    /// The candidate.
    pub candidate: Candidate<'a>,
    /// How it is run.
    pub run: PlannedRun,
    /// What it looks like fresh.
    pub look: FilmOpacity,
    /// Where its cloth is dried before: the verdict on the best candidate of the same white whose cloth is
    /// not.
    pub undried: Option<Verdict>,
    /// Margins of its bleeding, in its middle and along its rim.
    pub tint: [Option<Margin>; 2],
    /// Staining grade of the likely tint, where the cloth bleeds; shown beside the colour difference, which
    /// decides.
    pub grade: Option<GreyStep>,
    /// Chance that the white turns.
    pub bleeds: f64,
    /// Chances of the late faults that do not depend on the heat.
    pub late: LateFaults,
    /// Kelvins to spare before the film no longer fuses.
    pub under_cure: UnderCure,
    /// How its setting stands to the limits of film and cloth.
    pub heat: HeatStanding,
    /// Chance of any late fault.
    pub fail_later: Band,
    /// The verdict on this candidate.
    pub verdict: Verdict,
    /// Whether what is at stake made the verdict stricter.
    pub money_adds_care: bool,
    /// The film that bleeds; absent where nothing does.
    pub bled: Option<Bled>,
}

impl<'a> Assessment<'a> {
    /// Assesses one candidate from the histories of its run.
    #[must_use]
    pub fn of(
        job: &Job,
        cloth: &Cloth,
        candidate: Candidate<'a>,
        run: PlannedRun,
        runs: &RunHistories,
    ) -> Self {
        let heat = cloth.dyed.as_ref().map(|dyed| DyeHeat { dyed, history: &runs.print });
        let Bleeding { chances, tint, grade, bled } =
            bleeding(job, cloth, &candidate, run.flash.as_ref(), heat);
        let late = LateFaults::of(job, cloth, &candidate);
        let kinetics = hardest(job, candidate.white, run.demands.must_fuse);
        let under_cure = UnderCure::of(job, &runs.print, &kinetics, &run.point);
        let heat = HeatStanding::of(&run.demands, &kinetics, runs);
        let others = (1.0 - late.any()) * (1.0 - under_cure.chance());
        let fail_later = chances.map(|bleeds| 1.0 - (1.0 - bleeds.max(job.rules.lapse)) * others);
        let (verdict, before) = verdict_for(job, cloth, &candidate, fail_later.likely, heat);
        Self {
            look: candidate.look(job, cloth, 1.0),
            candidate,
            run,
            undried: None,
            tint,
            grade,
            bleeds: chances.likely,
            late,
            under_cure,
            heat,
            fail_later,
            verdict,
            money_adds_care: verdict > before,
            bled,
        }
    }
}

/// The verdict on a candidate for a chance of a late fault, and the same before the stake is considered. Heat
/// after the cure that breaks a limit refuses it.
pub fn verdict_for(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    chance: f64,
    heat: HeatStanding,
) -> (Verdict, Verdict) {
    if LaterHeat::of(job, cloth).is_some_and(|later| !later.holds()) {
        return (Verdict::Refuse, Verdict::Refuse);
    }
    let seen = || followed(job, cloth, candidate);
    let of_lot = seen().any(|seen| seen.about == EvidenceSubject::Lot);
    // A white that turned on some other cloth says nothing against this one.
    let of_cloth = |seen: &Evidence| seen.about != EvidenceSubject::White && is_about(seen, cloth);
    let turned = job.order.evidence.iter().any(|seen| seen.turned > 0 && of_cloth(seen));
    let standing = Standing {
        damp: comes_damp(job, cloth, candidate),
        measured: job.dryer.measured,
        known: cloth.is_everyday() || seen().next().is_some(),
        checked: (cloth.is_checked() || !is_vouched(job, cloth, candidate)) && !of_lot || turned,
        heat,
        tested: of_lot,
    };
    let stake = Stake { pieces: f64::from(cloth.garment.pieces), value: cloth.garment.value_each };
    (verdict(chance, &stake, standing, &job.rules), before_money(chance, standing, &job.rules))
}
