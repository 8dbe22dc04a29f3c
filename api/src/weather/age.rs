//! Whether weather counts for a question: it may be 36 hours old at the moment that is asked about.
//!
//! Where no date is said, that moment is now. Where one is said it is noon at the place on that day, whatever the clock
//! shows: the same question on the same weather has the same bytes whenever it is asked. Weather issued later on the day
//! asked about counts on that day too.

use chrono::{DateTime, Duration, NaiveDate, Utc};
use lammas_engine::question::Climate;
use lammas_engine::question::registered_weather::WeatherState;

use super::kept::Weather;
use crate::v1::question::today::Clock;

/// Weather counts for so long after its issue.
const LASTS: Duration = Duration::hours(36);

/// The day that is asked about, and the moment against which the age of weather is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    /// The day at the place.
    pub day: NaiveDate,
    /// Now, or noon of the day.
    pub moment: DateTime<Utc>,
}

impl Asked {
    /// What is asked about by a question with this date, or without one, now.
    #[must_use]
    pub fn of(date: Option<NaiveDate>, clock: &Clock, now: DateTime<Utc>) -> Self {
        match date {
            Some(day) => Self { day, moment: clock.noon_of(day) },
            None => Self { day: clock.date(now), moment: now },
        }
    }
}

/// What becomes of weather.
#[must_use]
pub fn state(weather: &Weather, asked: Asked) -> WeatherState {
    if weather.issued_on > asked.day {
        WeatherState::IssuedLater
    } else if asked.moment > counts_until(weather.issued) {
        WeatherState::TooOld
    } else {
        WeatherState::Used
    }
}

/// The last moment for which weather of this issue counts.
#[must_use]
pub fn counts_until(issued: DateTime<Utc>) -> DateTime<Utc> {
    issued.checked_add_signed(LASTS).unwrap_or(issued)
}

/// Whole seconds for which an answer that used weather of this issue may still be kept; none where the weather has run
/// out: then the answer is about a day said by the caller, and stays as it is.
#[must_use]
pub fn seconds_left(issued: DateTime<Utc>, now: DateTime<Utc>) -> Option<u64> {
    u64::try_from((counts_until(issued) - now).num_seconds()).ok().filter(|seconds| *seconds > 0)
}

/// The same for an answer about a climate; none where no kept weather was used.
pub(crate) fn seconds_kept(climate: &Climate, now: DateTime<Utc>) -> Option<u64> {
    let weather = climate.weather.as_ref().filter(|weather| weather.state == WeatherState::Used)?;
    seconds_left(weather.issued, now)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sets::embedded;
    use crate::weather::sent::read;

    fn moment(text: &str) -> DateTime<Utc> {
        text.parse().expect("a moment")
    }

    fn valley() -> Clock {
        Clock { zone: Some("America/Los_Angeles".to_owned()), longitude_deg: None }
    }

    /// Issued at 18:00 on 15 September at the place (UTC-7, IANA time zone database).
    fn evening() -> Weather {
        let text = r#"{"climate": "hot-dry-valley", "issued": "2026-09-15T18:00:00-07:00",
            "forecast": [{"date": "2026-09-16", "tmin_c": 20, "tmax_c": 41}]}"#;
        read(text.as_bytes(), &embedded::set().expect("it loads")).expect("weather")
    }

    #[test]
    fn a_day_that_is_said_is_judged_by_its_noon_whatever_the_clock_shows() {
        let weather = evening();
        for now in ["2026-09-15T00:00:00Z", "2031-01-01T00:00:00Z"] {
            let at = |day: &str| {
                let day = day.parse().expect("a date");
                state(&weather, Asked::of(Some(day), &valley(), moment(now)))
            };
            assert_eq!(at("2026-09-14"), WeatherState::IssuedLater);
            assert_eq!(at("2026-09-15"), WeatherState::Used, "later on the same day");
            assert_eq!(at("2026-09-16"), WeatherState::Used, "18 hours at noon");
            assert_eq!(at("2026-09-17"), WeatherState::TooOld, "42 hours at noon");
        }
    }

    #[test]
    fn without_a_day_the_clock_decides_to_the_second() {
        let weather = evening();
        let at = |now: &str| state(&weather, Asked::of(None, &valley(), moment(now)));
        assert_eq!(at("2026-09-16T01:00:00Z"), WeatherState::Used);
        assert_eq!(at("2026-09-17T13:00:00Z"), WeatherState::Used, "36 hours to the second");
        assert_eq!(at("2026-09-17T13:00:01Z"), WeatherState::TooOld);
        assert_eq!(at("2026-09-15T06:00:00Z"), WeatherState::IssuedLater, "it is still the 14th there");
        assert_eq!(seconds_left(weather.issued, moment("2026-09-17T12:59:00Z")), Some(60));
        assert_eq!(seconds_left(weather.issued, moment("2026-09-17T13:00:00Z")), None);
    }
}
