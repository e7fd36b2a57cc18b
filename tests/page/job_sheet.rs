//! The job sheet says what the answer says, in both languages and both systems of units, and reads back as one step.

use super::common::{demo_order, demo_orders};
use super::driver::{self, Edge};
use std::sync::Arc;
use whitehold::desk::job_sheet::JobSheet;
use whitehold::desk::records::{Clock, RecordsMsg};
use whitehold::desk::{Answer, Choice, Draft, Effect, Field, Msg, Screen, State};
use whitehold::library::sheet_code::{SheetCode, SheetCodeError};
use whitehold::library::storage_layout::Contents;
use whitehold::library::{self, Library, starter};
use whitehold::plan::{DialSetting, Order, UnderPrint, Verdict};
use whitehold::wording::{Language, Units, Voice};

/// A Wednesday: 25 November 2026, 10:00 UTC.
const NOW: i64 = 1_795_600_800_000;

/// An edge that answers from the library and works out windows.
struct Works(Arc<Library>);

impl Edge for Works {
    fn runs(&mut self, effect: Effect, _: &State) -> Option<Msg> {
        match effect {
            Effect::Answer(order) => {
                let report = library::answer(&order, &self.0);
                let answer = report.map(|report| Box::new(Answer { report: report.into(), cloth: None }));
                Some(Msg::Answered(order, answer))
            }
            Effect::Window { order, pick, key, at } => {
                let window = library::window(&order, &self.0, &pick, at);
                Some(Msg::Windowed(key, window.map(Box::new)))
            }
            _ => None,
        }
    }
}

type Used = driver::Used<Works>;

impl Used {
    fn new(order: &Order, title: &str, voice: Voice) -> Self {
        let library = Arc::new(starter().unwrap());
        let (ships, tablet, session) = (Arc::clone(&library), "a".into(), "1".into());
        let opened = RecordsMsg::Opened { ships, tablet, session, contents: Contents::default() };
        let opened = Msg::Records(Clock { now: NOW, ahead: 0 }, opened);
        Self::over(Draft::of(order, title, voice), Works(library), [opened])
    }
}

fn metric(language: Language) -> Voice {
    Voice { language, units: Units::Metric }
}

#[test]
fn the_sheet_says_what_the_answer_says() {
    let mut used = Used::new(&demo_order("1187"), "1187 · Eastmole", metric(Language::En));
    used.send(Msg::Show(Screen::JobSheet));
    let (sheet, state) = (JobSheet::of(&used.state).unwrap(), &used.state);
    let (pick, window) = (state.pick().unwrap(), state.window.as_ref().unwrap());
    let setting = window.setting.unwrap();
    assert_eq!((&sheet.white, sheet.verdict), (&pick.name, window.verdict));
    let value = |place: usize| sheet.figures[place].value.replace('\u{a0}', " ");
    assert_eq!(value(0), format!("{:.0} °C", setting.air_c));
    assert_eq!(value(1), format!("{:.1} m/min", setting.belt_m_per_min));
    assert_eq!(value(2), format!("{:.0} s", setting.dwell_s));
    let peak = window.curve.film_bottom_c.iter().copied().fold(0.0, f64::max);
    assert_eq!(value(3), format!("{peak:.0} °C"));
    for figure in [0, 3] {
        assert!(sheet.figures[figure].beside.contains("°F"), "{:?}", sheet.figures[figure]);
    }
    assert!(sheet.figures[1].beside.contains("ft/min"), "{:?}", sheet.figures[1]);
    assert_eq!(sheet.by_hand, None);
    assert_eq!(sheet.first.len(), pick.first_piece.len());
    assert_eq!(sheet.limits.len(), window.margins.len().min(6));
    let strokes = sheet.run.iter().filter(|step| step.name.contains("stroke")).count();
    assert_eq!(strokes, pick.steps.iter().filter(|it| format!("{it:?}").starts_with("White")).count());
    assert!(
        sheet.run.iter().any(|step| step.under.contains("/cm") && step.under.contains("/in")),
        "{:?}",
        sheet.run
    );
    assert_eq!(sheet.trial.is_some(), pick.trial.is_some());
    // The day on which the white is judged: 90 days after Wednesday 25 November 2026.
    let last = sheet.looks.last().unwrap();
    assert_eq!(last.0, "Tue 23 Feb", "{:?}", sheet.looks);
    assert!(sheet.code.is_some());
    assert!(sheet.foot.iter().any(|part| part.contains("Wed 25 Nov")), "{:?}", sheet.foot);
}

#[test]
fn a_trial_stands_with_its_pieces_and_its_day() {
    let mut trials = 0;
    for (id, order) in demo_orders() {
        let mut used = Used::new(order, "x", metric(Language::Es));
        used.send(Msg::Show(Screen::JobSheet));
        let Some(sheet) = JobSheet::of(&used.state) else {
            assert_eq!(used.state.report.as_ref().unwrap().verdict, Verdict::Refuse, "{id}");
            continue;
        };
        let Some(trial) = &used.state.pick().unwrap().trial else { continue };
        trials += 1;
        let paper = sheet.trial.as_ref().unwrap();
        assert_eq!((paper.pieces, paper.oven), (trial.pieces, trial.hours > 0.0), "{id}");
        if trial.hours > 0.0 {
            assert_eq!(sheet.looks[0].0, "jue 26 nov", "{id}: {:?}", sheet.looks);
        }
    }
    assert!(trials > 0, "no order of the week asks for a trial");
}

