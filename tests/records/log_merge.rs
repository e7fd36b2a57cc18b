//! A merge is the union of two logs: the same in either order and any number of times, nothing lost, nothing twice,
//! and what two tablets wrote without seeing each other is kept for choice.

use proptest::prelude::*;
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;
use whitehold::library::log::{Change, Key, Kind, Log, LogEntry};

const KINDS: [Kind; 3] = [Kind::Fabric, Kind::Trial, Kind::Reading];

fn fields(value: &Value) -> Map<String, Value> {
    value.as_object().unwrap().clone()
}

fn put(log: &mut Log, kind: Kind, id: &str, value: &Value) {
    let edits = vec![log.write(kind, id, &fields(value))];
    log.append(0, Change::Edit { edits, from: None });
}

fn sync(into: &mut Log, from: &Log) {
    from.entries().iter().for_each(|entry| {
        into.insert(entry.clone());
    });
}

/// Everything the log folds to, as one text.
fn folded(log: &Log) -> String {
    let keys: Vec<&Key> = log.all_keys().collect();
    let records: Vec<_> = keys.iter().filter_map(|key| log.record(key.kind, &key.id)).collect();
    format!("{records:#?}")
}

/// What a tablet may do: `(what, record, field, value)`; every fifth thing is a look at the other tablet.
type Deed = (usize, usize, usize, u8);

fn act(log: &mut Log, other: &Log, (what, record, field, value): Deed) {
    let kind = KINDS[record % KINDS.len()];
    let id = format!("r{}", record / KINDS.len());
    let name = format!("f{field}");
    match what % 6 {
        0..=2 => put(log, kind, &id, &json!({ name: value })),
        3 => {
            if let Some(edit) = log.remove(kind, &id) {
                log.append(0, Change::Edit { edits: vec![edit], from: None });
            }
        }
        4 => {
            let undo = log.to_undo().map(|entry| Change::Undo { of: entry.id.clone() });
            let redo = log.to_redo().map(|entry| Change::Redo { of: entry.id.clone() });
            if let Some(change) = if value % 2 == 0 { undo } else { redo.or(undo) } {
                log.append(0, change);
            }
        }
        _ => sync(log, other),
    }
}

fn deeds() -> impl Strategy<Value = Vec<(bool, Deed)>> {
    prop::collection::vec((any::<bool>(), (0..60_usize, 0..9_usize, 0..3_usize, 0..4_u8)), 0..60)
}

/// Two tablets after their deeds.
fn tablets(deeds: &[(bool, Deed)]) -> (Log, Log) {
    named(["a", "b"], deeds)
}

fn named([first, second]: [&str; 2], deeds: &[(bool, Deed)]) -> (Log, Log) {
    let (mut a, mut b) = (Log::new(first, "1"), Log::new(second, "1"));
    for &(first, deed) in deeds {
        if first {
            act(&mut a, &b, deed);
        } else {
            act(&mut b, &a, deed);
        }
    }
    (a, b)
}

