//! The log folds to records: what was written last stands, every version can be seen and brought back, and undo and
//! redo are entries like any other.

use serde_json::{Map, Value, json};
use whitehold::library::log::{Change, Edit, Kind, LineProblem, Log, LogEntry, VERSION, read_line};
use whitehold::textile::FabricRecord;

fn fields(value: &Value) -> Map<String, Value> {
    value.as_object().unwrap().clone()
}

/// Writes fields of a fabric and says which entry did it.
fn write(log: &mut Log, id: &str, value: &Value) -> Box<str> {
    let edits = vec![log.write(Kind::Fabric, id, &fields(value))];
    log.append(0, Change::Edit { edits, from: None }).id
}

fn undo(log: &mut Log) -> bool {
    let Some(of) = log.to_undo().map(|entry| entry.id.clone()) else { return false };
    log.append(0, Change::Undo { of });
    true
}

fn redo(log: &mut Log) -> bool {
    let Some(of) = log.to_redo().map(|entry| entry.id.clone()) else { return false };
    log.append(0, Change::Redo { of });
    true
}

fn name(log: &Log, id: &str) -> Value {
    log.record(Kind::Fabric, id).map_or(Value::Null, |record| record.fields["name"].clone())
}

#[test]
fn the_last_word_stands_and_a_null_takes_a_field_away() {
    let mut log = Log::new("a", "1");
    write(&mut log, "red", &json!({ "name": "Red", "note": "soft" }));
    write(&mut log, "red", &json!({ "name": "Crimson", "note": null }));
    let record = log.record(Kind::Fabric, "red").unwrap();
    assert_eq!(Value::Object(record.fields), json!({ "name": "Crimson" }));
    assert!(record.conflicts.is_empty());
}

#[test]
fn undo_and_redo_walk_back_and_forth_and_a_new_edit_ends_the_redo() {
    let mut log = Log::new("a", "1");
    for text in ["1", "2", "3"] {
        write(&mut log, "red", &json!({ "name": text }));
    }
    // (what is done, whether it could be done, the name after it)
    type Step = (fn(&mut Log) -> bool, bool, Value);
    let walk: [Step; 8] = [
        (redo, false, json!("3")),
        (undo, true, json!("2")),
        (undo, true, json!("1")),
        (redo, true, json!("2")),
        (undo, true, json!("1")),
        (undo, true, Value::Null),
        (undo, false, Value::Null),
        (redo, true, json!("1")),
    ];
    for (step, (walk, done, after)) in walk.into_iter().enumerate() {
        assert_eq!((walk(&mut log), name(&log, "red")), (done, after), "step {step}");
    }
    write(&mut log, "red", &json!({ "name": "4" }));
    assert!(!redo(&mut log));
    assert_eq!(name(&log, "red"), json!("4"));
    assert!(undo(&mut log) && name(&log, "red") == json!("1"));
}

#[test]
fn every_version_is_seen_and_can_be_brought_back() {
    let mut log = Log::new("a", "1");
    let first = write(&mut log, "red", &json!({ "name": "Red", "gsm": 140 }));
    write(&mut log, "red", &json!({ "gsm": 150, "lot": "7" }));
    let edits = vec![log.remove(Kind::Fabric, "red").unwrap()];
    log.append(5, Change::Edit { edits, from: None });
    assert!(log.record(Kind::Fabric, "red").unwrap().removed);
    assert_eq!((log.count(Kind::Fabric), log.keys(Kind::Fabric).count()), (0, 1));

    let past = log.past(Kind::Fabric, "red");
    let told: Vec<_> = past
        .iter()
        .map(|it| (it.removes, it.changed.iter().map(|change| change.path.as_str()).collect::<Vec<_>>()))
        .collect();
    assert_eq!(told, [(false, vec!["gsm", "name"]), (false, vec!["gsm", "lot"]), (true, vec![])]);

    let edits = vec![log.bring_back(Kind::Fabric, "red", &first).unwrap()];
    log.append(6, Change::Edit { edits, from: None });
    let record = log.record(Kind::Fabric, "red").unwrap();
    assert!(!record.removed);
    assert_eq!(Value::Object(record.fields), json!({ "name": "Red", "gsm": 140 }));
    assert_eq!(log.past(Kind::Fabric, "red").len(), 4);
    assert!(log.bring_back(Kind::Fabric, "red", &first).is_none(), "it is that already");
}

#[test]
fn fields_of_a_newer_tablet_are_kept_when_a_record_is_written_again() {
    let library = whitehold::library::starter().unwrap();
    let mut log = Log::new("a", "1");
    let mut cloth: FabricRecord = library.fabric_record("cotton-jersey").unwrap().clone();
    let edits = vec![log.keep("cotton-jersey", &cloth).unwrap()];
    log.append(0, Change::Edit { edits, from: None });
    write(&mut log, "cotton-jersey", &json!({ "drape_index": 7 }));
    assert!(log.keep("cotton-jersey", &cloth).is_none(), "nothing has changed");
    cloth.name = "House jersey".into();
    let edits = vec![log.keep("cotton-jersey", &cloth).unwrap()];
    log.append(0, Change::Edit { edits, from: None });
    let record = log.record(Kind::Fabric, "cotton-jersey").unwrap();
    assert_eq!(record.fields["drape_index"], json!(7));
    assert_eq!(record.read::<FabricRecord>().unwrap(), cloth);
}

