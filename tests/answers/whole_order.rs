//! One design on several garments: one plan that serves all, or a plan for each, and what the other costs.
//!
//! What is best for one garment alone is the same in the order, and the costs add up by hand.

use whitehold::library::{answer, harbour_lane, pick_window, starter};
use whitehold::plan::{Code, Garment, Order, OrderPlan, Report, Verdict, WholeOrder};

fn order(garments: &[(&str, u32)]) -> Order {
    let mut order = harbour_lane().unwrap().orders.into_iter().next().unwrap().order;
    let like = order.garments[0].clone();
    order.garments = garments
        .iter()
        .map(|(label, pieces)| Garment {
            label: (*label).into(),
            pieces: *pieces,
            colour: whitehold::plan::Colour::default(),
            ..like.clone()
        })
        .collect();
    order
}

fn report(garments: &[(&str, u32)]) -> Report {
    answer(&order(garments), &starter().unwrap()).unwrap()
}

const COTTON: &str = "100% cotton jersey, 150 g/m2, black";
const BLEND: &str = "50% cotton 50% polyester jersey, 185 g/m2, red";
const FLEECE: &str = "80% cotton 20% polyester fleece, 280 g/m2, navy";
/// Softens in any cure of the demo's shelf.
const ACRYLIC: &str = "100% acrylic jersey, 160 g/m2, black";

/// Prints of a plan, in money: pieces by cost per print.
fn prints(plan: &OrderPlan, pieces: &[u32]) -> f64 {
    plan.parts.iter().zip(pieces).map(|(part, count)| part.cost_per_print * f64::from(*count)).sum()
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
    for (garment, part) in garments.iter().zip(&whole.split.parts) {
        let alone = report(&[*garment]).picks.into_iter().next().unwrap();
        assert_eq!(part.white.as_deref(), Some(alone.white.as_str()), "{garment:?}");
        assert_eq!((part.verdict, part.setting), (alone.verdict, alone.setting), "{garment:?}");
    }
}

/// One plan is one white; its verdict is that of its hardest part; what it costs beyond its prints is the same for any
/// count of pieces, because screens and inks are changed once.
#[test]
fn one_plan_is_one_white_and_its_costs_add_up() {
    for pieces in [[30, 30], [300, 60]] {
        let WholeOrder { together, split, say } =
            report(&[(COTTON, pieces[0]), (BLEND, pieces[1])]).whole.unwrap();
        let one = together.unwrap();
        assert!(one.parts.iter().all(|part| part.white == one.parts[0].white), "{one:?}");
        for plan in [&one, &split] {
            let hardest = plan.parts.iter().map(|part| part.verdict).max().unwrap();
            assert_eq!(plan.verdict, hardest);
            let beyond = plan.cost - prints(plan, &pieces);
            assert!((0.0..60.0).contains(&beyond), "{beyond}: {plan:?}");
        }
        // A second white is a second screen and an ink change more: 6 and 10 min of an hour that costs 60.
        let whites: std::collections::BTreeSet<_> = split.parts.iter().map(|part| &part.white).collect();
        if whites.len() == 2 {
            let beyond = split.cost - prints(&split, &pieces);
            assert!(beyond >= 16.0 - 1e-9, "{beyond}");
        }
        let one_is_run = say.code == Code::OnePlan;
        let better = (one.verdict, one.cost) <= (split.verdict, split.cost);
        assert_eq!(one_is_run, better, "{say:?}");
    }
}

/// Few pieces are not worth a second set of screens, many are: with the count the split gets cheaper against one plan.
#[test]
fn more_pieces_favour_the_split() {
    let dearer = |pieces: u32| {
        let whole = report(&[(COTTON, pieces), (BLEND, 60)]).whole.unwrap();
        whole.together.unwrap().cost - whole.split.cost
    };
    let (few, many) = (dearer(20), dearer(2000));
    assert!(few <= many + 1e-9, "{few} with 20, {many} with 2000");
}

/// A garment that no white can serve does not stop the others; the answer is the refused one's.
#[test]
fn a_refused_garment_is_named_and_the_others_go_ahead() {
    let report = report(&[(COTTON, 100), (ACRYLIC, 40)]);
    assert_eq!((report.verdict, report.garment), (Verdict::Refuse, 1));
    let whole = report.whole.unwrap();
    assert_eq!((whole.together, whole.say.code), (None, Code::SomeRefused));
    assert_eq!(whole.split.parts[1].white, None);
    assert!(whole.split.parts[0].verdict < Verdict::Refuse);
}

/// The answer is the hardest garment's, wherever it stands; so is the window of its picks.
#[test]
fn the_answer_is_the_hardest_garments() {
    let library = starter().unwrap();
    for (garments, hardest) in [([(BLEND, 60), (COTTON, 100)], 0), ([(COTTON, 100), (BLEND, 60)], 1)] {
        let report = report(&garments);
        assert_eq!(report.garment, hardest);
        let pick = &report.picks[0];
        assert_eq!(pick.garment, hardest);
        let alone = answer(&order(&[garments[hardest]]), &library).unwrap();
        let window = |garments: &[(&str, u32)], pick| {
            pick_window(&order(garments), &library, pick).unwrap().report(None).unwrap().unwrap()
        };
        assert_eq!(window(&garments, pick).walls, window(&[garments[hardest]], &alone.picks[0]).walls);
    }
}
