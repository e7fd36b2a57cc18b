//! The whole answer: every white on the shelf weighed, the best first.

use super::candidate::{Candidate, candidates};
use super::decide::Stake;
use super::explain::{self, word};
use super::judge::{FlashStep, Judged, flash_step, judge, must_fuse, stack_of};
use super::window::{Demands, Question, Run, SetPoint, Window, robust, room as reach};
use super::window_report::kinetics;
use super::{
    Base, Cloth, Code, Job, Pick, Priority, Reason, Rejected, Report, Room, Setting, Side, Step, Topic,
    Trial, Verdict,
};
use crate::ink::{CureKinetics, White, ink_per_print};
use crate::numerics::Lanes;
use crate::numerics::march::MarchError;
use crate::quantity::Band;
use crate::quantity::units::{celsius, kelvin};
use std::collections::BTreeMap;

/// Press cycle without the flash, s: index, strokes, loading. Common practice, no source.
const CYCLE: f64 = 5.0;
/// Belt that one garment takes up, m. Common practice, no source.
const GARMENT_LENGTH: f64 = 0.75;
/// What an hour of press, dryer and two people costs, in the shop's money. Invented for the demo.
const HOUR: f64 = 60.0;

/// Windows and set points of one cloth, kept by film thickness: histories are shared by every white that lays it.
struct Bench<'a> {
    job: &'a Job,
    cloth: &'a Cloth,
    kinetics: [CureKinetics; 2],
    windows: BTreeMap<u32, Window>,
    flashes: BTreeMap<(u32, bool), FlashStep>,
}

impl<'a> Bench<'a> {
    fn new(job: &'a Job, cloth: &'a Cloth) -> Option<Self> {
        let any = job.whites.iter().chain(&job.market).next()?;
        Some(Self {
            job,
            cloth,
            kinetics: kinetics(job, any),
            windows: BTreeMap::new(),
            flashes: BTreeMap::new(),
        })
    }

    fn fixed(&self) -> Option<f64> {
        self.job.order.shop.dryer_fixed.map(kelvin)
    }

    fn window(&mut self, film: f64) -> Result<&Window, MarchError> {
        let key = (film * 1e6).round() as u32;
        if !self.windows.contains_key(&key) {
            let stack = stack_of(self.job, self.cloth, film);
            let question = Question {
                stack: &stack,
                dryer: &self.job.dryer,
                passes: self.job.order.shop.passes,
                kinetics: self.kinetics,
                dyed: self.cloth.dyed.as_ref(),
                fixed: self.fixed(),
            };
            self.windows.insert(key, Window::compute(&question)?);
        }
        self.windows.get(&key).ok_or(MarchError::NotFinite)
    }

    fn flash(&mut self, way: &Candidate<'_>) -> Result<Option<FlashStep>, MarchError> {
        if way.strokes < 2 && way.base.is_none() {
            return Ok(None);
        }
        let film = way.base.map_or(way.film / f64::from(way.strokes), |base| base.film);
        let key = ((film * 1e6).round() as u32, way.white.low_cure);
        if let Some(step) = self.flashes.get(&key) {
            return Ok(Some(*step));
        }
        let step = flash_step(self.job, self.cloth, way)?;
        self.flashes.insert(key, step);
        Ok(Some(step))
    }

    fn demands(&self, white: &White) -> Demands {
        let pace = match self.job.order.print.priority {
            Priority::Fast => 1.0,
            _ => 0.35,
        };
        Demands::of(&self.job.rules, self.cloth, must_fuse(self.job, white.low_cure), pace)
    }

    /// Weighs one way; the reason where its window is closed.
    fn weigh<'w>(&mut self, way: Candidate<'w>) -> Result<Result<Judged<'w>, Reason>, MarchError> {
        let (job, cloth, fixed) = (self.job, self.cloth, self.fixed());
        let demands = self.demands(way.white);
        let needed = self.kinetics[usize::from(!demands.must_fuse[0])].half_fused + 12.0;
        let window = self.window(way.total_film())?;
        let Some(point) = robust(window, &job.dryer, &demands, fixed) else {
            return Ok(Err(explain::closed(cloth, closing_side(window, &demands), needed)));
        };
        let flash = self.flash(&way)?;
        judge(job, cloth, way, point, demands, flash).map(Ok)
    }

    /// The best way to use one white, by verdict and then by cost.
    fn best_of<'w>(
        &mut self,
        white: &'w White,
        bases: &'w [Base],
    ) -> Result<Result<Judged<'w>, Reason>, MarchError>
    where
        'a: 'w,
    {
        let mut best: Option<Judged<'w>> = None;
        let mut refused = Reason::new(Code::CoversShort).word("white", &white.name);
        for way in candidates(self.job, self.cloth, white, bases) {
            match self.weigh(way)? {
                Ok(judged) => {
                    let better =
                        best.as_ref().is_none_or(|best| order(self.job, self.cloth, &judged, best).is_lt());
                    if better {
                        best = Some(judged);
                    }
                }
                Err(reason) => refused = reason,
            }
        }
        Ok(best.ok_or(refused))
    }
}

