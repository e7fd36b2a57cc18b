//! An order for an industrial laundry is told so, and gets no better an answer for it.
//!
//! No source outside the project: wash durability has no equation, and its class frequency is common practice.

use super::common::{an_order, best, reason};
use whitehold::plan::{Code, Report, Topic, UseKind};

fn answered(label: &str, kind: UseKind) -> Report {
    let order = an_order().label(label).pieces(72).worth(14.0).every_white();
    order.used(|used| used.kind = kind).answered()
}

#[test]
fn an_industrial_wash_is_counted_and_named() {
    let labels = [
        "100% cotton jersey 150 gsm black",
        "65% polyester 35% cotton twill 215 gsm navy",
        "50% cotton 50% polyester jersey 185 gsm red",
    ];
    for label in labels {
        let [home, work] = [UseKind::Everyday, UseKind::Workwear].map(|kind| answered(label, kind));
        assert!(work.verdict >= home.verdict, "{label}: {:?} under {:?}", work.verdict, home.verdict);
        let named = |report: &Report| {
            let pick = best(report);
            (reason(pick, Code::WashHard).is_some(), pick.margin(Topic::Wash).is_some())
        };
        assert_eq!((named(&home), named(&work)), ((false, false), (true, true)), "{label}");
        let [at_home, at_work] = [&home, &work].map(|report| best(report).fail_later.likely);
        assert!(at_work > at_home, "{label}: {at_work} at work, {at_home} at home");
    }
}
