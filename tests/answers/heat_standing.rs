//! Heat has its say in every verdict, and one setting has one verdict wherever it comes from.
//!
//! Source of what is accepted: common practice, no source. That raw ink washes off, and that cloth and film are ruined far
//! over their limits, no press lead doubts.

use super::common::{OrderBuilder, an_order, answered, demo_orders, library, number, reason};
use whitehold::library::{forecast_at, pick_forecast, pick_window, report_at};
use whitehold::plan::{Code, DialSetting, Order, Pick, Topic, Verdict, WindowReport};

const COTTON: &str = "100% cotton jersey 180 gsm black";
const BLEND: &str = "50% cotton 50% polyester jersey 170 gsm navy";

fn order(label: &str, white: &str) -> OrderBuilder {
    an_order().label(label).pieces(72).worth(9.0).shelf(&[white]).humidity(60.0)
}

/// The setting that gives a dwell in the heat, s.
fn dial(set_c: f64, dwell: f64) -> DialSetting {
    DialSetting { set_c, belt_m_per_min: 1.8 / dwell * 60.0 }
}

fn at(order: &Order, pick: &Pick, at: Option<DialSetting>) -> WindowReport {
    let window = pick_window(order, library(), pick).expect("a pick of this order");
    report_at(pick, &window, at).expect("it integrates")
}

/// Cloth, white, °C, s, and the verdicts that a press lead would accept there.
#[test]
fn a_dragged_setting_is_judged_by_its_heat() {
    use Verdict::{Go, GoWithCheck, Refuse, Trial};
    let rows = [
        (COTTON, "chalk", 112.0, 12.0, &[Refuse][..], "raw ink"),
        (BLEND, "gannet", 112.0, 12.0, &[Refuse], "raw ink, whatever the dye does"),
        (COTTON, "chalk", 140.0, 30.0, &[Refuse], "the film never comes near what it needs"),
        (COTTON, "chalk", 220.0, 140.0, &[Refuse], "the cloth is brown and the film smokes"),
        (COTTON, "chalk", 168.0, 55.0, &[Go], "an everyday setting"),
        (
            COTTON,
            "chalk",
            160.0,
            40.0,
            &[GoWithCheck, Trial, Refuse],
            "at the edge: a drift of 5 K leaves it raw",
        ),
    ];
    for (label, white, set, dwell, accepted, why) in rows {
        let order = order(label, white).build();
        let report = answered(&order);
        let pick = report.picks.first().unwrap_or_else(|| panic!("{label}, {white}: no pick"));
        let window = at(&order, pick, Some(dial(set, dwell)));
        assert!(
            accepted.contains(&window.verdict),
            "{label}, {set} °C, {dwell} s ({why}): {:?}",
            window.verdict
        );
        if let Some(prepared) = pick_forecast(&order, library(), pick).expect("a sound order") {
            let forecast =
                forecast_at(&prepared, Some(dial(set, dwell))).expect("it integrates").expect("open");
            assert_eq!(forecast.verdict, window.verdict, "{label}, {set} °C, {dwell} s: the forecast");
        }
    }
}

/// A pick, its window, its forecast and its own setting typed in again are the same setting: one verdict, one chance.
#[test]
fn one_setting_has_one_verdict() {
    let fixed = |order: OrderBuilder, set: f64| order.shop(|shop| shop.dryer_fixed = Some(set)).build();
    let more = [
        fixed(order(COTTON, "chalk"), 150.0),
        fixed(order(COTTON, "chalk"), 175.0),
        fixed(order(BLEND, "gannet"), 145.0),
        order("100% cotton fleece 320 gsm black", "chalk").dryer("short-stove").build(),
        order("100% nylon mesh 110 gsm kelly green", "hawser").dryer("gas-galley").build(),
    ];
    let mut compared = 0;
    for order in demo_orders().iter().map(|(_, order)| order).chain(&more) {
        let report = answered(order);
        for pick in &report.picks {
            let label = &order.garments[pick.garment].label;
            let own = pick.setting.expect("a pick has a setting").dialled();
            let window = pick_window(order, library(), pick).expect("a pick of this order");
            for at in [None, Some(own)] {
                let window = report_at(pick, &window, at).expect("it integrates");
                assert_eq!(window.verdict, pick.verdict, "{label}, {}", pick.white);
                assert!(
                    (window.fail_later.likely - pick.fail_later.likely).abs() < 1e-3,
                    "{label}, {}",
                    pick.white
                );
            }
            if let Some(prepared) = pick_forecast(order, library(), pick).expect("a sound order") {
                let forecast = forecast_at(&prepared, Some(own)).expect("it integrates").expect("open");
                assert_eq!(forecast.verdict, pick.verdict, "{label}, {}: the forecast", pick.white);
            }
            compared += 1;
        }
    }
    assert!(compared > 15, "{compared} picks");
}

/// Nothing bleeds on cotton: what is left of the chance is the under-cure, and it falls with heat and with time.
#[test]
fn hotter_and_longer_leave_less_under_cure() {
    let order = order(COTTON, "chalk").build();
    let report = answered(&order);
    let pick = &report.picks[0];
    let window = pick_window(&order, library(), pick).expect("a pick of this order");
    let chance = |set: f64, dwell: f64| {
        report_at(pick, &window, Some(dial(set, dwell))).expect("it integrates").fail_later.likely
    };
    for dwell in [30.0, 45.0, 70.0] {
        for set in [140.0, 148.0, 156.0, 164.0, 172.0, 180.0] {
            let here = chance(set, dwell);
            assert!(chance(set + 4.0, dwell) <= here + 1e-9, "hotter than {set} °C, {dwell} s");
            assert!(chance(set, dwell * 1.1) <= here + 1e-9, "longer than {dwell} s at {set} °C");
        }
    }
    assert!(chance(140.0, 30.0) > 0.9 && chance(180.0, 70.0) < 0.017, "raw at one end, sound at the other");
}

/// The first reason never says "it may not fuse" under a go, and where it says so it says how likely.
#[test]
fn a_go_never_leads_with_a_film_that_may_not_fuse() {
    for added in [0.0, 15.0, 90.0] {
        for label in [COTTON, "80% cotton 20% polyester fleece 280 gsm grey"] {
            for dryer in ["long-kiln", "gas-galley", "short-stove"] {
                let report =
                    an_order().label(label).pieces(72).every_white().soaked(added).dryer(dryer).answered();
                for pick in &report.picks {
                    let case = format!("{label}, +{added} %, {dryer}, {}: {:?}", pick.white, pick.verdict);
                    let fused = pick.margin(Topic::Fusion).expect("every print fuses").value;
                    let short = reason(pick, Code::FusionShort);
                    if pick.verdict == Verdict::Go {
                        assert!(fused.likely >= 90.0 && fused.low >= 50.0, "{case}: {fused:?}");
                        assert!(
                            pick.reasons.first().map(|reason| reason.code) != Some(Code::FusionShort),
                            "{case}"
                        );
                    }
                    if let Some(short) = short {
                        assert!(number(short, "chance") <= 50.0, "{case}: {short:?}");
                    }
                }
            }
        }
    }
}
