//! Why, in codes and numbers: read from the margins, so that no second set of rules can disagree with the verdict.

use super::reasons_seen::seen_reasons;
use crate::plan::bleed::evidence;
use crate::plan::order::{Cloth, DyeClass, Job, Yield};
use crate::plan::recipe::{damp, stack_of, water};
use crate::plan::report::{Clearance, Code, Margin, Reason, Topic, Verdict, sorted_insert, tightness, word};
use crate::plan::verdict::{Assessment, Judgement};
use crate::quantity::units::celsius;

/// A reason that carries a margin's band and limit.
fn with_margin(code: Code, margin: &Margin) -> Reason {
    Reason::new(code)
        .number("low", margin.value.low)
        .number("likely", margin.value.likely)
        .number("high", margin.value.high)
        .number("limit", margin.limit)
}

/// Reasons of a pick, most telling first.
pub fn reasons(
    job: &Job,
    cloth: &Cloth,
    judgement: &Judgement<'_>,
    room: &Clearance,
    dry_dwell: Option<f64>,
) -> Vec<Reason> {
    let mut ranked: Vec<(f64, Reason)> = Vec::new();
    let mut add =
        |rank: f64, reason: Reason| sorted_insert(&mut ranked, (rank, reason), |a, b| b.0.total_cmp(&a.0));
    let white = judgement.assessment.candidate.white;

    if let Some(bleed) = judgement.margins.on(Topic::Bleed) {
        let holds = f64::from(u8::from(bleed.holds()));
        let reason = with_margin(Code::ClothBleeds, bleed)
            .number("days", job.order.use_.looked_at_after_days)
            .number("holds", holds)
            .word("grade", judgement.assessment.grade.map_or("", |grade| grade.text()))
            .word("white", &white.name);
        add(100.0, reason);
        if white.dye_capacity <= 0.0 && judgement.assessment.candidate.blocker.is_none() {
            add(95.0, Reason::new(Code::NoBlocking).word("white", &white.name));
        }
        if white.low_cure && judgement.assessment.run.demands.must_fuse == [false, true] {
            add(80.0, Reason::new(Code::LowCureHelps).word("white", &white.name));
        }
        if let Some(blocker) = judgement.assessment.candidate.blocker {
            add(85.0, Reason::new(Code::BlockerHelps).word("blocker", &blocker.name));
        }
        if let Some(rim) = judgement.margins.on(Topic::Rim) {
            let reason = with_margin(Code::RimBleeds, rim)
                .number("overhang", job.order.print.overhang_mm)
                .number("holds", f64::from(u8::from(rim.holds())));
            add(if rim.holds() { 43.0 } else { 84.0 }, reason);
        }
        let tested =
            job.order.evidence.iter().any(|seen| seen.about == "lot" && seen.name == cloth.garment.lot);
        if !tested && !cloth.garment.lot.is_empty() && judgement.assessment.verdict >= Verdict::Trial {
            add(75.0, Reason::new(Code::LotNew).word("lot", &cloth.garment.lot));
        }
        if !cloth.dye_known || cloth.garment.dye_class == DyeClass::Unknown {
            add(60.0, Reason::new(Code::DyeUnknown));
        }
    } else {
        let main = cloth.fabric.composition.iter().max_by(|a, b| a.1.total_cmp(b.1));
        let fibre = main.map(|(fibre, _)| word(*fibre)).unwrap_or_default();
        add(90.0, Reason::new(Code::NothingToBleed).word("fibre", fibre).word("white", &white.name));
    }
    for seen in evidence(job, cloth, &judgement.assessment.candidate) {
        let reason = Reason::new(Code::EvidenceCounted)
            .number("pieces", f64::from(seen.pieces))
            .number("turned", f64::from(seen.turned))
            .number("days", seen.days);
        // What was seen to turn comes before what is computed.
        add(if seen.turned > 0 { 110.0 } else { 88.0 }, reason);
    }
    if judgement.assessment.late.comes_off > 0.0 {
        let code = if white.holds_on_nylon { Code::AdhesionHolds } else { Code::AdhesionUnknown };
        add(70.0 + 40.0 * judgement.assessment.late.comes_off, Reason::new(code).word("white", &white.name));
    }
    if judgement.assessment.late.washes_off > 0.0 {
        add(72.0, Reason::new(Code::WashHard).number("frequency", judgement.assessment.late.washes_off));
    }
    if judgement.assessment.late.cracks > 0.02
        && let Some(stretch) = judgement.margins.on(Topic::Stretch)
    {
        let reason = Reason::new(Code::StretchShort)
            .number("stretch", stretch.value.likely)
            .number("needed", stretch.limit)
            .word("white", &white.name);
        add(72.0 + 40.0 * judgement.assessment.late.cracks, reason);
    } else if cloth.fabric.stretch > 0.5
        && let Some(stretch) = judgement.margins.on(Topic::Stretch)
    {
        let reason = Reason::new(Code::StretchHolds)
            .number("stretch", stretch.value.likely)
            .number("needed", stretch.limit);
        add(55.0, reason);
    }
    if judgement.assessment.late.ghosts > 0.02 {
        add(
            50.0 + 100.0 * judgement.assessment.late.ghosts,
            Reason::new(Code::MayGhost).number("frequency", judgement.assessment.late.ghosts),
        );
    }
    if let Some(fusion) = judgement.margins.on(Topic::Fusion) {
        let code = if fusion.holds() { Code::FusionHolds } else { Code::FusionShort };
        add(if fusion.holds() { 40.0 } else { 92.0 }, with_margin(code, fusion));
    }
    add(window_rank(room), window_reason(room));
    if let Some(why) = why_dried(job, cloth, &judgement.assessment) {
        add(98.0, why);
    }
    if let Some(dry) = dry_dwell {
        let dwell = job.dryer.heated_length() / judgement.assessment.run.point.belt;
        if dwell - dry > 3.0 {
            let water = water(&stack_of(job, cloth, &judgement.assessment.candidate), &cloth.fabric);
            let reason = Reason::new(Code::WaterSlows)
                .number("water_percent", water * 100.0)
                .number("seconds", dwell - dry);
            add(58.0, reason);
        }
    }
    if cloth.fabric.areal_mass > 0.24 {
        let reason = Reason::new(Code::HeavyCloth)
            .number("gsm", cloth.fabric.areal_mass * 1e3 * (1.0 + cloth.fabric.regain_65))
            .number("seconds", job.dryer.heated_length() / judgement.assessment.run.point.belt);
        add(56.0, reason);
    }
    for (rank, reason) in seen_reasons(job, cloth, judgement) {
        add(rank, reason);
    }
    if cloth.fabric.open_area > 0.08 {
        add(44.0, Reason::new(Code::HolesLoseFilm).number("open_percent", cloth.fabric.open_area * 100.0));
    }
    if let Some(hand) = judgement.margins.on(Topic::Hand)
        && !hand.holds()
    {
        add(42.0, Reason::new(Code::HandStiff).number("hand", hand.value.likely));
    }
    near(judgement, Topic::Scorch, |margin| {
        add(62.0, Reason::new(Code::ScorchNear).number("index", margin.value.high));
    });
    near(judgement, Topic::Shrink, |margin| {
        let from = cloth.shrinks_above.map_or(0.0, celsius);
        let reason = with_margin(Code::ShrinkNear, margin)
            .number("peak", judgement.margins.hottest_cloth_c)
            .number("limit", from);
        add(61.0, reason);
    });
    near(judgement, Topic::Softening, |margin| {
        let (code, fibre) = match cloth.yields() {
            Some((Yield::Softens(fibre) | Yield::Melts(fibre), _)) => (Code::SoftensNear, word(fibre)),
            Some((Yield::Coating, _)) | None => (Code::CoatingNear, String::new()),
        };
        let reason = with_margin(code, margin).number("peak", margin.value.high).word("fibre", fibre);
        add(63.0, reason);
    });
    if job.order.print.reducer_percent > 0.0 && cloth.dyed.is_some() {
        add(66.0, Reason::new(Code::ReducerSpoils).number("percent", job.order.print.reducer_percent));
    }
    if judgement.assessment.run.demands.must_fuse == [true, true] {
        add(64.0, Reason::new(Code::ColoursSetHeat));
    }
    if judgement.assessment.money_adds_care {
        let reason = Reason::new(Code::MoneyAddsCare)
            .number("pieces", f64::from(cloth.garment.pieces))
            .number("value", f64::from(cloth.garment.pieces) * cloth.garment.value_each);
        add(86.0, reason);
    }
    ranked.into_iter().map(|(_, reason)| reason).collect()
}

