//! Ranks the causes that fit a defect seen on a print.
//!
//! A cause is a run: the print as planned, with one thing changed. The same simulation and the same
//! margins that planned the print give the chance of the defect in that run. With `prior` the frequency
//! of a cause and `chance` the chance of the defect given the cause,
//!
//! ```text
//! weight = prior · chance,   share = weight / Σ weight
//! ```
//!
//! (Bayes' rule over causes that exclude each other). The run as noted is one hypothesis. Its chance is
//! divided among the known differences (set temperature, belt, film), in proportion to what each alone
//! adds, and what would have happened anyway. The frequencies of the hidden causes are common practice,
//! no source; see [`hidden`].
//!
//! **Decision:** a cause is a run, simulated like the one that was planned; only how often hidden things
//! happen is a prior.
//! **Because:** so a diagnosis and a plan cannot contradict each other, and no table of symptoms has to be
//! kept.
//! **Measured:** no frequency of causes was measured (2026-11-25); `tests/answers/what_went_wrong.rs` holds
//! the ranking.
//! **Reconsider when:** shops record enough causes to replace the priors.

mod cause;
mod chance;

pub use cause::{Cause, CauseKind, DiagnosticTest, hidden};
pub use chance::Defect;

use crate::dryer::HistoryError;
use crate::plan::{AsRun, DialSetting, Job, Pick, as_run};
use cause::with_film;
use chance::chance;

/// What is noted of a run that went wrong; anything else was as planned.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NotedRun {
    /// Set temperature, °C.
    pub set_c: Option<f64>,
    /// Belt, m/min.
    pub belt_m_per_min: Option<f64>,
    /// Film of white, µm.
    pub film_um: Option<f64>,
}

/// Accepted values of a run that went wrong: what a dryer can be set to, what a belt can run at, and
/// films from a misprint to three strokes too many. Assumed.
pub mod bounds {
    use crate::quantity::Bound;

    /// Set temperature.
    pub const SET: Bound = Bound { field: "ran_air", min: 60.0, max: 260.0, unit: "°C" };
    /// Belt speed.
    pub const BELT: Bound = Bound { field: "ran_belt", min: 0.2, max: 30.0, unit: "m/min" };
    /// Film of white.
    pub const FILM: Bound = Bound { field: "ran_film", min: 5.0, max: 600.0, unit: "µm" };
}

/// The causes that fit what is seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagnosis {
    /// What is seen.
    pub seen: Defect,
    /// Its chance in the run as planned, 0 to 1.
    pub planned: f64,
    /// Its chance in the run as noted, 0 to 1.
    pub ran: f64,
    /// Causes, the likeliest first; their shares sum to 1.
    pub causes: Vec<Cause>,
}

/// Ranks the causes of a defect on a print of this pick; `None` if the pick has no setting or does not
/// belong to the job.
///
/// # Errors
/// [`HistoryError`] if the heat of a run cannot be computed.
pub fn diagnose(
    job: &Job,
    pick: &Pick,
    run: &NotedRun,
    seen: Defect,
) -> Result<Option<Diagnosis>, HistoryError> {
    let Some(setting) = pick.setting else { return Ok(None) };
    let planned_at = setting.dialled();
    let Some(planned) = as_run(job, pick, planned_at)? else { return Ok(None) };
    let at = DialSetting {
        set_c: run.set_c.unwrap_or(planned_at.set_c),
        belt_m_per_min: run.belt_m_per_min.unwrap_or(planned_at.belt_m_per_min),
    };
    let noted = with_film(job, run.film_um.map(|film| film / planned.film_um));
    let Some(ran) = as_run(&noted, pick, at)? else { return Ok(None) };
    let of = |run: &AsRun| chance(seen, run);
    let (chance_planned, chance_ran) = (of(&planned), of(&ran));

    let mut causes = Vec::new();
    // The run as noted: the known differences, and what would have happened anyway.
    let mut alone = Vec::new();
    let mut add = |what: CauseKind, job: &Job, at: DialSetting| -> Result<(), HistoryError> {
        if let Some(run) = as_run(job, pick, at)? {
            alone.push((what, of(&run), (of(&run) - chance_planned).max(0.0)));
        }
        Ok(())
    };
    if (at.set_c - planned_at.set_c).abs() >= 0.5 {
        let hotter = DialSetting { set_c: at.set_c, ..planned_at };
        add(CauseKind::Heat { planned: planned_at.set_c, ran: at.set_c }, job, hotter)?;
    }
    if (at.belt_m_per_min / planned_at.belt_m_per_min - 1.0).abs() >= 0.01 {
        let (planned, ran) = (planned_at.belt_m_per_min, at.belt_m_per_min);
        add(CauseKind::Belt { planned, ran }, job, DialSetting { belt_m_per_min: ran, ..planned_at })?;
    }
    if let Some(film) = run.film_um.filter(|film| (film / planned.film_um - 1.0).abs() >= 0.02) {
        add(CauseKind::Film { planned: planned.film_um, ran: film }, &noted, planned_at)?;
    }
    let own = chance_planned.min(chance_ran);
    let extra = chance_ran - own;
    let sum: f64 = alone.iter().map(|(.., adds)| adds).sum();
    for (what, chance, adds) in alone {
        let weight = if sum > 0.0 { extra * adds / sum } else { 0.0 };
        causes.push(Cause { what, share: weight, chance });
    }
    // If the differences matter only together, the first one is named for all of them.
    if sum <= 0.0
        && extra > 0.0
        && let Some(first) = causes.first_mut()
    {
        first.share = extra;
    }
    causes.push(Cause { what: CauseKind::Itself, share: own, chance: chance_ran });

    for &(what, prior) in hidden() {
        if let Some((changed, way, at)) = what.added_to(&noted, pick, at)
            && let Some(run) = as_run(&changed, &way, at)?
        {
            let chance = of(&run);
            // A hidden cause is supported only by the chance that it adds to the run as noted.
            causes.push(Cause { what, share: prior * (chance - chance_ran).max(0.0), chance });
        }
    }
    causes.push(Cause { what: CauseKind::Unseen, share: job.rules.lapse, chance: 1.0 });
    let total: f64 = causes.iter().map(|cause| cause.share).sum();
    let mut ranked: Vec<Cause> = Vec::with_capacity(causes.len());
    for cause in causes {
        let cause = Cause { share: cause.share / total, ..cause };
        // A cause below one in two hundred is of no use to the reader.
        if cause.share >= 0.005 || cause.what == CauseKind::Unseen {
            let place = ranked.iter().position(|other| other.share < cause.share).unwrap_or(ranked.len());
            ranked.insert(place, cause);
        }
    }
    let kept: f64 = ranked.iter().map(|cause| cause.share).sum();
    for cause in &mut ranked {
        cause.share /= kept;
    }
    Ok(Some(Diagnosis { seen, planned: chance_planned, ran: chance_ran, causes: ranked }))
}