/// Source: civil dates in UTC by hand: 2028-02-28T23:59:59Z, 2028-02-29T00:00:00Z (a leap day), 2028-03-01T00:00:00Z,
/// and a clock set back by ten years. Times of the wall are told to people and order nothing.
#[test]
fn a_clock_set_back_a_leap_day_or_another_zone_reorders_nothing() {
    let clocks = [1_835_395_199_000, 1_835_395_200_000, 1_835_481_600_000, 1_519_862_400_000, -1, 0];
    let mut log = Log::new("a", "1");
    for (count, at) in clocks.into_iter().enumerate() {
        let edits = vec![log.write(Kind::Fabric, "red", &fields(&json!({ "name": count.to_string() })))];
        log.append(at, Change::Edit { edits, from: None });
        assert_eq!(name(&log, "red"), json!(count.to_string()), "at {at}");
    }
    let past = log.past(Kind::Fabric, "red");
    assert_eq!(past.iter().map(|version| version.at).collect::<Vec<_>>(), clocks);
}

#[test]
fn an_entry_survives_its_line_byte_by_byte() {
    let mut log = Log::new("tablet", "x");
    write(
        &mut log,
        "red/ñ",
        &json!({ "name": "Ro\"jo\n", "range": [1.0, 2.5e-7], "deep": { "a": [null, true] } }),
    );
    undo(&mut log);
    for entry in log.entries() {
        let line = entry.line();
        assert_eq!(read_line(&line).unwrap().line(), line);
        assert!(!line.contains('\n'));
    }
}

#[test]
fn a_line_that_is_no_entry_says_why() {
    let line = |with: &str| {
        let change = r#"{"edit":{"edits":[{"put":{"kind":"fabric","id":"f","fields":{"name":1}}}]}}"#;
        format!(r#"{{"v":2,"id":"e","at":0,"by":"a","stamp":1,"change":{change}}}"#).replace("FIND", with)
    };
    assert!(read_line(&line("")).is_ok());
    let two = r#"[{"remove":{"kind":"lot","id":"f"}},{"remove":{"kind":"lot","id":"f"}}]"#;
    let deep = format!("{}{}", "[".repeat(5000), "]".repeat(5000));
    type Fits = fn(&LineProblem) -> bool;
    let table: [(String, Fits); 11] = [
        (String::new(), |it| matches!(it, LineProblem::Unreadable { .. })),
        ("{}".into(), |it| matches!(it, LineProblem::Unreadable { .. })),
        (line("").replace("\"v\":2", "\"v\":1"), |it| *it == LineProblem::TooOld { version: 1 }),
        (line("").replace("\"e\"", "\"\""), |it| *it == LineProblem::Id),
        (line("").replace("\"e\"", &format!("{:?}", "e".repeat(201))), |it| *it == LineProblem::Id),
        (line("").replace("\"stamp\":1", "\"stamp\":9007199254740993"), |it| *it == LineProblem::Stamp),
        (line("").replace("\"at\":0", "\"at\":8640000000000001"), |it| *it == LineProblem::Time),
        (line("").replace("\"name\":1", "\"name\":1e999"), |it| matches!(it, LineProblem::Unreadable { .. })),
        (line("").replace("\"name\":1", &format!("\"name\":{deep}")), |it| {
            matches!(it, LineProblem::Unreadable { .. })
        }),
        (line("").replace("{\"name\":1}", "[1]"), |it| matches!(it, LineProblem::Unreadable { .. })),
        (
            format!(r#"{{"v":2,"id":"e","at":0,"by":"a","stamp":1,"change":{{"edit":{{"edits":{two}}}}}}}"#),
            |it| *it == LineProblem::EditedTwice { id: "f".into() },
        ),
    ];
    for (text, fits) in table {
        let problem = read_line(&text).unwrap_err();
        assert!(fits(&problem), "{}: {problem}", &text[..text.len().min(120)]);
    }
}

#[test]
fn what_a_newer_version_wrote_is_kept_as_it_stands_and_makes_the_log_read_only() {
    let text = format!(
        r#"{{"v":{},"id":"n","at":0,"by":"b","stamp":9,"change":{{"dream":1}},"mood":2}}"#,
        VERSION + 1
    );
    let entry: LogEntry = read_line(&text).unwrap();
    assert_eq!(entry.line(), text);
    let mut log = Log::new("a", "1");
    write(&mut log, "red", &json!({ "name": "Red" }));
    assert!(!log.read_only());
    log.insert(entry);
    assert!(log.read_only());
    assert_eq!(name(&log, "red"), json!("Red"));
}

#[test]
fn what_belongs_to_a_record_lies_under_its_id() {
    let mut log = Log::new("a", "1");
    for id in ["t1/a", "t1/b", "t10/a", "t1"] {
        let edits = vec![log.write(Kind::Reading, id, &fields(&json!({ "days": 7 })))];
        log.append(0, Change::Edit { edits, from: None });
    }
    let found: Vec<_> = log.records_of(Kind::Reading, "t1").map(|record| record.key.id).collect();
    assert_eq!(found.iter().map(|id| &**id).collect::<Vec<_>>(), ["t1/a", "t1/b"]);
}

#[test]
fn a_removal_names_what_it_had_seen() {
    let mut log = Log::new("a", "1");
    let first = write(&mut log, "red", &json!({ "name": "Red" }));
    let Some(Edit::Remove(remove)) = log.remove(Kind::Fabric, "red") else { panic!() };
    assert_eq!(remove.over, [first]);
    assert!(log.remove(Kind::Fabric, "blue").is_none());
}
