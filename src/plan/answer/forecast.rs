//! How the white of one pick ages, computed anew at every set point that is tried.
//!
//! It is the film of the verdict, [`Ageing`], looked at on every day and not on the last alone: on the day
//! that matters the band and the chance are those of the pick's own margin.

use crate::dryer::HistoryError;
use crate::migration::DyeProfile;
use crate::migration::accelerated::{Acceleration, acceleration};
use crate::numerics::Lanes;
use crate::optics::{DyeAbsorption, FreshPrint, GreyStep, staining_grade};
use crate::plan::bleed::{
    Ageing, AgeingCases, Bled, MIDDLE, MOST, OvenTest, Reach, fresh_and_dye, oven_test, visible,
};
use crate::plan::margins::{HistoryCache, ghosting};
use crate::plan::order::{Cloth, Job};
use crate::plan::recipe::{Candidate, FlashStep, flash_of};
use crate::plan::report::{
    BleedForecast, Clearance, Cut, DialSetting, DyeLedger, FirstShows, GradeLine, OtherWorlds, Pick,
    RimShows, Setting, Spread,
};
use crate::plan::verdict::{Assessment, assess};
use crate::plan::window::{Demands, setting};

/// Days that a forecast shows, at least.
const SHOWN: f64 = 90.0;
/// Days on which a section through the film is taken, besides the day that matters.
const CUTS: [f64; 4] = [0.0, 3.0, 21.0, 90.0];
/// The forecast of one pick, kept so that its set point can be dragged: each report costs one simulation.
#[derive(Clone, Debug)]
pub struct PickForecast {
    job: Job,
    pick: Pick,
    flash: Option<FlashStep>,
    /// Dye from a gated fibre as a multiple of that from a plain one, at the robust set point.
    gate: f64,
}

