use super::units::{celsius, kelvin};
use serde::{Deserialize, Serialize};
use std::ops::{Add, Sub};

/// A part of a whole: 0 is nothing, 1 is all of it.
///
/// A number that a person reads in percent is a [`Percent`]. The two do not mix without a conversion:
///
/// ```
/// use whitehold::quantity::{Percent, Share};
///
/// let fused = Share(0.925);
/// assert_eq!(fused.percent(), Percent(92.5));
/// assert_eq!(Percent(65.0).share(), Share(0.65));
/// ```
///
/// ```compile_fail,E0308
/// use whitehold::quantity::{Percent, Share};
///
/// let needed = Share(0.9);
/// assert!(Percent(1.0) < needed); // 1 % is not compared with 0.9 of the whole
/// ```
///
/// The type names the unit and does not enforce a range: a computed share may lie a rounding error outside 0
/// to 1, and a [`Bound`](super::Bound) checks what a person has typed. In JSON a share is the bare number.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Share(pub f64);

impl Share {
    /// The same part in percent.
    #[must_use]
    pub fn percent(self) -> Percent {
        Percent(self.0 * 100.0)
    }

    /// Held to 0 to 1; not a number stays not a number.
    #[must_use]
    pub fn clamped(self) -> Self {
        Self(self.0.clamp(0.0, 1.0))
    }
}

/// A part of a whole in percent: 100 is all of it. See [`Share`] for how the two are kept apart.
///
/// In JSON a percentage is the bare number, in a field whose name ends in `_percent`.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Percent(pub f64);

impl Percent {
    /// The same part as a share of 1.
    #[must_use]
    pub fn share(self) -> Share {
        Share(self.0 / 100.0)
    }
}

/// A CIEDE2000 colour difference (ΔE00): about 1 is the smallest that a trained eye sees.
///
/// Differences are compared, never added: two steps of 1 do not lie 2 apart.
///
/// ```
/// use whitehold::quantity::DeltaE;
///
/// assert!(DeltaE(2.6) > DeltaE(1.0));
/// ```
///
/// ```compile_fail,E0369
/// use whitehold::quantity::DeltaE;
///
/// let both = DeltaE(1.0) + DeltaE(1.0);
/// ```
///
/// ```compile_fail,E0308
/// use whitehold::quantity::{DeltaE, Share};
///
/// let pass = DeltaE(0.4) < Share(0.5);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct DeltaE(pub f64);

/// A temperature as the shop reads it, °C.
///
/// A bare `f64` temperature inside the physics is in kelvin; this type marks the edge, where dials and
/// records are in °C.
///
/// ```
/// use whitehold::quantity::{Celsius, TemperatureDifference};
///
/// let set = Celsius(160.0);
/// assert_eq!(set.kelvin(), 433.15);
/// assert_eq!(set - Celsius(155.0), TemperatureDifference(5.0));
/// assert_eq!(set + TemperatureDifference(5.0), Celsius(165.0));
/// ```
///
/// Two temperatures have no sum:
///
/// ```compile_fail,E0308
/// use whitehold::quantity::Celsius;
///
/// let warmer = Celsius(160.0) + Celsius(5.0);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Celsius(pub f64);

impl Celsius {
    /// From a temperature in kelvin.
    #[must_use]
    pub const fn from_kelvin(temperature: f64) -> Self {
        Self(celsius(temperature))
    }

    /// The same temperature in kelvin.
    #[must_use]
    pub const fn kelvin(self) -> f64 {
        kelvin(self.0)
    }
}

/// How much warmer one thing is than another, K. See [`Celsius`].
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct TemperatureDifference(pub f64);

impl Sub for Celsius {
    type Output = TemperatureDifference;

    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}

impl Add<TemperatureDifference> for Celsius {
    type Output = Self;

    fn add(self, difference: TemperatureDifference) -> Self {
        Self(self.0 + difference.0)
    }
}

/// The speed of a belt as the shop reads it, m/min.
///
/// ```
/// use whitehold::quantity::MetresPerMinute;
///
/// assert_eq!(MetresPerMinute(3.0).metres_per_second(), 0.05);
/// assert_eq!(MetresPerMinute::from_metres_per_second(0.05), MetresPerMinute(3.0));
/// ```
///
/// It cannot be swapped with the set temperature beside it:
///
/// ```compile_fail,E0308
/// use whitehold::quantity::{Celsius, MetresPerMinute};
///
/// fn dial(set: Celsius, belt: MetresPerMinute) {}
/// dial(MetresPerMinute(3.0), Celsius(160.0));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct MetresPerMinute(pub f64);

impl MetresPerMinute {
    /// From a speed in m/s.
    #[must_use]
    pub const fn from_metres_per_second(speed: f64) -> Self {
        Self(speed * 60.0)
    }

    /// The same speed in m/s.
    #[must_use]
    pub const fn metres_per_second(self) -> f64 {
        self.0 / 60.0
    }
}
