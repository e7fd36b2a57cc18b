//! Accepted ranges of every number in an order: checks, messages and input hints read the same line.

use crate::quantity::Bound;

const fn bound(field: &'static str, min: f64, max: f64, unit: &'static str) -> Bound {
    Bound { field, min, max, unit }
}
/// Areal weight of the cloth.
pub const AREAL_WEIGHT: Bound = crate::textile::AREAL_WEIGHT;
/// How far the garment stretches.
pub const STRETCH: Bound = bound("stretch_percent", 0.0, 300.0, "%");
/// Liquid water on the cloth beyond its regain.
pub const ADDED_WATER: Bound = bound("added_water_percent", 0.0, 100.0, "%");
/// Pieces of a garment.
pub const PIECES: Bound = bound("pieces", 1.0, 100_000.0, "");
/// Spare pieces.
pub const SPARES: Bound = bound("spares", 0.0, 100_000.0, "");
/// Worth of one printed piece.
pub const VALUE: Bound = bound("value_each", 0.0, 100_000.0, "");
/// Area of the print.
pub const AREA: Bound = bound("area_cm2", 1.0, 20_000.0, "cm²");
/// Share of that area that is printed.
pub const COVERAGE: Bound = bound("coverage_percent", 1.0, 100.0, "%");
/// Reducer in the white.
pub const REDUCER: Bound = bound("reducer_percent", 0.0, 30.0, "%");
/// Width by which the white extends beyond its blocker.
pub const OVERHANG: Bound = bound("overhang_mm", 0.0, 10.0, "mm");
/// Colours printed over the white. More than a carousel has heads: assumed.
pub const COLOURS_ON_TOP: Bound = bound("count", 0.0, 12.0, "");
/// Stretch the print must take.
pub const STRETCH_NEEDED: Bound = bound("stretch_needed_percent", 0.0, 300.0, "%");
/// Temperature of a later heat event.
pub const HEAT_AFTER: Bound = bound("temp_c", 30.0, 260.0, "°C");
/// Duration of a later heat event.
pub const HEAT_SECONDS: Bound = bound("seconds", 0.0, 600.0, "s");
/// Days from printing to the day that matters.
pub const LOOKED_AT: Bound = bound("looked_at_after_days", 0.0, 3650.0, "d");
/// Temperature of the store.
pub const STORAGE: Bound = bound("storage_c", -20.0, 70.0, "°C");
/// Grade of a test of the cloth.
pub const GRADE: Bound = bound("grade", 1.0, 5.0, "");
/// Temperature of a test of the cloth.
pub const TEST_HEAT: Bound = bound("temp_c", 20.0, 230.0, "°C");
/// Duration of a test of the cloth.
pub const TEST_SECONDS: Bound = bound("seconds", 1.0, 1e6, "s");
/// Hours of an oven test.
pub const OVEN_HOURS: Bound = bound("hours", 0.1, 2000.0, "h");
/// Temperature of an oven test.
pub const OVEN: Bound = bound("oven_c", 20.0, 120.0, "°C");
/// Days in a shipping container.
pub const CONTAINER: Bound = bound("container_days", 0.0, 365.0, "d");
/// Age of the wearer.
pub const AGE: Bound = bound("wearer_age_years", 0.0, 120.0, "years");
/// Humidity of the room.
pub const HUMIDITY: Bound = bound("humidity_percent", 0.0, 100.0, "%");
/// Share of the open mesh volume that is transferred to the cloth.
pub const TRANSFER: Bound = crate::ink::TRANSFER;
/// Set temperature that cannot be changed; the dryer's own range is narrower.
pub const DRYER_FIXED: Bound = Bound { field: "dryer_fixed", ..HEAT_AFTER };
/// Times the piece goes through the dryer for this print.
pub const PASSES: Bound = bound("passes", 1.0, 4.0, "");
