//! The best way to print one white, without judging every way.
//!
//! A way's ink, hand and cover are known before any march, and so are the late faults that no heat moves. With the least
//! dye that can be hoped for they bound what the way can come to. Ways are judged in the order of that bound, and the
//! search ends where the best judged way beats every bound that is left. What dye can be hoped for is learnt on the way:
//! on one cloth, over one blocker, a thinner film of the same white lets no less through than a thicker one does, and
//! stirring something in binds no more. `tests/screening.rs` holds all this to the judgement of every way.

use super::ageing::ADDITIVE;
use super::bench::Bench;
use super::candidate::Candidate;
use super::cost::{burden, burden_of, fastest};
use super::judge::{Judged, late, settled};
use super::trade::Tried;
use super::ways::ways;
use super::window::SetPoint;
use super::{Base, Cloth, Code, Job, Reason, Verdict, explain::word};
use crate::dryer::HistoryError;
use crate::ink::White;
use crate::numerics::normal;

/// How the dye that a film can take goes with its thickness while nothing was seen of it: its capacity in proportion, its
/// depth a little more. Assumed; `tests/screening.rs` holds it.
const TAKES: f64 = 1.2;
/// How far a guess from another film may be off, in lots' own spread. Chosen; `tests/screening.rs` holds it.
const DOUBT: f64 = 0.5;

/// A way that is not judged yet; what is absent is found out once the way may win.
struct Open<'w> {
    way: Candidate<'w>,
    /// Chance that the print fails late by what no heat moves.
    others: f64,
    /// How much of the garment shows.
    shows: Option<f64>,
    /// Its set point, and prints per hour there.
    dial: Option<(SetPoint, f64)>,
    /// Verdict and burden that it can come to at best, by how many films had been judged then.
    bound: Option<(usize, Verdict, f64)>,
}

/// A judged film: how thick, what it binds (kg/m³), over what, and how likely it turns.
struct Seen<'w> {
    film: f64,
    binds: f64,
    base: Option<&'w str>,
    bleeds: f64,
}

