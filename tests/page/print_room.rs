//! The shop's own print room: five answers make it, the demo can be left and looked at again, and its shelf is counted.

use super::common::demo_order;
use super::driver::{self, Edge};
use std::sync::Arc;
use whitehold::desk::print_room::{kept_orders, stock};
use whitehold::desk::records::{Clock, RecordsMsg, RoomChange, RoomSettings};
use whitehold::desk::{Answer, Draft, Effect, Field, Msg, Screen, State};
use whitehold::library::log::{Kind, read_line};
use whitehold::library::storage_layout::Contents;
use whitehold::library::table::columns;
use whitehold::library::{self, starter};
use whitehold::wording::Voice;

const NOW: i64 = 1_795_600_800_000;

/// An edge that answers from the shop's own library and keeps the lines that are stored.
struct Stores {
    lines: Vec<String>,
}

impl Edge for Stores {
    fn runs(&mut self, effect: Effect, state: &State) -> Option<Msg> {
        match effect {
            Effect::Answer(order) => {
                let report = library::answer(&order, state.records.library());
                let answer = report.map(|report| Box::new(Answer { report: report.into(), cloth: None }));
                Some(Msg::Answered(order, answer))
            }
            Effect::AppendLog(lines) => {
                self.lines.extend(lines.into_iter().map(|line| line.text));
                None
            }
            _ => None,
        }
    }
}

type Used = driver::Used<Stores>;

/// A desk in the demo print room.
impl Used {
    fn new(lines: &[String]) -> Self {
        let order = demo_order("1187");
        let (ships, tablet, session) = (Arc::new(starter().unwrap()), "a".into(), "1".into());
        let contents = Contents { segments: vec![lines.join("\n")], ..Contents::default() };
        let opened = RecordsMsg::Opened { ships, tablet, session, contents };
        let opened = Msg::Records(Clock { now: NOW, ahead: 0 }, opened);
        Self::over(Draft::of(&order, "1187", Voice::default()), Stores { lines: Vec::new() }, [opened])
    }

    fn shop(&mut self, msg: RecordsMsg) {
        self.send(Msg::Records(Clock { now: NOW, ahead: 0 }, msg));
    }

    fn answers(&mut self, answers: &[RoomChange]) {
        for answer in answers {
            self.shop(RecordsMsg::PrintRoom(answer.clone()));
        }
    }

    fn room(&self) -> RoomSettings {
        RoomSettings::of(self.state.records.log())
    }
}

fn five_answers() -> Vec<RoomChange> {
    let meshes = starter().unwrap().meshes;
    vec![
        RoomChange::Shelf("gannet".into()),
        RoomChange::Shelf("chalk".into()),
        RoomChange::Dryer("gas-galley".into()),
        RoomChange::Mesh(meshes[0].id.clone()),
        RoomChange::Money("€".into()),
    ]
}

#[test]
fn five_answers_open_a_shop_of_ones_own() {
    let mut used = Used::new(&[]);
    assert!(!used.room().own);
    used.shop(RecordsMsg::PrintRoom(RoomChange::Open));
    assert!(!used.room().own, "it opens with nothing answered");
    used.send(Msg::Type(Field::HeatedLength, "2,4".into()));
    used.send(Msg::Type(Field::HottestSet, "210".into()));
    used.answers(&five_answers());
    used.shop(RecordsMsg::PrintRoom(RoomChange::Open));
    let (state, library) = (&used.state, used.state.records.library());
    assert_eq!(state.screen, Screen::Job);
    let shop = &state.draft.rest.shop;
    assert_eq!(
        (shop.shelf.as_slice(), shop.dryer.as_str()),
        (["gannet".into(), "chalk".into()].as_slice(), "our-dryer")
    );
    let dryer = library.dryers.iter().find(|dryer| dryer.id == "our-dryer").unwrap();
    let length: f64 = dryer.zones.iter().map(|zone| zone.length.value).sum();
    assert!((length - 2.4).abs() < 1e-9 && (dryer.set_c[1] - 210.0).abs() < 1e-9, "{dryer:?}");
    assert_eq!(dryer.measured, None);
    // Only the mesh that the shop has is printed through.
    assert_eq!(library.meshes.len(), 1);
    // Everything is in the log: a desk that opens with its lines stands in the same shop.
    let again = Used::new(&used.lines);
    assert_eq!(again.room(), used.room());
    assert_eq!(again.state.records.library().meshes.len(), 1);
    assert!(!used.lines.is_empty() && used.lines.iter().all(|line| read_line(line).is_ok()));
}

/// A length or a heat that cannot be read is named at its field, and the shop does not open with it in silence; feet are
/// read as feet.
#[test]
fn a_shop_does_not_open_with_a_dryer_that_cannot_be_read() {
    let mut used = Used::new(&[]);
    used.answers(&five_answers());
    for (field, wrong) in
        [(Field::HeatedLength, "900"), (Field::HottestSet, "hot"), (Field::HottestSet, "-5")]
    {
        used.send(Msg::Type(field, wrong.into()));
        assert_eq!(used.state.errors_of(field).count(), 1, "{wrong}");
        used.shop(RecordsMsg::PrintRoom(RoomChange::Open));
        assert!(!used.room().own, "it opened with {wrong}");
        used.send(Msg::Type(field, String::new()));
        assert_eq!(used.state.errors_of(field).count(), 0, "empty is an answer");
    }
    used.send(Msg::Type(Field::HeatedLength, "8 ft".into()));
    used.shop(RecordsMsg::PrintRoom(RoomChange::Open));
    let library = used.state.records.library();
    let dryer = library.dryers.iter().find(|dryer| dryer.id == "our-dryer").unwrap();
    let length: f64 = dryer.zones.iter().map(|zone| zone.length.value).sum();
    assert!((length - 8.0 * 0.3048).abs() < 1e-9, "{length} m");
}

