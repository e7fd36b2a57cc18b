//! What the test programs share: one builder for orders, the library that ships, the demo print room's orders, and how a
//! value is read off a reason.
#![allow(dead_code, unused_imports)] // each program uses its part

mod order_builder;
pub mod ten_orders;

pub use order_builder::{OrderBuilder, an_order};

use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock, Mutex, OnceLock};
use whitehold::library::{Library, answer, forecast_at, harbour_lane, pick_forecast, starter};
use whitehold::plan::{BleedForecast, Code, Order, Pick, Reason, Report, Value};

/// The library that ships, parsed once.
pub fn library() -> &'static Library {
    static LIBRARY: LazyLock<Library> = LazyLock::new(|| starter().expect("the starter library parses"));
    &LIBRARY
}

/// Number and order of each row of the demo print room, as they ship.
pub fn demo_orders() -> &'static [(String, Order)] {
    static ORDERS: LazyLock<Vec<(String, Order)>> = LazyLock::new(|| {
        let room = harbour_lane().expect("the demo print room parses");
        room.orders.into_iter().map(|row| (row.id, row.order)).collect()
    });
    &ORDERS
}

/// The order of the demo print room that has this number.
pub fn demo_order(id: &str) -> Order {
    let found = demo_orders().iter().find(|(number, _)| number == id);
    found.unwrap_or_else(|| panic!("no demo order {id}")).1.clone()
}

/// The answer to an order over the library that ships. Each order is answered once a program: an answer depends on nothing
/// but its order and the library (`tests/answers/memory.rs`).
pub fn answered(order: &Order) -> Report {
    static KNOWN: Mutex<BTreeMap<String, Arc<OnceLock<Report>>>> = Mutex::new(BTreeMap::new());
    // As a program prints it, because two orders that differ may be written to JSON alike.
    let known =
        KNOWN.lock().expect("no thread panics with it").entry(format!("{order:?}")).or_default().clone();
    let report = known
        .get_or_init(|| answer(order, library()).unwrap_or_else(|errors| panic!("{order:?}: {errors:?}")));
    report.clone()
}

/// How the white of a pick ages, at its own set point.
pub fn forecast(order: &Order, pick: &Pick) -> BleedForecast {
    let prepared = pick_forecast(order, library(), pick).expect("a sound order").expect("dye that travels");
    forecast_at(&prepared, None).expect("it integrates").expect("an open window")
}

/// The first pick of an answer.
pub fn best(report: &Report) -> &Pick {
    report.picks.first().unwrap_or_else(|| panic!("no pick: {report:?}"))
}

/// The reason of a pick that has this code.
pub fn reason(pick: &Pick, code: Code) -> Option<&Reason> {
    pick.reasons.iter().find(|reason| reason.code == code)
}

/// A number that a reason carries.
pub fn number(reason: &Reason, name: &str) -> f64 {
    match reason.values.get(name) {
        Some(Value::Number(number)) => *number,
        other => panic!("{:?}: {name} is {other:?}", reason.code),
    }
}

/// A word that a reason carries.
pub fn word<'r>(reason: &'r Reason, name: &str) -> &'r str {
    match reason.values.get(name) {
        Some(Value::Word(word)) => word,
        other => panic!("{:?}: {name} is {other:?}", reason.code),
    }
}
