//! The desk keeps what was typed, answers what can be read, and lets every change be taken back.
//!
//! No browser and no physics: the answer is handed in, as the browser would hand it.

use super::driver::{self, Edge};
use std::collections::BTreeMap;
use whitehold::desk::{
    Answer, Choice, Draft, Effect, Field, Keeping, Msg, Screen, State, Theme, draft_file, key, suggestions,
    update,
};
use whitehold::ink::WhiteClass;
use whitehold::library::storage_layout::Trouble;
use whitehold::plan::{
    Clearance, Curve, DialSetting, Drift, DyeClass, Garment, Order, Pick, PrintStep, Priority, Recipe,
    Report, Setting, Verdict, WindowReport,
};
use whitehold::quantity::{Band, FieldError, Problem};
use whitehold::textile::Fibre;
use whitehold::wording::{Language, Units, Voice};

fn order() -> Order {
    let garment = Garment {
        label: "100% polyester interlock, 150 g/m2, red".into(),
        lot: "HL-2031".into(),
        pieces: 144,
        areal_weight_gsm: Some(150.0),
        ..Garment::default()
    };
    Order { garments: vec![garment], ..Order::default() }
}

fn pick(white: &str, verdict: Verdict) -> Pick {
    Pick {
        garment: 0,
        verdict,
        recipe: Recipe { white: white.into(), ..Recipe::default() },
        white: white.into(),
        name: white.to_uppercase(),
        class: WhiteClass::Polyester,
        low_cure: false,
        mix: Vec::new(),
        additive: false,
        steps: vec![
            PrintStep::White { strokes: 2, threads_per_cm: 43.0, film_um: 90.0 },
            PrintStep::Dryer { passes: 1 },
        ],
        advice: Vec::new(),
        look: None,
        setting: Some(Setting {
            set_c: 165.0,
            air_c: 165.0,
            panel_c: None,
            belt_m_per_min: 2.8,
            dwell_s: 39.0,
            hold_c: 3.0,
            hold_belt_m_per_min: 0.1,
        }),
        margins: Vec::new(),
        fail_later: Band::exact(0.1),
        cost_per_print: Band::exact(0.6),
        rate_per_hour: Band::exact(180.0),
        first_piece: Vec::new(),
        trial: None,
        reasons: Vec::new(),
    }
}

fn report() -> Report {
    Report {
        verdict: Verdict::Trial,
        picks: vec![pick("gannet", Verdict::Trial), pick("tern", Verdict::Refuse)],
        rejected: Vec::new(),
        closed: None,
        garment: 0,
        whole: None,
        trade: None,
        to_make_it_possible: Vec::new(),
        cautions: Vec::new(),
        unknowns: Vec::new(),
        understood: Vec::new(),
        understood_each: Vec::new(),
    }
}

fn window(set_c: f64, belt: f64) -> WindowReport {
    WindowReport {
        set_c: vec![140.0, 165.0, 190.0],
        belt_m_per_min: vec![1.5, 3.0, 5.0],
        walls: Vec::new(),
        setting: Some(Setting {
            set_c,
            belt_m_per_min: belt,
            ..pick("gannet", Verdict::Trial).setting.expect("a setting")
        }),
        drift: Drift { set_k: 2.5, belt_m_per_min: 0.08 },
        room: Clearance { cooler: Some(4.0), hotter: Some(5.0), slower: None, faster: Some(0.3) },
        margins: Vec::new(),
        curve: Curve {
            seconds: Vec::new(),
            film_top_c: Vec::new(),
            film_bottom_c: Vec::new(),
            cloth_c: Vec::new(),
            fused: Vec::new(),
            water_percent: Vec::new(),
            leaves_s: 39.0,
        },
        fail_later: Band::exact(0.1),
        verdict: Verdict::Trial,
    }
}

/// An edge that answers every order with the same report, works out windows as a browser would, and keeps what it is told.
struct Told {
    asked: Vec<Order>,
    windows: Vec<Option<DialSetting>>,
    store: Result<(), Trouble>,
}