#[test]
fn the_first_order_of_a_new_shop_is_answered() {
    let mut used = Used::new(&[]);
    used.answers(&five_answers());
    used.shop(RecordsMsg::PrintRoom(RoomChange::Open));
    used.send(Msg::Type(Field::Label, "100% cotton jersey, 180 g/m2, black".into()));
    let report = used.state.report.as_ref().unwrap();
    let pick = used.state.pick().unwrap();
    assert_eq!(pick.white, "chalk", "{:?}", report.picks);
    assert!(pick.setting.is_some());
}

#[test]
fn the_demo_can_be_looked_at_again_and_a_tap_taken_back() {
    let mut used = Used::new(&[]);
    used.answers(&five_answers());
    used.shop(RecordsMsg::PrintRoom(RoomChange::Open));
    used.shop(RecordsMsg::PrintRoom(RoomChange::Demo));
    assert!(!used.room().own);
    assert!(used.state.records.library().meshes.len() > 1, "the demo has all meshes");
    used.shop(RecordsMsg::Undo);
    assert!(used.room().own, "{:#?}", used.lines);
    let before = used.room().shelf;
    used.shop(RecordsMsg::PrintRoom(RoomChange::Shelf("chalk".into())));
    assert_eq!(used.room().shelf, ["gannet"]);
    used.shop(RecordsMsg::Undo);
    assert_eq!(used.room().shelf, before);
}

#[test]
fn the_shelf_shows_what_was_weighed_and_how_far_it_goes() {
    let mut used = Used::new(&[]);
    let white = used.state.pick().unwrap().white.clone();
    let of = |used: &Used| stock(&used.state).into_iter().find(|it| *it.key.id == *white).unwrap();
    assert_eq!((of(&used).tubs, of(&used).left_kg), (0, None));
    used.shop(RecordsMsg::New(Kind::Batch, Some(white.as_str().into())));
    let names: Vec<&str> = columns(Kind::Batch).iter().map(|it| it.name).collect();
    for (name, text) in [("name", "77"), ("left_kg", "4")] {
        let column = names.iter().position(|it| *it == name).unwrap();
        used.shop(RecordsMsg::Type(column, text.into()));
    }
    used.shop(RecordsMsg::SaveForm);
    let stands = of(&used);
    assert_eq!((stands.tubs, stands.left_kg), (1, Some(4.0)));
    // 900 cm² at 60 % with some 95 µm of a white near 1.4 kg/l: 7 g a piece, so 4 kg is some 560 pieces.
    let enough = stands.enough.unwrap();
    assert!((400.0..=800.0).contains(&enough), "{enough}");
}

#[test]
fn kept_orders_stand_by_the_day_they_are_due() {
    let mut used = Used::new(&[]);
    for (title, due) in [("late", "2026-12-20"), ("open", ""), ("soon", "2026-11-30")] {
        used.send(Msg::Type(Field::Title, title.into()));
        used.send(Msg::Type(Field::Due, due.into()));
        used.shop(RecordsMsg::KeepOrder);
    }
    let titles: Vec<String> = kept_orders(&used.state).into_iter().map(|order| order.title).collect();
    assert_eq!(titles, ["soon", "late", "open"]);
}

#[test]
fn a_trial_of_the_lot_comes_back_into_the_answer() {
    let mut used = Used::new(&[]);
    let (white, before) = {
        let pick = used.state.pick().unwrap();
        (pick.white.clone(), pick.fail_later.likely)
    };
    assert!(used.state.report.as_ref().unwrap().picks[0].trial.is_some(), "the order begins with a trial");
    let note = |used: &mut Used, kind: Kind, owner: Option<&str>, texts: &[(&str, &str)]| {
        used.shop(RecordsMsg::New(kind, owner.map(Into::into)));
        for (name, text) in texts {
            let column = columns(kind).iter().position(|it| it.name == *name).unwrap();
            used.shop(RecordsMsg::Type(column, (*text).into()));
        }
        used.shop(RecordsMsg::SaveForm);
        assert!(used.state.records.form().is_none(), "{:?}", used.state.records.form());
    };
    note(&mut used, Kind::Trial, None, &[("fabric", "red interlock"), ("lot", "HL-2031"), ("white", &white)]);
    let trial = used.state.records.log().records(Kind::Trial).next().unwrap().key.id;
    note(&mut used, Kind::Reading, Some(&trial), &[("days", "30"), ("pieces", "6"), ("turned", "0")]);
    let order = used.state.order.as_ref().unwrap();
    assert_eq!(order.evidence.len(), 1, "{:?}", order.evidence);
    let now = used.state.report.as_ref().unwrap().picks.iter().find(|pick| pick.white == white).unwrap();
    assert!(now.fail_later.likely < before, "{before} {}", now.fail_later.likely);
    assert!(now.trial.is_none(), "six clean pieces after thirty days ask for no trial: {:?}", now.verdict);
    // Taken back, it counts no more.
    used.shop(RecordsMsg::Undo);
    used.send(Msg::Type(Field::Title, "again".into()));
    assert!(used.state.order.as_ref().unwrap().evidence.is_empty());
}
