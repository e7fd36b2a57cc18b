//! The normal distribution has its table values.

use proptest::prelude::*;
use whitehold::numerics::normal::{complementary_error, cumulative, quantile};

/// Source: Abramowitz & Stegun, table 26.1 (from memory, to the digits of SciPy 1.17.1 `norm.cdf`, which also gives
/// the tails below −5).
#[test]
fn chances_of_a_table() {
    let rows = [
        (0.0, 0.5, 1e-15),
        (0.5, 0.691_462_461_274_013, 1e-13),
        (1.0, 0.841_344_746_068_543, 1e-13),
        (1.5, 0.933_192_798_731_142, 1e-13),
        (2.0, 0.977_249_868_051_821, 1e-13),
        (3.0, 0.998_650_101_968_370, 1e-13),
        (4.0, 0.999_968_328_758_167, 1e-13),
        (5.0, 0.999_999_713_348_428, 1e-13),
        (-2.0, 0.022_750_131_948_179, 1e-13),
        (-6.0, 9.865_876_450_377e-10, 1e-20),
        (-10.0, 7.619_853_024_160e-24, 1e-34),
    ];
    for (z, expected, tolerance) in rows {
        let found = cumulative(z);
        assert!((found - expected).abs() < tolerance, "Φ({z}) = {found}, table {expected}");
    }
}

/// Source: Abramowitz & Stegun, table 7.1 (from memory, to the digits of Python 3.11 `math.erfc`). 2.5 is where the
/// series hands over to the continued fraction.
#[test]
fn complementary_errors_of_a_table() {
    let rows = [
        (0.0, 1.0),
        (0.5, 0.479_500_122_186_953),
        (1.0, 0.157_299_207_050_285),
        (2.0, 0.004_677_734_981_047),
        (2.499_999, 0.000_406_954_195_7),
        (2.5, 0.000_406_952_017_444_959),
        (4.0, 1.541_725_790_028e-8),
    ];
    for (x, expected) in rows {
        let found = complementary_error(x);
        assert!((found - expected).abs() < 1e-12, "erfc({x}) = {found}, table {expected}");
    }
}

/// Source: Abramowitz & Stegun, table 26.5 (from memory, to the digits of SciPy 1.17.1 `norm.ppf`).
#[test]
fn quantiles_of_a_table() {
    let rows = [
        (0.5, 0.0),
        (0.9, 1.281_551_565_544_6),
        (0.95, 1.644_853_626_951_472),
        (0.975, 1.959_963_984_540_054),
        (0.99, 2.326_347_874_040_841),
        (0.995, 2.575_829_303_548_9),
        (0.3, -0.524_400_512_708_041),
        (0.001, -3.090_232_306_167_813),
    ];
    for (chance, expected) in rows {
        let found = quantile(chance);
        assert!((found - expected).abs() < 1e-9, "quantile of {chance} = {found}, table {expected}");
    }
    assert!((quantile(0.0), quantile(1.0)) == (-8.0, 8.0), "held at the ends");
    assert!(cumulative(f64::NAN).is_nan());
}

proptest! {
    #[test]
    fn a_quantile_comes_back(z in -5.0..5.0) {
        prop_assert!((quantile(cumulative(z)) - z).abs() < 1e-7);
    }

    #[test]
    fn the_chance_rises(z in -9.0..9.0, step in 1e-3..1.0) {
        prop_assert!(cumulative(z + step) >= cumulative(z));
        prop_assert!((cumulative(z) + cumulative(-z) - 1.0).abs() < 1e-13);
    }
}