#[test]
fn a_set_point_moved_by_hand_is_printed_as_moved() {
    let mut used = Used::new(&demo_order("1187"), "1187", metric(Language::En));
    used.send(Msg::Show(Screen::Window));
    let best = used.state.window.as_ref().unwrap().setting.unwrap();
    used.send(Msg::Point(DialSetting { set_c: best.set_c + 4.0, ..best.dialled() }));
    used.send(Msg::Show(Screen::JobSheet));
    let sheet = JobSheet::of(&used.state).unwrap();
    assert!(sheet.by_hand.is_some());
    let moved = used.state.window.as_ref().unwrap().setting.unwrap();
    assert!((moved.set_c - best.set_c - 4.0).abs() < 0.6);
    assert_eq!(sheet.verdict, used.state.window.as_ref().unwrap().verdict);
}

#[test]
fn a_sheet_reads_back_as_one_step_of_undo() {
    let order = demo_order("1187");
    let mut first = Used::new(&order, "1187 · Eastmole", metric(Language::En));
    first.send(Msg::Show(Screen::JobSheet));
    let setting = first.state.window.as_ref().unwrap().setting.unwrap();
    let sheet_code = SheetCode {
        order: order.clone(),
        title: "1187 · Eastmole".into(),
        way: whitehold::desk::key(first.state.pick().unwrap()),
        at: Some(setting.dialled()),
    };
    let mut other = Used::new(&demo_order("1185"), "1185", metric(Language::Es));
    let before = other.state.draft.clone();
    other.send(Msg::Show(Screen::JobSheet));
    other.send(Msg::Scanned(Ok(Box::new(SheetCode::read(&sheet_code.write()).unwrap()))));
    assert_eq!(other.state.order.as_ref(), Some(&order));
    assert_eq!(other.state.draft.text(Field::Title), "1187 · Eastmole");
    let read = other.state.window.as_ref().unwrap().setting.unwrap();
    assert!(
        (read.set_c - setting.set_c).abs() < 1e-9
            && (read.belt_m_per_min - setting.belt_m_per_min).abs() < 1e-9
    );
    assert_eq!(other.state.scanned, Some(Ok("1187 · Eastmole".into())));
    other.send(Msg::Undo);
    assert_eq!(other.state.draft, before);
    other.send(Msg::Scanned(Err(SheetCodeError::Damaged)));
    assert_eq!(other.state.draft, before);
    assert!(other.state.spoken.contains("código"), "{}", other.state.spoken);
}

/// A flat piece and a board stand on the sheet, travel in its code and in the draft's file; a sheet and a draft of before
/// that field open as a garment with its back.
#[test]
fn what_lies_under_the_print_stands_on_the_sheet() {
    let rows = [
        (UnderPrint::BackPanel, Language::En, None),
        (UnderPrint::Nothing, Language::En, Some("under the print: nothing, a flat piece")),
        (UnderPrint::Board, Language::Es, Some("bajo la estampa: un cartón")),
    ];
    for (under, language, says) in rows {
        let mut used = Used::new(&demo_order("1185"), "1185", metric(language));
        used.send(Msg::Choose(Choice::UnderPrint(under)));
        used.send(Msg::Show(Screen::JobSheet));
        assert_eq!(used.state.order.as_ref().unwrap().garments[0].under_print, under);
        let about = JobSheet::of(&used.state).unwrap().about.join(" · ");
        assert_eq!(about.contains("print: ") || about.contains("estampa: "), says.is_some(), "{about}");
        assert!(says.is_none_or(|says| about.contains(says)), "{about}");
        let order = used.state.order.clone().unwrap();
        let written = SheetCode { order, ..SheetCode::default() }.write();
        assert_eq!(written.contains("under_print"), says.is_some(), "{written}");
        assert_eq!(SheetCode::read(&written).unwrap().order.garments[0].under_print, under);
        let draft = serde_json::to_string(&used.state.draft).unwrap();
        assert_eq!(serde_json::from_str::<Draft>(&draft).unwrap(), used.state.draft);
    }
    let before =
        "WHITEHOLD1 {\"o\":{\"garments\":[{\"label\":\"100% cotton\"}]},\"t\":\"\",\"w\":\"\",\"s\":null}";
    assert_eq!(SheetCode::read(before).unwrap().order.garments[0].under_print, UnderPrint::BackPanel);
}

#[test]
fn drying_stands_first_and_the_way_without_it_can_be_chosen() {
    let mut order = demo_order("1189");
    order.shop.shelf = vec!["gannet-cool".into()];
    order.garments[0].label = "100% polyester mesh 140 gsm navy".into();
    order.garments[0].added_water_percent = 40.0;
    order.print.heat_after.clear();
    let mut used = Used::new(&order, "1189", metric(Language::Es));
    used.send(Msg::Show(Screen::JobSheet));
    let first = JobSheet::of(&used.state).unwrap().run.remove(0);
    assert_eq!(first.name, "Secar la tela");
    let under = first.under.replace('\u{a0}', " ");
    assert_eq!(under, "un paso, agua de 40 % a 0 %, estampar enseguida");
    let picks = &used.state.report.as_ref().unwrap().picks;
    let keys: Vec<String> = picks.iter().map(whitehold::desk::key).collect();
    assert!(keys.len() == 2 && keys[0].contains("/dried") && !keys[1].contains("/dried"), "{keys:?}");
    used.send(Msg::Use(keys[1].clone()));
    used.send(Msg::Show(Screen::JobSheet));
    let run = JobSheet::of(&used.state).unwrap().run;
    assert!(!run.is_empty() && run.iter().all(|step| step.name != "Secar la tela"), "{run:?}");
}
