//! What comes in from a file waits for a yes, what another tab stored is heard, and everything goes out as one file, with
//! a reminder when that is due.

use super::tablet::{Tablet, contents};
use whitehold::desk::records::{Incoming, RecordsMsg};
use whitehold::desk::{Field, Msg, draft_file, update};
use whitehold::library::file;
use whitehold::library::log::Kind;
use whitehold::wording::Language;

const DAY: i64 = 86_400_000;

#[test]
fn another_tablets_file_waits_for_a_yes_and_one_undo_takes_it_back() {
    let (mut bench, mut packing) = (Tablet::new("bench"), Tablet::new("packing"));
    packing.send(RecordsMsg::KeepCloth);
    let before = bench.state.records.log().len();
    assert!(bench.send(RecordsMsg::FileChosen("packing.json".into(), packing.file())).is_empty());
    let Some(Incoming::Merge { preview, .. }) = bench.state.records.incoming() else { panic!() };
    assert_eq!((preview.new.len(), preview.conflicts.len(), preview.lost), (2, 0, 0));
    assert_eq!((bench.state.records.log().len(), bench.stored.len()), (before, 0), "nothing has changed yet");
    bench.send(RecordsMsg::DismissImport);
    assert!(bench.state.records.incoming().is_none());
    bench.send(RecordsMsg::FileChosen("packing.json".into(), packing.file()));
    bench.send(RecordsMsg::Import);
    assert_eq!((bench.count(Kind::Fabric), bench.stored.len()), (1, 2));
    bench.send(RecordsMsg::Undo);
    assert_eq!(bench.count(Kind::Fabric), 0);
    bench.send(RecordsMsg::Search("polyester red".into()));
    assert_eq!(bench.state.records.hits(Language::En).iter().filter(|hit| hit.own).count(), 0);
    bench.send(RecordsMsg::Redo);
    assert_eq!(bench.count(Kind::Fabric), 1);
}

#[test]
fn what_two_tablets_changed_is_chosen_on_the_way_in() {
    let (mut bench, mut packing) = (Tablet::new("bench"), Tablet::new("packing"));
    let table = |weight: u32| format!("id,weight_gsm\ncotton-jersey,{weight}\n").into_bytes();
    for (tablet, weight) in [(&mut bench, 160), (&mut packing, 170)] {
        tablet.send(RecordsMsg::FileChosen("w.csv".into(), table(weight)));
        tablet.send(RecordsMsg::Import);
    }
    bench.send(RecordsMsg::FileChosen("packing.json".into(), packing.file()));
    let Some(Incoming::Merge { preview, chosen, .. }) = bench.state.records.incoming() else { panic!() };
    let (_, conflict) = &preview.conflicts[0];
    let mine = conflict.claims[chosen[0]].value["value"].as_f64();
    assert_eq!(
        (preview.conflicts.len(), mine),
        (1, Some(160.0)),
        "this tablet's word until another is chosen"
    );
    let other = 1 - chosen[0];
    bench.send(RecordsMsg::ChooseClaim(0, other));
    bench.send(RecordsMsg::Import);
    let jersey = bench.state.records.library().fabric_record("cotton-jersey").unwrap();
    assert!((jersey.areal_weight.value - 170.0).abs() < 1e-9);
    // The other tablet hears of the choice and has nothing left to choose.
    packing.send(RecordsMsg::FileChosen("bench.json".into(), bench.file()));
    let Some(Incoming::Merge { preview, .. }) = packing.state.records.incoming() else { panic!() };
    assert!(preview.conflicts.is_empty());
}

#[test]
fn a_file_that_is_not_taken_says_why_and_changes_nothing() {
    let mut tablet = Tablet::new("bench");
    tablet.send(RecordsMsg::KeepCloth);
    let mut cut = tablet.file();
    cut.truncate(cut.len() / 2);
    let before = tablet.state.records.log().len();
    for (name, bytes) in [
        ("cut.json", cut),
        ("other.json", b"{\"format\":\"other\"}".to_vec()),
        ("page.html", b"<html>".to_vec()),
        ("picture.png", vec![0x89, b'P', b'N', b'G', 0, 1, 2]),
        ("empty", Vec::new()),
        ("words.csv", b"colour of the day,price\nblue,1\n".to_vec()),
    ] {
        assert!(tablet.send(RecordsMsg::FileChosen(name.into(), bytes)).is_empty());
        assert_eq!(tablet.state.records.refused().map(|refused| refused.name.as_str()), Some(name));
        assert!(tablet.send(RecordsMsg::Import).is_empty());
        assert_eq!(tablet.state.records.log().len(), before);
    }
}

#[test]
fn a_table_with_a_bad_row_cannot_be_applied() {
    let mut tablet = Tablet::new("bench");
    tablet.send(RecordsMsg::FileChosen("w.csv".into(), b"name,class\nHeron,soft\nEgret,sofd\n".to_vec()));
    assert!(
        matches!(tablet.state.records.incoming(), Some(Incoming::Table { preview, .. }) if preview.errors.len() == 1)
    );
    assert!(tablet.send(RecordsMsg::Import).is_empty());
    assert_eq!(tablet.count(Kind::White), 0);
}

