//! Several cases side by side.
//!
//! A [`Lanes<L>`] holds the same quantity for `L` cases: drift cases of a dryer, belt speeds of a window.
//! Every operation acts on all of them without a branch, so that the compiler can use the vector registers
//! (`#[inline(always)]`, because a function call in between would prevent it). One integration then serves
//! `L` cases at little more than the cost of two.
//!
//! `exp` and `ln` are written here, without branches, because the library's versions are function calls that
//! handle one lane at a time. A crate of vector types (`wide`) fixes the number of lanes per type; here it is
//! a parameter.

use std::ops::{Add, AddAssign, Div, Index, IndexMut, Mul, Neg, Sub, SubAssign};

/// The same quantity of `L` cases.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lanes<const L: usize>(pub [f64; L]);

impl<const L: usize> Lanes<L> {
    /// The same value in every lane.
    #[inline(always)]
    #[must_use]
    pub const fn splat(value: f64) -> Self {
        Self([value; L])
    }

    /// Zero in every lane.
    pub const ZERO: Self = Self::splat(0.0);

    /// A value from each lane's number.
    #[inline(always)]
    #[must_use]
    pub fn from_fn(mut make: impl FnMut(usize) -> f64) -> Self {
        let mut lanes = Self::ZERO;
        for (lane, value) in lanes.0.iter_mut().enumerate() {
            *value = make(lane);
        }
        lanes
    }

    /// `change` applied to each lane.
    #[inline(always)]
    #[must_use]
    pub fn map(mut self, change: impl Fn(f64) -> f64) -> Self {
        for value in &mut self.0 {
            *value = change(*value);
        }
        self
    }

    #[inline(always)]
    fn zip(mut self, other: Self, join: impl Fn(f64, f64) -> f64) -> Self {
        for (value, with) in self.0.iter_mut().zip(other.0) {
            *value = join(*value, with);
        }
        self
    }

    /// The smaller of two, lane by lane.
    #[inline(always)]
    #[must_use]
    pub fn min(self, other: Self) -> Self {
        self.zip(other, |a, b| if a < b { a } else { b })
    }

    /// The larger of two, lane by lane.
    #[inline(always)]
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        self.zip(other, |a, b| if a > b { a } else { b })
    }

    /// Held to `low` to `high`.
    #[inline(always)]
    #[must_use]
    pub fn clamp(self, low: f64, high: f64) -> Self {
        self.max(Self::splat(low)).min(Self::splat(high))
    }

    /// Absolute value.
    #[inline(always)]
    #[must_use]
    pub fn abs(self) -> Self {
        self.map(f64::abs)
    }

    /// Square root.
    #[inline(always)]
    #[must_use]
    pub fn sqrt(self) -> Self {
        self.map(f64::sqrt)
    }

    /// `1 / x`.
    #[inline(always)]
    #[must_use]
    pub fn recip(self) -> Self {
        Self::splat(1.0) / self
    }

    /// Natural exponential, relative error 3e-15 for -700 to 700; the argument is held to that range.
    #[inline(always)]
    #[must_use]
    pub fn exp(self) -> Self {
        self.map(exp)
    }

    /// Natural logarithm of a positive normal number, absolute error 3e-15.
    #[inline(always)]
    #[must_use]
    pub fn ln(self) -> Self {
        self.map(ln)
    }

    /// The lane of `yes` where `test` is true, of `no` where it is false.
    #[inline(always)]
    #[must_use]
    pub fn select(test: [bool; L], yes: Self, no: Self) -> Self {
        Self::from_fn(|lane| if test[lane] { yes.0[lane] } else { no.0[lane] })
    }

    /// The largest lane.
    #[inline(always)]
    #[must_use]
    pub fn largest(self) -> f64 {
        self.0.iter().copied().fold(f64::NEG_INFINITY, f64::max)
    }

    /// The larger of two, lane by lane; NaN where either is NaN.
    #[inline(always)]
    #[must_use]
    pub fn max_or_nan(self, other: Self) -> Self {
        self.zip(other, |a, b| if a >= b || a.is_nan() { a } else { b })
    }

    /// The largest lane; NaN if any lane is NaN.
    #[inline(always)]
    #[must_use]
    pub fn largest_or_nan(self) -> f64 {
        self.0.iter().copied().fold(f64::NEG_INFINITY, |a, b| if a >= b || a.is_nan() { a } else { b })
    }

    /// True if every lane is finite.
    #[must_use]
    pub fn is_finite(&self) -> bool {
        self.0.iter().all(|lane| lane.is_finite())
    }
}

