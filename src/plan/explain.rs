//! Why, in codes and numbers: read from the margins, so that no second set of rules can disagree with the verdict.

use super::dried;
use super::evidence::evidence;
use super::gloss::pressed_later;
use super::judge::{Judged, stack_of, tightness};
use super::press::looks;
use super::rank;
use super::{
    Advice, Cloth, Code, DyeClass, Job, Law, Margin, Reason, Room, Side, Topic, Unknown, UseKind, Verdict,
    Yield,
};
use crate::dryer::Emitter;
use crate::ink::WhiteClass;
use crate::quantity::units::celsius;
use crate::textile::Fibre;

/// The word by which a code travels in JSON.
pub(super) fn word<T: serde::Serialize>(code: T) -> String {
    match serde_json::to_value(code) {
        Ok(serde_json::Value::String(word)) => word,
        _ => String::new(),
    }
}

pub(super) fn of<'a>(judged: &'a Judged<'_>, what: Topic) -> Option<&'a Margin> {
    judged.margins.iter().find(|margin| margin.what == what)
}

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
    judged: &Judged<'_>,
    room: &Room,
    dry_dwell: Option<f64>,
) -> Vec<Reason> {
    let mut ranked: Vec<(f64, Reason)> = Vec::new();
    let mut add =
        |rank: f64, reason: Reason| rank::insert(&mut ranked, (rank, reason), |a, b| b.0.total_cmp(&a.0));
    let white = judged.way.white;

    if let Some(bleed) = of(judged, Topic::Bleed) {
        let holds = f64::from(u8::from(bleed.holds()));
        let reason = with_margin(Code::ClothBleeds, bleed)
            .number("days", job.order.use_.looked_at_after_days)
            .number("holds", holds)
            .word("grade", judged.grade.map_or("", |grade| grade.text()))
            .word("white", &white.name);
        add(100.0, reason);
        if white.dye_capacity <= 0.0 && judged.way.base.is_none() {
            add(95.0, Reason::new(Code::NoBlocking).word("white", &white.name));
        }
        if white.low_cure && judged.run.demands.must_fuse == [false, true] {
            add(80.0, Reason::new(Code::LowCureHelps).word("white", &white.name));
        }
        if let Some(base) = judged.way.base {
            add(85.0, Reason::new(Code::BlockerHelps).word("blocker", &base.name));
        }
        if let Some(rim) = of(judged, Topic::Rim) {
            let reason = with_margin(Code::RimBleeds, rim)
                .number("overhang", job.order.print.overhang_mm)
                .number("holds", f64::from(u8::from(rim.holds())));
            add(if rim.holds() { 43.0 } else { 84.0 }, reason);
        }
        let tested =
            job.order.evidence.iter().any(|seen| seen.about == "lot" && seen.name == cloth.garment.lot);
        if !tested && !cloth.garment.lot.is_empty() && judged.verdict >= Verdict::Trial {
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
    for seen in evidence(job, cloth, &judged.way) {
        let reason = Reason::new(Code::EvidenceCounted)
            .number("pieces", f64::from(seen.pieces))
            .number("turned", f64::from(seen.turned))
            .number("days", seen.days);
        // What was seen to turn comes before what is computed.
        add(if seen.turned > 0 { 110.0 } else { 88.0 }, reason);
    }
    if judged.late.comes_off > 0.0 {
        let code = if white.holds_on_nylon { Code::AdhesionHolds } else { Code::AdhesionUnknown };
        add(70.0 + 40.0 * judged.late.comes_off, Reason::new(code).word("white", &white.name));
    }
    if judged.late.washes_off > 0.0 {
        add(72.0, Reason::new(Code::WashHard).number("frequency", judged.late.washes_off));
    }
    if judged.late.cracks > 0.02
        && let Some(stretch) = of(judged, Topic::Stretch)
    {
        let reason = Reason::new(Code::StretchShort)
            .number("stretch", stretch.value.likely)
            .number("needed", stretch.limit)
            .word("white", &white.name);
        add(72.0 + 40.0 * judged.late.cracks, reason);
    } else if cloth.fabric.stretch > 0.5
        && let Some(stretch) = of(judged, Topic::Stretch)
    {
        let reason = Reason::new(Code::StretchHolds)
            .number("stretch", stretch.value.likely)
            .number("needed", stretch.limit);
        add(55.0, reason);
    }
    if judged.late.ghosts > 0.02 {
        add(
            50.0 + 100.0 * judged.late.ghosts,
            Reason::new(Code::MayGhost).number("frequency", judged.late.ghosts),
        );
    }
    if let Some(fusion) = of(judged, Topic::Fusion) {
        let code = if fusion.holds() { Code::FusionHolds } else { Code::FusionShort };
        add(if fusion.holds() { 40.0 } else { 92.0 }, with_margin(code, fusion));
    }
    add(window_rank(room), window_reason(room));
    if let Some(why) = dried::why(job, cloth, judged) {
        add(98.0, why);
    }
    if let Some(dry) = dry_dwell {
        let dwell = job.dryer.heated_length() / judged.run.point.belt;
        if dwell - dry > 3.0 {
            let water = dried::water(&stack_of(job, cloth, &judged.way), &cloth.fabric);
            let reason = Reason::new(Code::WaterSlows)
                .number("water_percent", water * 100.0)
                .number("seconds", dwell - dry);
            add(58.0, reason);
        }
    }
    if cloth.fabric.areal_mass > 0.24 {
        let reason = Reason::new(Code::HeavyCloth)
            .number("gsm", cloth.fabric.areal_mass * 1e3 * (1.0 + cloth.fabric.regain_65))
            .number("seconds", job.dryer.heated_length() / judged.run.point.belt);
        add(56.0, reason);
    }
    for (rank, reason) in looks(job, cloth, judged) {
        add(rank, reason);
    }
    if cloth.fabric.open_area > 0.08 {
        add(44.0, Reason::new(Code::HolesLoseFilm).number("open_percent", cloth.fabric.open_area * 100.0));
    }
    if let Some(hand) = of(judged, Topic::Hand)
        && !hand.holds()
    {
        add(42.0, Reason::new(Code::HandStiff).number("hand", hand.value.likely));
    }
    near(judged, Topic::Scorch, |margin| {
        add(62.0, Reason::new(Code::ScorchNear).number("index", margin.value.high));
    });
    near(judged, Topic::Shrink, |margin| {
        let from = cloth.shrinks_above.map_or(0.0, celsius);
        let reason = with_margin(Code::ShrinkNear, margin)
            .number("peak", judged.hottest_cloth_c)
            .number("limit", from);
        add(61.0, reason);
    });
    near(judged, Topic::Softening, |margin| {
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
    if judged.run.demands.must_fuse == [true, true] {
        add(64.0, Reason::new(Code::ColoursSetHeat));
    }
    if judged.money_adds_care {
        let reason = Reason::new(Code::MoneyAddsCare)
            .number("pieces", f64::from(cloth.garment.pieces))
            .number("value", f64::from(cloth.garment.pieces) * cloth.garment.value_each);
        add(86.0, reason);
    }
    ranked.into_iter().map(|(_, reason)| reason).collect()
}

/// Calls `say` where a margin's band comes within a fifth of its limit.
fn near(judged: &Judged<'_>, what: Topic, say: impl FnOnce(&Margin)) {
    if let Some(margin) = of(judged, what)
        && tightness(margin) < 0.2
        && margin.value.high > 0.0
    {
        say(margin);
    }
}

/// A window is narrow where a shop's own drift fills most of it: under 6 K or 0.25 m/min to a wall.
fn is_narrow(room: &Room) -> bool {
    let short = |side: Option<f64>, least: f64| side.is_some_and(|side| side < least);
    short(room.cooler, 6.0) || short(room.hotter, 6.0) || short(room.slower, 0.25) || short(room.faster, 0.25)
}

fn window_rank(room: &Room) -> f64 {
    if is_narrow(room) { 68.0 } else { 38.0 }
}

fn window_reason(room: &Room) -> Reason {
    let code = if is_narrow(room) { Code::WindowNarrow } else { Code::WindowOpen };
    let sides =
        [("cooler", room.cooler), ("hotter", room.hotter), ("slower", room.slower), ("faster", room.faster)];
    sides.into_iter().fold(Reason::new(code), |reason, (name, side)| match side {
        Some(side) => reason.number(name, side),
        None => reason,
    })
}

/// What to do and what to leave, for a pick.
pub fn advice(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> Vec<Advice> {
    let mut advice = Vec::new();
    let mixed = job.mixes.iter().any(|mix| mix.white.id == judged.way.white.id);
    let white = judged.way.white;
    if judged.way.base.is_some() {
        advice.push(Advice::BlockerBase);
    }
    if cloth.dyed.is_some() && white.dye_capacity > 0.0 {
        advice.push(Advice::NoReducer);
    }
    if judged.way.smoothing || of(judged, Topic::Matting).is_some_and(|nap| !nap.holds_likely()) {
        advice.push(Advice::SmoothingScreen);
    }
    if judged.way.strokes > 1 {
        advice.push(Advice::SecondStroke);
    }
    if judged.way.additive {
        advice.push(Advice::AdhesionAdditive);
    }
    if judged.late.cracks > 0.1 && white.class != WhiteClass::Stretch && !mixed {
        advice.push(Advice::StretchAdditive);
    }
    if cloth.dyed.is_some() || cloth.is_light() {
        advice.push(Advice::CoolBeforeStacking);
    }
    // Water that was added is worth a pass even where it costs no verdict.
    if judged.way.dried || cloth.garment.added_water_percent > 2.0 {
        advice.push(Advice::PreDry);
    }
    match judged.verdict {
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
pub fn first_piece(judged: &Judged<'_>) -> Vec<Code> {
    let mut checks = vec![Code::CheckProbe, Code::CheckStretch];
    let tight = |what: Topic, under: f64| of(judged, what).is_some_and(|margin| tightness(margin) < under);
    if tight(Topic::Opacity, 0.3) {
        checks.push(Code::CheckCover);
    }
    if tight(Topic::Scorch, 0.5) {
        checks.push(Code::CheckScorch);
    }
    if tight(Topic::Shrink, 0.5) || tight(Topic::Softening, 0.1) {
        checks.push(Code::CheckSize);
    }
    if judged.late.comes_off > 0.0 {
        checks.push(Code::CheckAdhesion);
    }
    if tight(Topic::Hand, 0.1) {
        checks.push(Code::CheckHand);
    }
    if tight(Topic::Matting, 0.3) {
        checks.push(Code::CheckNap);
    }
    if of(judged, Topic::Gloss).is_some() {
        checks.push(Code::CheckGloss);
    }
    checks
}

/// Cautions of the job; they defer to safety data sheets and local codes in their wording.
pub fn cautions(job: &Job, cloth: &Cloth, best: Option<&Judged<'_>>) -> Vec<Reason> {
    let mut cautions = Vec::new();
    if let Some(best) = best {
        cautions.push(Reason::new(Code::HotGarments).number("exit", best.exit_c));
        // Tied to the film's own peak in the worst run, not to the dial: 190 °C is 30 K above where plasticised PVC
        // without stabiliser starts to lose acid.
        if best.hottest_film_c > 190.0 {
            cautions.push(
                Reason::new(Code::OverheatedPvc)
                    .number("peak", best.hottest_film_c)
                    .number("seconds", best.acid_seconds),
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
    if best.is_some_and(|best| best.way.additive) {
        cautions.push(by_law(job, "law-diisocyanates", Reason::new(Code::Isocyanate)));
    }
    if best.is_some_and(|best| best.run.flash.is_some()) {
        cautions.push(Reason::new(Code::FlammableVapour));
    }
    if best.is_some_and(|best| best.verdict == Verdict::Trial) {
        cautions.push(Reason::new(Code::HotHold));
    }
    if let Some(age) = job.order.use_.wearer_age_years {
        if age <= 3.0 {
            let care = Reason::new(Code::ChildCare).number("age", age);
            let mouth = law(job, "law-phthalates-mouth").map_or("", |law| &law.law);
            cautions.push(by_law(job, "law-phthalates-child", care.word("mouth", mouth)));
        }
        if age <= 12.0 {
            let coating = law(job, "law-lead-coating").map_or(0.0, |law| law.limit);
            let product = Reason::new(Code::ChildProduct).number("age", age).number("coating", coating);
            cautions.push(by_law(job, "law-lead-substrate", product));
            cautions.push(by_law(job, "law-phthalates-article", Reason::new(Code::PhthalatesInArticle)));
        }
    }
    if job.order.use_.kind == UseKind::Sleepwear {
        cautions.push(Reason::new(Code::SleepwearFlammability));
    }
    cautions
}

fn law<'j>(job: &'j Job, id: &str) -> Option<&'j Law> {
    job.laws.iter().find(|law| law.id == id)
}

/// A caution with the figure, the name and the day of force of the law behind it.
fn by_law(job: &Job, id: &str, reason: Reason) -> Reason {
    match law(job, id) {
        Some(law) => reason.number("limit", law.limit).word("law", &law.law).word("since", &law.since),
        None => reason,
    }
}

/// What is not known, most worth finding out first. `worth` is how far the chance of a late fault would move.
pub fn unknowns(job: &Job, cloth: &Cloth, best: Option<&Judged<'_>>) -> Vec<Unknown> {
    let mut unknowns: Vec<Unknown> = Vec::new();
    let mut add = |unknown: Unknown| rank::insert(&mut unknowns, unknown, |a, b| b.worth.total_cmp(&a.worth));
    let bleeds = best.map_or(0.0, |best| best.bleeds);
    if cloth.dyed.is_some() {
        if !cloth.dye_known {
            add(Unknown { ask: Reason::new(Code::AskDyed), worth: (bleeds - job.rules.lapse).max(0.0) });
        } else if cloth.garment.dye_class == DyeClass::Unknown {
            add(Unknown {
                ask: Reason::new(Code::AskDyeClass),
                worth: 0.5 * (bleeds - job.rules.lapse).max(0.0),
            });
        }
        if !cloth.garment.lot.is_empty() && bleeds > job.rules.go {
            let worth = bleeds * job.rules.power_hot_hold;
            add(Unknown { ask: Reason::new(Code::AskLotTest).word("lot", &cloth.garment.lot), worth });
        }
    }
    for ask in &cloth.asks {
        add(Unknown { ask: ask.clone(), worth: 0.01 });
    }
    if !job.dryer.measured {
        add(Unknown { ask: Reason::new(Code::AskMeasureDryer).word("dryer", &job.dryer.name), worth: 0.02 });
    }
    unknowns
}

/// Why a window is closed.
pub fn closed(cloth: &Cloth, judged_side: Side, peak_needed: f64) -> Reason {
    if let Some((fibre, limit)) = cloth.melts
        && limit < peak_needed + 8.0
    {
        return Reason::new(Code::MeltsInCure).word("fibre", word(fibre)).number("limit", celsius(limit));
    }
    Reason::new(Code::WindowClosed).word("side", word(judged_side)).number("peak", celsius(peak_needed))
}