/// Version 1 of what is kept was a draft without a log, as `desk::draft_file` writes it.
#[test]
fn a_draft_of_version_1_is_opened() {
    let mut old = Tablet::new("old");
    old.state.draft.write(Field::Lot, "HL-1988");
    let text = draft_file::write(&old.state.draft);
    assert!(text.starts_with("{\"version\":1,"));
    let mut tablet = Tablet::new("bench");
    assert!(tablet.send(RecordsMsg::FileChosen("draft.json".into(), text.into_bytes())).is_empty());
    assert!(matches!(tablet.state.records.incoming(), Some(Incoming::Draft { .. })));
    tablet.send(RecordsMsg::Import);
    assert_eq!(tablet.state.draft, old.state.draft);
    let (state, _) = update(tablet.state, Msg::Undo);
    assert_eq!(state.draft.text(Field::Lot), "HL-2031");
}

#[test]
fn a_gentle_reminder_comes_by_age_and_by_changes() {
    let mut tablet = Tablet::new("bench");
    assert!(!tablet.state.records.reminder().due, "nothing to lose");
    tablet.send(RecordsMsg::KeepCloth);
    assert_eq!((tablet.state.records.reminder().changes, tablet.state.records.reminder().due), (1, false));
    tablet.now += 8 * DAY;
    tablet.send(RecordsMsg::Tick);
    assert!(tablet.state.records.reminder().due, "a week old");
    tablet.send(RecordsMsg::FileSaved);
    let reminder = tablet.state.records.reminder();
    assert_eq!((reminder.days, reminder.changes, reminder.due), (Some(0), 0, false));
    // That a file was saved is no change to take back.
    assert_eq!(tablet.state.records.log().to_undo().unwrap().change.edits()[0].about().0, Kind::Fabric);
    for number in 0..50 {
        let table = format!("id,weight_gsm\ncotton-jersey,{}\n", 151 + number % 2);
        tablet.send(RecordsMsg::FileChosen("w.csv".into(), table.into_bytes()));
        tablet.send(RecordsMsg::Import);
    }
    assert!(tablet.state.records.reminder().due, "fifty changes");
    tablet.open("bench", "2");
    assert_eq!(tablet.state.records.reminder().changes, 50, "kept with the records");
}

#[test]
fn what_another_tab_stored_is_heard() {
    let mut first = Tablet::new("bench");
    let mut second = Tablet::new("bench");
    second.open("bench", "2");
    first.send(RecordsMsg::KeepCloth);
    second.send(RecordsMsg::Synced(contents(&first.stored)));
    second.send(RecordsMsg::Synced(contents(&first.stored)));
    assert_eq!((second.count(Kind::Fabric), second.stored.len()), (1, 0));
}

/// Another tab's edit arrives between preview and yes: the preview shows it, and a choice that was made stays.
#[test]
fn what_is_heard_while_a_file_waits_is_shown_before_the_yes() {
    let (mut bench, mut packing) = (Tablet::new("bench"), Tablet::new("packing"));
    let table = |id: &str, weight: u32| format!("id,weight_gsm\n{id},{weight}\n").into_bytes();
    let weigh = |tablet: &mut Tablet, id: &str, weight: u32| {
        tablet.send(RecordsMsg::FileChosen("w.csv".into(), table(id, weight)));
        tablet.send(RecordsMsg::Import);
    };
    weigh(&mut bench, "cotton-jersey", 160);
    weigh(&mut packing, "cotton-jersey", 170);
    weigh(&mut packing, "cotton-fleece", 290);
    let mut other_tab = Tablet::new("bench");
    other_tab.open("bench", "2");
    weigh(&mut other_tab, "cotton-fleece", 310);

    bench.send(RecordsMsg::FileChosen("packing.json".into(), packing.file()));
    let Some(Incoming::Merge { preview, chosen, .. }) = bench.state.records.incoming() else { panic!() };
    assert_eq!(preview.conflicts.len(), 1);
    let other = 1 - chosen[0];
    bench.send(RecordsMsg::ChooseClaim(0, other));
    bench.send(RecordsMsg::Synced(contents(&other_tab.stored)));
    let Some(Incoming::Merge { preview, chosen, .. }) = bench.state.records.incoming() else { panic!() };
    let shown: Vec<_> = preview.conflicts.iter().map(|(key, _)| key.id.to_string()).collect();
    assert_eq!(shown, ["cotton-fleece", "cotton-jersey"]);
    assert_eq!(chosen[1], other, "the choice that was made");

    let mut waits = Tablet::new("waits");
    waits.send(RecordsMsg::FileChosen("w.csv".into(), table("cotton-jersey", 150)));
    let text = |tablet: &Tablet| match tablet.state.records.incoming() {
        Some(Incoming::Table { preview, .. }) => format!("{preview:?}"),
        _ => panic!(),
    };
    let first = text(&waits);
    waits.send(RecordsMsg::Synced(contents(&bench.stored)));
    assert_ne!(text(&waits), first, "the table stands beside 160 g/m² now");
}

/// What the page takes away at once holds the records and the order in the form; a library file alone is no draft.
#[test]
fn everything_goes_out_as_one_file() {
    let mut tablet = Tablet::new("bench");
    tablet.send(RecordsMsg::KeepCloth);
    let text = tablet.state.file();
    let opened = file::read(&text).unwrap();
    assert_eq!(opened.entries.len(), 1);
    assert_eq!(draft_file::read_file(&text).unwrap(), tablet.state.draft);
    let alone = String::from_utf8(tablet.file()).unwrap();
    assert_eq!(draft_file::read_file(&alone), None);
    assert!(file::read(&text.replace("HL-2031", "HL-2032")).is_err(), "the draft is under the checksum");
}
