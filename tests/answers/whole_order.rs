//! One design on several garments: one plan that serves all, or a plan for each, and what the other costs.
//!
//! What is best for one garment alone is the same in the order, and the costs add up by hand.

use super::common::{an_order, answered, best, library, number};
use whitehold::library::pick_window;
use whitehold::plan::{Code, Order, OrderPlan, Pick, Report, Verdict, WholeOrder};

/// An order on a shelf of the ordinary whites, each garment with its pieces.
fn order(garments: &[(&str, u32)]) -> Order {
    let (label, pieces) = garments[0];
    let first = an_order().label(label).pieces(pieces).shelf(&["chalk", "tern", "gannet", "plover"]);
    garments[1..].iter().fold(first, |order, (label, pieces)| order.and_on(label).pieces(*pieces)).build()
}

fn report(garments: &[(&str, u32)]) -> Report {
    answered(&order(garments))
}

const COTTON: &str = "100% cotton jersey, 150 g/m2, black";
const BLEND: &str = "50% cotton 50% polyester jersey, 185 g/m2, red";
const FLEECE: &str = "80% cotton 20% polyester fleece, 280 g/m2, navy";
/// Melts in any cure of the demo's shelf.
const POLYPROPYLENE: &str = "100% polypropylene jersey, 160 g/m2, black";

/// Prints of a plan, in money: pieces by cost per print.
fn prints(plan: &OrderPlan, pieces: &[u32]) -> f64 {
    plan.parts.iter().zip(pieces).map(|(part, count)| part.cost_per_print * f64::from(*count)).sum()
}

fn both(pieces: [u32; 2]) -> WholeOrder {
    report(&[(COTTON, pieces[0]), (BLEND, pieces[1])]).whole.unwrap()
}

#[test]
fn one_garment_needs_no_plan_for_all() {
    assert_eq!(report(&[(COTTON, 144)]).whole, None);
}

/// The split is what each garment's own order is answered with.
#[test]
fn the_split_is_the_answer_to_each_alone() {
    let garments = [(COTTON, 100), (BLEND, 60), (FLEECE, 40)];
    let whole = report(&garments).whole.unwrap();
    assert_eq!(whole.split.parts.len(), garments.len());
    for (garment, part) in garments.iter().zip(&whole.split.parts) {
        let report = report(&[*garment]);
        let alone = best(&report);
        assert_eq!(part.white.as_deref(), Some(alone.white.as_str()), "{garment:?}");
        assert_eq!((part.verdict, part.setting), (alone.verdict, alone.setting), "{garment:?}");
    }
}

/// One plan is one white, and costs its prints alone. The split is cotton's own white and the blend's, and costs a screen
/// and an ink change more: 6 and 10 min of an hour that costs 60, so 16. Each is as hard as its hardest part.
///
/// Which of them is run, by hand: under one white a print on cotton costs some 6 hundredths more, so that 30 pieces save
/// 2 by the split, 100 pieces 6 and 2000 pieces 120.
#[test]
fn one_plan_is_one_white_and_its_costs_add_up() {
    for (pieces, says) in
        [([30, 30], Code::OnePlan), ([100, 60], Code::OnePlan), ([2000, 60], Code::SplitCheaper)]
    {
        let WholeOrder { together, split, say } = both(pieces);
        let one = together.unwrap();
        let whites = |plan: &OrderPlan| -> Vec<String> {
            plan.parts.iter().flat_map(|part| part.white.clone()).collect()
        };
        assert_eq!(whites(&split)[0], "chalk", "{pieces:?}");
        assert!(["gannet", "tern"].contains(&whites(&split)[1].as_str()), "{:?}", whites(&split));
        assert_eq!(whites(&one)[0], whites(&one)[1], "{pieces:?}");
        for (plan, beyond) in [(&one, 0.0), (&split, 16.0)] {
            let hardest = plan.parts.iter().map(|part| part.verdict).max().unwrap();
            assert_eq!(plan.verdict, hardest, "{pieces:?}");
            let found = plan.cost - prints(plan, &pieces);
            assert!((found - beyond).abs() < 1e-9, "{pieces:?}: {found} beyond the prints of {plan:?}");
        }
        assert_eq!(say.code, says, "{pieces:?}: one plan {}, the split {}", one.cost, split.cost);
        let differs = (one.cost - split.cost).abs();
        assert!((number(&say, "value") - differs).abs() < 1e-9, "{pieces:?}: {differs}, told {say:?}");
    }
}

/// Few pieces are not worth a second set of screens, many are: with the count the split gets cheaper against one plan.
#[test]
fn more_pieces_favour_the_split() {
    let dearer = |pieces: u32| {
        let whole = both([pieces, 60]);
        whole.together.unwrap().cost - whole.split.cost
    };
    let (few, many) = (dearer(20), dearer(2000));
    assert!(few < -10.0 && many > 2.0, "one plan costs {few} more with 20, {many} more with 2000");
}

/// A garment that no white can serve does not stop the others; the answer is the refused one's.
#[test]
fn a_refused_garment_is_named_and_the_others_go_ahead() {
    let report = report(&[(COTTON, 100), (POLYPROPYLENE, 40)]);
    assert_eq!((report.verdict, report.garment), (Verdict::Refuse, 1));
    let whole = report.whole.unwrap();
    assert_eq!((whole.together, whole.say.code), (None, Code::SomeRefused));
    assert_eq!(whole.split.parts[1].white, None);
    assert!(whole.split.parts[0].verdict < Verdict::Refuse);
}

/// The answer is the hardest garment's, in whichever place it stands; so is the window of its picks.
#[test]
fn the_answer_is_the_hardest_garments() {
    for (garments, hardest) in [([(BLEND, 60), (COTTON, 100)], 0), ([(COTTON, 100), (BLEND, 60)], 1)] {
        let report = report(&garments);
        let pick = best(&report);
        assert_eq!((report.garment, pick.garment), (hardest, hardest));
        let alone = self::report(&[garments[hardest]]);
        let walls = |garments: &[(&str, u32)], pick: &Pick| {
            pick_window(&order(garments), library(), pick).unwrap().report(None).unwrap().unwrap().walls
        };
        assert_eq!(walls(&garments, pick), walls(&[garments[hardest]], best(&alone)));
    }
}
