//! The whole answer: every white on the shelf weighed, the best first.

use super::bench::{Bench, first_closed};
use super::cost::{burden, cost_per_print, order, rate_per_hour};
use super::dial::{dry_dwell, room_around, setting};
use super::dried::{self, dried_ways, if_dried};
use super::explain::{self, word};
use super::judge::Judged;
use super::memory::Memory;
use super::outlook::{Outlook, looks};
use super::oven::oven_test;
use super::press::look;
use super::rank;
use super::ways::{anchor_way, first_way};
use super::whole::whole;
use super::{
    Cloth, Code, Job, Pick, Reason, Rejected, Report, Role, Step, Topic, Trade, Trial, Tried, Verdict,
};
use crate::dryer::HistoryError;
use crate::ink::White;
use crate::quantity::Band;

/// Answers the job for each of its cloths and gives the most demanding answer, with what all of them can share.
///
/// # Errors
/// [`HistoryError`] where a stack lies outside the equations.
pub fn answer(job: &Job) -> Result<Report, HistoryError> {
    answer_with(job, &mut Memory::default())
}

/// The same with what was marched for earlier answers.
///
/// # Errors
/// As [`answer`].
pub fn answer_with(job: &Job, memory: &mut Memory) -> Result<Report, HistoryError> {
    let mut benches: Vec<Option<Bench<'_>>> =
        job.cloths.iter().map(|cloth| Bench::new(job, cloth, memory)).collect();
    let mut reports = Vec::with_capacity(job.cloths.len());
    for (garment, (cloth, bench)) in job.cloths.iter().zip(&mut benches).enumerate() {
        let mut report = answer_cloth(job, cloth, bench.as_mut())?;
        report.garment = garment;
        for pick in report.picks.iter_mut().chain(report.closed.as_deref_mut()) {
            pick.garment = garment;
        }
        reports.push(report);
    }
    let whole = whole(job, &reports, &mut benches)?;
    for bench in benches.into_iter().flatten() {
        bench.keep(memory);
    }
    let mut hardest: Option<Report> = None;
    for report in reports {
        let chance = |report: &Report| report.picks.first().map_or(1.0, |pick| pick.fail_later.likely);
        let harder = hardest
            .as_ref()
            .is_none_or(|hardest| (report.verdict, chance(&report)) > (hardest.verdict, chance(hardest)));
        if harder {
            hardest = Some(report);
        }
    }
    let hardest = hardest.unwrap_or_else(|| refusal(Vec::new()));
    let understood_each = job.cloths.iter().map(|cloth| cloth.understood.clone()).collect();
    Ok(Report { whole, understood_each, ..hardest })
}

/// Weighs one white of the shelf on the first cloth, whatever its verdict, at the film nearest to the one that the trade's
/// experience is stated at; over a blocker if `over_blocker`. `None` where its window is closed or there is no such white.
///
/// # Errors
/// As [`answer`].
pub fn weigh(job: &Job, white: &str, over_blocker: bool) -> Result<Option<Pick>, HistoryError> {
    let Some(cloth) = job.cloths.first() else { return Ok(None) };
    let Some(white) = job.whites.iter().find(|had| had.id == white) else { return Ok(None) };
    let Some(mut bench) = Bench::new(job, cloth, &mut Memory::default()) else { return Ok(None) };
    let base = job.blockers.first().filter(|_| over_blocker);
    if over_blocker && base.is_none() {
        return Ok(None);
    }
    let Some(way) = anchor_way(job, cloth, white, base) else { return Ok(None) };
    let Ok(outlook) = bench.weigh(way)? else { return Ok(None) };
    let judged = bench.judge(outlook)?;
    Ok(Some(pick(job, cloth, &mut bench, &judged)?))
}

fn refusal(reasons: Vec<Reason>) -> Report {
    Report {
        verdict: Verdict::Refuse,
        garment: 0,
        picks: Vec::new(),
        rejected: Vec::new(),
        closed: None,
        whole: None,
        trade: None,
        to_make_it_possible: reasons,
        cautions: Vec::new(),
        unknowns: Vec::new(),
        understood: Vec::new(),
        understood_each: Vec::new(),
    }
}

