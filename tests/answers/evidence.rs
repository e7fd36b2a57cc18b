//! What was seen with one white speaks of every other on that lot.
//!
//! Source of what is accepted: common practice, no source.

use super::common::{an_order, answered, library};
use whitehold::library::job;
use whitehold::plan::{
    Code, Evidence, EvidenceSubject, Order, Pick, SimulationCache, Verdict, assess_white, learn,
};

const RED: &str = "100% polyester interlock 150 g/m2 red";

fn order(seen: &[(EvidenceSubject, &str, [u32; 2], f64)]) -> Order {
    let mut order = an_order().label(RED).every_white().pieces(72).worth(9.0).build();
    order.shop.shelf.push("slate".into());
    order.garments[0].lot = "L-7".into();
    order.evidence = seen
        .iter()
        .map(|(about, white, [turned, pieces], days)| Evidence {
            about: *about,
            name: "L-7".into(),
            white: (*white).into(),
            pieces: *pieces,
            turned: *turned,
            days: *days,
            blocker: None,
        })
        .collect();
    order
}

/// Chance of a late fault of one white at the film of the anchors, after what was seen.
fn chance(white: &str, seen: &[(EvidenceSubject, &str, [u32; 2], f64)]) -> f64 {
    let mut job = job(&order(seen), library()).expect("a sound order");
    learn(&mut job, &mut SimulationCache::default()).expect("it integrates");
    assess_white(&job, white, false).expect("it integrates").expect("a window").fail_later.likely
}

#[test]
fn a_white_that_turned_stops_every_plain_white_of_that_lot() {
    use EvidenceSubject::Lot;
    let report = answered(&order(&[(Lot, "gannet", [4, 4], 30.0)]));
    let runs = |pick: &&Pick| pick.verdict <= Verdict::GoWithCheck && pick.recipe.blocker.is_none();
    assert_eq!(report.picks.iter().find(runs), None, "a plain white is run on a lot that turned");
    assert_eq!(report.verdict, Verdict::Trial, "a blocker with a low-cure white is tried");
    assert!(report.picks[0].recipe.blocker.is_some() && report.picks[0].low_cure, "{:?}", report.picks[0]);
}

/// Clean prints of one white make the same lot safer for all whites, the more so the nearer their film; what turned makes it
/// worse. What is about the article says less than what is about the lot, and what is about the white alone least.
#[test]
fn looks_move_every_white() {
    use EvidenceSubject::{Article, Lot, White};
    for white in ["gannet", "gannet-cool"] {
        let [lot, article, shop] = [Lot, Article, White]
            .map(|about| [[0, 6], [3, 6]].map(|turned| chance(white, &[(about, "gannet", turned, 30.0)])));
        let none = chance(white, &[]);
        println!("{white}: {none:.3}; lot {lot:.3?}, article {article:.3?}, shop {shop:.3?}");
        assert!(lot[0] < article[0] && article[0] < shop[0] && shop[0] < none, "{white} clean");
        assert!(lot[1] > article[1] && article[1] > shop[1] && shop[1] > none, "{white} turned");
    }
}

/// One piece looked at next morning shows little: it lifts no verdict.
#[test]
fn one_piece_next_morning_lifts_nothing() {
    use EvidenceSubject::Lot;
    let without = answered(&order(&[]));
    let with = answered(&order(&[(Lot, "gannet", [0, 1], 0.5)]));
    for pick in &with.picks {
        let before = without.picks.iter().find(|before| before.recipe == pick.recipe);
        let Some(before) = before else { continue };
        assert!(pick.verdict >= before.verdict, "{:?} was {:?}", pick.verdict, before.verdict);
    }
    assert_eq!(with.verdict, without.verdict);
}

/// Of a low-cure cotton white over a blocker no row says how often it turns: it is a check at best, and says why, until a print
/// of the lot was followed; a polyester white over a blocker stands in a row.
#[test]
fn what_no_row_holds_is_checked() {
    let order = |seen: &[Evidence], white: &str| {
        let label = "50% cotton 50% polyester jersey 185 g/m2 heather grey";
        let mut order = an_order().label(label).shelf(&[white, "slate"]).pieces(24).worth(5.0).build();
        order.garments[0].lot = "L-7".into();
        order.evidence = seen.to_vec();
        answered(&order)
    };
    let told = |pick: &Pick| pick.reasons.iter().any(|reason| reason.code == Code::FarFromKnown);
    let followed = Evidence {
        about: EvidenceSubject::Lot,
        name: "L-7".into(),
        white: "chalk-cool".into(),
        pieces: 12,
        turned: 0,
        days: 30.0,
        blocker: Some("slate".into()),
    };
    for (seen, white) in [(vec![], "chalk-cool"), (vec![], "gannet"), (vec![followed], "chalk-cool")] {
        for pick in &order(&seen, white).picks {
            let far = pick.recipe.blocker.is_some() && white == "chalk-cool";
            assert_eq!(told(pick), far, "{:?}", pick.recipe);
            assert!(!far || !seen.is_empty() || pick.verdict >= Verdict::GoWithCheck, "{:?}", pick.recipe);
        }
    }
}

/// A print that turned holds back a bare go on its own lot or article; a white that turned on some other cloth does not.
#[test]
fn only_a_print_of_this_cloth_holds_back_a_go() {
    use EvidenceSubject::{Article, Lot, White};
    let verdict = |about: EvidenceSubject| {
        let mut order = order(&[(about, "gannet", [3, 6], 30.0)]);
        order.garments[0].label = "100% cotton jersey 150 g/m2 black".into();
        answered(&order).verdict
    };
    assert_eq!([Lot, Article, White].map(verdict), [Verdict::GoWithCheck, Verdict::GoWithCheck, Verdict::Go]);
}
