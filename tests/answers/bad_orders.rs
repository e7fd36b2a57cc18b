//! Bad input is answered by name: which field, what stood there, what is accepted. Nothing panics.

use super::common::{answered, demo_order, library};
use proptest::prelude::*;
use whitehold::library::{answer, window};
use whitehold::plan::{DialSetting, Garment, Order};
use whitehold::quantity::Problem;

fn order_with(change: impl FnOnce(&mut Order)) -> Order {
    let mut order = demo_order("1185");
    change(&mut order);
    order
}

/// An order, the field it breaks, and how.
type Row = (Order, &'static str, fn(&Problem) -> bool);

#[test]
fn each_bad_field_is_named() {
    let garment = |change: fn(&mut Garment)| order_with(|order| change(&mut order.garments[0]));
    let rows: Vec<Row> = vec![
        (garment(|g| g.label = "80% cotton 40% polyester".into()), "garments[0].label", |p| {
            matches!(p, Problem::SumNot100 { .. })
        }),
        (garment(|g| g.label = String::new()), "garments[0].label", |p| matches!(p, Problem::Empty)),
        (garment(|g| g.label = "97% cottn 3% unobtainium".into()), "garments[0].label", |p| {
            matches!(p, Problem::Unknown { .. })
        }),
        (garment(|g| g.areal_weight_gsm = Some(-5.0)), "garments[0].areal_weight_gsm", |p| {
            matches!(p, Problem::OutOfRange { .. })
        }),
        (garment(|g| g.areal_weight_gsm = Some(f64::NAN)), "garments[0].areal_weight_gsm", |p| {
            matches!(p, Problem::NotANumber)
        }),
        (garment(|g| g.areal_weight_gsm = Some(1e300)), "garments[0].areal_weight_gsm", |p| {
            matches!(p, Problem::OutOfRange { .. })
        }),
        (garment(|g| g.pieces = 0), "garments[0].pieces", |p| matches!(p, Problem::OutOfRange { .. })),
        (garment(|g| g.colour.name = "blurple".into()), "garments[0].colour.name", |p| {
            matches!(p, Problem::Unknown { .. })
        }),
        (
            garment(|g| g.colour.lab = Some([20.0, 60.0, 104.0])),
            "garments[0].colour.lab",
            |p| matches!(p, Problem::OutOfRange { unit, .. } if unit == "C*"),
        ),
        (garment(|g| g.colour.lab = Some([120.0, 0.0, 0.0])), "garments[0].colour.lab", |p| {
            matches!(p, Problem::OutOfRange { .. })
        }),
        (order_with(|o| o.shop.humidity_percent = f64::INFINITY), "shop.humidity_percent", |p| {
            matches!(p, Problem::NotANumber)
        }),
        (
            order_with(|o| o.shop.dryer = "long-kilm".into()),
            "shop.dryer",
            |p| matches!(p, Problem::Unknown { nearest, .. } if nearest.iter().any(|n| n == "long-kiln")),
        ),
        (
            order_with(|o| o.shop.shelf = vec!["chalc".into()]),
            "shop.shelf",
            |p| matches!(p, Problem::Unknown { nearest, .. } if nearest.iter().any(|n| n == "chalk")),
        ),
        (order_with(|o| o.shop.dryer_fixed = Some(330.0)), "shop.dryer_fixed", |p| {
            matches!(p, Problem::OutOfRange { .. })
        }),
        (order_with(|o| o.garments.clear()), "garments", |p| matches!(p, Problem::Empty)),
        (order_with(|o| o.print.colours_on_top.count = 13), "print.colours_on_top.count", |p| {
            matches!(p, Problem::OutOfRange { .. })
        }),
        (order_with(|o| o.print.coverage_percent = 0.0), "print.coverage_percent", |p| {
            matches!(p, Problem::OutOfRange { .. })
        }),
    ];
    for (order, field, expected) in rows {
        let errors = answer(&order, library()).expect_err(field);
        let error = errors.iter().find(|error| error.field == field);
        assert!(error.is_some_and(|error| expected(&error.problem)), "{field}: {errors:?}");
    }
}

#[test]
fn an_empty_shelf_and_a_wrong_one_have_their_sentences() {
    use whitehold::plan::{Code, Verdict};
    let empty = answered(&order_with(|order| order.shop.shelf.clear()));
    assert_eq!(empty.verdict, Verdict::Refuse);
    assert!(empty.to_make_it_possible.iter().any(|reason| reason.code == Code::ShelfEmpty));
    let wrong = order_with(|order| {
        order.garments[0].label = "100% polyester interlock, 150 g/m2".into();
        order.garments[0].colour.name = "red".into();
        order.shop.shelf = vec!["chalk".into()];
    });
    let wrong = answered(&wrong);
    assert_eq!(wrong.verdict, Verdict::Refuse);
    assert!(
        wrong.to_make_it_possible.iter().any(|reason| reason.code == Code::BuyClass),
        "{:?}",
        wrong.to_make_it_possible
    );
}

#[test]
fn an_unknown_field_of_a_newer_order_is_kept() {
    let order = order_with(|_| {});
    let mut json = serde_json::to_value(&order).expect("writes");
    json["rip_stop"] = serde_json::json!({ "spacing_mm": 5 });
    let read: Order = serde_json::from_value(json.clone()).expect("reads");
    assert_eq!(serde_json::to_value(&read).expect("writes")["rip_stop"], json["rip_stop"]);
    json["garments"][0]["colour"]["shade"] = serde_json::json!("x");
    let error = serde_json::from_value::<Order>(json).expect_err("unknown field inside a record");
    assert!(error.to_string().contains("shade"), "{error}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 8, ..ProptestConfig::default() })]
    /// Any cloth, shelf and shop within the bounds gets an answer or an error by name; never a panic, never a NaN.
    #[test]
    fn every_order_within_bounds_has_an_answer(
        cotton in 0u32..=100, weight in 20.0..600.0f64, humidity in 0.0..100.0f64,
        water in prop_oneof![Just(0.0), 0.0..100.0f64],
        passes in 1u32..=4, dryer in 0usize..3, colour in 0usize..4, area in 1.0..20_000.0f64, reducer in 0.0..30.0f64,
    ) {
        let order = order_with(|order| {
            let garment = &mut order.garments[0];
            garment.label = format!("{cotton}% cotton {}% polyester", 100 - cotton);
            garment.areal_weight_gsm = Some(weight);
            garment.added_water_percent = water;
            garment.colour.name = ["white", "red", "black", "pink"][colour].into();
            order.shop.humidity_percent = humidity;
            order.shop.passes = passes;
            order.shop.dryer = library().dryers[dryer].id.clone();
            order.print.area_cm2 = area;
            order.print.reducer_percent = reducer;
        });
        let report = answered(&order);
        for pick in &report.picks {
            prop_assert!(pick.fail_later.likely.is_finite() && (0.0..=1.0).contains(&pick.fail_later.likely));
            prop_assert!(pick.cost_per_print.likely.is_finite());
            for margin in &pick.margins {
                prop_assert!(margin.value.low.is_finite() && margin.value.high.is_finite(), "{:?}", margin);
                prop_assert!(margin.value.low <= margin.value.likely && margin.value.likely <= margin.value.high);
            }
        }
        prop_assert!(!report.picks.is_empty() || !report.to_make_it_possible.is_empty());
    }
}

/// A mesh whose thread fills its pitch cannot be woven; an order over such a library is refused by the mesh's name.
#[test]
fn an_impossible_mesh_is_named() {
    let mut library = library().clone();
    let mesh = library.meshes.first_mut().unwrap();
    mesh.thread.value = 1e4 / mesh.threads_per_cm.value;
    let id = mesh.id.clone();
    let order = order_with(|_| {});
    let errors = answer(&order, &library).unwrap_err();
    assert_eq!(errors[0].field, format!("meshes.{id}.thread"), "{errors:?}");
}

/// Heat that the equations do not cover is no text that could not be read, and no fault of the first garment.
#[test]
fn a_setting_beyond_the_equations_is_said_not_to_be_computed() {
    let order = demo_order("1185");
    let pick = &answered(&order).picks[0];
    for set_c in [-200.0, 5000.0, f64::NAN] {
        let at = DialSetting { set_c, belt_m_per_min: 2.0 };
        let errors = window(&order, library(), pick, Some(at)).unwrap_err();
        let [error] = errors.as_slice() else { panic!("{errors:?}") };
        assert_eq!(
            (error.field.as_str(), &error.problem),
            ("order", &Problem::NotSolved),
            "{set_c}: {error}"
        );
    }
}
