//! The forecast is the verdict's own film, day by day.

use super::common::{OrderBuilder, an_order, forecast, library};
use whitehold::dryer::Cooling;
use whitehold::library;
use whitehold::migration::{ClothTest, FastnessGrade};
use whitehold::plan::{BleedForecast, DialSetting, DyeClass, HeatEvent, Order, Pick, Topic, assess_white};
use whitehold::quantity::Band;

const POLYESTER: &str = "100% polyester interlock 150 g/m2";
const BLEND: &str = "50% cotton 50% polyester jersey 185 g/m2";

/// Red cloth under every white.
fn order(label: &str) -> OrderBuilder {
    an_order().label(label).colour("red").every_white()
}

/// The pick of a white, at the set point that the order has by itself.
fn pick(order: &Order, white: &str) -> Pick {
    let job = library::job(order, library()).expect("a sound order");
    assess_white(&job, white, false).expect("it integrates").expect("a window")
}

fn on_the_day(forecast: &BleedForecast) -> usize {
    let day = |day: &f64| day.total_cmp(&forecast.looked_at_days).is_eq();
    forecast.days.iter().position(day).expect("the day that matters is one of the days")
}

#[test]
fn on_the_day_that_matters_it_is_the_pick_s_own_margin_and_chance() {
    for (label, white, day) in
        [(POLYESTER, "tern", 90.0), (POLYESTER, "gannet", 17.0), (BLEND, "chalk", 365.0)]
    {
        let order = order(label).used(|used| used.looked_at_after_days = day).build();
        let pick = pick(&order, white);
        let aged = forecast(&order, &pick);
        let at = on_the_day(&aged);
        let margin = pick.margins.iter().find(|margin| margin.what == Topic::Bleed).expect("it bleeds");
        let seen = aged.de00[at];
        for (name, found, expected) in [
            ("low", seen.low, margin.value.low),
            ("likely", seen.likely, margin.value.likely),
            ("high", seen.high, margin.value.high),
        ] {
            // The margin's band is read between its lots, the forecast's from the lots themselves.
            assert!((found - expected).abs() <= 1e-6 + 1e-6 * expected, "{name}: {found} for {expected}");
        }
        assert_eq!(aged.verdict, pick.verdict, "{label} {white}");
        assert!(1.0 - aged.stays_white <= pick.fail_later.likely + 1e-12);
        assert!((aged.shows[at] - (1.0 - aged.stays_white)).abs() < 1e-12);
        assert!((aged.shows_by(day) - aged.shows[at]).abs() < 1e-12);
        let (before, around) = (aged.shows_by(day - 0.5), [aged.shows[at - 1], aged.shows[at]]);
        assert!(
            before >= around[0].min(around[1]) && before <= around[0].max(around[1]),
            "{before} {around:?}"
        );
        // Other worlds march beside it, and Newton ends with the last of them.
        assert!(
            (aged.worlds.gated[at] - seen.likely).abs() < 1e-4,
            "the gated world meets it at its own point"
        );
    }
}

/// Mass: what came by heat and from both cloths lies in the film, to 1e-6; the ways of the heat make its sum.
#[test]
fn the_ledger_balances() {
    let order = order(POLYESTER).used(|used| {
        used.stacked_hot = true;
        used.container_days = 20.0;
    });
    let order = order.build();
    for white in ["chalk", "tern", "gannet"] {
        let ledger = forecast(&order, &pick(&order, white)).ledger;
        let came = ledger.heat_mg_per_m2 + ledger.own_mg_per_m2 + ledger.facing_mg_per_m2;
        let lies = ledger.free_mg_per_m2 + ledger.bound_mg_per_m2;
        assert!((came / lies - 1.0).abs() < 1e-6, "{white}: {came} for {lies} mg/m²");
        let ways = ledger.vapour_mg_per_m2 + ledger.contact_mg_per_m2 + ledger.loose_mg_per_m2;
        assert!((ways / ledger.heat_mg_per_m2 - 1.0).abs() < 1e-9, "{white}: {ways}");
    }
}

