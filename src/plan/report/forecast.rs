//! A bleed forecast, as it is drawn and as it travels in JSON.

use super::follow_up::{FollowUp, Leaves, days_to_look};
use super::pick::Setting;
use super::spread::Spread;
use super::verdict::Verdict;
use crate::optics::{GreyStep, Lab};
use crate::quantity::Day;
use serde::{Deserialize, Serialize};

/// How the white of one pick ages over the months after printing, at one set point.
///
/// Rankings and bands are more certain than levels: it never gives a bare number of days.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BleedForecast {
    /// The set point it holds for; absent where the window is closed.
    pub setting: Option<Setting>,
    /// The verdict at this set point.
    pub verdict: Verdict,
    /// Film that the dye must cross, white and blocker together, µm.
    pub film_um: f64,
    /// The part of it, at the cloth, that is blocker, µm; 0 without one.
    pub blocker_um: f64,
    /// Storage temperature, °C.
    pub storage_c: f64,
    /// Days after printing, rising from 0 to 90, or to the day that matters where that is later.
    pub days: Vec<f64>,
    /// Colour difference from the fresh print on each of these days, ΔE00.
    pub de00: Vec<Spread>,
    /// Colour difference that is accepted, ΔE00.
    pub limit: f64,
    /// Staining grades and the colour difference at which the white falls to them, mildest first.
    pub grades: Vec<GradeLine>,
    /// The day that matters, days after printing: not beyond the last of `days`.
    pub looked_at_days: f64,
    /// Chance that it has not passed its limit by then, 0 to 1.
    pub stays_white: f64,
    /// Chance that it is over its limit on each of `days`, 0 to 1, with earlier tests and the faults that no
    /// model covers included. On the day that matters it is the chance of the verdict.
    pub shows: Vec<f64>,
    /// The day it first passes its limit.
    pub first_shows: FirstShows,
    /// How many times the likely dye it takes to pass the limit by the day that matters, in the middle or
    /// along the rim. A white that blocks stays clean until it is full and then turns within a few tenths
    /// more dye, so this number says more than a likely colour difference of 0.
    pub turns_at_times: f64,
    /// Whether it takes more than that: `turns_at_times` is then the multiple of the lot with the most dye that
    /// was computed, about six, and that lot holds.
    pub turns_beyond: bool,
    /// The days on which to look at what is kept, and what to expect.
    pub follow_up: Vec<FollowUp>,
    /// When the order must leave; absent while the day of printing is not known, or if the order names no
    /// day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub leaves: Option<Leaves>,
    /// Cuts through the film of the likely case: fresh first, then later days.
    pub cuts: Vec<Cut>,
    /// Colour of the fresh print, D65/10°.
    pub fresh: Lab,
    /// Colour on the day that matters: at the good end, most likely, and at the bad end.
    pub turned: [Lab; 3],
    /// Where the dye of the likely case comes from and goes to by the last day.
    pub ledger: DyeLedger,
    /// The likely case under other assumptions, on the same days.
    pub worlds: OtherWorlds,
    /// The rim where the white extends beyond its blocker, on the day that matters; absent without one.
    pub rim: Option<RimShows>,
    /// How often the class is seen to ghost; no equation.
    pub ghosting: Ghosting,
}

impl BleedForecast {
    /// Chance that it is over its limit on a day, 0 to 1: interpolated linearly between the days that were
    /// looked at, constant beyond them.
    #[must_use]
    pub fn shows_by(&self, day: f64) -> f64 {
        self.between(day, &|i| self.shows.get(i).copied())
    }

    /// Colour difference on a day, ΔE00, interpolated likewise.
    #[must_use]
    pub fn de00_by(&self, day: f64) -> Spread {
        let of = |part: fn(&Spread) -> f64| self.between(day, &|i| self.de00.get(i).map(part));
        Spread {
            low: of(|it| it.low),
            lower: of(|it| it.lower),
            likely: of(|it| it.likely),
            upper: of(|it| it.upper),
            high: of(|it| it.high),
        }
    }

    fn between(&self, day: f64, value: &dyn Fn(usize) -> Option<f64>) -> f64 {
        let after = self.days.partition_point(|earlier| *earlier < day);
        let at = |i: usize| Some((*self.days.get(i)?, value(i)?));
        match (after.checked_sub(1).and_then(at), at(after)) {
            (Some((from, low)), Some((to, high))) => low + (high - low) * (day - from) / (to - from),
            (Some((_, only)), None) | (None, Some((_, only))) => only,
            (None, None) => 0.0,
        }
    }
}

