//! What is given up for what: the front is really unbeaten, the choice lies on it or it is told why not, and the sentences
//! carry the numbers of the points.
//!
//! Nothing outside the house can be asked here: every claim is checked anew, pair by pair, on the numbers as they are
//! written.

use super::common::{answered, demo_order, demo_orders};
use proptest::prelude::*;
use whitehold::plan::{
    Code, Priority, Reason, Recipe, RecipeScores, Report, Scale, TradeOff, Value, Verdict, trade_off,
};
use whitehold::wording::{Language, Voice};

/// A value in the steps to which it is written, so that less is better.
fn steps(way: &RecipeScores, scale: Scale) -> f64 {
    way.steps(scale)
}

fn less(a: &RecipeScores, b: &RecipeScores, scale: Scale) -> bool {
    steps(a, scale) < steps(b, scale)
}

fn beaten(way: &RecipeScores, trade: &TradeOff) -> bool {
    let scales = [trade.pays, trade.gets];
    trade.ways.iter().any(|other| {
        !scales.iter().any(|scale| less(way, other, *scale))
            && scales.iter().any(|scale| less(other, way, *scale))
    })
}

fn number(reason: &Reason, name: &str) -> Option<f64> {
    match reason.values.get(name) {
        Some(Value::Number(number)) => Some(*number),
        _ => None,
    }
}

fn word<'r>(reason: &'r Reason, name: &str) -> &'r str {
    match reason.values.get(name) {
        Some(Value::Word(word)) => word,
        _ => "",
    }
}

/// The way that a reason names, `""` or `"other-"`.
fn named<'t>(trade: &'t TradeOff, reason: &Reason, of: &str) -> Vec<&'t RecipeScores> {
    let is = |way: &&RecipeScores| {
        way.name == word(reason, &format!("{of}white"))
            && way.blocker.clone().unwrap_or_default() == word(reason, &format!("{of}blocker"))
            && Some(f64::from(way.strokes)) == number(reason, &format!("{of}strokes"))
            && Some(way.threads_per_cm) == number(reason, &format!("{of}threads"))
    };
    trade.ways.iter().filter(is).collect()
}

/// What must hold of any trade, whichever of its picks is chosen.
fn holds(trade: &TradeOff, picks: usize) {
    for way in &trade.ways {
        assert_eq!(way.front, !beaten(way, trade), "{way:?} of {trade:#?}");
    }
    for pick in 0..picks {
        let said = trade.said_of(pick);
        let mine: Vec<&RecipeScores> = trade.ways.iter().filter(|way| way.pick == Some(pick)).collect();
        assert_eq!(mine.len(), 1, "pick {pick} of {trade:#?}");
        let mine = mine[0];
        let of = |code: Code| said.iter().find(|reason| reason.code == code);
        // The choice is on the front, or it is told what lies before it.
        assert_eq!(mine.front, of(Code::OffFront).is_none(), "{said:#?}");
        if let Some(off) = of(Code::OffFront) {
            let over = named(trade, off, "");
            assert!(over.iter().any(|over| over.front), "{off:?}");
        }
        // Either something that holds as well pays less, or that is said.
        let holding = |way: &&RecipeScores| way.verdict <= mine.verdict;
        let cheaper = trade.ways.iter().filter(holding).any(|way| less(way, mine, trade.pays));
        assert_eq!(cheaper, of(Code::PaidFor).is_some(), "{said:#?}");
        assert_eq!(!cheaper, of(Code::NothingPaid).is_some(), "{said:#?}");
        if let Some(paid) = of(Code::PaidFor) {
            let least = trade.ways.iter().filter(holding).map(|way| steps(way, trade.pays));
            let least = least.fold(f64::INFINITY, f64::min);
            assert!(named(trade, paid, "other-").iter().any(|way| steps(way, trade.pays) <= least));
        }
        for step in said.iter().filter(|reason| reason.code == Code::ForMore) {
            assert!(named(trade, step, "").iter().any(|way| {
                way.front
                    && less(way, mine, trade.gets) != less(way, mine, trade.pays)
                    && less(mine, way, trade.gets) != less(mine, way, trade.pays)
            }));
        }
        // The numbers of a sentence are those of its points, and where none is given there is nothing to tell.
        for reason in said.iter().filter(|reason| number(reason, "strokes").is_some()) {
            let pairs: Vec<(&RecipeScores, &RecipeScores)> = named(trade, reason, "")
                .into_iter()
                .flat_map(|one| named(trade, reason, "other-").into_iter().map(move |other| (one, other)))
                .collect();
            let fits = |one: &RecipeScores, other: &RecipeScores| {
                Scale::ALL.iter().all(|scale| {
                    let told = [scale.word().to_owned(), format!("other-{}", scale.word())];
                    let alike = |a: f64, b: f64| (a - b).abs() < 1e-9;
                    match told.map(|name| number(reason, &name)) {
                        [Some(a), Some(b)] => {
                            alike(a, one.written(*scale)) && alike(b, other.written(*scale))
                        }
                        _ => alike(one.written(*scale), other.written(*scale)),
                    }
                })
            };
            assert!(pairs.iter().any(|(one, other)| fits(one, other)), "{reason:?}");
        }
    }
}

