//! Go, go with check, trial or refuse.
//!
//! What is seen at the press (cover, hand, scorch) becomes a check on the first piece and never a trial. What
//! shows later makes the verdict, through its chance; under-cure is part of it, because a stretch test on the
//! first piece does not see a dryer that drifts to its cold end by the ninetieth:
//!
//! ```text
//! up to 5 %   go                                     up to 50 %   trial
//! up to 10 %  go with check, on cloth that is known  beyond       refuse
//! ```
//!
//! A cloth that was never printed here takes one step more, and dyed polyester or nylon of whose lot no print was followed is a go
//! with check at best: their lots differ most (common practice, no source). So is cloth of which any print turned.
//! So does one that comes damp: how evenly its water lies is not known, and cloth that is dried first has no such doubt. A dryer
//! whose curve was never measured is a go with check at best. Where drift of the dryer breaks a limit of film or
//! cloth, it is a trial at best; where the run as planned breaks one, it is refused. Then money may take one step towards care, never
//! away: it does where the loss to be expected from running exceeds that of testing first,
//!
//! ```text
//! run:   p (n v + G)          test:  C_t + p (1 - s)(n v + G) + [p s + (1 - p) f] C_alt
//! ```
//!
//! with n pieces worth v each, goodwill G, cost of the trial C_t, its power s, false alarms f and the cost of
//! the fallback C_alt. The thresholds and the money terms are common practice, no source; the worked cases
//! stand in `tests/answers/verdict_rule.rs`.

use crate::plan::margins::HeatStanding;
use crate::plan::order::Rules;
use crate::plan::report::Verdict;

/// What is at stake in an order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stake {
    /// Pieces.
    pub pieces: f64,
    /// Worth of one.
    pub value: f64,
}

impl Stake {
    /// What a failed order costs: the pieces and the customer's patience. 90 and 4 %: common practice, no
    /// source.
    #[must_use]
    pub fn loss(&self) -> f64 {
        let worth = self.pieces * self.value;
        worth + 90.0 + 0.04 * worth
    }

    /// What a trial costs: screen time and a few garments. Common practice, no source.
    #[must_use]
    pub fn trial(&self) -> f64 {
        35.0 + 2.75 * self.value
    }

    /// Cost of falling back on another recipe. 5.5 % of the order: common practice, no source.
    #[must_use]
    pub fn fallback(&self) -> f64 {
        0.055 * self.pieces * self.value
    }

    /// Expected loss from running at once.
    #[must_use]
    pub fn expected_running(&self, chance: f64) -> f64 {
        chance * self.loss()
    }

    /// Expected loss from testing first, with a test of this power and this rate of false alarms.
    #[must_use]
    pub fn expected_testing(&self, chance: f64, power: f64, false_alarm: f64) -> f64 {
        let stopped = chance * power + (1.0 - chance) * false_alarm;
        self.trial() + chance * (1.0 - power) * self.loss() + stopped * self.fallback()
    }
}

/// What is known of the cloth and the setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Cloth of this kind is printed every week, or there are tests of it.
    pub known: bool,
    /// Water was added to the cloth, and it is not dried before.
    pub damp: bool,
    /// The dryer's curve was measured.
    pub measured: bool,
    /// A check at least: dyed polyester or nylon of whose lot no print was followed here, and cloth of which a print turned.
    pub checked: bool,
    /// How the setting stands to the limits of film and cloth.
    pub heat: HeatStanding,
    /// A test of this very lot has already run.
    pub tested: bool,
}

/// The verdict for a chance of a late fault, before the stake is considered.
#[must_use]
pub fn before_money(chance: f64, standing: Standing, rules: &Rules) -> Verdict {
    if chance > rules.refuse || standing.heat == HeatStanding::Broken {
        return Verdict::Refuse;
    }
    let mut verdict = if chance <= rules.go {
        Verdict::Go
    } else if chance <= rules.check && standing.known {
        Verdict::GoWithCheck
    } else {
        Verdict::Trial
    };
    if !standing.known {
        verdict = more_care(verdict);
    }
    if !standing.measured {
        verdict = verdict.max(Verdict::GoWithCheck);
    }
    if standing.damp {
        verdict = more_care(verdict);
    }
    if standing.checked {
        verdict = verdict.max(Verdict::GoWithCheck);
    }
    if standing.heat == HeatStanding::Robust { verdict } else { verdict.max(Verdict::Trial) }
}

/// The verdict for a chance of a late fault, with the stake considered.
#[must_use]
pub fn verdict(chance: f64, stake: &Stake, standing: Standing, rules: &Rules) -> Verdict {
    let verdict = before_money(chance, standing, rules);
    let running = stake.expected_running(chance);
    let testing = stake.expected_testing(chance, rules.power_hot_hold, rules.false_alarm);
    if running > testing && !standing.tested { more_care(verdict) } else { verdict }
}

/// One step towards care.
fn more_care(verdict: Verdict) -> Verdict {
    match verdict {
        Verdict::Go => Verdict::GoWithCheck,
        Verdict::GoWithCheck | Verdict::Trial => Verdict::Trial,
        Verdict::Refuse => Verdict::Refuse,
    }
}
