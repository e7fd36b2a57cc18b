//! What is given up for what: the recipes that were assessed, as points on two scales.
//!
//! One scale is what the order pays with (money; stiffness where it must be soft, pace where it must be
//! fast), the other what it gets for it (fewer late faults, or cover). A recipe that no other beats on both
//! is on the front; along it more of one costs more of the other. A recipe off the front is chosen only for
//! what neither scale shows, and the report says so.
//!
//! Only candidates that may still win are assessed ([`search`](crate::plan::search)): the front is theirs,
//! and the number that was compared is reported beside it.

use super::reason::{Code, Reason};
use super::recipe::Recipe;
use super::verdict::Verdict;
use super::word::word;
use serde::{Deserialize, Serialize};

/// A scale on which two recipes are compared.
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

    /// The step to which a value is rounded, and by which two are compared: a cent, a print an hour, a tenth
    /// of a usual hand, a tenth of ΔE00, a twentieth of the nap or the finish, one case in a thousand: over a
    /// large order even that is money. Chosen.
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

/// One recipe that was assessed, with its value on every scale.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RecipeScores {
    /// The recipe, by ids.
    pub recipe: Recipe,
    /// Id of the white or mixture.
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
    /// No recipe beats it on both scales.
    pub front: bool,
    /// Its place among the picks, where it is one.
    pub pick: Option<usize>,
}

impl RecipeScores {
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

    /// The same, rounded to the step of its scale.
    #[must_use]
    pub fn written(&self, scale: Scale) -> f64 {
        (self.value(scale) / scale.step()).round() * scale.step()
    }

    /// Value in steps of its scale, so that fewer are better. Values that round alike compare as equal.
    #[must_use]
    pub fn steps(&self, scale: Scale) -> f64 {
        let steps = (self.value(scale) / scale.step()).round();
        if scale == Scale::Pace { -steps } else { steps }
    }

    /// True if this recipe is better on a scale.
    #[must_use]
    pub fn beats(&self, other: &Self, scale: Scale) -> bool {
        self.steps(scale) < other.steps(scale)
    }

    /// True if this recipe is better on one of two scales and as good on the other.
    #[must_use]
    pub fn dominates(&self, other: &Self, scales: [Scale; 2]) -> bool {
        scales.iter().any(|scale| self.beats(other, *scale))
            && !scales.iter().any(|scale| other.beats(self, *scale))
    }
}

/// The recipes that were assessed, and between which two scales they lie.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TradeOff {
    /// Candidates that were compared.
    pub compared: usize,
    /// Those of them that might still have won and were assessed.
    pub judged: usize,
    /// What the order pays with.
    pub pays: Scale,
    /// What it gets for it.
    pub gets: Scale,
    /// Each assessed recipe, the best on the first scale first.
    pub ways: Vec<RecipeScores>,
    /// What the best pick gives up and what another would give.
    pub say: Vec<Reason>,
}

impl TradeOff {
    /// What the pick of this place gives up, and what another recipe would give for what.
    #[must_use]
    pub fn said_of(&self, pick: usize) -> Vec<Reason> {
        let count = Reason::new(Code::WaysCompared)
            .number("compared", self.compared as f64)
            .number("judged", self.judged as f64);
        let mut said = vec![count];
        let Some(mine) = self.ways.iter().find(|scored| scored.pick == Some(pick)) else { return said };
        let holds = |scored: &&RecipeScores| scored.verdict <= mine.verdict;
        // The recipes are in the order of what is paid.
        let least = self.ways.iter().find(holds).filter(|scored| scored.beats(mine, self.pays));
        said.push(match least {
            Some(least) => self.beside(Code::PaidFor, mine, least),
            None => Reason::new(Code::NothingPaid).word("white", &mine.name).word("pays", self.pays.word()),
        });
        let over = |scored: &&RecipeScores| scored.front && scored.dominates(mine, [self.pays, self.gets]);
        if let Some(over) = self.ways.iter().rev().find(over) {
            said.push(self.beside(Code::OffFront, over, mine));
        }
        let more = |scored: &&RecipeScores| {
            scored.front && scored.beats(mine, self.gets) && mine.beats(scored, self.pays)
        };
        let less = |scored: &&RecipeScores| {
            scored.front && scored.beats(mine, self.pays) && mine.beats(scored, self.gets)
        };
        let less = self.ways.iter().rev().find(less).filter(|_| least.is_none());
        for step in less.into_iter().chain(self.ways.iter().find(more)) {
            said.push(self.beside(Code::ForMore, step, mine));
        }
        said
    }

    /// Sets one recipe (`white`) beside another (`other`): how each is printed, and both as written on every
    /// scale on which they differ.
    fn beside(&self, code: Code, one: &RecipeScores, other: &RecipeScores) -> Reason {
        let mut reason = Reason::new(code).word("pays", self.pays.word()).word("gets", self.gets.word());
        for (of, scored) in [("", one), ("other-", other)] {
            reason = reason
                .word(&format!("{of}white"), &scored.name)
                .word(&format!("{of}verdict"), word(scored.verdict))
                .word(&format!("{of}blocker"), scored.blocker.clone().unwrap_or_default())
                .number(&format!("{of}strokes"), f64::from(scored.strokes))
                .number(&format!("{of}threads"), scored.threads_per_cm);
            if scored.dried {
                reason = reason.flag(&format!("{of}dried"), true);
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
