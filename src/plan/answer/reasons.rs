//! Why, in codes and numbers: read from the margins, so that no second set of rules can disagree with the verdict.

use super::reason_rank::RankedReasons;
use super::reasons_seen::add_seen;
use crate::plan::bleed::evidence;
use crate::plan::margins::{HeatStanding, LaterHeat};
use crate::plan::order::{Cloth, DyeClass, EvidenceSubject, Job, Yield};
use crate::plan::recipe::{comes_damp, damp, is_vouched, stack_of, water};
use crate::plan::report::{Clearance, Code, Margin, Reason, Topic, Verdict, tightness, word};
use crate::plan::verdict::{Assessment, Judgement};
use crate::quantity::units::celsius;
use crate::quantity::{Percent, Share};

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
    let mut reasons = RankedReasons::default();
    match judgement.margins.on(Topic::Bleed) {
        Some(bleed) => of_dye(job, cloth, judgement, bleed, &mut reasons),
        None => reasons.add(nothing_to_bleed(cloth, judgement)),
    }
    for seen in evidence(job, cloth, &judgement.assessment.candidate) {
        let reason = Reason::new(Code::EvidenceCounted)
            .number("pieces", f64::from(seen.pieces))
            .number("turned", f64::from(seen.turned))
            .number("days", seen.days);
        // What was seen to turn comes before what is computed.
        reasons.add_pressing(reason, seen.turned > 0);
    }
    if !is_vouched(job, cloth, &judgement.assessment.candidate) {
        reasons.add(Reason::new(Code::FarFromKnown));
    }
    of_late_faults(cloth, judgement, &mut reasons);
    of_heat(job, cloth, judgement, dry_dwell, room, &mut reasons);
    of_look(job, cloth, judgement, &mut reasons);
    of_limits(cloth, judgement, &mut reasons);
    if let Some(later) = LaterHeat::of(job, cloth).filter(LaterHeat::is_near) {
        reasons.add_pressing(later.reason(), !later.holds());
    }
    of_order(job, cloth, judgement, &mut reasons);
    reasons.into_reasons()
}

/// What dye does to the white, and what keeps it back.
fn of_dye(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>, bleed: &Margin, reasons: &mut RankedReasons) {
    let assessment = &judgement.assessment;
    let (candidate, white) = (&assessment.candidate, assessment.candidate.white);
    let reason = with_margin(Code::ClothBleeds, bleed)
        .number("days", job.order.use_.looked_at_after_days)
        .flag("holds", bleed.holds())
        .word("grade", assessment.grade.map_or("", |grade| grade.text()))
        .word("white", &white.name);
    reasons.add(reason);
    if !white.blocks() && candidate.blocker.is_none() {
        reasons.add(Reason::new(Code::NoBlocking).word("white", &white.name));
    }
    if white.low_cure && assessment.run.demands.must_fuse == [false, true] {
        reasons.add(Reason::new(Code::LowCureHelps).word("white", &white.name));
    }
    if let Some(blocker) = candidate.blocker {
        reasons.add(Reason::new(Code::BlockerHelps).word("blocker", &blocker.name));
    }
    if let Some(rim) = judgement.margins.on(Topic::Rim) {
        let reason = with_margin(Code::RimBleeds, rim)
            .number("overhang", job.order.print.overhang_mm)
            .flag("holds", rim.holds());
        reasons.add_pressing(reason, !rim.holds());
    }
    let lot = &cloth.garment.lot;
    let tested =
        job.order.evidence.iter().any(|seen| seen.about == EvidenceSubject::Lot && seen.name == *lot);
    if !tested && !lot.is_empty() && assessment.verdict >= Verdict::Trial {
        reasons.add(Reason::new(Code::LotNew).word("lot", lot));
    }
    if !cloth.dye_known || cloth.garment.dye_class == DyeClass::Unknown {
        reasons.add(Reason::new(Code::DyeUnknown));
    }
}

fn nothing_to_bleed(cloth: &Cloth, judgement: &Judgement<'_>) -> Reason {
    let main = cloth.fabric.composition.iter().max_by(|a, b| a.1.total_cmp(b.1));
    let fibre = main.map(|(fibre, _)| word(*fibre)).unwrap_or_default();
    let white = judgement.assessment.candidate.white;
    Reason::new(Code::NothingToBleed).word("fibre", fibre).word("white", &white.name)
}

/// What else may show after days or washes.
fn of_late_faults(cloth: &Cloth, judgement: &Judgement<'_>, reasons: &mut RankedReasons) {
    let (late, white) = (&judgement.assessment.late, judgement.assessment.candidate.white);
    if late.comes_off > 0.0 {
        let code = if white.holds_on_nylon { Code::AdhesionHolds } else { Code::AdhesionUnknown };
        reasons.add_by_chance(Reason::new(code).word("white", &white.name), late.comes_off);
    }
    if late.washes_off > 0.0 {
        reasons.add(Reason::new(Code::WashHard).number("frequency", late.washes_off));
    }
    if let Some(stretch) = judgement.margins.on(Topic::Stretch) {
        let of = |code: Code| {
            Reason::new(code)
                .percent("stretch", Percent(stretch.value.likely))
                .percent("needed", Percent(stretch.limit))
        };
        if late.cracks > 0.02 {
            reasons.add_by_chance(of(Code::StretchShort).word("white", &white.name), late.cracks);
        } else if cloth.fabric.stretch > 0.5 {
            reasons.add(of(Code::StretchHolds));
        }
    }
    if late.ghosts > 0.02 {
        reasons.add_by_chance(Reason::new(Code::MayGhost).number("frequency", late.ghosts), late.ghosts);
    }
}