impl Edge for Told {
    fn runs(&mut self, effect: Effect, state: &State) -> Option<Msg> {
        match effect {
            Effect::Answer(order) => {
                self.asked.push((*order).clone());
                let answer = Box::new(Answer { report: report().into(), cloth: None });
                Some(Msg::Answered(order, Ok(answer)))
            }
            Effect::Window { key, at, .. } => {
                self.windows.push(at);
                let at = at.unwrap_or(DialSetting { set_c: 165.0, belt_m_per_min: 2.8 });
                Some(Msg::Windowed(key, Ok(Box::new(window(at.set_c, at.belt_m_per_min)))))
            }
            Effect::AppendLog(_) | Effect::LibraryChanged => None,
            Effect::Forecast { .. } | Effect::Diagnose { .. } => {
                panic!("nobody looks at the forecast or for a cause here: other files do")
            }
            Effect::SaveDraft => {
                assert_eq!(state.keeping, Keeping::Saving, "kept before the store said so");
                Some(Msg::DraftSaved(self.store.clone()))
            }
        }
    }
}

type Used = driver::Used<Told>;

impl Used {
    fn new() -> Self {
        let draft = Draft::of(&order(), "Rowing club", Voice::default());
        Self::over(draft, Told { asked: Vec::new(), windows: Vec::new(), store: Ok(()) }, [])
    }

    fn type_in(&mut self, field: Field, text: &str) -> &mut Self {
        self.send(Msg::Done).send(Msg::Type(field, text.into()))
    }

    fn last(&self) -> &Order {
        self.asked.last().expect("an order was asked about")
    }

    fn text(&self, field: Field) -> &str {
        self.state.draft.text(field)
    }
}

#[test]
fn the_form_describes_the_order_it_was_opened_with() {
    let used = Used::new();
    assert_eq!(used.last(), &order());
    assert_eq!(used.state.pick().map(|pick| pick.white.as_str()), Some("gannet"));
    assert!(used.state.spoken.starts_with("Trial first. GANNET"), "{}", used.state.spoken);
}

#[test]
fn what_is_typed_reaches_the_order() {
    let mut used = Used::new();
    used.type_in(Field::Pieces, "1,200").type_in(Field::Area, "812,5").type_in(Field::Label, " 100% cotton ");
    used.send(Msg::Choose(Choice::Priority(Priority::Fast)));
    used.send(Msg::Choose(Choice::Dyed(Some(true))))
        .send(Msg::Choose(Choice::DyeClass(DyeClass::HighEnergy)));
    let order = used.last();
    assert_eq!(order.garments[0].pieces, 1200);
    assert_eq!(order.garments[0].label, "100% cotton");
    assert_eq!(order.garments[0].dyed_fibres, Some(vec![Fibre::Polyester]));
    assert!((order.print.area_cm2 - 812.5).abs() < 1e-9);
    assert_eq!(order.print.priority, Priority::Fast);
    used.send(Msg::Choose(Choice::Dyed(Some(false))));
    assert_eq!(used.last().garments[0].dyed_fibres, Some(Vec::new()), "answered no, not left open");
}

#[test]
fn bad_input_keeps_the_last_answer_and_stands_beside_its_field() {
    let table = [
        (Field::Pieces, "some", "garments[0].pieces"),
        (Field::Pieces, "0", "garments[0].pieces"),
        (Field::Pieces, "1.5", "garments[0].pieces"),
        (Field::Weight, "4", "garments[0].areal_weight_gsm"),
        (Field::Coverage, "140", "print.coverage_percent"),
        (Field::Coverage, "", "print.coverage_percent"),
        (Field::Label, "  ", "garments[0].label"),
        (Field::FixedSetTemperature, "330", "shop.dryer_fixed"),
        (Field::Passes, "9", "shop.passes"),
    ];
    for (field, text, path) in table {
        let mut used = Used::new();
        used.type_in(field, text);
        assert_eq!(used.text(field), text, "nothing typed is lost");
        assert!(used.state.stale(), "{path}: the answer is marked as older");
        assert_eq!(used.state.order.as_ref(), Some(&order()), "{path}: the answer stays");
        let fields: Vec<String> = used.state.errors_of(field).map(|error| error.field).collect();
        assert_eq!(fields, [path]);
        used.send(Msg::Undo);
        assert!(!used.state.stale() && used.state.errors.is_empty(), "{path}: undo suggestions it");
    }
}

