//! The best way to print one white, without judging every way.
//!
//! A way's ink, hand and cover are known before any march, and so are the late faults that no heat moves. With the least
//! dye that can be hoped for they bound what the way can come to. Ways are judged in the order of that bound, and the
//! search ends where the best judged way beats every bound that is left. What dye can be hoped for is learnt on the way:
//! on one cloth, over one blocker, a thinner film of the same white lets no less through than a thicker one does, and
//! stirring something in binds no more. `tests/screening.rs` holds all this to the judgement of every way.

use super::bench::Bench;
use super::candidate::Candidate;
use super::cost::{burden_of, fastest};
use super::judge::{Judged, late, settled};
use super::ways::ways;
use super::{Base, Cloth, Code, Job, Reason, Verdict, explain::word};
use crate::dryer::HistoryError;
use crate::ink::White;
use crate::numerics::normal;

/// How the dye that a film can take goes with its thickness, at least: more than the root of it (`tests/screening.rs`).
const TAKES: f64 = 0.4;

/// A way that is not judged yet.
struct Open<'w> {
    way: Candidate<'w>,
    /// How much of the garment shows; absent until it is worth a look.
    shows: Option<f64>,
    /// Chance that the print fails late by what no heat moves.
    others: f64,
}

/// A judged film: how thick, over what, and how likely it turns.
struct Seen {
    film: f64,
    base: Option<String>,
    white: String,
    additive: bool,
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
        let mut search = Search { pure: &white.id, job, cloth, seen: Vec::new() };
        let mut open: Vec<Open<'w>> = ways(job, cloth, white, bases)
            .into_iter()
            .map(|way| Open { way, shows: None, others: late(job, cloth, &way) })
            .collect();
        self.looked += open.len();
        let mut best: Option<(Judged<'w>, f64)> = None;
        let mut refused = None;
        while let Some((at, bound)) = search.next(&open) {
            let beaten = match &best {
                Some((best, burden)) => bound.0.cmp(&best.verdict).then(bound.1.total_cmp(burden)).is_ge(),
                None => beat.is_some_and(|beat| bound.0 >= beat),
            };
            if beaten {
                break;
            }
            let at = search.thickest_first(&open, at);
            let mut next = open.swap_remove(at);
            if next.shows.is_none() {
                next.shows = Some(next.way.shows(job, cloth, 1.0));
                // A mixture stands in for a white that covers only where it covers as well.
                if next.way.white.id == white.id || next.way.covers(job, cloth) {
                    open.push(next);
                }
                continue;
            }
            match self.weigh(next.way)? {
                Ok(judged) => {
                    search.saw(&judged);
                    let burden = super::cost::burden(job, cloth, &judged);
                    let better = best.as_ref().is_none_or(|(best, least)| {
                        judged.verdict.cmp(&best.verdict).then(burden.total_cmp(least)).is_lt()
                    });
                    if better {
                        best = Some((judged, burden));
                    }
                }
                Err(reason) => refused = refused.or(Some(reason)),
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

struct Search<'j> {
    /// Id of the white that is looked at; mixtures of it have others.
    pure: &'j str,
    job: &'j Job,
    cloth: &'j Cloth,
    seen: Vec<Seen>,
}

impl Search<'_> {
    /// The most promising of the open ways and what it can come to at best.
    fn next(&self, open: &[Open<'_>]) -> Option<(usize, (Verdict, f64))> {
        let bounds = open.iter().map(|open| self.bound(open)).enumerate();
        bounds.min_by(|(_, a), (_, b)| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)))
    }

    /// Verdict and burden that a way can come to at best.
    fn bound(&self, open: &Open<'_>) -> (Verdict, f64) {
        let (job, cloth, way) = (self.job, self.cloth, &open.way);
        let chance = 1.0 - (1.0 - self.floor(way).max(job.rules.lapse)) * (1.0 - open.others);
        let (verdict, _) = settled(job, cloth, way, chance, true);
        (verdict, burden_of(job, cloth, way, open.shows.unwrap_or(0.0), chance, fastest(job, way)))
    }

    /// Least chance of bleeding that can be hoped for.
    fn floor(&self, way: &Candidate<'_>) -> f64 {
        let base = way.base.map(|base| base.id.as_str());
        let bears = self.seen.iter().filter(|seen| {
            let same = seen.white == way.white.id && seen.additive == way.additive;
            let purer = !seen.additive && seen.white == self.pure;
            seen.base.as_deref() == base && (same || purer) && seen.film >= way.film * (1.0 - 1e-9)
        });
        bears.map(|seen| self.thinner(seen.bleeds, seen.film / way.film)).fold(0.0, f64::max)
    }

    /// Chance of a film so many times thinner than one with this chance, at least.
    fn thinner(&self, chance: f64, times: f64) -> f64 {
        let lapse = self.job.rules.lapse;
        let share = (chance - lapse) / (1.0 - 2.0 * lapse);
        // What was seen of a lot bends the chance; then no more is said than that thinner is no better.
        if !self.job.order.evidence.is_empty() || !(1e-9..1.0 - 1e-9).contains(&share) {
            return chance;
        }
        let nearer = TAKES * times.max(1.0).ln() / self.cloth.belief.spread.max(1e-6);
        lapse + (1.0 - 2.0 * lapse) * normal::cumulative(normal::quantile(share) + nearer)
    }

    /// The way itself; or, where its cloth bleeds and nothing was seen of its like, the thickest film of the pure white over
    /// the same blocker, which tells most about all others.
    fn thickest_first(&self, open: &[Open<'_>], at: usize) -> usize {
        let Some(chosen) = open.get(at) else { return at };
        let base = chosen.way.base.map(|base| base.id.as_str());
        if self.cloth.dyed.is_none() || self.seen.iter().any(|seen| seen.base.as_deref() == base) {
            return at;
        }
        let like = |open: &&(usize, &Open<'_>)| open.1.way.base.map(|base| base.id.as_str()) == base;
        let all: Vec<(usize, &Open<'_>)> = open.iter().enumerate().collect();
        let pure = all.iter().filter(like).filter(|(_, open)| !open.way.additive && !open.way.smoothing);
        pure.max_by(|a, b| a.1.way.film.total_cmp(&b.1.way.film)).map_or(at, |(at, _)| *at)
    }

    fn saw(&mut self, judged: &Judged<'_>) {
        let way = &judged.way;
        self.seen.push(Seen {
            film: way.film,
            base: way.base.map(|base| base.id.clone()),
            white: way.white.id.clone(),
            additive: way.additive,
            bleeds: judged.bleeds,
        });
    }
}
