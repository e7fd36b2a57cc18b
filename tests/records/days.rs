//! Days of the calendar, and the days on which a kept print is looked at.

use super::common::{an_order, answered, best, forecast};
use proptest::prelude::*;
use whitehold::plan::{BleedForecast, Order, days_to_look};
use whitehold::quantity::Day;
use whitehold::wording::{Language, Voice};

/// Source: Python 3.11, `(date(...) - date(1970, 1, 1)).days`.
#[test]
fn days_are_counted_as_another_calendar_counts_them() {
    let rows = [
        ("1970-01-01", 0),
        ("2000-02-29", 11016),
        ("2026-12-04", 20791),
        ("1999-12-31", 10956),
        ("2100-03-01", 47541),
        ("1600-03-01", -135080),
    ];
    for (text, number) in rows {
        let day = Day::read(text).expect("a day");
        assert_eq!(day, Day::number(number), "{text}");
        assert_eq!(day.to_string(), text);
    }
    for text in
        ["", "2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "4 Dec", "2026-12", "2026-12-04-1"]
    {
        assert_eq!(Day::read(text), None, "{text:?}");
    }
}

proptest! {
    /// What is written is read as the same day, and days add up.
    #[test]
    fn a_day_is_read_as_it_is_written(number in -100_000_i64..2_000_000, days in -10_000_i64..10_000) {
        let day = Day::number(number);
        if (0..=9999).contains(&day.civil().0) {
            prop_assert_eq!(Day::read(&day.to_string()), Some(day));
        }
        prop_assert_eq!(day.until(day.plus(days)), days);
    }

    /// No text is a crash.
    #[test]
    fn any_text_is_a_day_or_none(text in ".{0,20}") {
        let _ = Day::read(&text);
    }
}

fn aged(looked_at: f64, due: &str) -> (Order, BleedForecast) {
    let order = an_order().label("100% polyester interlock 150 gsm red").shelf(&["gannet"]).used(|used| {
        used.looked_at_after_days = looked_at;
        used.due = due.into();
    });
    let order = order.build();
    let forecast = forecast(&order, best(&answered(&order)));
    (order, forecast)
}

#[test]
fn a_kept_print_is_looked_at_on_these_days() {
    for (looked_at, days) in [
        (90.0, vec![1.0, 7.0, 30.0, 90.0]),
        (7.0, vec![1.0, 7.0]),
        (0.0, vec![0.0]),
        (21.0, vec![1.0, 7.0, 21.0]),
    ] {
        assert_eq!(days_to_look(looked_at), days);
    }
    let (order, plain) = aged(90.0, "2026-12-04");
    assert!(plain.follow_up.iter().all(|look| look.date.is_none()) && plain.leaves.is_none());
    let dated = plain.clone().dated(Day::read("2026-11-24").expect("a day"), &order.use_.due);
    let dates: Vec<&str> = dated.follow_up.iter().filter_map(|look| look.date.as_deref()).collect();
    // Source: Python 3.11, `date(2026, 11, 24) + timedelta(days)`.
    assert_eq!(dates, ["2026-11-25", "2026-12-01", "2026-12-24", "2027-02-22"]);
    let leaves = dated.leaves.as_ref().expect("a due date");
    assert!((leaves.day - 10.0).abs() < 1e-12);
    let chance = dated.shows_by(10.0);
    assert!((leaves.shows - chance).abs() < 1e-12);
    // What is expected on the day that matters is the band's own.
    let last = dated.follow_up.last().expect("a day");
    assert_eq!(last.de00, dated.de00_by(90.0));
    assert!((last.shows - (1.0 - dated.stays_white)).abs() < 1e-12);
    // A due date that is no day, or past, is no harm.
    assert!(plain.clone().dated(Day::number(0), "soon").leaves.is_none());
    let late = plain.dated(Day::read("2027-01-01").expect("a day"), "2026-12-04");
    assert!(late.leaves.as_ref().expect("a day").day < 0.0);
    assert_eq!(
        Voice::from(Language::En).forecast_says(&late).len(),
        2,
        "nothing is said of a date that is past"
    );
}

#[test]
fn the_words_stand_on_the_figures() {
    let (order, forecast) = aged(90.0, "2026-12-04");
    let forecast = forecast.dated(Day::read("2026-11-24").expect("a day"), &order.use_.due);
    for (language, due, look) in
        [(Language::En, "before Fri 4 Dec", "Tue 1 Dec"), (Language::Es, "antes del vie 4 dic", "mar 1 dic")]
    {
        let voice = Voice::from(language);
        let says = voice.forecast_says(&forecast).join(" ");
        assert!(says.contains(due) && says.contains(&voice.chance(1.0 - forecast.stays_white)), "{says}");
        let tables = [
            voice.forecast_days(&forecast),
            voice.forecast_ledger(&forecast),
            voice.forecast_worlds(&forecast),
            voice.forecast_looks(&forecast),
        ];
        for table in &tables {
            assert!(!table.title.is_empty() && !table.rows.is_empty(), "{table:?}");
            assert!(table.rows.iter().all(|row| row.len() == table.head.len()), "{table:?}");
        }
        let looks = &tables[3];
        assert!(looks.rows[1][0].starts_with(look), "{:?}", looks.rows);
        // The worst world is named, and is one of the rows.
        let worlds = &tables[2];
        let named = worlds.rows.iter().any(|row| worlds.says.contains(&format!(": {}.", row[0])));
        assert!(named, "{}", worlds.says);
        assert!(voice.forecast_cut(&forecast).is_some() && !voice.forecast_on_cloth(&forecast).is_empty());
    }
    let [en, es] =
        [Language::En, Language::Es].map(|language| Voice::from(language).forecast_says(&forecast));
    assert!(
        !en.is_empty() && en.len() == es.len() && en.iter().zip(&es).all(|(en, es)| en != es),
        "{en:?} {es:?}"
    );
}
