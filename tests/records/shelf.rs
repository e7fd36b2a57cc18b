//! Lines are neither lost nor doubled when a journal is sealed, whatever it holds.
//!
//! The law is conservation: what could be read before a sealing can be read after it. The names of exceptions are
//! those of the standards (WHATWG Web IDL, "DOMException names"; W3C Indexed Database API 3.0, section 4 and 5).

use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use whitehold::library::storage_layout::{
    Contents, DRAFTS, JournalRow, Line, ObjectStore, SCHEMA, SEGMENT, Trouble, is_long, lines, seal, sort,
    upgrade,
};

/// A journal of rows: the id of a line, or the slot of a draft.
fn journal(rows: &[(usize, Option<u8>)]) -> Vec<JournalRow> {
    let row = |(key, (id, slot)): (usize, &(usize, Option<u8>))| JournalRow {
        key: key as f64 + 1.0,
        line: Line::new(format!("line-{id}"), format!("{{\"id\":\"line-{id}\"}}")),
        slot: slot.map(|slot| format!("draft/{slot}")),
    };
    rows.iter().enumerate().map(row).collect()
}

/// The journal and the segments after the sealing of a journal.
fn sealed(rows: &[JournalRow]) -> Contents {
    let sealing = seal(rows);
    let stays = |row: &&JournalRow| !sealing.gone.contains(&row.key);
    Contents { segments: sealing.segments.clone(), journal: rows.iter().filter(stays).cloned().collect() }
}

fn distinct(contents: &Contents) -> BTreeSet<&str> {
    contents.lines().collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn sealing_keeps_every_line_and_the_newest_of_every_slot(
        rows in prop::collection::vec((0..5_000_usize, prop::option::weighted(0.3, 0..40_u8)), 0..6_000)
    ) {
        let rows = journal(&rows);
        let before = Contents { segments: Vec::new(), journal: rows.clone() };
        let after = sealed(&rows);
        prop_assert_eq!(distinct(&before), distinct(&after));
        let newest: BTreeMap<_, _> =
            rows.iter().filter_map(|row| Some((row.slot.clone()?, row.key))).collect();
        for (slot, key) in newest {
            prop_assert_eq!(after.slot(&slot).map(|row| row.key), Some(key));
        }
        prop_assert_eq!(before.slots("draft/").next(), after.slots("draft/").next());
        // What is left is short, and sealing it again changes nothing.
        prop_assert!(!is_long(after.journal.len()));
        prop_assert_eq!(sealed(&after.journal).journal, after.journal.clone());
        for text in &after.segments {
            prop_assert_eq!(lines(text).count(), SEGMENT);
        }
    }

    #[test]
    fn lines_that_come_in_one_go_are_all_kept_once(
        ids in prop::collection::vec(0..4_000_usize, 0..5_000)
    ) {
        let given: Vec<Line> = ids.iter().map(|id| Line::new(id.to_string(), format!("[{id}]"))).collect();
        let (segments, rest) = sort(&given);
        let kept: Vec<&str> =
            segments.iter().flatten().chain(&rest).map(|line| line.text.as_str()).collect();
        prop_assert!(segments.iter().all(|lines| lines.len() == SEGMENT));
        let expected: BTreeSet<String> = ids.iter().map(|id| format!("[{id}]")).collect();
        prop_assert_eq!(kept.len(), expected.len());
        prop_assert_eq!(kept.into_iter().map(str::to_owned).collect::<BTreeSet<_>>(), expected);
        prop_assert!(rest.len() < SEGMENT);
    }
}

#[test]
fn only_the_newest_drafts_outlive_a_sealing() {
    let rows: Vec<_> = (0..100).map(|slot| (0, Some(slot))).collect();
    let after = sealed(&journal(&rows));
    assert_eq!(after.journal.len(), DRAFTS);
    assert_eq!(after.slot("draft/99").map(|row| row.key), Some(100.0));
    assert_eq!(after.slot("draft/0"), None);
}

#[test]
fn a_line_stays_one_line() {
    let line = Line::new("1", "{\n\"label\": \"50% cotton\\n50% polyester\"\r\n}");
    assert_eq!(lines(&line.text).count(), 1);
    let read: serde_json::Value = serde_json::from_str(&line.text).unwrap();
    assert_eq!(read["label"], "50% cotton\n50% polyester");
}

/// Every version that a database may have been left at, and the parts that it then lacks.
#[test]
fn an_earlier_database_is_brought_up_to_date() {
    let table: [(u32, &[ObjectStore]); 2] = [(0, &[ObjectStore::Journal, ObjectStore::Segments]), (1, &[])];
    assert_eq!(table.len(), SCHEMA as usize + 1, "a version is missing from the table");
    for (from, missing) in table {
        assert_eq!(upgrade(from).collect::<Vec<_>>(), missing, "from {from}");
    }
}

/// Source: WHATWG Web IDL, table of DOMException names, and the exceptions that the Indexed Database API names.
#[test]
fn exceptions_are_told_apart_by_their_standard_names() {
    let table = [
        ("QuotaExceededError", Trouble::Full),
        ("SecurityError", Trouble::Refused),
        ("VersionError", Trouble::Newer),
        ("InvalidStateError", Trouble::Closed),
        ("UnknownError", Trouble::Failed("UnknownError: disk".into())),
    ];
    for (name, trouble) in table {
        assert_eq!(Trouble::of_exception(name, "disk"), trouble);
    }
}