impl<'a> Bench<'a> {
    /// The best way to use one white, by verdict and then by cost; the first reason against it where there is none. Ways
    /// that cannot do better than `beat` are not looked for.
    pub(super) fn best_of<'w>(
        &mut self,
        white: &'w White,
        bases: &'w [Base],
        beat: Option<Verdict>,
    ) -> Result<Result<Judged<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        let (job, cloth) = (self.job, self.cloth);
        let mut search = Search { job, cloth, seen: Vec::new() };
        let mut open: Vec<Open<'w>> = ways(job, cloth, white, bases)
            .into_iter()
            .map(|way| Open { way, others: late(job, cloth, &way), shows: None, dial: None, bound: None })
            .collect();
        self.looked += open.len();
        let mut best: Option<(Judged<'w>, f64)> = None;
        let mut refused = None;
        while let Some((at, bound)) = search.next(&mut open) {
            let beaten = match &best {
                // Of ways that are all refused, one is as good as another.
                Some((best, _)) if best.verdict == Verdict::Refuse => bound.0 == Verdict::Refuse,
                Some((best, burden)) => bound.0.cmp(&best.verdict).then(bound.1.total_cmp(burden)).is_ge(),
                None => beat.is_some_and(|beat| bound.0 >= beat),
            };
            if beaten {
                break;
            }
            let mut next = open.swap_remove(search.thickest_first(&open, at));
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
                search.saw(&judged);
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

struct Search<'w> {
    job: &'w Job,
    cloth: &'w Cloth,
    seen: Vec<Seen<'w>>,
}

impl<'w> Search<'w> {
    /// The most promising of the open ways and what it can come to at best.
    fn next(&self, open: &mut [Open<'_>]) -> Option<(usize, (Verdict, f64))> {
        let mut least: Option<(usize, (Verdict, f64))> = None;
        for (at, open) in open.iter_mut().enumerate() {
            let (verdict, burden) = match open.bound {
                Some((seen, verdict, burden)) if seen == self.seen.len() => (verdict, burden),
                _ => self.bound(open),
            };
            open.bound = Some((self.seen.len(), verdict, burden));
            if least.is_none_or(|(_, had)| verdict.cmp(&had.0).then(burden.total_cmp(&had.1)).is_lt()) {
                least = Some((at, (verdict, burden)));
            }
        }
        least
    }

    /// Verdict and burden that a way can come to at best.
    fn bound(&self, open: &Open<'_>) -> (Verdict, f64) {
        let (job, cloth, way) = (self.job, self.cloth, &open.way);
        let chance = 1.0 - (1.0 - self.hoped(way).max(job.rules.lapse)) * (1.0 - open.others);
        let (robust, rate) = match &open.dial {
            Some((point, rate)) => (point.robust, *rate),
            None => (true, fastest(job, way)),
        };
        let (verdict, _) = settled(job, cloth, way, chance, robust);
        (verdict, burden_of(job, cloth, way, open.shows.unwrap_or(0.0), chance, rate))
    }

    /// Least chance of bleeding that can be hoped for: guessed from the nearest film that was judged over the same base, and
    /// a doubt taken off; none where no film was.
    fn hoped(&self, way: &Candidate<'_>) -> f64 {
        let base = way.base.map(|base| base.id.as_str());
        let far = |seen: &&Seen<'_>| (seen.film / way.film).ln().abs() + (seen.binds / binds(way)).ln().abs();
        let like = self.seen.iter().filter(|seen| seen.base == base);
        let Some(nearest) = like.min_by(|a, b| far(a).total_cmp(&far(b))) else { return 0.0 };
        let lapse = self.job.rules.lapse;
        let share = (nearest.bleeds - lapse) / (1.0 - 2.0 * lapse);
        // What was seen of a lot bends the chance, and tells nothing of another film.
        if !self.job.order.evidence.is_empty() || share >= 1.0 - 1e-9 {
            return 0.0;
        }
        let same = far(&nearest) < 1e-9;
        let takes = TAKES * (way.film / nearest.film).ln() + (binds(way) / nearest.binds).ln();
        let doubt = if same { 0.0 } else { DOUBT };
        let normal = normal::quantile(share.max(1e-9)) - takes / self.cloth.belief.spread.max(1e-6) - doubt;
        lapse + (1.0 - 2.0 * lapse) * normal::cumulative(normal)
    }

    /// The way itself; or, where its cloth bleeds and nothing was seen of its like, the thickest film of the pure white over
    /// the same blocker, which tells most about all others.
    fn thickest_first(&self, open: &[Open<'_>], at: usize) -> usize {
        let base = |open: &Open<'_>| open.way.base.map(|base| base.id.clone());
        let Some(chosen) = open.get(at).filter(|open| open.dial.is_some()) else { return at };
        if self.cloth.dyed.is_none() || self.seen.iter().any(|seen| seen.base == base(chosen).as_deref()) {
            return at;
        }
        let like = open.iter().enumerate().filter(|(_, open)| base(open) == base(chosen));
        let thickest = like.max_by(|(_, a), (_, b)| a.way.film.total_cmp(&b.way.film));
        thickest.map_or(at, |(at, _)| at)
    }

    fn saw(&mut self, judged: &Judged<'w>) {
        let way = &judged.way;
        self.seen.push(Seen {
            film: way.film,
            binds: binds(way),
            base: way.base.map(|base| base.id.as_str()),
            bleeds: judged.bleeds,
        });
    }
}

/// Dye that a film binds, kg/m³; never quite nothing, so that whites that bind none can be set beside one another.
fn binds(way: &Candidate<'_>) -> f64 {
    let diluted = if way.additive { 1.0 - ADDITIVE } else { 1.0 };
    (way.white.density * way.white.dye_capacity * diluted).max(1e-3)
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
    /// What the search found.
    pub found: Option<Weighed>,
    /// How many ways it judged.
    pub judged: usize,
    /// All that have a set point.
    pub every: Vec<Weighed>,
}

/// Judges every way of one white of the shelf on the job's first cloth, and searches for the best: what the search spares.
///
/// # Errors
/// As the march.
pub fn screening(job: &Job, white: &str) -> Result<Option<Screening>, HistoryError> {
    let (Some(cloth), Some(white)) = (job.cloths.first(), job.whites.iter().find(|had| had.id == white))
    else {
        return Ok(None);
    };
    let Some(mut bench) = Bench::new(job, cloth) else { return Ok(None) };
    let weighed = |judged: &Judged<'_>| Weighed {
        white: judged.way.white.id.clone(),
        film: judged.way.film,
        over_blocker: judged.way.base.is_some(),
        verdict: judged.verdict,
        burden: burden(job, cloth, judged),
    };
    let found = bench.best_of(white, &job.blockers, None)?.ok().as_ref().map(weighed);
    let judged = bench.judged;
    let mut every = Vec::new();
    for way in ways(job, cloth, white, &job.blockers) {
        if (way.white.id == white.id || way.covers(job, cloth))
            && let Ok(judged) = bench.weigh(way)?
        {
            every.push(weighed(&judged));
        }
    }
    Ok(Some(Screening { found, judged, every }))
}
