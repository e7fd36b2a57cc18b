//! Prints the set point of every cloth, dryer and kind of ink: the table behind `tests/set_points.json`.
//!
//! `cargo run --release -p whitehold-bench --example set_points`

#![allow(clippy::unwrap_used)]

use whitehold::library::{Library, answer, starter};
use whitehold::plan::{Garment, Order, Shop, Topic};

const CLOTHS: [&str; 12] = [
    "100% cotton jersey 180 gsm black",
    "100% cotton jersey 140 gsm white",
    "50% cotton 50% polyester jersey 170 gsm navy",
    "100% polyester interlock 150 gsm red",
    "100% nylon mesh 120 gsm navy",
    "100% cotton fleece 320 gsm black",
    "80% cotton 20% polyester fleece 280 gsm grey",
    "100% polyester fleece 240 gsm navy",
    "100% cotton canvas 340 gsm natural",
    "50% polyester 25% cotton 25% viscose jersey 145 gsm heather",
    "80% nylon 20% elastane tricot 190 gsm black",
    "100% cotton pique 220 gsm green",
];

/// An order on this cloth, dry or with water (% of its weight), over every white of one kind of ink.
fn order(library: &Library, label: &str, dryer: &str, low_cure: bool, water: f64) -> Order {
    let whites = library.whites.iter().filter(|white| white.low_cure == low_cure);
    Order {
        garments: vec![Garment {
            label: label.into(),
            pieces: 144,
            added_water_percent: water,
            ..Garment::default()
        }],
        shop: Shop {
            dryer: dryer.into(),
            shelf: whites.map(|white| white.id.clone()).collect(),
            humidity_percent: 60.0,
            ..Shop::default()
        },
        ..Order::default()
    }
}

fn sweep(library: &Library, label: &str, dryer: &str, low: bool, water: f64) {
    let order = order(library, label, dryer, low, water);
    let report = answer(&order, library).unwrap();
    match report.picks.first() {
        None => println!("{label} {dryer} low {low} +{water}: {:?}", report.verdict),
        Some(pick) => {
            let (s, d) = (pick.setting.unwrap(), pick.is_dried());
            println!(
                "{label} {dryer} low {low} +{water}: {:?} {:.0} C {:.1} s late {:.1} dried {d}",
                pick.verdict,
                s.set_c,
                s.dwell_s,
                100.0 * pick.fail_later.likely
            );
        }
    }
}

fn main() {
    let library = starter().unwrap();
    if std::env::args().len() > 1 {
        for low in [false, true] {
            for dryer in ["long-kiln", "gas-galley"] {
                for g in [200, 240, 280, 320, 360, 400] {
                    sweep(&library, &format!("100% cotton fleece {g} gsm black"), dryer, low, 0.0);
                }
                for w in [0.0, 4.0, 8.0, 10.0, 11.0, 12.0, 13.0, 14.0, 16.0, 20.0, 30.0] {
                    sweep(&library, "80% cotton 20% polyester fleece 280 gsm grey", dryer, low, w);
                }
            }
        }
        return;
    }
    for label in CLOTHS {
        for dryer in ["long-kiln", "gas-galley", "short-stove"] {
            for low in [false, true] {
                let order = order(&library, label, dryer, low, 0.0);
                let report = answer(&order, &library).unwrap();
                let ink = if low { "low" } else { "ord" };
                match report.picks.first() {
                    None => println!("{label:60} {dryer:11} {ink}  {:?}", report.verdict),
                    Some(pick) => {
                        let setting = pick.setting.unwrap();
                        let film = pick.margin(Topic::FilmHeat).unwrap().value;
                        let fused = pick.margin(Topic::Fusion).unwrap().value;
                        println!(
                            "{label:60} {dryer:11} {ink}  {:11} {:12} {:4.0} C {:4.0} s  film {:3.0} {:3.0}-{:3.0}  fused {:3.0} {:5.1}  late {:4.1}",
                            format!("{:?}", pick.verdict),
                            pick.white,
                            setting.set_c,
                            setting.dwell_s,
                            film.likely,
                            film.low,
                            film.high,
                            fused.low,
                            fused.likely,
                            100.0 * pick.fail_later.likely
                        );
                    }
                }
            }
        }
    }
}
