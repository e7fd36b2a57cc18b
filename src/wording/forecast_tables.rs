//! The tables of the Forecast screen, each with a sentence that says what it shows.

use super::{DyePath, ForecastPhrase, Label, Numeral, Phrase, Quantity, Voice};
use crate::plan::{BleedForecast, Spread};

/// Days shown in the table of the band.
const DAYS: [f64; 8] = [0.0, 1.0, 3.0, 7.0, 14.0, 30.0, 60.0, 90.0];

/// A table: the first column holds words, the others numbers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ForecastTable {
    /// What it is about.
    pub title: String,
    /// What it shows, in a sentence or two.
    pub says: String,
    /// Column heads.
    pub head: Vec<String>,
    /// Rows, each as long as the head.
    pub rows: Vec<Vec<String>>,
}

impl Voice {
    fn shift(self, value: f64) -> String {
        self.quantity(Quantity::ColourDifference, value)
    }

    fn share_of(self, part: f64, whole: f64) -> String {
        self.quantity(Quantity::Percent, 100.0 * part / whole.max(1e-30))
    }

    /// The chance before the day that matters and before the order is due, how far the white is from full, and its rim.
    #[must_use]
    pub fn forecast_says(self, forecast: &BleedForecast) -> Vec<String> {
        let day = self.bare(Quantity::Days, forecast.looked_at_days);
        let mut says = vec![
            self.say(&ForecastPhrase::ShowsBefore { chance: self.chance(1.0 - forecast.stays_white), day }),
        ];
        if let Some(leaves) = forecast.leaves.as_ref().filter(|leaves| leaves.day >= 0.0) {
            let (chance, date) = (self.chance(leaves.shows), self.day(&leaves.date));
            says.push(self.say(&ForecastPhrase::ShowsBeforeDue { chance, date }));
        }
        let times = forecast.turns_at_times;
        let written = |times: f64| Numeral(self.language).two_figures(times);
        says.push(self.say(&if forecast.turns_beyond {
            // Rounded down: "more than" stays true.
            let digits = if times < 3.0 { 10.0 } else { 1.0 };
            ForecastPhrase::TurnsBeyond {
                times: Numeral(self.language).short((times * digits).floor() / digits, 1),
            }
        } else if times >= 1.0 {
            ForecastPhrase::TurnsAt { times: written(times) }
        } else {
            ForecastPhrase::PastFull { times: written(times.max(1e-3).recip()) }
        }));
        if let Some(rim) = forecast.rim {
            says.push(self.say(&ForecastPhrase::Rim {
                overhang: Numeral(self.language).short(rim.overhang_mm, 2),
                likely: self.shift(rim.de00.likely * rim.seen),
                high: self.shift(rim.de00.high * rim.seen),
                limit: self.shift(forecast.limit),
            }));
            let (likely, share) = (self.shift(rim.de00.likely), self.share_of(rim.seen, 1.0));
            says.push(self.say(&ForecastPhrase::RimMetered { likely, share }));
        }
        says
    }

    /// The picture of the print on its cloth (split circles, fresh beside aged) as a sentence.
    #[must_use]
    pub fn forecast_on_cloth(self, forecast: &BleedForecast) -> String {
        let Spread { low, likely, high, .. } = forecast.de00_by(forecast.looked_at_days);
        let [low, likely, high] = [low, likely, high].map(|value| self.shift(value));
        let day = self.bare(Quantity::Days, forecast.looked_at_days);
        self.say(&ForecastPhrase::OnCloth { low, likely, high, day })
    }

    /// The cut through the film as a sentence: free dye in the depth that the eye sees, fresh and on the last day. `None`
    /// without two cuts.
    #[must_use]
    pub fn forecast_cut(self, forecast: &BleedForecast) -> Option<String> {
        let [first, .., last] = forecast.cuts.as_slice() else { return None };
        let seen = |heights: &[f64], free: &[f64]| {
            let under = forecast.film_um - crate::migration::VISIBLE_DEPTH * 1e6;
            let top = heights.iter().zip(free).filter(|(height, _)| **height >= under);
            let (sum, count) = top.fold((0.0, 0.0), |(sum, count), (_, free)| (sum + free, count + 1.0));
            let grams = 1e3 * sum / f64::max(count, 1.0);
            // Less than half of the last digit that is written.
            if grams < 0.005 { "0".into() } else { Numeral(self.language).two_figures(grams) }
        };
        Some(self.say(&ForecastPhrase::CutSays {
            first: seen(&first.height_um, &first.free_kg_per_m3),
            last: seen(&last.height_um, &last.free_kg_per_m3),
            day: self.bare(Quantity::Days, last.day),
        }))
    }

    /// The band of tints, day by day.
    #[must_use]
    pub fn forecast_days(self, forecast: &BleedForecast) -> ForecastTable {
        let shown = |day: &f64| {
            let matters = (day - forecast.looked_at_days).abs() < 1e-6;
            matters || DAYS.iter().any(|shown| (day - shown).abs() < 1e-6)
        };
        let all = forecast.days.iter().zip(&forecast.de00).zip(&forecast.shows);
        let row = |((day, spread), shows): ((&f64, &Spread), &f64)| {
            let value = |value| self.shift(value);
            let day = self.bare(Quantity::Days, *day);
            vec![day, value(spread.low), value(spread.likely), value(spread.high), self.chance(*shows)]
        };
        let names = [Label::Day, Label::BestCase, Label::Likely, Label::BadEnd];
        let mut head: Vec<String> = names.iter().map(|name| self.label(*name).into()).collect();
        head.push(self.say(&ForecastPhrase::OverLimitBy));
        let rows = all.filter(|((day, _), _)| shown(day)).map(row).collect();
        ForecastTable { title: self.label(Label::HowItAges).into(), says: String::new(), head, rows }
    }

