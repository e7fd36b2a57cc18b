//! Who washes at an industrial laundry is told so, and gets no better an answer for it.
//!
//! No source outside the house: wash durability has no equation, and its class frequency is common practice.

use whitehold::library::{answer, starter};
use whitehold::plan::{Code, Garment, Order, Report, Topic, UseKind};

fn asked(label: &str, kind: UseKind) -> Report {
    let library = starter().expect("the starter library parses");
    let mut order = Order {
        garments: vec![Garment { label: label.into(), pieces: 72, value_each: 14.0, ..Garment::default() }],
        ..Order::default()
    };
    order.use_.kind = kind;
    order.shop.shelf = library.whites.iter().map(|white| white.id.clone()).collect();
    order.shop.dryer = "long-kiln".into();
    answer(&order, &library).unwrap_or_else(|errors| panic!("{label}: {errors:?}"))
}

#[test]
fn an_industrial_wash_is_counted_and_named() {
    let labels = [
        "100% cotton jersey 150 gsm black",
        "65% polyester 35% cotton twill 215 gsm navy",
        "50% cotton 50% polyester jersey 185 gsm red",
    ];
    for label in labels {
        let [home, work] = [UseKind::Everyday, UseKind::Workwear].map(|kind| asked(label, kind));
        assert!(
            work.verdict >= home.verdict,
            "{label}: {:?} at work, {:?} at home",
            work.verdict,
            home.verdict
        );
        let named = |report: &Report| {
            let pick = report.picks.first().unwrap_or_else(|| panic!("{label}: no pick"));
            let told = pick.reasons.iter().any(|reason| reason.code == Code::WashHard);
            (told, pick.margin(Topic::Wash).is_some(), pick.fail_later.likely)
        };
        let ((told, margin, at_home), (told_at_work, margin_at_work, at_work)) = (named(&home), named(&work));
        assert_eq!([told, margin, told_at_work, margin_at_work], [false, false, true, true], "{label}");
        assert!(at_work > at_home, "{label}: {at_work} at work, {at_home} at home");
    }
}