fn answer_cloth<'a>(
    job: &'a Job,
    cloth: &'a Cloth,
    bench: Option<&mut Bench<'a>>,
) -> Result<Report, HistoryError> {
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
    let Some(bench) = bench else { return Ok(report) };
    let mut weighed: Vec<Outlook<'_>> = Vec::new();
    // Of what is refused, the way that comes nearest.
    let mut nearest: Option<Outlook<'_>> = None;
    let mut found = Vec::with_capacity(job.whites.len());
    for white in &job.whites {
        found.push(bench.best_of(white, &job.blockers, None)?);
    }
    let shut = first_closed(job, &found);
    let dried = dried_ways(bench, &found)?;
    let mut add = |judged| rank::insert(&mut weighed, judged, |a, b| order(job, cloth, a, b));
    for ((white, found), dried) in job.whites.iter().zip(found).zip(dried) {
        let only_dried = dried.is_some();
        dried.into_iter().for_each(&mut add);
        match found {
            Ok(judged) if judged.verdict < Verdict::Refuse => add(judged),
            _ if only_dried => {}
            Ok(refused) => {
                let judged = bench.judge(refused)?;
                let reasons = pick_reasons(job, cloth, bench, &judged)?;
                report.rejected.push(Rejected { white: white.id.clone(), name: white.name.clone(), reasons });
                let refused = judged.outlook;
                let chance = |refused: &Outlook<'_>| refused.fail_later.likely;
                if nearest.as_ref().is_none_or(|nearest| chance(&refused) < chance(nearest)) {
                    nearest = Some(refused);
                }
            }
            Err(reason) => report.rejected.push(Rejected {
                white: white.id.clone(),
                name: white.name.clone(),
                reasons: vec![reason],
            }),
        }
    }
    let picks = weighed.iter().map(|judged| Tried::of(job, cloth, judged));
    let tried = std::mem::take(&mut bench.tried);
    report.trade = Some(Trade::new(job.order.print.priority, bench.looked, tried, picks));
    let mut first = None;
    for outlook in &weighed {
        let judged = bench.judge(outlook.clone())?;
        report.picks.push(pick(job, cloth, bench, &judged)?);
        first.get_or_insert(judged);
    }
    report.verdict = report.picks.first().map_or(Verdict::Refuse, |pick| pick.verdict);
    if weighed.iter().all(|judged| judged.way.dried)
        && let Some(white) = shut
    {
        let mut openings = bench.openings(white)?;
        if weighed.is_empty() {
            report.closed = closed(job, cloth, bench, white)?.map(Box::new);
        } else {
            // What spares the drying; the drying itself is planned.
            openings.retain(|reason| reason.code != Code::OpensPreDry);
        }
        report.to_make_it_possible.extend(openings);
    }
    let best = weighed.first().or(nearest.as_ref());
    report.to_make_it_possible.extend(improvements(job, cloth, bench, report.verdict, best)?);
    report.cautions = explain::cautions(job, cloth, first.as_ref());
    report.unknowns = explain::unknowns(job, cloth, first.as_ref());
    Ok(report)
}

