//! Cloth is dried first where that makes an order possible that is not without, and only there.
//!
//! What a dried way comes to is asked as an order of its own: polyester holds next to no water, so that drying takes off what
//! was added and nothing else. Cost and pace are added up by hand. That water leaves as it does is held to a psychrometer and
//! to IAPWS elsewhere (`dryer::chain`, `tests/heat/history.rs`, `tests/heat/moisture.rs`).

use super::common::{OrderBuilder, an_order, answered, library, reason, word};
use proptest::prelude::*;
use serde_json::json;
use whitehold::diagnosis::{CauseKind, Defect, NotedRun};
use whitehold::library::{diagnose, job, pick_window};
use whitehold::plan::{Advice, Code, DialSetting, Pick, PrintStep, Reason, Report, Topic, Verdict, as_run};
use whitehold::wording::{Language, Voice};

const MESH: &str = "100% polyester mesh 140 gsm navy";
const FLEECE: &str = "80% cotton 20% polyester fleece 280 gsm maroon";

fn order(label: &str, added_water_percent: f64, white: &str) -> OrderBuilder {
    let order = an_order().label(label).pieces(72).worth(14.0).soaked(added_water_percent);
    order.shelf(&[white]).humidity(60.0)
}

/// The way that dries first, if there is one: passes, water before and after, %.
fn dried(report: &Report) -> Option<(&Pick, [f64; 3])> {
    report.picks.iter().find_map(|pick| match pick.steps.first() {
        Some(PrintStep::PreDry { passes, water_percent, left_percent }) => {
            Some((pick, [f64::from(*passes), *water_percent, *left_percent]))
        }
        _ => None,
    })
}

/// The verdict that a reason names.
fn verdict(reason: &Reason) -> Verdict {
    serde_json::from_value(json!(word(reason, "verdict"))).expect("a verdict")
}

/// The way on dried cloth is the one that the dry cloth's own order gets, but for what drying costs; and it is there where
/// the damp cloth is refused or needs a trial.
#[test]
fn a_dried_way_is_that_of_the_dry_cloth() {
    let cases = [
        // It takes a trial dried or not.
        (MESH, 40.0, "tern", false),
        (MESH, 40.0, "gannet-cool", true),
        (MESH, 0.0, "tern", false),
        (MESH, 0.0, "gannet-cool", false),
        // Drying does not help a white that binds too little.
        (MESH, 40.0, "chalk", false),
        // It can be run as it is: nothing bleeds.
        ("100% cotton jersey 150 gsm black", 8.0, "tern", false),
    ];
    for (label, added, white, expected) in cases {
        let wet = order(label, added, white).answered();
        let found = dried(&wet);
        assert_eq!(found.is_some(), expected, "{label} +{added} %, {white}: {:?}", wet.picks);
        let Some((pick, [passes, before, after])) = found else { continue };
        let dry = order(label, 0.0, white).answered();
        let dry = dry.picks.first().expect("dry cloth can be printed");
        assert_eq!((pick.verdict, pick.setting), (dry.verdict, dry.setting), "{label}, {white}");
        assert_eq!(pick.fail_later, dry.fail_later, "{label}, {white}");
        assert_eq!(pick.steps[1..], dry.steps[..], "{label}, {white}");
        assert!(before > after && (before - after - added).abs() < 1e-9, "{before} % to {after} %");
        assert_eq!(pick, &wet.picks[0], "the better verdict comes first");
        let without = verdict(reason(pick, Code::DriedFirst).expect("it says what it would be without"));
        // Cloth that drips is dried for any better verdict, damp cloth only where it could not be run.
        assert!(without >= Verdict::GoWithCheck && pick.verdict < without, "{without:?}");
        let as_it_lies = wet.picks.iter().find(|pick| !matches!(pick.steps[0], PrintStep::PreDry { .. }));
        assert_eq!(as_it_lies.map_or(Verdict::Refuse, |pick| pick.verdict), without);
        assert!(!wet.to_make_it_possible.iter().any(|reason| reason.code == Code::IfDried));

        // By hand: a garment takes up 0.75 m of belt in every pass, the press its 5 s or more; an hour costs 60, and
        // laying a piece on the belt 6 s at 18 an hour.
        let setting = pick.setting.expect("an open window");
        let belt = |passes: f64| 0.75 * passes / (setting.belt_m_per_min / 60.0);
        let [pace, dry_pace] = [pick, dry].map(|pick| 3600.0 / pick.rate_per_hour.likely);
        assert!((pace - dry_pace.max(belt(1.0 + passes))).abs() < 1e-6, "{pace} s, {dry_pace} s dry");
        let costs = (pace - dry_pace) * 60.0 / 3600.0 + passes * 6.0 * 18.0 / 3600.0;
        let [cost, dry_cost] = [pick, dry].map(|pick| pick.cost_per_print.likely);
        assert!((cost - dry_cost - costs).abs() < 1e-9, "{cost}, {dry_cost} dry");
    }
}

