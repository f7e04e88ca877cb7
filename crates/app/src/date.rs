//! Today, for the title block of a sheet. The system tells the time in UTC alone, and the date says so.

use std::time::{SystemTime, UNIX_EPOCH};

/// Today's date: `2026-03-14 UTC`; empty where the system's clock is before 1970.
#[must_use]
pub fn today() -> String {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).ok();
    since.map_or_else(String::new, |since| format!("{} UTC", date(since.as_secs() / 86_400)))
}

/// The date so many days after the first of 1970, by the Gregorian calendar: years counted from March, so that the leap
/// day is a year's last, in cycles of 400 years or 146 097 days.
fn date(days: u64) -> String {
    // From the first of March of the year 0.
    let days = days + 719_468;
    let (cycle, day) = (days / 146_097, days % 146_097);
    let year = (day - day / 1460 + day / 36_524 - day / 146_096) / 365;
    let of_year = day - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let of_month = of_year - (153 * month + 2) / 5 + 1;
    let (month, next) = if month < 10 { (month + 3, 0) } else { (month - 9, 1) };
    format!("{:04}-{month:02}-{of_month:02}", cycle * 400 + year + next)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_dates_of_the_calendar() {
        // Counted off a printed calendar: 1970 to 1999 are 30 years with 7 leap days, 2000 is one.
        for (days, shown) in [
            (0, "1970-01-01"),
            (58, "1970-02-28"),
            (59, "1970-03-01"),
            (30 * 365 + 7, "2000-01-01"),
            (30 * 365 + 7 + 31 + 28, "2000-02-29"),
            (30 * 365 + 7 + 366, "2001-01-01"),
        ] {
            assert_eq!(date(days), shown);
        }
        assert!(today().ends_with(" UTC"));
    }

    #[test]
    fn each_day_is_the_one_after_the_last() {
        // 200 years by the plain rule: every fourth year is a leap year, but of the hundreds only every fourth.
        let (mut year, mut month, mut day) = (1970, 1, 1);
        for days in 0..73_000 {
            assert_eq!(date(days), format!("{year:04}-{month:02}-{day:02}"));
            let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
            let long = match month {
                2 => 28 + i32::from(leap),
                4 | 6 | 9 | 11 => 30,
                _ => 31,
            };
            day += 1;
            if day > long {
                (day, month) = (1, month + 1);
            }
            if month > 12 {
                (month, year) = (1, year + 1);
            }
        }
    }
}