fn report(id: &str, priority: Priority) -> Report {
    let mut order = demo_order(id);
    order.print.priority = priority;
    answered(&order)
}

/// The demo's orders under every priority: each pick is one of the points, with the pick's own numbers.
#[test]
fn the_orders_of_the_demo_are_told_as_they_are() {
    let (mut off, mut compared) = (0, 0);
    for (id, _) in demo_orders() {
        for priority in Priority::ALL {
            let report = report(id, priority);
            let Some(trade) = &report.trade else {
                assert!(report.picks.is_empty(), "an answer without its ways");
                continue;
            };
            assert_eq!(trade.judged, trade.ways.len());
            assert!(trade.judged <= trade.compared);
            for (place, pick) in report.picks.iter().enumerate() {
                let way = trade.ways.iter().find(|way| way.pick == Some(place)).unwrap();
                assert_eq!((&way.white, way.verdict), (&pick.white, pick.verdict));
                assert_eq!(
                    (way.late, way.cost, way.pace),
                    (pick.fail_later.likely, pick.cost_per_print.likely, pick.rate_per_hour.likely)
                );
            }
            holds(trade, report.picks.len());
            assert_eq!(trade.say.len(), trade.said_of(0).len());
            if let Some(best) = trade.ways.iter().find(|way| way.pick == Some(0)) {
                compared += 1;
                off += usize::from(!best.front);
            }
            // Off the front the best is better at something that the two scales do not show.
            for reason in trade.say.iter().filter(|reason| reason.code == Code::OffFront) {
                let worse = Scale::ALL.iter().any(|scale| {
                    let sign = if *scale == Scale::Pace { -1.0 } else { 1.0 };
                    let names = [scale.word().to_owned(), format!("other-{}", scale.word())];
                    matches!(names.map(|name| number(reason, &name)), [Some(a), Some(b)] if sign * a > sign * b)
                });
                let harder = word(reason, "verdict") != word(reason, "other-verdict");
                assert!(worse || harder, "order {id}, {priority:?}: {reason:?}");
            }
        }
    }
    assert!(off > 0 && off * 2 < compared, "{off} of {compared} choices lie off the front");
}

/// What an order cares for is on one of the two scales, and the other is what it stands against: money against a late
/// fault where the order names neither hand, cover nor pace. Where every way is as safe, to within one in a hundred, what
/// an order gets is cover. Source: common practice, no source.
#[test]
fn the_priority_sets_the_scales() {
    use Priority::{Balanced, Cheap, Durable, Fast, Opaque, Soft, StaysWhite};
    let table = [
        (Balanced, Scale::Cost, Scale::Late),
        (StaysWhite, Scale::Cost, Scale::Late),
        (Durable, Scale::Cost, Scale::Late),
        (Cheap, Scale::Cost, Scale::Late),
        (Soft, Scale::Hand, Scale::Late),
        (Opaque, Scale::Cost, Scale::Cover),
        (Fast, Scale::Pace, Scale::Late),
    ];
    for (priority, pays, gets) in table {
        let [red_polyester, black_cotton] =
            ["1187", "1185"].map(|id| report(id, priority).trade.expect("ways were worked through"));
        assert_eq!((red_polyester.pays, red_polyester.gets), (pays, gets), "{priority:?}");
        assert_eq!((black_cotton.pays, black_cotton.gets), (pays, Scale::Cover), "{priority:?}");
    }
}

