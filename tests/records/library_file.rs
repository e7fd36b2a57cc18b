//! The library file: taken whole or not at all, and what is wrong with it is said.

use serde_json::{Value, json};
use whitehold::library::file::{self, FileError, FileLine};
use whitehold::library::log::{Change, Kind, LineProblem, Log, VERSION};

/// A log with a little of everything.
fn shop() -> Log {
    let mut log = Log::new("bench", "1");
    let mut put = |kind, id: &str, fields: Value| {
        let edits = vec![log.write(kind, id, fields.as_object().unwrap())];
        log.append(1_795_000_000_000, Change::Edit { edits, from: None })
    };
    put(
        Kind::Fabric,
        "red-interlock",
        json!({ "name": "Red interlock «150»", "areal_weight": { "value": 150.0 } }),
    );
    put(Kind::Trial, "t1", json!({ "white": "gannet", "lot": "HL-2031" }));
    put(
        Kind::Reading,
        "t1/1",
        json!({ "days": 7, "pieces": 3, "turned": 0, "note": "a \"quote\"\nand a line" }),
    );
    let of = put(Kind::FollowUp, "t1/1", json!({ "due": "2028-02-29" })).id;
    log.append(-1, Change::Undo { of: of.clone() });
    log.append(0, Change::Redo { of });
    let edits = vec![log.remove(Kind::Fabric, "red-interlock").unwrap()];
    log.append(0, Change::Edit { edits, from: Some("cloths.csv".into()) });
    let mut other = Log::new("packing", "1");
    let edits = vec![other.write(Kind::White, "tern", json!({ "name": "Tern" }).as_object().unwrap())];
    other.append(3, Change::Choose { edits });
    log.merge(4, "packing.json", other.entries().to_vec(), &[]);
    log
}

/// The lines with a checksum that fits, whatever they say.
fn sealed(lines: &[&str]) -> String {
    let body: String = lines.iter().map(|line| format!("{line}\n")).collect();
    format!("{body}{}\n", json!({ "sha256": file::sha256(&body) }))
}

#[test]
fn what_is_saved_is_opened_again_to_the_last_letter() {
    let log = shop();
    let text = file::write(&log, 7);
    let opened = file::read(&text).unwrap();
    assert_eq!((opened.header.at, opened.header.by.as_str(), opened.newer()), (7, "bench", None));
    let mut other = Log::new("bench", "2");
    opened.entries.into_iter().for_each(|entry| assert!(other.insert(entry)));
    assert_eq!(other.len(), log.len());
    assert_eq!(file::write(&other, 7), text);
    for key in log.all_keys() {
        assert_eq!(log.record(key.kind, &key.id), other.record(key.kind, &key.id));
    }
}

#[test]
fn a_byte_mark_and_turned_line_ends_do_no_damage() {
    let text = file::write(&shop(), 7);
    let turned = format!("\u{feff}{}\r\n\r\n", text.replace('\n', "\r\n"));
    assert_eq!(file::read(&turned).unwrap().entries.len(), shop().len());
}

