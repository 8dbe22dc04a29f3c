//! Temperatures by the hour, as a record, a list, or a day's pattern.

use super::Given;
use super::inputs::{Input, Kind};
use super::value::shorten;
use crate::bounds::{Unusable, within};

const LEAST_C: f64 = -60.0;
const MOST_C: f64 = 60.0;
/// Hours that are read at most: three years.
const MOST_HOURS: usize = 26_304;

const SERIES: Input = Input::new(
    "series",
    Kind::Series,
    "hourly record: a first column month_day or date, and temp_c; else give hourly or pattern_24h",
)
.optional();
const ROWS: Input = Input::new(
    "rows",
    Kind::Text,
    "which days of the record, in order: `11-01 to the end, then the start to 02-28`; all if not given",
)
.optional();
const HOURS: Input =
    Input::number("hours", "h", 1.0, 26_304.0, "how many hours that must be; not checked if not given").optional();
const HOURLY: Input = Input::new(
    "hourly",
    Kind::Row { unit: "C", min: LEAST_C, max: MOST_C, most: MOST_HOURS },
    "temperatures hour by hour",
)
.optional();
const PATTERN: Input = Input::new(
    "pattern_24h",
    Kind::Numbers { unit: "C", min: LEAST_C, max: MOST_C, count: 24 },
    "temperatures of one day that repeats",
)
.optional();
const REPEAT: Input =
    Input::number("repeat_to_hours", "h", 1.0, 26_304.0, "how many hours the pattern fills; 24 if not given")
        .optional();

/// The ways of giving hourly temperatures.
pub(super) const HOURLY_INPUTS: &[Input] = &[SERIES, ROWS, HOURS, HOURLY, PATTERN, REPEAT];

/// The hourly temperatures in C.
pub(super) fn temperatures_c(given: &Given<'_>) -> Result<Vec<f64>, Unusable> {
    let ways = ["series", "hourly", "pattern_24h"].map(|name| (name, given.has(name)));
    let mut chosen = ways.into_iter().filter(|(_, there)| *there).map(|(name, _)| name);
    let way = chosen.next().ok_or_else(|| Unusable::missing("series", "a record, or hourly, or pattern_24h"))?;
    if let Some(other) = chosen.next() {
        return Err(Unusable::said_twice(way, other));
    }
    if way != "series" && given.has("rows") {
        return Err(Unusable::missing("series", "rows are picked from it"));
    }
    if way != "pattern_24h" && given.has("repeat_to_hours") {
        return Err(Unusable::missing("pattern_24h", "repeat_to_hours says how often it repeats"));
    }
    let hours_c = match way {
        "series" => from_record(given.text("series")?, given.maybe_text("rows"))?,
        "hourly" => given.numbers("hourly")?.to_vec(),
        _ => {
            let hours = if given.has("repeat_to_hours") { given.whole("repeat_to_hours")? } else { 24 };
            given.numbers("pattern_24h")?.iter().copied().cycle().take(usize::from(hours)).collect()
        }
    };
    if given.has("hours") && usize::from(given.whole("hours")?) != hours_c.len() {
        let reason = format!("there are {}", hours_c.len());
        return Err(Unusable::Contradiction { field: "hours", other: way, reason });
    }
    Ok(hours_c)
}

fn unread(text: &str, expected: String) -> Unusable {
    Unusable::Unread { field: "series", text: shorten(text), expected }
}