/// What is written alike is alike: a cent, one case in a thousand, a tenth of a usual hand or of ΔE00, a twentieth of the
/// nap or the finish, a print an hour. Less is better on every scale but pace. Chosen steps, worked by hand.
#[test]
fn values_are_compared_as_they_are_written() {
    let rows = [
        (Scale::Cost, 0.384, 0.376, 0.38),
        (Scale::Late, 0.0164, 0.0156, 0.016),
        (Scale::Hand, 1.14, 1.06, 1.1),
        (Scale::Cover, 1.24, 1.16, 1.2),
        (Scale::Nap, 0.17, 0.13, 0.15),
        (Scale::Finish, 0.12, 0.08, 0.1),
        (Scale::Pace, 300.4, 299.6, 300.0),
    ];
    let way = |scale: Scale, value: f64| {
        let mut way = tried(1, 0.02, 0.5, 1.0, Verdict::Go);
        *match scale {
            Scale::Cost => &mut way.cost,
            Scale::Late => &mut way.late,
            Scale::Hand => &mut way.hand,
            Scale::Cover => &mut way.cover,
            Scale::Nap => &mut way.nap,
            Scale::Finish => &mut way.finish,
            Scale::Pace => &mut way.pace,
        } = value;
        way
    };
    for (scale, more, less, written) in rows {
        let [more, less] = [more, less].map(|value| way(scale, value));
        for near in [&more, &less] {
            assert!((near.written(scale) - written).abs() < 1e-9, "{scale:?}: {}", near.written(scale));
        }
        assert!(!more.beats(&less, scale) && !less.beats(&more, scale), "{scale:?}");
        let double = way(scale, 2.0 * written);
        let [better, worse] = if scale == Scale::Pace { [&double, &less] } else { [&less, &double] };
        assert!(better.beats(worse, scale) && !worse.beats(better, scale), "{scale:?}");
    }
}

fn tried(name: usize, late: f64, cost: f64, hand: f64, verdict: Verdict) -> RecipeScores {
    RecipeScores {
        recipe: Recipe { white: format!("w{name}"), ..Recipe::default() },
        white: format!("w{name}"),
        name: format!("White {name}"),
        blocker: None,
        strokes: 1,
        threads_per_cm: 43.0,
        smoothing: false,
        additive: false,
        dried: false,
        verdict,
        late,
        cost,
        pace: 300.0,
        hand,
        cover: 1.2,
        nap: 0.0,
        finish: 0.0,
        front: false,
        pick: None,
    }
}

/// The sentences, word for word, over three ways that anybody can set beside each other by hand.
#[test]
fn three_ways_are_told_by_hand() {
    let ways = vec![
        tried(1, 0.2, 0.38, 1.0, Verdict::GoWithCheck),
        tried(2, 0.0164, 0.44, 1.1, Verdict::Go),
        tried(3, 0.02, 0.5, 0.7, Verdict::Go),
    ];
    let trade = |first: usize| {
        trade_off(Priority::Balanced, 1189, ways.clone(), std::iter::once(ways[first].clone()))
    };
    let say = |trade: &TradeOff, language: Language| -> Vec<String> {
        let said = trade.say.iter().map(|reason| Voice::from(language).reason(reason).replace('\u{a0}', " "));
        said.collect()
    };
    let english = [
        (
            0,
            vec![
                "1189 ways compared, 3 worked through.",
                "Nothing cheaper holds as well.",
                "For 0.06 more a print, the chance of a late fault falls from 20 in 100 to 1.6 in 100: White 2, 1 × 43/cm.",
            ],
        ),
        (
            1,
            vec![
                "1189 ways compared, 3 worked through.",
                "Nothing cheaper holds as well.",
                "For 0.06 less a print, the chance of a late fault rises from 1.6 in 100 to 20 in 100: White 1, 1 × 43/cm.",
            ],
        ),
        (
            2,
            vec![
                "1189 ways compared, 3 worked through.",
                "What this costs. It is riskier (2 in 100, not 1.6 in 100) and 0.06 a print dearer than White 2, 1 × 43/cm, the cheapest that holds as well. \
                 For that it is softer.",
                "Not on the line. White 2, 1 × 43/cm is safer (1.6 in 100, not 2 in 100) and 0.06 a print cheaper, but stiffer.",
            ],
        ),
    ];
    for (first, expected) in english {
        let trade = trade(first);
        assert_eq!(say(&trade, Language::En), expected);
        let spanish = say(&trade, Language::Es);
        assert_eq!(spanish.len(), expected.len());
        assert!(spanish[0].starts_with("1189 formas"), "{spanish:?}");
    }
}

proptest! {
    /// Any ways at all, many of them alike.
    #[test]
    fn any_front_is_unbeaten(
        points in prop::collection::vec((0_u32..30, 0_u32..30, 0_u32..6, 0_usize..4), 1..24),
        priority in prop::sample::select(Priority::ALL.to_vec()),
    ) {
        let verdicts = [Verdict::Go, Verdict::GoWithCheck, Verdict::Trial, Verdict::Refuse];
        let ways: Vec<RecipeScores> = points
            .iter()
            .enumerate()
            .map(|(name, (late, cost, hand, verdict))| {
                let (late, cost) = (f64::from(*late) * 0.0071, f64::from(*cost) * 0.0137);
                tried(name, late, cost, f64::from(*hand) * 0.13, verdicts[*verdict])
            })
            .collect();
        let trade = trade_off(priority, ways.len() + 5, ways.clone(), ways.iter().cloned());
        holds(&trade, ways.len());
    }
}