/// Source: FIPS 180-4 example computations ("SHA256.pdf", NIST CSRC examples with intermediate values): one-block and
/// two-block messages; the empty message and one million `a` from NIST's SHA test vectors (FIPS 180-2, B.3).
#[test]
fn the_checksum_is_sha_256() {
    let million = "a".repeat(1_000_000);
    for (message, digest) in [
        ("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
        ("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
        (
            "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        ),
        (million.as_str(), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"),
    ] {
        assert_eq!(file::sha256(message), digest);
    }
}

#[test]
fn a_file_that_is_not_sound_says_why() {
    let text = file::write(&shop(), 7);
    let lines: Vec<&str> = text.lines().collect();
    let (last, body) = lines.split_last().unwrap();
    let without =
        |gone: usize| body.iter().enumerate().filter(move |(at, _)| *at != gone).map(|(_, line)| *line);
    let twice = |at: usize| {
        let mut twice = body.to_vec();
        twice.push(body[at]);
        twice[0] = "";
        let header = body[0]
            .replace(&format!("\"entries\":{}", body.len() - 1), &format!("\"entries\":{}", body.len()));
        twice[0] = header.leak();
        sealed(&twice)
    };
    let id = |line: &str| serde_json::from_str::<Value>(line).unwrap()["id"].as_str().unwrap().to_owned();
    let bad = [body[0], "{\"v\":2}"];
    let table = [
        (String::new(), FileError::NotOurs),
        ("id,name\n1,Red\n".into(), FileError::NotOurs),
        (text.replace(file::FORMAT, "other"), FileError::NotOurs),
        (body.join("\n"), FileError::Cut { lines: body.len() }),
        (lines[..3].join("\n"), FileError::Cut { lines: 3 }),
        (text.replace("gannet", "gannez"), FileError::Damaged { line: None }),
        (text.replace("\"stamp\":2", "\"stamp\":two"), FileError::Damaged { line: Some(4) }),
        (format!("{}\n{last}", without(2).collect::<Vec<_>>().join("\n")), FileError::Damaged { line: None }),
        (
            sealed(&without(2).collect::<Vec<_>>()),
            FileError::Count { said: body.len() - 1, found: body.len() - 2 },
        ),
        (twice(4), FileError::Twice { id: id(body[4]) }),
        (format!("{text}{}", body[1]), FileError::Cut { lines: lines.len() + 1 }),
    ];
    for (text, expected) in table {
        assert_eq!(file::read(&text).unwrap_err(), expected);
    }
    let FileError::Line { line: 2, problem: LineProblem::Unreadable { .. } } =
        file::read(&sealed(&bad)).unwrap_err()
    else {
        panic!()
    };
}

#[test]
fn a_newer_file_opens_for_reading_only() {
    let header = json!({ "format": file::FORMAT, "version": VERSION + 1, "by": "x", "at": 0, "entries": 1, "mood": "new" });
    let line =
        json!({ "v": VERSION + 1, "id": "n", "at": 0, "by": "x", "stamp": 1, "change": "something new" });
    let opened = file::read(&sealed(&[&header.to_string(), &line.to_string()])).unwrap();
    assert_eq!(opened.newer(), Some(VERSION + 1));
    assert_eq!(opened.entries.len(), 1);
}

#[test]
fn an_entry_that_was_tampered_with_under_a_known_id_is_refused() {
    let log = shop();
    let text = file::write(&log, 7);
    assert_eq!(file::agrees(&log, &file::read(&text).unwrap()), Ok(()));
    let lines: Vec<String> = text.lines().map(|line| line.replace("gannet", "chalk")).collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let opened = file::read(&sealed(&lines[..lines.len() - 1])).unwrap();
    assert!(matches!(file::agrees(&log, &opened), Err(FileError::Differs { .. })));
}

#[test]
fn what_came_in_with_a_merge_that_was_taken_back_stays_out() {
    let mut log = shop();
    let before = file::read(&file::write(&log, 7)).unwrap().entries.len();
    let of = log.to_undo().unwrap().id.clone();
    log.append(9, Change::Undo { of });
    assert_eq!(file::read(&file::write(&log, 7)).unwrap().entries.len(), before);
    assert!(!file::write(&log, 7).contains("Tern"));
}

/// Checked by the crate `jsonschema`, which knows nothing of our reader.
#[test]
fn every_line_of_a_saved_file_satisfies_the_published_schema() {
    let schema: Value = serde_json::from_str(&std::fs::read_to_string(SCHEMA).unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    for line in file::write(&shop(), 7).lines() {
        let value: Value = serde_json::from_str(line).unwrap();
        if let Err(error) = validator.validate(&value) {
            panic!("{line}: {error}");
        }
    }
    for wrong in [
        json!({}),
        json!({ "format": file::FORMAT, "version": 2, "by": "x", "at": 0, "entries": -1 }),
        json!({ "v": 2, "id": "e", "at": 0, "by": "a", "stamp": 1, "change": { "undo": {} } }),
        json!({ "v": 2, "id": "e", "at": 0, "by": "a", "stamp": 1, "change": { "edit": { "edits": [{ "put": { "kind": "song", "id": "x", "fields": {} } }] } } }),
        json!({ "v": 2, "id": "e", "at": "now", "by": "a", "stamp": 1, "change": { "undo": { "of": "x" } } }),
        json!({ "sha256": 7 }),
    ] {
        assert!(!validator.is_valid(&wrong), "{wrong}");
    }
}

const SCHEMA: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/data/schema/library.schema.json");

/// `WHITEHOLD_WRITE_SCHEMA=1 cargo test --test library_file` writes it anew.
#[test]
fn the_published_schema_is_that_of_the_code() {
    let schema = serde_json::to_string_pretty(&schemars::schema_for!(FileLine)).unwrap() + "\n";
    if std::env::var_os("WHITEHOLD_WRITE_SCHEMA").is_some() {
        std::fs::write(SCHEMA, &schema).unwrap();
    }
    assert_eq!(std::fs::read_to_string(SCHEMA).unwrap(), schema);
}
