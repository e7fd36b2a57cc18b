//! The tables and sentences of a forecast, each with the finding over it.

use super::{Aged, Way};
use crate::plan::{BleedForecast, Spread};
use crate::wording::{Label, Numeral, Quantity, Voice};

/// Days of the table behind the band.
const DAYS: [f64; 8] = [0.0, 1.0, 3.0, 7.0, 14.0, 30.0, 60.0, 90.0];

/// A table as it is read: the first column holds words, the others figures.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// What it is about.
    pub title: String,
    /// What it shows, in a sentence or two.
    pub says: String,
    /// Heads of the columns.
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
    pub fn aged_says(self, forecast: &BleedForecast) -> Vec<String> {
        let day = self.bare(Quantity::Days, forecast.looked_at_days);
        let mut says =
            vec![self.aged(&Aged::ShowsBefore { chance: self.chance(1.0 - forecast.stays_white), day })];
        if let Some(leaves) = forecast.leaves.as_ref().filter(|leaves| leaves.day >= 0.0) {
            let (chance, date) = (self.chance(leaves.shows), self.day(&leaves.date));
            says.push(self.aged(&Aged::ShowsBeforeDue { chance, date }));
        }
        let times = forecast.turns_at_times;
        let written = |times: f64| Numeral(self.language).two_figures(times);
        says.push(self.aged(&if times >= 1.0 {
            Aged::TurnsAt { times: written(times) }
        } else {
            Aged::PastFull { times: written(times.max(1e-3).recip()) }
        }));
        if let Some(rim) = forecast.rim {
            says.push(self.aged(&Aged::Rim {
                overhang: Numeral(self.language).short(rim.overhang_mm, 2),
                likely: self.shift(rim.de00.likely * rim.seen),
                high: self.shift(rim.de00.high * rim.seen),
                limit: self.shift(forecast.limit),
            }));
            let (likely, share) = (self.shift(rim.de00.likely), self.share_of(rim.seen, 1.0));
            says.push(self.aged(&Aged::RimMetered { likely, share }));
        }
        says
    }

    /// The split circles in a sentence.
    #[must_use]
    pub fn aged_on_cloth(self, forecast: &BleedForecast) -> String {
        let Spread { low, likely, high, .. } = forecast.de00_by(forecast.looked_at_days);
        let [low, likely, high] = [low, likely, high].map(|value| self.shift(value));
        let day = self.bare(Quantity::Days, forecast.looked_at_days);
        self.aged(&Aged::OnCloth { low, likely, high, day })
    }

    /// The cut in a sentence: free dye where the eye sees it, fresh and at the end; nothing without two cuts.
    #[must_use]
    pub fn aged_cut(self, forecast: &BleedForecast) -> Option<String> {
        let [first, .., last] = forecast.cuts.as_slice() else { return None };
        let seen = |heights: &[f64], free: &[f64]| {
            let under = forecast.film_um - crate::migration::VISIBLE_DEPTH * 1e6;
            let top = heights.iter().zip(free).filter(|(height, _)| **height >= under);
            let (sum, count) = top.fold((0.0, 0.0), |(sum, count), (_, free)| (sum + free, count + 1.0));
            let grams = 1e3 * sum / f64::max(count, 1.0);
            // Less than the last figure that is written is none.
            if grams < 0.005 { "0".into() } else { Numeral(self.language).two_figures(grams) }
        };
        Some(self.aged(&Aged::CutSays {
            first: seen(&first.height_um, &first.free_kg_per_m3),
            last: seen(&last.height_um, &last.free_kg_per_m3),
            day: self.bare(Quantity::Days, last.day),
        }))
    }

    /// The band, day by day.
    #[must_use]
    pub fn aged_days(self, forecast: &BleedForecast) -> Table {
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
        head.push(self.aged(&Aged::OverLimitBy));
        let rows = all.filter(|((day, _), _)| shown(day)).map(row).collect();
        Table { title: self.label(Label::HowItAges).into(), says: String::new(), head, rows }
    }

    /// Where the dye came from and where it lies.
    #[must_use]
    pub fn aged_ledger(self, forecast: &BleedForecast) -> Table {
        let it = &forecast.ledger;
        let ways = [
            (Way::Vapour, it.vapour_mg_per_m2),
            (Way::Contact, it.contact_mg_per_m2),
            (Way::Loose, it.loose_mg_per_m2),
        ];
        let (way, most) = ways.into_iter().fold(ways[0], |a, b| if b.1 > a.1 { b } else { a });
        let came = self.aged(&Aged::MostCame { way, share: self.share_of(most, it.heat_mg_per_m2) });
        let lies = it.bound_mg_per_m2 + it.free_mg_per_m2;
        let held = self.aged(&Aged::HeldShare { share: self.share_of(it.bound_mg_per_m2, lies) });
        let rows = [
            (Aged::ByVapour, it.vapour_mg_per_m2),
            (Aged::ByContact, it.contact_mg_per_m2),
            (Aged::Loose, it.loose_mg_per_m2),
            (Aged::SinceOwn, it.own_mg_per_m2),
            (Aged::SinceFacing, it.facing_mg_per_m2),
            (Aged::HeldNow, it.bound_mg_per_m2),
            (Aged::FreeNow, it.free_mg_per_m2),
        ];
        let mg =
            |value: f64| Numeral(self.language).two_figures(if value.abs() < 0.005 { 0.0 } else { value });
        Table {
            title: self.aged(&Aged::WhereDyeWent),
            says: format!("{came} {held}"),
            head: vec![self.aged(&Aged::DyeWay), self.aged(&Aged::DyeAmount)],
            rows: rows.into_iter().map(|(what, value)| vec![self.aged(&what), mg(value)]).collect(),
        }
    }

    /// The likely case on the day that matters if something that nobody knows were otherwise.
    #[must_use]
    pub fn aged_worlds(self, forecast: &BleedForecast) -> Table {
        let it = &forecast.worlds;
        let at = forecast.days.partition_point(|day| *day < forecast.looked_at_days);
        let on = |line: &[f64]| line.get(at).copied().unwrap_or_default();
        let here = forecast.de00_by(forecast.looked_at_days).likely;
        let worlds = [
            (Aged::AsForecast, here),
            (Aged::SlowFilm, on(&it.slow_film)),
            (Aged::FastFilm, on(&it.fast_film)),
            (Aged::ColdCorner, on(&it.cold)),
            (Aged::HotCorner, on(&it.hot)),
            (Aged::GatedFibre, on(&it.gated)),
            (Aged::OpenAir, on(&it.open)),
            (Aged::WarmerStore, on(&it.warmer)),
        ];
        let least = worlds.iter().fold(f64::INFINITY, |least, world| least.min(world.1));
        let mut most = &worlds[0];
        for world in &worlds {
            if world.1 > most.1 {
                most = world;
            }
        }
        let says = self.aged(&Aged::IfOtherwiseSays {
            least: self.shift(least),
            most: self.shift(most.1),
            world: self.aged(&most.0),
        });
        let day = self.bare(Quantity::Days, forecast.looked_at_days);
        Table {
            title: self.aged(&Aged::IfOtherwise),
            says: format!("{says} {}", self.aged(&Aged::GateNote)),
            head: vec![
                String::new(),
                format!("ΔE00, {}", self.say(&crate::wording::Phrase::DayNumber { day })),
            ],
            rows: worlds.iter().map(|(what, value)| vec![self.aged(what), self.shift(*value)]).collect(),
        }
    }

    /// The days on which to look, as dates where those are known.
    #[must_use]
    pub fn aged_looks(self, forecast: &BleedForecast) -> Table {
        let row = |look: &crate::plan::FollowUp| {
            let day =
                self.say(&crate::wording::Phrase::DayNumber { day: self.bare(Quantity::Days, look.day) });
            let on =
                look.date.as_ref().map_or_else(|| day.clone(), |date| format!("{}, {day}", self.day(date)));
            vec![on, self.shift(look.de00.likely), self.shift(look.de00.high), self.chance(look.shows)]
        };
        Table {
            title: self.aged(&Aged::WhenToLook),
            says: self.aged(&Aged::WhenToLookSays),
            head: [Aged::LookOn, Aged::Expect, Aged::BadEndWord, Aged::OverLimitBy]
                .iter()
                .map(|head| self.aged(head))
                .collect(),
            rows: forecast.follow_up.iter().map(row).collect(),
        }
    }
}
