//! Winter chill, by name.

use chrono::{Datelike, NaiveDate};

use super::extremes::{days_from, hole};
use super::hourly::{HOURLY_INPUTS, temperatures_c};
use super::inputs::{Input, Kind, LATITUDE};
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::chill::hourly::{Extremes, daylight, hours_of_day};
use crate::chill::utah::Bands;
use crate::chill::{dynamic, hours, utah};

const HOURS_SOURCE: &str = "Weinberger 1950; Bennett 1949";
const UTAH_SOURCE: &str = "Richardson, Seeley and Walker 1974";
const DYNAMIC_SOURCE: &str = "Fishman, Erez and Couvillon 1987; constants Erez and others 1990";
const LINVILL: &str = "Linvill 1990; day length by Spencer 1971 and Almorox and others 2005";
const ABOUT: &str =
    "the chill that varieties are said to need is given in one of the three models: compare like with like";

const HOUR: Input = Input::number("temperature", "C", -60.0, 60.0, "temperature of the hour");
const BANDS: Input = Input::choice(
    "bands",
    &["celsius", "fahrenheit"],
    "edges 1.4, 2.4, 9.1, 12.4, 15.9, 18.0 C or 34, 36, 48, 54, 60, 65 F; celsius if not given",
)
.optional();
const HOURLY_RULE: Input = Input::choice(
    "hourly_rule",
    &[
        "sine by day, logarithmic decline by night (Linvill 1990)",
        "sine by day, logarithmic decline by night (Linvill 1990), sunrise and sunset from latitude and day",
    ],
    "how the hours follow from the extremes",
)
.optional();
const DAILY: Input = Input::new("series", Kind::Series, "daily record with columns tmin_c and tmax_c");
const FROM: Input = Input::new("from", Kind::Date, "first day");
const TO: Input = Input::new("to", Kind::Date, "last day, counted in");
const RUN: &[Input] = &[DAILY, LATITUDE, FROM, TO, HOURLY_RULE];

macro_rules! weight {
    ($name:literal, $about:literal) => {
        Quantity {
            name: $name,
            title: "Utah chill units of an hour",
            inputs: &[HOUR, BANDS],
            unit: "CU",
            about: $about,
            method: "weight of the temperature's class; an edge belongs to the colder class",
            source: UTAH_SOURCE,
            reckon: utah_hour,
        }
    };
}

macro_rules! hourly {
    ($name:literal, $title:literal, $unit:literal, $method:literal, $source:expr, $sum:expr) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: HOURLY_INPUTS,
            unit: $unit,
            about: ABOUT,
            method: $method,
            source: $source,
            reckon: |given| {
                let sum: fn(&[f64]) -> f64 = $sum;
                Ok(sum(&temperatures_c(given)?).into())
            },
        }
    };
}

macro_rules! daily {
    ($name:literal, $title:literal, $unit:literal, $method:literal, $source:expr, $sum:expr) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: RUN,
            unit: $unit,
            about: ABOUT,
            method: $method,
            source: $source,
            reckon: |given| {
                let sum: fn(&[f64]) -> f64 = $sum;
                let (from, to) = (given.date("from")?, given.date("to")?);
                Ok(sum(&hours_between(given, from, to)?).into())
            },
        }
    };
}

