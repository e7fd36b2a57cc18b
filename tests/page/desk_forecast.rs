//! The forecast on the desk: it is asked for where it is looked at, follows the set point, and is drawn as it stands.

use super::common::{an_order, answered, best, forecast};
use super::driver::{self, Edge};
use proptest::prelude::*;
use std::sync::LazyLock;
use whitehold::desk::picture::ageing::{self, ageing_chart};
use whitehold::desk::picture::section::{FILM, film_sections};
use whitehold::desk::records::{Clock, RecordsMsg};
use whitehold::desk::{Answer, Draft, Effect, Field, Msg, Screen, State};
use whitehold::library::{self, Library, starter};
use whitehold::plan::{BleedForecast, DialSetting, Order};
use whitehold::wording::{Language, Phrase, Voice};

const RED_POLYESTER: &str = "100% polyester interlock 150 gsm red";

fn order(label: &str) -> Order {
    an_order().label(label).pieces(144).shelf(&["gannet", "plover", "tern"]).build()
}

/// How the white of the first pick ages.
fn aged(label: &str) -> BleedForecast {
    let order = order(label);
    forecast(&order, best(&answered(&order)))
}

static RED: LazyLock<BleedForecast> = LazyLock::new(|| aged(RED_POLYESTER));

#[test]
fn the_band_rises_from_good_to_bad_and_stays_in_its_box() {
    for label in [RED_POLYESTER, "50% cotton 50% polyester jersey 185 gsm navy"] {
        let forecast = aged(label);
        let drawn = ageing_chart(&forecast).expect("a band");
        assert!(!forecast.days.is_empty());
        assert_eq!(forecast.days.len(), forecast.de00.len(), "{label}");
        for spread in &forecast.de00 {
            let rising = [spread.low, spread.lower, spread.likely, spread.upper, spread.high];
            assert!(rising.is_sorted(), "{label}: {spread:?}");
        }
        for line in &drawn.lines {
            for point in line[1..].split('L') {
                let (x, y) = point.split_once(' ').expect("a point");
                let (x, y): (f64, f64) = (x.parse().unwrap(), y.parse().unwrap());
                assert!((36.0..=486.0).contains(&x) && (14.0..=358.0).contains(&y), "{label}: {x} {y}");
            }
        }
        assert!(drawn.labels.iter().all(|y| (0.0..ageing::HEIGHT).contains(y)), "{:?}", drawn.labels);
    }
}

#[test]
fn a_cut_shows_as_many_dots_as_there_is_dye() {
    let forecast = &*RED;
    let drawn = film_sections(forecast).expect("a film");
    assert!((drawn.eye - FILM * 30.0 / forecast.film_um).abs() < 1e-9 || drawn.eye == FILM);
    let dots = |path: &str| path.matches('M').count() as f64;
    let last = forecast.cuts.len() - 1;
    let held: Vec<(f64, f64)> = [0, 1, last]
        .map(|index| &forecast.cuts[index])
        .into_iter()
        .zip(&drawn.cuts)
        .map(|(cut, shown)| {
            let mean = |all: &[f64]| all.iter().sum::<f64>() / all.len() as f64;
            let dye = mean(&cut.free_kg_per_m3) + mean(&cut.bound_kg_per_m3);
            (dye, dots(&shown.free) + dots(&shown.bound))
        })
        .collect();
    // All cuts are drawn on one scale; layers of a white without blocker are equally thick. Half a dot each is rounding.
    if forecast.blocker_um == 0.0 {
        for (dye, count) in &held {
            let expected = held[0].1 * dye / held[0].0;
            assert!((count - expected).abs() <= 4.0 + 0.02 * expected, "{held:?}");
        }
    }
}

/// An edge that answers from the library and remembers the set point of every forecast it was asked for.
struct Asked {
    asked: Vec<Option<DialSetting>>,
    library: Library,
}

impl Edge for Asked {
    fn runs(&mut self, effect: Effect, _: &State) -> Option<Msg> {
        match effect {
            Effect::Answer(order) => {
                let answer = library::answer(&order, &self.library)
                    .map(|report| Box::new(Answer { report: report.into(), cloth: None }));
                Some(Msg::Answered(order, answer))
            }
            Effect::Forecast { order, pick, key, at } => {
                self.asked.push(at);
                let prepared = library::pick_forecast(&order, &self.library, &pick).unwrap().unwrap();
                let found = library::forecast_at(&prepared, at).unwrap().unwrap();
                Some(Msg::Forecast(key, Ok(Box::new(found))))
            }
            Effect::Window { .. } | Effect::Diagnose { .. } => panic!("nobody looks at the window"),
            Effect::SaveDraft | Effect::AppendLog(_) | Effect::LibraryChanged => None,
        }
    }
}

type Used = driver::Used<Asked>;

