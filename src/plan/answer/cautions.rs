//! Cautions of a job. Their wording defers to safety data sheets and local codes.

use super::reasons_seen::pressed_later;
use crate::dryer::Emitter;
use crate::plan::order::{Cloth, Job, Law, UseKind};
use crate::plan::report::{Code, Reason, Verdict};
use crate::plan::verdict::Judgement;
use crate::textile::Fibre;

/// Cautions of the job; they defer to safety data sheets and local codes in their wording.
pub fn cautions(job: &Job, cloth: &Cloth, best: Option<&Judgement<'_>>) -> Vec<Reason> {
    let mut cautions = Vec::new();
    if let Some(best) = best {
        cautions.push(Reason::new(Code::HotGarments).number("exit", best.margins.exit_c));
        // Tied to the film's own peak in the worst run, not to the dial: 190 °C is 30 K above where
        // plasticised PVC without stabiliser starts to lose acid.
        if best.margins.hottest_film_c > 190.0 {
            cautions.push(
                Reason::new(Code::OverheatedPvc)
                    .number("peak", best.margins.hottest_film_c)
                    .number("seconds", best.margins.acid_seconds),
            );
        }
    }
    if job.dryer.zones.iter().any(|zone| zone.emitter != Emitter::None) {
        cautions.push(Reason::new(Code::BeltStop));
    }
    if cloth.share(Fibre::Polyester) + cloth.share(Fibre::Nylon) + cloth.share(Fibre::Polypropylene) > 0.5 {
        cautions.push(Reason::new(Code::MeltBurns));
    }
    if cloth.dyed.is_some() {
        cautions.push(Reason::new(Code::DyeFume));
    }
    cautions.extend(pressed_later(job));
    if best.is_some_and(|best| best.assessment.candidate.additive) {
        cautions.push(by_law(job, "diisocyanates", Reason::new(Code::Isocyanate)));
    }
    if best.is_some_and(|best| best.assessment.run.flash.is_some()) {
        cautions.push(Reason::new(Code::FlammableVapour));
    }
    if best.is_some_and(|best| best.assessment.verdict == Verdict::Trial) {
        cautions.push(Reason::new(Code::HotHold));
    }
    if let Some(age) = job.order.use_.wearer_age_years {
        if age <= 3.0 {
            let care = Reason::new(Code::ChildCare).number("age", age);
            let mouth = law(job, "phthalates-mouth").map_or("", |law| &law.law);
            cautions.push(by_law(job, "phthalates-child", care.word("mouth", mouth)));
        }
        if age <= 12.0 {
            let coating = law(job, "lead-coating").map_or(0.0, |law| law.limit);
            let product = Reason::new(Code::ChildProduct).number("age", age).number("coating", coating);
            cautions.push(by_law(job, "lead-substrate", product));
            cautions.push(by_law(job, "phthalates-article", Reason::new(Code::PhthalatesInArticle)));
        }
    }
    if job.order.use_.kind == UseKind::Sleepwear {
        cautions.push(Reason::new(Code::SleepwearFlammability));
    }
    cautions
}

/// The law of this id.
fn law<'j>(job: &'j Job, id: &str) -> Option<&'j Law> {
    job.laws.iter().find(|law| law.id == id)
}

/// Adds to a caution the limit, the name and the day of force of a law.
fn by_law(job: &Job, id: &str, reason: Reason) -> Reason {
    match law(job, id) {
        Some(law) => reason.number("limit", law.limit).word("law", &law.law).word("since", &law.since),
        None => reason,
    }
}
