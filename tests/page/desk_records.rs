//! What is written on the Library screen is stored as lines, there again after a reload, put back into the form, and
//! taken back by one undo.

use super::tablet::{Tablet, contents};
use std::sync::Arc;
use whitehold::desk::records::{RecordEvent, RecordGroup, RecordsMsg};
use whitehold::desk::{Choice, Effect, Field, Msg, Screen, update};
use whitehold::library;
use whitehold::library::log::{Key, Kind, read_line};
use whitehold::library::storage_layout::Line;
use whitehold::plan::UnderPrint;
use whitehold::wording::Language;

#[test]
fn what_is_kept_is_stored_found_and_there_again_after_a_reload() {
    let mut tablet = Tablet::new("bench");
    let effects = tablet.send(RecordsMsg::KeepCloth);
    assert!(effects.iter().any(|effect| matches!(effect, Effect::AppendLog(lines) if lines.len() == 1)));
    assert!(effects.contains(&Effect::LibraryChanged), "orders are answered with it");
    assert_eq!((tablet.count(Kind::Fabric), tablet.count(Kind::Lot)), (1, 1));
    tablet.send(RecordsMsg::KeepOrder);
    // The same again is nothing new.
    assert!(tablet.send(RecordsMsg::KeepCloth).is_empty());
    assert!(tablet.send(RecordsMsg::KeepOrder).is_empty());
    tablet.send(RecordsMsg::Search("red polyester".into()));
    tablet.send(RecordsMsg::Group(RecordGroup::Fabrics));
    let hits = tablet.state.records.hits(Language::En);
    assert!(
        hits[0].own && hits[0].lots == 1 && hits[0].colour.is_some() && hits[0].gsm == Some(150.0),
        "{hits:?}"
    );

    for line in &tablet.stored {
        assert_eq!(*read_line(&line.text).unwrap().id, line.id);
    }
    tablet.open("bench", "2");
    assert_eq!((tablet.count(Kind::Fabric), tablet.count(Kind::Lot), tablet.count(Kind::Order)), (1, 1, 1));
}

#[test]
fn a_shop_that_adds_nothing_answers_with_the_very_library_that_ships() {
    let mut tablet = Tablet::new("press");
    let ships = Arc::new(library::starter().unwrap());
    tablet.send(RecordsMsg::KeepOrder);
    tablet.open_with(Arc::clone(&ships), "press", "2");
    assert!(Arc::ptr_eq(tablet.state.records.library(), &ships), "an order is no part of the library");

    tablet.send(RecordsMsg::KeepCloth);
    tablet.open_with(Arc::clone(&ships), "press", "3");
    assert!(!Arc::ptr_eq(tablet.state.records.library(), &ships), "the shop's own cloth is");
}

#[test]
fn a_kept_cloth_and_order_go_back_into_the_form() {
    let mut tablet = Tablet::new("bench");
    tablet.send(RecordsMsg::KeepCloth);
    let cloth = tablet.state.records.record().unwrap().key;
    tablet.send(RecordsMsg::KeepOrder);
    let order = tablet.state.records.record().unwrap().key;
    tablet.state.draft.write(Field::Label, "100% cotton");
    tablet.state.screen = Screen::Window;
    tablet.send(RecordsMsg::PutInForm(cloth));
    assert_eq!(tablet.state.screen, Screen::Job);
    assert_eq!(tablet.state.draft.text(Field::Label), "100% polyester");
    assert_eq!(tablet.state.draft.text(Field::Colour), "red");
    tablet.send(RecordsMsg::PutInForm(order));
    assert_eq!(tablet.state.draft.text(Field::Title), "1187");
    assert_eq!(tablet.state.draft.text(Field::Lot), "HL-2031");
}

