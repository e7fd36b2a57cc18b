//! The Library screen from message to effect: what is written is stored as lines, what comes in waits for a yes, and
//! one undo takes it back.

use std::sync::Arc;
use whitehold::desk::records::{Clock, Incoming, RecordEvent, RecordGroup, RecordsMsg};
use whitehold::desk::{Choice, Draft, Effect, Field, Msg, Screen, State, draft_file, update};
use whitehold::library::log::{Key, Kind, read_line};
use whitehold::library::storage_layout::{self, Contents, Line};
use whitehold::library::{self, Library, file};
use whitehold::plan::{Colour, Garment, Order, Shop, UnderPrint};
use whitehold::wording::{Language, Voice};

const DAY: i64 = 86_400_000;

/// A tablet: its state and what it has stored.
struct Tablet {
    state: State,
    stored: Vec<Line>,
    now: i64,
}

impl Tablet {
    fn new(name: &str) -> Self {
        let order = Order {
            garments: vec![Garment {
                label: "100% polyester interlock 150 g/m2".into(),
                colour: Colour { name: "red".into(), lab: None },
                lot: "HL-2031".into(),
                ..Garment::default()
            }],
            shop: Shop { shelf: vec!["gannet-cool".into()], dryer: "long-kiln".into(), ..Shop::default() },
            ..Order::default()
        };
        let draft = Draft::of(&order, "1187", Voice::default());
        let mut tablet = Self { state: State::new(draft), stored: Vec::new(), now: 1_795_000_000_000 };
        tablet.open(name, "1");
        tablet
    }

    fn open(&mut self, tablet: &str, session: &str) {
        self.open_with(Arc::new(library::starter().unwrap()), tablet, session);
    }

    fn open_with(&mut self, ships: Arc<Library>, tablet: &str, session: &str) {
        let contents = contents(&self.stored);
        self.send(RecordsMsg::Opened { ships, tablet: tablet.into(), session: session.into(), contents });
    }

    fn send(&mut self, msg: RecordsMsg) -> Vec<Effect> {
        let clock = Clock { now: self.now, ahead: 60 };
        let (state, effects) = update(std::mem::take(&mut self.state), Msg::Records(clock, msg));
        self.state = state;
        for effect in &effects {
            if let Effect::AppendLog(lines) = effect {
                self.stored.extend(lines.clone());
            }
        }
        effects
    }

    fn file(&self) -> Vec<u8> {
        file::write(self.state.records.log(), self.now).into_bytes()
    }

    fn count(&self, kind: Kind) -> usize {
        self.state.records.log().count(kind)
    }
}

/// Lines as a store hands them back.
fn contents(lines: &[Line]) -> Contents {
    Contents { segments: vec![storage_layout::segment(lines)], ..Contents::default() }
}

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
