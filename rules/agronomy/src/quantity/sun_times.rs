//! Sunrise, sunset and day length by the clock, by name.

use chrono::DateTime;

use super::inputs::{Input, Kind, LATITUDE};
use super::value::shorten;
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::calendar::Day;
use crate::sun_times::{DayKind, RISE_AND_SET_DEG, SunTimes, sun_times};

const METHOD: &str = "sun's place, then the crossing of the altitude looked for between midnight and noon";
const SOURCE: &str =
    "NOAA solar calculator equations, after Meeus, Astronomical Algorithms (1998), chapters 25 and 28 (from memory)";
const ABOUT: &str = "for a level horizon; hills, height and weather move it by a minute or more";

const LONGITUDE: Input = Input::number("longitude", "deg", -180.0, 180.0, "longitude, west negative");
const DAY: Input = Input::new("date", Kind::Date, "the local solar day, 1900 to 2200");
const ALTITUDE: Input = Input::number(
    "altitude_of_centre",
    "deg",
    -18.0,
    10.0,
    "altitude of the sun's centre; -0.833 if not given, the visible edge; -6, -12 and -18 are the twilights",
)
.optional();
const PLACE_AND_DAY: &[Input] = &[LATITUDE, LONGITUDE, DAY, ALTITUDE];

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "sunrise_utc",
        title: "sunrise",
        inputs: PLACE_AND_DAY,
        unit: "UTC time",
        about: ABOUT,
        method: METHOD,
        source: SOURCE,
        reckon: |given| {
            let sun = sun_of_the_day(given)?;
            moment(sun.sunrise, sun.kind, "the sun is up already at midnight")
        },
    },
    Quantity {
        name: "sunset_utc",
        title: "sunset",
        inputs: PLACE_AND_DAY,
        unit: "UTC time",
        about: ABOUT,
        method: METHOD,
        source: SOURCE,
        reckon: |given| {
            let sun = sun_of_the_day(given)?;
            moment(sun.sunset, sun.kind, "the sun is still up at midnight")
        },
    },
    Quantity {
        name: "daylength_apparent_min",
        title: "day length from sunrise to sunset",
        inputs: PLACE_AND_DAY,
        unit: "min",
        about: "longer than the geometric day of daylength_fao_h by disc and refraction",
        method: METHOD,
        source: SOURCE,
        reckon: |given| {
            let sun = sun_of_the_day(given)?;
            let reckoned = Reckoned::from(sun.daylength_min());
            Ok(match sun.kind {
                DayKind::RisesAndSets => reckoned,
                DayKind::NoSunset => reckoned.note("polar day: the sun does not set"),
                DayKind::NoSunrise => reckoned.note("polar night: the sun does not rise"),
            })
        },
    },
    Quantity {
        name: "polar_state",
        title: "whether the sun rises and sets",
        inputs: PLACE_AND_DAY,
        unit: "state",
        about: "`rises and sets`, `no sunset` in the polar day, `no sunrise` in the polar night",
        method: METHOD,
        source: SOURCE,
        reckon: |given| Ok(Reckoned::text(words(sun_of_the_day(given)?.kind))),
    },
];

fn words(kind: DayKind) -> &'static str {
    match kind {
        DayKind::RisesAndSets => "rises and sets",
        DayKind::NoSunset => "no sunset",
        DayKind::NoSunrise => "no sunrise",
    }
}

/// 1 January 2000 as a day's number.
const DAY_OF_J2000: i32 = 730_120;
/// Noon UTC of 1 January 2000, in seconds of the Unix count.
const J2000_S: f64 = 946_728_000.0;

fn sun_of_the_day(given: &Given<'_>) -> Result<SunTimes, Unusable> {
    let day = Day::supported(given.date("date")?).map_err(|_| Unusable::Unread {
        field: "date",
        text: given.maybe_text("date").map(shorten).unwrap_or_default(),
        expected: "a date from 1900-01-01 to 2200-12-31".to_owned(),
    })?;
    let altitude_deg = given.maybe("altitude_of_centre").unwrap_or(RISE_AND_SET_DEG);
    let date_noon = f64::from(day.number() - DAY_OF_J2000);
    Ok(sun_times(given.number("latitude")?, given.number("longitude")?, date_noon, altitude_deg))
}

fn moment(days_from_j2000: Option<f64>, kind: DayKind, else_reason: &str) -> Result<Reckoned, Unusable> {
    let refuse = |reason: &str| Unusable::Contradiction {
        field: "latitude",
        other: "date",
        reason: format!("{reason}; ask polar_state or daylength_apparent_min"),
    };
    let Some(days) = days_from_j2000 else {
        return Err(refuse(match kind {
            DayKind::NoSunset => "the sun does not set on that day",
            DayKind::NoSunrise => "the sun does not rise on that day",
            DayKind::RisesAndSets => else_reason,
        }));
    };
    #[expect(clippy::cast_possible_truncation, reason = "seconds of some hundred years")]
    let seconds = (days * 86_400.0 + J2000_S).round() as i64;
    let utc = DateTime::from_timestamp(seconds, 0).ok_or_else(|| refuse("no such moment"))?;
    Ok(Reckoned::text(utc.format("%Y-%m-%dT%H:%M:%SZ").to_string()))
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> String {
        match find(name).unwrap().reckon_json(inputs) {
            Ok(outcome) => outcome.value.to_json().to_string(),
            Err(error) => error.to_string(),
        }
    }

    #[test]
    fn a_day_without_sunrise_is_refused_with_its_reason_and_named_by_its_state() {
        let dark = json!({"latitude": 70, "longitude": 20, "date": "2026-12-21"});
        assert_eq!(
            ask("sunrise_utc", &dark),
            "sunrise_utc: latitude and date contradict each other: the sun does not rise on that day; ask polar_state or daylength_apparent_min"
        );
        assert_eq!(ask("polar_state", &dark), "\"no sunrise\"");
        assert_eq!(ask("daylength_apparent_min", &dark), "0.0");
        let far = json!({"latitude": 70, "longitude": 20, "date": "2300-12-21"});
        assert_eq!(
            ask("polar_state", &far),
            "polar_state: date is `2300-12-21`, expected a date from 1900-01-01 to 2200-12-31"
        );
    }
}
