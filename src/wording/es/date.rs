//! Days and months.

/// Days of the week from Sunday, abbreviated.
pub(in crate::wording) const DAYS: [&str; 7] = ["dom", "lun", "mar", "mié", "jue", "vie", "sáb"];
/// Months, abbreviated.
pub(in crate::wording) const MONTHS: [&str; 12] =
    ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];