/// Calls `say` where a margin's band comes within a fifth of its limit.
fn near(judgement: &Judgement<'_>, what: Topic, say: impl FnOnce(&Margin)) {
    if let Some(margin) = judgement.margins.on(what)
        && tightness(margin) < 0.2
        && margin.value.high > 0.0
    {
        say(margin);
    }
}

/// A window is narrow where a shop's own drift fills most of it: under 6 K or 0.25 m/min to a wall.
fn is_narrow(room: &Clearance) -> bool {
    let short = |side: Option<f64>, least: f64| side.is_some_and(|side| side < least);
    short(room.cooler, 6.0) || short(room.hotter, 6.0) || short(room.slower, 0.25) || short(room.faster, 0.25)
}

fn window_rank(room: &Clearance) -> f64 {
    if is_narrow(room) { 68.0 } else { 38.0 }
}

fn window_reason(room: &Clearance) -> Reason {
    let code = if is_narrow(room) { Code::WindowNarrow } else { Code::WindowOpen };
    let sides =
        [("cooler", room.cooler), ("hotter", room.hotter), ("slower", room.slower), ("faster", room.faster)];
    sides.into_iter().fold(Reason::new(code), |reason, (name, side)| match side {
        Some(side) => reason.number(name, side),
        None => reason,
    })
}

/// Why a way is on dried cloth: what it would come to without.
fn why_dried(job: &Job, cloth: &Cloth, assessment: &Assessment<'_>) -> Option<Reason> {
    let undried = assessment.undried?;
    let water = water(&damp(job, cloth), &cloth.fabric);
    Some(Reason::new(Code::DriedFirst).number("water_percent", water * 100.0).word("verdict", word(undried)))
}
