//! Numerics that know no trade.
//!
//! Hands out [`Lanes`] (several cases computed side by side), [`march`](march::march) (a stiff initial-value
//! problem whose Jacobian is tridiagonal with a narrow border), [`normal`] (the normal distribution) and
//! [`grid`] (smooth values between the points of a table). Never knows what a number means.

pub mod grid;
mod lanes;
pub mod march;
pub mod normal;

pub use lanes::Lanes;
