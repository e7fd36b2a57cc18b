use serde::{Deserialize, Serialize};

/// A value with its spread: eight cases in ten lie between `low` and `high`.
///
/// ```
/// use whitehold::quantity::Band;
///
/// let seconds = Band { low: 20.0, likely: 25.0, high: 35.0 };
/// // A falling function turns the band over.
/// let per_minute = seconds.map(|seconds| 60.0 / seconds);
/// assert_eq!(per_minute, Band { low: 60.0 / 35.0, likely: 2.4, high: 3.0 });
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Band {
    /// One case in ten is lower.
    pub low: f64,
    /// The most likely value.
    pub likely: f64,
    /// One case in ten is higher.
    pub high: f64,
}

impl Band {
    /// A value known exactly.
    #[must_use]
    pub fn exact(value: f64) -> Self {
        Self { low: value, likely: value, high: value }
    }

    /// The smallest band that holds `likely` and every one of `cases`. Whether it covers eight cases in ten
    /// depends on how the caller chose them.
    #[must_use]
    pub fn around(likely: f64, cases: &[f64]) -> Self {
        let mut band = Self::exact(likely);
        for &case in cases {
            band.low = band.low.min(case);
            band.high = band.high.max(case);
        }
        band
    }

    /// The band of `change(value)`, for a `change` that only rises or only falls between `low` and `high`.
    #[must_use]
    pub fn map(self, change: impl Fn(f64) -> f64) -> Self {
        let (low, likely, high) = (change(self.low), change(self.likely), change(self.high));
        Self { low: low.min(high), likely, high: low.max(high) }
    }
}
