//! How the white of one pick ages, at its set point or at another.

use super::ageing::{Ageing, LANES, Worlds};
use super::bleed::{MOST, lots};
use super::candidate::Candidate;
use super::dial::setting;
use super::judge::{FlashStep, flash_step, judge, looks, must_fuse};
use super::window::{Demands, SetPoint};
use super::{BleedForecast, Cut, DyeLedger, FirstShows, GradeLine, Job, Pick, Room, Spread};
use crate::dryer::HistoryError;
use crate::migration::Sheet;
use crate::numerics::Lanes;
use crate::optics::{DyeAbsorption, FreshPrint, GreyStep, staining_grade};
use crate::quantity::units::kelvin;

/// Days that a forecast covers.
const LAST: f64 = 90.0;
/// Days at which the film is cut open.
const CUT_AT: [f64; 3] = [0.0, 3.0, LAST];
/// Lots that make the spread: one in ten, one in four, half, three in four and nine in ten are lower.
const SHOWN: [usize; 5] = [1, 2, 3, 4, 5];
/// The lot in the middle.
const MIDDLE: usize = 3;
/// Dwell at which a closed window is looked at, s: the middle of what is usual.
const CLOSED_DWELL: f64 = 40.0;
/// Grades that a customer may write into an order.
const GRADES: [GreyStep; 4] = [GreyStep::FourToFive, GreyStep::Four, GreyStep::ThreeToFour, GreyStep::Three];

/// The forecast of one pick, kept so that a set point can be dragged: what does not depend on it is worked out once.
#[derive(Clone, Debug)]
pub struct PickForecast {
    job: Job,
    pick: Pick,
    flash: Option<FlashStep>,
    fresh: FreshPrint,
    dye: DyeAbsorption,
    grades: Vec<GradeLine>,
}

impl PickForecast {
    /// Prepares the forecast of a pick; `None` where the order has no such garment or white, or nothing bleeds.
    ///
    /// # Errors
    /// [`HistoryError`] where the stack lies outside the equations.
    pub fn new(job: Job, pick: Pick) -> Result<Option<Self>, HistoryError> {
        let (flash, looked) = {
            let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
            let Some(way) = Candidate::of_pick(&job, cloth, &pick) else { return Ok(None) };
            if cloth.dyed.is_none() {
                return Ok(None);
            }
            let flashes = way.strokes > 1 || way.base.is_some();
            (flashes.then(|| flash_step(&job, cloth, &way)).transpose()?, looks(cloth, &way))
        };
        let Some((fresh, dye)) = looked else { return Ok(None) };
        let grades = grades(&fresh, &dye);
        Ok(Some(Self { job, pick, flash, fresh, dye, grades }))
    }

    /// The forecast at the pick's own set point, or `at` (set temperature in °C, belt in m/min).
    ///
    /// # Errors
    /// [`HistoryError`] where the stack lies outside the equations; `None` as in [`PickForecast::new`].
    pub fn report(&self, at: Option<(f64, f64)>) -> Result<Option<BleedForecast>, HistoryError> {
        let Self { job, pick, flash, .. } = self;
        let Some(cloth) = job.cloths.get(pick.garment) else { return Ok(None) };
        let Some(way) = Candidate::of_pick(job, cloth, pick) else { return Ok(None) };
        let own = pick.setting.map(|setting| (setting.set_c, setting.belt_m_per_min));
        let point = at.or(own).map(|(set, belt)| SetPoint {
            set: kelvin(set),
            belt: belt / 60.0,
            robust: at.is_none(),
        });
        let closed = SetPoint {
            set: 0.5 * (job.dryer.set_low + job.dryer.set_high),
            belt: job.dryer.heated_length() / CLOSED_DWELL,
            robust: false,
        };
        let demands = Demands::of(&job.rules, cloth, must_fuse(job, way.white.low_cure), 0.35);
        let judged = judge(job, cloth, way, point.unwrap_or(closed), demands, *flash)?;
        let (Some(ageing), Some(arrives)) = (&judged.ageing, judged.arrives) else { return Ok(None) };
        let film_um = judged.way.total_film() * 1e6;
        let aged = self.age(ageing, arrives.likely);
        Ok(Some(BleedForecast {
            setting: point.map(|point| setting(job, &point, &Room::NONE)),
            verdict: judged.verdict,
            film_um,
            blocker_um: film_um - judged.way.film * 1e6,
            storage_c: job.order.use_.storage_c,
            limit: job.rules.bleed,
            grades: self.grades.clone(),
            looked_at_days: ageing.looked_at.min(LAST),
            stays_white: 1.0 - judged.bleeds,
            first_shows: aged.first_shows(job.rules.bleed),
            fresh: self.fresh.lab(),
            turned: aged.turned.map(|top| self.fresh.stained(&self.dye, top)),
            days: aged.days,
            de00: aged.de00,
            cuts: aged.cuts,
            ledger: aged.ledger,
        }))
    }

