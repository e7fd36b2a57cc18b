//! What a shop types in is what it is answered with.

use serde_json::json;
use whitehold::ink::WhiteRecord;
use whitehold::library::log::{Change, Kind, Log, Recorded};
use whitehold::library::{self, FabricDye, Library, TrialReading, TrialRecord};
use whitehold::plan::{Colour, EvidenceSubject, Order, Report, Shop};

fn keep<T: Recorded>(log: &mut Log, id: &str, record: &T) {
    let edits = vec![log.keep(id, record).unwrap()];
    log.append(0, Change::Edit { edits, from: None });
}

fn order(library: &Library, fabric: &str, white: &str, dryer: &str) -> Order {
    let dye = FabricDye { colour: Colour { name: "red".into(), lab: None }, ..FabricDye::default() };
    Order {
        garments: vec![library.garment(library.fabric_record(fabric).unwrap(), &dye)],
        shop: Shop { shelf: vec![white.into()], dryer: dryer.into(), ..Shop::default() },
        ..Order::default()
    }
}

#[test]
fn a_typed_in_cloth_white_and_dryer_are_answered_with() {
    let starter = library::starter().unwrap();
    let mut log = Log::new("a", "1");
    let mut cloth = starter.fabric_record("cotton-jersey").unwrap().clone();
    (cloth.id, cloth.name) = ("quay-jersey".into(), "Quay jersey".into());
    keep(&mut log, "quay-jersey", &cloth);
    let mut white = starter.white_record("chalk-cool").unwrap().clone();
    (white.id, white.name) = ("heron".into(), "Heron".into());
    keep(&mut log, "heron", &white);
    let mut dryer = starter.dryer("long-kiln").unwrap().clone();
    (dryer.id, dryer.name) = ("short-kiln".into(), "Short Kiln".into());
    dryer.zones[0].length.value = 1.2;
    dryer.zones[0].length.range = [1.1, 1.3];
    keep(&mut log, "short-kiln", &dryer);

    let (library, unusable) = starter.with(&log);
    assert_eq!(unusable, []);
    let report = library::answer(&order(&library, "quay-jersey", "heron", "short-kiln"), &library).unwrap();
    assert_eq!(report.picks[0].white, "heron");
    // A shorter heated length needs a slower belt for the same cure.
    let long = library::answer(&order(&library, "quay-jersey", "heron", "long-kiln"), &library).unwrap();
    let belt = |report: &Report| report.picks[0].setting.unwrap().belt_m_per_min;
    assert!(belt(&report) < belt(&long), "{} and {}", belt(&report), belt(&long));
    // The library that ships has none of them.
    assert!(library::answer(&order(&library, "quay-jersey", "heron", "short-kiln"), &starter).is_err());
}

#[test]
fn a_record_of_the_same_id_takes_the_place_of_the_one_that_ships() {
    let starter = library::starter().unwrap();
    let mut log = Log::new("a", "1");
    let white = WhiteRecord { name: "Chalk, new tub".into(), ..starter.whites[0].clone() };
    keep(&mut log, "chalk", &white);
    let (library, _) = starter.with(&log);
    assert_eq!(library.whites.len(), starter.whites.len());
    assert_eq!(library.white_record("chalk").unwrap().name, "Chalk, new tub");
    let of = log.to_undo().unwrap().id.clone();
    log.append(0, Change::Undo { of });
    assert_eq!(starter.with(&log).0, starter);
}

#[test]
fn a_record_that_cannot_be_used_is_left_out_and_named() {
    let starter = library::starter().unwrap();
    let dryer = serde_json::to_value(starter.dryer("long-kiln").unwrap()).unwrap();
    let with = |path: &str, value: serde_json::Value| {
        let mut dryer = dryer.clone();
        *dryer.pointer_mut(path).unwrap() = value;
        dryer
    };
    let table = [
        (Kind::Fabric, json!({ "name": "No fibres", "nombre": "Sin fibras" }), "composition_percent"),
        (Kind::White, json!({ "name": "W", "class": "snow", "low_cure": true, "source": "x" }), "snow"),
        (Kind::Mesh, json!({ "threads_per_cm": 7 }), "invalid type"),
        (Kind::Dryer, with("/zones", json!([])), "zones"),
        (Kind::Dryer, with("/zones/0/length/value", json!(99.0)), "zones[0].length"),
        (Kind::Dryer, with("/belt/speed_m_per_min", json!([6.0, 0.5])), "belt.speed_m_per_min"),
        (Kind::Dryer, with("/belt/speed_m_per_min", json!([0.0, 6.0])), "belt.speed_m_per_min"),
        (Kind::Dryer, with("/step", json!(0.0)), "step"),
    ];
    for (kind, fields, says) in table {
        let mut log = Log::new("a", "1");
        let edits = vec![log.write(kind, "odd", fields.as_object().unwrap())];
        log.append(0, Change::Edit { edits, from: None });
        let (library, unusable) = starter.with(&log);
        assert_eq!(library, starter, "{says}");
        assert_eq!((unusable.len(), unusable[0].id.as_str()), (1, "odd"));
        assert!(unusable[0].why.to_string().contains(says), "{says}: {}", unusable[0].why);
        assert!(log.record(kind, "odd").is_some(), "it stays in the log");
    }
}

#[test]
fn what_was_read_on_a_trial_is_evidence_for_the_next_order() {
    let trial = TrialRecord { white: "gannet".into(), lot: "HL-2031".into(), ..TrialRecord::default() };
    let reading = TrialReading { days: 7.0, pieces: 3, turned: 1, ..TrialReading::default() };
    let seen = trial.evidence(&reading);
    assert_eq!(
        (seen.about, seen.name.as_str(), seen.white.as_str()),
        (EvidenceSubject::Lot, "HL-2031", "gannet")
    );
    assert_eq!((seen.pieces, seen.turned), (3, 1));
}
