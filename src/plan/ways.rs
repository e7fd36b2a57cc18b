//! Every way to print one white: over the cloth or a blocker, through each mesh, in one stroke or two, under a smoothing
//! screen where nap stands or the print shall shine, with adhesion additive where the print may come off, with stretch
//! white stirred in.
//!
//! The one limit that is drawn here is the order's cover: a way that does not cover is left out where another does.

use super::candidate::{ANCHOR_FILM, Candidate, Coat, MOST_STROKES};
use super::late::comes_off;
use super::{Base, Cloth, Job, Sheen};
use crate::ink::White;

/// Youngest wearer whose print may carry adhesion additive without the garment maker's word, years: it is not for infants'
/// items. Common practice, no source.
const ADDITIVE_FROM: f64 = 3.0;

/// The ways of one white of the job over the cloth and over each of `bases`. Mixtures come after what they are made from.
#[must_use]
pub(super) fn ways<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    bases: &'a [Base],
) -> Vec<Candidate<'a>> {
    let mut ways = Vec::new();
    let bases = bases.iter().map(Some).filter(|_| cloth.dyed.is_some());
    for base in std::iter::once(None).chain(bases) {
        let plain = covering(job, cloth, white, base, false);
        for mix in job.mixes.iter().filter(|mix| mix.of == white.id) {
            let coat = Coat::new(cloth, &mix.white, base, false);
            ways.extend(coat.iter().flat_map(|coat| plain.iter().map(|way| way.of(*coat))));
        }
        if may_have_additive(job) && comes_off(cloth, white, false) > comes_off(cloth, white, true) {
            ways.extend(covering(job, cloth, white, base, true));
        }
        ways.splice(0..0, plain);
    }
    ways
}

/// The lightest way of a white over the bare cloth, without a smoothing screen where that covers: where its window is
/// looked at before any other.
#[must_use]
pub(super) fn first_way<'a>(job: &'a Job, cloth: &Cloth, white: &'a White) -> Option<Candidate<'a>> {
    let plain = covering(job, cloth, white, None, false);
    plain.into_iter().min_by(|a, b| a.smoothing.cmp(&b.smoothing).then(a.film.total_cmp(&b.film)))
}

/// The way of a white whose film is nearest to the one that the trade's experience is stated at.
#[must_use]
pub(super) fn anchor_way<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    base: Option<&'a Base>,
) -> Option<Candidate<'a>> {
    let coat = Coat::new(cloth, white, base, false)?;
    let screens = job.meshes.iter().flat_map(|mesh| (1..=MOST_STROKES).map(move |strokes| (mesh, strokes)));
    let ways = screens.map(|(mesh, strokes)| Candidate::new(job, cloth, coat, mesh, strokes, false));
    let off = |way: &Candidate<'_>| (way.film - ANCHOR_FILM).abs();
    ways.min_by(|a, b| off(a).total_cmp(&off(b)))
}

fn may_have_additive(job: &Job) -> bool {
    job.order.use_.wearer_age_years.is_none_or(|age| age > ADDITIVE_FROM)
}

/// The ways of one coat that cover; where none does, the one through which the garment shows least.
fn covering<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    base: Option<&'a Base>,
    additive: bool,
) -> Vec<Candidate<'a>> {
    let Some(coat) = Coat::new(cloth, white, base, additive) else { return Vec::new() };
    let shiny = job.order.print.finish == Sheen::Gloss;
    let mut all: Vec<Candidate<'a>> = Vec::new();
    for mesh in &job.meshes {
        for strokes in 1..=MOST_STROKES {
            let way = Candidate::new(job, cloth, coat, mesh, strokes, false);
            all.push(way);
            all.extend(way.smoothed().filter(|_| shiny || way.nap_stands(job, cloth)));
        }
    }
    let covers: Vec<Candidate<'a>> = all.iter().filter(|way| way.covers(job, cloth)).copied().collect();
    if !covers.is_empty() {
        return covers;
    }
    let shows = |way: &Candidate<'_>| way.shows(job, cloth, 1.0);
    all.into_iter().min_by(|a, b| shows(a).total_cmp(&shows(b))).into_iter().collect()
}
