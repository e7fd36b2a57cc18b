//! The level of every bleed forecast hangs on what the trade sees fail, and how often.
//!
//! Source of the frequencies: `data/anchors.json`, common practice, elicited from one head, no measurement. Fitting
//! them is a consistency check and no evidence: the equations must put the cases in the trade's order and meet each
//! frequency within the range it was given with. Rows that are not fitted only check the fit, apart from it.

use crate::anchor_cases::{AnchorRecord, AnchorSetting, anchor_chance, anchors};
use whitehold::library::starter;

/// The row apart from the fit that the model misses, and what it says of it: many shops print maroon fleece with a white
/// that does not block and get away with it, which the model does not believe. A known fault, kept to be seen.
const MISSED: (&str, [f64; 2]) = ("cotton-white-80-20", [0.95, 0.99]);

fn computed() -> Vec<(AnchorRecord, f64)> {
    let library = starter().expect("the starter library parses");
    let chance = |anchor: &AnchorRecord| {
        anchor_chance(anchor, &library, "long-kiln")
            .unwrap_or_else(|errors| panic!("{}: {errors:?}", anchor.id))
    };
    anchors()
        .into_iter()
        .map(|anchor| {
            let chance = chance(&anchor);
            (anchor, chance)
        })
        .collect()
}

/// Each chance lies within the range of its own row; a row that is known to be missed lies where that says, and outside its
/// own range: once it is met, the exception has to go.
fn hold(anchor: &AnchorRecord, chance: f64) {
    let ([low, high], (missed, [least, most])) = (anchor.fails.range, MISSED);
    let met = (low..=high).contains(&chance);
    if anchor.id == missed {
        assert!(!met, "{missed}: {chance:.3} is met now: it is no exception any more");
        assert!((least..=most).contains(&chance), "{missed}: {chance:.3} is outside {least} to {most}");
    } else {
        assert!(met, "{}: {chance:.3} is outside {low} to {high}", anchor.id);
    }
}

/// Goodness of fit, and no evidence: no row that was fitted is missed.
#[test]
fn fitted_frequencies_are_met_within_their_ranges() {
    let fitted: Vec<_> = computed().into_iter().filter(|(anchor, _)| anchor.fitted).collect();
    assert_eq!(fitted.len(), 12);
    for (anchor, chance) in fitted {
        assert_ne!(anchor.id, MISSED.0);
        hold(&anchor, chance);
    }
}

/// The rows that the fit has not seen. They were not elicited but are what an earlier fit of the other rows gave, so that they
/// notice a model that has moved; they do not show that it is right.
#[test]
fn frequencies_apart_from_the_fit_are_met_but_for_one() {
    let held_out: Vec<_> = computed().into_iter().filter(|(anchor, _)| !anchor.fitted).collect();
    assert_eq!(held_out.len(), 4);
    for (anchor, chance) in held_out {
        hold(&anchor, chance);
    }
}

#[test]
fn ratios_keep_the_trade_s_order() {
    let computed = computed();
    let chance = |id: &str| {
        computed
            .iter()
            .find(|(anchor, _)| anchor.id == id)
            .map(|(_, chance)| *chance)
            .expect("a known anchor")
    };
    // Worse first. Source: common practice, no source.
    let order = [
        ("cotton-white-50-50", "low-bleed-50-50"),
        ("low-bleed-polyester", "polyester-white-polyester"),
        ("polyester-white-polyester", "low-cure-polyester"),
        ("polyester-white-polyester-hot", "polyester-white-polyester-two-passes"),
        ("polyester-white-polyester-two-passes", "polyester-white-polyester"),
        ("sublimated-polyester-white", "sublimated-low-cure"),
        ("sublimated-low-cure", "sublimated-low-cure-blocker"),
        ("low-bleed-50-50", "low-bleed-80-20"),
    ];
    for (worse, better) in order {
        assert!(
            chance(worse) > chance(better),
            "{worse} {} must fail more often than {better} {}",
            chance(worse),
            chance(better)
        );
    }
    let hot = computed.iter().filter(|(anchor, _)| anchor.setting == AnchorSetting::Over18K).count();
    assert!(hot >= 2, "the table must keep its overheated cases");
}
