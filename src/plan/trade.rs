//! What is given up for what: the ways that were worked through, as points on two scales.
//!
//! One scale is what the order pays with (money; stiffness where it must be soft, pace where it must be fast), the other
//! what it gets for it (fewer late faults, or cover). A way that no other beats on both is on the front; along it more of
//! one costs more of the other. Off the front a way is chosen only for what neither scale shows, and that is told.
//!
//! Only ways that may still win are worked through ([`search`](super::search)): the front is theirs, and how many were
//! compared is said beside it.

use super::cost::{cost_per_print, rate_per_hour};
use super::explain::word;
use super::gloss::finish_missed;
use super::outlook::Outlook;
use super::{Cloth, Code, Job, Priority, Reason, Verdict, rank};
use serde::{Deserialize, Serialize};

/// A scale on which two ways are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Scale {
    /// Cost of a print.
    Cost,
    /// Prints per hour.
    Pace,
    /// Thickness times stiffness.
    Hand,
    /// How much of the cloth shows.
    Cover,
    /// Share of the nap that is not laid down.
    Nap,
    /// By how much the finish asked for is missed.
    Finish,
    /// Chance of a late fault.
    Late,
}

impl Scale {
    /// Every scale, the most telling first.
    pub const ALL: [Self; 7] =
        [Self::Late, Self::Cost, Self::Hand, Self::Cover, Self::Nap, Self::Finish, Self::Pace];

    /// Its word in the values of a reason.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Cost => "cost",
            Self::Pace => "pace",
            Self::Hand => "hand",
            Self::Cover => "cover",
            Self::Nap => "nap",
            Self::Finish => "finish",
            Self::Late => "late",
        }
    }

    /// The step to which a value is written, and by which two are compared: a cent, a print an hour, a tenth of a usual
    /// hand, a tenth of ΔE00, a twentieth of the nap or the finish, one case in a thousand: over a large order even that is
    /// money. Chosen.
    fn step(self) -> f64 {
        match self {
            Self::Pace => 1.0,
            Self::Hand | Self::Cover => 0.1,
            Self::Nap | Self::Finish => 0.05,
            Self::Cost => 0.01,
            Self::Late => 0.001,
        }
    }
}

/// One way that was worked through.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tried {
    /// Id of the white.
    pub white: String,
    /// Its name.
    pub name: String,
    /// Name of the blocker under it.
    pub blocker: Option<String>,
    /// Strokes of white.
    pub strokes: u32,
    /// Threads per cm of their mesh.
    pub threads_per_cm: f64,
    /// Under a smoothing screen.
    pub smoothing: bool,
    /// With adhesion additive.
    pub additive: bool,
    /// On cloth that is dried first.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub dried: bool,
    /// The verdict on it.
    pub verdict: Verdict,
    /// Chance of a late fault, 0 to 1.
    pub late: f64,
    /// Cost of one print, in the shop's money.
    pub cost: f64,
    /// Prints per hour.
    pub pace: f64,
    /// Thickness times stiffness; 1 is a usual print.
    pub hand: f64,
    /// How much of the cloth shows, ΔE00.
    pub cover: f64,
    /// Share of the nap that stands, 0 to 1.
    pub nap: f64,
    /// By what share of its limit the finish asked for is missed, 0 to 1.
    #[serde(default)]
    pub finish: f64,
    /// No way beats it on both scales.
    pub front: bool,
    /// Its place among the picks, where it is one.
    pub pick: Option<usize>,
}

impl Tried {
    pub(super) fn of(job: &Job, cloth: &Cloth, outlook: &Outlook<'_>) -> Self {
        let way = &outlook.way;
        let (needed, held) = way.matting(job, cloth);
        Self {
            white: way.white.id.clone(),
            name: way.white.name.clone(),
            blocker: way.base.map(|base| base.name.clone()),
            strokes: way.strokes,
            threads_per_cm: way.mesh.threads_per_m / 100.0,
            smoothing: way.smoothing,
            additive: way.additive,
            dried: way.dried,
            verdict: outlook.verdict,
            late: outlook.fail_later.likely,
            cost: cost_per_print(job, outlook),
            pace: rate_per_hour(job, outlook),
            hand: way.total_film() / 100e-6 * way.white.stiffness,
            cover: outlook.look.garment_shows,
            nap: (1.0 - held / needed.max(1e-9)).max(0.0),
            finish: finish_missed(job, cloth, way),
            front: false,
            pick: None,
        }
    }

    /// True if the other is printed in the same way.
    fn is(&self, other: &Self) -> bool {
        self.white == other.white
            && self.blocker == other.blocker
            && (self.strokes, self.smoothing, self.additive, self.dried)
                == (other.strokes, other.smoothing, other.additive, other.dried)
            && (self.threads_per_cm - other.threads_per_cm).abs() < 1e-9
    }

    /// Its value on a scale.
    #[must_use]
    pub fn value(&self, scale: Scale) -> f64 {
        match scale {
            Scale::Cost => self.cost,
            Scale::Pace => self.pace,
            Scale::Hand => self.hand,
            Scale::Cover => self.cover,
            Scale::Nap => self.nap,
            Scale::Finish => self.finish,
            Scale::Late => self.late,
        }
    }

    /// The same as it is written.
    #[must_use]
    pub fn written(&self, scale: Scale) -> f64 {
        (self.value(scale) / scale.step()).round() * scale.step()
    }

    /// Steps of a scale, so that fewer are better. What is written alike is alike.
    fn steps(&self, scale: Scale) -> f64 {
        let steps = (self.value(scale) / scale.step()).round();
        if scale == Scale::Pace { -steps } else { steps }
    }

