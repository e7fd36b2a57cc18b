//! Ten orders, answered as a careful press lead would.
//!
//! Source of what is accepted: common practice, no source. The orders are the demo print room's (invented); what is
//! checked is the judgement, not the data.

use whitehold::ink::WhiteClass;
use whitehold::library::{Library, answer, harbour_lane, starter};
use whitehold::plan::{Code, Order, Report, Topic, Verdict};

fn room() -> (Library, Vec<(String, Order)>) {
    let library = starter().expect("the starter library parses");
    let orders = harbour_lane().expect("the demo parses").orders;
    (library, orders.into_iter().map(|order| (order.id, order.order)).collect())
}

fn report(id: &str) -> Report {
    let (library, orders) = room();
    let order = orders.iter().find(|(had, _)| had == id).map(|(_, order)| order).expect("a demo order");
    answer(order, &library).unwrap_or_else(|errors| panic!("{id}: {errors:?}"))
}

#[test]
fn each_answer_is_one_a_press_lead_would_accept() {
    use Verdict::{Go, GoWithCheck, Refuse, Trial};
    use WhiteClass::{Cotton, LowBleed, NonGhosting, Nylon, Polyester, Soft};
    #[rustfmt::skip]
    let rows: [(&str, &str, &[Verdict], &[WhiteClass]); 10] = [
        ("1185", "black cotton tee: the softest and quickest white", &[Go], &[Cotton]),
        ("1186", "red 50/50 tee: a white that blocks", &[Go], &[LowBleed, Polyester, NonGhosting]),
        ("1187", "red polyester: strong blocking, and a test first", &[Trial], &[Polyester]),
        ("1188", "sublimation print: trial at best, without a blocker no", &[Trial, Refuse], &[Polyester]),
        ("1189", "polyester mesh with pressed names: with care", &[Trial, GoWithCheck], &[Polyester]),
        ("1190", "nylon mesh: the nylon white, look before shipping", &[GoWithCheck, Trial], &[Nylon]),
        ("1191", "nylon tricot with elastane: no white here stretches so far", &[Trial, Refuse], &[Nylon]),
        ("1192", "tri-blend heather: blocks, and soft", &[Go, GoWithCheck], &[LowBleed, NonGhosting, Polyester]),
        ("1193", "pale cotton in a damp room: one that does not ghost", &[Go], &[Cotton, NonGhosting, Soft]),
        ("1194", "80/20 fleece: any white that blocks", &[Go, GoWithCheck], &[LowBleed, NonGhosting, Polyester]),
    ];
    for (id, case, verdicts, classes) in rows {
        let report = report(id);
        assert!(verdicts.contains(&report.verdict), "{id} {case}: {:?}", report.verdict);
        if let Some(pick) = report.picks.first() {
            assert!(classes.contains(&pick.class), "{id} {case}: {:?}", pick.class);
            let setting = pick.setting.unwrap_or_else(|| panic!("{id}: no setting"));
            assert!((25.0..=110.0).contains(&setting.dwell_s), "{id}: {:.0} s in the heat", setting.dwell_s);
            let fusion = pick.margin(Topic::Fusion).unwrap_or_else(|| panic!("{id}: no fusion"));
            assert!(fusion.value.likely > 93.0, "{id}: {fusion:?}");
            let film = pick.margin(Topic::FilmHeat).unwrap_or_else(|| panic!("{id}: no film heat"));
            assert!(
                (155.0..=195.0).contains(&film.value.likely),
                "{id}: film peaks at {:.0} °C",
                film.value.likely
            );
        } else {
            assert!(
                !report.to_make_it_possible.is_empty(),
                "{id} {case}: a refusal must say what would help"
            );
        }
    }
}

#[test]
fn a_cotton_white_is_never_let_onto_cloth_that_bleeds() {
    for id in ["1186", "1187", "1188", "1189", "1194"] {
        let report = report(id);
        let reasons = report
            .rejected
            .iter()
            .find(|rejected| rejected.white == "chalk")
            .map(|rejected| &rejected.reasons);
        let reasons = reasons.unwrap_or_else(|| panic!("{id}: Chalk must be among the rejected"));
        assert!(reasons.iter().any(|reason| reason.code == Code::NoBlocking), "{id}: {reasons:?}");
    }
}

#[test]
fn red_polyester_says_what_would_make_it_a_go() {
    let report = report("1187");
    let codes: Vec<Code> = report.to_make_it_possible.iter().map(|reason| reason.code).collect();
    assert!(codes.contains(&Code::IfUndyed), "{codes:?}");
    assert!(codes.contains(&Code::BuyClass) || codes.contains(&Code::UseBlocker), "{codes:?}");
    let trial = report.picks.first().and_then(|pick| pick.trial.clone()).expect("a trial says what to test");
    assert!(trial.pieces >= 2 && trial.hours > 0.0 && trial.oven_c <= 60.0, "{trial:?}");
}

#[test]
fn evidence_of_the_lot_turns_a_trial_into_a_go() {
    let (library, orders) = room();
    let mut order =
        orders.into_iter().find(|(id, _)| id == "1187").map(|(_, order)| order).expect("a demo order");
    order.evidence.push(whitehold::plan::Evidence {
        about: "lot".into(),
        name: order.garments[0].lot.clone(),
        white: "gannet".into(),
        pieces: 6,
        turned: 0,
        days: 30.0,
    });
    let report = answer(&order, &library).expect("answers");
    assert_eq!(report.verdict, Verdict::Go, "{:?}", report.picks.first().map(|pick| pick.fail_later));
    order.evidence[0].turned = 2;
    let report = answer(&order, &library).expect("answers");
    let gannet = report.picks.iter().find(|pick| pick.white == "gannet");
    assert!(gannet.is_none_or(|pick| pick.verdict >= Verdict::Trial), "a stained lot is no go");
}

#[test]
fn no_go_without_the_maker_s_word_nor_against_a_ban() {
    let (library, orders) = room();
    let (_, order) = orders.first().expect("orders");
    let mut protective = order.clone();
    protective.use_.kind = whitehold::plan::UseKind::Protective;
    let mut banned = order.clone();
    banned.use_.customer_bans = vec!["PVC".into()];
    for (order, code) in [(protective, Code::MakerWordNeeded), (banned, Code::CustomerBans)] {
        let report = answer(&order, &library).expect("answers");
        assert_eq!(report.verdict, Verdict::Refuse);
        assert!(report.to_make_it_possible.iter().any(|reason| reason.code == code), "{code:?}");
    }
}
