//! The best candidate of one white, without assessing every candidate.
//!
//! Ink, hand and cover of a candidate are known before any simulation, and so are the late faults that do not
//! depend on the heat. With the least chance of bleeding that it may have, they bound its verdict and burden.
//! Candidates are assessed in the order of that bound, and the search ends when the best assessed one beats
//! every bound that is left. The least chance of bleeding is estimated from every film that was assessed on
//! the same cloth ([`super::dye_estimate`]). `tests/answers/screening.rs` checks all this against the
//! assessment of every candidate.
//!
//! **Decision:** every candidate (mesh, strokes, smoothing screen, blocker, mixture, additive) is compared,
//! and only those that may still win are assessed.
//! **Because:** to assess the rest would cost an answer its tenth of a second.
//! **Measured:** `tests/answers/screening.rs` assesses all of them and finds the same winner; the tenth of a
//! second is of 2026-11-28, machine not recorded.
//! **Reconsider when:** that test finds another winner, or an assessment becomes cheap enough to do them all.

use super::evaluator::{Evaluator, OperatingPoint};
use crate::dryer::HistoryError;
use crate::ink::White;
use crate::plan::margins::{HeatStanding, LateFaults};
use crate::plan::order::BlockerBase;
use crate::plan::recipe::{Candidate, candidates};
use crate::plan::report::{Code, Reason, Verdict, word};
use crate::plan::verdict::{Assessment, burden, burden_of, fastest, scores, verdict_for};

/// A candidate that is not assessed yet; what is absent is computed once the candidate may win.
struct Open<'w> {
    candidate: Candidate<'w>,
    /// Chance of any late fault that does not depend on the heat.
    others: f64,
    /// How much of the garment shows, ΔE00.
    shows: Option<f64>,
    /// Its set point, with the pace and the dye there.
    operating_point: Option<OperatingPoint>,
    /// The best verdict and least burden that it can reach, after the number of candidates that had been
    /// assessed by then.
    bound: Option<(usize, Verdict, f64)>,
}

impl<'a> Evaluator<'a> {
    /// The best candidate of one white, by verdict and then by burden; if there is none, the first reason
    /// against the white. Candidates that cannot do better than `beat` are not looked for.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn best_of<'w>(
        &mut self,
        white: &'w White,
        blockers: &'w [BlockerBase],
        beat: Option<Verdict>,
    ) -> Result<Result<Assessment<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        self.best_among(candidates(self.job, self.cloth, white, blockers), white, beat)
    }

    /// The same on cloth that is dried before.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn best_dried<'w>(
        &mut self,
        white: &'w White,
        blockers: &'w [BlockerBase],
        beat: Verdict,
    ) -> Result<Result<Assessment<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        let candidates = candidates(self.job, self.cloth, white, blockers);
        let dried = candidates.iter().map(|candidate| candidate.with_cloth(true)).collect();
        self.best_among(dried, white, Some(beat))
    }

    fn best_among<'w>(
        &mut self,
        candidates: Vec<Candidate<'w>>,
        white: &White,
        beat: Option<Verdict>,
    ) -> Result<Result<Assessment<'w>, Reason>, HistoryError>
    where
        'a: 'w,
    {
        let (job, cloth) = (self.job, self.cloth);
        let mut open: Vec<Open<'w>> = candidates
            .into_iter()
            .map(|candidate| Open {
                candidate,
                others: LateFaults::of(job, cloth, &candidate).any(),
                shows: None,
                operating_point: None,
                bound: None,
            })
            .collect();
        self.compared += open.len();
        let mut best: Option<(Assessment<'w>, f64)> = None;
        let mut refused = None;
        while let Some((at, bound)) = self.next(&mut open) {
            let beaten = match &best {
                // Among candidates that are all refused, one is as good as another.
                Some((best, _)) if best.verdict == Verdict::Refuse => bound.0 == Verdict::Refuse,
                Some((best, burden)) => bound.0.cmp(&best.verdict).then(bound.1.total_cmp(burden)).is_ge(),
                None => beat.is_some_and(|beat| bound.0 >= beat),
            };
            if beaten {
                break;
            }
            let mut next = open.swap_remove(self.thickest_first(&open, at));
            if next.shows.is_none() {
                (next.shows, next.bound) = (Some(next.candidate.shows(job, cloth, 1.0)), None);
                // Candidates are chosen by the cover of the pure white, so a mixture is tested for its own.
                if next.candidate.white.id == white.id || next.candidate.covers(job, cloth) {
                    open.push(next);
                }
                continue;
            }
            if next.operating_point.is_none() {
                match self.operating_point(&next.candidate)? {
                    Ok(operating_point) => {
                        (next.operating_point, next.bound) = (Some(operating_point), None);
                        open.push(next);
                    }
                    Err(reason) => refused = refused.or(Some(reason)),
                }
                continue;
            }
            self.assessed += 1;
            if let Ok(assessment) = self.assess(next.candidate)? {
                if let Some(OperatingPoint { dye, heat, .. }) = next.operating_point {
                    self.estimates.learn(&assessment, dye);
                    let dried = assessment.candidate.dried;
                    let deviations = assessment.under_cure.deviations();
                    self.heat_estimate.learn(dried, deviations, heat.deviations);
                }
                self.scores.push(scores(job, cloth, &assessment));
                let burden = burden(job, cloth, &assessment);
                let better = best.as_ref().is_none_or(|(best, least)| {
                    assessment.verdict.cmp(&best.verdict).then(burden.total_cmp(least)).is_lt()
                });
                if better {
                    best = Some((assessment, burden));
                }
            }
        }
        Ok(match best {
            Some((assessment, _)) => Ok(assessment),
            None => Err(refused.unwrap_or_else(|| {
                Reason::new(Code::CoversShort).word("white", &white.name).word("class", word(white.class))
            })),
        })
    }
}