pub(super) const ALL: &[Quantity] = &[
    hourly!(
        "chill_hours_0_7p2",
        "chill hours",
        "h",
        "hours from 0 to 7.2 C, both counted",
        HOURS_SOURCE,
        hours::chill_hours
    ),
    hourly!(
        "utah_chill_units",
        "Utah chill units",
        "CU",
        "weights by classes with Celsius edges; not held at nought",
        UTAH_SOURCE,
        |hours_c| utah::chill_units(hours_c, Bands::Celsius)
    ),
    hourly!(
        "chill_portions_dynamic",
        "chill portions",
        "CP",
        "Dynamic model, 0 C as 273 K",
        DYNAMIC_SOURCE,
        dynamic::portions
    ),
    Quantity {
        name: "dynamic_trace",
        title: "chill portions hour by hour",
        inputs: HOURLY_INPUTS,
        unit: "-",
        about: "intermediate and portions at each hour, before that hour's temperature has acted",
        method: "Dynamic model, 0 C as 273 K",
        source: DYNAMIC_SOURCE,
        reckon: |given| {
            let hours_c = temperatures_c(given)?;
            let (x, portions) = dynamic::trace(&hours_c).map(|state| (state.intermediate, state.portions)).unzip();
            Ok(Reckoned::fields(vec![
                ("intermediate_x", OutcomeValue::List(x)),
                ("portions_cumulative", OutcomeValue::List(portions)),
            ]))
        },
    },
    weight!("utah_hour_weight", "cold gives units, warmth takes them back"),
    weight!(
        "utah_hour_weight_disputed",
        "for hours between the Celsius and the Fahrenheit edges, which weigh differently"
    ),
    Quantity {
        name: "chill_hour_membership",
        title: "whether an hour is a chill hour",
        inputs: &[HOUR],
        unit: "h",
        about: "1 or 0; some texts have no lower edge",
        method: "from 0 to 7.2 C, both counted",
        source: HOURS_SOURCE,
        reckon: |given| Ok(hours::chill_hours(&[given.number("temperature")?]).into()),
    },
    daily!(
        "chill_hours_from_daily",
        "chill hours from daily extremes",
        "h",
        "hours by Linvill's curve, then those from 0 to 7.2 C",
        LINVILL,
        hours::chill_hours
    ),
    daily!(
        "utah_units_from_daily",
        "Utah chill units from daily extremes",
        "CU",
        "hours by Linvill's curve, then weights by classes with Celsius edges",
        LINVILL,
        |hours_c| utah::chill_units(hours_c, Bands::Celsius)
    ),
    daily!(
        "chill_portions_from_daily",
        "chill portions from daily extremes",
        "CP",
        "hours by Linvill's curve, then the Dynamic model",
        LINVILL,
        dynamic::portions
    ),
    Quantity {
        name: "hourly_from_daily",
        title: "temperatures of a day's hours from daily extremes",
        inputs: &[DAILY, Input::new("date", Kind::Date, "the day"), LATITUDE, HOURLY_RULE],
        unit: "C",
        about: "hours 0 to 23 of the sun's own time; the days before and after are used where the record has them",
        method: "sine by day, logarithmic decline by night",
        source: LINVILL,
        reckon: |given| {
            let date = given.date("date")?;
            Ok(OutcomeValue::List(hours_between(given, date, date)?).into())
        },
    },
];

fn utah_hour(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let temperature_c = given.number("temperature")?;
    let (bands, other, other_name) = match given.maybe_text("bands") {
        Some("fahrenheit") => (Bands::Fahrenheit, Bands::Celsius, "Celsius"),
        _ => (Bands::Celsius, Bands::Fahrenheit, "Fahrenheit"),
    };
    let (units, disputed) = (utah::weight(temperature_c, bands), utah::weight(temperature_c, other));
    let reckoned = Reckoned::from(units);
    Ok(if (units - disputed).abs() > 0.0 {
        reckoned.note(format!("by the {other_name} edges it is {disputed}"))
    } else {
        reckoned
    })
}

