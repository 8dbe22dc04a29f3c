//! Degree days, by name.

use chrono::NaiveDate;

use super::inputs::{Input, Kind, TMAX, TMIN};
use super::series::Series;
use super::{Given, Quantity, Reckoned};
use crate::bounds::{Unusable, in_order};
use crate::degree_days::{Cutoff, Method, Thresholds, sum_over};

const UNIT: &str = "C d";
const ZALOM: &str = "Zalom, Goodell, Wilson, Barnett and Bentley 1983 (UC leaflet 21373)";
const MCMASTER: &str = "McMaster and Wilhelm 1997, equation 1";

const LOWER: Input = Input::number("lower", "C", -60.0, 60.0, "threshold above which warmth counts");
const BASE: Input = Input::number("base", "C", -60.0, 60.0, "threshold above which warmth counts");
const UPPER: Input =
    Input::number("upper", "C", -60.0, 60.0, "threshold above which more warmth does not help").optional();
const CUTOFF: Input =
    Input::choice("cutoff", &Cutoff::NAMES, "what happens above upper; horizontal if not given").optional();
const NEXT: Input = Input::number("next_day_tmin", "C", -90.0, 60.0, "minimum temperature of the next day");
const NEXT_RULE: Input = Input::choice(
    "next_day_rule",
    &["double methods use the next day's minimum, capped at this day's maximum"],
    "says how the double methods use the next day",
)
.optional();

const DAY: &[Input] = &[TMIN, TMAX, LOWER, UPPER, CUTOFF];
const DAY_AND_NEXT: &[Input] = &[TMIN, TMAX, LOWER, UPPER, CUTOFF, NEXT];
const AVERAGE: &[Input] = &[TMIN, TMAX, BASE, UPPER, CUTOFF];
const RUN: &[Input] = &[
    Input::new("series", Kind::Series, "daily record with columns tmin_c and tmax_c"),
    Input::new("from", Kind::Date, "first day"),
    Input::new("to", Kind::Date, "last day, counted in"),
    LOWER,
    UPPER,
    CUTOFF,
    NEXT_RULE,
];

macro_rules! day {
    ($name:literal, $title:literal, $inputs:expr, $method:expr, $how:literal, $source:expr) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: $inputs,
            unit: UNIT,
            about: "warmth of one day between the thresholds",
            method: $how,
            source: $source,
            reckon: |given| day(given, $method),
        }
    };
}

macro_rules! run {
    ($name:literal, $title:literal, $method:expr, $how:literal, $source:expr) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: RUN,
            unit: UNIT,
            about: "warmth summed over the days of a record; every day must be there",
            method: $how,
            source: $source,
            reckon: |given| run(given, $method),
        }
    };
}

pub(super) const ALL: &[Quantity] = &[
    day!(
        "dd_average_method1",
        "degree days by the average, method 1",
        AVERAGE,
        Method::AverageMethod1,
        "half the sum of the extremes, then the base",
        MCMASTER
    ),
    day!(
        "dd_average_method2",
        "degree days by the average, method 2",
        AVERAGE,
        Method::AverageMethod2,
        "extremes lifted to the base, then half the sum",
        MCMASTER
    ),
    day!("dd_single_sine", "degree days under a sine", DAY, Method::SingleSine, "one sine through the extremes", ZALOM),
    day!(
        "dd_double_sine",
        "degree days under two half sines",
        DAY_AND_NEXT,
        Method::DoubleSine,
        "half sines up to the maximum and down to the next minimum",
        ZALOM
    ),
    day!(
        "dd_single_triangle",
        "degree days under a triangle",
        DAY,
        Method::SingleTriangle,
        "one triangle through the extremes",
        ZALOM
    ),
    day!(
        "dd_double_triangle",
        "degree days under two triangles",
        DAY_AND_NEXT,
        Method::DoubleTriangle,
        "lines up to the maximum and down to the next minimum",
        ZALOM
    ),
    run!(
        "dd_sum_average_method1",
        "sum of degree days by the average, method 1",
        Method::AverageMethod1,
        "half the sum of the extremes, then the base",
        MCMASTER
    ),
    run!(
        "dd_sum_average_method2",
        "sum of degree days by the average, method 2",
        Method::AverageMethod2,
        "extremes lifted to the base, then half the sum",
        MCMASTER
    ),
    run!("dd_sum_single_sine", "sum of degree days under sines", Method::SingleSine, "one sine a day", ZALOM),
    run!(
        "dd_sum_double_sine",
        "sum of degree days under half sines",
        Method::DoubleSine,
        "two half sines a day",
        ZALOM
    ),
    run!(
        "dd_sum_single_triangle",
        "sum of degree days under triangles",
        Method::SingleTriangle,
        "one triangle a day",
        ZALOM
    ),
    run!(
        "dd_sum_double_triangle",
        "sum of degree days under two triangles a day",
        Method::DoubleTriangle,
        "two triangles a day",
        ZALOM
    ),
];

fn thresholds(given: &Given<'_>) -> Result<Thresholds, Unusable> {
    let lower_c = match given.maybe("lower") {
        Some(lower_c) => lower_c,
        None => given.number("base")?,
    };
    let cutoff = given.maybe_text("cutoff").and_then(Cutoff::from_name);
    match (given.maybe("upper"), cutoff) {
        (Some(upper_c), cutoff) => Thresholds::new(lower_c, Some((upper_c, cutoff.unwrap_or(Cutoff::Horizontal)))),
        (None, None) => Thresholds::new(lower_c, None),
        (None, Some(_)) => {
            Err(Unusable::Missing { field: "upper", expected: "cutoff says what happens above it".to_owned() })
        }
    }
}

fn day(given: &Given<'_>, method: Method) -> Result<Reckoned, Unusable> {
    let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
    in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
    let next_c = given.maybe("next_day_tmin");
    Ok(method.day(tmin_c, tmax_c, next_c, thresholds(given)?).into())
}

fn run(given: &Given<'_>, method: Method) -> Result<Reckoned, Unusable> {
    let thresholds = thresholds(given)?;
    let (from, to) = (given.date("from")?, given.date("to")?);
    if from > to {
        return Err(Unusable::Contradiction { field: "from", other: "to", reason: format!("{from} is after {to}") });
    }
    let series = Series::new(given.text("series")?)?;
    let columns = [series.column("tmin_c")?, series.column("tmax_c")?];
    let hole = |date: NaiveDate, what: &str| Unusable::Contradiction {
        field: "series",
        other: "to",
        reason: format!("{what} on {date}"),
    };
    let mut expected = Some(from);
    let mut days_c = Vec::new();
    let mut after_c = None;
    for day in series.days(columns) {
        let (date, values) = day?;
        let Some(wanted) = expected.filter(|&wanted| date >= wanted) else {
            continue;
        };
        if date != wanted {
            if wanted > to {
                break;
            }
            return Err(hole(wanted, "the record has no day"));
        }
        expected = wanted.succ_opt();
        match values {
            [tmin_c, _] if date > to => {
                after_c = tmin_c;
                break;
            }
            [Some(tmin_c), Some(tmax_c)] => {
                in_order("tmin_c", tmin_c, "tmax_c", tmax_c, "C")?;
                days_c.push((tmin_c, tmax_c));
            }
            _ => return Err(hole(date, "the record has no extremes")),
        }
    }
    match expected {
        Some(wanted) if wanted <= to => Err(hole(wanted, "the record has no day")),
        _ => Ok(sum_over(method, &days_c, after_c, thresholds).into()),
    }
}