/// Soaked fleece cannot be run as it lies: dried, it can. The pages behind the pick show the same cloth.
#[test]
fn drying_opens_the_window_of_soaked_fleece() {
    let soaked = order(FLEECE, 100.0, "tern").build();
    let wet = answered(&soaked);
    let (pick, [passes, ..]) = dried(&wet).unwrap_or_else(|| panic!("{wet:?}"));
    assert!(reason(pick, Code::DriedFirst).map(verdict) >= Some(Verdict::Trial));
    assert!(wet.verdict < Verdict::Refuse && wet.rejected.is_empty() && wet.closed.is_none());
    assert!(passes >= 2.0, "a kilogram of water to a kilogram of fleece leaves in {passes} passes");
    let window = pick_window(&soaked, library(), pick).expect("a job");
    let shown = window.report(None).expect("it marches").expect("the pick's own cloth");
    // A belt speed is shown per minute and simulated per second: the last digit of a double.
    assert_eq!(shown.margins.len(), pick.margins.len());
    for (shown, own) in shown.margins.iter().zip(&pick.margins) {
        assert_eq!(shown.what, own.what);
        let apart = (shown.value.likely - own.value.likely).abs();
        assert!(apart < 1e-9 * own.value.likely.abs(), "{shown:?} for {own:?}");
    }
    assert!(shown.curve.water_percent[0] < 3.0, "{} % of water", shown.curve.water_percent[0]);
}

/// Cloth that holds more water than its fibres can bind is dried although it could be run slowly, damp cloth is not.
#[test]
fn cloth_that_drips_is_dried_first() {
    for (added, expected) in [(8.0, false), (15.0, true), (60.0, true)] {
        let report = order("100% cotton jersey 150 gsm black", added, "tern").answered();
        assert_eq!(dried(&report).is_some(), expected, "+{added} %: {:?}", report.picks);
    }
}

/// Cloth with added water is no bare go: three press leads, asked blind, gave damp fleece, a damp T-shirt and a damp tote
/// go with check at best, and dried them first or ran them slower (`tests/estimates/heat.json`, h02, h04 and h06; common
/// practice, no published source). Where it drips, drying comes first because its verdict is the better one.
#[test]
fn cloth_with_added_water_is_no_bare_go() {
    let rows = [
        ("100% cotton fleece 320 gsm black", 20.0, true),
        ("100% cotton jersey 180 gsm white", 5.0, false),
        ("100% cotton canvas 340 gsm natural", 8.0, false),
        ("100% cotton jersey 180 gsm black", 1.0, false),
    ];
    for (label, added, drips) in rows {
        let dry = order(label, 0.0, "chalk").answered();
        assert_eq!(dry.verdict, Verdict::Go, "{label}, dry");
        assert!(reason(&dry.picks[0], Code::ComesDamp).is_none(), "{label}, dry");
        let damp = order(label, added, "chalk").answered();
        let case = format!("{label} +{added} %: {:?}", damp.picks);
        assert_eq!(dried(&damp).is_some(), drips, "{case}");
        let lies = damp.picks.iter().find(|pick| !pick.is_dried()).expect("it can be run slowly");
        assert_eq!(lies.verdict, Verdict::GoWithCheck, "{case}");
        assert!(reason(lies, Code::ComesDamp).is_some() && lies.advice.contains(&Advice::PreDry), "{case}");
        if let Some((pick, _)) = dried(&damp) {
            assert_eq!((pick.verdict, pick), (Verdict::Go, &damp.picks[0]), "{case}");
            assert!(reason(pick, Code::ComesDamp).is_none(), "{case}");
        } else {
            let told = damp.to_make_it_possible.iter().find(|reason| reason.code == Code::IfDried);
            assert_eq!(told.map(verdict), Some(Verdict::Go), "{case}");
        }
    }
    // Polyester holds next to no water: a breath of it is not worth a pass.
    let breath = order("100% polyester fleece 240 gsm white", 1.0, "gannet").answered();
    assert!(reason(&breath.picks[0], Code::ComesDamp).is_none(), "{:?}", breath.picks);
}

/// A blend in a damp room holds 6 % and can be run all the same: then nothing is dried, and the water is only told.
#[test]
fn what_can_be_run_as_it_lies_is_not_dried() {
    let damp = order("50% cotton 50% polyester jersey 185 gsm red", 0.0, "gannet").humidity(85.0);
    let report = damp.answered();
    assert!(report.verdict < Verdict::Trial && dried(&report).is_none(), "{report:?}");
    assert!(reason(&report.picks[0], Code::WaterSlows).is_some());
}