/// What is changed, and how.
type Change<'a> = (&'static str, &'a dyn Fn(&mut Order));

/// The same pick, the order changed: what raises its chance to turn, and what lowers it, each by more than five in
/// ten thousand. The least of them, a hot stack over night, moves it by 8 in ten thousand. Source: common practice.
#[test]
fn what_harms_and_what_helps() {
    let plain = order(POLYESTER).build();
    let pick = pick(&plain, "tern");
    let chance = |change: &dyn Fn(&mut Order)| {
        let mut order = plain.clone();
        change(&mut order);
        1.0 - forecast(&order, &pick).stays_white
    };
    let here = chance(&|_| ());
    let grade = |grade: f64| FastnessGrade { test: ClothTest::IsoP01, grade, temp_c: None, seconds: None };
    let press = HeatEvent { what: "pressed names".into(), temp_c: 155.0, seconds: 15.0 };
    let harms: [Change<'_>; 11] = [
        ("reducer", &|order| order.print.reducer_percent = 5.0),
        ("additive", &|order| order.print.additives = vec!["stretch 10 %".into()]),
        ("pressed names", &|order| order.print.heat_after = vec![press.clone()]),
        ("stacked hot", &|order| order.use_.stacked_hot = true),
        ("warm store", &|order| order.use_.storage_c = 35.0),
        ("container", &|order| order.use_.container_days = 30.0),
        ("looked at later", &|order| order.use_.looked_at_after_days = 365.0),
        ("dye that leaves easily", &|order| order.garments[0].dye_class = DyeClass::LowEnergy),
        ("recycled", &|order| order.garments[0].recycled = true),
        ("over-dyed", &|order| order.garments[0].over_dyed = true),
        ("bad grade", &|order| order.garments[0].fastness = vec![grade(2.0)]),
    ];
    for (what, change) in harms {
        let found = chance(change);
        assert!(found > here + 5e-4, "{what}: {found} for {here}");
    }
    let helps: [Change<'_>; 3] = [
        ("dye that holds on", &|order| order.garments[0].dye_class = DyeClass::HighEnergy),
        ("good grade", &|order| order.garments[0].fastness = vec![grade(4.5)]),
        ("cool store", &|order| order.use_.storage_c = 10.0),
    ];
    for (what, change) in helps {
        let found = chance(change);
        assert!(found < here - 5e-4, "{what}: {found} for {here}");
    }
}

/// A hot stack and a summer's container send dye from both cloths into the film, beside what the slower cooling of a stack
/// lets come by heat: here the prints cool in a stack in any case, so that only the store differs.
#[test]
fn heat_in_the_store_alone_brings_dye() {
    let mut stacks = library().clone();
    for dryer in &mut stacks.dryers {
        dryer.cooling = Cooling::Stacked;
    }
    let plain = order(POLYESTER).build();
    let pick = pick(&plain, "tern");
    let ledger = |change: &dyn Fn(&mut Order)| {
        let mut order = plain.clone();
        change(&mut order);
        let prepared = library::pick_forecast(&order, &stacks, &pick).expect("an order").expect("dye");
        library::forecast_at(&prepared, None).expect("it integrates").expect("a window").ledger
    };
    let here = ledger(&|_| ());
    let heats: [Change<'_>; 2] = [
        ("stacked hot", &|order| order.use_.stacked_hot = true),
        ("container", &|order| order.use_.container_days = 30.0),
    ];
    for (what, change) in heats {
        let found = ledger(change);
        let by_heat = found.heat_mg_per_m2 / here.heat_mg_per_m2;
        assert!((by_heat - 1.0).abs() < 1e-9, "{what}: the dryer's own heat brings {by_heat} times as much");
        let ways = [
            ("own", found.own_mg_per_m2, here.own_mg_per_m2),
            ("facing", found.facing_mg_per_m2, here.facing_mg_per_m2),
        ];
        for (cloth, found, here) in ways {
            assert!(found > 1.02 * here, "{what}, {cloth} cloth: {found} for {here} mg/m²");
        }
    }
}

