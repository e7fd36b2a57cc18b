//! Writes every answer as text, so that two versions of the project can be compared: `diff -r before after`.
//!
//! `cargo run -p whitehold-bench --example answers -- DIRECTORY [ORDERS.json ...]`
//!
//! For each order of the demo's week, and of each further file (a list of `{ "id", "order" }`): the report in both
//! languages, and for every pick its window, forecast, oven test and job sheet. A change that is meant to change no answer
//! leaves the directory byte for byte as it was.

#![allow(clippy::unwrap_used)]

use serde_json::{Value, json};
use std::path::Path;
use std::sync::Arc;
use whitehold::desk::job_sheet::JobSheet;
use whitehold::desk::records::{Clock, RecordsMsg};
use whitehold::desk::{Answer, Draft, Effect, Msg, Screen, State, update};
use whitehold::library::storage_layout::Contents;
use whitehold::library::{self, Library, harbour_lane, starter};
use whitehold::plan::{Order, Report};
use whitehold::wording::{self, Language, Units, Voice};

/// A Wednesday: 25 November 2026, 10:00 UTC.
const NOW: i64 = 1_795_600_800_000;

const VOICES: [(&str, Voice); 2] = [
    ("en", Voice { language: Language::En, units: Units::Metric }),
    ("es", Voice { language: Language::Es, units: Units::Us }),
];

fn main() {
    let mut arguments = std::env::args().skip(1);
    let directory = arguments.next().unwrap_or_else(|| "dist/answers".into());
    std::fs::create_dir_all(&directory).unwrap();
    let library = Arc::new(starter().unwrap());
    let demo = harbour_lane().unwrap().orders.into_iter().map(|had| (had.id, had.order));
    let mut orders: Vec<(String, Order)> = demo.collect();
    for file in arguments {
        let rows: Vec<Value> = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
        for row in rows {
            let id = row["id"].as_str().unwrap().to_owned();
            orders.push((id, serde_json::from_value(row["order"].clone()).unwrap()));
        }
    }
    for (id, order) in &orders {
        let written = serde_json::to_string_pretty(&everything(order, &library)).unwrap();
        std::fs::write(Path::new(&directory).join(format!("{id}.json")), written + "\n").unwrap();
    }
    println!("{} orders written to {directory}", orders.len());
}

/// All that the project says of an order.
fn everything(order: &Order, library: &Arc<Library>) -> Value {
    let report = match library::answer(order, library) {
        Ok(report) => report,
        Err(errors) => return json!({ "errors": errors }),
    };
    let mut said = json!({});
    for (name, voice) in VOICES {
        let mut worded = report.clone();
        wording::fill(&mut worded, voice);
        said[name] = json!({ "report": worded, "sheet": sheet(order, library, voice) });
    }
    let picks: Vec<Value> = picks(order, &report, library);
    json!({ "said": said, "picks": picks })
}

fn picks(order: &Order, report: &Report, library: &Library) -> Vec<Value> {
    let every = report.picks.iter().chain(report.closed.as_deref());
    every
        .map(|pick| {
            let window = library::window(order, library, pick, None).unwrap();
            let forecast = library::pick_forecast(order, library, pick).unwrap();
            let forecast = forecast.map(|it| library::forecast_at(&it, None).unwrap());
            let oven = library::oven_test(order, library, pick, 24.0, 60.0).unwrap();
            json!({ "white": pick.white, "window": window, "forecast": forecast, "oven": oven })
        })
        .collect()
}

/// The job sheet of the first pick, as its fields are written; nothing where the order is refused.
fn sheet(order: &Order, library: &Arc<Library>, voice: Voice) -> Vec<String> {
    let mut state = State::new(Draft::of(order, "", voice));
    let opened = RecordsMsg::Opened {
        ships: Arc::clone(library),
        tablet: "a".into(),
        session: "1".into(),
        contents: Contents::default(),
    };
    let opened = Msg::Records(Clock { now: NOW, ahead: 0 }, opened);
    let mut waiting = vec![opened, Msg::Start, Msg::Show(Screen::JobSheet)];
    waiting.reverse();
    while let Some(msg) = waiting.pop() {
        let (next, effects) = update(state, msg);
        state = next;
        waiting.extend(effects.into_iter().filter_map(|effect| answered(effect, library)));
    }
    let written = JobSheet::of(&state).map(|sheet| format!("{sheet:#?}")).unwrap_or_default();
    written.lines().map(str::to_owned).collect()
}

fn answered(effect: Effect, library: &Library) -> Option<Msg> {
    match effect {
        Effect::Answer(order) => {
            let report = library::answer(&order, library);
            let answer = report.map(|report| Box::new(Answer { report: report.into(), cloth: None }));
            Some(Msg::Answered(order, answer))
        }
        Effect::Window { order, pick, key, at } => {
            let window = library::window(&order, library, &pick, at);
            Some(Msg::Windowed(key, window.map(Box::new)))
        }
        _ => None,
    }
}
