//! The station export: a header with STATION, DATE, TMAX, TMIN and PRCP, as open archives of daily records give it out.

use chrono::NaiveDate;

use super::csv::{CsvRows, Layout, read_date};
use super::lines::{self, CsvFault, quoted, whole};
use crate::calendar::Day;
use crate::profile::DailyWeather;

/// Above this a number that should be °C is in another unit: no air was ever warmer.
const WARMEST_C: f64 = 60.0;

/// The units of a station export.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StationUnits {
    /// °C and mm.
    Metric,
    /// Tenths of °C and of mm, as whole numbers.
    Tenths,
}

/// Whether a header is that of a station export.
pub(super) fn is_station_export(header: &str) -> bool {
    let fields = fields(header);
    ["DATE", "TMAX", "TMIN"].iter().all(|name| fields.iter().any(|field| field == name))
}

/// Reads a station export of one station. Fields may stand in quotes; an empty field and 9999 or -9999 are missing
/// values; other columns are passed over and named.
///
/// Units that are not declared are detected: whole numbers throughout, some of them beyond 60, are tenths; all else is
/// metric. The result says which, and whether it was declared.
///
/// # Errors
/// As [`super::read_csv`]; also a second station.
pub fn read_station_csv(text: &str, declared: Option<StationUnits>) -> Result<CsvRows, Vec<CsvFault>> {
    let (header, rest) = lines::header(text);
    let names = fields(header);
    let place = |name: &str| names.iter().position(|column| column == name);
    let missing: Vec<CsvFault> = ["DATE", "TMAX", "TMIN"]
        .into_iter()
        .filter(|name| place(name).is_none())
        .map(|name| CsvFault {
            line: 1,
            column: Some(name.to_owned()),
            words: format!("the header has no such column, it has {}", quoted(&names.join(","))),
        })
        .collect();
    if !missing.is_empty() {
        return Err(missing);
    }
    let columns = [place("STATION"), place("DATE"), place("TMIN"), place("TMAX"), place("PRCP")];

    let mut station: Option<String> = None;
    let mut whole_numbers = true;
    let mut beyond = false;
    let mut rows = lines::rows(rest, |line, content| {
        let found = fields(content);
        if found.len() != names.len() {
            let words = format!("{} fields, expected {} as in the header", found.len(), names.len());
            return Err(vec![whole(line, words)]);
        }
        let fault = |column: &str, words: String| CsvFault { line, column: Some(column.to_owned()), words };
        let [own, date, tmin, tmax, rain] =
            columns.map(|column| column.and_then(|at| found.get(at)).map_or("", String::as_str));
        if !own.is_empty() && *station.get_or_insert_with(|| own.to_owned()) != own {
            let first = station.as_deref().unwrap_or_default();
            let words = format!("a second station {}, expected {} alone", quoted(own), quoted(first));
            return Err(vec![fault("STATION", words)]);
        }
        let mut faults = Vec::new();
        let mut number = |column: &str, field: &str| {
            if field.is_empty() || matches!(field, "9999" | "-9999") {
                return None;
            }
            let value = field.parse().ok().filter(|value: &f64| value.is_finite());
            if value.is_none() {
                faults.push(fault(column, format!("{} is not a number", quoted(field))));
            }
            whole_numbers &= !field.contains('.');
            value
        };
        let (tmin_c, tmax_c, rain_mm) = (number("TMIN", tmin), number("TMAX", tmax), number("PRCP", rain));
        beyond |= tmin_c.iter().chain(&tmax_c).any(|value| value.abs() > WARMEST_C);
        match read_date(date) {
            Some(date) if faults.is_empty() => Ok(row(date, tmin_c, tmax_c, rain_mm)),
            Some(_) => Err(faults),
            None => {
                faults.push(fault("DATE", format!("{} is not a date such as `2026-09-14`", quoted(date))));
                Err(faults)
            }
        }
    })?;
    let detected = if whole_numbers && beyond { StationUnits::Tenths } else { StationUnits::Metric };
    let units = declared.unwrap_or(detected);
    if units == StationUnits::Tenths {
        for row in &mut rows {
            for value in [&mut row.tmin_c, &mut row.tmax_c, &mut row.rain_mm] {
                *value = value.map(|value| value / 10.0);
            }
        }
    }
    let read = ["STATION", "DATE", "TMIN", "TMAX", "PRCP"];
    let ignored_columns = names.into_iter().filter(|name| !read.contains(&name.as_str())).collect();
    Ok(CsvRows {
        rows,
        ignored_columns,
        layout: Layout::Station { station, units, detected, declared: declared.is_some() },
    })
}