/// Which demand closes a window: too cool to fuse, or too hot for cloth and film.
fn closing_side(window: &Window, demands: &Demands) -> Side {
    let fuses = window.outcomes(Run::Nominal).iter().any(|cell| demands.fused_of(cell) >= demands.fused);
    if fuses { Side::AtMost } else { Side::AtLeast }
}

/// Rank of two ways: verdict first, then what they cost in money, risk and what the order cares for.
fn order(job: &Job, cloth: &Cloth, a: &Judged<'_>, b: &Judged<'_>) -> std::cmp::Ordering {
    // Go and go-with-check are both printed today, a trial is not.
    a.verdict.cmp(&b.verdict).then(burden(job, cloth, a).total_cmp(&burden(job, cloth, b)))
}

/// What a way costs the order: ink, time, risk, and what the order cares for, all in the shop's money.
fn burden(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> f64 {
    let pieces = f64::from(cloth.garment.pieces);
    let stake = Stake { pieces, value: cloth.garment.value_each };
    let risk = stake.expected_running(judged.fail_later.likely);
    let cost = cost_per_print(job, judged) * pieces;
    let hand = judged.way.total_film() / 100e-6 * judged.way.white.stiffness;
    // What one step of hand or of show-through is worth on one piece; common practice, no source.
    let (feel, cover) = (0.15 * hand * pieces, 0.05 * judged.way.shows * pieces);
    match job.order.print.priority {
        Priority::Balanced => risk + cost + feel + cover,
        Priority::StaysWhite | Priority::Durable => 3.0 * risk + cost + 0.3 * (feel + cover),
        Priority::Soft => risk + cost + 8.0 * feel + cover,
        Priority::Opaque => risk + cost + feel + 8.0 * cover,
        Priority::Fast => {
            risk + cost + 2.0 * pieces * HOUR / rate_per_hour(job, judged) + 0.3 * (feel + cover)
        }
        Priority::Cheap => risk + 3.0 * cost,
    }
}

fn ink_cost(job: &Job, judged: &Judged<'_>) -> f64 {
    let print = &job.order.print;
    let places = print.locations.len().max(1) as f64;
    let (area, coverage) = (print.area_cm2 * 1e-4 * places, print.coverage_percent / 100.0);
    let white = judged.way.white;
    let base = judged
        .way
        .base
        .map_or(0.0, |base| ink_per_print(area, coverage, base.film, base.density) * base.price_per_kg);
    base + ink_per_print(area, coverage, judged.way.film, white.density) * white.price_per_kg
}

fn cost_per_print(job: &Job, judged: &Judged<'_>) -> f64 {
    ink_cost(job, judged) + HOUR / rate_per_hour(job, judged)
}

/// Prints per hour: the slower of the press (its cycle and flashes) and the belt.
fn rate_per_hour(job: &Job, judged: &Judged<'_>) -> f64 {
    let flash = judged.flash.map_or(0.0, |flash| flash.seconds);
    let press = (CYCLE + flash) / judged.way.white.pace.max(0.1);
    let belt = GARMENT_LENGTH / judged.point.belt * f64::from(job.order.shop.passes.max(1));
    3600.0 / press.max(belt)
}

/// Answers the job for each of its cloths and gives the most demanding answer.
///
/// # Errors
/// [`MarchError`] where a stack lies outside the equations.
pub fn answer(job: &Job) -> Result<Report, MarchError> {
    let mut worst: Option<Report> = None;
    for cloth in &job.cloths {
        let report = answer_cloth(job, cloth)?;
        let harder = worst.as_ref().is_none_or(|worst| {
            let chance = |report: &Report| report.picks.first().map_or(1.0, |pick| pick.fail_later.likely);
            (report.verdict, chance(&report)) > (worst.verdict, chance(worst))
        });
        if harder {
            worst = Some(report);
        }
    }
    Ok(worst.unwrap_or_else(|| refusal(Vec::new())))
}

/// Weighs one white of the shelf on the first cloth, whatever its verdict; over a blocker if `over_blocker`. `None`
/// where its window is closed or there is no such white.
///
/// # Errors
/// As [`answer`].
pub fn weigh(job: &Job, white: &str, over_blocker: bool) -> Result<Option<Pick>, MarchError> {
    let Some(cloth) = job.cloths.first() else { return Ok(None) };
    let Some(white) = job.whites.iter().find(|had| had.id == white) else { return Ok(None) };
    let Some(mut bench) = Bench::new(job, cloth) else { return Ok(None) };
    let mut best: Option<Judged<'_>> = None;
    for way in candidates(job, cloth, white, &job.blockers) {
        if way.base.is_some() == over_blocker
            && let Ok(judged) = bench.weigh(way)?
            && best.as_ref().is_none_or(|best| order(job, cloth, &judged, best).is_lt())
        {
            best = Some(judged);
        }
    }
    best.map(|judged| pick(job, cloth, &mut bench, &judged)).transpose()
}

fn refusal(reasons: Vec<Reason>) -> Report {
    Report {
        verdict: Verdict::Refuse,
        picks: Vec::new(),
        rejected: Vec::new(),
        to_make_it_possible: reasons,
        cautions: Vec::new(),
        unknowns: Vec::new(),
        understood: Vec::new(),
    }
}

fn answer_cloth(job: &Job, cloth: &Cloth) -> Result<Report, MarchError> {
    let mut report = refusal(Vec::new());
    report.understood.clone_from(&cloth.understood);
    if let Some(reason) = forbidden(job, cloth) {
        report.to_make_it_possible.push(reason);
        report.to_make_it_possible.push(Reason::new(Code::OtherProcess));
        report.cautions = explain::cautions(job, cloth, None);
        return Ok(report);
    }
    if job.whites.is_empty() {
        report.to_make_it_possible.push(Reason::new(Code::ShelfEmpty));
    }
    let Some(mut bench) = Bench::new(job, cloth) else { return Ok(report) };
    let mut weighed: Vec<Judged<'_>> = Vec::new();
    for white in &job.whites {
        match bench.best_of(white, &job.blockers)? {
            Ok(judged) if judged.verdict < Verdict::Refuse => weighed.push(judged),
            Ok(judged) => {
                let reasons = pick_reasons(job, cloth, &mut bench, &judged)?;
                report.rejected.push(Rejected { white: white.id.clone(), name: white.name.clone(), reasons });
            }
            Err(reason) => report.rejected.push(Rejected {
                white: white.id.clone(),
                name: white.name.clone(),
                reasons: vec![reason],
            }),
        }
    }
    weighed.sort_by(|a, b| order(job, cloth, a, b));
    for judged in &weighed {
        report.picks.push(pick(job, cloth, &mut bench, judged)?);
    }
    report.verdict = report.picks.first().map_or(Verdict::Refuse, |pick| pick.verdict);
    report.to_make_it_possible.extend(improvements(job, cloth, &mut bench, report.verdict)?);
    report.cautions = explain::cautions(job, cloth, weighed.first());
    report.unknowns = explain::unknowns(job, cloth, weighed.first());
    Ok(report)
}

/// What no white can answer.
fn forbidden(job: &Job, cloth: &Cloth) -> Option<Reason> {
    use super::{Finish, UseKind};
    let banned =
        |ban: &String| matches!(ban.to_lowercase().as_str(), "pvc" | "vinyl" | "phthalates" | "plastisol");
    if let Some(ban) = job.order.use_.customer_bans.iter().find(|ban| banned(ban)) {
        return Some(Reason::new(Code::CustomerBans).word("ban", ban));
    }
    let certified = cloth
        .garment
        .finish
        .iter()
        .any(|finish| matches!(finish, Finish::FlameResistant | Finish::HighVisibility));
    (certified || job.order.use_.kind == UseKind::Protective).then(|| Reason::new(Code::MakerWordNeeded))
}

/// What would make the answer better: an undyed cloth, a white or a blocker to buy.
fn improvements(
    job: &Job,
    cloth: &Cloth,
    bench: &mut Bench<'_>,
    verdict: Verdict,
) -> Result<Vec<Reason>, MarchError> {
    let mut found: Vec<(Verdict, f64, Reason)> = Vec::new();
    if verdict == Verdict::Go {
        return Ok(Vec::new());
    }
    for white in &job.market {
        if let Ok(judged) = bench.best_of(white, &job.blockers)?
            && judged.verdict < verdict
        {
            let reason = Reason::new(Code::BuyClass)
                .word("class", word(white.class))
                .word("name", &white.name)
                .number("low_cure", f64::from(u8::from(white.low_cure)))
                .word("verdict", word(judged.verdict));
            found.push((judged.verdict, burden(job, cloth, &judged), reason));
        }
    }
    if cloth.dyed.is_some() {
        // A blocker to buy goes under a white that blocks itself; under another it would be alone.
        for white in job.whites.iter().filter(|white| white.dye_capacity > 0.0) {
            if let Ok(judged) = bench.best_of(white, &job.market_blockers)?
                && judged.verdict < verdict
                && let Some(base) = judged.way.base
            {
                let reason = Reason::new(Code::UseBlocker)
                    .word("name", &base.name)
                    .word("white", &white.name)
                    .word("verdict", word(judged.verdict));
                found.push((judged.verdict, burden(job, cloth, &judged), reason));
            }
        }
    }
    found.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut reasons: Vec<Reason> = found.into_iter().map(|(_, _, reason)| reason).take(3).collect();
    if cloth.dyed.is_some() && !cloth.dye_known {
        let undyed = Cloth { dyed: None, dye_known: true, ..cloth.clone() };
        // Heat knows nothing of dye: the windows serve the undyed cloth as they are.
        let mut bench = Bench {
            job,
            cloth: &undyed,
            kinetics: bench.kinetics,
            windows: std::mem::take(&mut bench.windows),
            flashes: BTreeMap::new(),
        };
        let mut best = Verdict::Refuse;
        for white in &job.whites {
            if let Ok(judged) = bench.best_of(white, &[])? {
                best = best.min(judged.verdict);
            }
        }
        if best < verdict {
            reasons.insert(0, Reason::new(Code::IfUndyed).word("verdict", word(best)));
        }
    }
    if reasons.is_empty() && verdict == Verdict::Refuse {
        reasons.push(Reason::new(Code::OtherProcess));
    }
    Ok(reasons)
}

fn pick_reasons(
    job: &Job,
    cloth: &Cloth,
    bench: &mut Bench<'_>,
    judged: &Judged<'_>,
) -> Result<Vec<Reason>, MarchError> {
    let window = bench.window(judged.way.total_film())?;
    let room = room_around(window, judged);
    let dry = dry_dwell(job, cloth, judged)?;
    Ok(explain::reasons(job, cloth, judged, &room, dry))
}

/// Dwell in which the same film would fuse as well over the same cloth bone dry, s; only where water is worth a word.
fn dry_dwell(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> Result<Option<f64>, MarchError> {
    use crate::cure::fuse;
    use crate::dryer::{Case, TOLERANCE, World, history};
    let water =
        crate::textile::moisture::regain(job.order.shop.humidity_percent / 100.0, cloth.fabric.regain_65)
            + cloth.garment.added_water_percent / 100.0;
    if water < 0.045 {
        return Ok(None);
    }
    let stack = stack_of(job, cloth, judged.way.total_film());
    let dry = World { water: 0.02, ..World::NOMINAL };
    let dwell = job.dryer.heated_length() / judged.point.belt;
    let kinetics = judged.way.white.kinetics;
    // Eight dwells from a third of this one up to it, over dry cloth, the last over the cloth as it is.
    let share = |lane: usize| if lane == 7 { 1.0 } else { 0.35 + 0.09 * lane as f64 };
    let cases: [Case; 8] = std::array::from_fn(|lane| Case {
        set: judged.point.set,
        belt: judged.point.belt / share(lane),
        world: if lane == 7 { World::NOMINAL } else { dry },
    });
    let history = history(&stack, &job.dryer, &cases, 1, TOLERANCE)?;
    let Lanes(fused) = fuse(&history, |sample| sample.film_bottom, &kinetics).fused;
    let as_it_is = fused[7];
    let enough = (0..7).find(|&lane| fused[lane] >= as_it_is.min(0.995));
    Ok(enough.map(|lane| share(lane) * dwell))
}

/// Room on each side of the set point in the run as planned.
pub(super) fn room_around(window: &Window, judged: &Judged<'_>) -> Room {
    let SetPoint { set, belt, .. } = judged.point;
    let holds = |set: f64, belt: f64| judged.demands.holds(&window.at(Run::Nominal, set, belt));
    let (Some(&low), Some(&high)) = (window.set.first(), window.set.last()) else {
        return Room { cooler: None, hotter: None, slower: None, faster: None };
    };
    let (Some(&slowest), Some(&fastest)) = (window.belt.first(), window.belt.last()) else {
        return Room { cooler: None, hotter: None, slower: None, faster: None };
    };
    Room {
        cooler: reach(|step| holds(set - step, belt), (set - low).max(0.0)),
        hotter: reach(|step| holds(set + step, belt), (high - set).max(0.0)),
        slower: reach(|step| holds(set, belt - step), (belt - slowest).max(0.0)).map(|room| room * 60.0),
        faster: reach(|step| holds(set, belt + step), (fastest - belt).max(0.0)).map(|room| room * 60.0),
    }
}

/// The dryer's dials at a set point, with how well they must be held.
pub(super) fn setting(job: &Job, point: &SetPoint, room: &Room) -> Setting {
    let dryer = &job.dryer;
    let belt = point.belt * 60.0;
    let sides = [room.slower, room.faster].into_iter().flatten();
    // Half the room to the nearer wall, and never looser than a tenth of the belt speed.
    let hold_belt = sides.fold(belt * 0.2, f64::min) * 0.5;
    Setting {
        set_c: celsius(point.set),
        air_c: celsius(dryer.hottest_air(point.set)),
        panel_c: dryer.hottest_panel(point.set).map(celsius),
        belt_m_per_min: belt,
        dwell_s: dryer.heated_length() / point.belt,
        hold_c: dryer.drift.air,
        hold_belt_m_per_min: hold_belt,
    }
}

fn steps(job: &Job, judged: &Judged<'_>) -> Vec<Step> {
    let way = &judged.way;
    let flash = judged.flash.map(|flash| Step::Flash { seconds: flash.seconds, film_c: flash.film_c });
    let mut steps = Vec::new();
    if let Some(base) = way.base {
        steps.push(Step::Blocker { id: base.id.clone(), name: base.name.clone(), film_um: base.film * 1e6 });
        steps.extend(flash.clone());
    }
    for stroke in 1..=way.strokes {
        if stroke > 1 {
            steps.extend(flash.clone());
        }
        steps.push(Step::White {
            strokes: 1,
            threads_per_cm: way.mesh.threads_per_m / 100.0,
            film_um: way.film * 1e6 * f64::from(stroke) / f64::from(way.strokes),
        });
    }
    steps.push(Step::Dryer { passes: job.order.shop.passes });
    steps
}

/// The test that decides: a day in the oven under 60 °C, where nothing new starts in the fibre.
fn trial(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> Option<Trial> {
    if judged.verdict != Verdict::Trial {
        return None;
    }
    let pieces = if cloth.garment.pieces >= 24 { 6 } else { 2 };
    let latent = cloth.dyed.is_some();
    let diffusion = &job.rules.film_diffusion;
    let at = |celsius: f64| diffusion.at(Lanes::<1>::splat(kelvin(celsius)))[0];
    let (hours, oven_c) = if latent { (24.0, 60.0) } else { (0.0, job.order.use_.storage_c) };
    Some(Trial {
        pieces,
        hours,
        oven_c,
        pass_mark: job.rules.bleed,
        power: if latent { job.rules.power_hot_hold } else { job.rules.power_exit[0] },
        stands_for_days: if latent { at(oven_c) / at(job.order.use_.storage_c) } else { 0.0 },
    })
}

fn pick(job: &Job, cloth: &Cloth, bench: &mut Bench<'_>, judged: &Judged<'_>) -> Result<Pick, MarchError> {
    let window = bench.window(judged.way.total_film())?;
    let room = room_around(window, judged);
    let dry = dry_dwell(job, cloth, judged)?;
    let white = judged.way.white;
    let cost = cost_per_print(job, judged);
    let rate = rate_per_hour(job, judged);
    Ok(Pick {
        verdict: judged.verdict,
        white: white.id.clone(),
        name: white.name.clone(),
        class: white.class,
        low_cure: white.low_cure,
        mix: Vec::new(),
        steps: steps(job, judged),
        advice: explain::advice(cloth, judged),
        setting: Some(setting(job, &judged.point, &room)),
        margins: judged.margins.clone(),
        fail_later: judged.fail_later,
        // Deposit and pace wander by about a fifth between shops; common practice, no source.
        cost_per_print: Band { low: cost * 0.85, likely: cost, high: cost * 1.25 },
        rate_per_hour: Band { low: rate * 0.8, likely: rate, high: rate * 1.1 },
        first_piece: explain::first_piece(cloth, judged),
        trial: trial(job, cloth, judged),
        reasons: explain::reasons(job, cloth, judged, &room, dry),
    })
}

impl Pick {
    /// The margin of a topic, if it bears on this pick.
    #[must_use]
    pub fn margin(&self, what: Topic) -> Option<&super::Margin> {
        self.margins.iter().find(|margin| margin.what == what)
    }
}
