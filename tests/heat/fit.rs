//! Least squares finds what statisticians certified.

use whitehold::numerics::fit::least_squares;

/// Source: NIST Statistical Reference Datasets, nonlinear regression, Misra1a (dental research, monomolecular
/// adsorption): 14 observations, `y = b1 (1 - exp(-b2 x))`; certified b1, b2, their standard deviations, residual sum of
/// squares. From memory, and found again with SciPy 1.17.1 `least_squares`.
#[test]
fn a_certified_data_set() {
    let data = [
        (77.6, 10.07),
        (114.9, 14.73),
        (141.1, 17.94),
        (190.8, 23.93),
        (239.9, 29.61),
        (289.0, 35.18),
        (332.8, 40.02),
        (378.4, 44.82),
        (434.8, 50.76),
        (477.3, 55.05),
        (536.8, 61.01),
        (593.1, 66.40),
        (689.1, 75.47),
        (760.0, 81.78),
    ];
    for start in [[500.0, 1e-4], [250.0, 5e-4]] {
        let fit = least_squares(start, |&[b1, b2]| {
            let row = |&(x, y): &(f64, f64)| {
                let decay = (-b2 * x).exp();
                (b1 * (1.0 - decay) - y, [1.0 - decay, b1 * x * decay])
            };
            Ok::<_, ()>(data.iter().map(row).collect())
        })
        .unwrap();
        let variance = fit.squares / 12.0;
        let rows = [
            ("b1", fit.at[0], 238.942_129_18),
            ("b2", fit.at[1], 5.501_564_318_1e-4),
            ("sd of b1", (fit.covariance[0][0] * variance).sqrt(), 2.707_007_524_1),
            ("sd of b2", (fit.covariance[1][1] * variance).sqrt(), 7.266_868_843_6e-6),
            ("squares", fit.squares, 0.124_551_388_94),
        ];
        for (what, found, certified) in rows {
            assert!((found / certified - 1.0).abs() < 1e-6, "{what}: {found} for {certified}");
        }
    }
}

/// What cannot be told stays unknown: two unknowns that act as one have no covariance.
#[test]
fn what_cannot_be_told_apart() {
    let fit = least_squares([0.0, 0.0], |&[a, b]| Ok::<_, ()>(vec![(a + b - 3.0, [1.0, 1.0])])).unwrap();
    assert!((fit.at[0] + fit.at[1] - 3.0).abs() < 1e-6, "{:?}", fit.at);
    assert!(fit.covariance[0][0] > 1e6, "{:?}", fit.covariance);
}

/// An error of the residuals at the start comes out; later ones only shorten the step.
#[test]
fn errors_of_the_residuals() {
    assert_eq!(least_squares::<1, &str>([0.0], |_| Err("no")).unwrap_err(), "no");
    let fit = least_squares::<1, &str>([1.0], |&[x]| {
        if x > 0.0 { Ok(vec![(x.ln() - 1.0, [1.0 / x])]) } else { Err("no logarithm") }
    });
    assert!((fit.unwrap().at[0] - std::f64::consts::E).abs() < 1e-8);
}
