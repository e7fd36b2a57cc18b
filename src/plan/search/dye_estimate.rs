//! How much dye a film may take, estimated from films that were assessed on the same cloth.
//!
//! Over one blocker, the amount of dye at which a white turns is nearly proportional to what the film can
//! hold:
//!
//! ```text
//! critical ~ film (binds + free)
//! ```
//!
//! and the dye that arrives is known from the windows. So an assessed film tells what another may reach; the
//! less alike the two are, the more the estimate favours the other. An estimate only decides whether a
//! candidate is worth assessing: no reported number is estimated. Free dye and doubt: chosen, checked by
//! `tests/answers/screening.rs`.
//!
//! **Decision:** the estimate uses every film that was assessed on the same cloth, whichever white it was.
//! **Because:** the amount goes with the film times what it holds, for every white.
//! **Measured:** it halves the number of candidates that are assessed (2026-11-28).
//! **Reconsider when:** whites bind dye by unlike laws, or `tests/answers/screening.rs` finds a candidate
//! missed.

use crate::plan::bleed::{ADDITIVE, LotDye};
use crate::plan::order::Job;
use crate::plan::recipe::Candidate;
use crate::plan::verdict::Assessment;

/// Dye that a film holds, beside what it binds, when the tint becomes visible, kg/m³.
const FREE: f64 = 0.3;
/// How far an estimate may be off, as a logarithm of the amount: for films that are all alike, and for each
/// e-fold of their difference.
const DOUBT: [f64; 2] = [0.25, 0.5];
/// Films that differ by more e-folds than this say nothing about one another.
const UNLIKE: f64 = 2.0;

/// What a film can hold, and the dye that heat brings to it.
#[derive(Clone, Copy, Debug)]
struct FilmLoad {
    film: f64,
    holds: f64,
    /// Dye from the window at its set point, kg/m²; only its ratio to another's is used.
    dye: f64,
}

impl FilmLoad {
    fn of(candidate: &Candidate<'_>, dye: f64) -> Self {
        let diluted = if candidate.additive { 1.0 - ADDITIVE } else { 1.0 };
        Self {
            film: candidate.film,
            holds: candidate.white.density * candidate.white.dye_capacity * diluted + FREE,
            dye: dye.max(1e-12),
        }
    }

    /// Logarithms of its ratios to another: film, what it holds, dye.
    fn to(&self, other: &Self) -> [f64; 3] {
        [self.film / other.film, self.holds / other.holds, self.dye / other.dye].map(f64::ln)
    }
}

/// An assessed film: the dye that arrived in it and the dye at which it turns, kg/m².
#[derive(Clone, Debug)]
struct AssessedFilm {
    film: FilmLoad,
    blocker: Option<String>,
    arrives: LotDye,
    critical: f64,
}

/// The films that were assessed on one cloth.
#[derive(Clone, Debug, Default)]
pub struct DyeEstimates {
    seen: Vec<AssessedFilm>,
}

impl DyeEstimates {
    /// Records an assessed candidate, with the dye (kg/m²) that the window gives at its set point.
    pub fn learn(&mut self, assessment: &Assessment<'_>, dye: f64) {
        if let Some(bled) = &assessment.bled {
            self.seen.push(AssessedFilm {
                film: FilmLoad::of(&assessment.candidate, dye),
                blocker: assessment.candidate.blocker.map(|blocker| blocker.id.clone()),
                arrives: bled.dye[1],
                critical: bled.critical,
            });
        }
    }

    /// True if a similar film over the same blocker was assessed.
    pub fn knows(&self, candidate: &Candidate<'_>, dye: f64) -> bool {
        self.nearest(candidate, dye).is_some()
    }

    /// The most similar film over the same blocker that was assessed, and its difference in e-folds.
    fn nearest(&self, candidate: &Candidate<'_>, dye: f64) -> Option<(&AssessedFilm, f64)> {
        let (blocker, own) =
            (candidate.blocker.map(|blocker| blocker.id.as_str()), FilmLoad::of(candidate, dye));
        let far = |seen: &AssessedFilm| own.to(&seen.film).into_iter().map(f64::abs).sum::<f64>();
        let like = self.seen.iter().filter(|seen| seen.blocker.as_deref() == blocker);
        let like = like.map(|seen| (seen, far(seen))).filter(|(_, far)| *far <= UNLIKE);
        like.min_by(|(_, a), (_, b)| a.total_cmp(b))
    }

    /// Least chance of bleeding that a candidate may have at a set point where the window gives so much dye
    /// (kg/m²), 0 to 1; 0 if no similar film was assessed.
    pub fn least_chance(&self, job: &Job, candidate: &Candidate<'_>, dye: f64) -> f64 {
        let Some((seen, far)) = self.nearest(candidate, dye) else { return 0.0 };
        let [film, holds, dye] = FilmLoad::of(candidate, dye).to(&seen.film);
        let doubt = DOUBT[0] + DOUBT[1] * far;
        let critical = seen.critical * (film + holds + doubt).exp();
        seen.arrives.heated(dye.exp()).chance(critical, job.rules.lapse)
    }
}