/// What lies under the print is kept with an order, through the store and back into the form.
#[test]
fn a_kept_order_remembers_what_lies_under_its_print() {
    for under in [UnderPrint::BackPanel, UnderPrint::Nothing, UnderPrint::Board] {
        let mut tablet = Tablet::new("bench");
        let choose = |tablet: &mut Tablet, under| {
            let (state, _) =
                update(std::mem::take(&mut tablet.state), Msg::Choose(Choice::UnderPrint(under)));
            tablet.state = state;
        };
        choose(&mut tablet, under);
        let kept = tablet.state.draft.clone();
        tablet.send(RecordsMsg::KeepOrder);
        let order = tablet.state.records.record().unwrap().key;
        tablet.open("bench", "2");
        let other = if under == UnderPrint::Board { UnderPrint::Nothing } else { UnderPrint::Board };
        choose(&mut tablet, other);
        assert_ne!(tablet.state.draft, kept);
        tablet.send(RecordsMsg::PutInForm(order));
        assert_eq!(tablet.state.draft.garment().unwrap().rest.under_print, under);
        // A kept order carries its number and title.
        tablet.state.draft.rest.other.clear();
        assert_eq!(tablet.state.draft, kept, "{under:?}");
    }
}

#[test]
fn a_record_shows_its_past_and_comes_back() {
    let mut tablet = Tablet::new("bench");
    let jersey = || Key::new(Kind::Fabric, "cotton-jersey");
    let table = "id,weight_gsm\ncotton-jersey,160\n";
    tablet.send(RecordsMsg::FileChosen("heavier.csv".into(), table.into()));
    tablet.send(RecordsMsg::Import);
    tablet.send(RecordsMsg::Open(jersey()));
    let table = table.replace("160", "170");
    tablet.send(RecordsMsg::FileChosen("heavier still.csv".into(), table.into_bytes()));
    tablet.send(RecordsMsg::Import);
    let record = tablet.state.records.record().unwrap();
    assert_eq!(record.past.len(), 2);
    assert!(
        matches!(&record.past[0].what, RecordEvent::Changed(changes) if changes[0].path == "areal_weight")
    );
    assert!(matches!(&record.past[1].what, RecordEvent::Copied(changes) if changes.len() == 1));
    assert_eq!((record.past[0].now, record.past[1].now), (true, false));
    assert_eq!(record.past[1].from.as_deref(), Some("heavier.csv"));

    tablet.send(RecordsMsg::BringBack(jersey(), record.past[1].entry.clone()));
    let weight = |tablet: &Tablet| {
        tablet.state.records.library().fabric_record("cotton-jersey").unwrap().areal_weight.value
    };
    assert!((weight(&tablet) - 160.0).abs() < 1e-9);
    tablet.send(RecordsMsg::Remove(jersey()));
    assert!((weight(&tablet) - 150.0).abs() < 1e-9, "the one that ships is back");
    for expected in [160.0, 170.0, 160.0, 150.0] {
        tablet.send(RecordsMsg::Undo);
        assert!((weight(&tablet) - expected).abs() < 1e-9, "{expected}");
    }
    tablet.send(RecordsMsg::Redo);
    assert!((weight(&tablet) - 160.0).abs() < 1e-9);
}

#[test]
fn a_line_that_cannot_be_read_is_counted_and_left_where_it_is() {
    let mut tablet = Tablet::new("bench");
    tablet.send(RecordsMsg::KeepCloth);
    tablet.stored.push(Line::new("x", "no entry at all"));
    tablet.open("bench", "2");
    assert_eq!((tablet.state.records.unreadable(), tablet.count(Kind::Fabric)), (1, 1));
    tablet
        .send(RecordsMsg::Synced(contents(&[Line::new("x", "no entry at all"), Line::new("y", "nor this")])));
    assert_eq!(tablet.state.records.unreadable(), 2, "the same line is one line, however often it is read");
}

#[test]
fn a_cloth_whose_label_says_little_is_kept_as_it_was_taken() {
    let mut tablet = Tablet::new("bench");
    let label = Msg::Type(Field::Label, "100% polyester".into());
    tablet.state = update(tablet.state.clone(), label).0;
    tablet.send(RecordsMsg::KeepCloth);
    let kept: whitehold::textile::FabricRecord =
        tablet.state.records.log().records(Kind::Fabric).next().unwrap().read().unwrap();
    assert_eq!(kept.construction, whitehold::textile::Construction::Jersey);
    assert!(kept.source.contains("assumed"), "{}", kept.source);
}

