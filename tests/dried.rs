//! Drying first is offered where the dried cloth itself would get the better answer, and only there.
//!
//! The dried cloth is asked as an order of its own: polyester holds next to no water of its own, so that drying takes off
//! what was added and nothing else.

use whitehold::library::{answer, starter};
use whitehold::plan::{Code, Garment, Order, Report, Value};

fn asked(label: &str, added_water_percent: f64, white: &str) -> Report {
    let library = starter().expect("the starter library parses");
    let mut order = Order {
        garments: vec![Garment {
            label: label.into(),
            pieces: 72,
            value_each: 14.0,
            added_water_percent,
            ..Garment::default()
        }],
        ..Order::default()
    };
    order.shop.shelf = vec![white.into()];
    order.shop.dryer = "long-kiln".into();
    order.shop.humidity_percent = 60.0;
    answer(&order, &library).unwrap_or_else(|errors| panic!("{label}: {errors:?}"))
}

/// The verdict that drying first is said to lead to.
fn offered(report: &Report) -> Option<String> {
    let reason = report.to_make_it_possible.iter().find(|reason| reason.code == Code::IfDried)?;
    match reason.values.get("verdict") {
        Some(Value::Word(word)) => Some(word.clone()),
        other => panic!("no verdict, but {other:?}"),
    }
}

#[test]
fn what_is_offered_is_what_the_dried_cloth_gets() {
    let cases = [
        ("100% polyester mesh 140 gsm navy", 40.0, "tern", true),
        ("100% polyester mesh 140 gsm navy", 40.0, "gannet", true),
        ("100% polyester mesh 140 gsm navy", 0.0, "tern", false),
        ("100% polyester mesh 140 gsm navy", 0.0, "gannet", false),
        // Drying does not help a white that binds too little.
        ("100% polyester mesh 140 gsm navy", 40.0, "plover", false),
        // Nothing bleeds: no drying makes a go better.
        ("100% cotton jersey 150 gsm black", 15.0, "tern", false),
    ];
    for (label, added, white, expected) in cases {
        let wet = asked(label, added, white);
        let found = offered(&wet);
        assert_eq!(found.is_some(), expected, "{label} +{added} %, {white}: {:?} {found:?}", wet.verdict);
        let Some(found) = found else { continue };
        let dried = asked(label, 0.0, white).verdict;
        assert!(dried < wet.verdict, "{label}, {white}: {dried:?} dried, {:?} wet", wet.verdict);
        let dried = serde_json::to_value(dried).expect("a verdict is a word");
        assert_eq!(dried, serde_json::Value::String(found), "{label}, {white}");
    }
}
