//! Today, at the place that a question is about.

use std::time::SystemTime;

use chrono::{DateTime, Duration, NaiveDate, Utc};
use chrono_tz::Tz;

/// Seconds by which the sun is later for each degree to the west.
const SECONDS_A_DEGREE: f64 = 240.0;

/// This moment.
#[must_use]
pub fn now() -> DateTime<Utc> {
    DateTime::from(SystemTime::now())
}

/// The date at a place: by its zone, else by the sun at its longitude, else in UTC.
#[must_use]
pub fn at_place(now: DateTime<Utc>, zone: Option<&str>, longitude_deg: Option<f64>) -> NaiveDate {
    if let Some(zone) = zone.and_then(|zone| zone.parse::<Tz>().ok()) {
        return now.with_timezone(&zone).date_naive();
    }
    let shift = longitude_deg.filter(|degrees| degrees.abs() <= 180.0).unwrap_or(0.0) * SECONDS_A_DEGREE;
    // At most half a day, so the conversion is exact enough.
    now.checked_add_signed(Duration::seconds(shift.round() as i64)).unwrap_or(now).date_naive()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_date_is_that_of_the_place() {
        let late = "2026-09-15T23:30:00Z".parse().expect("a moment");
        let early = "2026-09-15T05:00:00Z".parse().expect("a moment");
        let date = |text: &str| text.parse::<NaiveDate>().expect("a date");
        // Los Angeles is at UTC-7 in September, Kathmandu at UTC+5:45 all year (IANA time zone database).
        assert_eq!(at_place(early, Some("America/Los_Angeles"), None), date("2026-09-14"));
        assert_eq!(at_place(late, Some("Asia/Kathmandu"), None), date("2026-09-16"));
        // 15 degrees are an hour of the sun.
        assert_eq!(at_place(late, None, Some(15.0)), date("2026-09-16"));
        assert_eq!(at_place(early, None, Some(-118.6)), date("2026-09-14"));
        assert_eq!(at_place(late, None, None), date("2026-09-15"));
        assert_eq!(at_place(late, Some("Nowhere/At_All"), None), date("2026-09-15"));
    }
}