    /// True where this way is better on a scale.
    #[must_use]
    pub fn beats(&self, other: &Self, scale: Scale) -> bool {
        self.steps(scale) < other.steps(scale)
    }

    /// True where this way is better on one of two scales and as good on the other.
    #[must_use]
    pub fn dominates(&self, other: &Self, scales: [Scale; 2]) -> bool {
        scales.iter().any(|scale| self.beats(other, *scale))
            && !scales.iter().any(|scale| other.beats(self, *scale))
    }
}

/// The ways that were worked through, and between which two scales they lie.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Trade {
    /// Ways to print that were compared.
    pub compared: usize,
    /// Those of them that might still have won and were worked through.
    pub judged: usize,
    /// What the order pays with.
    pub pays: Scale,
    /// What it gets for it.
    pub gets: Scale,
    /// Each way, the best on the first scale first.
    pub ways: Vec<Tried>,
    /// What the best pick gives up and what another would give.
    pub say: Vec<Reason>,
}

impl Trade {
    /// Sets the ways that were worked through beside each other; `picks` are some of them, in their order.
    #[must_use]
    pub fn new(
        priority: Priority,
        compared: usize,
        tried: Vec<Tried>,
        picks: impl Iterator<Item = Tried>,
    ) -> Self {
        let judged = tried.len();
        let (pays, gets) = scales(priority, &tried);
        let mut ways = Vec::with_capacity(judged);
        for way in tried {
            rank::insert(&mut ways, way, |a: &Tried, b: &Tried| {
                let on = |scale: Scale| a.steps(scale).total_cmp(&b.steps(scale));
                on(pays).then(on(gets))
            });
        }
        let front: Vec<bool> = ways
            .iter()
            .map(|way| !ways.iter().any(|other: &Tried| other.dominates(way, [pays, gets])))
            .collect();
        for (way, front) in ways.iter_mut().zip(front) {
            way.front = front;
        }
        for (place, pick) in picks.enumerate() {
            if let Some(way) = ways.iter_mut().find(|way| way.is(&pick)) {
                way.pick = Some(place);
            }
        }
        let mut trade = Self { compared, judged, pays, gets, ways, say: Vec::new() };
        trade.say = trade.said_of(0);
        trade
    }

    /// What the pick of this place gives up, and what another way would give for what.
    #[must_use]
    pub fn said_of(&self, pick: usize) -> Vec<Reason> {
        let count = Reason::new(Code::WaysCompared)
            .number("compared", self.compared as f64)
            .number("judged", self.judged as f64);
        let mut said = vec![count];
        let Some(mine) = self.ways.iter().find(|way| way.pick == Some(pick)) else { return said };
        let holds = |way: &&Tried| way.verdict <= mine.verdict;
        // The ways are in the order of what is paid.
        let least = self.ways.iter().find(holds).filter(|way| way.beats(mine, self.pays));
        said.push(match least {
            Some(least) => self.beside(Code::PaidFor, mine, least),
            None => Reason::new(Code::NothingPaid).word("white", &mine.name).word("pays", self.pays.word()),
        });
        let over = |way: &&Tried| way.front && way.dominates(mine, [self.pays, self.gets]);
        if let Some(over) = self.ways.iter().rev().find(over) {
            said.push(self.beside(Code::OffFront, over, mine));
        }
        let more = |way: &&Tried| way.front && way.beats(mine, self.gets) && mine.beats(way, self.pays);
        let less = |way: &&Tried| way.front && way.beats(mine, self.pays) && mine.beats(way, self.gets);
        let less = self.ways.iter().rev().find(less).filter(|_| least.is_none());
        for step in less.into_iter().chain(self.ways.iter().find(more)) {
            said.push(self.beside(Code::ForMore, step, mine));
        }
        said
    }

    /// Sets one way (`white`) beside another (`other`): how each is printed, and both as written on every scale on which
    /// they differ.
    fn beside(&self, code: Code, one: &Tried, other: &Tried) -> Reason {
        let mut reason = Reason::new(code).word("pays", self.pays.word()).word("gets", self.gets.word());
        for (of, way) in [("", one), ("other-", other)] {
            reason = reason
                .word(&format!("{of}white"), &way.name)
                .word(&format!("{of}verdict"), word(way.verdict))
                .word(&format!("{of}blocker"), way.blocker.clone().unwrap_or_default())
                .number(&format!("{of}strokes"), f64::from(way.strokes))
                .number(&format!("{of}threads"), way.threads_per_cm);
            if way.dried {
                reason = reason.number(&format!("{of}dried"), 1.0);
            }
        }
        for scale in Scale::ALL {
            if one.beats(other, scale) || other.beats(one, scale) {
                let name = scale.word();
                reason = reason
                    .number(name, one.written(scale))
                    .number(&format!("other-{name}"), other.written(scale));
            }
        }
        reason
    }
}

/// Chances that lie closer together than this decide nothing. Chosen.
const ALIKE: f64 = 0.01;

/// What an order pays with and what it gets for it. Where one way is as safe as another, what is got is cover.
fn scales(priority: Priority, ways: &[Tried]) -> (Scale, Scale) {
    let (pays, gets) = match priority {
        Priority::Balanced | Priority::StaysWhite | Priority::Durable | Priority::Cheap => {
            (Scale::Cost, Scale::Late)
        }
        Priority::Soft => (Scale::Hand, Scale::Late),
        Priority::Opaque => (Scale::Cost, Scale::Cover),
        Priority::Fast => (Scale::Pace, Scale::Late),
    };
    let late = || ways.iter().map(|way| way.late);
    let alike = late().fold(f64::NEG_INFINITY, f64::max) - late().fold(f64::INFINITY, f64::min) < ALIKE;
    (pays, if gets == Scale::Late && alike { Scale::Cover } else { gets })
}
