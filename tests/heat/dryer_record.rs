//! What nobody measured follows from what can be seen of a dryer: its nozzles and its emitter; and a record that no
//! dryer can have is refused by the name of its field.

use whitehold::dryer::{Dryer, DryerRecord, Emission, Jets, Nozzles};
use whitehold::library::starter;
use whitehold::quantity::STEFAN_BOLTZMANN;

fn jets(nozzles: Nozzles, reach: f64, open_share: f64) -> Jets {
    Jets { nozzles, width: 0.010, distance: 0.010 * reach, open_share, speed: 10.0 }
}

/// Source: Martin's correlations (Incropera, Fundamentals of Heat and Mass Transfer, 6th ed., eqs 7.71 to 7.77, from
/// memory), evaluated independently in Python at Re 10,000 and Pr 0.7.
#[test]
fn nusselt_numbers_of_three_layouts() {
    let rows = [
        (jets(Nozzles::RoundArray, 6.0, 0.015), 33.209),
        (jets(Nozzles::Round, 6.0, 0.015), 41.250),
        (jets(Nozzles::Slots, 10.0, 0.03), 31.942),
    ];
    for (jets, expected) in rows {
        let found = jets.nusselt(1e4, 0.7).unwrap();
        assert!((found - expected).abs() < 1e-3, "{jets:?}: {found} for {expected}");
    }
}

/// Source: the same correlation with air properties of CoolProp 8.0.0 at the mean of 160 °C air and a print at 110 °C,
/// in Python: nozzles of 10 mm, six diameters away, 1.5 % open. Speed m/s, h W/(m² K).
#[test]
fn transfer_of_an_array() {
    for (speed, expected) in [(10.0, 59.0), (20.0, 94.0), (30.0, 124.0)] {
        let found = Jets { speed, ..jets(Nozzles::RoundArray, 6.0, 0.015) }.transfer(433.15).unwrap();
        assert!((found / expected - 1.0).abs() < 0.02, "{speed} m/s: {found} for {expected}");
    }
}

/// Outside its range a correlation gives no number, and says which field left it.
#[test]
fn a_correlation_keeps_to_its_range() {
    let array = jets(Nozzles::RoundArray, 6.0, 0.015);
    let rows = [
        ("speed", Jets { speed: 5.0, ..array }),
        ("speed", Jets { speed: 1000.0, ..array }),
        ("speed", Jets { speed: f64::NAN, ..array }),
        ("distance", Jets { distance: 0.001, ..array }),
        ("open_share", Jets { open_share: 0.2, ..array }),
        ("open_share", Jets { open_share: 0.001, ..jets(Nozzles::Slots, 10.0, 0.03) }),
    ];
    for (field, jets) in rows {
        assert_eq!(jets.transfer(433.15).unwrap_err().field, field, "{jets:?}");
    }
}

/// Source: Incropera, 6th ed., example 13.6, p. 836 (from an open companion to the book: 37 kW/m and 1102 K). A
/// triangular oven 1 m wide: a wall of 1200 K and emissivity 0.8 over painted panels of 500 K and 0.4, the third wall
/// re-radiating; each sees half of the other.
#[test]
fn a_paint_baking_oven() {
    let oven = Emission { emissivity: 0.8, area_share: 1.0, view: 0.5 };
    let (hot, paint) = (1200.0_f64, 500.0_f64);
    let flux = oven.exchange_with(0.4).unwrap() * STEFAN_BOLTZMANN * (hot.powi(4) - paint.powi(4));
    assert!((flux / 1e3 - 36.982).abs() < 0.05, "{flux} W/m");
    let walls = oven.walls(hot, paint, 0.4).unwrap();
    assert!((walls - 1102.17).abs() < 0.1, "{walls} K");
}

