//! Accepted ranges of the numbers in a shop's own records: forms, tables and checks read the same line.

use crate::quantity::Bound;

/// Price of a kilogram, in the shop's money.
pub const PRICE: Bound = Bound { field: "price_per_kg", min: 0.0, max: 100_000.0, unit: "" };
/// Set temperature of a trial or a probe run; wider than that of any dryer of the library.
pub const SET: Bound = Bound { field: "set_c", min: 30.0, max: 300.0, unit: "°C" };
/// Belt speed of a trial or a probe run; wider than that of any dryer of the library.
pub const BELT: Bound = Bound { field: "belt_m_per_min", min: 0.05, max: 30.0, unit: "m/min" };
/// Pieces that turned.
pub const TURNED: Bound = Bound { field: "turned", min: 0.0, max: 100_000.0, unit: "" };
/// Colour difference; black to white is 100.
pub const DELTA_E: Bound = Bound { field: "delta_e", min: 0.0, max: 150.0, unit: "ΔE00" };
/// What is left in a tub or drum.
pub const LEFT: Bound = Bound { field: "left_kg", min: 0.0, max: 1000.0, unit: "kg" };
/// Film of white under or over a probe; 0 for bare cloth.
pub const FILM: Bound = Bound { field: "film_um", min: 0.0, max: 2000.0, unit: "µm" };
/// Film of blocker under that white.
pub const BLOCKER: Bound = Bound { field: "blocker_um", min: 0.0, max: 500.0, unit: "µm" };
/// Temperature that a tape or probe on the print read.
pub const READ: Bound = Bound { field: "read_c", min: 20.0, max: 350.0, unit: "°C" };
