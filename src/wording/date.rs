//! Days and times of day as people write them.

use super::Voice;
use super::language::in_language;
use crate::quantity::Day;

const DAY_MS: i64 = 86_400_000;

/// Year, month and day of the time `at` (ms since 1970) in a zone that is `ahead` minutes ahead of UTC.
#[must_use]
pub fn civil(at: i64, ahead: i32) -> (i64, u32, u32) {
    on(at, ahead).civil()
}

/// The day of the time `at` (ms since 1970) in a zone that is `ahead` minutes ahead of UTC.
#[must_use]
pub fn on(at: i64, ahead: i32) -> Day {
    Day::number(at.saturating_add(i64::from(ahead) * 60_000).div_euclid(DAY_MS))
}

impl Voice {
    /// The time `at` as "24 Nov, 9:01", with the year if it differs from that of `now`; both in ms since 1970.
    #[must_use]
    pub fn moment(self, at: i64, now: i64, ahead: i32) -> String {
        let (year, month, day) = civil(at, ahead);
        let minutes = at.saturating_add(i64::from(ahead) * 60_000).rem_euclid(DAY_MS) / 60_000;
        let months = in_language!(self.language, date::MONTHS);
        let month = months.get(month as usize - 1).copied().unwrap_or_default();
        let year = if year == civil(now, ahead).0 { String::new() } else { format!(" {year}") };
        format!("{day} {month}{year}, {}:{:02}", minutes / 60, minutes % 60)
    }

    /// The day `2026-12-04` as "Fri 4 Dec"; any other text unchanged.
    #[must_use]
    pub fn day(self, iso: &str) -> String {
        let mut parts = iso.split('-').map(str::parse::<usize>);
        let (Some(Ok(year)), Some(Ok(month)), Some(Ok(day))) = (parts.next(), parts.next(), parts.next())
        else {
            return iso.into();
        };
        if !(1..=12).contains(&month) || !(1..=31).contains(&day) || !(1..=9999).contains(&year) {
            return iso.into();
        }
        // Day of the week after Sakamoto (1992): January and February count as months of the year before.
        let shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1];
        let counted = year - usize::from(month < 3);
        let weekday = (counted + counted / 4 - counted / 100 + counted / 400 + shift + day) % 7;
        let days = in_language!(self.language, date::DAYS);
        let months = in_language!(self.language, date::MONTHS);
        format!("{} {day} {}", days[weekday], months[month - 1])
    }
}
