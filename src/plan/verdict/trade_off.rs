//! The candidates that were assessed, set beside each other on what the order pays and what it gets.

use crate::plan::order::Priority;
use crate::plan::report::{RecipeScores, Scale, TradeOff, sorted_insert};

/// Sets the ways that were worked through beside each other; `picks` are some of them, in their order.
#[must_use]
pub fn trade_off(
    priority: Priority,
    compared: usize,
    tried: Vec<RecipeScores>,
    picks: impl Iterator<Item = RecipeScores>,
) -> TradeOff {
    let judged = tried.len();
    let (pays, gets) = scales(priority, &tried);
    let mut ways = Vec::with_capacity(judged);
    for way in tried {
        sorted_insert(&mut ways, way, |a: &RecipeScores, b: &RecipeScores| {
            let on = |scale: Scale| a.steps(scale).total_cmp(&b.steps(scale));
            on(pays).then(on(gets))
        });
    }
    let front: Vec<bool> = ways
        .iter()
        .map(|way| !ways.iter().any(|other: &RecipeScores| other.dominates(way, [pays, gets])))
        .collect();
    for (way, front) in ways.iter_mut().zip(front) {
        way.front = front;
    }
    for (place, pick) in picks.enumerate() {
        if let Some(way) = ways.iter_mut().find(|way| way.recipe == pick.recipe) {
            way.pick = Some(place);
        }
    }
    let mut trade = TradeOff { compared, judged, pays, gets, ways, say: Vec::new() };
    trade.say = trade.said_of(0);
    trade
}

/// Chances that lie closer together than this decide nothing. Chosen.
const ALIKE: f64 = 0.01;

/// What an order pays with and what it gets for it. Where one way is as safe as another, what is got is cover.
fn scales(priority: Priority, ways: &[RecipeScores]) -> (Scale, Scale) {
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