/// What makes ghosting worse, as factors of the frequency of the class on a pale cloth with cotton in it. Common practice,
/// no source: this holds that each is counted, and by how much.
#[test]
fn what_makes_ghosting_worse_is_counted() {
    let plain =
        order(BLEND).colour("pink").humidity(50.0).used(|used| used.looked_at_after_days = 90.0).build();
    let pick = pick(&plain, "tern");
    let rows: [(f64, Change<'_>); 6] = [
        (1.0, ("as it is", &|_| ())),
        (5.5, ("damp room", &|order| order.shop.humidity_percent = 75.0)),
        (2.0, ("stacked hot", &|order| order.use_.stacked_hot = true)),
        (0.5, ("looked at after a week", &|order| order.use_.looked_at_after_days = 7.0)),
        (0.75, ("halfway to a month", &|order| order.use_.looked_at_after_days = 18.5)),
        (0.05, ("dark cloth", &|order| order.garments[0].colour.name = "navy".into())),
    ];
    for (factor, (what, change)) in rows {
        let mut order = plain.clone();
        change(&mut order);
        let ghosting = forecast(&order, &pick).ghosting;
        let found = ghosting.frequency / ghosting.class;
        assert!((found - factor).abs() < 1e-12, "{what}: {found} for {factor}");
    }
    // Known within a factor of two.
    let likely = 100.0 * forecast(&plain, &pick).ghosting.frequency;
    let Band { low, likely: found, high } = pick.margin(Topic::Ghosting).expect("pale cotton").value;
    for (found, expected) in [(low, likely / 2.0), (found, likely), (high, likely * 2.0)] {
        assert!((found - expected).abs() < 1e-9, "{found} % for {expected} %");
    }
}

/// Longer in the heat, more dye: the same pick at a slower belt and a hotter dryer.
#[test]
fn more_dwell_more_dye() {
    let order = order(BLEND).build();
    let pick = pick(&order, "tern");
    let forecast = library::pick_forecast(&order, library(), &pick).expect("an order").expect("dye");
    let set = pick.setting.expect("a setting");
    let dye = |times: f64, hotter: f64| {
        let at = Some(DialSetting { set_c: set.set_c + hotter, belt_m_per_min: set.belt_m_per_min * times });
        library::forecast_at(&forecast, at).expect("it integrates").expect("dye").ledger.heat_mg_per_m2
    };
    assert!(dye(0.8, 0.0) > dye(1.0, 0.0) && dye(1.0, 0.0) > dye(1.2, 0.0));
    assert!(dye(1.0, 10.0) > dye(1.0, 0.0));
}

#[test]
fn undyed_polyester_has_nothing_to_bleed() {
    let mut order = order(POLYESTER).build();
    order.garments[0].dyed_fibres = Some(Vec::new());
    let pick = pick(&order, "chalk");
    assert!(library::pick_forecast(&order, library(), &pick).expect("an order").is_none());
    assert!(library::oven_test(&order, library(), &pick, 24.0, 60.0).expect("an order").is_none());
}

/// Source: 24 h at 60 °C stand for 30 days at 25 °C at 80 kJ/mol and 43 days at 89, Arrhenius.
#[test]
fn an_oven_test_says_what_it_stands_for_and_what_it_does_not() {
    let order = order(POLYESTER).build();
    let pick = pick(&order, "tern");
    let test = |hours: f64, celsius: f64| {
        library::oven_test(&order, library(), &pick, hours, celsius).expect("an order").expect("dye")
    };
    let day = test(24.0, 60.0);
    assert!((day.film_days.likely - 29.7).abs() < 0.1 && (day.film_days.high - 43.5).abs() < 0.1, "{day:?}");
    assert!(day.cloth_days > 10.0 * day.film_days.likely);
    let (clean, stained) = (day.after_clean.expect("under 60"), day.after_stained.expect("under 60"));
    assert!(clean < day.before && day.before < stained, "{day:?}");
    // A longer test stains more of the lots that would stay white, so a clean piece may say a little less.
    let longer = test(72.0, 60.0);
    assert!(longer.power >= day.power && longer.after_clean.expect("under 60") <= clean + 2e-3, "{longer:?}");
    // The same lots stored in the oven instead: a test as long as storage finds every lot that turns in it, and accuses the lots
    // that turn only there, by the share of them among those that would have stayed white.
    let rules = library::job(&order, library()).expect("a sound order").rules;
    let turns = |store: f64, days: f64| {
        let mut order = order.clone();
        (order.use_.storage_c, order.use_.looked_at_after_days) = (store, days);
        let bleeds = 1.0 - forecast(&order, &pick).stays_white;
        (bleeds - rules.lapse) / (1.0 - 2.0 * rules.lapse)
    };
    let stored = turns(order.use_.storage_c, order.use_.looked_at_after_days);
    for days in [1.0, 10.0, 60.0] {
        let (found, oven) = (test(24.0 * days, 60.0), turns(60.0, days));
        let alarmed = ((oven - stored) / (1.0 - stored)).max(0.0);
        let false_alarm = rules.false_alarm + (1.0 - rules.false_alarm) * alarmed;
        let power = (rules.power_weeks * (oven / stored).min(1.0)).max(false_alarm);
        for (what, found, expected) in
            [("false alarms", found.false_alarm, false_alarm), ("power", found.power, power)]
        {
            assert!((found - expected).abs() < 0.01, "{days} days, {what}: {found} for {expected}");
        }
    }
    let hot = test(24.0, 80.0);
    assert!(hot.over_ceiling && hot.after_clean.is_none() && hot.after_stained.is_none());
    for (hours, celsius) in [(0.0, 60.0), (24.0, 200.0)] {
        assert!(
            library::oven_test(&order, library(), &pick, hours, celsius).is_err(),
            "{hours} h {celsius} °C"
        );
    }
}

/// Two kelvin never move the chance by more than one in ten, and hotter is never safer.
#[test]
fn the_chance_rises_smoothly_with_the_heat() {
    let order = order(POLYESTER).build();
    let pick = pick(&order, "gannet");
    let forecast = library::pick_forecast(&order, library(), &pick).expect("an order").expect("dye");
    let set = pick.setting.expect("a setting");
    let seen: Vec<(f64, f64, f64)> = (-4..=12)
        .map(|step| {
            let at = Some(DialSetting { set_c: set.set_c + 2.0 * f64::from(step), ..set.dialled() });
            let aged = library::forecast_at(&forecast, at).expect("it integrates").expect("dye");
            let at = on_the_day(&aged);
            (1.0 - aged.stays_white, aged.de00[at].likely, aged.turns_at_times)
        })
        .collect();
    let risen = seen.last().expect("seventeen heats").0 - seen[0].0;
    assert!(risen > 0.05, "nothing rises here, so nothing is tested: {seen:?}");
    for pair in seen.windows(2) {
        let risen = pair[1].0 - pair[0].0;
        assert!((-1e-6..0.1).contains(&risen), "{seen:?}");
        assert!(pair[1].2 <= pair[0].2, "hotter, nearer to full: {seen:?}");
    }
    // Where the likely case is on its limit, as many lots turn as stay white.
    for (chance, likely, times) in &seen {
        assert_eq!(
            *times > 1.0,
            *likely < pick.margins.iter().find(|it| it.what == Topic::Bleed).expect("a margin").limit
        );
        assert_eq!(*times > 1.0, *chance < 0.5, "{seen:?}");
    }
}