impl Used {
    fn new(order: &Order) -> Self {
        let draft = Draft::of(order, "An order", Voice::default());
        Self::over(draft, Asked { asked: Vec::new(), library: starter().unwrap() }, [])
    }
}

#[test]
fn a_forecast_is_asked_for_where_it_is_looked_at_and_follows_the_set_point() {
    let mut used = Used::new(&order(RED_POLYESTER));
    assert!(used.asked.is_empty(), "the answer's own screen needs none");
    used.send(Msg::Show(Screen::Forecast));
    assert_eq!(used.asked, [None], "the best point first");
    let best = used.state.forecast.clone().expect("a forecast");
    let at = best.setting.expect("a set point");
    used.send(Msg::Point(DialSetting { set_c: at.set_c + 8.0, ..at.dialled() }));
    let hotter = used.state.forecast.clone().expect("a forecast");
    let end = |forecast: &BleedForecast| forecast.de00.last().unwrap().high;
    assert!(end(&hotter) > end(&best), "hotter, more dye: {} then {}", end(&best), end(&hotter));
    assert!(hotter.stays_white < best.stays_white);
    used.send(Msg::Point(DialSetting { set_c: 900.0, ..at.dialled() }));
    let held = used.state.draft.value(Field::SetTemperature, None).unwrap().unwrap();
    assert!((held - at.set_c).abs() <= 16.0, "held near the best point: {held}");
    used.send(Msg::BestPoint);
    assert_eq!(used.state.forecast.as_ref().map(end), Some(end(&best)));
}

#[test]
fn nothing_is_asked_for_a_cloth_without_dye_that_travels() {
    for label in ["100% cotton jersey 180 gsm red", "100% viscose jersey 160 gsm navy"] {
        let mut used = Used::new(&order(label));
        used.send(Msg::Show(Screen::Forecast));
        assert!(used.state.pick().is_some() && !used.state.bleeds(), "{label}");
        assert!(used.asked.is_empty() && used.state.forecast.is_none(), "{label}");
    }
}

#[test]
fn the_sentences_differ_by_what_shows() {
    let some = |day: &str| Some(day.to_owned());
    let table = [
        (None, None, "stays under the limit for 90 days", "pasa el límite en 90 días"),
        (some("0"), None, "at once", "enseguida"),
        (some("12"), None, "from day 12", "desde el día 12"),
        (some("0"), some("0"), "at once", "enseguida"),
        (some("2"), some("30"), "about day 30", "hacia el día 30"),
    ];
    for (early, likely, english, spanish) in table {
        for (language, wanted) in [(Language::En, english), (Language::Es, spanish)] {
            let phrase =
                Phrase::FirstShows { early: early.clone(), likely: likely.clone(), last: "90".into() };
            let said = Voice::from(language).say(&phrase);
            assert!(said.contains(wanted), "{said:?} lacks {wanted:?}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// Labels never lie on each other and never leave the picture, wherever the band ends.
    #[test]
    fn labels_keep_apart(ends in prop::array::uniform3(0.0..40.0_f64), limit in 0.5..6.0_f64) {
        let mut forecast = RED.clone();
        let mut ends = ends;
        ends.sort_by(f64::total_cmp);
        forecast.limit = limit;
        for spread in &mut forecast.de00 {
            [spread.low, spread.likely, spread.high] = ends;
            (spread.lower, spread.upper) = (ends[0], ends[2]);
        }
        let mut labels = ageing_chart(&forecast).unwrap().labels;
        labels.sort_by(f64::total_cmp);
        prop_assert!(labels.windows(2).all(|pair| pair[1] - pair[0] > 22.0), "{labels:?}");
        prop_assert!(labels[0] > 0.0 && labels[3] < 356.0, "{labels:?}");
    }
}

/// The due date is marked where the edge has said which day it is, and the core asks no clock.
#[test]
fn the_due_date_is_marked_once_the_day_is_known() {
    let mut order = order(RED_POLYESTER);
    order.use_.due = "2026-12-04".into();
    let mut used = Used::new(&order);
    used.send(Msg::Show(Screen::Forecast));
    let undated = used.state.forecast.clone().expect("a forecast");
    assert!(undated.leaves.is_none() && ageing_chart(&undated).unwrap().leaves.is_none());
    // 24 November 2026, 9:00 in UTC.
    let clock = Clock { now: 1_795_510_800_000, ahead: 0 };
    used.send(Msg::Records(clock, RecordsMsg::Tick));
    used.send(Msg::BestPoint);
    let dated = used.state.forecast.clone().expect("a forecast");
    let (at, _) = ageing_chart(&dated).unwrap().leaves.expect("a mark");
    let drawn = ageing_chart(&dated).unwrap();
    let days = drawn.time.at(10.0_f64.sqrt());
    assert!((at - days).abs() < 1e-9, "{at} for {days}");
    assert_eq!(dated.follow_up[0].date.as_deref(), Some("2026-11-25"));
}
