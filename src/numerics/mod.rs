//! Numerics that know no trade.