fn row(date: NaiveDate, tmin_c: Option<f64>, tmax_c: Option<f64>, rain_mm: Option<f64>) -> DailyWeather {
    DailyWeather { tmin_c, tmax_c, rain_mm, ..DailyWeather::unknown(Day::from_date(date)) }
}

/// The fields of a line; a field in quotes may hold commas, and two quotes for one.
fn fields(line: &str) -> Vec<String> {
    let mut fields = vec![String::new()];
    let mut within = false;
    let mut chars = line.trim_end().chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '"' if within && chars.peek() == Some(&'"') => {
                chars.next();
                if let Some(field) = fields.last_mut() {
                    field.push('"');
                }
            }
            '"' => within = !within,
            ',' if !within => fields.push(String::new()),
            other => {
                if let Some(field) = fields.last_mut() {
                    field.push(other);
                }
            }
        }
    }
    for field in &mut fields {
        *field = field.trim().to_owned();
    }
    fields
}

#[cfg(test)]
mod tests {
    use super::*;

    const EXPORT: &str = "\"STATION\",\"NAME\",\"DATE\",\"TMAX\",\"TMIN\",\"PRCP\"\n\
        \"X1\",\"HILL, THE\",\"2025-07-01\",\"231\",\"104\",\"25\"\n\
        \"X1\",\"HILL, THE\",\"2025-07-02\",\"-9999\",\"98\",\"\"\n";

    #[test]
    fn tenths_are_found_out_and_said() {
        let read = super::super::read_csv(EXPORT).unwrap();
        assert_eq!(read.ignored_columns, ["NAME"]);
        assert_eq!(
            read.layout,
            Layout::Station {
                station: Some("X1".to_owned()),
                units: StationUnits::Tenths,
                detected: StationUnits::Tenths,
                declared: false
            }
        );
        assert_eq!(
            (read.rows[0].tmin_c, read.rows[0].tmax_c, read.rows[0].rain_mm),
            (Some(10.4), Some(23.1), Some(2.5))
        );
        assert_eq!((read.rows[1].tmax_c, read.rows[1].rain_mm), (None, None));
    }

    #[test]
    fn what_is_declared_wins_over_what_is_seen() {
        let read = read_station_csv(EXPORT, Some(StationUnits::Metric)).unwrap();
        assert_eq!(read.rows[0].tmax_c, Some(231.0));
        // and what is seen is kept, so that it can be said
        assert!(matches!(read.layout, Layout::Station { detected: StationUnits::Tenths, declared: true, .. }));
        let metric = "STATION,DATE,TMIN,TMAX\nX1,2025-07-01,10.4,23.1\n";
        let read = read_station_csv(metric, None).unwrap();
        assert_eq!((read.rows[0].tmin_c, read.rows[0].rain_mm), (Some(10.4), None));
        let units = |text: &str| read_station_csv(text, None).unwrap().layout;
        assert!(matches!(units(metric), Layout::Station { units: StationUnits::Metric, .. }));
        assert!(matches!(
            units("DATE,TMIN,TMAX\n2025-07-01,10,23\n"),
            Layout::Station { units: StationUnits::Metric, .. }
        ));
    }

    #[test]
    fn every_fault_names_its_line_and_column() {
        let text = "STATION,DATE,TMIN,TMAX\nX1,2025-7-1,1,2\nX2,2025-07-02,1,2\nX1,2025-07-03,warm,2\nX1,2025-07-04\n";
        let found: Vec<String> = read_station_csv(text, None).unwrap_err().iter().map(ToString::to_string).collect();
        assert_eq!(
            found,
            [
                "line 2, column `DATE`: `2025-7-1` is not a date such as `2026-09-14`",
                "line 3, column `STATION`: a second station `X2`, expected `X1` alone",
                "line 4, column `TMIN`: `warm` is not a number",
                "line 5: 2 fields, expected 4 as in the header",
            ]
        );
        let found = read_station_csv("STATION,DATE,TMAX\n", None).unwrap_err();
        assert_eq!(
            found[0].to_string(),
            "line 1, column `TMIN`: the header has no such column, it has `STATION,DATE,TMAX`"
        );
    }
}
