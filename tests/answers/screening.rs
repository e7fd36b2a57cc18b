//! The search for a white's best way never drops what the judgement of every way would have ranked first.
//!
//! Nothing outside the house can be asked here: the search is a short cut through judgements that other tests hold.

use super::common::{an_order, library};
use whitehold::library::job;
use whitehold::plan::{
    Evidence, EvidenceSubject, HeatEvent, Opacity, Order, Priority, Screening, Sheen, Verdict, screening,
};

const LABELS: [&str; 12] = [
    "100% cotton jersey 150 gsm black",
    "50% cotton 50% polyester jersey 185 gsm red",
    "100% polyester interlock 150 gsm red",
    "100% polyester interlock 140 gsm sublimation print royal",
    "100% polyester mesh 140 gsm navy",
    "100% nylon mesh 110 gsm kelly green",
    "80% nylon 20% elastane tricot 190 gsm black",
    "50% polyester 25% cotton 25% viscose jersey 140 gsm heather maroon",
    "80% cotton 20% polyester fleece 280 gsm maroon",
    "95% cotton 5% elastane jersey 180 gsm white",
    "60% cotton 40% polyester jersey 160 gsm heather grey",
    "100% polyester fleece 240 gsm forest",
];
const PRIORITIES: [Priority; 7] = [
    Priority::Balanced,
    Priority::Soft,
    Priority::StaysWhite,
    Priority::Opaque,
    Priority::Durable,
    Priority::Fast,
    Priority::Cheap,
];

/// Orders over every label, each with its own priority, cover, finish, run, room and dryer, some of them soaked.
fn orders() -> Vec<Order> {
    let every = LABELS.iter().cycle().take(60).enumerate();
    every.map(|(i, label)| of_round(label, i)).collect()
}

/// The order of one label in round `i / 12`. The last two rounds: soaked cloth on a shelf of ordinary whites, the very
/// last in a dryer that is set cool.
fn of_round(label: &str, i: usize) -> Order {
    let (turn, soaked) = (i + i / 12, i >= 36);
    let dryer = ["long-kiln", "long-kiln", "short-stove"][turn % 3];
    let mut order = an_order().label(label).pieces([12, 72, 600][i % 3]).worth([8.0, 14.0, 30.0][i / 3 % 3]);
    order = order.every_white().dryer(dryer).humidity([40.0, 60.0, 80.0][i % 3]).print(|print| {
        print.priority = PRIORITIES[turn % 7];
        print.opacity = [Opacity::Standard, Opacity::Full, Opacity::Soft][turn % 3];
        print.finish = [Sheen::Any, Sheen::Matt, Sheen::Any, Sheen::Gloss, Sheen::Any][i % 5];
        if i % 5 == 4 {
            print.heat_after = vec![HeatEvent { what: "pressed names".into(), temp_c: 155.0, seconds: 12.0 }];
        }
    });
    if i.is_multiple_of(2) {
        order = order.shop(|shop| shop.shelf.push("slate".into()));
    }
    if soaked {
        let cool = if dryer == "long-kiln" { 152.0 } else { 385.0 };
        order = order.soaked([15.0, 40.0, 90.0][turn % 3]).shelf(&["chalk", "tern", "gannet", "plover"]);
        order = order.shop(|shop| shop.dryer_fixed = (i >= 48).then_some(cool));
    }
    let mut order = order.build();
    if i % 7 == 6 {
        order.evidence = vec![Evidence {
            about: EvidenceSubject::Article,
            name: String::new(),
            white: "gannet".into(),
            pieces: 30,
            turned: 0,
            days: 14.0,
            blocker: None,
        }];
    }
    order
}

/// Two ways whose burdens differ by less than this ratio are as good as one another: no press lead could tell them apart.
const ALIKE: f64 = 1.02;

/// Whites that are known to be missed on dried cloth.
const MISSED_DRIED: usize = 3;

fn better(a: &(Verdict, f64), b: &(Verdict, f64)) -> std::cmp::Ordering {
    a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
}

#[test]
fn the_best_way_is_found() {
    let (mut ways, mut judged, mut searches) = (0, 0, 0);
    let (mut missed, mut missed_dried) = (Vec::new(), Vec::new());
    let (mut dried_ways, mut dried_picks) = (0, 0);
    for order in orders() {
        let label = order.garments[0].label.clone();
        let job = job(&order, library()).unwrap_or_else(|errors| panic!("{label}: {errors:?}"));
        let screenings = screening(&job).unwrap_or_else(|error| panic!("{label}: {error}"));
        dried_picks += usize::from(screenings.iter().any(|screening| screening.dried.is_some()));
        for Screening { white, found, judged: looked_at, every, dried, every_dried } in screenings {
            ways += every.len();
            judged += looked_at;
            searches += 1;
            let best = every.iter().map(|way| (way.verdict, way.burden)).min_by(better);
            dried_ways += every_dried.len();
            let without = found.as_ref().map_or(Verdict::Refuse, |found| found.verdict);
            let helps = every_dried.iter().filter(|way| way.verdict < without);
            let best_dried = helps.map(|way| (way.verdict, way.burden)).min_by(better);
            match (&dried, best_dried) {
                (None, None) => {}
                (Some(dried), Some(best)) if better(&(dried.verdict, dried.burden), &best).is_le() => {}
                (dried, best) => missed_dried.push(format!("{label}, {white}: {dried:?} for {best:?}")),
            }
            match (&found, best) {
                (None, None) => {}
                // Of ways that are all refused, one is as good as another.
                (Some(found), Some(best))
                    if found.verdict == Verdict::Refuse && best.0 == Verdict::Refuse => {}
                (Some(found), Some(best))
                    if better(&(found.verdict, found.burden / ALIKE), &best).is_le() => {}
                (found, best) => missed.push(format!("{label}, {white}: {found:?} for {best:?}")),
            }
        }
    }
    println!("{judged} of {ways} ways judged");
    assert!(missed.is_empty(), "{} of {searches} searches missed: {missed:#?}", missed.len());
    // Where drying does not help the candidates that come nearest, no other is dried: a known miss, kept to be seen. It is
    // one order, light heather on a shelf of every white in the oven that was never measured.
    assert!(missed_dried.len() <= MISSED_DRIED, "{} dried missed: {missed_dried:#?}", missed_dried.len());
    assert!(dried_picks > 3 && dried_ways > 100, "{dried_picks} orders are dried, {dried_ways} ways judged");
    assert!(judged * 2 < ways, "{judged} of {ways} ways judged: nothing is spared");
}