    /// Marches all lots through the days.
    fn age(&self, ageing: &Ageing, arrives: f64) -> Aged {
        let days = ageing.days(LAST);
        let shown = ageing.looked_at.min(LAST);
        let mut aged = Aged {
            de00: Vec::with_capacity(days.len()),
            cuts: Vec::with_capacity(CUT_AT.len()),
            turned: [0.0; 3],
            ledger: DyeLedger::of::<LANES>(arrives, None),
            days,
        };
        let days = aged.days.clone();
        ageing.run(&Worlds::lots(arrives, lots(&self.job.rules)), &days, |at, sheet| {
            let day = days.get(at).copied().unwrap_or(LAST);
            let top = sheet.top().min(Lanes::splat(MOST));
            let [low, lower, likely, upper, high] =
                SHOWN.map(|lot| self.fresh.bleed_difference(&self.dye, top[lot]));
            aged.de00.push(Spread { low, lower, likely, upper, high });
            // Days come in their order: the last one that is not later is the one that matters.
            if day <= shown {
                aged.turned = [top[SHOWN[0]], top[MIDDLE], top[SHOWN[4]]];
            }
            if CUT_AT.contains(&day) {
                aged.cuts.push(cut(day, sheet));
            }
            aged.ledger = DyeLedger::of(arrives, Some(sheet));
        });
        aged
    }
}

/// What the march of a film's lots has shown.
struct Aged {
    days: Vec<f64>,
    de00: Vec<Spread>,
    cuts: Vec<Cut>,
    /// Dye in the top layer on the day that matters, kg/m³.
    turned: [f64; 3],
    ledger: DyeLedger,
}

impl Aged {
    /// The day on which the lots first pass a limit.
    fn first_shows(&self, limit: f64) -> FirstShows {
        FirstShows {
            early_days: self.first_over(limit, |spread| spread.high),
            likely_days: self.first_over(limit, |spread| spread.likely),
            late_days: self.first_over(limit, |spread| spread.low),
        }
    }

    /// The day on which a value first passes a limit, d, in proportion to the root of time between two days.
    fn first_over(&self, limit: f64, of: impl Fn(&Spread) -> f64) -> Option<f64> {
        let at = self.de00.iter().position(|spread| of(spread) > limit)?;
        let Some(before) = at.checked_sub(1) else { return Some(0.0) };
        let (from, to) = (of(&self.de00[before]), of(&self.de00[at]));
        let (early, late) = (self.days[before].sqrt(), self.days[at].sqrt());
        let root = early + (late - early) * (limit - from) / (to - from);
        Some(root * root)
    }
}

fn cut<const L: usize>(day: f64, sheet: &Sheet<L>) -> Cut {
    let (height_um, free_kg_per_m3): (Vec<f64>, Vec<f64>) =
        sheet.profile(MIDDLE).map(|(height, free)| (height * 1e6, free)).unzip();
    let bound_kg_per_m3 =
        sheet.held(MIDDLE).zip(&free_kg_per_m3).map(|(held, free)| (held - free).max(0.0)).collect();
    Cut { day, height_um, free_kg_per_m3, bound_kg_per_m3 }
}

impl DyeLedger {
    /// What the middle lot's film took up and gave, once it was driven by heat.
    fn of<const L: usize>(arrives: f64, sheet: Option<&Sheet<L>>) -> Self {
        let mg = |of: fn(&Sheet<L>) -> Lanes<L>| sheet.map_or(0.0, |sheet| of(sheet)[MIDDLE] * 1e6);
        let (all, free) = (mg(Sheet::dye), mg(Sheet::free_dye));
        Self {
            heat_mg_per_m2: arrives * 1e6,
            own_mg_per_m2: mg(|sheet| sheet.from_own),
            facing_mg_per_m2: mg(|sheet| sheet.from_facing),
            free_mg_per_m2: free,
            bound_mg_per_m2: all - free,
        }
    }
}

/// Colour difference at which the white falls to each grade: halving on the dye, thirty times. Grades that no amount
/// reaches are left out.
fn grades(fresh: &FreshPrint, dye: &DyeAbsorption) -> Vec<GradeLine> {
    let falls_to = |step: GreyStep| {
        let passed = |top: f64| staining_grade(fresh.lab(), fresh.stained(dye, top)).step <= step;
        if !passed(MOST) {
            return None;
        }
        let (mut low, mut high) = (0.0, MOST);
        for _ in 0..30 {
            let middle = 0.5 * (low + high);
            if passed(middle) { high = middle } else { low = middle }
        }
        Some(GradeLine { step, de00: fresh.bleed_difference(dye, high) })
    };
    GRADES.into_iter().filter_map(falls_to).collect()
}
