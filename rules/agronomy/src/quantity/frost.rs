//! Frost dates of a record, by name.

use chrono::NaiveDate;

use super::inputs::Input;
use super::record::{MINIMA, days};
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::record::{FrostYear, YearRule, frost_years, quantile_type_8};

/// Seasons under which a percentile says little.
const FEW_SEASONS: usize = 8;
const TABLES: &str = "common practice of frost tables";
const QUANTILE: &str =
    "quantile by definition 8 of Hyndman and Fan 1996 over all seasons with nine tenths of their minima";
const RULES: &[&str] = &[
    "calendar year; spring January-June, autumn July-December",
    "July to June season; spring July-December, autumn January-June",
];

const THRESHOLD: Input =
    Input::number("threshold", "C", -60.0, 40.0, "a day has frost at or below this minimum; 0 C if not given")
        .optional();
const YEAR_RULE: Input =
    Input::choice("year_rule", RULES, "which months make a season; calendar year if not given").optional();
const INPUTS: &[Input] = &[MINIMA, THRESHOLD, YEAR_RULE];

macro_rules! percentile {
    ($name:literal, $title:literal, $unit:literal, $share:literal, $of:expr, $without:expr, $about:literal) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: INPUTS,
            unit: $unit,
            about: $about,
            method: QUANTILE,
            source: TABLES,
            reckon: |given| percentile(given, $share, $of, $without),
        }
    };
}

macro_rules! last_spring {
    ($name:literal, $title:literal, $share:literal) => {
        percentile!(
            $name,
            $title,
            "day of year",
            $share,
            |year| year.last_spring_day().map(f64::from),
            f64::NEG_INFINITY,
            "day of the year, 1 is the first of January; a season without frost counts as earlier than any"
        )
    };
}

macro_rules! first_autumn {
    ($name:literal, $title:literal, $share:literal) => {
        percentile!(
            $name,
            $title,
            "day of year",
            $share,
            |year| year.first_autumn_day().map(f64::from),
            f64::INFINITY,
            "day of the year, 1 is the first of January; a season without frost counts as later than any"
        )
    };
}

macro_rules! frost_free {
    ($name:literal, $title:literal, $share:literal) => {
        percentile!(
            $name,
            $title,
            "d",
            $share,
            |year| year.frost_free_days().map(|days| days as f64),
            f64::INFINITY,
            "days from the last spring frost to the first autumn frost; without one of them longer than any"
        )
    };
}

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "frost_dates_by_year",
        title: "last spring and first autumn frost of each season",
        inputs: INPUTS,
        unit: "dates, null = none",
        about: "seasons with nine tenths of their minima, named by the year in which they start",
        method: "last day of spring and first day of autumn at or below the threshold",
        source: TABLES,
        reckon: |given| {
            let date = |date: Option<NaiveDate>| {
                date.map_or(OutcomeValue::Nothing, |date| OutcomeValue::Text(date.to_string()))
            };
            let row = |year: &FrostYear| {
                vec![
                    ("season", OutcomeValue::Number(year.season.into())),
                    ("last_spring", date(year.last_spring)),
                    ("first_autumn", date(year.first_autumn)),
                ]
            };
            Ok(OutcomeValue::Rows(seasons(given)?.iter().map(row).collect()).into())
        },
    },
    Quantity {
        name: "years_without_frost",
        title: "seasons, and those with frost",
        inputs: INPUTS,
        unit: "count",
        about: "percentiles of dates that hang on seasons without frost do not exist",
        method: "seasons with nine tenths of their minima, counted",
        source: TABLES,
        reckon: |given| {
            let seasons = seasons(given)?;
            let count = |with: fn(&FrostYear) -> bool| {
                OutcomeValue::Number(seasons.iter().filter(|year| with(year)).count() as f64)
            };
            Ok(Reckoned::fields(vec![
                ("seasons", count(|_| true)),
                ("with_spring_frost", count(|year| year.last_spring.is_some())),
                ("with_autumn_frost", count(|year| year.first_autumn.is_some())),
            ]))
        },
    },
    last_spring!("last_spring_frost_day_p10", "day by which a tenth of years have had their last spring frost", 0.1),
    last_spring!("last_spring_frost_day_p50", "day by which half of years have had their last spring frost", 0.5),
    last_spring!(
        "last_spring_frost_day_p90",
        "day by which nine tenths of years have had their last spring frost",
        0.9
    ),
    first_autumn!("first_autumn_frost_day_p10", "day by which a tenth of years have had their first autumn frost", 0.1),
    first_autumn!("first_autumn_frost_day_p50", "day by which half of years have had their first autumn frost", 0.5),
    first_autumn!(
        "first_autumn_frost_day_p90",
        "day by which nine tenths of years have had their first autumn frost",
        0.9
    ),
    frost_free!("frost_free_days_p10", "frost-free season that nine tenths of years exceed", 0.1),
    frost_free!("frost_free_days_p50", "frost-free season that half of years exceed", 0.5),
    frost_free!("frost_free_days_p90", "frost-free season that a tenth of years exceed", 0.9),
];

/// Never empty.
fn seasons(given: &Given<'_>) -> Result<Vec<FrostYear>, Unusable> {
    let july = given.maybe_text("year_rule").is_some_and(|rule| RULES.first() != Some(&rule));
    let rule = if july { YearRule::JulyToJune } else { YearRule::CalendarYear };
    let seasons = frost_years(&days(given, &["tmin_c"])?, given.maybe("threshold").unwrap_or(0.0), rule);
    if seasons.is_empty() {
        return Err(Unusable::missing("series", "a season with nine tenths of its minima"));
    }
    Ok(seasons)
}

fn percentile(
    given: &Given<'_>,
    share: f64,
    of: fn(&FrostYear) -> Option<f64>,
    without: f64,
) -> Result<Reckoned, Unusable> {
    let seasons = seasons(given)?;
    let mut values: Vec<f64> = seasons.iter().map(|year| of(year).unwrap_or(without)).collect();
    values.sort_by(f64::total_cmp);
    let found = quantile_type_8(&values, share).ok_or_else(|| {
        let with = values.iter().filter(|value| value.is_finite()).count();
        Unusable::Contradiction {
            field: "threshold",
            other: "series",
            reason: format!(
                "only {with} of {} seasons have such frost, so this percentile does not exist",
                values.len()
            ),
        }
    })?;
    let reckoned: Reckoned = found.into();
    let few = seasons.len() < FEW_SEASONS;
    Ok(if few { reckoned.note(format!("of {} seasons only", seasons.len())) } else { reckoned })
}
