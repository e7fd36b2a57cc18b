//! The best way to print one white, without judging every way.
//!
//! A way's ink, hand and cover are known before any march, and so are the late faults that no heat moves. With the least
//! chance of bleeding that can be hoped for they bound what the way can come to. Ways are judged in the order of that bound,
//! and the search ends where the best judged way beats every bound that is left. What can be hoped for is learnt on the way,
//! from every film that was judged on the same cloth ([`super::hope`]). `tests/answers/screening.rs` holds all this to the
//! judgement of every way.

use super::bench::{Bench, Dial};
use super::candidate::Candidate;
use super::cost::{burden, burden_of, fastest};
use super::dried::{dried_ways, may_dry};
use super::late::LateFaults;
use super::memory::Memory;
use super::outlook::{Outlook, settled};
use super::trade::Tried;
use super::ways::ways;
use super::{Base, Code, Job, Reason, Verdict, explain::word};
use crate::dryer::HistoryError;
use crate::ink::White;

/// A way that is not judged yet; what is absent is found out once the way may win.
struct Open<'w> {
    way: Candidate<'w>,
    /// Chance that the print fails late by what no heat moves.
    others: f64,
    /// How much of the garment shows.
    shows: Option<f64>,
    /// Its set point, and what comes with it.
    dial: Option<Dial>,
    /// Verdict and burden that it can come to at best, by how many films had been judged then.
    bound: Option<(usize, Verdict, f64)>,
}

impl<'a> Bench<'a> {
    /// The best way to use one white, by verdict and then by cost; the first reason against it where there is none. Ways
    /// that cannot do better than `beat` are not looked for.
    pub(super) fn best_of<'w>(
        &mut self,
        white: &'w White,
        bases: &'w [Base],
        beat: Option<Verdict>,
    ) -> Result<Result<Outlook<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        self.best_among(ways(self.job, self.cloth, white, bases), white, beat)
    }

    /// The same on cloth that is dried before.
    pub(super) fn best_dried<'w>(
        &mut self,
        white: &'w White,
        bases: &'w [Base],
        beat: Verdict,
    ) -> Result<Result<Outlook<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        let ways = ways(self.job, self.cloth, white, bases);
        let dried = ways.iter().map(|way| way.with_cloth(true)).collect();
        self.best_among(dried, white, Some(beat))
    }

    fn best_among<'w>(
        &mut self,
        ways: Vec<Candidate<'w>>,
        white: &White,
        beat: Option<Verdict>,
    ) -> Result<Result<Outlook<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        let (job, cloth) = (self.job, self.cloth);
        let mut open: Vec<Open<'w>> = ways
            .into_iter()
            .map(|way| Open {
                way,
                others: LateFaults::of(job, cloth, &way).any(),
                shows: None,
                dial: None,
                bound: None,
            })
            .collect();
        self.looked += open.len();
        let mut best: Option<(Outlook<'w>, f64)> = None;
        let mut refused = None;
        while let Some((at, bound)) = self.next(&mut open) {
            let beaten = match &best {
                // Of ways that are all refused, one is as good as another.
                Some((best, _)) if best.verdict == Verdict::Refuse => bound.0 == Verdict::Refuse,
                Some((best, burden)) => bound.0.cmp(&best.verdict).then(bound.1.total_cmp(burden)).is_ge(),
                None => beat.is_some_and(|beat| bound.0 >= beat),
            };
            if beaten {
                break;
            }
            let mut next = open.swap_remove(self.thickest_first(&open, at));
            if next.shows.is_none() {
                (next.shows, next.bound) = (Some(next.way.shows(job, cloth, 1.0)), None);
                // A mixture stands in for a white that covers only where it covers as well.
                if next.way.white.id == white.id || next.way.covers(job, cloth) {
                    open.push(next);
                }
                continue;
            }
            if next.dial.is_none() {
                match self.dial(&next.way)? {
                    Ok(dial) => {
                        (next.dial, next.bound) = (Some(dial), None);
                        open.push(next);
                    }
                    Err(reason) => refused = refused.or(Some(reason)),
                }
                continue;
            }
            self.judged += 1;
            if let Ok(judged) = self.weigh(next.way)? {
                self.hopes.saw(&judged, next.dial.map_or(0.0, |dial| dial.dye));
                self.tried.push(Tried::of(job, cloth, &judged));
                let burden = burden(job, cloth, &judged);
                let better = best.as_ref().is_none_or(|(best, least)| {
                    judged.verdict.cmp(&best.verdict).then(burden.total_cmp(least)).is_lt()
                });
                if better {
                    best = Some((judged, burden));
                }
            }
        }
        Ok(match best {
            Some((judged, _)) => Ok(judged),
            None => Err(refused.unwrap_or_else(|| {
                Reason::new(Code::CoversShort).word("white", &white.name).word("class", word(white.class))
            })),
        })
    }
}