/// After few unreadable touches, and after more than Undo holds (200).
#[test]
fn the_way_back_leads_to_the_answered_order_however_much_was_written() {
    for touches in [1, 3, 250] {
        let mut used = Used::new();
        used.send(Msg::Theme(Theme::Dark));
        for touch in 0..touches {
            let field = if touch % 2 == 0 { Field::Pieces } else { Field::Humidity };
            used.type_in(field, &format!("none{touch}"));
        }
        assert!(used.state.stale(), "{touches} touches");
        used.send(Msg::BackToReadable);
        assert!(!used.state.stale() && used.state.errors.is_empty(), "{touches} touches");
        assert_eq!(used.state.draft.read().as_ref(), Ok(&order()), "{touches} touches");
        assert_eq!(used.state.draft.theme, Theme::Dark, "{touches} touches: no matter of the order");
    }
}

#[test]
fn errors_of_the_answer_stand_beside_their_field_too() {
    let draft = Draft::of(&order(), "", Voice::default());
    let (state, effects) = update(State::new(draft), Msg::Start);
    let Some(Effect::Answer(asked)) = effects.into_iter().next() else { panic!("an order is asked about") };
    let sum = Problem::SumNot100 { sum: 120.0, section: String::new() };
    let error = FieldError::new("garments[0].label", "80% polyester 40% cotton", sum);
    let (state, _) = update(state, Msg::Answered(asked, Err(vec![error])));
    assert_eq!(state.errors_of(Field::Label).count(), 1);
    assert!(state.report.is_none());
}

#[test]
fn a_late_answer_to_an_older_order_is_dropped() {
    let mut used = Used::new();
    let mut older = order();
    older.garments[0].pieces = 7;
    let mut wrong = report();
    wrong.picks.clear();
    used.send(Msg::Answered(Box::new(older), Ok(Box::new(Answer { report: wrong.into(), cloth: None }))));
    assert_eq!(used.state.report.as_deref(), Some(&report()));
}

#[test]
fn three_hundred_and_thirty_degrees_asks_whether_it_is_fahrenheit() {
    let mut used = Used::new();
    used.type_in(Field::FixedSetTemperature, "330");
    let error = used.state.errors_of(Field::FixedSetTemperature).next().expect("330 °C is out of range");
    let ways = suggestions(&error, &used.state.draft, used.state.bound(Field::FixedSetTemperature));
    assert_eq!(ways.len(), 1);
    assert_eq!(ways[0].say.replace('\u{a0}', " "), "330 °F, that is 166 °C");
    used.type_in(Field::FixedSetTemperature, &ways[0].text);
    assert_eq!(used.last().shop.dryer_fixed, Some(166.0));
    used.type_in(Field::FixedSetTemperature, "330 F");
    let fixed = used.last().shop.dryer_fixed.expect("a unit that is typed is believed");
    assert!((fixed - 165.56).abs() < 0.01);
}

#[test]
fn a_label_that_does_not_add_up_is_mended_with_one_tap() {
    let mut used = Used::new();
    used.type_in(Field::Label, "80% polyester 40 % cotton interlock");
    let sum = Problem::SumNot100 { sum: 120.0, section: String::new() };
    let error = FieldError::new("garments[0].label", used.text(Field::Label), sum);
    let ways: Vec<String> =
        suggestions(&error, &used.state.draft, None).into_iter().map(|way| way.text).collect();
    let expected = [
        "60% polyester 40 % cotton interlock",
        "80% polyester 20 % cotton interlock",
        "67% polyester 33 % cotton interlock",
    ];
    assert_eq!(ways, expected);
    let nearest = Problem::Unknown { nearest: vec!["polyester".into()], accepted: Vec::new() };
    used.type_in(Field::Label, "100% polystar");
    let error = FieldError::new("garments[0].label", "polystar", nearest);
    assert_eq!(suggestions(&error, &used.state.draft, None)[0].text, "100% polyester");
}

