//! The release wasm in a browser: the same numbers as natively, the JS API, the desk in a page, and the store over the
//! browser's own database.
//!
//! Fat LTO, 128-bit vectors and held-back inlining are used here and nowhere else, so the numbers are checked here too.
#![cfg(target_arch = "wasm32")]

mod pace;
mod storage_bench;
mod store;
#[path = "../common/ten_orders.rs"]
mod ten_orders;

use js_sys::{Array, Reflect};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use whitehold::cure::fuse;
use whitehold::dryer::{Case, DriftCase, Dryer, Film, Stack, TOLERANCE, history};
use whitehold::ink::CureKinetics;
use whitehold::library::{answer, cure_kinetics, harbour_lane, starter};
use whitehold::numerics::Lanes;
use whitehold::quantity::Share;
use whitehold::textile::moisture::saturation_pressure;
use whitehold::textile::{Construction, Fibre};
use whitehold::web::api;

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn knows_its_version() {
    assert_eq!(whitehold::web::version(), env!("CARGO_PKG_VERSION"));
}

/// Source: the standard library's `exp` and `ln`.
#[wasm_bindgen_test]
fn lanes_compute_as_the_standard_library_does() {
    for step in -600..600 {
        let x = f64::from(step) * 1.1 + 0.01;
        assert!((Lanes::<8>::splat(x).exp()[3] / x.exp() - 1.0).abs() < 3e-14, "exp({x})");
        let y = (x * 0.1).exp();
        assert!((Lanes::<8>::splat(y).ln()[5] - x * 0.1).abs() < 1e-12, "ln({y})");
    }
}

/// Source: IAPWS-IF97, table 35: 3536.58941 Pa at 300 K, 2.63889776 MPa at 500 K; the fit is within 0.02 %.
#[wasm_bindgen_test]
fn steam_has_its_table() {
    let [cool, hot] = saturation_pressure(Lanes([300.0, 500.0])).0;
    assert!((cool / 3_536.589_41 - 1.0).abs() < 2e-4, "{cool}");
    assert!((hot / 2.638_897_76e6 - 1.0).abs() < 2e-4, "{hot}");
}

/// Source: the same equations solved by SciPy's LSODA (`tests/peer/rows.py`): cotton jersey of 150 g/m² (dry) fuses in
/// 38.2 s at 175 °C air and 400 °C panel, for the ink of that reference. Here a lane either side of it, in eight lanes.
#[wasm_bindgen_test]
fn a_history_fuses_when_another_solver_says() {
    let library = starter().unwrap();
    let dryer = Dryer::from_record(library.dryer("long-kiln").unwrap()).unwrap();
    let cotton = [(Fibre::Cotton, 1.0)].into();
    // Dry mass is what the solver was given: the label's weight holds the regain as well.
    let cloth = library.fabric(&cotton, Construction::Jersey, 150.0 * 1.075).unwrap();
    let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &cloth, Share(0.65));
    let cases: [Case; 8] = std::array::from_fn(|lane| Case {
        set: 448.15,
        belt: 1.8 / (34.4 + lane as f64),
        drift: DriftCase::NOMINAL,
    });
    let history = history(&stack, &dryer, &cases, 1, TOLERANCE).unwrap();
    let ships = cure_kinetics(library.kinetics_record("ordinary").unwrap());
    let kinetics = CureKinetics { half_fused: 421.15, fusion_time: 6.0, ..ships };
    let fused = fuse(&history, |sample| sample.film_bottom, &kinetics).fused;
    assert!(fused[1] < 0.90 && fused[5] > 0.90, "{fused:?}");
}

#[wasm_bindgen_test]
fn the_week_is_answered() {
    let library = starter().unwrap();
    let room = harbour_lane().unwrap();
    for row in ten_orders::rows() {
        let order = &room.orders.iter().find(|order| order.id == row.id).unwrap().order;
        let report = answer(order, &library).unwrap();
        assert_eq!(report.verdict, row.verdict, "{} {}: {}", row.id, row.order, row.why);
        let white = report.picks.first().map(|pick| &pick.white);
        assert!(
            white.map_or(row.first.is_empty(), |white| row.first.contains(white)),
            "{}: {white:?}",
            row.id
        );
    }
}

fn at(value: &JsValue, path: &[&str]) -> JsValue {
    path.iter().fold(value.clone(), |here, name| Reflect::get(&here, &JsValue::from_str(name)).unwrap())
}

/// Source: ISO 105-A04 as public implementations quote it, worked in Python: a stain from (95, −0.5, 2) to (94, 1.5, 1)
/// has ΔE*ab 2.4495 and is a grade 4-5.
#[wasm_bindgen_test]
fn a_page_compares_colours() {
    let clean: JsValue = [95.0, -0.5, 2.0].map(JsValue::from_f64).iter().collect::<Array>().into();
    let found = api::colour_difference(&clean, &"94, 1.5, 1".into(), None).unwrap();
    assert!((at(&found, &["de_ab"]).as_f64().unwrap() - 2.4495).abs() < 1e-4, "{found:?}");
    assert_eq!(at(&found, &["staining", "step"]).as_string().as_deref(), Some("4-5"));
    let grade = api::staining(&clean, &"94, 1.5, 1".into(), None).unwrap();
    assert_eq!(at(&grade, &["step"]).as_string().as_deref(), Some("4-5"));

    let errors = api::colour_difference(&clean, &"138, 0, 0".into(), None).unwrap_err();
    assert_eq!(at(&errors, &["0", "field"]).as_string().as_deref(), Some("other.lab"));
    assert!(at(&errors, &["0", "message"]).as_string().unwrap().contains("100"));
}

#[wasm_bindgen_test]
fn a_page_reads_a_meter_s_file() {
    let found = api::read_meter("Name;L*;a*;b*\nred;38,2;58;35\n", None).unwrap();
    assert_eq!(at(&found, &["samples", "0", "name"]).as_string().as_deref(), Some("red"));
    assert_eq!(at(&found, &["samples", "0", "lab", "0"]).as_f64(), Some(38.2));
    let errors = api::read_meter("Name;L*;a*;b*\nred;38;x;35\n", None).unwrap_err();
    assert_eq!(at(&errors, &["0", "line"]).as_f64(), Some(2.0));
    assert_eq!(at(&errors, &["0", "column"]).as_f64(), Some(8.0));
}

/// Not a check: `cargo xtask bench --only wasm` runs it and sets it beside the native figures.
#[wasm_bindgen_test]
#[ignore = "a bench"]
fn march_bench() {
    let library = starter().unwrap();
    let dryer = Dryer::from_record(library.dryer("long-kiln").unwrap()).unwrap();
    let now = || js_sys::eval("performance.now()").unwrap().as_f64().unwrap();
    let [alone, beside] = pace::pace(&library, &dryer, now);
    wasm_bindgen_test::console_log!(
        "wasm: one history alone {alone:.1} µs, one of eight side by side {beside:.1} µs"
    );
    for (white, took) in pace::forecasts(&library, now) {
        wasm_bindgen_test::console_log!("wasm: a 90-day forecast over all worlds, {white}: {took:.2} ms");
    }
}
