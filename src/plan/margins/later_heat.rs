//! Heat that comes after the cure, such as pressed names or a second side, against what cloth and film withstand.
//!
//! A platen lies on the print, so cloth and film get as hot as it within seconds: from memory. They are held to
//! the limits that the dryer keeps. Where one of them is broken the order is refused, because no white changes
//! it; what heat does to the dye is a matter of [`bleed`](crate::plan::bleed).

use crate::cure::{scorch_index, scorch_temperature};
use crate::plan::order::{Cloth, HeatEvent, Job};
use crate::plan::report::{Code, Margin, Reason, Side, Topic, Unit, margin, word};
use crate::quantity::Band;
use crate::quantity::units::{celsius, kelvin};
use crate::textile::Fibre;

/// By how much a platen's temperature differs from its gauge, K. 3 to 8: common practice, no source.
const PLATEN: f64 = 5.0;
/// Room to a limit under which the reason is told though the limit is kept, K. Chosen.
const NEAR: f64 = 10.0;

/// What later heat does to cloth or film, the gravest first.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Harm {
    Melts(Fibre),
    Softens(Fibre),
    SpoilsCoating,
    Yellows,
    Shrinks,
    SpoilsFilm,
}

impl Harm {
    /// Its word in a reason, and the fibre that it happens to.
    fn words(self) -> (&'static str, Option<Fibre>) {
        match self {
            Self::Melts(fibre) => ("melts", Some(fibre)),
            Self::Softens(fibre) => ("softens", Some(fibre)),
            Self::SpoilsCoating => ("coating", None),
            Self::Yellows => ("yellows", None),
            Self::Shrinks => ("shrinks", None),
            Self::SpoilsFilm => ("film", None),
        }
    }
}

/// The heat event that comes nearest to a limit, or breaks the gravest one.
#[derive(Clone, Copy, Debug)]
pub struct LaterHeat<'j> {
    event: &'j HeatEvent,
    harm: Harm,
    /// Temperature from which that harm is done, K.
    limit: f64,
}

impl<'j> LaterHeat<'j> {
    /// Of an order on one of its cloths; `None` if nothing hot comes after the cure.
    #[must_use]
    pub fn of(job: &'j Job, cloth: &Cloth) -> Option<Self> {
        let events = job.order.print.heat_after.iter().filter(|event| event.seconds > 0.0);
        let each = events.flat_map(|event| {
            limits(job, cloth, event).into_iter().map(move |(harm, limit)| Self { event, harm, limit })
        });
        // Broken limits are listed gravest first, so among them the first one stays.
        each.reduce(|had, next| match (had.holds(), next.holds()) {
            (true, false) => next,
            (false, true) => had,
            (false, false) if gravity(next.harm) < gravity(had.harm) => next,
            (true, true) if next.room() < had.room() => next,
            _ => had,
        })
    }

    /// True if the limit is kept at the temperature that the order gives.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.room() >= 0.0
    }

    /// True if the limit is broken, or so near that the press's own error may break it.
    #[must_use]
    pub fn is_near(&self) -> bool {
        self.room() < PLATEN + NEAR
    }

    /// Distance to the limit, K; negative beyond it.
    fn room(&self) -> f64 {
        self.limit - kelvin(self.event.temp_c)
    }

    /// The margin of this heat, °C.
    #[must_use]
    pub fn margin(&self) -> Margin {
        let likely = self.event.temp_c;
        let value = Band { low: likely - PLATEN, likely, high: likely + PLATEN };
        margin(Topic::LaterHeat, value, celsius(self.limit), Side::AtMost, Unit::Celsius)
    }

    /// Which heat and which limit.
    #[must_use]
    pub fn reason(&self) -> Reason {
        let (harm, fibre) = self.harm.words();
        Reason::new(Code::LaterHeat)
            .word("what", &self.event.what)
            .number("temp", self.event.temp_c)
            .number("seconds", self.event.seconds)
            .number("limit", celsius(self.limit))
            .word("harm", harm)
            .word("fibre", fibre.map(word).unwrap_or_default())
            .flag("holds", self.holds())
    }
}

/// 0 for the gravest harm.
fn gravity(harm: Harm) -> u8 {
    match harm {
        Harm::Melts(_) => 0,
        Harm::Softens(_) => 1,
        Harm::SpoilsCoating => 2,
        Harm::Yellows => 3,
        Harm::Shrinks => 4,
        Harm::SpoilsFilm => 5,
    }
}

/// What an event may do to cloth and film, each with the temperature from which it does, K.
fn limits(job: &Job, cloth: &Cloth, event: &HeatEvent) -> Vec<(Harm, f64)> {
    let rules = &job.rules;
    let shrinks = cloth.shrinks_above.map(|limit| limit + rules.shrink_allowed / rules.shrink_slope);
    let limits = [
        cloth.melts_from().map(|(fibre, limit)| (Harm::Melts(fibre), limit)),
        cloth.softens.map(|(fibre, limit)| (Harm::Softens(fibre), limit)),
        cloth.coating.map(|limit| (Harm::SpoilsCoating, limit)),
        cloth
            .scorches
            .then(|| (Harm::Yellows, scorch_temperature(yellowing_left(job, event), event.seconds))),
        shrinks.map(|limit| (Harm::Shrinks, limit)),
        Some((Harm::SpoilsFilm, rules.film_heat)),
    ];
    limits.into_iter().flatten().collect()
}

/// Scorch index that the other events leave to this one, at least its even share.
fn yellowing_left(job: &Job, event: &HeatEvent) -> f64 {
    let events = &job.order.print.heat_after;
    let own = scorch_index(kelvin(event.temp_c), event.seconds);
    let left = job.rules.scorch - (job.yellows_later() - own);
    left.max(job.rules.scorch / events.len().max(1) as f64)
}
