//! The decimal separator, and units that have a name of their own in this language.

pub(in crate::wording) const DECIMAL: &str = ",";
pub(in crate::wording) const FEET_PER_MINUTE: &str = "pies/min";
pub(in crate::wording) const PER_INCH: &str = "/pulg";
pub(in crate::wording) const SQUARE_INCHES: &str = "pulg²";
pub(in crate::wording) const FEET: &str = "pies";
pub(in crate::wording) const DAYS: &str = "días";