/// The hours of the days from one to another, by the extremes of a record.
fn hours_between(given: &Given<'_>, from: NaiveDate, to: NaiveDate) -> Result<Vec<f64>, Unusable> {
    if from > to {
        return Err(Unusable::Contradiction { field: "from", other: "to", reason: format!("{from} is after {to}") });
    }
    let (text, latitude_deg) = (given.text("series")?, given.number("latitude")?);
    let rows = days_from(text, from, to.succ_opt())?;
    let extremes = |(tmin_c, tmax_c)| Extremes { tmin_c, tmax_c };
    let day_before = from.pred_opt().and_then(|day| days_from(text, day, Some(day)).ok());
    let mut before = day_before.and_then(|rows| rows.first().and_then(|row| row.extremes_c().ok())).map(extremes);
    let mut hours_c = Vec::with_capacity(rows.len() * 24);
    let mut next_minima = rows.iter().skip(1).map(super::extremes::DayRow::tmin_c);
    let mut last = None;
    for row in rows.iter().filter(|row| row.date <= to) {
        let day = extremes(row.extremes_c()?);
        let next_tmin_c = next_minima.next().flatten().unwrap_or(day.tmin_c);
        let ordinal = u16::try_from(row.date.ordinal()).unwrap_or(1);
        // The first day of a record stands for the day before it.
        hours_c.extend(hours_of_day(before.unwrap_or(day), day, next_tmin_c, daylight(latitude_deg, ordinal)));
        before = Some(day);
        last = Some(row.date);
    }
    match last.and_then(|last| last.succ_opt()) {
        Some(missing) if missing <= to => Err(hole(&format!("the record has no day {missing}"))),
        _ => Ok(hours_c),
    }
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    fn ask(name: &str, inputs: &Value) -> Result<Value, String> {
        find(name)
            .unwrap()
            .reckon_json(inputs)
            .map(|outcome| outcome.value.to_json())
            .map_err(|error| error.to_string())
    }

    #[test]
    fn hours_are_given_in_one_way_only() {
        let day = vec![5.0; 24];
        assert_eq!(ask("chill_hours_0_7p2", &json!({"hourly": [5, 8, 1]})), Ok(json!(2.0)));
        assert_eq!(ask("chill_hours_0_7p2", &json!({"pattern_24h": day, "repeat_to_hours": 30})), Ok(json!(30.0)));
        assert_eq!(
            ask("chill_hours_0_7p2", &json!({"pattern_24h": day, "hourly": [5]})).unwrap_err(),
            "chill_hours_0_7p2: hourly and pattern_24h contradict each other: they say the same thing, give one"
        );
        assert_eq!(
            ask("chill_hours_0_7p2", &json!({})).unwrap_err(),
            "chill_hours_0_7p2: series is missing: a record, or hourly, or pattern_24h"
        );
        assert_eq!(
            ask("chill_hours_0_7p2", &json!({"hourly": [5], "hours": 2})).unwrap_err(),
            "chill_hours_0_7p2: hours and hourly contradict each other: there are 1"
        );
        assert_eq!(
            ask("chill_hours_0_7p2", &json!({"hourly": [99]})).unwrap_err(),
            "chill_hours_0_7p2: input `hourly` is 99 C, allowed are -60 to 60 C"
        );
        assert!(ask("chill_hours_0_7p2", &json!({"hourly": []})).unwrap_err().contains("a list of 0"));
    }

    #[test]
    fn a_disputed_hour_says_what_the_other_edges_give() {
        let outcome = find("utah_hour_weight").unwrap().reckon_json(&json!({"temperature": 9.0})).unwrap();
        assert_eq!(outcome.notes, ["by the Fahrenheit edges it is 0.5"]);
        let other = json!({"temperature": 9.0, "bands": "fahrenheit"});
        assert_eq!(ask("utah_hour_weight", &other), Ok(json!(0.5)));
    }

    #[test]
    fn a_season_with_a_missing_day_is_refused_by_its_date() {
        let record = "date,tmin_c,tmax_c\n2026-01-01,1,9\n2026-01-02,2,8\n2026-01-04,2,8\n";
        let asked = json!({"series": record, "latitude": 45, "from": "2026-01-01", "to": "2026-01-04"});
        assert!(ask("chill_hours_from_daily", &asked).unwrap_err().contains("the record has no day 2026-01-03"));
        let asked = json!({"series": record, "latitude": 45, "from": "2026-01-01", "to": "2026-01-02"});
        assert_eq!(ask("utah_units_from_daily", &asked).map(|units| units.is_number()), Ok(true));
    }
}