/// `e^x` without a branch: `x = k ln 2 + r` with `|r| <= ln 2 / 2`, Taylor series of `e^r`, `2^k` by its
/// bits.
#[inline(always)]
fn exp(x: f64) -> f64 {
    // 1.5 * 2^52: adding it leaves the rounded integer in the low bits of the sum.
    const SHIFT: f64 = 6_755_399_441_055_744.0;
    const LN2_HIGH: f64 = 0.693_147_180_369_123_8;
    const LN2_LOW: f64 = 1.908_214_929_270_587_7e-10;
    let x = x.clamp(-700.0, 700.0);
    let shifted = x * std::f64::consts::LOG2_E + SHIFT;
    let k = shifted - SHIFT;
    let r = (x - k * LN2_HIGH) - k * LN2_LOW;
    // Estrin's scheme: pairs, then pairs of pairs, so that few operations depend on each other.
    let (r2, r4, r8) = (r * r, r * r * (r * r), r * r * (r * r) * (r * r * (r * r)));
    let low = (1.0 + r) + (1.0 / 2.0 + r * (1.0 / 6.0)) * r2;
    let middle = (1.0 / 24.0 + r * (1.0 / 120.0)) + (1.0 / 720.0 + r * (1.0 / 5_040.0)) * r2;
    let high = (1.0 / 40_320.0 + r * (1.0 / 362_880.0)) + (1.0 / 3_628_800.0 + r * (1.0 / 39_916_800.0)) * r2;
    let sum = (low + middle * r4) + (high + r4 * (1.0 / 479_001_600.0)) * r8;
    let power = f64::from_bits((shifted.to_bits() << 52).wrapping_add(1023 << 52));
    sum * power
}

/// `ln x` without a branch on the value: `x = m 2^k`, `ln m = 2 artanh((m - 1) / (m + 1))`.
#[inline(always)]
fn ln(x: f64) -> f64 {
    // Subtracting the bits of sqrt(1/2) puts the mantissa into sqrt(1/2) .. sqrt(2).
    const ROOT_HALF: u64 = 0x3FE6_A09E_667F_3BCD;
    let shifted = x.to_bits().wrapping_sub(ROOT_HALF);
    let k = (shifted as i64) >> 52;
    let m = f64::from_bits(x.to_bits().wrapping_sub((k as u64) << 52));
    let s = (m - 1.0) / (m + 1.0);
    let s2 = s * s;
    let (s4, s8) = (s2 * s2, s2 * s2 * (s2 * s2));
    let low = (1.0 + s2 * (1.0 / 3.0)) + (1.0 / 5.0 + s2 * (1.0 / 7.0)) * s4;
    let middle = (1.0 / 9.0 + s2 * (1.0 / 11.0)) + (1.0 / 13.0 + s2 * (1.0 / 15.0)) * s4;
    let high = (1.0 / 17.0 + s2 * (1.0 / 19.0)) + s4 * (1.0 / 21.0);
    let sum = low + (middle + high * s8) * s8;
    2.0 * s * sum + k as f64 * std::f64::consts::LN_2
}

impl<const L: usize> Index<usize> for Lanes<L> {
    type Output = f64;
    #[inline(always)]
    fn index(&self, lane: usize) -> &f64 {
        &self.0[lane]
    }
}

impl<const L: usize> IndexMut<usize> for Lanes<L> {
    #[inline(always)]
    fn index_mut(&mut self, lane: usize) -> &mut f64 {
        &mut self.0[lane]
    }
}

macro_rules! operator {
    ($trait:ident, $method:ident) => {
        impl<const L: usize> $trait for Lanes<L> {
            type Output = Self;
            #[inline(always)]
            fn $method(self, other: Self) -> Self {
                self.zip(other, |a, b| a.$method(b))
            }
        }
        impl<const L: usize> $trait<f64> for Lanes<L> {
            type Output = Self;
            #[inline(always)]
            fn $method(self, other: f64) -> Self {
                self.map(|a| a.$method(other))
            }
        }
    };
}
operator!(Add, add);
operator!(Sub, sub);
operator!(Mul, mul);
operator!(Div, div);

impl<const L: usize> Neg for Lanes<L> {
    type Output = Self;
    #[inline(always)]
    fn neg(self) -> Self {
        self.map(|a| -a)
    }
}

impl<const L: usize> AddAssign for Lanes<L> {
    #[inline(always)]
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl<const L: usize> SubAssign for Lanes<L> {
    #[inline(always)]
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

#[cfg(test)]
mod tests {
    use super::Lanes;

    /// Source: the standard library's `exp` and `ln` (the C library's, correct to the last bit or two).
    #[test]
    fn exponential_and_logarithm_agree_with_the_standard_library() {
        for step in -69_000..=69_000 {
            let x = f64::from(step) * 0.01 + 1e-3;
            let ours = Lanes::<1>::splat(x).exp()[0];
            assert!((ours / x.exp() - 1.0).abs() < 3e-14, "exp({x}) = {ours}");
            let positive = (x * 0.4).exp();
            let ours = Lanes::<1>::splat(positive).ln()[0];
            assert!((ours - x * 0.4).abs() < 1e-13 * (1.0 + (x * 0.4).abs()), "ln({positive}) = {ours}");
        }
    }
}
