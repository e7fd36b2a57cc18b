//! How much dye a film may take, guessed from films that were judged before on the same cloth.
//!
//! Over one blocker the amount at which a white turns goes nearly with what the film can hold:
//!
//! ```text
//! critical ~ film (binds + free)
//! ```
//!
//! and the dye that arrives is known from the windows. So a judged film tells what another may come to; less, the less
//! alike they are, and as much is taken off in its favour. A guess only decides whether a way is worth judging: what is said
//! of a way is never guessed. Free dye and doubt: chosen, held by `tests/answers/screening.rs`.

use crate::plan::bleed::{ADDITIVE, chance, with_evidence};
use crate::plan::order::{Cloth, Job, Rules};
use crate::plan::recipe::Candidate;
use crate::plan::verdict::Assessment;

/// Dye that a film holds beside what it binds by the time it is seen, kg/m³.
const FREE: f64 = 0.3;
/// How far a guess may be off, as a logarithm of the amount, for films that are all alike and for each e-fold of their
/// difference.
const DOUBT: [f64; 2] = [0.15, 0.4];
/// Films that differ by more e-folds than this tell nothing of one another.
const UNLIKE: f64 = 2.0;

/// What a film holds, and what heat brings to it.
#[derive(Clone, Copy, Debug)]
struct FilmLoad {
    film: f64,
    holds: f64,
    /// Dye by the window at its set point, kg/m²; what matters is its ratio to another's.
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

    /// Logarithms of its ratios to another.
    fn to(&self, other: &Self) -> [f64; 3] {
        [self.film / other.film, self.holds / other.holds, self.dye / other.dye].map(f64::ln)
    }
}

/// A judged film: what arrived in it and what it could have taken, kg/m².
#[derive(Clone, Debug)]
struct AssessedFilm {
    film: FilmLoad,
    blocker: Option<String>,
    arrives: f64,
    critical: f64,
}

/// The films that were judged on one cloth.
#[derive(Clone, Debug, Default)]
pub struct DyeEstimates {
    seen: Vec<AssessedFilm>,
}

impl DyeEstimates {
    /// How many films it knows.
    pub fn len(&self) -> usize {
        self.seen.len()
    }

    /// Remembers a judged way, with the dye (kg/m²) that the window gives at its set point.
    pub fn learn(&mut self, assessment: &Assessment<'_>, dye: f64) {
        if let Some(bled) = &assessment.bled {
            self.seen.push(AssessedFilm {
                film: FilmLoad::of(&assessment.candidate, dye),
                blocker: assessment.candidate.blocker.map(|blocker| blocker.id.clone()),
                arrives: bled.arrives.likely,
                critical: bled.critical,
            });
        }
    }

    /// True if a film over the same blocker was judged that tells something of this one.
    pub fn knows(&self, candidate: &Candidate<'_>, dye: f64) -> bool {
        self.nearest(candidate, dye).is_some()
    }

    fn nearest(&self, candidate: &Candidate<'_>, dye: f64) -> Option<(&AssessedFilm, f64)> {
        let (blocker, own) =
            (candidate.blocker.map(|blocker| blocker.id.as_str()), FilmLoad::of(candidate, dye));
        let far = |seen: &AssessedFilm| own.to(&seen.film).into_iter().map(f64::abs).sum::<f64>();
        let like = self.seen.iter().filter(|seen| seen.blocker.as_deref() == blocker);
        let like = like.map(|seen| (seen, far(seen))).filter(|(_, far)| *far <= UNLIKE);
        like.min_by(|(_, a), (_, b)| a.total_cmp(b))
    }

    /// Least chance of bleeding that can be hoped for at a set point where the window gives so much dye (kg/m²); none where
    /// nothing like it was judged.
    pub fn least_chance(&self, job: &Job, cloth: &Cloth, candidate: &Candidate<'_>, dye: f64) -> f64 {
        let Some((seen, far)) = self.nearest(candidate, dye) else { return 0.0 };
        let [film, holds, dye] = FilmLoad::of(candidate, dye).to(&seen.film);
        let doubt = DOUBT[0] + DOUBT[1] * far;
        let critical = seen.critical * (film + holds + doubt).exp();
        let rules = Rules { lot_spread: cloth.belief.spread, ..job.rules };
        with_evidence(job, cloth, candidate, &rules, chance(seen.arrives * dye.exp(), critical, &rules))
    }
}
