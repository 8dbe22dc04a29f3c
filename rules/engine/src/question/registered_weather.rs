//! Weather that was kept for a registered climate, and what becomes of it in a question.

use chrono::{DateTime, NaiveDate, Utc};

/// Weather kept for a registered climate. Where it is used its days stand in the profile; where not, none of them does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RegisteredWeather {
    /// Hash of its content.
    pub sha256: String,
    /// The moment at which it was issued.
    pub issued: DateTime<Utc>,
    /// The date at the place at that moment.
    pub issued_on: NaiveDate,
    /// Its observed days.
    pub observed: Option<WeatherSpan>,
    /// Its days to come, as of its issue.
    pub forecast: Option<WeatherSpan>,
    /// What becomes of it.
    pub state: WeatherState,
}

/// Days from one to another; some between them may be missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeatherSpan {
    /// The first.
    pub from: NaiveDate,
    /// The last.
    pub to: NaiveDate,
    /// How many.
    pub days: usize,
}

/// What becomes of weather when a day is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WeatherState {
    /// It is used.
    Used,
    /// It counts as not there: issued over 36 hours before the moment asked about.
    TooOld,
    /// It counts as not there: issued after the day asked about.
    IssuedLater,
}
