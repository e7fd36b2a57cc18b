//! Ten orders are answered as a careful press lead would.
//!
//! Source of what is accepted: common practice, no source; `tests/ten_orders.json` says why, row by row. The orders are
//! the demo print room's (invented); what is checked is the judgement, not the data.

use super::common::{answered, demo_order, ten_orders};
use whitehold::plan::{Code, Evidence, EvidenceSubject, Topic, UseKind, Verdict};

/// Dwell 25 to 110 s, film 155 to 195 °C at its hottest and fused by more than 93 % at its bottom: what a shop's dryer
/// does to plastisol. Common practice, no source. A nylon white cures cooler.
#[test]
fn each_answer_is_one_a_press_lead_would_accept() {
    let rows = ten_orders::rows();
    assert_eq!(rows.len(), 10);
    for row in rows {
        let case = format!("{} {} ({})", row.id, row.order, row.why);
        let report = answered(&demo_order(&row.id));
        assert_eq!(report.verdict, row.verdict, "{case}");
        let Some(pick) = report.picks.first() else {
            assert!(row.first.is_empty(), "{case}: no white");
            assert!(!report.to_make_it_possible.is_empty(), "{case}: a refusal must say what would help");
            continue;
        };
        assert!(row.first.contains(&pick.white), "{case}: {}", pick.white);
        let setting = pick.setting.unwrap_or_else(|| panic!("{case}: no setting"));
        assert!((25.0..=110.0).contains(&setting.dwell_s), "{case}: {:.0} s in the heat", setting.dwell_s);
        let likely =
            |topic: Topic| pick.margin(topic).unwrap_or_else(|| panic!("{case}: no {topic:?}")).value.likely;
        assert!(likely(Topic::Fusion) > 93.0, "{case}: fused by {:.1} %", likely(Topic::Fusion));
        let heat = likely(Topic::FilmHeat);
        assert!((155.0..=195.0).contains(&heat), "{case}: the film peaks at {heat:.0} °C");
    }
}

/// Not run: refused, or tried at most, and the reason is said.
#[test]
fn a_cotton_white_is_never_let_onto_cloth_that_bleeds() {
    for id in ["1186", "1187", "1188", "1189", "1194"] {
        let report = answered(&demo_order(id));
        let rejected = report.rejected.iter().find(|rejected| rejected.white == "chalk");
        let reasons = match report.picks.iter().find(|pick| pick.white == "chalk") {
            Some(pick) => {
                assert!(pick.verdict >= Verdict::Trial, "{id}: {:?}", pick.verdict);
                &pick.reasons
            }
            None => &rejected.unwrap_or_else(|| panic!("{id}: Chalk is lost")).reasons,
        };
        assert!(reasons.iter().any(|reason| reason.code == Code::NoBlocking), "{id}: {reasons:?}");
    }
}

#[test]
fn red_polyester_says_what_would_make_it_a_go() {
    let report = answered(&demo_order("1187"));
    let codes: Vec<Code> = report.to_make_it_possible.iter().map(|reason| reason.code).collect();
    // No white of the market alone makes 144 pieces at 20 more than a trial; one over a blocker does.
    for code in [Code::IfUndyed, Code::UseBlocker] {
        assert!(codes.contains(&code), "{code:?} is missing in {codes:?}");
    }
    let trial = report.picks[0].trial.clone().expect("a trial says what to test");
    assert!(trial.pieces >= 2 && trial.hours > 0.0 && trial.oven_c <= 60.0, "{trial:?}");
}

/// Six pieces of the lot looked at after a month: clean they make a go of a trial, and two that turned stop the white.
#[test]
fn evidence_of_the_lot_turns_a_trial_into_a_go_or_stops_it() {
    let looked_at = |turned: u32| {
        let mut order = demo_order("1187");
        order.evidence.push(Evidence {
            about: EvidenceSubject::Lot,
            name: order.garments[0].lot.clone(),
            white: "gannet".into(),
            pieces: 6,
            turned,
            days: 30.0,
            blocker: None,
        });
        answered(&order)
    };
    let clean = looked_at(0);
    assert_eq!((clean.verdict, clean.picks[0].white.as_str()), (Verdict::Go, "gannet"));
    let stained = looked_at(2);
    let picked = stained.picks.iter().find(|pick| pick.white == "gannet").map(|pick| pick.verdict);
    let rejected = stained.rejected.iter().any(|rejected| rejected.white == "gannet");
    assert!(
        picked == Some(Verdict::Trial) || (picked.is_none() && rejected),
        "a stained lot is no go: {picked:?}, rejected {rejected}"
    );
}

#[test]
fn no_go_without_the_maker_s_word_nor_against_a_ban() {
    let mut protective = demo_order("1185");
    protective.use_.kind = UseKind::Protective;
    let mut banned = demo_order("1185");
    banned.use_.customer_bans = vec!["PVC".into()];
    for (order, code) in [(protective, Code::MakerWordNeeded), (banned, Code::CustomerBans)] {
        let report = answered(&order);
        assert_eq!(report.verdict, Verdict::Refuse, "{code:?}");
        assert!(report.to_make_it_possible.iter().any(|reason| reason.code == code), "{code:?}");
    }
}
