//! What a print costs, and what decides between two recipes of one verdict: money, and what the order cares for.
//!
//! Source: arithmetic by hand over the film, the speed and the scores of an answer. Prices, weights and times are policy (common
//! practice, no source, or invented for the demo); what is held is that each is counted once, and in its unit.

use super::common::{OrderBuilder, an_order, answered, library};
use whitehold::library::job;
use whitehold::plan::{Job, Pick, PrintStep, Priority, RecipeScores, Sheen, Stake, screening};

const FLEECE: &str = "80% cotton 20% polyester fleece 280 gsm maroon";

/// An order with its first pick and the scores of it.
fn chosen(order: OrderBuilder) -> (Job, Pick, RecipeScores) {
    let order = order.build();
    let mut report = answered(&order);
    let trade = report.trade.expect("recipes were assessed");
    let scores = trade.ways.into_iter().find(|way| way.pick == Some(0)).expect("the pick is one of them");
    (job(&order, library()).expect("a sound order"), report.picks.swap_remove(0), scores)
}

/// By hand: a frame of 500 cm² in two places, half of it printed, is 0.05 m² of film; film times density times price is ink. An
/// hour of press, dryer and two people is 60; 7 % additive at 60 a kilogram; a screen more takes 20 minutes of the run; a pass to dry
/// the cloth takes 6 s of hands at 18 an hour.
#[test]
fn a_print_costs_its_ink_its_time_and_its_screens() {
    let order = |label: &str, white: &str| {
        an_order().label(label).shelf(&[white, "slate"]).pieces(48).print(|print| {
            (print.area_cm2, print.coverage_percent) = (500.0, 50.0);
            print.locations = vec!["front".into(), "back".into()];
        })
    };
    let rows = [
        ("cotton", order("100% cotton jersey 150 gsm black", "chalk"), [false, false, false]),
        ("red polyester", order("100% polyester interlock 150 gsm red", "gannet"), [true, false, false]),
        ("nylon", order("100% nylon mesh 110 gsm kelly green", "tern"), [false, true, false]),
        ("fleece", order(FLEECE, "tern"), [false, false, true]),
    ];
    for (case, order, expected) in rows {
        let (job, pick, scores) = chosen(order);
        let white = job.whites.iter().find(|white| white.id == pick.white).expect("a white of the shelf");
        let (mut film, mut below, mut blocker) = (0.0, 0.0, 0.0);
        for step in &pick.steps {
            match step {
                PrintStep::White { film_um, .. } => film = film_um * 1e-6,
                PrintStep::Blocker { film_um, .. } => {
                    below = film_um * 1e-6;
                    blocker = 0.05 * below * job.blockers[0].density * job.blockers[0].price_per_kg;
                }
                _ => {}
            }
        }
        let additive = if pick.additive { 0.07 * 60.0 } else { 0.0 };
        let ink = 0.05 * film * white.density * (white.price_per_kg + additive) + blocker;
        let screens = f64::from(u8::from(scores.smoothing) + u8::from(below > 0.0));
        let screen = screens * 60.0 * job.rules.screen_change / 60.0 / 48.0;
        let drying = if pick.is_dried() { 6.0 / 3600.0 * 18.0 } else { 0.0 };
        let by_hand = ink + 60.0 / pick.rate_per_hour.likely + screen + drying;
        let found = pick.cost_per_print.likely;
        assert!((found - by_hand).abs() < 1e-9, "{case}: {found}, by hand {by_hand}");
        let hand = (film + below) / 100e-6 * white.stiffness;
        assert!((scores.hand - hand).abs() < 1e-9, "{case}: {}, by hand {hand}", scores.hand);
        assert_eq!([below > 0.0, pick.additive, scores.smoothing], expected, "{case}: {:?}", pick.steps);
    }
}

/// The weights of each priority on the loss to expect from late faults, on cost, on hand, on what shows of the cloth, and on
/// hours; and on one piece 0.15 a step of hand, 0.05 a ΔE00 that shows, 0.2 for nap that stands, 0.5 for a finish that is missed.
#[test]
fn what_an_order_cares_for_is_weighed_as_by_hand() {
    use Priority::{Balanced, Cheap, Durable, Fast, Opaque, Soft, StaysWhite};
    let table = [
        (Balanced, [1.0, 1.0, 1.0, 1.0, 0.0]),
        (StaysWhite, [3.0, 1.0, 0.3, 0.3, 0.0]),
        (Durable, [3.0, 1.0, 0.3, 0.3, 0.0]),
        (Soft, [1.0, 1.0, 8.0, 1.0, 0.0]),
        (Opaque, [1.0, 1.0, 1.0, 8.0, 0.0]),
        (Fast, [1.0, 1.0, 0.3, 0.3, 2.0]),
        (Cheap, [1.0, 3.0, 0.0, 0.0, 0.0]),
    ];
    let mut most = [0.0_f64; 2];
    for (priority, [risk, money, hand, cover, hours]) in table {
        let order = an_order().label(FLEECE).shelf(&["tern"]).pieces(72).worth(14.0).print(|print| {
            (print.priority, print.finish) = (priority, Sheen::Gloss);
        });
        let order = order.build();
        let job = job(&order, library()).expect("a sound order");
        let every = screening(&job).expect("it is simulated").swap_remove(0).every;
        let stake = Stake { pieces: 72.0, value: 14.0 };
        for way in answered(&order).trade.expect("recipes were assessed").ways {
            let by_hand = risk * stake.expected_running(way.late)
                + 72.0 * money * way.cost
                + 72.0 * hours * 60.0 / way.pace
                + 72.0 * hand * 0.15 * way.hand
                + 72.0 * cover * (0.05 * way.cover + 0.2 * way.nap)
                + 72.0 * 0.5 * way.finish;
            let off = every.iter().map(|it| (it.burden - by_hand).abs()).fold(f64::INFINITY, f64::min);
            assert!(
                off < 1e-6,
                "{priority:?}: {by_hand} by hand is {off} off the nearest of {every:#?}: {way:?}"
            );
            for (most, part) in most.iter_mut().zip([way.late, way.finish]) {
                *most = most.max(part);
            }
        }
    }
    assert!(most.iter().all(|part| *part > 0.0), "nothing is late, or no finish is missed: {most:?}");
}
