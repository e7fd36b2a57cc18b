//! The weights of the 10° observer under D65 at steps of 20 nm.

/// Weights of X, Y and Z at 400, 420 … 700 nm for the CIE 1964 10° observer under D65, on the scale Y = 100.
///
/// Source: CIE 015 observer and illuminant tables at 1 nm, brought to 20 nm by ASTM E2022, as computed by
/// colour-science 0.4.7 (`tristimulus_weighting_factors_ASTME2022`); the weights below 400 nm and above
/// 700 nm are added to the first and last row, as ASTM E308 does for instruments that end there.
pub(super) const D65_10_DEGREES: [[f64; 3]; 16] = [
    [0.33376, 0.03042, 1.46034],
    [3.13822, 0.31985, 14.97949],
    [6.70069, 1.10418, 34.46156],
    [6.05368, 2.60482, 35.12033],
    [1.73872, 4.96147, 15.98614],
    [0.07058, 8.68709, 4.03831],
    [2.18261, 13.84446, 1.03080],
    [6.80071, 17.32652, 0.22871],
    [12.17128, 17.15298, 0.00193],
    [16.46548, 14.15026, -0.00296],
    [17.22956, 10.11807, 0.0],
    [12.87219, 6.01189, 0.0],
    [6.24827, 2.59350, 0.0],
    [2.12622, 0.83153, 0.0],
    [0.54355, 0.21043, 0.0],
    [0.13555, 0.05254, 0.0],
];
