//! What the reasons of an answer say is so: the numbers they carry, and what would make an answer better does.
//!
//! Weights come from the labels, a label's own statement; that a limit is near at a fifth of it is common practice, no source.

use super::common::{
    an_order, answered, best, demo_order, demo_orders, forecast, library, number, reason, word,
};
use serde_json::json;
use whitehold::library::job;
use whitehold::plan::{
    Advice, Code, DyeClass, Evidence, EvidenceSubject, Margin, Reason, Report, SimulationCache, Topic,
    Verdict, assess_white, learn,
};
use whitehold::textile::Fibre;

/// Heavy cloth is told by the weight that its label gives, g/m²: dried yarn and the water that it holds in the room. A cloth
/// of 150 g/m² is not heavy.
#[test]
fn heavy_cloth_is_told_by_the_weight_of_its_label() {
    let rows = [
        ("80% cotton 20% polyester fleece 280 gsm maroon", Some(280.0)),
        ("100% cotton canvas 10 oz navy", Some(339.06)),
        ("100% cotton jersey 150 gsm black", None),
    ];
    for (label, expected) in rows {
        let pick = an_order().label(label).shelf(&["chalk", "gannet"]).picked();
        let found = reason(&pick, Code::HeavyCloth).map(|reason| number(reason, "gsm"));
        let near = match (found, expected) {
            (Some(found), Some(expected)) => (found - expected).abs() < 0.01,
            (found, expected) => found == expected,
        };
        assert!(near, "{label}: {found:?} for {expected:?}");
    }
}

/// Nylon softens at 170 °C, and a print on it comes within a fifth of that; cotton does not soften at all.
#[test]
fn a_limit_that_is_near_is_told() {
    for (id, told) in [("1190", true), ("1185", false)] {
        let report = answered(&demo_order(id));
        let found = reason(best(&report), Code::SoftensNear);
        assert_eq!(found.is_some(), told, "order {id}: {:?}", best(&report).reasons);
        let limit: Option<&Margin> = best(&report).margin(Topic::Softening);
        let near = limit.is_some_and(|margin| (margin.limit - margin.value.high) / margin.limit < 0.2);
        assert_eq!(near, told, "order {id}: {limit:?}");
    }
}

fn promised(reason: &Reason) -> Verdict {
    serde_json::from_value(json!(word(reason, "verdict"))).expect("a verdict")
}

/// Whatever an answer names to buy or to do brings a better verdict than the answer's own.
#[test]
fn what_would_make_it_better_does() {
    let codes = [Code::BuyClass, Code::UseBlocker, Code::IfUndyed, Code::IfDried];
    // A blocker makes no difference under a white that is refused for another reason.
    let weak = an_order().label("100% polyester interlock 150 g/m2").colour("red").pieces(2000).worth(30.0);
    let few = ["tern", "gannet"].map(|white| weak.clone().shelf(&[white]).answered());
    let reports: Vec<Report> = demo_orders().iter().map(|(_, order)| answered(order)).chain(few).collect();
    let mut told = 0;
    for report in &reports {
        for reason in report.to_make_it_possible.iter().filter(|reason| codes.contains(&reason.code)) {
            let promised = promised(reason);
            assert!(promised < report.verdict, "{reason:?} of {:?}", report.verdict);
            told += 1;
        }
    }
    assert!(told > 5, "only {told} were told");
}

/// Reducer spoils what a white binds: it is advised against where there is dye to bind and a white that binds it. A fibre that
/// melts burns the skin; cotton does not. Common practice, no source.
#[test]
fn advice_and_cautions_are_given_where_they_matter() {
    let rows = [
        ("100% polyester interlock 150 gsm red", "gannet", true, true),
        ("100% cotton jersey 150 gsm black", "gannet", false, false),
        ("50% cotton 50% polyester jersey 185 gsm white", "chalk", false, false),
    ];
    for (label, white, reducer, melts) in rows {
        let report = an_order().label(label).shelf(&[white]).answered();
        let advised = best(&report).advice.contains(&Advice::NoReducer);
        let cautioned = report.cautions.iter().any(|caution| caution.code == Code::MeltBurns);
        assert_eq!((advised, cautioned), (reducer, melts), "{label}, {white}");
    }
}

