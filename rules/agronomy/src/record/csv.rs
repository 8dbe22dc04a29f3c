//! Daily rows from comma-separated text.

use chrono::NaiveDate;

use super::lines::{self, CsvFault, quoted, whole};
use super::station_csv::{StationUnits, is_station_export, read_station_csv};
use crate::calendar::Day;
use crate::profile::DailyWeather;

/// Rows read from text.
#[derive(Clone, Debug, PartialEq)]
pub struct CsvRows {
    /// One a line, in the order of the lines. Ranges are not yet checked.
    pub rows: Vec<DailyWeather>,
    /// Columns of the header that are not read.
    pub ignored_columns: Vec<String>,
    /// Which of the two layouts it was.
    pub layout: Layout,
}

/// The layout of a text of daily rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Layout {
    /// Columns that name their units.
    Plain,
    /// The station export.
    Station {
        /// The station, if it is named.
        station: Option<String>,
        /// Its units.
        units: StationUnits,
        /// What the values look like.
        detected: StationUnits,
        /// Whether the units were declared; else they are what the values look like.
        declared: bool,
    },
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Column {
    Date,
    Tmin,
    Tmax,
    Rain,
    Ignored,
}

impl Column {
    fn of(name: &str) -> Self {
        match name {
            "date" => Self::Date,
            "tmin_c" => Self::Tmin,
            "tmax_c" => Self::Tmax,
            "precip_mm" => Self::Rain,
            _ => Self::Ignored,
        }
    }
}

/// Reads daily rows from text: a header with `date`, `tmin_c`, `tmax_c` and if known `precip_mm`, in
/// any order, then one day a line. Dates are `YYYY-MM-DD`, numbers have a point, an empty field is a
/// missing value. Other columns are not read, but named in the result. Empty lines are passed over. A header with
/// `DATE`, `TMAX` and `TMIN` is a station export and read by [`read_station_csv`], its units detected.
///
/// # Errors
/// The first 20 faults, each with line and column: a header without a needed column or with one twice,
/// a line with more or fewer fields than the header, too long a line, too many lines, a date or a
/// number that cannot be read.
pub fn read_csv(text: &str) -> Result<CsvRows, Vec<CsvFault>> {
    read_csv_in(text, None)
}

/// The same with the units of a station export declared. Columns that name their units are in those.
///
/// # Errors
/// As [`read_csv`].
pub fn read_csv_in(text: &str, declared: Option<StationUnits>) -> Result<CsvRows, Vec<CsvFault>> {
    let (header, rest) = lines::header(text);
    if is_station_export(header) {
        return read_station_csv(text, declared);
    }
    let names: Vec<&str> = header.split(',').map(str::trim).collect();
    let columns: Vec<Column> = names.iter().map(|name| Column::of(name)).collect();
    header_faults(&names, &columns)?;
    let rows = lines::rows(rest, |line, content| row(line, content, &names, &columns))?;
    let ignored_columns = names
        .iter()
        .zip(&columns)
        .filter(|(_, column)| **column == Column::Ignored)
        .map(|(name, _)| (*name).to_owned())
        .collect();
    Ok(CsvRows { rows, ignored_columns, layout: Layout::Plain })
}

fn header_faults(names: &[&str], columns: &[Column]) -> Result<(), Vec<CsvFault>> {
    let mut faults = Vec::new();
    for (name, column, needed) in [
        ("date", Column::Date, true),
        ("tmin_c", Column::Tmin, true),
        ("tmax_c", Column::Tmax, true),
        ("precip_mm", Column::Rain, false),
    ] {
        let words = match columns.iter().filter(|found| **found == column).count() {
            0 if needed => format!("the header has no such column, it has {}", quoted(&names.join(","))),
            0 | 1 => continue,
            _ => "the header has this column twice".to_owned(),
        };
        faults.push(CsvFault { line: 1, column: Some(name.to_owned()), words });
    }
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}

