//! What to do and what to avoid, and what to check on the first piece.

use crate::ink::WhiteClass;
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::comes_damp;
use crate::plan::report::{Advice, Code, Topic, Verdict, tightness};
use crate::plan::verdict::Judgement;

/// What to do and what to avoid, for a pick.
pub fn advice(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>) -> Vec<Advice> {
    let mut advice = Vec::new();
    let mixed = job.mixes.iter().any(|mix| mix.white.id == judgement.assessment.candidate.white.id);
    let white = judgement.assessment.candidate.white;
    if !job.dryer.measured {
        advice.push(Advice::ProbeFirst);
    }
    if judgement.assessment.candidate.blocker.is_some() {
        advice.push(Advice::BlockerBase);
    }
    if cloth.dyed.is_some() && white.blocks() {
        advice.push(Advice::NoReducer);
    }
    if judgement.assessment.candidate.smoothing
        || judgement.margins.on(Topic::Matting).is_some_and(|nap| !nap.holds_likely())
    {
        advice.push(Advice::SmoothingScreen);
    }
    if judgement.assessment.candidate.strokes > 1 {
        advice.push(Advice::SecondStroke);
    }
    if judgement.assessment.candidate.additive {
        advice.push(Advice::AdhesionAdditive);
    }
    if judgement.assessment.late.cracks > 0.1 && white.class != WhiteClass::Stretch && !mixed {
        advice.push(Advice::StretchAdditive);
    }
    if cloth.dyed.is_some() || cloth.is_light() {
        advice.push(Advice::CoolBeforeStacking);
    }
    let candidate = &judgement.assessment.candidate;
    if candidate.dried || comes_damp(job, cloth, candidate) {
        advice.push(Advice::PreDry);
    }
    match judgement.assessment.verdict {
        Verdict::Trial | Verdict::Refuse => {
            if cloth.dyed.is_some() && !cloth.dye_known {
                advice.push(Advice::ClothPressTest);
            }
            advice.push(Advice::TestPrint);
        }
        Verdict::GoWithCheck => advice.push(Advice::FollowUp),
        Verdict::Go => {}
    }
    advice
}

/// What to check on the first piece, from the margins that are seen at the press.
pub fn first_piece(judgement: &Judgement<'_>) -> Vec<Code> {
    let mut checks = vec![Code::CheckProbe, Code::CheckStretch];
    let tight =
        |what: Topic, under: f64| judgement.margins.on(what).is_some_and(|margin| tightness(margin) < under);
    if tight(Topic::Opacity, 0.3) {
        checks.push(Code::CheckCover);
    }
    if tight(Topic::Scorch, 0.5) {
        checks.push(Code::CheckScorch);
    }
    if tight(Topic::Shrink, 0.5) || tight(Topic::Softening, 0.1) {
        checks.push(Code::CheckSize);
    }
    if judgement.assessment.late.comes_off > 0.0 {
        checks.push(Code::CheckAdhesion);
    }
    if tight(Topic::Hand, 0.1) {
        checks.push(Code::CheckHand);
    }
    if tight(Topic::Matting, 0.3) {
        checks.push(Code::CheckNap);
    }
    if judgement.margins.on(Topic::Gloss).is_some() {
        checks.push(Code::CheckGloss);
    }
    checks
}