/// The longer a clean piece of the lot was looked at, the more it tells: at the dryer's exit, after a day, after a week.
/// Common practice, no source.
#[test]
fn evidence_tells_more_the_longer_it_was_looked_at() {
    let plain = an_order().label("100% polyester interlock 150 gsm red").shelf(&["tern"]).pieces(144);
    let plain = plain.garment(|garment| garment.lot = "A".into());
    let chance = |days: Option<f64>| {
        let mut order = plain.clone().build();
        order.evidence.extend(days.map(|days| Evidence {
            about: EvidenceSubject::Lot,
            name: "A".into(),
            white: "tern".into(),
            pieces: 4,
            turned: 0,
            days,
            blocker: None,
        }));
        let mut job = job(&order, library()).expect("a sound order");
        learn(&mut job, &mut SimulationCache::default()).expect("it integrates");
        assess_white(&job, "tern", false).expect("it integrates").expect("a window").fail_later.likely
    };
    let [untested, exit, day, week] = [None, Some(0.2), Some(1.0), Some(7.0)].map(chance);
    assert!(exit < untested - 1e-3 && day < exit - 1e-3 && week <= day, "{untested} {exit} {day} {week}");
}

/// What is worth finding out: whether polyester is dyed could take away the whole chance of bleeding but for what no model
/// covers, its dye class half of that; a test of the lot finds a bad one as often as a day in the oven does. By hand, from the
/// forecast's chance; the weights are assumed.
#[test]
fn what_is_worth_finding_out_is_as_by_hand() {
    let order = |label: &str, white: &str| an_order().label(label).shelf(&[white]);
    let lot = |order: super::common::OrderBuilder| order.garment(|garment| garment.lot = "A".into());
    let red = "100% polyester interlock 150 gsm red";
    let dyed = order(red, "tern").garment(|garment| garment.dyed_fibres = Some(vec![Fibre::Polyester]));
    let known = dyed.clone().garment(|garment| garment.dye_class = DyeClass::LowEnergy);
    // What is asked, and its worth as a part of the chance of bleeding and of that chance less what no model covers.
    let rows = [
        ("perhaps undyed", order(red, "tern"), Code::AskDyed, Some([0.0, 1.0])),
        ("dyed with something", dyed.clone(), Code::AskDyeClass, Some([0.0, 0.5])),
        ("a known dye", known, Code::AskDyeClass, None),
        ("a lot", lot(dyed.clone()), Code::AskLotTest, Some([0.85, 0.0])),
        ("no lot", dyed, Code::AskLotTest, None),
        ("a lot of cotton", lot(order("100% cotton jersey 150 gsm black", "tern")), Code::AskLotTest, None),
        (
            "a lot that stays clean",
            lot(order("55% cotton 45% polyester jersey 185 gsm pink", "gannet")),
            Code::AskLotTest,
            None,
        ),
    ];
    for (case, order, asked, expected) in rows {
        let order = order.build();
        let rules = job(&order, library()).expect("a sound order").rules;
        let report = answered(&order);
        let found = report.unknowns.iter().find(|unknown| unknown.ask.code == asked);
        let by_hand = expected.map(|[all, modelled]| {
            let bleeds = 1.0 - forecast(&order, best(&report)).stays_white;
            assert!(bleeds > 0.1, "{case}: hardly bleeds");
            all * bleeds + modelled * (bleeds - rules.lapse)
        });
        assert_eq!(found.is_some(), by_hand.is_some(), "{case}: {:?}", report.unknowns);
        if let (Some(found), Some(by_hand)) = (found, by_hand) {
            assert!((found.worth - by_hand).abs() < 1e-6, "{case}: {}, by hand {by_hand}", found.worth);
        }
        assert!(report.unknowns.is_sorted_by(|a, b| a.worth >= b.worth), "{case}: {:?}", report.unknowns);
    }
}
