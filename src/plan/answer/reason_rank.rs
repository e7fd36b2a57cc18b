//! The order in which a printer reads reasons: one row a code.
//!
//! What was seen before comes first, then whether the white stays white and fuses, then what else may show later, then the
//! window, then how the print looks, last what simply holds. Common practice, no source; only the order matters.

use crate::plan::report::{Code, Reason, sorted_insert};

/// How far up a reason stands.
#[derive(Clone, Copy, Debug)]
struct Rank {
    code: Code,
    /// Where the limit is kept, or the fact is no more than said.
    usual: f64,
    /// Where a limit is broken or something was seen to fail.
    pressing: f64,
    /// Added for each unit of chance, 0 to 1, where the reason has one.
    by_chance: f64,
}

const fn rank(code: Code, usual: f64) -> Rank {
    Rank { code, usual, pressing: usual, by_chance: 0.0 }
}

const fn pressing(code: Code, usual: f64, pressing: f64) -> Rank {
    Rank { code, usual, pressing, by_chance: 0.0 }
}

const fn by_chance(code: Code, usual: f64, by_chance: f64) -> Rank {
    Rank { code, usual, pressing: usual, by_chance }
}

/// Every reason of a pick, the first to be read first.
const RANKS: [Rank; 47] = [
    rank(Code::ClothBleeds, 100.0),
    rank(Code::DriedFirst, 98.0),
    rank(Code::NoBlocking, 95.0),
    rank(Code::DriftTooWide, 94.0),
    rank(Code::FusionShort, 92.0),
    rank(Code::ComesDamp, 91.0),
    rank(Code::NothingToBleed, 90.0),
    pressing(Code::EvidenceCounted, 88.0, 110.0),
    rank(Code::FarFromKnown, 87.0),
    rank(Code::MoneyAddsCare, 86.0),
    rank(Code::BlockerHelps, 85.0),
    rank(Code::LowCureHelps, 80.0),
    rank(Code::LotNew, 75.0),
    rank(Code::WashHard, 72.0),
    by_chance(Code::StretchShort, 72.0, 40.0),
    by_chance(Code::AdhesionHolds, 70.0, 40.0),
    by_chance(Code::AdhesionUnknown, 70.0, 40.0),
    rank(Code::WindowNarrow, 68.0),
    rank(Code::ReducerSpoils, 66.0),
    rank(Code::CoversShort, 65.0),
    rank(Code::GlossShort, 64.8),
    rank(Code::MattShort, 64.8),
    rank(Code::ColoursSetHeat, 64.0),
    pressing(Code::LaterHeat, 63.5, 112.0),
    rank(Code::SoftensNear, 63.0),
    rank(Code::CoatingNear, 63.0),
    rank(Code::ScorchNear, 62.0),
    rank(Code::ShrinkNear, 61.0),
    rank(Code::DyeUnknown, 60.0),
    rank(Code::WaterSlows, 58.0),
    rank(Code::HeavyCloth, 56.0),
    rank(Code::StretchHolds, 55.0),
    by_chance(Code::MayGhost, 50.0, 100.0),
    rank(Code::LooksDull, 48.0),
    rank(Code::LooksBluish, 47.0),
    rank(Code::SmoothingHelps, 46.0),
    rank(Code::SmoothingShines, 46.0),
    rank(Code::NapShows, 45.0),
    rank(Code::HolesLoseFilm, 44.0),
    pressing(Code::RimBleeds, 43.0, 84.0),
    rank(Code::HandStiff, 42.0),
    rank(Code::FinishHolds, 41.0),
    rank(Code::FusionHolds, 40.0),
    rank(Code::WindowOpen, 38.0),
    rank(Code::Covers, 20.0),
    pressing(Code::OneStrokeMore, 19.5, 64.5),
    pressing(Code::CoarserMesh, 19.4, 64.4),
];

fn rank_of(code: Code) -> Option<&'static Rank> {
    RANKS.iter().find(|rank| rank.code == code)
}

/// Reasons in the order in which they are read; among equals the one that was added first.
#[derive(Debug, Default)]
pub struct RankedReasons {
    ranked: Vec<(f64, Reason)>,
}

impl RankedReasons {
    /// Adds a reason at its usual rank.
    pub fn add(&mut self, reason: Reason) {
        let rank = rank_of(reason.code).map_or(0.0, |rank| rank.usual);
        self.insert(rank, reason);
    }

    /// Adds a reason, further up where it is `pressing`.
    pub fn add_pressing(&mut self, reason: Reason, pressing: bool) {
        let rank = rank_of(reason.code).map_or(0.0, |rank| if pressing { rank.pressing } else { rank.usual });
        self.insert(rank, reason);
    }

    /// Adds a reason, the further up the likelier (`chance`, 0 to 1) what it says is.
    pub fn add_by_chance(&mut self, reason: Reason, chance: f64) {
        let rank = rank_of(reason.code).map_or(0.0, |rank| rank.usual + rank.by_chance * chance);
        self.insert(rank, reason);
    }

    fn insert(&mut self, rank: f64, reason: Reason) {
        sorted_insert(&mut self.ranked, (rank, reason), |a, b| b.0.total_cmp(&a.0));
    }

    /// The reasons, the first to be read first.
    #[must_use]
    pub fn into_reasons(self) -> Vec<Reason> {
        self.ranked.into_iter().map(|(_, reason)| reason).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The table reads from top to bottom, and no code has two rows.
    #[test]
    fn the_table_is_in_reading_order() {
        for pair in RANKS.windows(2) {
            assert!(pair[0].usual >= pair[1].usual, "{:?} before {:?}", pair[0].code, pair[1].code);
        }
        for (at, rank) in RANKS.iter().enumerate() {
            assert!(RANKS[..at].iter().all(|had| had.code != rank.code), "{:?} twice", rank.code);
            assert!(rank.pressing >= rank.usual && rank.by_chance >= 0.0, "{:?}", rank.code);
        }
    }

    #[test]
    fn a_failure_and_a_chance_move_a_reason_up() {
        let mut reasons = RankedReasons::default();
        reasons.add(Reason::new(Code::ClothBleeds));
        reasons.add_by_chance(Reason::new(Code::MayGhost), 0.3);
        reasons.add_pressing(Reason::new(Code::EvidenceCounted), true);
        reasons.add(Reason::new(Code::WashHard));
        let codes: Vec<Code> = reasons.into_reasons().iter().map(|reason| reason.code).collect();
        assert_eq!(codes, [Code::EvidenceCounted, Code::ClothBleeds, Code::MayGhost, Code::WashHard]);
    }
}