#[test]
fn units_convert_and_come_back_without_loss() {
    let mut used = Used::new();
    used.type_in(Field::FixedSetTemperature, "165").send(Msg::Units);
    let shown = [
        (Field::Weight, "4.4"),
        (Field::FixedSetTemperature, "329"),
        (Field::Area, "139.5"),
        (Field::Pieces, "144"),
    ];
    for (field, text) in shown {
        assert_eq!(used.text(field), text);
    }
    let mut same = order();
    same.shop.dryer_fixed = Some(165.0);
    assert_eq!(used.last(), &same, "the order does not change with its units");
    used.send(Msg::Units);
    assert_eq!((used.text(Field::Weight), used.text(Field::Area)), ("150", "900"));
    used.send(Msg::Units).type_in(Field::Weight, "5.3");
    let weight = used.last().garments[0].areal_weight_gsm.expect("a weight");
    assert!((weight - 179.7).abs() < 0.05, "typed in oz/yd²: {weight}");
}

#[test]
fn spanish_writes_a_comma_and_reads_both() {
    let mut used = Used::new();
    used.type_in(Field::Area, "812.5").send(Msg::Language);
    assert_eq!(used.text(Field::Area), "812,5");
    used.type_in(Field::Area, "640.5");
    assert!((used.last().print.area_cm2 - 640.5).abs() < 1e-9);
    assert_eq!(used.state.voice().language, Language::Es);
}

/// What is worked out before anybody opens an order is what opening it asks about, to the last number.
#[test]
fn an_order_is_known_before_it_is_opened() {
    for units in [false, true] {
        for room_order in whitehold::library::harbour_lane().unwrap().orders {
            let mut used = Used::new();
            if units {
                used.send(Msg::Units);
            }
            let ahead = used.state.would_ask(&room_order.order, "any");
            used.send(Msg::Open(Box::new(room_order.order), "any".into()));
            assert_eq!(ahead.as_ref(), used.state.order.as_ref(), "{}", room_order.id);
            assert!(ahead.is_some(), "{} can be read", room_order.id);
        }
    }
}

#[test]
fn every_change_can_be_taken_back_and_done_again() {
    let changes = [
        Msg::Type(Field::Label, "100% cotton".into()),
        Msg::Type(Field::Pieces, "not a number".into()),
        Msg::Step(Field::Pieces, 1),
        Msg::Choose(Choice::Priority(Priority::Soft)),
        Msg::Choose(Choice::Dyed(Some(false))),
        Msg::Choose(Choice::Shelf("gannet".into(), true)),
        Msg::AddGarment,
        Msg::Open(Box::new(Order { garments: vec![Garment::default()], ..order() }), "Other".into()),
        Msg::Blank,
        Msg::Units,
        Msg::Language,
        Msg::Theme(Theme::Dark),
        Msg::Use("tern/2x43".into()),
        Msg::Point(DialSetting { set_c: 170.0, belt_m_per_min: 3.0 }),
    ];
    for change in changes {
        let mut used = Used::new();
        used.send(Msg::Show(Screen::Window));
        let before = used.state.draft.clone();
        used.send(change.clone());
        let after = used.state.draft.clone();
        assert_ne!(before, after, "{change:?} changes something");
        used.send(Msg::Undo);
        assert_eq!(used.state.draft, before, "{change:?} is taken back");
        used.send(Msg::Redo);
        assert_eq!(used.state.draft, after, "{change:?} is done again");
    }
}

#[test]
fn typing_is_one_step_of_undo_until_the_field_is_left() {
    let mut used = Used::new();
    for text in ["1", "12", "120"] {
        used.send(Msg::Type(Field::Pieces, text.into()));
    }
    used.send(Msg::Type(Field::Lot, "A".into()));
    used.send(Msg::Undo).send(Msg::Undo);
    assert_eq!(used.text(Field::Pieces), "144");
    assert!(used.state.undo.is_empty());
}

#[test]
fn steppers_step_on_round_values_and_stop_at_the_ends() {
    let mut used = Used::new();
    used.send(Msg::Step(Field::Pieces, 1));
    assert_eq!(used.text(Field::Pieces), "150");
    used.send(Msg::Step(Field::Pieces, -1));
    assert_eq!(used.text(Field::Pieces), "140");
    used.type_in(Field::Coverage, "98").send(Msg::Step(Field::Coverage, 1));
    assert_eq!(used.text(Field::Coverage), "100");
    used.send(Msg::Step(Field::Coverage, 1));
    assert_eq!(used.text(Field::Coverage), "100");
}

