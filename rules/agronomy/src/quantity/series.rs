//! Daily records as comma-separated values: a header, then one line a day, the date first.

use chrono::{Datelike, NaiveDate};

use super::value::shorten;
use crate::bounds::Unusable;

/// Reads `2026-03-01`, with four digits of year and two each of month and day, years 1 to 9999.
pub(super) fn read_date(text: &str) -> Option<NaiveDate> {
    let plain = text.len() == 10 && text.bytes().all(|b| b.is_ascii_digit() || b == b'-');
    NaiveDate::parse_from_str(text, "%Y-%m-%d").ok().filter(|date| plain && date.year() >= 1)
}

/// A record whose columns are found by name; empty cells are missing values.
pub(super) struct Series<'a> {
    header: &'a str,
    lines: &'a str,
}

fn unread(text: &str, expected: String) -> Unusable {
    Unusable::Unread { field: "series", text: shorten(text), expected }
}

impl<'a> Series<'a> {
    pub(super) fn new(text: &'a str) -> Result<Self, Unusable> {
        let (header, lines) = text.split_once('\n').unwrap_or((text, ""));
        if header.trim_end().split(',').next() == Some("date") {
            Ok(Self { header: header.trim_end(), lines })
        } else {
            Err(unread(header, "a header whose first column is date".to_owned()))
        }
    }

    pub(super) fn column(&self, name: &str) -> Result<usize, Unusable> {
        self.header
            .split(',')
            .position(|column| column == name)
            .ok_or_else(|| unread(self.header, format!("a column {name}")))
    }

    /// The days with the values of the columns, in the order of the record. A line that cannot be read
    /// is an error with its number, the header being line 1.
    pub(super) fn days<const N: usize>(
        &self,
        columns: [usize; N],
    ) -> impl Iterator<Item = Result<(NaiveDate, [Option<f64>; N]), Unusable>> {
        let numbered = (2_usize..).zip(self.lines.lines());
        numbered.filter(|(_, line)| !line.trim().is_empty()).map(move |(number, line)| {
            let date = line.split(',').next().and_then(read_date);
            let date = date.ok_or_else(|| unread(line, format!("a date first in line {number}")))?;
            let mut values = [None; N];
            for (value, column) in values.iter_mut().zip(columns) {
                let cell = line.trim_end().split(',').nth(column);
                let cell = cell.ok_or_else(|| unread(line, format!("{} columns in line {number}", column + 1)))?;
                if !cell.is_empty() {
                    let read = cell.parse::<f64>().ok().filter(|read| read.is_finite());
                    *value = Some(read.ok_or_else(|| unread(cell, format!("a number in line {number}")))?);
                }
            }
            Ok((date, values))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RECORD: &str = "date,tmin_c,tmax_c\n2026-03-01,1.5,9\n2026-03-02,,8\n";

    #[test]
    fn columns_are_found_by_name_and_empty_cells_are_missing() {
        let series = Series::new(RECORD).unwrap();
        let columns = [series.column("tmax_c").unwrap(), series.column("tmin_c").unwrap()];
        let days: Vec<_> = series.days(columns).map(Result::unwrap).collect();
        assert_eq!(days[0].1, [Some(9.0), Some(1.5)]);
        assert_eq!(days[1].1, [Some(8.0), None]);
    }

    #[test]
    fn a_broken_line_is_named_by_its_number() {
        let series = Series::new("date,tmin_c\n2026-03-01,x\n").unwrap();
        let refused = series.days([1]).next().unwrap().unwrap_err();
        assert_eq!(refused.to_string(), "series is `x`, expected a number in line 2");
        assert!(Series::new("day,tmin_c\n").is_err());
        assert!(Series::new(RECORD).unwrap().column("rain").is_err());
    }

    #[test]
    fn dates_are_read_strictly() {
        for text in ["2026-3-1", "26-03-01", "2026-02-29", "2026-03-01 ", "+2026-03-1"] {
            assert_eq!(read_date(text), None, "{text}");
        }
    }
}