/// The likely case if something that is not known were otherwise; ΔE00 on each of the forecast's days.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OtherWorlds {
    /// Dye spreads in the film as slowly as it may.
    pub slow_film: Vec<f64>,
    /// Dye spreads in the film as fast as it may.
    pub fast_film: Vec<f64>,
    /// The dryer at its cold corner.
    pub cold: Vec<f64>,
    /// At its hot corner.
    pub hot: Vec<f64>,
    /// The fibre releases nothing below the temperature that it was heat-set at. At the robust set point this
    /// case and the plain one agree, because both are fitted to what the trade sees there; away from it they
    /// differ.
    pub gated: Vec<f64>,
    /// Nothing lies on the print.
    pub open: Vec<f64>,
    /// Storage ten kelvin warmer.
    pub warmer: Vec<f64>,
}

/// The rim of white beyond its blocker, on the day that matters.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RimShows {
    /// How wide it is, mm.
    pub overhang_mm: f64,
    /// Colour difference as a meter would read it there, ΔE00.
    pub de00: Spread,
    /// Share of it that an eye sees in so narrow a line, 0 to 1: this share is compared with the limit.
    pub seen: f64,
}

/// How often this class of white ghosts on such a shade: a class frequency, no equation.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ghosting {
    /// How often, 0 to 1: the product of the factors below, 0.9 at most.
    pub frequency: f64,
    /// How often the class does it on a light cotton shade, 0 to 1.
    pub class: f64,
    /// Factor for the shade: light or sensitive, or not.
    pub shade: f64,
    /// Factor for damp air.
    pub damp: f64,
    /// Factor for stacking hot.
    pub stacked: f64,
    /// Factor for how long it lies.
    pub time: f64,
}

/// A staining grade as a line over the days.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GradeLine {
    /// The grade above this line.
    pub step: GreyStep,
    /// Colour difference from which it is given, ΔE00.
    pub de00: f64,
}

/// The day on which the white first passes its limit; absent = not within the days shown.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FirstShows {
    /// One case in ten shows by this day.
    pub early_days: Option<f64>,
    /// Half of the cases show by this day.
    pub likely_days: Option<f64>,
    /// Nine cases in ten show by this day.
    pub late_days: Option<f64>,
}

/// Dye across the film on one day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cut {
    /// Days after printing.
    pub day: f64,
    /// Middle of each layer, µm over the cloth, rising.
    pub height_um: Vec<f64>,
    /// Dye that the eye would see there, kg/m³.
    pub free_kg_per_m3: Vec<f64>,
    /// Dye that white or blocker holds there, kg/m³.
    pub bound_kg_per_m3: Vec<f64>,
}

/// Where dye comes from and where it is, mg per m² of print: the sources add up to what is in the film.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DyeLedger {
    /// Driven in by the heat of flashes, dryer and pressing, mg/m².
    pub heat_mg_per_m2: f64,
    /// The part of it that crossed as vapour, mg/m².
    pub vapour_mg_per_m2: f64,
    /// The part that came where fibre touches film, mg/m².
    pub contact_mg_per_m2: f64,
    /// The part that lay loose on the yarns, mg/m².
    pub loose_mg_per_m2: f64,
    /// From the print's own cloth since, mg/m²; below 0 where dye went back.
    pub own_mg_per_m2: f64,
    /// From the cloth that lies on the print, mg/m², less what heat drove off into the air; below 0 where
    /// more was lost than came.
    pub facing_mg_per_m2: f64,
    /// In the film and free, mg/m².
    pub free_mg_per_m2: f64,
    /// In the film and held, mg/m².
    pub bound_mg_per_m2: f64,
}

impl BleedForecast {
    /// The same with dates: printed on this day, and to leave on `due`, if that is a day.
    #[must_use]
    pub fn dated(mut self, printed_on: Day, due: &str) -> Self {
        for look in &mut self.follow_up {
            look.date = Some(printed_on.plus(look.day.round() as i64).to_string());
        }
        self.leaves = Day::read(due).map(|due| {
            let day = printed_on.until(due) as f64;
            Leaves { date: due.to_string(), day, shows: self.shows_by(day) }
        });
        self
    }

    /// What to expect on each of the days to look.
    pub fn looks(&self) -> Vec<FollowUp> {
        let look = |day| FollowUp { day, date: None, de00: self.de00_by(day), shows: self.shows_by(day) };
        days_to_look(self.looked_at_days).into_iter().map(look).collect()
    }
}