impl PickForecast {
    /// Prepares the forecast of a pick; `None` if the job lacks its garment, or an ink or mesh of its recipe,
    /// if its cloth has no dye to give, or if its window is closed.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn new(job: Job, pick: Pick) -> Result<Option<Self>, HistoryError> {
        let (flash, gate) = {
            let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
            let Some(candidate) = Candidate::of_recipe(&job, cloth, &pick.recipe) else { return Ok(None) };
            let flash = flash_of(&job, cloth, &candidate)?;
            let Some(setting) = &pick.setting else { return Ok(None) };
            let at = setting.dialled();
            let Some(bled) = assess_at(&job, cloth, candidate, flash, at)?.bled else { return Ok(None) };
            (flash, gate_of(cloth, &bled))
        };
        Ok(Some(Self { job, pick, flash, gate }))
    }

    /// The forecast at the pick's own set point, or at `at`; `None` as in [`PickForecast::new`].
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn report(&self, at: Option<DialSetting>) -> Result<Option<BleedForecast>, HistoryError> {
        let Self { job, pick, flash, gate } = self;
        let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
        let Some(candidate) = Candidate::of_recipe(job, cloth, &pick.recipe) else { return Ok(None) };
        let own = pick.setting.as_ref().map(Setting::dialled);
        let Some(point) = at.or(own) else { return Ok(None) };
        let assessment = assess_at(job, cloth, candidate, *flash, point)?;
        let (Some(bled), Some((fresh, dye))) = (&assessment.bled, fresh_and_dye(cloth, &candidate)) else {
            return Ok(None);
        };
        let dial = match (&pick.setting, at) {
            (Some(setting), None) => *setting,
            _ => setting(job, &assessment.run.point, &Clearance::NONE),
        };
        let look = TurningPrint { fresh: &fresh, dye: &dye };
        let ageing = &bled.ageing;
        let days = ageing.days(SHOWN.max(ageing.looked_at));
        let matters = days.iter().position(|day| *day >= ageing.looked_at).unwrap_or(days.len() - 1);
        let seen = age(bled, &days, matters);
        let spreads: Vec<Spread> = seen.tops.iter().map(|top| look.spread(top)).collect();
        let rim_limit = bled.rim.as_ref().map(|rim| rim.visible(&dye, bled.rules.bleed));
        let limits = [visible(&fresh, &dye, bled.rules.bleed), rim_limit.unwrap_or(MOST)];
        let tops = || seen.tops.iter().zip(&seen.rim_tops);
        let shows =
            tops().map(|(top, rim)| bled.dye[1].chance(critical(bled, limits, [top, rim]), bled.rules.lapse));
        // Dye of each lot over the amount that shows, in print or rim: from 1 on it shows.
        let near: Vec<Lanes<8>> =
            tops().map(|(top, rim)| (*top * limits[0].recip()).max(*rim * limits[1].recip())).collect();
        let mut shows: Vec<f64> = shows.collect();
        // On the day that matters: the chance of the verdict itself, to the last digit.
        if let Some(chance) = shows.get_mut(matters) {
            *chance = assessment.bleeds;
        }
        let on = |tops: &[Lanes<8>]| tops.get(matters).copied().unwrap_or(Lanes::ZERO);
        let (on_the_day, rim_on_the_day) = (on(&seen.tops), on(&seen.rim_tops));
        let other = others(job, cloth, bled, &days, *gate, &look);
        let rim = bled.rim.as_ref().map(|rim| RimShows {
            overhang_mm: rim.width * 1e3,
            de00: TurningPrint { fresh: &rim.fresh, dye: &dye }.spread(&rim_on_the_day),
            seen: rim.seen,
        });
        let turns = critical(bled, limits, [&on_the_day, &rim_on_the_day]) / bled.lots[MIDDLE].max(1e-30);
        let last = bled.lots.largest() / bled.lots[MIDDLE].max(1e-30);
        let mut forecast = BleedForecast {
            setting: Some(dial),
            verdict: assessment.verdict,
            film_um: candidate.total_film() * 1e6,
            blocker_um: candidate.blocker.map_or(0.0, |blocker| blocker.film * 1e6),
            storage_c: job.order.use_.storage_c,
            limit: bled.rules.bleed,
            grades: look.grades(),
            looked_at_days: ageing.looked_at,
            stays_white: 1.0 - assessment.bleeds,
            shows,
            first_shows: first_shows(&days, &near),
            turns_at_times: turns.min(last),
            turns_beyond: turns > last,
            follow_up: Vec::new(),
            leaves: None,
            cuts: seen.cuts,
            fresh: fresh.lab(),
            turned: [1, MIDDLE, 5].map(|lot| fresh.stained(&dye, on_the_day[lot].min(MOST))),
            ledger: seen.ledger,
            worlds: other,
            rim,
            ghosting: ghosting(job, cloth, assessment.candidate.white),
            de00: spreads,
            days,
        };
        forecast.follow_up = forecast.looks();
        Ok(Some(forecast))
    }
}

impl PickForecast {
    /// What `hours` in an oven at `oven_c` °C prove of this print at its own set point; `None` as in
    /// [`PickForecast::new`].
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn oven(&self, hours: f64, oven_c: f64) -> Result<Option<OvenTest>, HistoryError> {
        let Self { job, pick, flash, .. } = self;
        let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
        let Some(candidate) = Candidate::of_recipe(job, cloth, &pick.recipe) else { return Ok(None) };
        let Some(setting) = &pick.setting else { return Ok(None) };
        let assessment = assess_at(job, cloth, candidate, *flash, setting.dialled())?;
        let (Some(bled), Some((fresh, dye))) = (&assessment.bled, fresh_and_dye(cloth, &candidate)) else {
            return Ok(None);
        };
        Ok(Some(oven_test(bled, &fresh, &dye, hours, oven_c, assessment.bleeds)))
    }
}

/// Assesses a pick's candidate at a dialled setting.
fn assess_at<'a>(
    job: &Job,
    cloth: &Cloth,
    candidate: Candidate<'a>,
    flash: Option<FlashStep>,
    at: DialSetting,
) -> Result<Assessment<'a>, HistoryError> {
    let demands = Demands::usual(job, cloth, candidate.white);
    assess(&mut HistoryCache::default(), job, cloth, candidate, at.set_point(), demands, flash)
}

