//! How the inks of a job fuse.

use super::job::Job;
use crate::ink::{CureKinetics, White};

/// The two fusion kinetics that a window follows, ordinary and low-cure: of `white` itself, else of the first
/// white of that kind on the shelf or to buy. `white`'s own where the job has no white of a kind.
pub fn kinetics(job: &Job, white: &White) -> [CureKinetics; 2] {
    let of = |low: bool| {
        let all = std::iter::once(white).chain(&job.whites).chain(&job.market);
        all.into_iter().find(|white| white.low_cure == low).map_or(white.kinetics, |white| white.kinetics)
    };
    [of(false), of(true)]
}