proptest! {
    #[test]
    fn the_order_of_entries_does_not_matter(deeds in deeds(), seed in any::<u64>()) {
        let (a, b) = tablets(&deeds);
        let mut joined = Log::new("c", "1");
        sync(&mut joined, &a);
        sync(&mut joined, &b);
        let mut shuffled: Vec<LogEntry> = joined.entries().to_vec();
        let mut dice = seed | 1;
        for at in (1..shuffled.len()).rev() {
            dice = dice.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            shuffled.swap(at, (dice >> 33) as usize % (at + 1));
        }
        let mut other = Log::new("c", "1");
        shuffled.into_iter().for_each(|entry| { other.insert(entry); });
        prop_assert_eq!(folded(&joined), folded(&other));
    }

    #[test]
    fn merging_commutes_and_associates_and_repeats_without_effect(x in deeds(), y in deeds()) {
        let (a, b) = tablets(&x);
        let (c, _) = named(["c", "d"], &y);
        let join = |parts: &[&Log]| {
            let mut log = Log::new("z", "1");
            parts.iter().for_each(|part| sync(&mut log, part));
            log
        };
        let whole = folded(&join(&[&a, &b, &c]));
        for parts in [[&a, &c, &b], [&b, &a, &c], [&c, &b, &a]] {
            prop_assert_eq!(&whole, &folded(&join(&parts)));
        }
        let ab = join(&[&a, &b]);
        let bc = join(&[&b, &c]);
        prop_assert_eq!(&whole, &folded(&join(&[&ab, &c])));
        prop_assert_eq!(&whole, &folded(&join(&[&a, &bc])));
        let again = join(&[&ab, &ab, &bc, &a, &c, &b]);
        prop_assert_eq!(&whole, &folded(&again));
        let ids: BTreeSet<_> = again.entries().iter().map(|entry| &entry.id).collect();
        prop_assert_eq!(ids.len(), again.len());
    }

    #[test]
    fn no_trial_is_lost_and_none_comes_twice(deeds in deeds()) {
        let (mut a, b) = tablets(&deeds);
        let known = |log: &Log| -> BTreeSet<Key> { log.all_keys().cloned().collect() };
        let both: BTreeSet<Key> = known(&a).union(&known(&b)).cloned().collect();
        let preview = a.preview(b.entries());
        let before = folded(&a);
        prop_assert_eq!(preview.lost, 0);
        let came = a.merge(0, "b.json", b.entries().to_vec(), &[]);
        prop_assert_eq!(came.len(), if preview.entries == 0 { 0 } else { preview.entries + 1 });
        prop_assert_eq!(known(&a), both);
        // What the preview told is what happened.
        let open: usize = a.all_keys().filter_map(|key| a.record(key.kind, &key.id)).map(|it| it.conflicts.len()).sum();
        prop_assert!(open >= preview.conflicts.len());
        // Once more: nothing.
        prop_assert!(a.preview(b.entries()).is_empty());
        prop_assert!(a.merge(0, "b.json", b.entries().to_vec(), &[]).is_empty());
        // One undo takes the whole merge back, one redo brings it again.
        if preview.entries > 0 {
            let merged = folded(&a);
            let of = a.to_undo().unwrap().id.clone();
            a.append(0, Change::Undo { of: of.clone() });
            prop_assert_eq!(folded(&a), before.clone());
            prop_assert_eq!(a.to_redo().map(|entry| entry.id.clone()), Some(of.clone()));
            a.append(0, Change::Redo { of });
            prop_assert_eq!(folded(&a), merged);
        }
    }

    #[test]
    fn choosing_leaves_no_conflict_on_either_tablet(deeds in deeds(), which in 0..2_usize) {
        let (mut a, mut b) = tablets(&deeds);
        let preview = a.preview(b.entries());
        let choices: Vec<_> = preview.conflicts.into_iter().map(|(key, conflict)| (key, conflict, which)).collect();
        a.merge(0, "b.json", b.entries().to_vec(), &choices);
        // Of a removal and an edit somebody has to choose as well; what was open before on both stays open.
        for (key, conflict, which) in &choices {
            let Some(record) = a.record(key.kind, &key.id) else { continue };
            prop_assert!(record.conflicts.iter().all(|open| open.field != conflict.field), "{:?}", record);
            if let (Some(field), Some(claim)) = (&conflict.field, conflict.claims.get(*which)) && !record.removed {
                prop_assert_eq!(record.fields.get(field).unwrap_or(&Value::Null), &claim.value);
            }
        }
        sync(&mut b, &a);
        prop_assert_eq!(folded(&a), folded(&b));
    }
}

