//! The picture of what is given up for what: marks lie where their numbers say, better to the left and down, and names keep
//! clear of one another.

use proptest::prelude::*;
use whitehold::desk::picture::trade_off::{HEIGHT, WIDTH, trade_off_chart as picture};
use whitehold::desk::{Draft, Msg, State, update};
use whitehold::plan::{Priority, Recipe, RecipeScores, Scale, TradeOff, Verdict, trade_off};

fn way(name: &str, late: f64, cost: f64, pace: f64) -> RecipeScores {
    RecipeScores {
        recipe: Recipe { white: name.into(), ..Recipe::default() },
        white: name.into(),
        name: name.into(),
        blocker: None,
        strokes: 1,
        threads_per_cm: 43.0,
        smoothing: false,
        additive: false,
        dried: false,
        verdict: Verdict::Go,
        late,
        cost,
        pace,
        hand: 1.0,
        cover: 1.0 + cost,
        nap: 0.0,
        finish: 0.0,
        front: false,
        pick: None,
    }
}

fn trade(priority: Priority, ways: &[RecipeScores]) -> TradeOff {
    trade_off(priority, 99, ways.to_vec(), ways.iter().take(1).cloned())
}

/// Left, top, right, bottom of a name that stands at a place.
fn words(name: &str, [x, y]: [f64; 2]) -> [f64; 4] {
    [x, y - 14.0, x + 10.0 * name.chars().count() as f64, y + 4.0]
}

#[test]
fn one_way_alone_is_no_picture() {
    assert_eq!(picture(&trade(Priority::Balanced, &[]), &[]), None);
    assert_eq!(picture(&trade(Priority::Balanced, &[way("Tern", 0.1, 0.4, 300.0)]), &[]), None);
    // Two that are alike in everything still have a place.
    let alike = [way("Tern", 0.1, 0.4, 300.0), way("Chalk", 0.1, 0.4, 300.0)];
    let drawn = picture(&trade(Priority::Balanced, &alike), &[]).unwrap();
    assert_eq!(drawn.marks[0], drawn.marks[1]);
    assert!(drawn.marks.iter().all(|mark| mark.at.iter().all(|it| it.is_finite())));
}

/// A chance of one in ten stands as far over one in a hundred as that over one in a thousand.
#[test]
fn chances_go_by_their_logarithm() {
    let ways = [way("A", 0.1, 0.1, 300.0), way("B", 0.01, 0.2, 300.0), way("C", 0.001, 0.3, 300.0)];
    let drawn = picture(&trade(Priority::Balanced, &ways), &[]).unwrap();
    let [a, b, c] = [0, 1, 2].map(|at: usize| drawn.marks[at].at[1]);
    assert!(((b - a) - (c - b)).abs() < 1e-9 && b - a > 50.0, "{a} {b} {c}");
    for (height, chance, _) in &drawn.gets_ticks {
        assert!((drawn.gets.at(chance.ln()) - height).abs() < 1e-9);
    }
    let hundredth = drawn.gets_ticks.iter().find(|tick| (tick.1 - 0.01).abs() < 1e-12).unwrap();
    assert!((hundredth.0 - b).abs() < 1e-9);
}

#[test]
fn a_second_tap_takes_the_first_back_and_a_new_answer_forgets_it() {
    let tap = |state: State, way: usize| update(state, Msg::Tap(way)).0;
    let state = tap(State::new(Draft::default()), 3);
    assert_eq!(state.tapped, Some(3));
    let state = tap(state, 1);
    assert_eq!(state.tapped, Some(1));
    assert_eq!(tap(state, 1).tapped, None);
}

proptest! {
    #[test]
    fn better_is_to_the_left_and_down(
        points in prop::collection::vec((0.0_f64..1.0, 0.05_f64..3.0, 20.0_f64..600.0), 2..20),
        priority in prop::sample::select(vec![Priority::Balanced, Priority::Fast, Priority::Opaque]),
    ) {
        let ways: Vec<RecipeScores> = points
            .iter()
            .enumerate()
            .map(|(name, (late, cost, pace))| way(&format!("White {name}"), *late, *cost, *pace))
            .collect();
        let trade = trade(priority, &ways);
        let names: Vec<(usize, String)> =
            trade.ways.iter().enumerate().map(|(at, way)| (at, way.name.clone())).collect();
        let drawn = picture(&trade, &names).unwrap();
        for (one, a) in trade.ways.iter().zip(&drawn.marks) {
            prop_assert!((drawn.pays.start..=drawn.pays.end).contains(&a.at[0]) && a.at[0] <= WIDTH);
            prop_assert!((drawn.gets.end..=drawn.gets.start).contains(&a.at[1]) && a.at[1] <= HEIGHT);
            for (other, b) in trade.ways.iter().zip(&drawn.marks) {
                if one.beats(other, trade.pays) {
                    prop_assert!(a.at[0] < b.at[0], "{:?}", trade.pays);
                }
                if one.beats(other, trade.gets) && (trade.gets != Scale::Late || other.late > 1e-3) {
                    prop_assert!(a.at[1] > b.at[1], "{:?}", trade.gets);
                }
            }
        }
        let named: Vec<[f64; 4]> = names
            .iter()
            .filter_map(|(at, name)| Some(words(name, drawn.marks[*at].name?)))
            .collect();
        // In a crowd a name may have to wait for a tap; two never crowd.
        prop_assert!(!named.is_empty() || trade.ways.len() > 2);
        for (at, a) in named.iter().enumerate() {
            prop_assert!(a[0] >= drawn.pays.start && a[2] <= WIDTH && a[1] >= 0.0 && a[3] <= drawn.gets.start);
            for mark in &drawn.marks {
                let [x, y] = mark.at;
                prop_assert!(!(a[0] < x + 6.0 && x - 6.0 < a[2] && a[1] < y + 6.0 && y - 6.0 < a[3]), "{a:?} over a mark");
            }
            for b in &named[..at] {
                prop_assert!(!(a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]), "{a:?} over {b:?}");
            }
        }
    }
}