impl Evaluator<'_> {
    /// The most promising of the open candidates, and its bound.
    fn next(&self, open: &mut [Open<'_>]) -> Option<(usize, (Verdict, f64))> {
        let mut least: Option<(usize, (Verdict, f64))> = None;
        for (at, open) in open.iter_mut().enumerate() {
            let (verdict, burden) = match open.bound {
                Some((after, verdict, burden)) if after == self.assessed => (verdict, burden),
                _ => self.bound(open),
            };
            open.bound = Some((self.assessed, verdict, burden));
            if least.is_none_or(|(_, best)| verdict.cmp(&best.0).then(burden.total_cmp(&best.1)).is_lt()) {
                least = Some((at, (verdict, burden)));
            }
        }
        least
    }

    /// The best verdict and least burden that a candidate can reach.
    fn bound(&self, open: &Open<'_>) -> (Verdict, f64) {
        let (job, cloth, candidate) = (self.job, self.cloth, &open.candidate);
        let least = open.operating_point.filter(|_| cloth.dyed.is_some());
        let least = least
            .map_or(0.0, |operating_point| self.estimates.least_chance(job, candidate, operating_point.dye));
        let under_cure = open
            .operating_point
            .map_or(0.0, |point| self.heat_estimate.least_chance(candidate.dried, &point.heat));
        let holds = (1.0 - least.max(job.rules.lapse)) * (1.0 - open.others) * (1.0 - under_cure);
        let chance = 1.0 - holds;
        let (standing, pace) =
            open.operating_point.map_or((HeatStanding::Robust, fastest(job, candidate)), |point| {
                (point.heat.standing, point.pace)
            });
        let (verdict, _) = verdict_for(job, cloth, candidate, chance, standing);
        (verdict, burden_of(job, cloth, candidate, open.shows.unwrap_or(0.0), chance, pace))
    }

    /// The place of the candidate to assess next: `at`, or, if its cloth bleeds and no similar film was
    /// assessed yet, the thickest film over the same blocker, which tells most about all others.
    fn thickest_first(&self, open: &[Open<'_>], at: usize) -> usize {
        let blocker = |open: &Open<'_>| open.candidate.blocker.map(|blocker| blocker.id.clone());
        let Some((chosen, operating_point)) =
            open.get(at).and_then(|open| open.operating_point.map(|operating_point| (open, operating_point)))
        else {
            return at;
        };
        if self.cloth.dyed.is_none() || self.estimates.knows(&chosen.candidate, operating_point.dye) {
            return at;
        }
        let like = open.iter().enumerate().filter(|(_, open)| blocker(open) == blocker(chosen));
        let thickest = like.max_by(|(_, a), (_, b)| a.candidate.film.total_cmp(&b.candidate.film));
        thickest.map_or(at, |(at, _)| at)
    }
}
