//! Today, at the place that a question is about.

use std::time::SystemTime;

use chrono::{DateTime, Days, Duration, NaiveDate, NaiveTime, TimeZone as _, Utc};
use chrono_tz::Tz;

/// Seconds by which the sun is later for each degree to the west.
const SECONDS_A_DEGREE: f64 = 240.0;

/// This moment.
#[must_use]
pub fn now() -> DateTime<Utc> {
    DateTime::from(SystemTime::now())
}

/// What tells the time at a place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Clock {
    /// Its time zone, by its name in the IANA database.
    pub zone: Option<String>,
    /// Degrees, west negative: the sun's time, where no zone is known.
    pub longitude_deg: Option<f64>,
}

impl Clock {
    /// The date there.
    #[must_use]
    pub fn date(&self, now: DateTime<Utc>) -> NaiveDate {
        at_place(now, self.zone.as_deref(), self.longitude_deg)
    }

    /// The moment at which a date ends there.
    #[must_use]
    pub fn end_of(&self, date: NaiveDate) -> DateTime<Utc> {
        let midnight = date.checked_add_days(Days::new(1)).unwrap_or(date).and_time(NaiveTime::MIN);
        if let Some(zone) = self.zone.as_deref().and_then(|zone| zone.parse::<Tz>().ok()) {
            // Where clocks go forward at midnight the day begins an hour later.
            let found = [0, 1]
                .into_iter()
                .find_map(|hours| zone.from_local_datetime(&(midnight + Duration::hours(hours))).earliest());
            if let Some(found) = found {
                return found.with_timezone(&Utc);
            }
        }
        midnight.and_utc() - sun(self.longitude_deg)
    }

    /// The moment at which it is noon there on a date.
    #[must_use]
    pub fn noon_of(&self, date: NaiveDate) -> DateTime<Utc> {
        let noon = date.and_time(NaiveTime::MIN) + Duration::hours(12);
        let zone = self.zone.as_deref().and_then(|zone| zone.parse::<Tz>().ok());
        let found = zone.and_then(|zone| zone.from_local_datetime(&noon).earliest());
        found.map_or_else(|| noon.and_utc() - sun(self.longitude_deg), |found| found.with_timezone(&Utc))
    }

    /// Whole seconds for which what holds until the end of a date may still be kept; none once it has ended there.
    #[must_use]
    pub fn seconds_left(&self, date: NaiveDate, now: DateTime<Utc>) -> Option<u64> {
        u64::try_from((self.end_of(date) - now).num_seconds()).ok().filter(|seconds| *seconds > 0)
    }
}

/// By how much the sun's time runs ahead of UTC.
fn sun(longitude_deg: Option<f64>) -> Duration {
    let ahead_s = longitude_deg.filter(|degrees| degrees.abs() <= 180.0).unwrap_or(0.0) * SECONDS_A_DEGREE;
    // At most half a day, so the conversion is exact enough.
    Duration::seconds(ahead_s.round() as i64)
}

/// The date at a place: by its zone, else by the sun at its longitude, else in UTC.
#[must_use]
pub fn at_place(now: DateTime<Utc>, zone: Option<&str>, longitude_deg: Option<f64>) -> NaiveDate {
    if let Some(zone) = zone.and_then(|zone| zone.parse::<Tz>().ok()) {
        return now.with_timezone(&zone).date_naive();
    }
    now.checked_add_signed(sun(longitude_deg)).unwrap_or(now).date_naive()
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

    #[test]
    fn a_date_ends_at_midnight_of_the_place() {
        let clock = |zone: &str| Clock { zone: Some(zone.to_owned()), longitude_deg: None };
        let date = |text: &str| text.parse::<NaiveDate>().expect("a date");
        let at = |text: &str| text.parse::<DateTime<Utc>>().expect("a moment");
        // Los Angeles is at UTC-7 in September (IANA time zone database).
        let west = clock("America/Los_Angeles");
        assert_eq!(west.end_of(date("2026-09-15")), at("2026-09-16T07:00:00Z"));
        // Chile's clocks go forward at midnight: 6 September 2026 begins at 1:00, UTC-3 (IANA).
        assert_eq!(clock("America/Santiago").end_of(date("2026-09-05")), at("2026-09-06T04:00:00Z"));
        let by_sun = Clock { zone: None, longitude_deg: Some(15.0) };
        assert_eq!(by_sun.end_of(date("2026-09-15")), at("2026-09-15T23:00:00Z"));
        assert_eq!(Clock::default().end_of(date("2026-09-15")), at("2026-09-16T00:00:00Z"));
        assert_eq!(west.noon_of(date("2026-09-15")), at("2026-09-15T19:00:00Z"));
        assert_eq!(by_sun.noon_of(date("2026-09-15")), at("2026-09-15T11:00:00Z"));
        assert_eq!(west.seconds_left(date("2026-09-15"), at("2026-09-16T06:59:30Z")), Some(30));
        assert_eq!(west.seconds_left(date("2026-09-15"), at("2026-09-16T07:00:00Z")), None);
    }
}