/// The first way to print a white whose window is closed.
fn closed(
    job: &Job,
    cloth: &Cloth,
    bench: &mut Bench<'_>,
    white: &White,
) -> Result<Option<Pick>, HistoryError> {
    let Some(way) = first_way(job, cloth, white) else { return Ok(None) };
    let outlook = bench.weigh_closed(way)?;
    let judged = bench.judge(outlook)?;
    let pick = pick(job, cloth, bench, &judged)?;
    Ok(Some(Pick { verdict: Verdict::Refuse, setting: None, trial: None, ..pick }))
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

/// What would make the answer better: an undyed cloth, a white or a blocker to buy, a dried cloth.
fn improvements(
    job: &Job,
    cloth: &Cloth,
    bench: &mut Bench<'_>,
    verdict: Verdict,
    best: Option<&Outlook<'_>>,
) -> Result<Vec<Reason>, HistoryError> {
    type Found = (Verdict, f64, Reason);
    let mut found: Vec<Found> = Vec::new();
    let mut add = |item: Found| {
        rank::insert(&mut found, item, |a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    };
    if verdict == Verdict::Go {
        return Ok(Vec::new());
    }
    for white in &job.market {
        if let Ok(judged) = bench.best_of(white, &job.blockers, Some(verdict))?
            && judged.verdict < verdict
        {
            let reason = Reason::new(Code::BuyClass)
                .word("class", word(white.class))
                .word("name", &white.name)
                .number("low_cure", f64::from(u8::from(white.low_cure)))
                .word("verdict", word(judged.verdict));
            add((judged.verdict, burden(job, cloth, &judged), reason));
        }
    }
    if cloth.dyed.is_some() {
        // A blocker to buy goes under a white that blocks itself; under another it would be alone.
        for white in job.whites.iter().filter(|white| white.dye_capacity > 0.0) {
            if let Ok(judged) = bench.best_of(white, &job.market_blockers, Some(verdict))?
                && judged.verdict < verdict
                && let Some(base) = judged.way.base
            {
                let reason = Reason::new(Code::UseBlocker)
                    .word("name", &base.name)
                    .word("white", &white.name)
                    .word("verdict", word(judged.verdict));
                add((judged.verdict, burden(job, cloth, &judged), reason));
            }
        }
    }
    let mut reasons: Vec<Reason> = found.into_iter().map(|(_, _, reason)| reason).take(3).collect();
    if let Some(best) = best {
        reasons.extend(if_dried(job, cloth, best)?);
    }
    if cloth.dyed.is_some() && !cloth.dye_known {
        let undyed = Cloth { dyed: None, dye_known: true, ..cloth.clone() };
        let best = bench.on_cloth(&undyed, |bench| {
            let mut best = Verdict::Refuse;
            for white in &job.whites {
                if let Ok(judged) = bench.best_of(white, &[], Some(best.min(verdict)))? {
                    best = best.min(judged.verdict);
                }
            }
            Ok::<_, HistoryError>(best)
        })?;
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
) -> Result<Vec<Reason>, HistoryError> {
    let window = bench.window(&judged.way)?;
    let room = room_around(window, judged);
    // What water costs a run is no matter where there is none.
    Ok(explain::reasons(job, cloth, judged, &room, None))
}

fn steps(job: &Job, cloth: &Cloth, judged: &Judged<'_>) -> Vec<Step> {
    let way = &judged.way;
    let flash = judged.run.flash.map(|flash| Step::Flash { seconds: flash.seconds, film_c: flash.film_c });
    let role = job.order.print.role;
    let mut steps: Vec<Step> = dried::step(job, cloth, judged).into_iter().collect();
    if role == Role::Highlight {
        steps.extend(flash.clone());
    }
    // The smoothing screen runs once, over the first film that has been flashed.
    let smooth = way.smoothing.then_some(Step::Smooth);
    if let Some(base) = way.base {
        steps.push(Step::Blocker { id: base.id.clone(), name: base.name.clone(), film_um: base.film * 1e6 });
        steps.extend(flash.clone());
        steps.extend(smooth.clone());
    }
    for stroke in 1..=way.strokes {
        if stroke > 1 {
            steps.extend(flash.clone());
            steps.extend(smooth.clone().filter(|_| stroke == 2 && way.base.is_none()));
        }
        steps.push(Step::White {
            strokes: 1,
            threads_per_cm: way.mesh.threads_per_m / 100.0,
            film_um: way.film * 1e6 * f64::from(stroke) / f64::from(way.strokes),
        });
    }
    if role == Role::Underbase {
        steps.extend(flash);
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
    let (hours, oven_c) = if latent { (24.0, 60.0) } else { (0.0, job.order.use_.storage_c) };
    let oven = judged
        .bled
        .as_ref()
        .zip(looks(cloth, &judged.way))
        .map(|(bled, (fresh, dye))| oven_test(bled, &fresh, &dye, hours, oven_c, judged.bleeds));
    Some(Trial {
        pieces,
        hours,
        oven_c,
        pass_mark: job.rules.bleed,
        power: oven.map_or(job.rules.power_exit[0], |oven| oven.power),
        stands_for_days: oven.map_or(0.0, |oven| oven.film_days.likely),
    })
}

/// What is stirred into a white, by name and percent.
fn mixed(job: &Job, white: &White) -> Vec<(String, f64)> {
    job.mixes.iter().find(|mix| mix.white.id == white.id).map(|mix| mix.part.clone()).into_iter().collect()
}

fn pick(job: &Job, cloth: &Cloth, bench: &mut Bench<'_>, judged: &Judged<'_>) -> Result<Pick, HistoryError> {
    let window = bench.window(&judged.way)?;
    let room = room_around(window, judged);
    let dry = dry_dwell(job, cloth, judged)?;
    let white = judged.way.white;
    let cost = cost_per_print(job, judged);
    let rate = rate_per_hour(job, judged);
    Ok(Pick {
        garment: 0,
        verdict: judged.verdict,
        white: white.id.clone(),
        name: white.name.clone(),
        class: white.class,
        low_cure: white.low_cure,
        mix: mixed(job, white),
        additive: judged.way.additive,
        steps: steps(job, cloth, judged),
        advice: explain::advice(job, cloth, judged),
        setting: Some(setting(job, &judged.run.point, &room)),
        look: Some(look(judged)),
        margins: judged.margins.clone(),
        fail_later: judged.fail_later,
        // Deposit and pace wander by about a fifth between shops; common practice, no source.
        cost_per_print: Band { low: cost * 0.85, likely: cost, high: cost * 1.25 },
        rate_per_hour: Band { low: rate * 0.8, likely: rate, high: rate * 1.1 },
        first_piece: explain::first_piece(judged),
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

    /// Whether its cloth is dried before it is printed.
    #[must_use]
    pub fn is_dried(&self) -> bool {
        self.steps.iter().any(|step| matches!(step, Step::PreDry { .. }))
    }
}
