//! The decimal separator, and units that have a name of their own in this language.

pub(in crate::wording) const DECIMAL: &str = ".";
pub(in crate::wording) const FEET_PER_MINUTE: &str = "ft/min";
pub(in crate::wording) const PER_INCH: &str = "/in";
pub(in crate::wording) const SQUARE_INCHES: &str = "in²";
pub(in crate::wording) const FEET: &str = "ft";
pub(in crate::wording) const DAYS: &str = "days";
