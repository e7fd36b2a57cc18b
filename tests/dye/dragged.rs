//! Laws of the bleed over all that a hand can drag: a lot with more dye never shows less, a hotter or longer run never
//! bleeds less, and no dye is lost. Source: the equations themselves, whose dye in the film only grows with what arrives
//! and with the heat.

use super::common::{OrderBuilder, an_order, library};
use whitehold::library::{self, forecast_at};
use whitehold::plan::{
    BleedForecast, DialSetting, DyeClass, HeatEvent, PickForecast, Print, Use, assess_white,
};

/// Walks from cool and short to hot and long, for each print, and settings on each.
const WALKS: usize = 25;
const SETTINGS: usize = 8;
/// Set temperature (°C) and dwell (s) that can be dialled for the kilns; the lamps of the short oven stand hotter.
const SET: [f64; 2] = [112.0, 220.0];
const LAMPS: [f64; 2] = [320.0, 500.0];
const DWELL: [f64; 2] = [12.0, 140.0];
/// Largest fall of a chance that is still rounding, 0 to 1: what is left over by steps in time.
const ROUNDING: f64 = 2e-4;

/// Numbers from 0 to 1 that look random and are the same in each run: a linear congruential generator (Knuth's MMIX).
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn within(&mut self, [low, high]: [f64; 2]) -> f64 {
        low + (high - low) * self.next()
    }
}

/// A print that is dragged: its order, white, and the range of its dryer.
struct Dragged {
    name: &'static str,
    forecast: PickForecast,
    heated: f64,
    set: [f64; 2],
}

fn dragged(name: &'static str, order: OrderBuilder, white: &str, set: [f64; 2]) -> Dragged {
    let order = order.build();
    let job = library::job(&order, library()).unwrap_or_else(|errors| panic!("{name}: {errors:?}"));
    let pick = assess_white(&job, white, false)
        .expect("it integrates")
        .unwrap_or_else(|| panic!("{name}: no window"));
    let forecast = library::pick_forecast(&order, library(), &pick).expect("an order");
    Dragged {
        name,
        forecast: forecast.unwrap_or_else(|| panic!("{name}: no dye")),
        heated: job.dryer.heated_length(),
        set,
    }
}

impl Dragged {
    fn at(&self, [set_c, dwell]: [f64; 2]) -> BleedForecast {
        let at = DialSetting { set_c, belt_m_per_min: self.heated / dwell * 60.0 };
        forecast_at(&self.forecast, Some(at)).expect("it integrates").expect("dye")
    }
}

/// Both laws on random walks; how far the chance went between its least and its most.
fn holds(print: &Dragged, draw: &mut Draw) -> [f64; 2] {
    let mut seen = [1.0, 0.0_f64];
    for _ in 0..WALKS {
        let mut at =
            [draw.within([print.set[0], 0.5 * (print.set[0] + print.set[1])]), draw.within([DWELL[0], 50.0])];
        let mut before: Option<([f64; 2], f64)> = None;
        for _ in 0..SETTINGS {
            let aged = print.at(at);
            for (day, spread) in aged.days.iter().zip(&aged.de00) {
                let lots = [spread.low, spread.lower, spread.likely, spread.upper, spread.high];
                assert!(
                    lots.windows(2).all(|pair| pair[1] >= pair[0] - 1e-6),
                    "{} at {at:?}, day {day}: more dye shows less: {lots:?}",
                    print.name
                );
            }
            assert!(
                aged.turns_at_times.is_finite() && aged.turns_at_times >= 0.0,
                "{} at {at:?}",
                print.name
            );
            let it = &aged.ledger;
            let came = it.heat_mg_per_m2 + it.own_mg_per_m2 + it.facing_mg_per_m2;
            let lies = it.free_mg_per_m2 + it.bound_mg_per_m2;
            assert!(
                (came - lies).abs() < 1e-11 * it.heat_mg_per_m2,
                "{} at {at:?}: {came} for {lies}",
                print.name
            );
            let chance = 1.0 - aged.stays_white;
            if let Some((cooler, less)) = before {
                assert!(
                    chance >= less - ROUNDING,
                    "{}: {chance} at {at:?}, {less} at {cooler:?}",
                    print.name
                );
            }
            before = Some((at, chance));
            seen = [seen[0].min(chance), seen[1].max(chance)];
            // Hotter, longer, or both.
            let which = draw.next();
            if which < 0.7 {
                at[0] = (at[0] + draw.within([0.0, 0.25]) * (print.set[1] - print.set[0])).min(print.set[1]);
            }
            if which > 0.3 {
                at[1] = (at[1] + draw.within([0.0, 40.0])).min(DWELL[1]);
            }
        }
    }
    seen
}

/// A thousand settings each, in two tests that run side by side.
fn hold_for(prints: &[Dragged], seed: u64) {
    let mut draw = Draw(seed);
    for print in prints {
        let [least, most] = holds(print, &mut draw);
        assert!(most - least > 0.3, "{}: chances from {least} to {most} try nothing", print.name);
    }
}

const POLYESTER: &str = "100% polyester interlock 150 g/m2";
const BLEND: &str = "50% cotton 50% polyester jersey 185 g/m2";

fn print(label: &str, white: &str) -> OrderBuilder {
    an_order().label(label).colour("red").shelf(&[white])
}

#[test]
fn more_dye_more_heat_and_more_time_never_show_less_in_the_kiln() {
    let open = |used: &mut Use| used.faced = false;
    let press = |print: &mut Print| {
        print.heat_after = vec![HeatEvent { what: "pressed names".into(), temp_c: 155.0, seconds: 15.0 }];
    };
    hold_for(
        &[
            dragged("polyester", print(POLYESTER, "gannet"), "gannet", SET),
            dragged("open", print(BLEND, "tern").used(open), "tern", SET),
            dragged("pressed later", print(BLEND, "gannet").print(press), "gannet", SET),
            dragged(
                "low-cure",
                print("65% polyester 35% cotton fleece 280 g/m2", "plover-cool"),
                "plover-cool",
                SET,
            ),
            dragged("soft white", print("50% cotton 50% polyester pique 200 g/m2", "chalk"), "chalk", SET),
        ],
        1,
    );
}

#[test]
fn more_dye_more_heat_and_more_time_never_show_less_elsewhere() {
    let hot = |used: &mut Use| {
        used.stacked_hot = true;
        used.container_days = 20.0;
    };
    let year = |used: &mut Use| used.looked_at_after_days = 365.0;
    let blocked = an_order().label(POLYESTER).colour("navy").shelf(&["tern", "slate"]);
    hold_for(
        &[
            dragged("over a blocker", blocked, "tern", SET),
            dragged("hot store", print(POLYESTER, "gannet").used(hot), "gannet", SET),
            dragged("in gas", print(BLEND, "tern").dryer("gas-galley"), "tern", SET),
            dragged("under lamps", print(BLEND, "gannet").dryer("short-stove"), "gannet", LAMPS),
            dragged(
                "dye that leaves easily, a year",
                print(BLEND, "gannet").used(year).garment(|garment| garment.dye_class = DyeClass::LowEnergy),
                "gannet",
                SET,
            ),
        ],
        2,
    );
}
