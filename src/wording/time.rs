//! Moments as people say them.

use super::{Language, Voice, en, es};

const DAY_MS: i64 = 86_400_000;

/// Year, month and day of a moment, ms since 1970, on a wall that is `ahead` minutes ahead of UTC.
///
/// Source: days to civil dates after Hinnant, "chrono-compatible low-level date algorithms" (2013), proleptic
/// Gregorian calendar.
#[must_use]
pub fn civil(at: i64, ahead: i32) -> (i64, u32, u32) {
    let days = at.saturating_add(i64::from(ahead) * 60_000).div_euclid(DAY_MS);
    let shifted = days + 719_468;
    let era = shifted.div_euclid(146_097);
    let of_era = shifted.rem_euclid(146_097);
    let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    // Months count from March, so that the leap day is the year's last.
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    let month = if month < 10 { month + 3 } else { month - 9 };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    (year, month as u32, day as u32)
}

impl Voice {
    /// A moment as "24 Nov, 9:01", with the year if it is another than that of `now`; both ms since 1970.
    #[must_use]
    pub fn moment(self, at: i64, now: i64, ahead: i32) -> String {
        let (year, month, day) = civil(at, ahead);
        let minutes = at.saturating_add(i64::from(ahead) * 60_000).rem_euclid(DAY_MS) / 60_000;
        let months = match self.language {
            Language::En => en::MONTHS,
            Language::Es => es::MONTHS,
        };
        let month = months.get(month as usize - 1).copied().unwrap_or_default();
        let year = if year == civil(now, ahead).0 { String::new() } else { format!(" {year}") };
        format!("{day} {month}{year}, {}:{:02}", minutes / 60, minutes % 60)
    }
}
