//! Heat after the cure is held against cloth and film as any other heat.
//!
//! Source of the limits: `data/fibres.json` and `data/limits.json`; of the temperature at which a cloth yellows within some
//! seconds, the scorch index by hand: `1/T = 1/473.15 K - R/E ln(60 s / t)` with E 130 kJ/mol, which is 169.2 °C for 600 s and
//! 190.3 °C for 120 s.

use super::common::{an_order, best, number, reason, word};
use whitehold::plan::{Code, HeatEvent, Order, Report, Topic, Verdict};
use whitehold::wording::{Language, Units, Voice};

fn pressed(label: &str, events: &[(f64, f64)]) -> Order {
    let event = |&(temp_c, seconds): &(f64, f64)| HeatEvent { what: "pressed names".into(), temp_c, seconds };
    let order = an_order().label(label).shelf(&["chalk", "gannet", "hawser"]).pieces(24);
    order.print(|print| print.heat_after = events.iter().map(event).collect()).build()
}

fn answered(label: &str, events: &[(f64, f64)]) -> Report {
    super::common::answered(&pressed(label, events))
}

/// A row: label, presses (°C, s), the harm that is named, the limit in °C.
type Row = (&'static str, &'static [(f64, f64)], &'static str, f64);

#[test]
fn too_much_is_refused_by_name() {
    let cotton = "100% cotton jersey 180 gsm white";
    let rows: [Row; 10] = [
        (cotton, &[(260.0, 600.0)], "yellows", 169.2),
        (cotton, &[(190.0, 600.0)], "yellows", 169.2),
        // Each press alone would pass; together they leave half of the yellowing to each.
        (cotton, &[(195.0, 60.0), (195.0, 60.0)], "yellows", 190.3),
        ("100% nylon mesh 110 gsm green", &[(230.0, 15.0)], "melts", 215.0),
        ("100% nylon mesh 110 gsm green", &[(180.0, 15.0)], "softens", 170.0),
        // Of two presses the graver harm is named, whichever comes first.
        ("100% nylon mesh 110 gsm green", &[(180.0, 15.0), (230.0, 15.0)], "melts", 215.0),
        ("50% cotton 50% polyester jersey 185 gsm white", &[(260.0, 120.0)], "melts", 250.0),
        ("50% cotton 50% polyester jersey 185 gsm white", &[(190.0, 15.0)], "shrinks", 186.7),
        ("100% cotton jersey 180 gsm black", &[(222.0, 5.0)], "film", 220.0),
        ("100% polyester jersey 150 gsm white", &[(235.0, 10.0)], "softens", 230.0),
    ];
    for (label, events, harm, limit) in rows {
        let report = answered(label, events);
        assert_eq!((report.verdict, report.picks.len()), (Verdict::Refuse, 0), "{label} {events:?}");
        let told = report.to_make_it_possible.iter().find(|reason| reason.code == Code::LaterHeat);
        let told = told.unwrap_or_else(|| panic!("{label} {events:?}: {:?}", report.to_make_it_possible));
        assert_eq!(word(told, "harm"), harm, "{label} {events:?}: {told:?}");
        assert!((number(told, "limit") - limit).abs() < 0.06, "{label} {events:?}: {told:?}");
    }
}

/// Pressed names as shops press them. Source: common practice, no source: 150 to 165 °C for 10 to 20 s. The margin says
/// the limit that comes nearest, °C.
#[test]
fn what_a_shop_presses_is_no_reason_to_refuse() {
    let rows: [(&str, (f64, f64), f64, bool); 4] = [
        ("100% cotton jersey 180 gsm white", (160.0, 15.0), 220.0, false),
        ("50% cotton 50% polyester jersey 185 gsm white", (165.0, 15.0), 186.7, false),
        ("100% polyester jersey 150 gsm white", (175.0, 10.0), 186.7, true),
        ("100% nylon mesh 110 gsm green", (150.0, 10.0), 170.0, false),
    ];
    for (label, event, limit, near) in rows {
        let report = answered(label, &[event]);
        assert!(report.verdict < Verdict::Refuse, "{label}: {:?}", report.verdict);
        let pick = best(&report);
        let margin = pick.margin(Topic::LaterHeat).unwrap_or_else(|| panic!("{label}: no margin"));
        assert!((margin.limit - limit).abs() < 0.06 && margin.holds(), "{label}: {margin:?}");
        assert!((margin.value.likely - event.0).abs() < 1e-9, "{label}: {margin:?}");
        let told = reason(pick, Code::LaterHeat);
        assert_eq!(told.is_some(), near, "{label}: {told:?}");
    }
    let plain = answered("100% cotton jersey 180 gsm white", &[]);
    assert!(best(&plain).margin(Topic::LaterHeat).is_none(), "nothing is pressed");
}

/// One cloth, heated twice: what the press yellows is added to what the dryer yellows, which is run no hotter for it. By hand: 60 s at 190 °C are
/// exp(-130e3 / 8.314 (1/463.15 - 1/473.15)) = 0.490.
#[test]
fn yellowing_adds_up_over_dryer_and_press() {
    let label = "100% cotton jersey 180 gsm white";
    let [plain, pressed] = [&[][..], &[(190.0, 60.0)]].map(|events| {
        let report = answered(label, events);
        best(&report).margin(Topic::Scorch).unwrap_or_else(|| panic!("cotton yellows")).value.likely
    });
    let dryer = pressed - 0.490;
    assert!(dryer > 0.5 * plain && dryer < plain + 0.002, "{plain} and {pressed}");
}

/// Which heat and which limit, in plain words.
#[test]
fn the_reason_says_which_heat_and_which_limit() {
    let report = answered("100% cotton jersey 180 gsm white", &[(260.0, 600.0)]);
    let told = report.to_make_it_possible.iter().find(|reason| reason.code == Code::LaterHeat).expect("told");
    let rows = [
        (
            Language::En,
            "Later heat is too much. Pressed names, 260\u{a0}°C for 600\u{a0}s: in that time the cloth yellows from \
             169\u{a0}°C. Press cooler, or for less time.",
        ),
        (
            Language::Es,
            "El calor posterior es demasiado. Con pressed names, 260\u{a0}°C durante 600\u{a0}s: en ese tiempo la tela \
             amarillea desde 169\u{a0}°C. Planche más frío, o menos tiempo.",
        ),
    ];
    for (language, expected) in rows {
        assert_eq!(Voice { language, units: Units::Metric }.reason(told), expected);
    }
}
