use std::fmt;

/// A day of the proleptic Gregorian calendar, written as in ISO 8601: `2026-12-04`.
///
/// Reads no clock: the caller at the edge passes today's date in. Written by hand because the one file may
/// not exceed 900,000 bytes and all it needs is reading, printing and counting days; a calendar crate brings
/// time zones, clocks and formats with it.
///
/// ```
/// use whitehold::quantity::Day;
///
/// let printed = Day::read("2028-02-28").expect("a date");
/// assert_eq!(printed.plus(2).to_string(), "2028-03-01");
/// assert_eq!(printed.until(printed.plus(90)), 90);
/// assert_eq!(Day::read("2027-02-29"), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day {
    /// Days since 1 January 1970.
    number: i64,
}

impl Day {
    /// The day `number` days after 1 January 1970 (before it if negative), held within ±4,000,000 days, some
    /// ten thousand years.
    #[must_use]
    pub fn number(number: i64) -> Self {
        Self { number: number.clamp(-4_000_000, 4_000_000) }
    }

    /// Reads `2026-12-04`; `None` if the text is not an existing day.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.trim().splitn(3, '-').map(|part| part.parse::<u16>().ok());
        let (year, month, day) = (parts.next()??, parts.next()??, parts.next()??);
        if !(1..=12).contains(&month) || !(1..=31).contains(&day) {
            return None;
        }
        let found = Self { number: number_of(i64::from(year), i64::from(month), i64::from(day)) };
        // 30 February would come out as a day of March.
        (found.civil().2 == u32::from(day)).then_some(found)
    }

    /// Year, month and day.
    ///
    /// Source: Hinnant, "chrono-compatible low-level date algorithms" (2013). Years are counted from March,
    /// so that the leap day is the last of its year; 400 years make one era.
    #[must_use]
    pub fn civil(self) -> (i64, u32, u32) {
        let shifted = self.number + 719_468;
        let era = shifted.div_euclid(146_097);
        let of_era = shifted.rem_euclid(146_097);
        let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
        let month = (5 * of_year + 2) / 153;
        let day = of_year - (153 * month + 2) / 5 + 1;
        let month = if month < 10 { month + 3 } else { month - 9 };
        let year = year_of_era + era * 400 + i64::from(month <= 2);
        (year, month as u32, day as u32)
    }

    /// The day `days` later.
    #[must_use]
    pub fn plus(self, days: i64) -> Self {
        Self::number(self.number.saturating_add(days))
    }

    /// Days from this day to `later`; negative if `later` is before it.
    #[must_use]
    pub fn until(self, later: Self) -> i64 {
        later.number - self.number
    }
}

/// Days from 1 January 1970 to a calendar day: the inverse of [`Day::civil`], from the same source.
fn number_of(year: i64, month: i64, day: i64) -> i64 {
    let year = if month <= 2 { year - 1 } else { year };
    let era = year.div_euclid(400);
    let of_era = year.rem_euclid(400);
    let from_march = if month > 2 { month - 3 } else { month + 9 };
    let of_year = (153 * from_march + 2) / 5 + day - 1;
    era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719_468
}

impl fmt::Display for Day {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.civil();
        write!(to, "{year:04}-{month:02}-{day:02}")
    }
}