#[test]
fn the_set_point_moves_on_steps_and_stays_on_the_map() {
    let mut used = Used::new();
    used.send(Msg::Show(Screen::Window));
    assert_eq!(used.windows, [None], "the best point first");
    used.send(Msg::Step(Field::SetTemperature, 1));
    assert_eq!(used.windows.last(), Some(&Some(DialSetting { set_c: 166.0, belt_m_per_min: 2.8 })));
    used.send(Msg::Point(DialSetting { set_c: 166.4, belt_m_per_min: 2.83 }));
    assert_eq!(used.text(Field::SetTemperature), "166");
    assert_eq!(used.text(Field::Belt), "2.85");
    used.send(Msg::Point(DialSetting { set_c: 400.0, belt_m_per_min: 0.0 }));
    assert_eq!(
        used.state.point(),
        Ok(Some(DialSetting { set_c: 190.0, belt_m_per_min: 1.5 })),
        "held to the map"
    );
    used.type_in(Field::SetTemperature, "330");
    assert_eq!(used.state.window_errors.len(), 1, "330 °C is not on the map");
    assert!(used.state.window.is_some(), "the window stays");
    used.type_in(Field::Belt, "fast");
    for field in [Field::SetTemperature, Field::Belt] {
        assert_eq!(used.state.errors_of(field).count(), 1, "{field:?} is marked, whatever the other says");
    }
    used.send(Msg::BestPoint);
    assert_eq!(used.windows.last(), Some(&None));
}

#[test]
fn another_way_is_chosen_by_what_it_is() {
    let mut used = Used::new();
    let tern = key(&pick("tern", Verdict::Refuse));
    used.send(Msg::Use(tern.clone()));
    assert_eq!(used.state.pick().map(key), Some(tern));
    used.type_in(Field::Pieces, "20");
    assert_eq!(
        used.state.pick().map(|pick| pick.white.as_str()),
        Some("tern"),
        "the choice outlives a change"
    );
}

#[test]
fn several_garments_keep_their_own_fields() {
    let mut used = Used::new();
    used.send(Msg::AddGarment).type_in(Field::Label, "100% cotton");
    used.send(Msg::Garment(0)).type_in(Field::Pieces, "10");
    let labels: Vec<_> = used.last().garments.iter().map(|it| (it.label.as_str(), it.pieces)).collect();
    assert_eq!(labels, [("100% polyester interlock, 150 g/m2, red", 10), ("100% cotton", 144)]);
    used.send(Msg::RemoveGarment);
    assert_eq!(used.last().garments.len(), 1);
}

