//! Go, go with check, trial or refuse: the worked cases of the rule.
//!
//! Source: the rule's worked table (chances and money common practice, elicited, no source); the arithmetic of the
//! expected losses is checked by hand beside each row.

use super::common::{demo_order, library};
use whitehold::library::job;
use whitehold::plan::{
    Evidence, EvidenceSubject, HeatStanding, Rules, Stake, Standing, Verdict, after_lot_test, likelihoods,
    verdict,
};

fn rules() -> Rules {
    job(&demo_order("1185"), library()).expect("a demo order resolves").rules
}

const EVERYDAY: Standing = Standing {
    known: true,
    checked: false,
    damp: false,
    measured: true,
    heat: HeatStanding::Robust,
    tested: false,
};

#[test]
fn the_worked_cases_come_out_as_worked() {
    let rules = rules();
    let rows = [
        ("72 red 50/50 tees, low-bleed", 72.0, 9.0, 0.05, EVERYDAY, Verdict::Go),
        ("600 of them", 600.0, 9.0, 0.05, EVERYDAY, Verdict::GoWithCheck),
        ("380 once the article has run clean", 380.0, 9.0, 0.02, EVERYDAY, Verdict::Go),
        ("150 red polyester, polyester white", 150.0, 20.0, 0.14, EVERYDAY, Verdict::Trial),
        ("the same, low-cure white", 150.0, 20.0, 0.03, EVERYDAY, Verdict::Go),
        ("60 sublimated, low-cure over blocker", 60.0, 28.0, 0.15, EVERYDAY, Verdict::Trial),
        ("the same without blocker", 60.0, 28.0, 0.48, EVERYDAY, Verdict::Trial),
        (
            "12 rush polyester jerseys: money says go, the rule says trial",
            12.0,
            20.0,
            0.14,
            EVERYDAY,
            Verdict::Trial,
        ),
        (
            "a cloth never printed here",
            72.0,
            9.0,
            0.05,
            Standing { known: false, ..EVERYDAY },
            Verdict::GoWithCheck,
        ),
        ("it comes damp", 72.0, 9.0, 0.02, Standing { damp: true, ..EVERYDAY }, Verdict::GoWithCheck),
        (
            "it comes damp, and was in doubt",
            72.0,
            9.0,
            0.08,
            Standing { damp: true, ..EVERYDAY },
            Verdict::Trial,
        ),
        (
            "the dryer was never measured",
            72.0,
            9.0,
            0.02,
            Standing { measured: false, ..EVERYDAY },
            Verdict::GoWithCheck,
        ),
        (
            "nor was it, in doubt already",
            72.0,
            9.0,
            0.08,
            Standing { measured: false, ..EVERYDAY },
            Verdict::GoWithCheck,
        ),
        (
            "damp cloth in a dryer that was never measured",
            72.0,
            9.0,
            0.02,
            Standing { measured: false, damp: true, ..EVERYDAY },
            Verdict::Trial,
        ),
        ("six in ten fail", 72.0, 9.0, 0.6, EVERYDAY, Verdict::Refuse),
        (
            "the drift box does not hold",
            72.0,
            9.0,
            0.02,
            Standing { heat: HeatStanding::AsPlanned, ..EVERYDAY },
            Verdict::Trial,
        ),
        (
            "the run as planned breaks a limit of film or cloth",
            72.0,
            9.0,
            0.02,
            Standing { heat: HeatStanding::Broken, ..EVERYDAY },
            Verdict::Refuse,
        ),
    ];
    for (case, pieces, value, chance, standing, expected) in rows {
        assert_eq!(verdict(chance, &Stake { pieces, value }, standing, &rules), expected, "{case}");
    }
}

/// By hand: 72 pieces at 9: n v = 648, loss 648 + 90 + 25.92 = 763.92; running 0.05 × 763.92 = 38.196;
/// testing 59.75 + 0.05 × 0.15 × 763.92 + (0.05 × 0.85 + 0.95 × 0.1) × 35.64 = 70.38.
#[test]
fn expected_losses_are_as_by_hand() {
    let stake = Stake { pieces: 72.0, value: 9.0 };
    assert!((stake.expected_running(0.05) - 38.196).abs() < 1e-9);
    assert!((stake.expected_testing(0.05, 0.85, 0.1) - 70.379_9).abs() < 1e-3);
}

#[test]
fn money_may_only_add_care() {
    let rules = rules();
    for chance in [0.005, 0.02, 0.05, 0.08, 0.2, 0.45] {
        let mut had = verdict(chance, &Stake { pieces: 1.0, value: 1.0 }, EVERYDAY, &rules);
        for pieces in [10.0, 100.0, 1_000.0, 10_000.0] {
            let now = verdict(chance, &Stake { pieces, value: 20.0 }, EVERYDAY, &rules);
            assert!(now >= had, "{pieces} pieces at {chance} made {had:?} into {now:?}");
            had = now;
        }
        assert!(chance > 0.05 || had <= Verdict::GoWithCheck, "money takes one step, not two");
    }
}

/// Source: the rule's learning figures, .14 before: the same lot after a clean look .06, a day in the oven .026, weeks .009.
#[test]
fn a_test_of_the_lot_teaches_as_worked() {
    let rules = rules();
    for (power, expected) in [(0.65, 0.06), (0.85, 0.026), (0.95, 0.009)] {
        let now = after_lot_test(0.14, false, power, rules.false_alarm);
        assert!(
            (now - expected).abs() < 0.004,
            "after a clean test of power {power} {now:.3}, worked {expected}"
        );
    }
    assert!(after_lot_test(0.14, true, 0.85, 0.1) > 0.5, "a stained test is bad news");
}

/// Source: Bayes' theorem, worked by hand: odds before times power over false alarms, and for tests of three pieces or more
/// times 0.75 over 0.1 where a second piece turned, or 0.25 over 0.9 where only one did. The shares are assumed; what is
/// held is the theorem, and that more pieces that turn are never better news.
#[test]
fn pieces_that_turned_count_as_worked() {
    let rules = rules();
    let after = |before: f64, [turned, pieces]: [u32; 2], days: f64| {
        let (about, name, white) = (EvidenceSubject::Lot, String::new(), String::new());
        let [bad, good] =
            likelihoods(&Evidence { about, name, white, pieces, turned, days, blocker: None }, false, &rules);
        before * bad / (before * bad + (1.0 - before) * good)
    };
    let cases = [
        // Before, turned, pieces, after a look at weeks (power 0.95, false alarms 0.1).
        (0.05, 0, 6, 0.002_915),
        (0.05, 1, 1, 0.333_333),
        (0.05, 1, 6, 0.121_951),
        (0.05, 2, 6, 0.789_474),
        (0.05, 6, 6, 0.789_474),
        (0.35, 6, 6, 0.974_597),
    ];
    for (before, turned, pieces, expected) in cases {
        let now = after(before, [turned, pieces], 30.0);
        assert!((now - expected).abs() < 1e-5, "{before}, {turned} of {pieces}: {now:.6}, worked {expected}");
    }
    for pieces in 1..=12 {
        let after = |turned| after(0.1, [turned, pieces], 1.0);
        for turned in 0..pieces {
            assert!(after(turned) <= after(turned + 1), "{turned} of {pieces}");
        }
    }
}