#[test]
fn what_a_newer_page_wrote_is_not_written_over() {
    let mut tablet = Tablet::new("bench");
    tablet.stored.push(Line::new("n", r#"{"v":99,"id":"n","at":0,"by":"b","stamp":5,"change":"new"}"#));
    tablet.open("bench", "2");
    assert!(tablet.state.records.read_only());
    assert!(tablet.send(RecordsMsg::KeepCloth).is_empty());
    assert_eq!(tablet.count(Kind::Fabric), 0);
}

/// Fills a form as a person does: by the names of its columns.
fn fill(tablet: &mut Tablet, texts: &[(&str, &str)]) {
    for (name, text) in texts {
        let form = tablet.state.records.form().unwrap();
        let (at, _) = form.columns().find(|(_, column)| column.name == *name).unwrap();
        tablet.send(RecordsMsg::Type(at, (*text).into()));
    }
    tablet.send(RecordsMsg::SaveForm);
}

/// A probe's ride that is written by hand tells of the dryer what the same ride tells through the JS API.
#[test]
fn a_probe_run_is_written_by_hand_and_tells_of_its_dryer() {
    let mut tablet = Tablet::new("bench");
    tablet.send(RecordsMsg::New(Kind::Calibration, Some("long-kiln".into())));
    let ride = "6 49; 12 84, 18 104; 24 119\n30 131; 36 140.5; 42 148; 60 120";
    let said = [
        ("day", "2026-11-24"),
        ("fabric", "cotton-jersey"),
        ("film_um", "80"),
        ("probe_at", "film-bottom"),
        ("set_c", "165"),
        ("belt_m_per_min", "2.4"),
    ];
    fill(&mut tablet, &said);
    let errors =
        |tablet: &Tablet| tablet.state.records.form().map(|form| form.errors.clone()).unwrap_or_default();
    assert_eq!(errors(&tablet)[0].field, "readings");
    for wrong in ["6", "6 49 7", "six 49", "6 49; 12 84; 18 104", "12 84; 6 49; 18 104; 24 119"] {
        fill(&mut tablet, &[("readings", wrong)]);
        assert!(errors(&tablet)[0].field.contains("readings"), "{wrong}: {:?}", errors(&tablet));
    }
    fill(&mut tablet, &[("readings", ride)]);
    assert_eq!(errors(&tablet), []);
    let record = tablet.state.records.log().records_of(Kind::Calibration, "long-kiln").next().unwrap();
    let library = library::starter().unwrap();
    let found: library::CalibrationRecord = record.read().unwrap();
    assert_eq!(found.readings.len(), 8);
    let told = found.probe_run(&record.key.id, &library).unwrap().learn(&library).unwrap();
    assert!((record.fields["learnt"]["air_k"]["likely"].as_f64().unwrap() - told.air_k.likely).abs() < 1e-9);
    assert!((record.fields["readings"][5]["temp_c"].as_f64().unwrap() - 140.5).abs() < 1e-9);
}

#[test]
fn an_order_says_whether_it_is_kept_as_it_stands() {
    let mut tablet = Tablet::new("bench");
    assert!(!tablet.state.order_is_kept());
    tablet.send(RecordsMsg::KeepOrder);
    assert!(tablet.state.order_is_kept());
    tablet.state.draft.write(Field::Lot, "HL-2032");
    assert!(!tablet.state.order_is_kept());
    tablet.send(RecordsMsg::KeepOrder);
    assert_eq!(tablet.count(Kind::Order), 1, "the same title is the same order");
    assert!(tablet.state.order_is_kept());
    tablet.send(RecordsMsg::Undo);
    assert!(!tablet.state.order_is_kept());
    tablet.state.draft.write(Field::Title, "");
    tablet.send(RecordsMsg::KeepOrder);
    let name = tablet.state.records.record().unwrap().name;
    assert!(name.contains("polyester"), "an order without a title is called what its label says, not {name}");
}
