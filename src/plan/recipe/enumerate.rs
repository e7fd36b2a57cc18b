//! Every way to print one white: over the cloth or a blocker, through each mesh, in one stroke or two, with a
//! smoothing screen where nap stands through or gloss is asked for, with adhesion additive where the print
//! may come off, with stretch white stirred in.
//!
//! The only limit applied here is the order's cover: a candidate that does not cover is left out if another
//! does.

use super::adhesion::comes_off;
use super::candidate::{ANCHOR_FILM, Candidate, InkLayer, MOST_STROKES};
use crate::ink::White;
use crate::plan::order::{BlockerBase, Cloth, Job, Sheen};

/// Age above which a wearer's print may carry adhesion additive without the garment maker's word, years: it
/// is not for infants' items. Common practice, no source.
const ADDITIVE_FROM: f64 = 3.0;

/// The candidates of one white of the job, over the cloth and, if it has dye, over each of `blockers`. A
/// mixture comes after the white it is made from.
#[must_use]
pub fn candidates<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    blockers: &'a [BlockerBase],
) -> Vec<Candidate<'a>> {
    let mut candidates = Vec::new();
    let blockers = blockers.iter().map(Some).filter(|_| cloth.dyed.is_some());
    for blocker in std::iter::once(None).chain(blockers) {
        let plain = covering(job, cloth, white, blocker, false);
        for mix in job.mixes.iter().filter(|mix| mix.of == white.id) {
            let layer = InkLayer::new(cloth, &mix.white, blocker, false);
            candidates
                .extend(layer.iter().flat_map(|layer| plain.iter().map(|candidate| candidate.of(*layer))));
        }
        if may_have_additive(job) && comes_off(cloth, white, false) > comes_off(cloth, white, true) {
            candidates.extend(covering(job, cloth, white, blocker, true));
        }
        candidates.splice(0..0, plain);
    }
    candidates
}

/// The candidate of a white with the thinnest film on the bare cloth, without a smoothing screen if that
/// covers: the first one whose window is looked at.
#[must_use]
pub fn first_candidate<'a>(job: &'a Job, cloth: &Cloth, white: &'a White) -> Option<Candidate<'a>> {
    let plain = covering(job, cloth, white, None, false);
    plain.into_iter().min_by(|a, b| a.smoothing.cmp(&b.smoothing).then(a.film.total_cmp(&b.film)))
}

/// The candidate of a white whose film is nearest to [`ANCHOR_FILM`].
#[must_use]
pub fn anchor_candidate<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    blocker: Option<&'a BlockerBase>,
) -> Option<Candidate<'a>> {
    let layer = InkLayer::new(cloth, white, blocker, false)?;
    let screens = job.meshes.iter().flat_map(|mesh| (1..=MOST_STROKES).map(move |strokes| (mesh, strokes)));
    let candidates = screens.map(|(mesh, strokes)| Candidate::new(job, cloth, layer, mesh, strokes, false));
    let off = |candidate: &Candidate<'_>| (candidate.film - ANCHOR_FILM).abs();
    candidates.min_by(|a, b| off(a).total_cmp(&off(b)))
}

fn may_have_additive(job: &Job) -> bool {
    job.order.use_.wearer_age_years.is_none_or(|age| age > ADDITIVE_FROM)
}

/// The candidates of one layer that cover; if none does, the one through which the garment shows least.
fn covering<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    blocker: Option<&'a BlockerBase>,
    additive: bool,
) -> Vec<Candidate<'a>> {
    let Some(layer) = InkLayer::new(cloth, white, blocker, additive) else { return Vec::new() };
    let shiny = job.order.print.finish == Sheen::Gloss;
    let mut all: Vec<Candidate<'a>> = Vec::new();
    for mesh in &job.meshes {
        for strokes in 1..=MOST_STROKES {
            let candidate = Candidate::new(job, cloth, layer, mesh, strokes, false);
            all.push(candidate);
            all.extend(candidate.smoothed().filter(|_| shiny || candidate.nap_stands(job, cloth)));
        }
    }
    let covers: Vec<Candidate<'a>> =
        all.iter().filter(|candidate| candidate.covers(job, cloth)).copied().collect();
    if !covers.is_empty() {
        return covers;
    }
    let shows = |candidate: &Candidate<'_>| candidate.shows(job, cloth, 1.0);
    all.into_iter().min_by(|a, b| shows(a).total_cmp(&shows(b))).into_iter().collect()
}
