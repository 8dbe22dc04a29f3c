//! Weather that has been read and checked.

use chrono::{DateTime, NaiveDate, Utc};
use lammas_agronomy::profile::Profile;
use lammas_engine::question::registered_weather::{RegisteredWeather, WeatherSpan, WeatherState};
use lammas_engine::version::hash;

use super::sent::WeatherSent;
use crate::problem::Problem;
use crate::v1::question::climate::ClimateDay;
use crate::v1::question::date::Instant;

/// The weather of a registered climate, checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Weather {
    /// The climate, by its id.
    pub climate: String,
    /// Hash of its content, in canonical form: neither blanks nor the offset of the moment count.
    pub sha256: String,
    /// The moment at which it was issued.
    pub issued: DateTime<Utc>,
    /// The date at the place at that moment.
    pub issued_on: NaiveDate,
    /// The days that were observed.
    pub observed: Option<WeatherSpan>,
    /// The days that were forecast.
    pub forecast: Option<WeatherSpan>,
    /// The registered climate with these days.
    pub profile: Profile,
    /// As it is written into a file.
    pub text: String,
}

impl Weather {
    /// What was sent, once it has been checked; `profile` is the registered climate with its days.
    ///
    /// # Errors
    /// When it can't be written as JSON: the service broke.
    pub(super) fn new(mut sent: WeatherSent, issued_on: NaiveDate, profile: Profile) -> Result<Self, Problem> {
        let issued = sent.issued.0.to_utc();
        sent.issued = Instant(issued.fixed_offset());
        for list in [&mut sent.observed, &mut sent.forecast] {
            *list = list.take().filter(|days| !days.is_empty());
        }
        let value = serde_json::to_value(&sent).map_err(Problem::broken)?;
        let mut text = serde_json::to_string(&sent).map_err(Problem::broken)?;
        text.push('\n');
        Ok(Self {
            sha256: hash::of_value(&value),
            issued,
            issued_on,
            observed: span(sent.observed.as_deref()),
            forecast: span(sent.forecast.as_deref()),
            climate: sent.climate,
            profile,
            text,
        })
    }

    /// What of it stands beside a climate, when this becomes of it.
    #[must_use]
    pub fn beside(&self, state: WeatherState) -> RegisteredWeather {
        RegisteredWeather {
            sha256: self.sha256.clone(),
            issued: self.issued,
            issued_on: self.issued_on,
            observed: self.observed,
            forecast: self.forecast,
            state,
        }
    }
}

fn span(days: Option<&[ClimateDay]>) -> Option<WeatherSpan> {
    let days = days?;
    Some(WeatherSpan { from: days.first()?.date.0, to: days.last()?.date.0, days: days.len() })
}