#[test]
fn fields_the_form_does_not_show_are_not_lost() {
    let mut full = order();
    full.print.locations = vec!["front".into(), "sleeve".into()];
    full.use_.customer_bans = vec!["pvc".into()];
    full.garments[0].stretch_percent = 30.0;
    full.other = serde_json::from_str(r#"{ "from_a_newer_tablet": [1, 2] }"#).expect("JSON");
    let read = Draft::of(&full, "", Voice { language: Language::Es, units: Units::Us }).read();
    assert_eq!(read, Ok(full));
}

#[test]
fn the_draft_is_kept_as_typed_and_read_back() {
    let mut used = Used::new();
    used.type_in(Field::Pieces, "a dozen").send(Msg::Units);
    assert_eq!(used.state.keeping, Keeping::Kept);
    let text = draft_file::write(&used.state.draft);
    assert_eq!(draft_file::read(&text), Some(used.state.draft.clone()));
    for broken in ["", "{", r#"{"version":2,"draft":{}}"#, r#"{"version":1,"draft":{}}"#] {
        assert_eq!(draft_file::read(broken), None, "{broken}");
    }
}

/// A store that fails takes nothing away: what stands on the page is said not to be kept, goes out as a file, and
/// comes back from it.
#[test]
fn what_cannot_be_kept_can_be_taken_away() {
    let mut used = Used::new();
    used.store = Err(Trouble::Full);
    used.type_in(Field::Pieces, "2304");
    assert_eq!((used.state.keeping, &used.state.trouble), (Keeping::NotKept, &Some(Trouble::Full)));
    let file = draft_file::write(&used.state.draft);

    let mut other = Used::new();
    other.send(Msg::Trouble(Trouble::Wiped)).send(Msg::OpenDraftFile(file));
    assert_eq!(other.state.draft, used.state.draft);
    assert_eq!((other.state.keeping, &other.state.trouble), (Keeping::Kept, &None));
    other.send(Msg::Undo);
    assert_ne!(other.state.draft, used.state.draft, "one Undo takes it back");

    let before = other.state.draft.clone();
    for foreign in ["", "{}", "fabric,lot\njersey,1", "\u{0}"] {
        other.send(Msg::OpenDraftFile(foreign.into()));
        assert_eq!(
            (&other.state.draft, &other.state.trouble),
            (&before, &Some(Trouble::NotOurs)),
            "{foreign}"
        );
    }

    used.store = Ok(());
    used.type_in(Field::Pieces, "2305");
    assert_eq!((used.state.keeping, &used.state.trouble), (Keeping::Kept, &None));
}

#[test]
fn that_the_browser_deleted_something_is_said_until_it_is_read() {
    let mut used = Used::new();
    used.send(Msg::Trouble(Trouble::Wiped)).type_in(Field::Pieces, "5");
    assert_eq!((used.state.keeping, &used.state.trouble), (Keeping::Kept, &Some(Trouble::Wiped)));
    used.send(Msg::DismissTrouble);
    assert_eq!(used.state.trouble, None);
}

#[test]
fn the_whole_state_is_plain_data() {
    let mut used = Used::new();
    used.send(Msg::Show(Screen::Window)).type_in(Field::SetTemperature, "hot");
    let text = serde_json::to_string(&used.state).expect("plain data");
    assert_eq!(serde_json::from_str::<State>(&text).expect("the same"), used.state);
}

#[test]
fn addresses_name_screens() {
    let table = BTreeMap::from([
        ("#job", Some(Screen::Job)),
        ("#window", Some(Screen::Window)),
        ("#forecast", Some(Screen::Forecast)),
        ("#shop", Some(Screen::PrintRoom)),
        ("#wrong", Some(Screen::Diagnosis)),
        ("#sheet", Some(Screen::JobSheet)),
        ("#settings", Some(Screen::Settings)),
        ("#nowhere", None),
    ]);
    for (hash, screen) in table {
        assert_eq!(Screen::of_hash(hash), screen);
    }
}

/// A draft that fits on a full disk does not hide that a record did not; when that is stored too, the trouble is over.
#[test]
fn a_kept_draft_does_not_hide_an_unstored_record() {
    let mut used = Used::new();
    used.state.storing = 1;
    used.send(Msg::LogAppended(1, Err(Trouble::Full)));
    used.type_in(Field::Lot, "HL-1");
    assert_eq!((used.state.keeping, used.state.trouble.clone()), (Keeping::Kept, Some(Trouble::Full)));
    used.send(Msg::LogAppended(1, Ok(())));
    assert_eq!(used.state.trouble, None);
}

/// A store that opens late: what was typed meanwhile stays, and the draft kept before is where Undo ends.
#[test]
fn a_draft_found_late_takes_nothing_away() {
    let kept = || Box::new(Draft::of(&order(), "kept before", Voice::default()));
    let mut untouched = Used::new();
    untouched.send(Msg::DraftFound(kept()));
    assert_eq!(untouched.text(Field::Title), "kept before");

    let mut typed = Used::new();
    typed.type_in(Field::Title, "typed early").send(Msg::DraftFound(kept()));
    assert_eq!(typed.text(Field::Title), "typed early");
    typed.send(Msg::Undo).send(Msg::Undo);
    assert_eq!(typed.text(Field::Title), "kept before");
    typed.send(Msg::Redo).send(Msg::Redo);
    assert_eq!(typed.text(Field::Title), "typed early");
}