fn from_record(text: &str, rows: Option<&str>) -> Result<Vec<f64>, Unusable> {
    let (header, lines) = text.split_once('\n').unwrap_or((text, ""));
    let names: Vec<&str> = header.trim_end().split(',').collect();
    let column = names
        .iter()
        .position(|name| *name == "temp_c")
        .filter(|_| names.first().is_some_and(|first| ["month_day", "date"].contains(first)));
    let column = column.ok_or_else(|| {
        unread(header, "a header whose first column is month_day or date, with a column temp_c".to_owned())
    })?;
    let mut days: Vec<(&str, f64)> = Vec::new();
    for (number, line) in (2_usize..).zip(lines.lines()) {
        if line.trim().is_empty() {
            continue;
        }
        let cells: Vec<&str> = line.trim_end().split(',').collect();
        let day = cells.first().and_then(|day| month_day(day));
        let day =
            day.ok_or_else(|| unread(line, format!("a day such as 11-01 or 2026-11-01 first in line {number}")))?;
        let cell = cells.get(column).copied().unwrap_or("");
        let temperature_c = cell.parse::<f64>().ok().filter(|read| read.is_finite());
        let temperature_c = temperature_c.ok_or_else(|| unread(cell, format!("a temperature in line {number}")))?;
        days.push((day, within("temp_c", temperature_c, "C", LEAST_C, MOST_C)?));
        if days.len() > MOST_HOURS {
            return Err(unread("(too long)", format!("at most {MOST_HOURS} hours")));
        }
    }
    let Some(rows) = rows else {
        return Ok(days.into_iter().map(|(_, t)| t).collect());
    };
    let mut picked = Vec::new();
    for part in rows.split(", then ") {
        let (from, to) = read_part(part).ok_or_else(|| Unusable::Unread {
            field: "rows",
            text: shorten(rows),
            expected: "days such as `11-01 to the end, then the start to 02-28`".to_owned(),
        })?;
        let within_part = days.iter().filter(|(day, _)| (from..=to).contains(day));
        picked.extend(within_part.map(|(_, t)| *t));
    }
    if picked.is_empty() || picked.len() > MOST_HOURS {
        let reason = format!("it picks {} hours", picked.len());
        return Err(Unusable::Contradiction { field: "rows", other: "series", reason });
    }
    Ok(picked)
}

/// `11-01` of `11-01` and of `2026-11-01`.
fn month_day(text: &str) -> Option<&str> {
    let day = text.get(text.len().checked_sub(5)?..)?;
    let (month, of_month) = day.split_once('-')?;
    let number = |text: &str| text.parse::<u8>().ok().filter(|_| text.len() == 2 && !text.starts_with('+'));
    ((1..=12).contains(&number(month)?) && (1..=31).contains(&number(of_month)?)).then_some(day)
}

/// `11-01 to the end`, `start to 02-28`, `10-01 to 12-31`; days as text stand in their order.
fn read_part(part: &str) -> Option<(&str, &str)> {
    let (from, to) = part.trim().split_once(" to ")?;
    let from = match from.trim().trim_start_matches("the ") {
        "start" => "01-01",
        day => month_day(day).filter(|read| *read == day)?,
    };
    let to = match to.trim().trim_start_matches("the ") {
        "end" => "12-31",
        day => month_day(day).filter(|read| *read == day)?,
    };
    (from <= to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;

    const RECORD: &str = "month_day,hour,temp_c\n01-01,01,4.0\n01-02,00,3.5\n11-01,00,7\n12-31,23,-2\n";

    #[test]
    fn rows_are_picked_in_the_order_asked() {
        assert_eq!(from_record(RECORD, None).unwrap(), [4.0, 3.5, 7.0, -2.0]);
        assert_eq!(from_record(RECORD, Some("11-01 to the end, then the start to 01-01")).unwrap(), [7.0, -2.0, 4.0]);
        assert_eq!(from_record(RECORD, Some("start to 03-31")).unwrap(), [4.0, 3.5]);
        let dated = RECORD.replace("month_day", "date").replace("01-01,", "2026-01-01,");
        assert_eq!(from_record(&dated, Some("01-01 to 01-01")).unwrap(), [4.0]);
    }

    #[test]
    fn what_cannot_be_read_is_named() {
        for rows in ["", "winter", "13-01 to 14-01", "12-01 to 02-28", "1-1 to 2-2"] {
            assert!(from_record(RECORD, Some(rows)).unwrap_err().to_string().starts_with("rows is `"), "{rows}");
        }
        assert_eq!(
            from_record(RECORD, Some("06-01 to 06-30")).unwrap_err().to_string(),
            "rows and series contradict each other: it picks 0 hours"
        );
        assert_eq!(
            from_record("month_day,hour,temp_c\n01-01,01,warm\n", None).unwrap_err().to_string(),
            "series is `warm`, expected a temperature in line 2"
        );
        assert!(from_record("day,temp_c\n", None).unwrap_err().to_string().contains("first column is month_day"));
        assert!(
            from_record("date,temp_c\n2026-01-01,99\n", None).unwrap_err().to_string().starts_with("temp_c is 99 C")
        );
    }
}