#[test]
fn what_two_tablets_wrote_without_seeing_each_other_is_kept_for_choice() {
    let (mut a, mut b) = (Log::new("a", "1"), Log::new("b", "1"));
    put(&mut a, Kind::Dryer, "long-kiln", &json!({ "name": "Long Kiln", "length": 1.8, "step": 1 }));
    sync(&mut b, &a);
    put(&mut a, Kind::Dryer, "long-kiln", &json!({ "length": 1.85 }));
    put(&mut b, Kind::Dryer, "long-kiln", &json!({ "length": 1.9, "step": 2 }));
    put(&mut b, Kind::Dryer, "long-kiln", &json!({ "length": 1.95 }));

    let preview = a.preview(b.entries());
    assert_eq!((preview.new.len(), preview.conflicts.len(), preview.lost), (0, 1, 0));
    let (key, conflict) = preview.conflicts[0].clone();
    assert_eq!(conflict.field.as_deref(), Some("length"));
    let says: Vec<&Value> = conflict.claims.iter().map(|claim| &claim.value).collect();
    assert_eq!(says, [&json!(1.85), &json!(1.95)], "what b itself wrote over is not asked about");

    a.merge(0, "b", b.entries().to_vec(), &[(key, conflict, 0)]);
    let record = a.record(Kind::Dryer, "long-kiln").unwrap();
    assert_eq!((&record.fields["length"], &record.fields["step"]), (&json!(1.85), &json!(2)));
    assert!(record.conflicts.is_empty());
    // The other tablet agrees once it has seen the choice.
    b.merge(0, "a", a.entries().to_vec(), &[]);
    assert_eq!(b.record(Kind::Dryer, "long-kiln"), a.record(Kind::Dryer, "long-kiln"));
}

#[test]
fn the_same_word_from_both_is_no_conflict() {
    let (mut a, mut b) = (Log::new("a", "1"), Log::new("b", "1"));
    put(&mut a, Kind::White, "tern", &json!({ "price": 12 }));
    put(&mut b, Kind::White, "tern", &json!({ "price": 12.0 }));
    sync(&mut a, &b);
    assert!(a.record(Kind::White, "tern").unwrap().conflicts.is_empty());
}

#[test]
fn a_record_removed_here_and_edited_there_stays_and_asks() {
    let (mut a, mut b) = (Log::new("a", "1"), Log::new("b", "1"));
    put(&mut a, Kind::Fabric, "red", &json!({ "name": "Red" }));
    sync(&mut b, &a);
    let edits = vec![a.remove(Kind::Fabric, "red").unwrap()];
    a.append(0, Change::Edit { edits, from: None });
    put(&mut b, Kind::Fabric, "red", &json!({ "name": "Crimson" }));
    sync(&mut a, &b);
    let record = a.record(Kind::Fabric, "red").unwrap();
    assert!(!record.removed);
    assert_eq!(record.conflicts.len(), 1);
    assert_eq!(record.conflicts[0].field, None);
}

#[test]
fn a_merge_taken_back_here_takes_nothing_from_the_other_tablet() {
    let (mut a, mut b) = (Log::new("a", "1"), Log::new("b", "1"));
    put(&mut b, Kind::Trial, "t1", &json!({ "white": "tern" }));
    a.merge(0, "b", b.entries().to_vec(), &[]);
    let of = a.to_undo().unwrap().id.clone();
    a.append(0, Change::Undo { of });
    assert_eq!((a.count(Kind::Trial), b.count(Kind::Trial)), (0, 1));
    b.merge(0, "a", a.entries().to_vec(), &[]);
    assert_eq!(b.count(Kind::Trial), 1);
}

#[test]
fn two_tabs_of_one_tablet_lose_no_edit() {
    let mut disk: Vec<LogEntry> = Vec::new();
    let mut tabs = [Log::new("a", "1"), Log::new("a", "2")];
    let mut dice = 7_u64;
    for edit in 0..1000 {
        dice = dice.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let tab = &mut tabs[(dice >> 40) as usize % 2];
        // Now and then a tab hears what the other has stored.
        if (dice >> 50).is_multiple_of(3) {
            disk.iter().for_each(|entry| {
                tab.insert(entry.clone());
            });
        }
        put(tab, Kind::Reading, &format!("t/{}", edit % 400), &json!({ "days": edit }));
        disk.push(tab.entries().last().unwrap().clone());
    }
    let mut opened = Log::new("a", "3");
    disk.iter().for_each(|entry| assert!(opened.insert(entry.clone()), "an id twice"));
    assert_eq!((opened.len(), opened.count(Kind::Reading)), (1000, 400));
    let said: usize = opened.keys(Kind::Reading).map(|key| opened.past(key.kind, &key.id).len()).sum();
    assert_eq!(said, 1000, "every edit is in some record's past");
}
