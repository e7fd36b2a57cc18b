//! The search for a white's best way never drops what the judgement of every way would have ranked first.
//!
//! Nothing outside the house can be asked here: the search is a short cut through judgements that other tests hold.

use whitehold::library::{job, starter};
use whitehold::plan::{
    Evidence, Garment, HeatEvent, Opacity, Order, Priority, Screening, Sheen, Verdict, screening,
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
    let library = starter().expect("the starter library parses");
    let shelf: Vec<String> = library.whites.iter().map(|white| white.id.clone()).collect();
    let mut orders = Vec::new();
    for (i, label) in LABELS.iter().cycle().take(60).enumerate() {
        // The last two rounds: soaked cloth on a shelf of ordinary whites, one of them in a dryer that stands cool.
        let soaked = i >= 36;
        let mut order = Order {
            garments: vec![Garment {
                label: (*label).into(),
                pieces: [12, 72, 600][i % 3],
                value_each: [8.0, 14.0, 30.0][i / 3 % 3],
                added_water_percent: if soaked { [15.0, 40.0, 90.0][(i + i / 12) % 3] } else { 0.0 },
                ..Garment::default()
            }],
            ..Order::default()
        };
        order.print.priority = PRIORITIES[(i + i / 12) % 7];
        order.print.opacity = [Opacity::Standard, Opacity::Full, Opacity::Soft][(i + i / 12) % 3];
        order.print.finish = [Sheen::Any, Sheen::Matt, Sheen::Any, Sheen::Gloss, Sheen::Any][i % 5];
        order.shop.shelf = shelf.clone();
        if i % 2 == 0 {
            order.shop.shelf.push("slate".into());
        }
        order.shop.dryer = ["long-kiln", "long-kiln", "short-stove"][(i + i / 12) % 3].into();
        order.shop.humidity_percent = [40.0, 60.0, 80.0][i % 3];
        if soaked {
            order.shop.shelf = ["chalk", "tern", "gannet", "plover"].map(Into::into).to_vec();
            let cool = if order.shop.dryer == "long-kiln" { 152.0 } else { 385.0 };
            order.shop.dryer_fixed = (i >= 48).then_some(cool);
        }
        if i % 5 == 4 {
            order.print.heat_after =
                vec![HeatEvent { what: "pressed names".into(), temp_c: 155.0, seconds: 12.0 }];
        }
        if i % 7 == 6 {
            order.evidence = vec![Evidence {
                about: "article".into(),
                name: String::new(),
                white: "gannet".into(),
                pieces: 30,
                turned: 0,
                days: 14.0,
            }];
        }
        orders.push(order);
    }
    orders
}

fn better(a: &(Verdict, f64), b: &(Verdict, f64)) -> std::cmp::Ordering {
    a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
}

#[test]
fn the_best_way_is_found() {
    let library = starter().expect("the starter library parses");
    let (mut ways, mut judged, mut searches) = (0, 0, 0);
    let mut missed = Vec::new();
    let (mut dried_ways, mut dried_picks) = (0, 0);
    for order in orders() {
        let label = order.garments[0].label.clone();
        let job = job(&order, &library).unwrap_or_else(|errors| panic!("{label}: {errors:?}"));
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
                (dried, best) => missed.push(format!("{label}, {white}, dried: {dried:?} for {best:?}")),
            }
            match (&found, best) {
                (None, None) => {}
                // Of ways that are all refused, one is as good as another.
                (Some(found), Some(best))
                    if found.verdict == Verdict::Refuse && best.0 == Verdict::Refuse => {}
                (Some(found), Some(best)) if better(&(found.verdict, found.burden), &best).is_le() => {}
                (found, best) => missed.push(format!("{label}, {white}: {found:?} for {best:?}")),
            }
        }
    }
    println!("{dried_ways} ways on dried cloth, {dried_picks} orders are dried");
    println!("{judged} of {ways} ways judged in {searches} searches, {} missed", missed.len());
    assert!(missed.is_empty(), "{} missed: {missed:#?}", missed.len());
    assert!(dried_picks > 3, "only {dried_picks} orders are dried: nothing is held to");
    assert!(judged * 3 < ways, "{judged} of {ways} ways judged: nothing is spared");
}