/// Dye from a fibre that is closed below its setting temperature, as a multiple of that from a plain one.
fn gate_of(cloth: &Cloth, bled: &Bled) -> f64 {
    cloth.dyed.map_or(1.0, |dyed| {
        let plain = dyed.arrives(&bled.ageing.released)[0];
        dyed.arrives(&bled.ageing.gated)[0] / plain.max(1e-30)
    })
}

/// The lots of a film, aged to every day.
struct AgedLots {
    /// Dye in the top layer, lot by lot, kg/m³.
    tops: Vec<Lanes<8>>,
    /// The same along the rim; 0 without a blocker.
    rim_tops: Vec<Lanes<8>>,
    cuts: Vec<Cut>,
    ledger: DyeLedger,
}

/// Ages the lots of a film and its rim to each of `days`; `matters` is the place of the day that matters.
fn age(bled: &Bled, days: &[f64], matters: usize) -> AgedLots {
    let cases = AgeingCases::lots(bled.lots, bled.lots[MIDDLE]);
    let mut tops = Vec::with_capacity(days.len());
    let mut cuts = Vec::with_capacity(CUTS.len() + 1);
    let [vapour, contact, loose] = bled.ageing.by_path(bled.lots[MIDDLE]).map(|dye| dye * 1e6);
    let mut ledger = DyeLedger {
        heat_mg_per_m2: bled.lots[MIDDLE] * 1e6,
        vapour_mg_per_m2: vapour,
        contact_mg_per_m2: contact,
        loose_mg_per_m2: loose,
        own_mg_per_m2: 0.0,
        facing_mg_per_m2: 0.0,
        free_mg_per_m2: 0.0,
        bound_mg_per_m2: 0.0,
    };
    bled.ageing.run(&cases, days, |i, profile| {
        tops.push(profile.top());
        let day = days.get(i).copied().unwrap_or(0.0);
        if i == matters || CUTS.contains(&day) {
            cuts.push(cut(day, profile));
        }
        if i + 1 == days.len() {
            let mg = |dye: Lanes<8>| dye[MIDDLE] * 1e6;
            ledger.own_mg_per_m2 = mg(profile.from_own);
            ledger.facing_mg_per_m2 = mg(profile.from_facing);
            ledger.free_mg_per_m2 = mg(profile.free());
            ledger.bound_mg_per_m2 = mg(profile.dye()) - mg(profile.free());
        }
    });
    let mut rim_tops = vec![Lanes::ZERO; days.len()];
    if let Some(rim) = &bled.rim {
        rim_tops.clear();
        rim.ageing.run(&cases, days, |_, profile| rim_tops.push(profile.top()));
    }
    AgedLots { tops, rim_tops, cuts, ledger }
}

/// The section through the film of the middle lot on a day.
fn cut(day: f64, profile: &DyeProfile<8>) -> Cut {
    let column = |of: usize, scale: f64| profile.profile(MIDDLE).map(|cell| cell[of] * scale).collect();
    Cut { day, height_um: column(0, 1e6), free_kg_per_m3: column(1, 1.0), bound_kg_per_m3: column(2, 1.0) }
}

/// Dye that must arrive for a top layer to pass its limit (kg/m³), in the middle or along the rim,
/// interpolated between the lots that were aged; kg/m².
fn critical(bled: &Bled, limits: [f64; 2], tops: [&Lanes<8>; 2]) -> f64 {
    let least =
        |film: &Ageing, i: usize| Reach::new(film.binding, bled.lots, *tops[i]).arrives_for(limits[i]);
    let along = bled.rim.iter().map(|rim| least(&rim.ageing, 1));
    along.fold(least(&bled.ageing, 0), f64::min)
}

