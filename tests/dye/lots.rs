//! Lots of two sources of dye: their share over an amount and their quantiles.

use proptest::prelude::*;
use whitehold::migration::MOST_SEEN;
use whitehold::plan::LotDye;

fn lots(heat: f64, loose: f64, heat_spread: f64, loose_spread: f64) -> LotDye {
    LotDye { heat, loose, heat_spread, loose_spread, seen: [None; MOST_SEEN] }
}

/// Source: SciPy 1.17, `scipy.integrate.quad` over both normal variables to 1e-10; mg/m².
#[test]
fn shares_over_an_amount() {
    let rows = [
        (0.7, 2.0, 1.43, 0.75, 5.0, 0.284124),
        (0.7, 2.0, 1.43, 0.75, 20.0, 0.014477),
        (2.5, 5.0, 1.43, 0.75, 30.0, 0.073565),
        (2.5, 5.0, 1.43, 0.75, 3.0, 0.942626),
        (1.0, 0.01, 1.4, 0.7, 1.0, 0.503679),
        (0.01, 1.0, 1.4, 0.7, 1.0, 0.515762),
        (1.0, 1.0, 0.5, 0.5, 0.2, 1.000000),
        (20.0, 20.0, 1.4, 0.7, 200.0, 0.063225),
    ];
    for (heat, loose, heat_spread, loose_spread, critical, expected) in rows {
        let found = lots(heat, loose, heat_spread, loose_spread).share_over(critical);
        assert!((found - expected).abs() < 4e-5, "{heat} {loose} over {critical}: {found} for {expected}");
    }
}

proptest! {
    /// More dye or less that a print can take never turns fewer lots; a share is a share.
    #[test]
    fn more_dye_turns_more_lots(
        heat in 1e-3..1e2_f64, loose in 1e-3..1e2_f64, heat_spread in 0.3..2.0_f64, loose_spread in 0.3..2.0_f64,
        critical in 1e-3..1e3_f64, times in 1.05..5.0_f64,
    ) {
        let of = |heat, loose, critical| lots(heat, loose, heat_spread, loose_spread).share_over(critical);
        let here = of(heat, loose, critical);
        prop_assert!((0.0..=1.0).contains(&here));
        prop_assert!(of(heat * times, loose, critical) >= here - 8e-5);
        prop_assert!(of(heat, loose * times, critical) >= here - 8e-5);
        prop_assert!(of(heat, loose, critical * times) <= here + 8e-5);
    }

    /// The lot at `z` is the one that a normal variable's share over `z` of all lots exceed.
    #[test]
    fn a_lot_stands_where_its_share_says(
        heat in 1e-2..1e2_f64, loose in 1e-2..1e2_f64, heat_spread in 0.5..2.0_f64, loose_spread in 0.4..1.2_f64,
        z in -2.3..2.6_f64,
    ) {
        let lots = lots(heat, loose, heat_spread, loose_spread);
        let share = lots.share_over(lots.at(z));
        let expected = whitehold::numerics::normal::cumulative(-z);
        prop_assert!((share - expected).abs() < 2e-4, "{share} for {expected}");
        prop_assert!(lots.at(z) < lots.at(z + 0.1));
    }
}