impl Bench<'_> {
    /// The most promising of the open ways and what it can come to at best.
    fn next(&self, open: &mut [Open<'_>]) -> Option<(usize, (Verdict, f64))> {
        let mut least: Option<(usize, (Verdict, f64))> = None;
        for (at, open) in open.iter_mut().enumerate() {
            let (verdict, burden) = match open.bound {
                Some((seen, verdict, burden)) if seen == self.hopes.len() => (verdict, burden),
                _ => self.bound(open),
            };
            open.bound = Some((self.hopes.len(), verdict, burden));
            if least.is_none_or(|(_, had)| verdict.cmp(&had.0).then(burden.total_cmp(&had.1)).is_lt()) {
                least = Some((at, (verdict, burden)));
            }
        }
        least
    }

    /// Verdict and burden that a way can come to at best.
    fn bound(&self, open: &Open<'_>) -> (Verdict, f64) {
        let (job, cloth, way) = (self.job, self.cloth, &open.way);
        let hoped = open.dial.filter(|_| cloth.dyed.is_some());
        let hoped = hoped.map_or(0.0, |dial| self.hopes.hoped(job, cloth, way, dial.dye));
        let chance = 1.0 - (1.0 - hoped.max(job.rules.lapse)) * (1.0 - open.others);
        let (robust, pace) =
            open.dial.map_or((true, fastest(job, way)), |dial| (dial.point.robust, dial.pace));
        let (verdict, _) = settled(job, cloth, way, chance, robust);
        (verdict, burden_of(job, cloth, way, open.shows.unwrap_or(0.0), chance, pace))
    }

    /// The way itself; or, where its cloth bleeds and nothing was judged that is like it, the thickest film of the pure white
    /// over the same blocker, which tells most about all others.
    fn thickest_first(&self, open: &[Open<'_>], at: usize) -> usize {
        let base = |open: &Open<'_>| open.way.base.map(|base| base.id.clone());
        let Some((chosen, dial)) = open.get(at).and_then(|open| open.dial.map(|dial| (open, dial))) else {
            return at;
        };
        if self.cloth.dyed.is_none() || self.hopes.knows(&chosen.way, dial.dye) {
            return at;
        }
        let like = open.iter().enumerate().filter(|(_, open)| base(open) == base(chosen));
        let thickest = like.max_by(|(_, a), (_, b)| a.way.film.total_cmp(&b.way.film));
        thickest.map_or(at, |(at, _)| at)
    }
}

/// A way with what decides between two.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// Id of the white or mixture.
    pub white: String,
    /// Film of white, m.
    pub film: f64,
    /// Whether a blocker lies under it.
    pub over_blocker: bool,
    /// The verdict.
    pub verdict: Verdict,
    /// What it costs the order in ink, time, risk and what the order cares for, in the shop's money.
    pub burden: f64,
}

/// What the search found for one white beside every one of its ways.
#[derive(Clone, Debug)]
pub struct Screening {
    /// Id of the white.
    pub white: String,
    /// What the search found.
    pub found: Option<Weighed>,
    /// How many ways it judged.
    pub judged: usize,
    /// All that have a set point.
    pub every: Vec<Weighed>,
    /// What was found on dried cloth, where that comes to a better verdict.
    pub dried: Option<Weighed>,
    /// All on dried cloth that have a set point; none where the order can be run without, or the cloth is dry.
    pub every_dried: Vec<Weighed>,
}

/// Searches for the best way of each white of the shelf on the job's first cloth, as an answer does, and then judges every
/// way: what the search spares.
///
/// # Errors
/// As the march.
pub fn screening(job: &Job) -> Result<Vec<Screening>, HistoryError> {
    let Some(cloth) = job.cloths.first() else { return Ok(Vec::new()) };
    let Some(mut bench) = Bench::new(job, cloth, &mut Memory::default()) else { return Ok(Vec::new()) };
    let weighed = |judged: &Outlook<'_>| Weighed {
        white: judged.way.white.id.clone(),
        film: judged.way.film,
        over_blocker: judged.way.base.is_some(),
        verdict: judged.verdict,
        burden: burden(job, cloth, judged),
    };
    let mut screenings = Vec::with_capacity(job.whites.len());
    let mut found = Vec::with_capacity(job.whites.len());
    for white in &job.whites {
        let before = bench.judged;
        found.push(bench.best_of(white, &job.blockers, None)?);
        screenings.push(Screening {
            white: white.id.clone(),
            found: found.last().and_then(|found| found.as_ref().ok()).map(weighed),
            judged: bench.judged - before,
            every: Vec::new(),
            dried: None,
            every_dried: Vec::new(),
        });
    }
    let dried = dried_ways(&mut bench, &found)?;
    let may_dry = may_dry(job, cloth, &found);
    for ((white, dried), screening) in job.whites.iter().zip(dried).zip(&mut screenings) {
        screening.dried = dried.as_ref().map(weighed);
        for way in ways(job, cloth, white, &job.blockers) {
            if way.white.id != white.id && !way.covers(job, cloth) {
                continue;
            }
            screening.every.extend(bench.weigh(way)?.ok().as_ref().map(weighed));
            if may_dry {
                let judged = bench.weigh(way.with_cloth(true))?.ok();
                screening.every_dried.extend(judged.as_ref().map(weighed));
            }
        }
    }
    Ok(screenings)
}