    /// Where the dye came from and where it is now.
    #[must_use]
    pub fn forecast_ledger(self, forecast: &BleedForecast) -> ForecastTable {
        let it = &forecast.ledger;
        let paths = [
            (DyePath::Vapour, it.vapour_mg_per_m2),
            (DyePath::Contact, it.contact_mg_per_m2),
            (DyePath::Loose, it.loose_mg_per_m2),
        ];
        let (path, most) = paths.into_iter().fold(paths[0], |a, b| if b.1 > a.1 { b } else { a });
        let came =
            self.say(&ForecastPhrase::MostCame { path, share: self.share_of(most, it.heat_mg_per_m2) });
        let lies = it.bound_mg_per_m2 + it.free_mg_per_m2;
        let held = self.say(&ForecastPhrase::HeldShare { share: self.share_of(it.bound_mg_per_m2, lies) });
        let rows = [
            (ForecastPhrase::ByVapour, it.vapour_mg_per_m2),
            (ForecastPhrase::ByContact, it.contact_mg_per_m2),
            (ForecastPhrase::Loose, it.loose_mg_per_m2),
            (ForecastPhrase::SinceOwn, it.own_mg_per_m2),
            (ForecastPhrase::SinceFacing, it.facing_mg_per_m2),
            (ForecastPhrase::HeldNow, it.bound_mg_per_m2),
            (ForecastPhrase::FreeNow, it.free_mg_per_m2),
        ];
        let mg =
            |value: f64| Numeral(self.language).two_figures(if value.abs() < 0.005 { 0.0 } else { value });
        ForecastTable {
            title: self.say(&ForecastPhrase::WhereDyeWent),
            says: format!("{came} {held}"),
            head: vec![self.say(&ForecastPhrase::DyeWay), self.say(&ForecastPhrase::DyeAmount)],
            rows: rows.into_iter().map(|(what, value)| vec![self.say(&what), mg(value)]).collect(),
        }
    }

    /// The likely tint on the day that matters if one thing that cannot be known were different.
    #[must_use]
    pub fn forecast_worlds(self, forecast: &BleedForecast) -> ForecastTable {
        let it = &forecast.worlds;
        let at = forecast.days.partition_point(|day| *day < forecast.looked_at_days);
        let on = |line: &[f64]| line.get(at).copied().unwrap_or_default();
        let here = forecast.de00_by(forecast.looked_at_days).likely;
        let worlds = [
            (ForecastPhrase::AsForecast, here),
            (ForecastPhrase::SlowFilm, on(&it.slow_film)),
            (ForecastPhrase::FastFilm, on(&it.fast_film)),
            (ForecastPhrase::ColdCorner, on(&it.cold)),
            (ForecastPhrase::HotCorner, on(&it.hot)),
            (ForecastPhrase::GatedFibre, on(&it.gated)),
            (ForecastPhrase::OpenAir, on(&it.open)),
            (ForecastPhrase::WarmerStore, on(&it.warmer)),
        ];
        let least = worlds.iter().fold(f64::INFINITY, |least, world| least.min(world.1));
        let mut most = &worlds[0];
        for world in &worlds {
            if world.1 > most.1 {
                most = world;
            }
        }
        let says = self.say(&ForecastPhrase::IfOtherwiseSays {
            least: self.shift(least),
            most: self.shift(most.1),
            world: self.say(&most.0),
        });
        let day = self.bare(Quantity::Days, forecast.looked_at_days);
        ForecastTable {
            title: self.say(&ForecastPhrase::IfOtherwise),
            says: format!("{says} {}", self.say(&ForecastPhrase::GateNote)),
            head: vec![String::new(), format!("ΔE00, {}", self.say(&Phrase::DayNumber { day }))],
            rows: worlds.iter().map(|(what, value)| vec![self.say(what), self.shift(*value)]).collect(),
        }
    }

    /// The days on which to look, as dates where those are known.
    #[must_use]
    pub fn forecast_looks(self, forecast: &BleedForecast) -> ForecastTable {
        let row = |look: &crate::plan::FollowUp| {
            let day = self.say(&Phrase::DayNumber { day: self.bare(Quantity::Days, look.day) });
            let on =
                look.date.as_ref().map_or_else(|| day.clone(), |date| format!("{}, {day}", self.day(date)));
            vec![on, self.shift(look.de00.likely), self.shift(look.de00.high), self.chance(look.shows)]
        };
        ForecastTable {
            title: self.say(&ForecastPhrase::WhenToLook),
            says: self.say(&ForecastPhrase::WhenToLookSays),
            head: [
                ForecastPhrase::LookOn,
                ForecastPhrase::Expect,
                ForecastPhrase::BadEndWord,
                ForecastPhrase::OverLimitBy,
            ]
            .iter()
            .map(|head| self.say(head))
            .collect(),
            rows: forecast.follow_up.iter().map(row).collect(),
        }
    }
}
