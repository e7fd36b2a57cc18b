//! The candidates that were assessed, compared on what the order pays and what it gets.
//!
//! **Decision:** the picture shows the candidates that were assessed, and says how many were compared.
//! **Because:** to assess the rest would cost an answer its tenth of a second.
//! **Measured:** by 2026-11-28, machine not recorded.
//! **Reconsider when:** every candidate can be assessed in that time.

use crate::plan::order::Priority;
use crate::plan::report::{RecipeScores, Scale, TradeOff, sorted_insert};

/// Compares the recipes that were assessed; `picks` are some of them, in their order, and `compared` is the
/// number of candidates that the search looked at.
#[must_use]
pub fn trade_off(
    priority: Priority,
    compared: usize,
    assessed: Vec<RecipeScores>,
    picks: impl Iterator<Item = RecipeScores>,
) -> TradeOff {
    let judged = assessed.len();
    let (pays, gets) = scales(priority, &assessed);
    let mut ways = Vec::with_capacity(judged);
    for scored in assessed {
        sorted_insert(&mut ways, scored, |a: &RecipeScores, b: &RecipeScores| {
            let on = |scale: Scale| a.steps(scale).total_cmp(&b.steps(scale));
            on(pays).then(on(gets))
        });
    }
    let front: Vec<bool> = ways
        .iter()
        .map(|scored| !ways.iter().any(|other: &RecipeScores| other.dominates(scored, [pays, gets])))
        .collect();
    for (scored, front) in ways.iter_mut().zip(front) {
        scored.front = front;
    }
    for (place, pick) in picks.enumerate() {
        if let Some(scored) = ways.iter_mut().find(|scored| scored.recipe == pick.recipe) {
            scored.pick = Some(place);
        }
    }
    let mut trade = TradeOff { compared, judged, pays, gets, ways, say: Vec::new() };
    trade.say = trade.said_of(0);
    trade
}

/// Chances of a late fault that differ by less than this decide nothing. Chosen.
const ALIKE: f64 = 0.01;

/// What an order pays with and what it gets for it. If all recipes are about equally safe, what it gets is
/// cover.
fn scales(priority: Priority, ways: &[RecipeScores]) -> (Scale, Scale) {
    let (pays, gets) = match priority {
        Priority::Balanced | Priority::StaysWhite | Priority::Durable | Priority::Cheap => {
            (Scale::Cost, Scale::Late)
        }
        Priority::Soft => (Scale::Hand, Scale::Late),
        Priority::Opaque => (Scale::Cost, Scale::Cover),
        Priority::Fast => (Scale::Pace, Scale::Late),
    };
    let late = || ways.iter().map(|scored| scored.late);
    let alike = late().fold(f64::NEG_INFINITY, f64::max) - late().fold(f64::INFINITY, f64::min) < ALIKE;
    (pays, if gets == Scale::Late && alike { Scale::Cover } else { gets })
}