/// Whether it fuses, how much room the window leaves, and what water and weight cost.
fn of_heat(
    job: &Job,
    cloth: &Cloth,
    judgement: &Judgement<'_>,
    dry_dwell: Option<f64>,
    room: &Clearance,
    reasons: &mut RankedReasons,
) {
    if let Some(fusion) = judgement.margins.on(Topic::Fusion) {
        let chance = judgement.assessment.under_cure.chance();
        let sure = judgement.assessment.heat == HeatStanding::Robust && chance <= job.rules.go;
        let code = if sure { Code::FusionHolds } else { Code::FusionShort };
        reasons.add(with_margin(code, fusion).percent("chance", Share(chance).percent()));
    }
    if (judgement.assessment.heat == HeatStanding::AsPlanned || !job.dryer.measured)
        && let Some(film) = judgement.margins.on(Topic::FilmHeat)
    {
        let reason = Reason::new(Code::DriftTooWide)
            .number("low", film.value.low)
            .number("high", film.value.high)
            .word("dryer", &job.dryer.name)
            .flag("measured", job.dryer.measured);
        reasons.add(reason);
    }
    reasons.add(window_reason(room));
    if let Some(why) = why_dried(job, cloth, &judgement.assessment) {
        reasons.add(why);
    }
    if comes_damp(job, cloth, &judgement.assessment.candidate) {
        reasons.add(Reason::new(Code::ComesDamp));
    }
    let dwell = job.dryer.heated_length() / judgement.assessment.run.point.belt;
    if let Some(dry) = dry_dwell
        && dwell - dry > 3.0
    {
        let water = water(&stack_of(job, cloth, &judgement.assessment.candidate), &cloth.fabric);
        let reason = Reason::new(Code::WaterSlows).percent("water_percent", Share(water).percent());
        reasons.add(reason.number("seconds", dwell - dry));
    }
    if cloth.fabric.areal_mass > 0.24 {
        let gsm = cloth.fabric.areal_mass * 1e3 * (1.0 + cloth.fabric.regain_65);
        reasons.add(Reason::new(Code::HeavyCloth).number("gsm", gsm).number("seconds", dwell));
    }
}

/// How the print looks and feels.
fn of_look(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>, reasons: &mut RankedReasons) {
    add_seen(job, cloth, judgement, reasons);
    if cloth.fabric.open_area > 0.08 {
        let open = Share(cloth.fabric.open_area).percent();
        reasons.add(Reason::new(Code::HolesLoseFilm).percent("open_percent", open));
    }
    if let Some(hand) = judgement.margins.on(Topic::Hand)
        && !hand.holds()
    {
        reasons.add(Reason::new(Code::HandStiff).number("hand", hand.value.likely));
    }
}

/// Limits of the cloth that the heat comes near.
fn of_limits(cloth: &Cloth, judgement: &Judgement<'_>, reasons: &mut RankedReasons) {
    if let Some(margin) = near(judgement, Topic::Scorch) {
        reasons.add(Reason::new(Code::ScorchNear).number("index", margin.value.high));
    }
    if let Some(margin) = near(judgement, Topic::Shrink) {
        let from = cloth.shrinks_above.map_or(0.0, celsius);
        let reason = with_margin(Code::ShrinkNear, margin)
            .number("peak", judgement.margins.hottest_cloth_c)
            .number("limit", from);
        reasons.add(reason);
    }
    if let Some(margin) = near(judgement, Topic::Softening) {
        let (code, fibre) = match cloth.yields() {
            Some((Yield::Softens(fibre) | Yield::Melts(fibre), _)) => (Code::SoftensNear, word(fibre)),
            Some((Yield::Coating, _)) | None => (Code::CoatingNear, String::new()),
        };
        reasons.add(with_margin(code, margin).number("peak", margin.value.high).word("fibre", fibre));
    }
}

/// What the order itself brings: reducer, colours on top, how much is at stake.
fn of_order(job: &Job, cloth: &Cloth, judgement: &Judgement<'_>, reasons: &mut RankedReasons) {
    let print = &job.order.print;
    if print.reducer_percent > 0.0 && cloth.dyed.is_some() {
        reasons.add(Reason::new(Code::ReducerSpoils).percent("percent", Percent(print.reducer_percent)));
    }
    if judgement.assessment.run.demands.must_fuse == [true, true] {
        reasons.add(Reason::new(Code::ColoursSetHeat));
    }
    if judgement.assessment.money_adds_care {
        let pieces = f64::from(cloth.garment.pieces);
        let reason = Reason::new(Code::MoneyAddsCare).number("pieces", pieces);
        reasons.add(reason.number("value", pieces * cloth.garment.value_each));
    }
}

/// A margin whose band comes within a fifth of its limit.
fn near<'m>(judgement: &'m Judgement<'_>, what: Topic) -> Option<&'m Margin> {
    let margin = judgement.margins.on(what)?;
    (tightness(margin) < 0.2 && margin.value.high > 0.0).then_some(margin)
}

/// A window is narrow where a shop's own drift fills most of it: under 6 K or 0.25 m/min to a wall.
fn is_narrow(room: &Clearance) -> bool {
    let short = |side: Option<f64>, least: f64| side.is_some_and(|side| side < least);
    short(room.cooler, 6.0) || short(room.hotter, 6.0) || short(room.slower, 0.25) || short(room.faster, 0.25)
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

/// Why the cloth is dried first: the verdict without.
fn why_dried(job: &Job, cloth: &Cloth, assessment: &Assessment<'_>) -> Option<Reason> {
    let undried = assessment.undried?;
    let water = water(&damp(job, cloth), &cloth.fabric);
    Some(
        Reason::new(Code::DriedFirst)
            .percent("water_percent", Share(water).percent())
            .word("verdict", word(undried)),
    )
}
