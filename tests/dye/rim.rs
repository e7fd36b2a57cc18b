//! White that stands over its blocker bleeds along the edge, and that counts.

use super::common::{an_order, forecast, library, reason};
use whitehold::library;
use whitehold::plan::{Code, DyeClass, Order, Pick, PrintStep, Topic, assess_white, seen_share};

/// Red cloth printed by sublimation, a low-cure white over a blocker.
fn order(overhang_mm: f64) -> Order {
    let order = an_order().label("100% polyester interlock 150 g/m2").colour("red");
    let order = order.garment(|garment| garment.dye_class = DyeClass::SublimationPrinted);
    order.shelf(&["gannet-cool", "slate"]).print(|print| print.overhang_mm = overhang_mm).build()
}

fn blocked(overhang_mm: f64) -> Pick {
    let job = library::job(&order(overhang_mm), library()).expect("a sound order");
    assess_white(&job, "gannet-cool", true).expect("it integrates").expect("a window")
}

/// Source: a line blurred by a kernel `exp(-(x/0.41 mm)²)`, summed over 20,001 points in Python 3.11, no error function.
#[test]
fn a_narrow_line_is_seen_in_part() {
    for (width_mm, expected) in [(0.1, 0.1371), (0.2, 0.2699), (0.5, 0.6116), (1.0, 0.9154), (2.0, 0.9994)] {
        let found = seen_share(width_mm * 1e-3);
        assert!((found - expected).abs() < 1e-3, "{width_mm} mm: {found}");
    }
    assert!(seen_share(0.0).abs() < 1e-12);
}

/// Source: common practice. The further the white stands over, the more often the print turns.
#[test]
fn a_wider_rim_never_helps() {
    let pick = blocked(0.0);
    assert!(pick.steps.iter().any(|step| matches!(step, PrintStep::Blocker { .. })));
    let chances: Vec<f64> = [0.0, 0.1, 0.2, 0.4, 0.8, 1.6, 5.0]
        .map(|overhang| 1.0 - forecast(&order(overhang), &pick).stays_white)
        .into();
    for pair in chances.windows(2) {
        assert!(pair[1] >= pair[0] - 1e-9, "{chances:?}");
    }
    assert!(
        chances[6] > chances[0] + 0.1,
        "a rim of half a centimetre is as good as no blocker: {chances:?}"
    );
}

#[test]
fn the_rim_is_a_margin_and_a_reason() {
    let bare = blocked(0.0);
    assert!(bare.margin(Topic::Rim).is_none(), "no rim, no margin");
    let pick = blocked(1.6);
    let margin = pick.margin(Topic::Rim).expect("a margin");
    assert!(reason(&pick, Code::RimBleeds).is_some(), "{:?}", pick.reasons);
    assert!(pick.fail_later.likely > bare.fail_later.likely);
    // What the forecast says of it is the margin's own band, on the day that matters.
    let aged = forecast(&order(1.6), &pick);
    let rim = aged.rim.expect("a rim");
    for (found, expected) in [(rim.de00.low, margin.value.low), (rim.de00.likely, margin.value.likely)] {
        assert!((found * rim.seen - expected).abs() < 1e-6 + 1e-6 * expected, "{found} for {expected}");
    }
}

/// The chance grows day by day into that of the verdict: the rim is in all of them, not in the last alone.
#[test]
fn every_day_counts_the_rim() {
    let pick = blocked(0.8);
    let (with, without) = (forecast(&order(0.8), &pick), forecast(&order(0.0), &pick));
    for (day, (with, without)) in with.days.iter().zip(with.shows.iter().zip(&without.shows)) {
        assert!(*with >= *without - 1e-9, "day {day}: {with} under {without}");
    }
    let last = with.shows.len() - 1;
    let jump = (with.shows[last] - with.shows[last - 1]).abs();
    assert!(jump < 0.1, "from day {} to {}: {jump}", with.days[last - 1], with.days[last]);
}
