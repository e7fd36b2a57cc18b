//! What earlier prints teach of the lots of a cloth, whichever white they were printed with.
//!
//! Source: NumPy 2, Bayes' theorem over both sources of dye: sums over a grid of 2401 by 2401 for prints of the same lot, four
//! million draws of article and lots for those of others. A look is told as freed and loose dye over what turns the print, and
//! the likelihoods of what was seen in a lot that turns it and in one that does not.

use whitehold::migration::{Belief, MOST_SEEN, SourceBelief};
use whitehold::plan::{EvidenceSubject, LookedAt, LotDye, learned};

/// A look: freed and loose dye over what turns the print, and the likelihoods of what was seen.
type Look = [f64; 4];

/// A print, freed and loose dye over what turns it; spreads of both; looks; the share of lots that turn it.
type LotRow<'a> = ([f64; 2], [f64; 2], &'a [Look], f64);

/// What was looked at, a print, looks, the share of lots that turn it, and how near in log-odds.
type OtherRow<'a> = (EvidenceSubject, [f64; 2], &'a [Look], f64, f64);

/// The spreads of freed and loose dye between lots.
const SPREADS: [f64; 2] = [1.79, 0.81];
const CLEAN: Look = [0.1, 0.2, 0.05, 0.9];
const TURNED: Look = [0.1, 0.2, 0.95, 0.1];
const STRONG_TURNED: Look = [0.02, 0.1, 0.7, 0.01];

fn before([heat, loose]: [f64; 2]) -> Belief {
    let of = |spread| SourceBelief { shift: 0.0, spread };
    Belief { heat: of(heat), loose: of(loose), seen: [None; MOST_SEEN] }
}

/// Share of lots that turn a print with so much freed and loose dye over what turns it, after looks.
fn share(print: [f64; 2], spreads: [f64; 2], about: EvidenceSubject, looks: &[Look]) -> f64 {
    let belief = before(spreads);
    let looks: Vec<LookedAt> = looks
        .iter()
        .map(|[heat, loose, bad, good]| LookedAt {
            about,
            dye: LotDye::new(*heat, *loose, &belief),
            critical: 1.0,
            likely: [*bad, *good],
        })
        .collect();
    LotDye::new(print[0], print[1], &learned(belief, &looks)).share_over(1.0)
}

fn log_odds(chance: f64) -> f64 {
    (chance / (1.0 - chance)).ln()
}

#[test]
fn prints_of_the_same_lot_count_as_computed() {
    let rows: [LotRow<'_>; 6] = [
        ([0.1, 0.2], SPREADS, &[CLEAN], 0.01066),
        ([0.1, 0.2], SPREADS, &[TURNED], 0.64830),
        ([0.015, 0.2], SPREADS, &[TURNED], 0.16859),
        ([0.0075, 0.1], SPREADS, &[STRONG_TURNED], 0.19210),
        ([0.1, 0.2], SPREADS, &[CLEAN, [0.5, 0.4, 0.95, 0.1]], 0.02030),
        (
            [1.0 / 15.0, 2.0 / 15.0],
            [1.2, 0.5],
            &[CLEAN, [0.05, 0.05, 0.05, 0.9], [0.3, 0.1, 0.15, 0.9]],
            0.00012,
        ),
    ];
    for (print, spreads, looks, expected) in rows {
        let found = share(print, spreads, EvidenceSubject::Lot, looks);
        assert!(
            (found - expected).abs() < 2e-4 + 0.01 * expected,
            "{print:?} after {looks:?}: {found:.5} for {expected}"
        );
    }
}

/// Means and variances in place of the laws themselves: within a fifth of an e-fold of odds, but for two lots of an
/// article whose films turned against all odds: one e-fold, on the careful side.
#[test]
fn prints_of_other_lots_count_nearly_as_computed() {
    use EvidenceSubject::{Article, White};
    let near = [0.1, 0.2];
    let cool = [0.015, 0.2];
    let rows: [OtherRow<'_>; 12] = [
        (Article, near, &[CLEAN], 0.12262, 0.2),
        (Article, cool, &[CLEAN], 0.02895, 0.2),
        (Article, near, &[CLEAN; 4], 0.07343, 0.2),
        (Article, cool, &[CLEAN; 4], 0.01568, 0.2),
        (Article, near, &[TURNED], 0.28962, 0.2),
        (Article, cool, &[TURNED], 0.08472, 0.2),
        (Article, near, &[STRONG_TURNED; 2], 0.70639, 1.1),
        (White, near, &[CLEAN], 0.14925, 0.1),
        (White, near, &[CLEAN; 4], 0.12120, 0.1),
        (White, cool, &[TURNED], 0.05519, 0.1),
        (White, near, &[STRONG_TURNED; 2], 0.33789, 0.2),
        (White, cool, &[STRONG_TURNED; 2], 0.10188, 0.2),
    ];
    for (about, print, looks, expected, near) in rows {
        let found = share(print, SPREADS, about, looks);
        let off = log_odds(found) - log_odds(expected);
        println!("{about:?} {print:?} after {} looks: {found:.4} for {expected:.4}, {off:+.2}", looks.len());
        assert!(off.abs() < near, "{about:?} {print:?} after {looks:?}: {found:.5} for {expected}");
    }
}

/// Source: the rule's learning figures, .14 before: the next lot after 1, 2, 4 and 8 clean lots of the article .109, .090,
/// .066, .045.
#[test]
fn clean_lots_teach_as_worked() {
    let belief = before([1.0, 0.5]);
    // Freed dye alone, so that .14 of lots turn it: 1.0803 standard deviations.
    let dye = LotDye::new((-1.0803_f64).exp(), 1e-12, &belief);
    let look = LookedAt { about: EvidenceSubject::Article, dye, critical: 1.0, likely: [0.05, 1.0] };
    for (clean, expected) in [(1, 0.109), (2, 0.090), (4, 0.066), (8, 0.045)] {
        let now = LotDye::new(dye.heat, dye.loose, &learned(belief, &vec![look; clean])).share_over(1.0);
        assert!((now - expected).abs() < 0.013, "after {clean} clean lots {now:.3}, worked {expected}");
    }
}

/// Looks count alike in whatever order they are told, and a look that shows nothing changes nothing.
#[test]
fn the_order_of_looks_does_not_matter() {
    for about in [EvidenceSubject::Lot, EvidenceSubject::Article, EvidenceSubject::White] {
        let there = share([0.1, 0.2], SPREADS, about, &[CLEAN, TURNED, STRONG_TURNED]);
        let back = share([0.1, 0.2], SPREADS, about, &[STRONG_TURNED, TURNED, CLEAN]);
        assert!((there - back).abs() < 1e-12, "{about:?}: {there} and {back}");
        let nothing = share([0.1, 0.2], SPREADS, about, &[[0.1, 0.2, 1.0, 1.0]]);
        let none = share([0.1, 0.2], SPREADS, about, &[]);
        assert!((nothing - none).abs() < 2e-4, "{about:?}: {nothing} and {none}");
    }
}
