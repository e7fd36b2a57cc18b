//! Moments as people say them.

use super::{Language, Voice, en, es};
use crate::quantity::Day;

const DAY_MS: i64 = 86_400_000;

/// Year, month and day of a moment, ms since 1970, on a wall that is `ahead` minutes ahead of UTC.
#[must_use]
pub fn civil(at: i64, ahead: i32) -> (i64, u32, u32) {
    on(at, ahead).civil()
}

/// The day of a moment, likewise.
#[must_use]
pub fn on(at: i64, ahead: i32) -> Day {
    Day::number(at.saturating_add(i64::from(ahead) * 60_000).div_euclid(DAY_MS))
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