/// Source: two endless parallel plates exchange `1 / (1/e1 + 1/e2 - 1)` (any textbook; exact).
#[test]
fn plates_face_to_face() {
    for (emitter, print) in [(0.9, 0.9), (0.8, 0.4), (1.0, 0.5)] {
        let plates = Emission { emissivity: emitter, area_share: 1.0, view: 1.0 };
        let exact = 1.0 / (1.0 / emitter + 1.0 / print - 1.0);
        let found = plates.exchange_with(print).unwrap();
        assert!((found - exact).abs() < 1e-12, "{found} for {exact}");
    }
}

fn kiln() -> serde_json::Value {
    serde_json::to_value(starter().unwrap().dryer("long-kiln").unwrap()).unwrap()
}

fn sourced(value: f64) -> serde_json::Value {
    serde_json::json!({ "value": value, "unit": "1", "range": [value, value], "source": "test" })
}

fn read(record: serde_json::Value) -> Result<Dryer, Vec<String>> {
    let record: DryerRecord = serde_json::from_value(record).unwrap();
    Dryer::from_record(&record).map_err(|errors| errors.into_iter().map(|error| error.field).collect())
}

/// Each row breaks one field; the record is refused by that field's path.
#[test]
fn a_record_is_refused_by_its_field() {
    type Break = fn(&mut serde_json::Value);
    let rows: [(&str, Break); 11] = [
        ("zones[0].length", |kiln| kiln["zones"][0]["length"]["value"] = 0.0.into()),
        ("zones[0].length", |kiln| kiln["zones"][0]["length"]["value"] = (-1.8).into()),
        ("zones[0].h_top", |kiln| kiln["zones"][0]["h_top"]["value"] = 0.0.into()),
        ("zones[0].h_top", |kiln| kiln["zones"][0]["h_top"] = serde_json::Value::Null),
        ("zones[0].exchange_factor", |kiln| kiln["zones"][0]["exchange_factor"]["value"] = 1.5.into()),
        ("zones[0].panel_offset", |kiln| kiln["zones"][0]["panel_offset"] = serde_json::Value::Null),
        ("zones", |kiln| kiln["zones"] = serde_json::json!([])),
        ("set_c", |kiln| kiln["set_c"] = serde_json::json!([220, 110])),
        ("belt.speed_m_per_min", |kiln| kiln["belt"]["speed_m_per_min"] = serde_json::json!([0, 6])),
        ("humidity_ratio", |kiln| kiln["humidity_ratio"]["value"] = 3.0.into()),
        ("drift.stop", |kiln| kiln["drift"]["stop"]["value"] = 1e9.into()),
    ];
    for (field, broken) in rows {
        let mut record = kiln();
        broken(&mut record);
        let found = read(record).unwrap_err();
        assert!(found.iter().any(|found| found == field), "{field}: {found:?}");
    }
    assert!(read(kiln()).is_ok());
}

/// Jets and geometry stand in for measured numbers; over the dial the line that the march uses is the correlation.
#[test]
fn a_record_without_measurements() {
    let mut record = kiln();
    record["zones"][0]["h_top"] = serde_json::Value::Null;
    record["zones"][0]["jets_top"] = serde_json::json!({
        "nozzles": "round-array", "width": sourced(0.010), "distance": sourced(0.060),
        "open_share": sourced(0.015), "speed": sourced(10.0),
    });
    record["zones"][0]["exchange_factor"] = serde_json::Value::Null;
    record["zones"][0]["emission"] =
        serde_json::json!({ "emissivity": sourced(0.9), "area_share": sourced(0.4), "view": sourced(0.35) });
    let dryer = read(record).unwrap();
    let zone = &dryer.zones[0];
    let array = jets(Nozzles::RoundArray, 6.0, 0.015);
    for air in [383.15, 410.0, 440.0, 470.0, 493.15] {
        let exact = array.transfer(air).unwrap();
        let found = zone.h_top.in_air(air);
        assert!((found / exact - 1.0).abs() < 0.003, "{air} K: {found} for {exact}");
    }
    let exchange = Emission { emissivity: 0.9, area_share: 0.4, view: 0.35 }.exchange().unwrap();
    assert!((zone.exchange - exchange).abs() < 1e-15 && exchange < 0.4, "{exchange}");
}