/// The likely case under other assumptions.
fn others(
    job: &Job,
    cloth: &Cloth,
    bled: &Bled,
    days: &[f64],
    gate: f64,
    look: &TurningPrint<'_>,
) -> OtherWorlds {
    let [slow, fast] = job.rules.film_spread;
    let likely = bled.lots[MIDDLE];
    let [cold, _, hot] = bled.dye.map(|dye| dye.sum() * likely / bled.dye[1].sum());
    let gated = likely * gate_of(cloth, bled) / gate.max(1e-30);
    let warm = bled.ageing.warmer();
    // Lanes in the order of the fields of [`OtherWorlds`]; the eighth, as planned, is not read.
    let cases = AgeingCases {
        arrives: Lanes([likely, likely, cold, hot, gated, likely, likely, likely]),
        film: Lanes([slow, fast, 1.0, 1.0, 1.0, 1.0, warm.film, 1.0]),
        own: Lanes([1.0, 1.0, 1.0, 1.0, 1.0, 1.0, warm.cloth, 1.0]),
        facing: Lanes([1.0, 1.0, 1.0, 1.0, 1.0, 0.0, warm.cloth, 1.0]),
        heat_film: Lanes([slow, fast, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0]),
    };
    let mut lines: [Vec<f64>; 7] = std::array::from_fn(|_| Vec::with_capacity(days.len()));
    bled.ageing.run(&cases, days, |_, profile| {
        let top = profile.top();
        for (lane, line) in lines.iter_mut().enumerate() {
            line.push(look.difference(top[lane]));
        }
    });
    let [slow_film, fast_film, cold, hot, gated, open, warmer] = lines;
    OtherWorlds { slow_film, fast_film, cold, hot, gated, open, warmer }
}

/// Days by which lots first show, `near` being the share of each lot's limit on each day: one in ten, half,
/// nine in ten.
fn first_shows(days: &[f64], near: &[Lanes<8>]) -> FirstShows {
    let first = |lot: usize| {
        let after = near.iter().position(|near| near[lot] >= 1.0)?;
        let (day, now) = (*days.get(after)?, near.get(after)?[lot]);
        let Some(before) = after.checked_sub(1) else { return Some(day) };
        let (day_before, then) = (*days.get(before)?, near.get(before)?[lot]);
        let share = (1.0 - then) / (now - then).max(1e-30);
        Some(day_before + share * (day - day_before))
    };
    FirstShows { early_days: first(5), likely_days: first(MIDDLE), late_days: first(1) }
}

/// The fresh print and the dye that turns it.
struct TurningPrint<'a> {
    fresh: &'a FreshPrint,
    dye: &'a DyeAbsorption,
}

impl TurningPrint<'_> {
    fn difference(&self, top: f64) -> f64 {
        self.fresh.bleed_difference(self.dye, top.min(MOST))
    }

    fn spread(&self, top: &Lanes<8>) -> Spread {
        let [low, lower, likely, upper, high] = [1, 2, MIDDLE, 4, 5].map(|lot| self.difference(top[lot]));
        Spread { low, lower, likely, upper, high }
    }

    /// Where the staining grade steps down as this white takes up this dye.
    fn grades(&self) -> Vec<GradeLine> {
        let step = |top: f64| staining_grade(self.fresh.lab(), self.fresh.stained(self.dye, top)).step;
        let mut lines = Vec::with_capacity(8);
        let (mut last, mut above) = (GreyStep::Five, 0.0);
        for i in 1..=60 {
            // From a trace of dye to [`MOST`] in even ratios.
            let top = 0.005 * (MOST / 0.005_f64).powf(f64::from(i) / 60.0);
            let next = step(top);
            if next < last {
                let (mut low, mut high) = (above, top);
                for _ in 0..20 {
                    let middle = 0.5 * (low + high);
                    if step(middle) < last { high = middle } else { low = middle }
                }
                lines.push(GradeLine { step: next, de00: self.difference(high) });
                last = next;
            }
            above = top;
        }
        lines
    }
}

impl Ageing {
    /// Dye that heat drives in by each path (vapour, contact, loose), of `arrives` in all, kg/m².
    fn by_path(&self, arrives: f64) -> [f64; 3] {
        let paths = self.dyed.ways(&self.released);
        let sum: f64 = paths.iter().sum();
        paths.map(|path| path * arrives / sum.max(1e-30))
    }

    /// How much faster dye moves in a store ten kelvin warmer.
    fn warmer(&self) -> Acceleration {
        let store = self.store();
        acceleration(&self.diffusion, &self.dyed.dye, store + 10.0, store)
    }
}