fn row(line: usize, content: &str, names: &[&str], columns: &[Column]) -> Result<DailyWeather, Vec<CsvFault>> {
    let fields: Vec<&str> = content.split(',').map(str::trim).collect();
    if fields.len() != columns.len() {
        let words = format!("{} fields, expected {} as in the header", fields.len(), columns.len());
        return Err(vec![whole(line, words)]);
    }
    let mut faults = Vec::new();
    let mut date = None;
    let mut weather = DailyWeather::unknown(Day::from_ce(1));
    for ((field, name), column) in fields.iter().zip(names).zip(columns) {
        let mut fail = |words: String| {
            faults.push(CsvFault { line, column: Some((*name).to_owned()), words });
        };
        let slot = match column {
            Column::Ignored => continue,
            Column::Date => {
                date = read_date(field);
                if date.is_none() {
                    fail(format!("{} is not a date such as `2026-09-14`", quoted(field)));
                }
                continue;
            }
            Column::Tmin => &mut weather.tmin_c,
            Column::Tmax => &mut weather.tmax_c,
            Column::Rain => &mut weather.rain_mm,
        };
        if !field.is_empty() {
            *slot = field.parse().ok().filter(|value: &f64| value.is_finite());
            if slot.is_none() {
                fail(format!("{} is not a number", quoted(field)));
            }
        }
    }
    match date {
        Some(date) if faults.is_empty() => Ok(DailyWeather { day: Day::from_date(date), ..weather }),
        _ => Err(faults),
    }
}

pub(super) fn read_date(field: &str) -> Option<NaiveDate> {
    // chrono alone would also take `2026-9-4` and signs
    if field.len() != 10 {
        return None;
    }
    NaiveDate::parse_from_str(field, "%Y-%m-%d").ok()
}

#[cfg(test)]
mod tests {
    use super::super::lines::MOST_FAULTS;
    use super::*;

    fn faults(text: &str) -> Vec<String> {
        read_csv(text).unwrap_err().iter().map(ToString::to_string).collect()
    }

    #[test]
    fn rows_are_read_whatever_the_order_of_the_columns() {
        let text = "\u{feff}tmax_c,date,humour,tmin_c\r\n9.5,2026-02-28,good,-1\r\n\r\n,2026-03-01,,0.5\r\n";
        let read = read_csv(text).unwrap();
        assert_eq!(read.ignored_columns, ["humour"]);
        assert_eq!(read.rows.len(), 2);
        assert_eq!(read.rows[0].day.date().to_string(), "2026-02-28");
        assert_eq!((read.rows[0].tmin_c, read.rows[0].tmax_c), (Some(-1.0), Some(9.5)));
        assert_eq!((read.rows[1].tmin_c, read.rows[1].tmax_c), (Some(0.5), None));
        assert_eq!(read.rows[1].rain_mm, None);
    }

    #[test]
    fn every_fault_names_its_line_and_column() {
        let text = "date,tmin_c,tmax_c,precip_mm\n2026-02-30,1,x,\n2026-03-01,1\n2026-03-02,nan,2,0\n";
        assert_eq!(
            faults(text),
            [
                "line 2, column `date`: `2026-02-30` is not a date such as `2026-09-14`",
                "line 2, column `tmax_c`: `x` is not a number",
                "line 3: 2 fields, expected 4 as in the header",
                "line 4, column `tmin_c`: `nan` is not a number",
            ]
        );
    }

    #[test]
    fn a_header_without_temperatures_is_refused() {
        assert_eq!(
            faults("date,rain\n2026-01-01,3\n"),
            [
                "line 1, column `tmin_c`: the header has no such column, it has `date,rain`",
                "line 1, column `tmax_c`: the header has no such column, it has `date,rain`",
            ]
        );
        assert_eq!(faults("")[0], "line 1, column `date`: the header has no such column, it has ``");
        let twice = "date,tmin_c,tmax_c,tmin_c\n";
        assert_eq!(faults(twice), ["line 1, column `tmin_c`: the header has this column twice"]);
    }

    #[test]
    fn faults_and_lines_are_bounded() {
        let bad = format!("date,tmin_c,tmax_c\n{}", "x,y,z\n".repeat(100));
        assert_eq!(faults(&bad).len(), MOST_FAULTS);
        let long = format!("date,tmin_c,tmax_c\n{}\n", "9".repeat(2_000));
        assert_eq!(faults(&long), ["line 2: longer than 1000 bytes"]);
    }
}