/// Where two pieces have to be held, nothing is dried for it; what drying would spare is told, and is what the same cloth
/// gets in a room so dry that it holds less than drying leaves.
#[test]
fn where_two_pieces_are_held_drying_is_only_told() {
    let mut told = 0;
    for set in 142..=170 {
        let fleece = order("100% cotton fleece 400 gsm black", 0.0, "chalk");
        let fleece = fleece.shop(|shop| shop.dryer_fixed = Some(f64::from(set)));
        let damp = fleece.clone().humidity(85.0).answered();
        if damp.verdict != Verdict::GoWithCheck {
            continue;
        }
        if dried(&damp).is_some() {
            continue;
        }
        let if_dried = damp.to_make_it_possible.iter().find(|reason| reason.code == Code::IfDried);
        let Some(if_dried) = if_dried else { continue };
        let dry = fleece.humidity(10.0).answered();
        assert_eq!(verdict(if_dried), dry.verdict, "{set} °C");
        told += 1;
        if told == 3 {
            break;
        }
    }
    assert!(told > 0, "drying is told nowhere");
}

/// On a print that was planned on dried cloth, damp cloth is a cause of film that washes off.
#[test]
fn cloth_that_was_not_dried_is_a_cause() {
    let soaked = order(MESH, 40.0, "gannet-cool").build();
    let wet = answered(&soaked);
    let (pick, _) = dried(&wet).expect("a dried way");
    let run = NotedRun { set_c: None, belt_m_per_min: None, film_um: None };
    let found =
        diagnose(&soaked, library(), pick, &run, Defect::WashesOff).expect("a job").expect("a diagnosis");
    let damp = found.causes.iter().find(|cause| cause.what == CauseKind::Damp).expect("damp is a cause");
    assert!(damp.chance > found.ran, "{found:?}");
}

/// Of two garments under one design only the soaked one is dried.
#[test]
fn each_garment_is_dried_or_not() {
    let two = order(MESH, 0.0, "gannet-cool").and_on(MESH).soaked(40.0);
    let whole = two.answered().whole.expect("two garments");
    for plan in [whole.together.as_ref().expect("one white does both"), &whole.split] {
        assert_eq!(plan.parts.iter().map(|part| part.dried).collect::<Vec<_>>(), [false, true]);
    }
}

#[test]
fn the_reason_reads_in_both_languages() {
    let wet = order(MESH, 40.0, "gannet-cool").answered();
    let (pick, _) = dried(&wet).expect("a dried way");
    let reason = reason(pick, Code::DriedFirst).expect("a reason");
    let say = |language: Language| Voice::from(language).reason(reason).replace('\u{a0}', " ");
    let english = "Dry the cloth first. It holds 40 % water; as it lies, it would take a trial.";
    assert_eq!(say(Language::En), english);
    let spanish = "Seque antes la tela. Contiene un 40 % de agua; tal como está, haría falta una prueba.";
    assert_eq!(say(Language::Es), spanish);
    let checked = reason.clone().word("verdict", "go-with-check");
    let say = |language: Language| Voice::from(language).reason(&checked).replace('\u{a0}', " ");
    assert!(say(Language::En).ends_with("as it lies, it would need checking."), "{}", say(Language::En));
    assert!(say(Language::Es).ends_with("tal como está, habría que revisarla."), "{}", say(Language::Es));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    /// At the same setting dried cloth lets the film fuse as well as damp cloth does, or better.
    #[test]
    fn drying_never_costs_fusion(
        label in prop_oneof![Just(MESH), Just(FLEECE), Just("100% cotton jersey 180 gsm black")],
        added in prop_oneof![Just(0.0), 0.0..=100.0_f64],
        humidity in 5.0..=100.0_f64,
        set in 140.0..=190.0_f64,
        belt in 0.6..=4.0_f64,
    ) {
        let order = order(label, added, "tern").humidity(humidity).build();
        let job = job(&order, library()).expect("a job");
        let mut report = answered(&order);
        prop_assume!(!report.picks.is_empty());
        let mut pick = report.picks.swap_remove(0);
        pick.recipe.predried = false;
        let fused = |pick: &Pick| {
            let run = as_run(&job, pick, DialSetting { set_c: set, belt_m_per_min: belt }).expect("it marches").expect("a way");
            run.margin(Topic::Fusion).expect("every print fuses").value
        };
        let damp = fused(&pick);
        pick.recipe.predried = true;
        let dry = fused(&pick);
        // What the integration itself may be off by, %: `tests/heat/history_laws.rs`.
        prop_assert!(dry.likely > damp.likely - 0.15 && dry.low > damp.low - 0.15, "{dry:?} dried, {damp:?} damp");
    }
}
