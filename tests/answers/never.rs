//! No answer runs what does not fuse, burns, melts or is soaked.
//!
//! Random orders; each setting that may be run is followed by itself, apart from the plan's own windows and margins, and
//! held to fixed limits. Source of the limits: common practice, no source (a film on dripping cloth stays near 100 °C; a
//! film over 220 °C browns), and the fibres' melting points in `data/fibres.json` (handbooks named there).
//!
//! `WHITEHOLD_ORDERS=10000 cargo test --release --test answers never` looks longer.

use super::common::{an_order, library};
use whitehold::library::{DryerRun, answer};
use whitehold::plan::{Garment, Order, Pick, PrintStep, Verdict};

/// Numbers from 0 to 1 that look random and are the same in each run: a linear congruential generator (Knuth's MMIX).
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.next() * all.len() as f64) as usize]
    }
}

/// Fibres of a label, and the lowest temperature at which one of them melts or scorches at once, °C.
const FIBRES: [(&str, f64); 8] = [
    ("100% cotton", 240.0),
    ("50% cotton 50% polyester", 240.0),
    ("80% cotton 20% polyester", 240.0),
    ("100% polyester", 250.0),
    ("100% nylon", 215.0),
    ("85% nylon 15% elastane", 215.0),
    ("50% polyester 25% cotton 25% viscose", 240.0),
    ("100% polypropylene", 160.0),
];

fn drawn(draw: &mut Draw) -> (Order, f64) {
    let (fibres, most) = draw.one_of(&FIBRES);
    let make = draw.one_of(&["jersey", "interlock", "fleece", "mesh", "pique", "canvas"]);
    let colour = draw.one_of(&["black", "white", "red", "navy", "maroon", "heather grey"]);
    let weight = 100.0 + 300.0 * draw.next();
    let water = if draw.next() < 0.4 { 100.0 * draw.next() * draw.next() } else { 0.0 };
    let order = an_order()
        .label(&format!("{fibres} {make} {weight:.0} gsm {colour}"))
        .soaked(water)
        .humidity(20.0 + 70.0 * draw.next())
        .dryer(draw.one_of(&["long-kiln", "gas-galley", "short-stove"]))
        .shop(|shop| {
            if draw.next() < 0.3 {
                shop.dryer_fixed = Some(
                    match shop.dryer.as_str() {
                        "short-stove" => 350.0 + 150.0 * draw.next(),
                        _ => 115.0 + 95.0 * draw.next(),
                    }
                    .round(),
                );
            }
        });
    (order.every_white().build(), most)
}

/// What is wrong with running a pick as it says; `None` if nothing is.
fn wrong(order: &Order, pick: &Pick, most: f64) -> Option<String> {
    let setting = pick.setting?;
    let film = |wanted: fn(&PrintStep) -> Option<f64>| pick.steps.iter().find_map(wanted).unwrap_or(0.0);
    let garment = &order.garments[0];
    let run = DryerRun {
        dryer: order.shop.dryer.clone(),
        garment: Garment {
            // What drying leaves hardly differs from a dry room.
            added_water_percent: if pick.is_dried() { 0.0 } else { garment.added_water_percent },
            ..garment.clone()
        },
        film_um: film(|step| match step {
            PrintStep::White { film_um, .. } => Some(*film_um),
            _ => None,
        }),
        blocker_um: film(|step| match step {
            PrintStep::Blocker { film_um, .. } => Some(*film_um),
            _ => None,
        }),
        set_c: setting.set_c,
        belt_m_per_min: setting.belt_m_per_min,
        humidity_percent: Some(if pick.is_dried() { 15.0 } else { order.shop.humidity_percent }),
        white: Some(pick.recipe.white.clone()),
        ..DryerRun::default()
    };
    let curve = run.curve(library()).unwrap_or_else(|errors| panic!("{run:?}: {errors:?}"));
    let hottest = |of: &[f64]| of.iter().copied().fold(0.0, f64::max);
    let fused = curve.fused.last().copied().unwrap_or(0.0);
    let leaves = curve.seconds.iter().position(|at| *at >= curve.leaves_s - 1e-6).unwrap_or(0);
    // A dried cloth in a dry room may have been wetter than it is here, so its film is only held to the hot side.
    let raw = fused < 0.85;
    let burnt = hottest(&curve.film_top_c) > 225.0 || hottest(&curve.cloth_c) > most;
    let soaked = curve.water_percent[leaves] > 20.0;
    (raw || burnt || soaked).then(|| {
        let water = curve.water_percent[leaves];
        let film = hottest(&curve.film_top_c);
        format!("fused {fused:.2}, film {film:.0} °C, water {water:.0} %, {:?} by {}", setting, pick.white)
    })
}

#[test]
fn nothing_raw_burnt_melted_or_soaked_is_run() {
    let count = std::env::var("WHITEHOLD_ORDERS").ok().and_then(|count| count.parse().ok()).unwrap_or(60);
    let mut draw = Draw(20_261_201);
    let (mut found, mut run) = (Vec::new(), 0);
    for _ in 0..count {
        let (order, most) = drawn(&mut draw);
        // Labels that name no such cloth are refused by name; they are held elsewhere.
        let Ok(report) = answer(&order, library()) else { continue };
        for pick in report.picks.iter().filter(|pick| pick.verdict < Verdict::Trial) {
            run += 1;
            if let Some(wrong) = wrong(&order, pick, most) {
                let label = &order.garments[0].label;
                found.push(format!("{label} +{:.0} %: {wrong}", order.garments[0].added_water_percent));
            }
        }
    }
    assert!(run > count, "{run} settings of {count} orders may be run");
    assert!(found.is_empty(), "{} of {run}: {found:#?}", found.len());
}
