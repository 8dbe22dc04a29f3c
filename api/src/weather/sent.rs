//! The weather of a climate as it is written: read as the service reads a body, with every bad field named at once.

use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::question::pointer::{Trouble, TroubleKind};
use lammas_engine::question::said::{ClimateSaid, ForecastSaid};
use lammas_engine::scenario::with_weather;
use serde::{Deserialize, Serialize};

use super::kept::Weather;
use crate::problem::extractors::body::parsed;
use crate::problem::faults::Faults;
use crate::problem::kinds::{BODY_TOO_LARGE, INVALID_REQUEST};
use crate::problem::{Problem, pointer};
use crate::v1::question::climate::{ClimateDay, MOST_FORECAST, MOST_OBSERVED, check_wind};
use crate::v1::question::date::Instant;
use crate::v1::question::place;
use crate::v1::question::said::each;
use crate::v1::question::today::Clock;

/// The largest text that is read, in bytes: some six times what the most days take.
pub const MOST_BYTES: usize = 256 * 1024;

/// How deep lists and objects may stand inside each other.
const NESTING: usize = 8;

/// Observed and forecast days of one registered climate.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct WeatherSent {
    /// The registered climate.
    pub climate: String,
    /// The moment at which the forecast was issued, or the days were observed.
    pub issued: Instant,
    /// Days that were measured, oldest first, at most 400, none after the day of issue.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub observed: Option<Vec<ClimateDay>>,
    /// Days to come, in order, at most 16, none before the day of issue.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub forecast: Option<Vec<ClimateDay>>,
}

/// Reads and checks a text against the registered climates of a set.
///
/// # Errors
/// The problem that names every bad field.
pub fn read(text: &[u8], set: &Set) -> Result<Weather, Problem> {
    if text.len() > MOST_BYTES {
        return Err(Problem::new(BODY_TOO_LARGE, format!("expected at most {MOST_BYTES} bytes")));
    }
    parsed::<WeatherSent>(text, NESTING)?.checked(set)
}

impl WeatherSent {
    /// The same, checked against the climate that it is for.
    ///
    /// # Errors
    /// The problem that names every bad field.
    pub fn checked(self, set: &Set) -> Result<Weather, Problem> {
        let mut faults = Faults::default();
        faults.id("", "climate", &self.climate);
        self.check_lists(&mut faults);
        let Some(entry) = place::entry(&self.climate, set) else {
            let known = set.pack.climates.iter().map(|filed| filed.entry.id.value.as_str());
            let trouble = Trouble::unknown("/climate", "climate", &crate::problem::clipped(&self.climate), known);
            place::note(vec![trouble.of_kind(TroubleKind::UnknownClimate)], &mut faults);
            faults.or_problem(INVALID_REQUEST)?;
            return Err(Problem::broken("an unknown climate is no fault"));
        };
        let clock = Clock { zone: entry.zone.clone(), longitude_deg: entry.profile.longitude };
        let issued_on = clock.date(self.issued.0.to_utc());
        for (at, day) in self.observed.iter().flatten().enumerate() {
            let date = day.date.0;
            if date > issued_on {
                let place = pointer::below(&pointer::entry("/observed", at), "date");
                faults.add(place, format!("day `{date}` lies after the day of issue `{issued_on}`"));
            }
        }
        let days = ClimateSaid {
            observations: Some(self.observed.clone().map(each).unwrap_or_default()),
            forecast: self
                .forecast
                .clone()
                .filter(|days| !days.is_empty())
                .map(|days| ForecastSaid { issued: issued_on, days: each(days) }),
            ..ClimateSaid::default()
        };
        let mut registered = entry.profile.clone();
        registered.forecast = None;
        if let Err(outside) = Day::supported(issued_on) {
            faults.add_if_new(None, "/issued".to_owned(), outside.to_string());
        }
        let profile = match place::profile_of(&with_weather(&registered, &days)) {
            Ok(profile) => Some(profile),
            Err(troubles) => {
                place::note(troubles.into_iter().map(here).collect(), &mut faults);
                None
            }
        };
        faults.or_problem(INVALID_REQUEST)?;
        let profile = profile.ok_or_else(|| Problem::broken("weather without a fault was not understood"))?;
        Weather::new(self, issued_on, profile)
    }

    fn check_lists(&self, faults: &mut Faults) {
        let (observed, forecast) =
            (self.observed.as_deref().unwrap_or_default(), self.forecast.as_deref().unwrap_or_default());
        faults.at_most("", "observed", observed.len(), MOST_OBSERVED);
        faults.at_most("", "forecast", forecast.len(), MOST_FORECAST);
        check_wind(observed, "/observed", faults);
        check_wind(forecast, "/forecast", faults);
        if observed.is_empty() && forecast.is_empty() {
            faults.add("", "expected days in `observed` or `forecast`, found none");
        }
    }
}

/// A place of a question's climate as this text calls it.
fn here(mut trouble: Trouble) -> Trouble {
    for (theirs, ours) in [
        ("/climate/observations", "/observed"),
        ("/climate/forecast/days", "/forecast"),
        ("/climate/forecast/issued", "/issued"),
    ] {
        if let Some(rest) = trouble.pointer.strip_prefix(theirs) {
            trouble.pointer = format!("{ours}{rest}");
            break;
        }
    }
    trouble
}

#[cfg(test)]
mod tests;
